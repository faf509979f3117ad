#include "calc/gear_pick/gear_pick_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"

namespace camside::remarks {

Finding no_such_name(std::string field, std::string_view kind, const std::string& name) {
  return {1301, Severity::Refusal, std::move(field), fmt::format("There is no {} named “{}”", kind, name),
          fmt::format("Use the name of a {} of this engine, or add it", kind)};
}

Finding same_name_twice(std::string field, std::string_view kind, const std::string& name) {
  return {1302, Severity::Refusal, std::move(field), fmt::format("Two {}s are named “{}”", kind, name),
          "Give each its own name"};
}

Finding mesh_with_itself(std::string field, const std::string& shaft) {
  return {1303, Severity::Refusal, std::move(field), fmt::format("Both gears of this mesh sit on “{}”", shaft),
          "A mesh joins gears on two shafts"};
}

Finding nothing_to_solve() {
  return {1304, Severity::Refusal, "meshes", "No mesh was entered", "Enter at least one mesh with its measured lash"};
}

Finding shared_gear_unlike(std::string field, const std::string& gear) {
  return {1305, Severity::Refusal, std::move(field),
          fmt::format("“{}” has another module, pressure angle or helix here than in its first mesh", gear),
          "One gear has one set of teeth; if there are two gears, enter both"};
}

Finding too_many_combinations(std::size_t most) {
  return {1306, Severity::Refusal, "gears", fmt::format("The sizes make more than {} combinations in one set", most),
          "Leave out sizes that can't be wanted: the far ends first"};
}

Finding lash_upside_down(std::string field, Length low, Length high) {
  return {1307, Severity::Refusal, std::move(field),
          fmt::format("The lowest lash {} is above the highest {}", inch_and_mm(low), inch_and_mm(high)),
          "Exchange the two or correct them"};
}

Finding no_window(std::string field, const std::string& mesh) {
  return {1308, Severity::Refusal, std::move(field), fmt::format("No wanted lash is given for {}", mesh),
          "Enter the lowest or highest lash of the part maker's sheet for at least one state"};
}

Finding wanted_lash_upside_down(std::string field, Length lowest, Length highest) {
  return {1309, Severity::Refusal, std::move(field),
          fmt::format("The lowest wanted lash {} is above the highest {}", inch_and_mm(lowest), inch_and_mm(highest)),
          "Exchange the two or correct them"};
}

Finding size_meaning_not_said(std::string field, const std::string& gear) {
  return {1310, Severity::Refusal, std::move(field), fmt::format("It was not said what the sizes of {} mean", gear),
          "Say whether they are tooth thickness, over pins, pitch radius or a class; one step differs up to threefold"};
}

Finding size_far_from_fitted(std::string field, const std::string& size, Length by) {
  return {
      1314, Severity::Caution, std::move(field),
      fmt::format("Size “{}” differs by {} of tooth thickness from the fitted gear, more than a twentieth of a module",
                  size, inch_and_mm(by)),
      "Check the value and its unit"};
}

Finding train_contradicts(std::string field, const std::string& shaft) {
  return {1316, Severity::Refusal, std::move(field),
          fmt::format("“{}” would have to turn at two speeds at once", shaft),
          "Count the teeth again, and check which gears mesh"};
}

Finding train_not_checked() {
  return {1317, Severity::Note, "shafts",
          "These meshes join no crank with a cam and no two cams, so the ratio was not checked",
          "Say which shafts are crank and cam; it catches most typing errors"};
}

Finding no_uncertainty(std::string field, const std::string& mesh) {
  return {1320, Severity::Doubt, std::move(field), fmt::format("The ± of the measured lash in {} is not given", mesh),
          "Take it over from the lash measurement; without it nothing is proven"};
}

Finding other_method(std::string field, const std::string& mesh, const std::string& method) {
  return {
      1321, Severity::Doubt, std::move(field),
      fmt::format("The window of {} holds for another way of measuring{}", mesh, method.empty() ? "" : ": " + method),
      "Measure the way the sheet means, and say so"};
}

Finding nothing_fits(const std::string& meshes, const std::string& nearest, Length by) {
  return {1322, Severity::Caution, "gears",
          fmt::format("No combination of the sizes on offer fits {}; the nearest, {}, is off by {}", meshes, nearest,
                      inch_and_mm(by)),
          "Look for the size that would do, or for less runout"};
}

Finding would_fit(const std::string& gear, const std::string& sizes) {
  return {1323, Severity::Note, "gears", fmt::format("{} would do with {}", gear, sizes), ""};
}

Finding swing_too_wide(std::string field, const std::string& mesh, Length swing, Length room) {
  return {1324, Severity::Caution, std::move(field),
          fmt::format("The lash of {} swings by {} over the turn, the window is {} wide: no size can fit", mesh,
                      inch_and_mm(swing), inch_and_mm(room)),
          "Find the runout first: crank, gear seat, or another spline position"};
}

Finding not_in_stock(const std::string& choice) {
  return {1325, Severity::Caution, "gears", fmt::format("What fits, {}, is not in stock", choice), "Order it, or wait"};
}

Finding no_one_gear_would_do(const std::string& meshes) {
  return {1326, Severity::Note, "gears", fmt::format("In {} no other size of one gear alone would do", meshes), ""};
}

Finding step_is_not_lash(std::string field, const std::string& text) {
  return {1327, Severity::Note, std::move(field), text, ""};
}

Finding pressed_gear_changes(const std::string& gear) {
  return {1328, Severity::Caution, "gears", fmt::format("The pick changes “{}”, which is pressed on", gear),
          "It comes with its cam or needs a press; see whether another combination will do"};
}

}  // namespace camside::remarks
