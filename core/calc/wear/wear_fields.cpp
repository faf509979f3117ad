// Names, words and ranges of everything a wear record asks for.
#include <array>

#include "calc/wear/wear.hpp"

namespace camside::wear {

namespace {

constexpr std::array<Choice, 2> anvil_words{{
    {"ball or pin", "Ball or pin, to the bottom of the groove"},
    {"flat jaws", "Flat jaws"},
}};

constexpr Distance most_distance = Distance::miles(1'000'000.0);
constexpr Length most_thickness = Length::inches(1.0);

Field distance(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(0.0).at_most(most_distance);
}
Field thickness(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(0.0).at_most(most_thickness);
}
Field small(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(0.0).at_most(Length::mm(2.5));
}

void describe_measuring(FieldVisitor& v, Input& in) {
  v.choice(Field{"anvil", "Measured with", "What reaches into the groove"}, in.anvil, anvil_words);
  v.value(Field{"graduation", "Graduation", "One step of the caliper or micrometer"}
              .above(0.0)
              .at_most(Length::mm(1.0))
              .must(),
          in.graduation);
  v.value(small("stated_error", "Its error", "Greatest error the instrument's sheet states"), in.stated_error);
  v.value(small("repeatability", "Repeatability",
                "Standard deviation of the same spot measured again; left out: one graduation"),
          in.repeatability);
}

}  // namespace

void describe(FieldVisitor& v, Reading& r) {
  v.value(distance("odometer", "Odometer", "All full miles or km, without the tenths; not the trip meter").must(),
          r.odometer);
  v.value(thickness("thickness", "Thickness", "From the backing to the bottom of the groove, without the back metal")
              .must(),
          r.thickness);
}

void describe(FieldVisitor& v, Seen& s) {
  v.value(Field{"cracked", "Cracked", "Any crack, at the last reading"}, s.cracked);
  v.value(Field{"stepped", "Stepped", "A step worn into the face where the chain leaves it"}, s.stepped);
  v.value(Field{"piece_missing", "Piece missing", "Chipped, or a piece gone"}, s.piece_missing);
  v.value(Field{"bare_metal", "Bare metal", "Shiny backing to be seen"}, s.bare_metal);
}

void describe(FieldVisitor& v, UsualWear& u) {
  v.value(thickness("wear", "Wears by", "Thickness lost").above(0.0).must(), u.wear);
  v.value(distance("over", "Over", "In this distance").above(0.0).must(), u.over);
  v.source(Field{"source", "Who says so", "Where the rate comes from"}.must(), u.source);
}

void describe(FieldVisitor& v, LookAgain& l) {
  v.value(distance("every", "Look every", "However thick it is").above(0.0).must(), l.every);
  v.source(Field{"source", "Who says so", "Where the interval comes from"}.must(), l.source);
}

void describe(FieldVisitor& v, Input& in) {
  v.value(Field{"part", "Part", "Which shoe, outer or inner; one list for each"}, in.part);
  v.list(Field{"readings", "Readings", "Of this one part since it was fitted; new counts as a reading"}, in.readings);
  v.group(Field{"seen", "Seen", "What was looked for at the last reading; left out: nobody looked"}, in.seen);
  describe_measuring(v, in);
  v.limit(thickness("limit", "Least thickness", "Below it the part is replaced").above(0.0), in.limit);
  v.group(Field{"usual_wear", "Usual wear", "Only for a single reading: what such a part wears"}, in.usual_wear);
  v.group(Field{"look_again", "Look again", "No forecast goes beyond it; left out: 30,000 mi, common practice"},
          in.look_again);
  v.value(distance("odometer_now", "Odometer now", "When it is further than the last reading"), in.odometer_now);
}

}  // namespace camside::wear
