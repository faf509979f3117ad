#include "calc/inspection_due/inspection_due_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"
#include "units/format.hpp"

namespace camside::remarks {

namespace {

bool near_wrap(double from, double to) {
  return from >= 90'000.0 && from < 100'000.0 && to < 10'000.0;
}

// What may have happened when a clock reads less than before.
std::string why_back(Distance from, Distance to) {
  if (near_wrap(from.in_miles(), to.in_miles()) || near_wrap(from.in_km(), to.in_km()))
    return "Did a five-digit odometer pass 99,999? Record it as replaced: the old one ended at 100,000, the new one "
           "starts at 0";
  if (to < Distance::miles(1000.0))
    return "Trip meter read? Correct it; odometer replaced? Record that with both readings";
  if (to * 1.609344 >= from)
    return "Miles and km mixed? Pick the unit the odometer shows; odometer replaced? Record that";
  return "Odometer replaced? Record that with both readings; else correct the reading";
}

}  // namespace

Finding log_empty() {
  return doubt(1501, "log", "There is no reading of the odometer, so nothing is counted by distance",
               "Log the odometer with its date");
}

Finding day_after_today(std::string field, Date day, Date today) {
  return refusal(1502, std::move(field),
                 fmt::format("{} is after today, {}; allowed is up to today", format_date(day), format_date(today)),
                 "Month and day exchanged, or a wrong year? Correct the date");
}

Finding clock_went_back(std::string field, Distance from, Distance to) {
  return doubt(1503, std::move(field),
               fmt::format("The odometer went back from {} to {} and no new one is recorded", miles_and_km(from),
                           miles_and_km(to)),
               why_back(from, to));
}

Finding tenths_digit_typed(std::string field, Distance read, Distance likely) {
  return refusal(1504, std::move(field),
                 fmt::format("The odometer reads {}, ten times what its neighbours say; allowed is about {}",
                             miles_and_km(read), miles_and_km(likely)),
                 "Tenths digit typed as well? Leave the last digit out");
}

Finding jump_too_far(std::string field, const Jump& jump) {
  return refusal(
      1505, std::move(field),
      fmt::format("From {} to {} in {} {}: nobody rides that far; allowed is 1,500 mi (2,414 km) a day",
                  miles_and_km(jump.from), miles_and_km(jump.to), jump.days, jump.days == 1 ? "day" : "days"),
      jump.fits_as_km ? "A km odometer typed in miles? Pick km" : "Correct the reading or its date");
}

Finding reading_very_large(std::string field, Distance read) {
  return doubt(1506, std::move(field), fmt::format("The odometer reads {}", miles_and_km(read)),
               "Tenths digit typed as well? Correct it");
}

Finding last_reading_old(Date last, long days) {
  return caution(1507, "log", fmt::format("The last reading is of {}, {} days ago", format_date(last), days),
                 "Read the odometer and log it: the distance left counts from the last reading");
}

Finding log_too_long(std::size_t entries, std::size_t most) {
  return refusal(1508, "log", fmt::format("The log has {} readings; allowed is up to {}", entries, most),
                 "Keep about one a week and all swaps");
}

Finding day_unlikely(std::string field, Date day) {
  return refusal(1509, std::move(field), fmt::format("The date is {}; allowed is 1900 to 2200", format_date(day)),
                 "Correct the year");
}

Finding item_without_rule(std::string field, std::string_view item) {
  return refusal(1510, std::move(field), fmt::format("{} has neither a distance nor months", item),
                 "Enter its interval, or pick the engine's years when it is one of their usual items");
}

Finding source_taken_as_owner(std::string field, std::string_view item) {
  return note(1511, std::move(field), fmt::format("Interval of {}: taken as the owner's own", item),
              "Say who gives it, when it comes from a sheet");
}

Finding service_beyond_clock(std::string field, std::string_view item, Distance at, Distance clock) {
  return refusal(
      1513, std::move(field),
      fmt::format("{} was done at {}, but the odometer read only {}", item, miles_and_km(at), miles_and_km(clock)),
      "Correct the reading, or the odometer's log; papers that contradict the odometer prove nothing");
}

Finding proof_without_reading(std::string field, std::string_view item) {
  return doubt(1514, std::move(field), fmt::format("The proof for {} has no odometer reading", item),
               "Enter it: without it the distance isn't counted");
}

Finding proof_without_date(std::string field, std::string_view item) {
  return doubt(1515, std::move(field), fmt::format("The proof for {} has no date", item),
               "Enter it: without it the months aren't counted");
}

Finding proof_without_anything(std::string field, std::string_view item) {
  return refusal(1516, std::move(field), fmt::format("The proof for {} has neither a date nor a reading", item),
                 "Enter what the paper says, or say that there is no proof");
}

Finding service_on_which_clock(std::string field, std::string_view item) {
  return refusal(1517, std::move(field),
                 fmt::format("The odometer was replaced, and {} has no date to say on which one it was read", item),
                 "Enter the date of the service");
}

Finding service_against_log(std::string field, std::string_view item, Distance at, Date day) {
  return caution(1518, std::move(field),
                 fmt::format("{} at {} on {} does not fit between the readings of the log", item, miles_and_km(at),
                             format_date(day)),
                 "Check paper and log against each other");
}

Finding nothing_listed() {
  return refusal(1519, "items", "There is nothing to look after in the list",
                 "Add an item with its interval, or pick the engine's years");
}

Finding overdue(std::string field, std::string_view item, const std::string& by) {
  return caution(1520, std::move(field), fmt::format("{}: overdue by {}", item, by), "Look at it next");
}

Finding due_soon(std::string field, std::string_view item, const std::string& in) {
  return note(1521, std::move(field), fmt::format("{}: due in {}", item, in));
}

Finding due_for_want_of_proof(std::string field, std::string_view item) {
  return caution(1525, std::move(field), fmt::format("{}: due now, as nobody can show that it was ever done", item),
                 "Find the bill with its reading, or look at it and log what you saw with a photo");
}

Finding no_proof(std::string field, std::string_view item) {
  return caution(1522, std::move(field), fmt::format("{}: no proof that it was ever done; counted from zero", item),
                 "Find the paper, or look at it and log what you saw with a photo");
}

Finding states_in_doubt() {
  return doubt(1523, "log", "The distance ridden is in doubt, and so is every state by distance",
               "Correct the log: record the new odometer, or correct the reading");
}

Finding nothing_to_count_from(std::string field, std::string_view item) {
  return caution(1524, std::move(field), fmt::format("{}: nothing to count from", item),
                 "Log the odometer, or enter the last service with its proof");
}

Finding rate_not_known() {
  return note(1530, "log", "No date is forecast: the rate of riding needs readings of two days");
}

Finding rate_from_few(std::size_t points) {
  return note(1531, "log",
              fmt::format("The rate of riding rests on {} readings; fewer than 5 cannot give a 95 % range", points),
              "Log the odometer now and then");
}

Finding not_ridden() {
  return note(1532, "log", "By the log the bike is not ridden; no date follows from distance");
}

Finding latest_day_open() {
  return note(1533, "log", "The log allows that the bike is hardly ridden, so the latest day stays open");
}

}  // namespace camside::remarks
