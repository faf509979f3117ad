#include "calc/runout/runout_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"
#include "units/format.hpp"

namespace camside::remarks::runout {

std::string degrees(Angle v) {
  return trimmed(v.in_deg(), 1, 0) + "°";
}

// ---- refusals ----

Finding no_readings(std::string field, bool other_method_filled) {
  return refusal(1001, std::move(field), "There are no readings for the way of reading that was picked",
                 other_method_filled ? "There are readings of the other way: pick that one"
                                     : "Turn the shaft slowly and note the lowest and highest needle, twice");
}

Finding low_above_high(std::string field, Length low, Length high) {
  return refusal(
      1002, std::move(field),
      fmt::format("The lowest needle, {}, is above the highest, {}", short_inch_and_mm(low), short_inch_and_mm(high)),
      "Exchange them, or give readings below zero a minus");
}

Finding too_few_directions(std::string field, std::size_t directions) {
  return refusal(1003, std::move(field),
                 fmt::format("Only {} different direction{} round the shaft; a return to the start doesn't count",
                             directions, directions == 1 ? "" : "s"),
                 "Read at 8 marks round the turn; 3 is the least that gives a number, 6 the least that proves one");
}

Finding gap_too_wide(std::string field, Angle from, Angle to, Angle gap) {
  return refusal(1004, std::move(field),
                 fmt::format("Nothing was read between {} and {}: a gap of {}, allowed is 120°", degrees(from),
                             degrees(to), degrees(gap)),
                 "Add a reading in between");
}

Finding beyond_indicator(std::string field, Length reading, Length range, bool given, std::size_t more) {
  const std::string others = more == 0 ? "" : fmt::format(", and so {} {} more", more == 1 ? "is" : "are", more);
  return refusal(
      1005, std::move(field),
      fmt::format("The reading is {}{}; {} {}", short_inch_and_mm(reading), others,
                  given ? "the indicator's range is" : "few indicators reach beyond", short_inch_and_mm(range)),
      "Typed in thou? Pick the unit or correct it");
}

Finding limit_not_positive() {
  return refusal(1006, "limit.value", "The limit is not above zero", "Enter the most total reading that is allowed");
}

Finding window_upside_down(Length least, Length most) {
  return refusal(1007, "budget",
                 fmt::format("The least lash wanted, {}, is not below the most wanted, {}", short_inch_and_mm(least),
                             short_inch_and_mm(most)),
                 "Enter the lower end first");
}

Finding zero_inside_swing(std::string field, Length low, Length high, Length turn) {
  return refusal(1008, std::move(field),
                 fmt::format("The lowest needle, {}, is nearly one turn of the dial above the highest, {}",
                             short_inch_and_mm(low), short_inch_and_mm(high)),
                 fmt::format("Did the needle pass zero? Then the lowest is {}: say so, or correct it",
                             short_inch_and_mm(low - turn)));
}

// ---- doubts ----

Finding one_swing_only(std::string field) {
  return doubt(1020, std::move(field), "One turn only", "Turn once more: the two must agree within half a graduation");
}

Finding too_few_to_prove(std::string field, std::size_t directions) {
  return doubt(1021, std::move(field), fmt::format("{} stations can miss the peaks and prove nothing", directions),
               "Read at 6 marks at least, 8 by default");
}

Finding plate_on() {
  return no_reading(1022, "setup.plate",
                    "With the cam plate on its bushing holds the shaft: the needle shows bush clearance and bending",
                    "Take the plate and the cams off and measure again");
}

Finding wrong_contact(const std::string& where) {
  return no_reading(
      1023, "setup.contact",
      fmt::format("Measured on the {}: that runs out by itself and proves nothing about the shaft", where),
      "Put the contact on the round ground band where the plate's bushing runs");
}

Finding setup_not_said(bool contact, bool plate) {
  return doubt(1024, plate ? "setup.plate" : "setup.contact",
               contact && plate ? "Not said: where the contact runs, and whether the cam plate is off"
               : plate          ? "Not said: whether the cam plate is off"
                                : "Not said: where the contact runs",
               "Say it; only the ground band of the shaft with the plate off is a proof");
}

Finding stands_on_frame() {
  return no_reading(1025, "setup.stand",
                    "The indicator stands on the frame or the lift, and the engine moves in its mounts",
                    "Stand it on the crankcase and measure again");
}

Finding read_on_a_flat(Length two_lobe) {
  return no_reading(1026, "setup.contact",
                    fmt::format("The shape goes up and down twice a turn by {}: that is a flat or a keyway, not a bend",
                                short_inch_and_mm(two_lobe)),
                    "Put the contact on the round band and measure again");
}

Finding needle_may_have_passed_zero(std::string field, Length one, Length other, Length turn, bool turn_given,
                                    Length tir, Length proposed) {
  return no_reading(
      1027, std::move(field),
      fmt::format("{} beside {} is nearly one turn of the dial ({}{}): the runout is {} as typed, {} if the "
                  "needle passed zero",
                  short_inches(one), short_inches(other), short_inches(turn),
                  turn_given ? "" : ", taken as 100 graduations", short_inch_and_mm(tir), short_inch_and_mm(proposed)),
      "Did the needle pass zero? Answer yes or no");
}

Finding thou_typed_as_inches(std::string field, Length tir) {
  return no_reading(1028, std::move(field),
                    fmt::format("A runout of {} cannot turn in a crankcase", short_inch_and_mm(tir)),
                    fmt::format("Typed in thou? Then it is {}: pick the unit or correct it",
                                short_inch_and_mm(Length::thou(tir.in_inches()))));
}

Finding unit_or_zero_lost(std::string field, Length tir) {
  return no_reading(
      1029, std::move(field),
      fmt::format("A runout of {} is far above anything usual (0.0003 to 0.012 in)", short_inch_and_mm(tir)),
      fmt::format("A metric dial? {} mm is {}. A zero lost? Correct it, or say that the readings were checked",
                  trimmed(tir.in_inches(), 4, 2), short_inches(Length::mm(tir.in_inches()))));
}

Finding finer_than_the_dial(std::string field, Length tir, Length graduation) {
  return no_reading(1030, std::move(field),
                    fmt::format("The needle moved by {} in all, far less than one graduation ({})",
                                short_inch_and_mm(tir), short_inch_and_mm(graduation)),
                    "Read in inches and typed as mm? Pick the unit, or say that the readings were checked");
}

Finding drift_changes_verdict() {
  return no_reading(1031, "closing", "The indicator crept: the result is unsure",
                    "Clamp the indicator better and measure again");
}

Finding only_one_side_of_dial(std::string field) {
  return caution(1032, std::move(field),
                 "This dial counts both ways from zero, and no reading has a minus: both sides of zero may have been "
                 "typed as plus",
                 "Give readings on the minus side a minus; if the needle stayed on one side, leave them");
}

// ---- cautions ----

Finding main_bearing_first(Length play) {
  return caution(1040, "setup.play",
                 fmt::format("The shaft has {} of play, above 0.002 in: the main bearing is the first question "
                             "(common practice, no published source)",
                             short_inch_and_mm(play)),
                 "Judge the main bearing before the runout");
}

Finding nothing_can_pass(Length uncertainty, Length limit) {
  return caution(1041, "setup.graduation",
                 fmt::format("The uncertainty, {}, takes up the whole limit of {}: no reading could prove Within",
                             short_inch_and_mm(uncertainty), short_inch_and_mm(limit)),
                 "Use a finer dial, take up the play, or turn more often");
}

Finding indicator_leans(Angle angle) {
  return caution(1042, "setup.indicator_angle",
                 fmt::format("The indicator leans by {}; above 15° an error of the angle costs more than it seems",
                             degrees(angle)),
                 "Set it nearer to the radial line");
}

Finding indicator_moved(std::string field, Length closing_error, Length graduation) {
  return caution(1043, std::move(field),
                 fmt::format("Back at the start the needle is off by {}, more than one graduation ({}): the indicator "
                             "moved",
                             short_inch_and_mm(closing_error), short_inch_and_mm(graduation)),
                 "Clamp it better and turn again; the result with the drift taken out stands beside");
}

Finding turns_disagree(std::string field, Length by, Length graduation) {
  return caution(1044, std::move(field),
                 fmt::format("The turns differ by {}, more than half a graduation ({})", short_inch_and_mm(by),
                             short_inch_and_mm(graduation)),
                 "Keep one light steady side load, turn one way only, let go before reading, and turn again");
}

Finding needle_did_not_move(std::string field) {
  return caution(1045, std::move(field), "The needle did not move at all",
                 "Check that the contact touches and the indicator isn't at the end of its travel");
}

Finding not_at_the_gear() {
  return caution(1046, "at_gear", "Not carried over to the gear, which sits further out and runs out more",
                 "Give the distances from the main bearing to the contact and to the gear");
}

Finding lash_swing_too_wide(Length judged, Length swing, Length window) {
  return caution(1047, "budget",
                 fmt::format("A runout of {} alone swings the lash by {}; the wanted window is {} wide",
                             short_inch_and_mm(judged), short_inch_and_mm(swing), short_inch_and_mm(window)),
                 "No gear size can put this lash into the window all round: true the crank or choose another drive");
}

Finding declared_too_good(Length declared, Length shown) {
  return caution(1048, "setup.repeatability",
                 fmt::format("The repeatability was declared as {}, the repeat turns show {}",
                             short_inch_and_mm(declared), short_inch_and_mm(shown)),
                 "The larger one counts");
}

Finding gear_high_spot_unknown(Length least, Length most) {
  return caution(1049, "gear.high_spot",
                 fmt::format("Without both high spots shaft and gear may add up to anything from {} to {}",
                             short_inch_and_mm(least), short_inch_and_mm(most)),
                 "Note the high spot of both on the same marks");
}

// ---- notes ----

Finding no_play_given() {
  return note(1060, "setup.play", "No play given: the uncertainty leaves it out",
              "Push and pull the shaft by hand before turning and enter the needle's swing");
}

Finding closing_reading_taken(std::string field, std::size_t count) {
  return note(1061, std::move(field),
              count == 1 ? "Back to zero (360° is 0°): not taken as a station"
                         : fmt::format("{} readings back at zero (360° is 0°): not taken as stations", count));
}

Finding ovality_not_determined() {
  return note(1062, "stations", "Ovality not determined: that takes 8 readings at 5 or more directions");
}

Finding no_limit() {
  return note(1063, "limit", "No limit, no verdict", "Enter the limit of the part maker's sheet");
}

Finding ceiling_not_welcome(Length limit) {
  return note(
      1064, "limit",
      fmt::format("{} is the most allowed, and less is better (common practice, no published source): alone it swings "
                  "the lash of a 20° mesh by {}",
                  short_inches(limit), short_inches(0.73 * limit)),
      "The part maker's sheet wins; enter its limit");
}

Finding dial_turn_taken_out(std::string field, Length turn, bool turn_given) {
  return note(1065, std::move(field),
              fmt::format("The needle passed zero, as answered: whole turns of the dial ({}{}) were taken out",
                          short_inches(turn), turn_given ? "" : ", taken as 100 graduations"));
}

Finding no_stated_error() {
  return note(1066, "setup.stated_error", "No error of the indicator stated: the uncertainty leaves it out");
}

Finding swing_or_offset(std::string field, Length high) {
  return note(
      1067, std::move(field), fmt::format("Lowest needle 0, highest {}: taken as the full swing", short_inches(high)),
      fmt::format("If it is an offset or one side of a ±, the runout is twice that, {}: say so under \"What was "
                  "noted\"",
                  short_inches(2.0 * high)));
}

Finding cranks_shift() {
  return note(1068, "", "Pressed cranks shift in use: this figure belongs to today's date and odometer");
}

Finding readings_confirmed() {
  return note(1069, "readings_checked", "The readings look odd and were said to be right");
}

Finding swing_doubled() {
  return note(1070, "setup.swing_means", "Half of the swing was noted: the runout is twice what was typed");
}

// ---- two planes ----

Finding wheels_scissored(Length opposed) {
  return note(
      1080, "other_side",
      fmt::format("The two shafts run opposite ways, {} square to the crankpin: the wheels are scissored, turned "
                  "on the pin",
                  short_inch_and_mm(opposed)));
}

Finding wheels_pinched_or_spread(bool pinched, Length common) {
  return note(1081, "other_side",
              fmt::format("Both shafts run together, {} in line with the crankpin: the wheels are {} on the side away "
                          "from the pin",
                          short_inch_and_mm(common), pinched ? "pinched, closer together" : "spread, further apart"));
}

Finding common_part_is_setup(Length common, Angle at) {
  return note(1082, "other_side",
              fmt::format("Both shafts run together, {} at {}, not in line with the crankpin: set-up or bad centres",
                          short_inch_and_mm(common), degrees(at)),
              "Check how the crank is carried and measure again");
}

Finding pattern_not_named(const std::string& missing) {
  return note(1083, "other_side", fmt::format("What the wheels did is not named; not said: {}", missing), "Say it");
}

Finding angles_turned_round(std::string field) {
  return note(1084, std::move(field), "Angles seen from the left were turned round, so that both sides run alike");
}

Finding v_blocks_not_named() {
  return note(1085, "other_side.support", "In V-blocks the blocks add their own shape: the parts are shown, not named",
              "Read it in its own mains or on centres");
}

Finding signs_turned_round() {
  return note(1086, "other_side.same_side",
              "The indicators stand on opposite sides of the engine: the signs of the other side were turned round");
}

Finding opposed_part_elsewhere(Length opposed, Angle at) {
  return note(
      1087, "other_side",
      fmt::format("The two shafts run opposite ways, {} at {}, not square to the crankpin: not scissored wheels "
                  "alone; a bent shaft or the set-up",
                  short_inch_and_mm(opposed), degrees(at)));
}

Finding too_much_for_gears() {
  return caution(
      1088, "",
      "Too much for gears. Open are: chains, if it is inside the engine maker's own limit; or have the crank "
      "trued and its wheels welded or the pin plugged, then gears",
      "Truing is for someone with a truing stand who does this work; never strike a crank in the case");
}

Finding bent_shaft_hurts_with_chains() {
  return caution(1050, "",
                 "Chains forgive more runout than gears, the rest does not: a badly bent shaft wears the cam plate's "
                 "bushing and works the oil pump off its centre (common practice, no published source)",
                 "Look at bushing, shaft and pump before closing it with chains");
}

Finding no_high_spot(std::string field) {
  return note(1089, std::move(field), "Without a high spot on both sides the two planes can't be put together",
              "Note the mark under the indicator when the needle is highest");
}

}  // namespace camside::remarks::runout
