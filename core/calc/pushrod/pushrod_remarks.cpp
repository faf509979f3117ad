#include "calc/pushrod/pushrod_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"
#include "units/format.hpp"

namespace camside::remarks {

namespace {

std::string len(Length v) {
  return inch_and_mm(v, 3);
}

std::string degrees_celsius(Temperature t) {
  return fmt::format("{} ({})", format(t, System::Metric), format(t, System::Inch));
}

std::string in_minutes(Duration d) {
  return fmt::format("{:.4g} min", d.in_minutes());
}

// What somebody may have meant by a pitch that no adjuster has.
std::string meant_by(ThreadPitch pitch) {
  const auto tpi = [](double v) { return v >= 8.0 && v <= 127.0; };
  const double mm = pitch.in_mm();
  if (tpi(mm)) return fmt::format("{:.6g} threads per inch typed as a pitch? Pick tpi", mm);
  if (tpi(mm / 25.4)) return fmt::format("{:.6g} threads per inch? Pick tpi and type that", mm / 25.4);
  if (mm * 25.4 >= 0.2 && mm * 25.4 <= 3.0) return fmt::format("{:.6g} in typed as mm? Pick in", mm);
  return "Measure over ten threads and enter that";
}

}  // namespace

Finding pitch_missing() {
  return refusal(1401, "pitch", "The thread of the adjuster is not given",
                 "Enter it from the part's sheet, or the length over ten threads");
}

Finding pitch_twice(std::string field, std::string_view other) {
  return refusal(1402, std::move(field), fmt::format("A pitch and ten threads are both given ({} as well)", other),
                 "Keep the one you trust and take the other out");
}

Finding pitch_unlikely(std::string field, ThreadPitch pitch) {
  return refusal(
      1403, std::move(field),
      fmt::format("No adjuster has a pitch of {:.6g} mm ({:.4g} tpi); allowed is 0.2 to 3 mm (8.5 to 127 tpi)",
                  pitch.in_mm(), pitch.in_threads_per_inch()),
      meant_by(pitch));
}

Finding preload_without_travel() {
  return refusal(1404, "preload", "Neither preload nor plunger travel is given; half of the travel is the only default",
                 "Enter the travel, or the preload of the lifter maker's sheet");
}

Finding travel_missing() {
  return refusal(1405, "travel", "Backing off from the bottom needs the plunger's travel",
                 "Measure it, or take it from the lifter maker's sheet");
}

Finding preload_beyond_travel(Length preload, Length travel) {
  return refusal(1406, "preload",
                 fmt::format("The preload is {}; the plunger has {} of travel in all, so allowed is 0 to that",
                             len(preload), len(travel)),
                 "Correct the preload or the travel");
}

Finding travel_like_a_height(Length travel, bool refused) {
  const std::string text =
      fmt::format("The travel is {}; plungers travel about 0.04 to 0.25 in (1 to 6.4 mm)", len(travel));
  const std::string remedy = "Installed height typed for travel? Enter how far the plunger moves";
  return refused ? refusal(1407, "travel", text, remedy) : doubt(1407, "travel", text, remedy);
}

Finding preload_on_solid_lifter(Length preload) {
  return refusal(1408, "preload", fmt::format("A solid lifter takes no preload; entered is {}", len(preload)),
                 "Take the preload out, or say that the lifters are hydraulic; allowed is 0");
}

Finding fixed_rods_do_not_turn() {
  return refusal(1409, "turned", "Rods of fixed length have no adjuster, but turns are entered",
                 "Take the turns out, or say that the rods are adjustable");
}

Finding margin_top_short(Length margin, Length least) {
  return caution(1410, "preload",
                 fmt::format("Only {} of preload; at least {} keeps the plunger off its stop", len(margin), len(least)),
                 "Go deeper by a flat or two");
}

Finding margin_bottom_short(Length margin, Length least) {
  return caution(
      1411, "preload",
      fmt::format("Only {} left below the plunger; at least {} keeps it off the bottom", len(margin), len(least)),
      "Come back by a flat or two: a plunger that bottoms holds its valve open");
}

Finding travel_too_small_for_margins(Length travel, Length least) {
  return caution(1412, "travel", fmt::format("A travel of {} has no room for {} to both ends", len(travel), len(least)),
                 "Limited-travel lifter: enter the least margin of its maker's sheet");
}

Finding margins_not_known() {
  return doubt(1413, "travel", "Without the plunger's travel nobody can say how near its bottom is",
               "Enter the travel from the lifter maker's sheet, or measure it");
}

Finding rounded_to_nearest() {
  return note(1414, "travel", "Rounded to the nearest flat: the middle of the travel is not known");
}

Finding preload_is_half_of_travel(Length preload) {
  return note(
      1415, "preload",
      fmt::format("Preload taken as half of the travel: {} (common practice, no published source)", len(preload)),
      "The lifter maker's sheet wins");
}

Finding count_mixed_up(const std::string& counted, const std::string& likely) {
  return doubt(1416, "turned", fmt::format("Counted {}: {}", counted, likely),
               "Start again from zero and tap each full turn off as it is made");
}

Finding counted_is_not_the_setting(const std::string& counted, const std::string& setting) {
  return caution(1417, "turned", fmt::format("Counted {}, the setting is {}", counted, setting),
                 "Turn the difference, or keep it on purpose");
}

Finding plunger_at_its_end(bool bottomed) {
  if (bottomed)
    return caution(1418, "turned", "Turned this far the plunger sits on the bottom and the valve is held open",
                   "Do not turn the engine; come back to the setting");
  return caution(1418, "turned", "Turned this far there is no preload and the rod is loose", "Start again from zero");
}

Finding solid_lifter_holds_valve() {
  return caution(1419, "turned", "A solid lifter takes no preload: every turn past zero holds the valve open",
                 "Back to zero: the rod just spins, without play");
}

Finding direction_known(std::string_view lengthens) {
  return note(1420, "thread_hand",
              fmt::format("Seen from above the rod lengthens {}, its body held and the adjuster turned", lengthens),
              "Hold the body with a second wrench; turned against a held adjuster it goes the other way");
}

Finding direction_unknown() {
  return note(1421, "thread_hand", "Which way lengthens is not known",
              "Enter the hand of the thread and where the adjuster sits, or watch the thread come out");
}

Finding way_wet() {
  return note(1422, "lifter_state",
              "Wet: lengthen until up-and-down play is just gone and the rod still turns by the fingers, then count",
              "Then wait until the lifter has bled down");
}

Finding way_dry() {
  return note(
      1423, "lifter_state", "Dry: lengthen until the plunger bottoms, then count back",
      "Stop at the first firm resistance: going further opens the valve. Nothing to bleed and no wait; the spin "
      "test still has to be passed");
}

Finding way_not_sure() {
  return note(1424, "lifter_state", "Not sure: lengthen until the plunger bottoms, then count back",
              "Stop at the first firm resistance: going further opens the valve. If the plunger stands against two "
              "fingers it is pumped up: let it bleed down before bottoming it");
}

Finding way_solid() {
  return note(1425, "lifter", "Solid: cold, lengthen until the rod just spins by the fingers without play",
              "The lifter maker's sheet may want a clearance instead");
}

Finding way_fixed() {
  return caution(1426, "rods",
                 "Fixed rods: pulling the rocker box down pumps the lifters; a hurried one bends a rod or breaks a "
                 "support",
                 "That cylinder at compression TDC, tighten evenly in small steps, wait, spin both rods, go on. Intake "
                 "and exhaust rods differ: each back in its place");
}

Finding zero_late_if_dry() {
  return note(1427, "lifter_state", "A dry lifter taken for a wet one puts zero 0.02 to 0.05 in late",
              "If the plunger sinks under two fingers, choose dry");
}

Finding locknut() {
  return note(1428, "", "Tighten the locknut with the adjuster held, and look whether it moved",
              "Count the adjuster's flats, not the locknut's");
}

Finding release_rule(bool waits, Duration least_wait) {
  const std::string wait = waits ? fmt::format("; {} is only the least wait", in_minutes(least_wait)) : "";
  return caution(1430, "checks",
                 "Do not turn the engine until both rods of this cylinder spin with drag and without play" + wait,
                 "A lifter that is still up holds its valve open, where a piston can hit it");
}

Finding rod_check_now(std::string field, std::string_view rod) {
  return note(1431, std::move(field), fmt::format("The {} rod: check now", rod),
              "Spin it by the fingers, and feel for play up and down");
}

Finding rod_still_up(std::string field, std::string_view rod) {
  return caution(1432, std::move(field), fmt::format("The {} rod does not spin: its lifter is still up", rod),
                 "Wait and try again; cold thick oil takes longer");
}

Finding rod_loose(std::string field, std::string_view rod) {
  return caution(1433, std::move(field), fmt::format("The {} rod has play up and down: it is loose", rod),
                 "Set it again from zero");
}

Finding rod_spins_early(std::string field, std::string_view rod, Duration since, Duration least) {
  return caution(
      1434, std::move(field),
      fmt::format("The {} rod spins after {}, before the least wait of {}", rod, in_minutes(since), in_minutes(least)),
      "Was the lifter dry? Then zero was found late; set it again the dry way");
}

Finding engine_released() {
  return note(1435, "checks", "Both rods spin with drag and without play: on to the next cylinder");
}

Finding engine_locked() {
  return caution(1438, "checks", "Engine locked: do not turn it", "Both rods of the cylinder set last must pass first");
}

Finding rod_listed_twice(std::string field, std::string_view rod) {
  return refusal(1436, std::move(field), fmt::format("The {} rod is listed twice", rod),
                 "Keep the last test of each rod");
}

Finding picture_incomplete() {
  return refusal(1437, "left_to_right", "The picture needs each of the four rods once", "List all four, left to right");
}

Finding find_compression_tdc(std::string_view first, Angle forward, std::string_view second) {
  return note(
      1440, "first",
      fmt::format("Start at the {} cylinder's compression TDC; {:.0f}° forward is that of the {} cylinder", first,
                  forward.in_deg(), second),
      "Watch that cylinder's intake rod, or its lifter where no rod is in, rise and come back down; or feel for "
      "pressure with a thumb over its plug hole. Then bring the piston up");
}

Finding both_on_the_heel() {
  return note(1441, "",
              "Both rods of the cylinder at their lowest, and neither lifter moves over 30° of crank each way",
              "If one moves it is the other TDC: one crank turn on");
}

Finding engine_warm_at_setting(Temperature at, Length more_when_cold) {
  return caution(1450, "heat.setting_temperature",
                 fmt::format("The engine is at {} while setting; cold the preload will be {} more", degrees_celsius(at),
                             len(more_when_cold)),
                 "Let it cool first");
}

Finding rise_unlikely(std::string field, std::string_view part, Temperature hot, TemperatureDifference rise,
                      bool confirmed) {
  const std::string text = fmt::format("{} rises by {:.4g} K to {}", part, rise.in_kelvin(), degrees_celsius(hot));
  if (confirmed) return note(1452, std::move(field), text + "; confirmed as right");
  return doubt(1451, std::move(field), text + ", more than 200 K",
               fmt::format("°F typed as °C? {:.4g} °F is {:.4g} °C. Pick the unit or confirm the temperatures",
                           hot.in_celsius(), Temperature::fahrenheit(hot.in_celsius()).in_celsius()));
}

Finding rod_as_hot_as_stack() {
  return caution(1453, "heat.rod.hot", "Rod and barrels are given the same hot temperature",
                 "Rods stay cooler: about 50 to 90 °C above cold, barrels 80 to 150 (from memory)");
}

Finding expansions_assumed() {
  return note(1454, "heat",
              "Expansion not given is taken as 11.5e-6/K for rods and stems (steel) and 23.1e-6/K for stack and head "
              "(aluminium), Journal of Research of NIST 99 (1994)",
              "Iron barrels 10 to 11, aluminium rods 23");
}

Finding lash_opens(std::string_view when, Length lash, bool solid) {
  const std::string text = fmt::format("{} the lash opens by {}", when, len(lash));
  if (solid) return note(1455, "heat", text, "Solid lifters tick when hot");
  return caution(1455, "heat", text, "More preload, or rods that grow with the barrels");
}

Finding plunger_bottoms(std::string_view when, Length over) {
  return caution(1456, "heat", fmt::format("{} the plunger bottoms, {} too far", when, len(over)),
                 "Less preload: a bottomed plunger holds its valve open");
}

Finding hot_margin_short(std::string_view when, Length margin, Length least) {
  return caution(1457, "heat",
                 fmt::format("{} only {} is left to one end; {} at least when set", when, len(margin), len(least)),
                 "Move the setting toward the middle");
}

Finding stack_missing() {
  return refusal(1458, "heat.stack", "The stack has no pieces; without them only the rod would grow",
                 "Enter case deck, barrel, head and rocker box, each with its length and hot temperature");
}

Finding valve_side_not_counted() {
  return note(1459, "heat.valve", "Growth of valve stem and head above the seat is not counted");
}

Finding new_length(Length change) {
  const bool longer = change >= Length{};
  return note(1460, "new_length",
              fmt::format("The rod must be {} {}", len(longer ? change : -change), longer ? "longer" : "shorter"));
}

Finding length_changes_fixed_preload(Length preload) {
  return note(1461, "new_length", fmt::format("The old fixed rods would now give a preload of {}", len(preload)));
}

Finding engagement_short(Length engaged, Length least) {
  return caution(1470, "engagement.engaged",
                 fmt::format("Only {} of thread is engaged; at least {} must be", len(engaged), len(least)),
                 "A longer rod is needed: a short thread strips or bends");
}

Finding engagement_rule() {
  return note(1471, "engagement.least", "Least engaged taken as one diameter, steel on steel (from memory)",
              "The maker's mark on the adjuster wins");
}

Finding collapsed_too_long(Length by) {
  return caution(1480, "collapsed.shortest",
                 fmt::format("The collapsed rod is {} too long to pass between cup and rocker", len(by)),
                 "Shorter rod, or loosen the rocker box to put it in; never force it");
}

Finding room_not_on_heel() {
  return doubt(1481, "collapsed.measured_on",
               "The room was measured with the lifter on the lobe; on the heel it is larger",
               "Turn to that cylinder's compression TDC and measure again");
}

Finding longest_too_short(Length by) {
  return caution(1482, "collapsed.longest", fmt::format("Fully out the rod is {} too short for the preload", len(by)),
                 "Longer rod");
}

Finding tube_in_the_way() {
  return note(1483, "collapsed", "Lift or take the cover tube out of the way: it can block a rod that would pass");
}

Finding boxes_come_off() {
  return note(1490, "save_or_cut.boxes_leak", "The rocker boxes leak and come off anyway: the rods come out whole");
}

Finding look_at_boxes_first() {
  return caution(1491, "save_or_cut.boxes_leak", "Look at the rocker-box gaskets before any rod is cut",
                 "If they leak the boxes come off anyway, and the fixed rods can be saved");
}

Finding lift_beyond_fixed(Length lift, Length range) {
  return caution(1492, "save_or_cut.valve_lift",
                 fmt::format("Lift {} is beyond what the fixed rods serve, {}: adjustable rods, but they come last",
                             len(lift), len(range)),
                 "First see that the engine stands this lift: springs and their coil bind, retainer to seal, piston to "
                 "valve");
}

Finding lift_suits_fixed(Length lift, Length range) {
  return note(1493, "save_or_cut.valve_lift",
              fmt::format("Lift {} is within what the fixed rods serve, {}", len(lift), len(range)),
              "Only a prompt to measure: heel radius and stack settle the length");
}

Finding rods_wanted_whole() {
  return note(1494, "save_or_cut.use_again", "The fixed rods are wanted whole: the rocker boxes come off");
}

Finding cutting_is_quick() {
  return note(1495, "save_or_cut.boxes_leak",
              "The boxes are dry and the rods not wanted: cutting them saves opening the rocker boxes");
}

Finding lift_not_given() {
  return note(1496, "save_or_cut.valve_lift", "Without the cam's lift nobody can say whether fixed rods serve",
              "Enter the valve lift of the new cam");
}

}  // namespace camside::remarks
