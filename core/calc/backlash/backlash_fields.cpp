// Names, words and ranges of everything a lash measurement asks for.
#include <array>

#include "calc/backlash/backlash.hpp"
#include "calc/gear_pair/gear_pair.hpp"

namespace camside::backlash {

namespace {

constexpr std::array<Choice, 2> mesh_words{{
    {"crank", "Crank pinion with the rear cam (2:1)"},
    {"behind plate", "Rear cam with the front cam, behind the plate (1:1)"},
}};
constexpr std::array<Choice, 4> access_words{{
    {"direct", "At the gear, or an arm on its shaft; the other shaft held"},
    {"subtraction", "Crank held, total on the front cam, outer lash taken off"},
    {"by feel", "By feel"},
    {"bench", "Cams in the plate on the bench"},
}};
constexpr std::array<Choice, 3> contact_words{{
    {"arm face", "Flat face of an arm"},
    {"tooth flank", "Tooth flank, indicator in the plane of the gear"},
    {"tooth flank square", "Tooth flank, indicator square to it"},
}};
constexpr std::array<Choice, 2> rocked_words{{
    {"gear 2", "Gear 2 (the cam's; gear 1 held)"},
    {"gear 1", "Gear 1 (gear 2 held)"},
}};
constexpr std::array<Choice, 2> force_words{{
    {"light", "Lightly, teeth just touch"},
    {"hard", "Hard"},
}};
constexpr std::array<Choice, 3> feel_words{{
    {"tight", "Tight"},
    {"just felt", "Just felt"},
    {"loose", "Loose"},
}};
constexpr std::array<Choice, 2> turned_words{{
    {"forward", "The way the engine runs"},
    {"backward", "Against it"},
}};
constexpr std::array<Choice, 2> place_words{{
    {"in case", "In the engine"},
    {"on bench", "On the bench"},
}};
constexpr std::array<Choice, 2> engine_words{{
    {"cold", "Cold"},
    {"hot", "Hot"},
}};
constexpr std::array<Choice, 2> spots_words{{
    {"one spot", "At one spot"},
    {"round the turn", "Round the whole turn"},
}};
constexpr std::array<Choice, 2> line_words{{
    {"pitch line", "Along the pitch line"},
    {"square to flank", "Square to the flank"},
}};

constexpr Length most_size = Length::mm(2000.0);
constexpr Length most_lash = Length::mm(25.0);

Field size(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.above(0.0).at_most(most_size);
}
Field lash(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(-most_lash).at_most(most_lash);
}
Field small(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(0.0).at_most(Length::mm(2.5));
}

Field needed(Field f, bool when) {
  f.required = when;
  return f;
}

template <class M>
void describe_how(FieldVisitor& v, M& m) {
  v.choice(Field{"place", "Where", "Gears in the engine or in the plate on the bench"}, m.place, place_words);
  v.value(Field{"plate_torqued", "Plate torqued", "All bolts of the cam plate at their torque"}, m.plate_torqued);
  v.choice(Field{"engine", "Engine", "Cold: stood for hours"}, m.engine, engine_words);
}

void describe_mesh(FieldVisitor& v, Input& in) {
  v.choice(Field{"mesh", "Which mesh", "Each of the two meshes is measured by itself"}.must(), in.mesh, mesh_words);
  v.value(gear_pair::teeth_field("teeth1", "Teeth, gear 1",
                                 "Pinion on the crank; behind the plate the inner gear of the rear cam"),
          in.teeth1);
  v.value(gear_pair::teeth_field("teeth2", "Teeth, gear 2",
                                 "Outer gear of the rear cam; behind the plate that of the front cam"),
          in.teeth2);
  gear_pair::describe_tooth_form(v, in.module, in.pressure_angle, in.helix);
  v.value(size("centre_distance", "Centre distance", "Between the axes of the two shafts").must(), in.centre_distance);
  v.list(Field{"train", "Whole train", "Every mesh or chain from the crank to the last cam: it must come out at 2:1"},
         in.train);
  v.value(Field{"sizes_confirmed", "Sizes looked at again", "Teeth, pitch, centres and radius are right as entered"},
          in.sizes_confirmed);
}

void describe_contact(FieldVisitor& v, Input& in, bool indicator) {
  v.choice(needed({"contact", "What the indicator touches", "Never assumed: arm and flank differ by 6 % and more"},
                  indicator),
           in.contact, contact_words);
  v.value(
      needed(size("contact_radius", "Radius of the contact", "From the axis of the shaft, not across it"), indicator),
      in.contact_radius);
  v.value(needed(Field{"indicator_angle", "Indicator angle",
                       "To the tangent of the arm's path; on a flank positive toward the flank's normal"}
                     .at_least(Angle::deg(-60.0))
                     .at_most(Angle::deg(60.0)),
                 indicator && in.contact != Contact::FlankSquare),
          in.indicator_angle);
  v.choice(Field{"rocked", "Gear rocked", "The gear that is moved and touched; the other is held"}, in.rocked,
           rocked_words);
  v.choice(Field{"force", "Rocked how", "Teeth should just touch, both shafts held the same way"}, in.force,
           force_words);
  v.value(
      needed(Field{"graduation", "Graduation", "One step of the indicator's scale"}.above(0.0).at_most(Length::mm(1.0)),
             indicator),
      in.graduation);
  v.value(small("stated_error", "Indicator's error", "Greatest error its sheet states; 0 when not known"),
          in.stated_error);
  v.value(size("needle_turn", "One turn of the needle", "Travel for one turn; left out: 100 graduations"),
          in.needle_turn);
  v.value(small("play1", "Play of gear 1's shaft", "Push and pull it: swing of a needle on the shaft"), in.play1);
  v.value(small("play2", "Play of gear 2's shaft", "Push and pull it: swing of a needle on the shaft"), in.play2);
}

void describe_readings(FieldVisitor& v, Input& in) {
  v.choice(Field{"access", "How it was read", "Behind the plate an arm on the front cam, or by subtraction"}.must(),
           in.access, access_words);
  v.value(Field{"loads_off", "Loads off", "Lifters up or rods out, nothing driven, crank held still"}, in.loads_off);
  describe_contact(v, in, in.access && *in.access != Access::ByFeel);
  v.choice(Field{"turned", "Crank turned", "Which way from one position to the next"}, in.turned, turned_words);
  v.list(Field{"readings", "Readings", "Needle swing at each position, over two crank turns"}, in.readings);
  v.group(needed({"outer", "Crank mesh", "By subtraction: what is taken off"}, in.access == Access::Subtraction),
          in.outer);
  v.choice(needed({"feel", "Felt", "By feel only"}, in.access == Access::ByFeel), in.feel, feel_words);
}

}  // namespace

void describe(FieldVisitor& v, Method& m) {
  describe_how(v, m);
}

void describe(FieldVisitor& v, WindowMethod& m) {
  describe_how(v, m);
  v.choice(Field{"spots", "Spots", "Read at one spot, or the least and most round the turn"}, m.spots, spots_words);
  v.choice(Field{"line", "Counted along", "What the sheet's figure is measured along"}, m.line, line_words);
}

void describe(FieldVisitor& v, Window& w) {
  v.value(lash("min", "Least allowed", "From the part maker's sheet"), w.min);
  v.value(lash("max", "Most allowed", "From the part maker's sheet"), w.max);
  v.source(Field{"source", "Who says so", "The sheet or person the window comes from"}.must(), w.source);
  v.group(Field{"method", "Meant for", "How the sheet means the lash to be read; leave out what it doesn't say"},
          w.method);
}

void describe(FieldVisitor& v, StateWindow& w) {
  v.choice(Field{"state", "State", "The temperature state this window is for"}.must(), w.state,
           lash_temperature::state_choices);
  v.value(lash("min", "Least allowed", "From the part maker's sheet"), w.min);
  v.value(lash("max", "Most allowed", "From the part maker's sheet"), w.max);
  v.source(Field{"source", "Who says so", "The sheet or person the window comes from"}.must(), w.source);
}

void describe(FieldVisitor& v, Reading& r) {
  v.value(Field{"angle", "Crank angle", "From the mark: 0 to 720°, or within the turn when the turn is given"}
              .at_least(0.0)
              .at_most(Angle::deg(720.0))
              .must(),
          r.angle);
  v.value(Field{"turn", "Turn", "First or second crank turn from the mark"}.at_least(1.0).at_most(2.0), r.turn);
  v.value(Field{"reading", "Needle swing", "From one end of the rock to the other, at rest at both"}.must(), r.reading);
  v.value(lash("outer_lash", "Outer lash here", "By subtraction: lash of the crank mesh along its operating circle"),
          r.outer_lash);
}

void describe(FieldVisitor& v, Outer& o) {
  v.value(size("operating_radius", "Operating radius", "Of the outer gear on the rear cam").must(), o.operating_radius);
  v.value(small("uncertainty", "± of the outer lash", "As the measurement of the crank mesh gave it").must(),
          o.uncertainty);
}

void describe(FieldVisitor& v, TrainStep& s) {
  v.value(gear_pair::teeth_field("driver", "Driving", "Teeth of the gear or sprocket nearer the crank"), s.driver);
  v.value(gear_pair::teeth_field("driven", "Driven", "Teeth of the one it drives"), s.driven);
}

void describe(FieldVisitor& v, Input& in) {
  describe_mesh(v, in);
  describe_readings(v, in);
  v.group(Field{"method", "How", "As the reading was taken"}, in.method);
  v.group(Field{"window", "Window", "What the part maker's sheet allows; none: the number alone"}, in.window);
  v.list(Field{"state_windows", "Windows hot or cold", "When the sheet gives figures for another state"},
         in.state_windows);
  v.group(Field{"temperatures", "Temperatures", "For the lash cold, warming up and hot"}, in.temperatures);
  v.value(Field{"guard", "Guard", "Share of ± kept off the limits; 1: proof"}.at_least(0.0).at_most(1.0), in.guard);
}

}  // namespace camside::backlash
