// Names, words and ranges of everything the setting of pushrods asks for.
#include <array>

#include "calc/pushrod/pushrod.hpp"

namespace camside::pushrod {

namespace {

constexpr std::array<Choice, 2> rods_words{{
    {"adjustable", "Adjustable"},
    {"fixed", "Fixed length"},
}};
constexpr std::array<Choice, 2> lifter_words{{
    {"hydraulic", "Hydraulic"},
    {"solid", "Solid or converted to solid"},
}};
constexpr std::array<Choice, 3> state_words{{
    {"wet", "Wet: pumped up, just out of a running engine"},
    {"dry", "Dry or bled down: the plunger sinks under two fingers"},
    {"not sure", "Soaked, or not sure"},
}};
constexpr std::array<Choice, 2> hand_words{{
    {"right", "Right-hand"},
    {"left", "Left-hand"},
}};
constexpr std::array<Choice, 2> end_words{{
    {"lower", "At the lifter's end"},
    {"upper", "At the rocker's end"},
}};
constexpr std::array<Choice, 2> turning_words{{
    {"with the wheels", "With the wheels"},
    {"against the wheels", "Against the wheels"},
}};
constexpr std::array<Choice, 2> cylinder_words{{
    {"front", "Front cylinder"},
    {"rear", "Rear cylinder"},
}};
constexpr std::array<Choice, 2> measured_on_words{{
    {"heel", "Both lifters on the heel of the cam"},
    {"lift", "On the lobe"},
}};

constexpr Length most_travel = Length::mm(10.0);
constexpr Length most_piece = Length::mm(1000.0);
constexpr Length most_change = Length::mm(25.0);

Field needed(Field f, bool when) {
  f.required = when;
  return f;
}
Field plunger(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(0.0).at_most(most_travel);
}
Field size(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.above(0.0).at_most(most_piece);
}
Field change(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(-most_change).at_most(most_change);
}
Field pitch(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(ThreadPitch::mm(0.2)).at_most(ThreadPitch::mm(3.0));
}
Field ten(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(Length::mm(2.0)).at_most(Length::mm(30.0));
}
Field temperature(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(Temperature::celsius(-60.0)).at_most(Temperature::celsius(400.0));
}
Field ratio(std::string_view help) {
  return Field{"rocker_ratio", "Rocker ratio", help}.at_least(0.5).at_most(3.0);
}

void describe_thread(FieldVisitor& v, Input& in) {
  v.value(pitch("pitch", "Thread of the adjuster", "Threads per inch or pitch; from the part's sheet"), in.pitch);
  v.value(ten("ten_threads", "Ten threads measured", "Instead of the pitch: length over ten threads"), in.ten_threads);
  v.value(pitch("second_pitch", "Second thread", "Only where both ends of the adjuster move: their pitches add up"),
          in.second_pitch);
  v.value(ten("second_ten_threads", "Ten of the second thread", "Instead of its pitch: length over ten threads"),
          in.second_ten_threads);
  v.value(
      Field{"flats_per_turn", "Flats", "On the adjuster, not on its locknut: 6 for a hexagon"}.at_least(2.0).at_most(
          24.0),
      in.flats_per_turn);
  v.choice(Field{"thread_hand", "Hand of the thread", "Settles which way lengthens"}, in.thread_hand, hand_words);
  v.choice(Field{"adjuster_end", "Adjuster sits", "Settles which way lengthens, seen from above"}, in.adjuster_end,
           end_words);
}

void describe_preload(FieldVisitor& v, Input& in) {
  v.value(
      Field{"travel", "Plunger travel", "From its stop to the bottom; not the height of the lifter"}.above(0.0).at_most(
          most_travel),
      in.travel);
  v.value(plunger("preload", "Preload wanted", "Left out: half of the travel. Of fixed rods: what they give"),
          in.preload);
  v.limit(plunger("least_margin", "Least to either end", "From the lifter maker's sheet; left out: 0.030 in"),
          in.least_margin);
  v.group(Field{"turned", "Really turned", "What was counted, to see the preload it gives"}, in.turned);
}

void describe_order(FieldVisitor& v, Input& in) {
  v.choice(Field{"turning", "Crank is turned", "The way the bike rolls forward, or against it"}, in.turning,
           turning_words);
  v.choice(Field{"first", "First cylinder", "The one that is set first"}, in.first, cylinder_words);
  v.list(Field{"left_to_right", "Rods left to right", "All four, as they stand on this engine, for the picture"},
         in.left_to_right);
  v.value(Field{"least_wait", "Least wait", "For a pumped-up lifter to bleed down: 10 to 30 minutes, longer when cold"}
              .at_least(0.0)
              .at_most(Duration::minutes(1440.0)),
          in.least_wait);
  v.list(Field{"checks", "Spin tests", "One entry for each rod that was set"}, in.checks);
}

}  // namespace

void describe(FieldVisitor& v, Turned& t) {
  v.value(Field{"turns", "Turns", "Full turns counted"}.at_least(0.0).at_most(100.0), t.turns);
  v.value(Field{"flats", "Flats", "Beside the turns"}.at_least(0.0).at_most(600.0), t.flats);
}

void describe(FieldVisitor& v, PicturePlace& p) {
  v.choice(Field{"rod", "Rod", "Which rod stands here"}.must(), p.rod, rod_choices);
}

void describe(FieldVisitor& v, RodCheck& c) {
  v.choice(Field{"rod", "Rod", "By cylinder and valve"}.must(), c.rod, rod_choices);
  v.value(Field{"loaded", "Lifter loaded", "The rod was set"}, c.loaded);
  v.value(Field{"since_loaded", "Time since", "From setting the rod to the spin test"}.at_least(0.0).at_most(
              Duration::minutes(1.0e6)),
          c.since_loaded);
  v.value(Field{"spins_with_drag", "Spins, with drag", "By the fingers; no: it is still tight"}, c.spins_with_drag);
  v.value(Field{"play", "Up-and-down play", "Yes: the rod is loose and must be set again"}, c.play);
}

void describe(FieldVisitor& v, Piece& p) {
  v.value(Field{"name", "Part", "What it is"}, p.name);
  v.value(size("length", "Length", "Along the rod, at the temperature of setting").must(), p.length);
  v.value(Field{"expansion", "Grows", "Expansion of its metal: aluminium 23, steel 11 to 12, iron 10 to 11 per million"}
              .at_least(0.0)
              .at_most(Expansion::ppm_per_kelvin(40.0)),
          p.expansion);
  v.value(temperature("hot", "Hot", "Its temperature in the hot engine").must(), p.hot);
}

void describe(FieldVisitor& v, ValveGrowth& g) {
  v.group(Field{"stem", "Valve stem", "From seat to tip"}, g.stem);
  v.group(Field{"head", "Head, seat to shaft", "From the valve seat up to the rocker shaft"}, g.head);
  v.value(ratio("Valve lift divided by lobe lift").must(), g.rocker_ratio);
}

void describe(FieldVisitor& v, Heat& h) {
  v.value(temperature("setting_temperature", "Engine at setting", "Of the whole engine while the rods are set").must(),
          h.setting_temperature);
  v.value(temperature("cold", "Cold engine", "For the preload of the cold engine"), h.cold);
  v.group(Field{"rod", "Pushrod", "Rods stay cooler than barrels: 50 to 90 °C above cold"}, h.rod);
  v.list(Field{"stack", "Pieces of the stack", "Case deck, barrel, head, rocker box: what carries the rocker"},
         h.stack);
  v.group(Field{"valve", "Valve side", "Stem and head above the seat; left out: not counted"}, h.valve);
  v.value(Field{"temperatures_confirmed", "Temperatures looked at again", "They are right as entered"},
          h.temperatures_confirmed);
}

void describe(FieldVisitor& v, NewLength& n) {
  v.value(change("gasket_change", "Gaskets thicker by", "All between lifter and rocker; thinner: negative"),
          n.gasket_change);
  v.value(change("deck_removed", "Taken off deck", "Of case or barrel"), n.deck_removed);
  v.value(change("head_removed", "Taken off head", "Of its sealing face"), n.head_removed);
  v.value(change("heel_radius_change", "Heel radius larger by", "Of the new cam; smaller: negative"),
          n.heel_radius_change);
  v.value(change("cup_rise", "Pushrod cup higher by", "Of the new lifter; lower: negative"), n.cup_rise);
  v.value(change("tip_rise", "Valve tip higher by", "After valve or seat work; lower: negative"), n.tip_rise);
  v.value(needed(ratio("Needed when the valve tip moved"), n.tip_rise != Length{}), n.rocker_ratio);
  v.value(size("old_length", "Old rod length", "Left out: only the change is shown"), n.old_length);
}

void describe(FieldVisitor& v, Engagement& e) {
  v.value(Field{"engaged", "Thread engaged", "Length still in the thread at the setting"}
              .at_least(0.0)
              .at_most(Length::mm(200.0))
              .must(),
          e.engaged);
  v.value(size("diameter", "Thread diameter", "Nominal").at_most(Length::mm(50.0)).must(), e.diameter);
  v.limit(size("least", "Least engaged", "The maker's mark or sheet; left out: one diameter"), e.least);
}

void describe(FieldVisitor& v, Collapsed& c) {
  v.value(size("shortest", "Collapsed length", "Rod screwed fully in").must(), c.shortest);
  v.value(size("longest", "Longest length", "With the least thread engaged"), c.longest);
  v.value(size("room", "Room for the rod", "Cup, plunger up, to rocker").must(), c.room);
  v.choice(Field{"measured_on", "Room measured", "It is smaller with the lifter on the lobe"}, c.measured_on,
           measured_on_words);
}

void describe(FieldVisitor& v, SaveOrCut& s) {
  v.value(Field{"boxes_leak", "Rocker boxes leak", "Upper or lower gasket; look before any rod is cut"}, s.boxes_leak);
  v.value(Field{"valve_lift", "Valve lift", "Of the new cam"}.above(0.0).at_most(Length::mm(30.0)), s.valve_lift);
  v.limit(Field{"fixed_range", "Fixed rods serve to", "Valve lift; left out: 0.510 in"}.above(0.0).at_most(
              Length::mm(30.0)),
          s.fixed_range);
  v.value(Field{"use_again", "Rods wanted whole", "To use the fixed rods again, or keep them with the bike"},
          s.use_again);
}

void describe(FieldVisitor& v, Input& in) {
  v.choice(Field{"rods", "Rods", "Adjustable, or of fixed length"}, in.rods, rods_words);
  v.choice(Field{"lifter", "Lifters", "With an oil-filled plunger, or solid"}, in.lifter, lifter_words);
  v.choice(needed({"lifter_state", "State of the lifter", "Press the plunger with two fingers: wet stands, dry sinks"},
                  in.rods == Rods::Adjustable && in.lifter == Lifter::Hydraulic),
           in.lifter_state, state_words);
  describe_thread(v, in);
  describe_preload(v, in);
  describe_order(v, in);
  v.group(Field{"heat", "Hot preload", "How the preload changes when the engine is hot"}, in.heat);
  v.group(Field{"new_length", "New length", "From what was changed in the stack"}, in.new_length);
  v.group(Field{"engagement", "Thread engaged", "Enough thread at the setting"}, in.engagement);
  v.group(Field{"collapsed", "Goes in collapsed", "Passes between cup and rocker on the heel"}, in.collapsed);
  v.group(Field{"save_or_cut", "Save or cut", "Whether the fixed rods come out whole"}, in.save_or_cut);
}

}  // namespace camside::pushrod
