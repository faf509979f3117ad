#include <array>

#include "calc/runout/runout.hpp"

namespace camside::runout {

namespace {

constexpr std::array<Choice, 3> subjects{{
    {"crank pinion shaft", "Crank pinion shaft"},
    {"other shaft", "Another shaft"},
    {"gear", "A gear, over a pin in its tooth spaces"},
}};
constexpr std::array<Choice, 2> methods{{
    {"swing", "Lowest and highest needle over a slow turn"},
    {"stations", "Readings at marks round the turn"},
}};
constexpr std::array<Choice, 5> contacts{{
    {"bushing band", "Ground band where the plate's bushing runs"},
    {"gear", "Gear or sprocket"},
    {"splines", "Splines"},
    {"thread or bolt", "Thread or bolt head"},
    {"flat or adapter", "Flat, keyway or adapter"},
}};
constexpr std::array<Choice, 2> plates{{{"off", "Off"}, {"on", "On"}}};
constexpr std::array<Choice, 3> stands{{
    {"crankcase", "On the crankcase"},
    {"frame or lift", "On the frame or the lift"},
    {"truing stand", "On a truing stand, crank out"},
}};
constexpr std::array<Choice, 2> indicators{{{"plunger", "Plunger"}, {"lever", "Lever"}}};
constexpr std::array<Choice, 2> dials{{
    {"continuous", "Counts one way round, 0-100"},
    {"balanced", "Counts both ways from zero, 0-50-0"},
}};
constexpr std::array<Choice, 2> sides{{{"right", "From the right"}, {"left", "From the left"}}};
constexpr std::array<Choice, 2> meanings{{
    {"needle ends", "Full swing, from lowest to highest needle"},
    {"offset only", "Half of the swing: an offset, or one side of a ±"},
}};
constexpr std::array<Choice, 3> supports{{
    {"own mains", "In its own main bearings"},
    {"centres", "On centres"},
    {"v-blocks", "In V-blocks"},
}};
constexpr std::array<Choice, 2> places{{
    {"outboard", "Outside of the supports, toward the shaft's end"},
    {"inboard", "Between support and wheel"},
}};

constexpr Length far = Length::mm(10000.0);  // keeps arithmetic sound; what an indicator reaches is checked apart
constexpr Length small = Length::mm(5.0);

constexpr Field reading(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(-far).at_most(far).must();
}
constexpr Field mark(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(Angle::turns(-1000.0)).at_most(Angle::turns(1000.0));
}

void describe_readings(FieldVisitor& v, Readings& r) {
  v.choice(Field{"method", "How it was read",
                 "A slow turn watched all round needs no marks; stations also show where and what shape"},
           r.method, methods);
  v.list(Field{"swings", "Turns", "Each slow turn by hand, plugs out, one direction; at least two"}, r.swings);
  v.list(Field{"stations", "Stations",
               "At least 6 marks round the shaft, 8 by default; stop and let go before reading; repeat turns welcome"},
         r.stations);
  v.value(
      Field{"closing", "Back at the start", "The needle when the first mark comes round again"}.at_least(-far).at_most(
          far),
      r.closing);
}

}  // namespace

void describe(FieldVisitor& v, Swing& s) {
  v.value(reading("low", "Lowest needle", "The least the needle showed over the turn, below zero with a minus"), s.low);
  v.value(reading("high", "Highest needle", "The most the needle showed over the turn"), s.high);
  v.value(mark("high_spot", "High spot at", "Mark under the indicator when the needle was highest"), s.high_spot);
}

void describe(FieldVisitor& v, Station& s) {
  v.value(
      mark("angle", "Angle", "Mark under the indicator, counted from the first mark; 360° is the first again").must(),
      s.angle);
  v.value(reading("reading", "Reading", "The needle, below zero with a minus"), s.reading);
  v.value(Field{"turn", "Turn", "Which turn this reading belongs to"}.at_least(1.0).at_most(1000000.0), s.turn);
}

void describe(FieldVisitor& v, Setup& s) {
  v.choice(Field{"contact", "Contact runs on", "Where the indicator touches the shaft"}, s.contact, contacts);
  v.choice(Field{"plate", "Cam plate", "Off, or its bushing holds the shaft and hides the runout"}, s.plate, plates);
  v.choice(Field{"stand", "Indicator stands", "On the crankcase: the engine moves in its mounts"}, s.stand, stands);
  v.choice(Field{"indicator", "Indicator", "Plunger (dial) or lever (test indicator)"}, s.indicator, indicators);
  v.value(
      Field{"indicator_angle", "Indicator angle", "Between the direction it measures in and the radial line; 0 is best"}
          .at_least(Angle::deg(0.0))
          .at_most(Angle::deg(60.0)),
      s.indicator_angle);
  v.value(Field{"graduation", "Graduation", "One division of the dial: 0.001, 0.0005 or 0.0001 in; 0.01 or 0.002 mm"}
              .above(Length::mm(0.0))
              .at_most(Length::mm(0.5))
              .must(),
          s.graduation);
  v.value(Field{"stated_error", "Stated error", "± that its maker or a calibration gives for the indicator"}
              .at_least(Length::mm(0.0))
              .at_most(small),
          s.stated_error);
  v.value(Field{"repeatability", "Repeatability",
                "Standard deviation of readings repeated at one place, if known; else taken from repeat turns"}
              .at_least(Length::mm(0.0))
              .at_most(small),
          s.repeatability);
  v.value(Field{"play", "Shaft play", "Needle swing when the shaft is pushed and pulled by hand before turning"}
              .at_least(Length::mm(0.0))
              .at_most(small),
          s.play);
  v.value(
      Field{"range", "Indicator's range", "How far it travels in all: 0.03 in for a lever, 0.2 to 1 in for a plunger"}
          .above(Length::mm(0.0))
          .at_most(Length::mm(200.0)),
      s.range);
  v.value(Field{"needle_turn", "One turn of the needle", "Travel for which the needle goes once round: 0.1 in, 1 mm"}
              .above(Length::mm(0.0))
              .at_most(Length::mm(50.0)),
          s.needle_turn);
  v.choice(Field{"dial", "Dial counts", "One way round, or both ways from zero"}, s.dial, dials);
  v.value(Field{"passed_zero", "Needle passed the dial's zero",
                "98 beside 2 on a dial of 100 is −2 beside 2 when the needle went through zero"},
          s.passed_zero);
  v.choice(Field{"seen_from", "Angles seen from", "Side of the engine from which the marks count clockwise"},
           s.seen_from, sides);
  v.choice(Field{"swing_means", "What was noted", "Full swing of the needle, or only half of it"}, s.swing_means,
           meanings);
}

void describe(FieldVisitor& v, OtherSide& o) {
  describe_readings(v, o.readings);
  v.choice(Field{"seen_from", "Angles seen from", "Seen from the other side the same turn runs backwards"}, o.seen_from,
           sides);
  v.value(Field{"one_zero", "One zero", "Both sides count from the same mark of the crank"}, o.one_zero);
  v.value(Field{"same_side", "Indicators on the same side", "Both in front of, above or behind the crank"},
          o.same_side);
  v.value(mark("crankpin", "Crankpin at", "Direction of the crankpin in the marks of the first side"), o.crankpin);
  v.choice(Field{"support", "Crank carried", "In its own mains, on centres or in V-blocks"}, o.support, supports);
  v.choice(Field{"read_at", "Read", "Outside of the supports or between support and wheel"}, o.read_at, places);
}

void describe(FieldVisitor& v, AtGear& g) {
  v.value(Field{"to_contact", "Bearing to contact", "From the middle of the main bearing to the indicator's contact"}
              .above(Length::mm(0.0))
              .at_most(Length::mm(500.0))
              .must(),
          g.to_contact);
  v.value(Field{"to_gear", "Bearing to gear", "From the middle of the main bearing to the middle of the gear"}
              .above(Length::mm(0.0))
              .at_most(Length::mm(500.0))
              .must(),
          g.to_gear);
}

void describe(FieldVisitor& v, GearRunout& g) {
  v.value(Field{"tir", "Gear's own runout (TIR)", "Over a pin in every third or fourth tooth space, plate on, torqued"}
              .at_least(Length::mm(0.0))
              .at_most(small)
              .must(),
          g.tir);
  v.value(mark("high_spot", "Gear's high spot at", "On the same marks as the shaft's"), g.high_spot);
}

void describe(FieldVisitor& v, Budget& b) {
  v.value(Field{"lash_least", "Least lash wanted", "Lower end of the part maker's window"}
              .at_least(Length::mm(0.0))
              .at_most(small)
              .must(),
          b.lash_least);
  v.value(Field{"lash_most", "Most lash wanted", "Upper end of the part maker's window"}
              .above(Length::mm(0.0))
              .at_most(small)
              .must(),
          b.lash_most);
  v.value(Field{"pressure_angle", "Pressure angle", "Operating pressure angle of the mesh"}
              .above(Angle::deg(0.0))
              .at_most(Angle::deg(45.0)),
          b.pressure_angle);
}

void describe(FieldVisitor& v, Input& in) {
  v.choice(Field{"subject", "What is measured", "A crank's pinion shaft, another shaft, or a gear"}, in.subject,
           subjects);
  describe_readings(v, in.readings);
  v.group(Field{"setup", "Set-up", "Asked once and kept with the result"}, in.setup);
  v.limit(Field{"limit", "Limit (TIR)",
                "The part maker's sheet wins; none: 0.003 in for a crank pinion shaft, common practice"},
          in.limit);
  v.value(Field{"no_limit", "No limit", "Show the numbers without a verdict"}, in.no_limit);
  v.value(Field{"guard_factor", "Guard factor", "Share of the uncertainty kept off the limit; 1 is the usual rule"}
              .at_least(0.0)
              .at_most(3.0),
          in.guard_factor);
  v.value(Field{"readings_checked", "Readings checked", "They are right although they look odd"}, in.readings_checked);
  v.group(Field{"other_side", "Other side", "The shaft on the other side of the crank, same indicator"}, in.other_side);
  v.group(Field{"at_gear", "At the gear", "Both distances, to say what the runout is where the gear sits"}, in.at_gear);
  v.group(Field{"gear", "Gear", "The gear's own runout, its own measurement"}, in.gear);
  v.group(Field{"budget", "Runout budget", "The most runout that a wanted lash window can stand"}, in.budget);
}

}  // namespace camside::runout
