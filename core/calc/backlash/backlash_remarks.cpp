#include "calc/backlash/backlash_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"

namespace camside::remarks {

namespace {

std::string joined(const std::vector<std::string>& items) {
  std::string text;
  for (const std::string& item : items) {
    text += (text.empty() ? "" : "; ") + item;
  }
  return text;
}

std::string degrees(Angle a) {
  const std::string text = fmt::format("{:.4g}°", a.in_deg());
  return text.front() == '-' ? "−" + text.substr(1) : text;
}

}  // namespace

Finding turn_said_for_some(std::string field) {
  return refusal(1201, std::move(field), "Some readings say which turn they are of and others don't",
                 "Say turn 1 or turn 2 for every reading, or count all angles from 0 to 720°");
}

Finding angle_beyond_its_turn(std::string field, Angle angle) {
  return refusal(1202, std::move(field),
                 fmt::format("The angle is {}, more than one turn, and a turn is given as well", degrees(angle)),
                 "Within a turn count from 0 to 360°, or leave the turn out");
}

Finding no_readings() {
  return refusal(1203, "readings", "There are no readings", "Read the lash at 8 positions over two crank turns");
}

Finding closing_reading(std::string field) {
  return note(1204, std::move(field), "Back to zero: not counted as a position");
}

Finding closing_reading_differs(std::string field, Length by) {
  return caution(1205, std::move(field),
                 fmt::format("Back at the start the reading differs from the first by {}, more than one graduation",
                             inch_and_mm(by)),
                 "Something moved: check the indicator's base, let the gears settle, and read again");
}

Finding one_turn_only(bool turns_given) {
  return doubt(1206, "readings", "The readings cover one crank turn; the cam gear needs two to come round",
               std::string("Turn the crank on past its mark and read the second turn") +
                   (turns_given ? "" : "; if that was done, say turn 1 or turn 2 for each reading"));
}

Finding too_few_positions(std::size_t given, int least, int usual) {
  return doubt(1207, "readings",
               fmt::format("{} position{} can miss the tightest spot; {} are the least and {} the usual number", given,
                           given == 1 ? "" : "s", least, usual),
               "Read more positions, evenly over two crank turns");
}

Finding gap_between_positions(Angle gap, Angle from) {
  return doubt(1208, "readings",
               fmt::format("Nothing was read over {} of crank turning after {}", degrees(gap), degrees(from)),
               "Read a position in between");
}

Finding loads_not_off() {
  return no_reading(1210, "loads_off", "Loads off is not confirmed; pressure on a lobe gives no lash or a false one",
                    "Lift the lifters or take the rods out, hold the crank still, then confirm");
}

Finding all_readings_nothing(bool loads_off) {
  const std::string text = "Every reading is 0";
  if (!loads_off) {
    return no_reading(1211, "readings", text, "Rods still in? Take the loads off and read again");
  }
  return caution(1211, "readings", text,
                 "Make sure that no rod presses on a lobe and that the indicator moves; else the teeth are jammed");
}

Finding negative_reading(std::string field, Length reading, std::size_t count) {
  return no_reading(1212, std::move(field),
                    fmt::format("{} {} below 0 (the first is {}); a swing can't be negative",
                                count == 1 ? std::string("A reading") : fmt::format("{} readings", count),
                                count == 1 ? "is" : "are", inch_and_mm(reading)),
                    "The dial's zero moved: set it at one end of the rock and read again");
}

Finding reading_beyond_indicator(std::string field, Length reading) {
  return refusal(1213, std::move(field),
                 fmt::format("The reading is {}; no lash and no fine indicator reaches that far", inch_and_mm(reading)),
                 "Typed in thou? Pick the unit or correct it; allowed is up to 5 mm (0.2 in)");
}

Finding reading_below_resolution(std::string field, Length reading, Length graduation) {
  return doubt(
      1214, std::move(field),
      fmt::format("The reading is {} mm, far below one graduation of {}", reading.in_mm(), inch_and_mm(graduation)),
      "Typed in inches with thou picked? Pick the unit or correct it");
}

Finding needle_wrapped(std::string field, Length reading, Length proposal) {
  return no_reading(
      1215, std::move(field),
      fmt::format("The reading is {}, nearly one turn of the needle beside the others", inch_and_mm(reading)),
      fmt::format("Did the needle pass 0? Then it is {}; correct it", inch_and_mm(proposal)));
}

Finding reading_large(std::string field, Length lash) {
  return caution(
      1216, std::move(field),
      fmt::format("This reading means a lash of {}; such gears read 0 to 0.25 mm (0 to 0.010 in)", inch_and_mm(lash)),
      "Check the unit, the radius and that the other gear was held");
}

Finding radius_looks_like_diameter(std::string field, Length radius, Length operating_radius) {
  return no_reading(1220, std::move(field),
                    fmt::format("The contact is said to be {} from the axis; the gear's operating radius is {}",
                                inch_and_mm(radius, 2), inch_and_mm(operating_radius, 2)),
                    "Diameter typed for radius? Correct it, or confirm the sizes");
}

Finding radius_off_the_flank(std::string field, Length radius, Length low, Length high, bool diameter) {
  return refusal(1221, std::move(field),
                 fmt::format("A flank of this gear lies between {} and {} from the axis; entered is {}",
                             inch_and_mm(low, 2), inch_and_mm(high, 2), inch_and_mm(radius, 2)),
                 diameter ? "Diameter typed for radius? Enter half of it"
                          : "Check the radius, and whether the indicator touches an arm and not a tooth");
}

Finding indicator_leans(std::string field, Angle angle) {
  return caution(
      1222, std::move(field),
      fmt::format("The indicator stands {} off the line of motion; a small error of that angle counts", degrees(angle)),
      "Stand it within 15° of the line of motion");
}

Finding no_flank_behind_plate(std::string field) {
  return refusal(1223, std::move(field), "With the plate on no indicator reaches the teeth behind it",
                 "Read on an arm on the end of the front cam");
}

Finding subtraction_behind_plate_only() {
  return refusal(1224, "access", "Reading by subtraction is for the mesh behind the plate",
                 "Read the crank mesh at its own gear");
}

Finding outer_lash_missing(std::string field) {
  return refusal(1225, std::move(field), "The outer lash at this position is missing; it must be taken off",
                 "Read the crank mesh at the same positions and enter its lash");
}

Finding subtraction_rocks_front_cam() {
  return refusal(1226, "rocked", "By subtraction the front cam, gear 2, is the one rocked", "Pick gear 2");
}

Finding radius_confirmed(std::string field, Length radius) {
  return note(1227, std::move(field), fmt::format("Contact radius {} confirmed as right", inch_and_mm(radius, 2)));
}

Finding mesh_not_in_train(int teeth1, int teeth2) {
  return no_reading(1228, "train", fmt::format("The train has no mesh of {} and {} teeth", teeth1, teeth2),
                    "Inner and outer gears exchanged? Correct the teeth of this mesh or the train");
}

Finding play_not_given(std::string field) {
  return no_reading(1230, std::move(field), "The play of the shaft is not given, so ± does not hold it",
                    "Push and pull the shaft with a needle on it and enter the swing; 0 if none shows");
}

Finding rocked_hard(Length play) {
  return doubt(1231, "force",
               fmt::format("Rocked hard, up to {} of sideways play adds to the reading one to one", inch_and_mm(play)),
               "Rock lightly until the teeth just touch, both shafts held the same way", Misleads::TooLarge);
}

Finding much_play(std::string field, Length play) {
  return caution(
      1232, std::move(field),
      fmt::format("The shaft has {} of play, above 0.002 in (common practice, no published source)", inch_and_mm(play)),
      "Look at its bearing first; lash cannot be set on a loose shaft");
}

Finding read_on_bench() {
  return no_reading(1240, "access",
                    "On the bench the inner ends of the cams hang free, so their lash is not the running one",
                    "Read again with the plate in the engine");
}

Finding read_by_feel() {
  return no_reading(1241, "access", "Lash by feel is logged, but proves nothing", "Read it with an indicator");
}

Finding subtraction_below_nothing(std::string field, Length lash) {
  return caution(1242, std::move(field), fmt::format("Total less outer lash leaves {} here", inch_and_mm(lash)),
                 "Were both read at the same position of the crank, and is the outer lash that of the pitch line?");
}

Finding window_empty(std::string field) {
  return refusal(1250, std::move(field), "The window has neither a least nor a most",
                 "Enter what the sheet says, or take the window out");
}

Finding window_upside_down(std::string field, Length min, Length max) {
  return refusal(
      1251, std::move(field),
      fmt::format("The least allowed, {}, is above the most allowed, {}", inch_and_mm(min), inch_and_mm(max)),
      "Exchange or correct them");
}

Finding window_for_another_method(const std::vector<std::string>& differences) {
  return no_reading(1252, "window.method",
                    fmt::format("The window is meant for another way of reading: {}", joined(differences)),
                    "Read the lash the way the sheet means it, or find a window for this way");
}

Finding own_method_not_said(const std::vector<std::string>& items) {
  return no_reading(1253, "method", fmt::format("The window asks for it, but it is not said: {}", joined(items)),
                    "Say how the lash was read");
}

Finding window_method_unknown() {
  return no_reading(1254, "window.method", "A window belongs to a way of reading, and this one's is not said",
                    "Enter what the sheet says: where, plate torqued, cold or hot, one spot or round the turn");
}

Finding window_narrower_than_proof(Length width, Length uncertainties) {
  return note(
      1255, "window",
      fmt::format("The window is {} wide and ± at both ends takes up {}: read this way nothing can prove Within",
                  inch_and_mm(width), inch_and_mm(uncertainties)),
      "A finer indicator, more positions or less play narrows ±");
}

Finding window_along_the_flank(const std::string& converted) {
  return note(1256, "window.method.line",
              fmt::format("Along the pitch line the sheet's figures would be {}", converted),
              "Enter these along the pitch line if the sheet means lash square to the flank at the pitch line");
}

Finding lash_not_judged(const std::string& states, const std::string& meant_for) {
  return note(1257, "state_windows",
              fmt::format("Outside of the window, but not judged by it, for the sheet is for {}: the lash {}",
                          meant_for, states),
              "If a sheet gives a window for that state too, enter it");
}

Finding too_tight() {
  return caution(1258, "", "Too tight: tight teeth never loosen safely and destroy teeth and bearings",
                 "Do not run it in; go down a size");
}

Finding too_loose() {
  return caution(1259, "", "Too loose: it clicks, which is a nuisance rather than a danger (from memory)",
                 "Go up a size, or judge it by ear with the owner");
}

Finding temperatures_assumed(const std::string& what) {
  return note(1260, "temperatures", "Temperatures and metals of the forecast are assumed: " + what, "Enter your own");
}

}  // namespace camside::remarks
