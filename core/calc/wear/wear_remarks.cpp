#include "calc/wear/wear_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"

namespace camside::remarks::wear {

namespace {

std::string joined(const std::vector<std::string>& words, const char* last) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? last : ", ";
    text += words[i];
  }
  return text;
}

}  // namespace

std::string listed(const std::vector<std::string>& words) {
  return joined(words, " and ");
}

Finding no_readings() {
  return refusal(1601, "readings", "There is no reading of the thickness",
                 "Measure from the backing to the bottom of the groove and enter it with the odometer");
}

Finding now_before_last(Distance now, Distance last) {
  return refusal(1602, "odometer_now",
                 fmt::format("The odometer now, {}, is below the last reading's, {}; allowed is that and above",
                             miles_and_km(now), miles_and_km(last)),
                 "Correct one of them; over a replaced odometer enter the distances summed up");
}

Finding flat_jaws() {
  return doubt(1620, "anvil", "Flat caliper jaws bridge the groove and read thick",
               "Measure with a ball or a pin to the bottom of the groove");
}

Finding anvil_not_said() {
  return doubt(1621, "anvil", "It was not said what the shoe was measured with; flat jaws read thick",
               "Say it: a ball or a pin reaches the bottom of the groove");
}

Finding not_looked_at(const std::vector<std::string>& what) {
  return doubt(1622, "seen", fmt::format("Not looked for: {}", joined(what, " or ")),
               "Look under a good light and enter yes or no for each: any of them is Outside at any thickness");
}

Finding thicker_than_before(std::string field, Length before, Length now) {
  return doubt(
      1623, std::move(field),
      fmt::format("{} is thicker than {} before it", short_inch_and_mm(now), short_inch_and_mm(before)),
      "A new part, or outer and inner shoe exchanged? Keep one list for each shoe, from the day it was fitted");
}

Finding thick_for_a_shoe(std::string field, Length thickness) {
  return doubt(1624, std::move(field),
               fmt::format("{} is thick for a shoe; about 0.1 to 0.5 in of material is usual (from memory)",
                           short_inch_and_mm(thickness)),
               "Back metal measured as well? Measure the material alone");
}

Finding ridden_since(Distance now, Distance last, Distance no_sooner) {
  return doubt(1625, "odometer_now",
               fmt::format("Ridden from {} to {} since the last reading, past {}, where the limit may be reached",
                           miles_and_km(last), miles_and_km(now), miles_and_km(no_sooner)),
               "Measure it again");
}

Finding damaged(const std::vector<std::string>& what) {
  return caution(1640, "seen", fmt::format("The shoe is {}: Outside at any thickness", joined(what, " and ")),
                 "Replace it, and look for what came off: oil passages, screens, the pump");
}

Finding too_thin() {
  return caution(1641, "limit", "The shoe is thinner than its limit", "Replace it");
}

Finding may_be_reached_already(Distance from) {
  return caution(1642, "readings",
                 fmt::format("By the readings the limit may be reached already, from {} on", miles_and_km(from)),
                 "Measure it again soon, and more finely");
}

Finding scatter_large(Length scatter, Length expected) {
  return caution(1643, "readings",
                 fmt::format("The readings scatter by {} about their line; their own ± explains {}",
                             short_inch_and_mm(scatter), short_inch_and_mm(expected)),
                 "Always the same spot? The same shoe? Or the wear is no straight line");
}

Finding rests_on_usual_wear(const std::string& source) {
  return caution(
      1644, "usual_wear",
      fmt::format("The forecast rests on one distance and the entered usual wear ({}), with no interval", source),
      "Measure this shoe again later: its own wear counts");
}

Finding far_beyond_the_readings(Distance ahead, Distance covered) {
  return caution(1645, "readings",
                 fmt::format("The forecast reaches {} beyond the last reading; the readings cover {}",
                             miles_and_km(ahead), miles_and_km(covered)),
                 "Measure it in between: wear is no straight line for that long");
}

Finding two_readings_only() {
  return note(1650, "readings", "Two readings give a line and no interval: nothing shows how far they scatter",
              "A third reading gives one");
}

Finding one_distance_only() {
  return note(1651, "readings", "All readings are of one distance, so there is no rate of wear and no forecast",
              "Measure it again later, or enter the usual wear with its source");
}

Finding slope_not_proven(double g) {
  return note(
      1652, "readings",
      fmt::format("The readings scatter too much to prove any wear (g = {:.3g}, 1 and above proves none), so the "
                  "interval has no end and there is no forecast",
                  g),
      "Read more finely, always at the same spot, or over a longer distance");
}

Finding never_by_the_line() {
  return note(1653, "readings", "The line of the readings does not fall: by it the limit is never reached, no forecast",
              "Check the readings; a shoe does wear");
}

Finding beyond_any_odometer() {
  return note(1654, "readings", "The line meets the limit beyond 1,000,000 mi (1,609,344 km): no forecast");
}

Finding no_limit() {
  return note(1655, "limit", "No limit is entered, so nothing is judged and nothing forecast",
              "Enter the least thickness and who says so");
}

Finding latest_open() {
  return note(1656, "readings", "The late end of the interval lies beyond any odometer and stays open");
}

Finding not_a_clearance() {
  return note(1657, "readings",
              "The forecast is no clearance: shoes groove, crack, chip and shed, and wear is no straight line");
}

Finding look_before_that(Distance look_by, Distance by_line) {
  return note(1664, "look_again",
              fmt::format("By its wear alone there is no sooner proof than {}; the look interval comes first, at {}",
                          miles_and_km(by_line), miles_and_km(look_by)),
              "Look then, however thick it was");
}

Finding repeatability_taken(Length graduation) {
  return note(
      1658, "repeatability",
      fmt::format("Repeatability of a reading: one graduation taken, {} (from memory)", short_inch_and_mm(graduation)),
      "Measure the same spot five times and enter how far that scatters");
}

Finding limit_reached() {
  return note(1659, "readings", "The last reading is below the limit, so there is nothing to forecast");
}

Finding no_forecast_of_damaged() {
  return note(1660, "seen", "No forecast for a damaged shoe");
}

Finding no_forecast_of_mixed() {
  return note(1661, "readings", "No forecast while a reading is thicker than the one before it");
}

Finding silence_proves_nothing() {
  return note(1662, "", "Silence proves nothing: worn spring-loaded shoes often make no noise");
}

Finding usual_wear_not_used() {
  return note(1663, "usual_wear", "The shoe's own readings give its wear; the entered usual wear is not used");
}

}  // namespace camside::remarks::wear
