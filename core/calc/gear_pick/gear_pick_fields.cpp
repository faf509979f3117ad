// What gear_pick asks for: names, words, ranges, units.
#include <array>

#include "calc/gear_pair/gear_pair.hpp"
#include "calc/gear_pick/gear_pick_engine.hpp"

namespace camside::gear_pick {

namespace {

constexpr std::array<Choice, 4> role_words{{
    {"crank", "Crank"},
    {"cam", "Cam"},
    {"idler", "Idler"},
    {"other", "Other"},
}};
constexpr std::array<Choice, 4> meaning_words{{
    {"thickness", "Tooth thickness"},
    {"over pins", "Size over pins"},
    {"pitch radius", "Pitch radius"},
    {"class", "Class: how much thicker than class 0"},
}};
constexpr std::array<Choice, 2> joint_words{{
    {"bolted", "Bolted"},
    {"pressed", "Pressed on"},
}};

Field name_field(const char* label, const char* help) {
  return Field{"name", label, help};
}
Field size_field(const char* name, const char* label, const char* help) {
  return Field{name, label, help}.above(0.0).at_most(Length::mm(10000.0));
}
Field lash_field(const char* name, const char* label, const char* help) {
  return Field{name, label, help}.at_least(Length::mm(-100.0)).at_most(Length::mm(100.0));
}
Field measure_field(const char* name, const char* label, const char* help) {
  return Field{name, label, help}.at_least(Length::mm(-10000.0)).at_most(Length::mm(10000.0));
}

}  // namespace

std::string_view word_of(SizeMeans means) {
  return meaning_words[static_cast<std::size_t>(means)].name;
}

void describe(FieldVisitor& v, Shaft& s) {
  v.value(name_field("Shaft", "Such as crank, rear cam, front cam").must(), s.name);
  v.choice(Field{"role", "What it is", "Crank and cam settle the ratio of the train"}, s.role, role_words);
}

void describe(FieldVisitor& v, Size& s) {
  v.value(name_field("Size", "As the seller names it"), s.name);
  v.value(measure_field("value", "Value", "In the measure said for this gear").must(), s.value);
  v.value(Field{"price", "Price", "Of one gear of this size"}.at_least(0.0), s.price);
  v.value(Field{"stock", "In stock", "How many are to be had; 0 = none"}.at_least(0.0), s.stock);
}

void describe(FieldVisitor& v, Gear& g) {
  v.value(name_field("Gear", "Such as pinion, rear outer, rear inner, front inner").must(), g.name);
  v.value(Field{"shaft", "On shaft", "Name of the shaft it sits on"}.must(), g.shaft);
  v.value(gear_pair::teeth_field(), g.teeth);
  v.choice(Field{"size_means", "A size means", "What the sizes of this gear count; one step differs up to threefold"},
           g.size_means, meaning_words);
  v.value(measure_field("fitted", "Fitted size", "What is in now, in the same measure"), g.fitted);
  v.value(size_field("pin_diameter", "Pin diameter", "Of one pin, for sizes over pins"), g.pin_diameter);
  v.value(size_field("tip_diameter", "Tip diameter", "Outside diameter; left out: assumed from the pitch"),
          g.tip_diameter);
  v.value(size_field("root_diameter", "Root diameter", "At the bottom of the spaces; left out: assumed"),
          g.root_diameter);
  v.value(Field{"expansion", "Grows", "Expansion coefficient of its metal, if unlike the others"}.at_least(0.0).at_most(
              Expansion::ppm_per_kelvin(40.0)),
          g.expansion);
  v.choice(Field{"joint", "How it is fixed", "A pressed gear weighs ten bolted ones unless its effort is given"},
           g.joint, joint_words);
  v.value(Field{"effort", "Effort to change", "1 for a bolted gear"}.at_least(0.0).at_most(1000.0), g.effort);
  v.list(Field{"sizes", "Sizes on offer", "Empty: this gear stays"}, g.sizes);
}

void describe(FieldVisitor& v, Window& w) {
  v.choice(Field{"state", "State", "The temperatures for which the sheet gives the lash"}, w.state,
           lash_temperature::state_choices);
  v.value(lash_field("lowest", "Lowest wanted", "Least lash the sheet allows"), w.lowest);
  v.value(lash_field("highest", "Highest wanted", "Most lash the sheet allows"), w.highest);
}

void describe(FieldVisitor& v, Mesh& m) {
  v.value(name_field("Mesh", "Such as outer mesh, inner mesh"), m.name);
  v.value(Field{"gear_a", "First gear", "Name of a gear"}.must(), m.gear_a);
  v.value(Field{"gear_b", "Second gear", "Name of a gear on another shaft"}.must(), m.gear_b);
  gear_pair::describe_tooth_form(v, m.module, m.pressure_angle, m.helix);
  v.value(size_field("centre_distance", "Centre distance", "Between the axes of the two shafts").must(),
          m.centre_distance);
  v.value(gear_pair::sizes_confirmed_field(), m.sizes_confirmed);
  v.value(lash_field("lash_low", "Lowest lash", "Over the whole cycle as measured, along the operating circle").must(),
          m.lash_low);
  v.value(
      lash_field("lash_high", "Highest lash", "Over the whole cycle as measured, along the operating circle").must(),
      m.lash_high);
  v.value(Field{"uncertainty", "± of the lash", "Expanded uncertainty U of the measurement"}.at_least(0.0).at_most(
              Length::mm(100.0)),
          m.uncertainty);
  v.list(Field{"windows", "Wanted lash", "Of the part maker's sheet, for each state it names"}, m.windows);
  v.source(Field{"window_source", "Who says so", "Where the wanted lash comes from"}, m.window_source);
  v.value(Field{"window_method", "The sheet's way of measuring",
                "Where, plate torqued or not, cold, all round or one spot"},
          m.window_method);
  v.value(Field{"measured_by_window_method", "Measured that way", "Whether the lash was read the way the sheet means"},
          m.measured_by_window_method);
}

void describe(FieldVisitor& v, Input& in) {
  v.list(Field{"shafts", "Shafts", "That carry the gears"}.must(), in.shafts);
  v.list(Field{"gears", "Gears", "On the shafts, with the sizes on offer"}.must(), in.gears);
  v.list(Field{"meshes", "Meshes", "Between two gears, with the lash as measured"}.must(), in.meshes);
  v.group(Field{"temperatures", "Temperatures", "For the lash cold, warming up and hot"}, in.temperatures);
}

}  // namespace camside::gear_pick
