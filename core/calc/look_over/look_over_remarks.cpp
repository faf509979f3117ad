#include "calc/look_over/look_over_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"
#include "units/format.hpp"

namespace camside::remarks::look_over {

namespace {

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : "; ") + name;
  return text;
}

}  // namespace

Finding no_engine_of_that_year(std::optional<int> year) {
  return refusal(1801, "year",
                 year ? fmt::format("Nothing is known of an engine of {}", *year)
                      : std::string("The book holds no engine that goes by year"),
                 "Correct the year, pick the engine by what it is, or enter your own");
}

Finding no_such_engine(std::string_view id) {
  return refusal(1802, "engine", fmt::format("There is no engine \"{}\"", id),
                 "Pick one of those known, or leave it out and enter the year");
}

Finding no_such_question(std::string field, std::string_view id) {
  return refusal(1803, std::move(field), fmt::format("There is no question \"{}\"", id),
                 "Write the id of one of the questions");
}

Finding answered_twice(std::string field, std::string_view id) {
  return refusal(1804, std::move(field), fmt::format("The question \"{}\" is answered twice", id), "Keep one answer");
}

Finding no_such_risk(std::string field, std::string_view id) {
  return refusal(1805, std::move(field), fmt::format("There is no risk \"{}\"", id),
                 "Write the id of one of the risks");
}

Finding costs_out_of_order(std::string field) {
  return refusal(1806, std::move(field), "The likely cost must lie between best and worst",
                 "Enter best, likely and worst in rising order");
}

Finding cost_twice(std::string field, std::string_view id) {
  return refusal(1807, std::move(field), fmt::format("The cost of \"{}\" is given twice", id), "Keep one");
}

Finding life_twice(std::string field, std::string_view id) {
  return refusal(1808, std::move(field), fmt::format("\"{}\" has two life curves", id), "Keep one");
}

Finding reading_of_no_proof(std::string field, std::string_view id) {
  return refusal(1809, std::move(field),
                 fmt::format("\"{}\" asks for no proof, so there is no day or reading on it", id),
                 "Leave them out, or give them with the question that asks for the bill");
}

Finding cold_start_void(bool warm) {
  return caution(1820, "touched",
                 warm
                     ? "The engine was warm: a good start proves nothing; what was bad counts all the same"
                     : "Nobody touched the engine first: a good start proves nothing; what was bad counts all the same",
                 "\"I'd like to start it cold, please.\" Come back when it has stood overnight");
}

Finding engine_not_settled(const std::vector<std::string>& names, const std::string& counted) {
  return caution(
      1821, "year",
      fmt::format("It can be any of: {}. Counted is the dearest: {}; the range covers all", joined(names), counted),
      "Read the model year off the papers or the frame, or pick the engine");
}

Finding year_of_no_engine(std::optional<int> year, std::string_view own) {
  return caution(1836, "year",
                 year ? fmt::format("{} is outside all the engine years known here, so it goes on as: {}", *year, own)
                      : fmt::format("Nothing is known by year, so it goes on as: {}", own),
                 "Correct the year, or pick the engine by what it is");
}

Finding drive_not_asked(const std::string& counted) {
  return caution(1837, "drive", "What turns the cams was not asked; counted as built: " + counted,
                 "Ask it first: a converted bike has other work and other questions");
}

Finding drive_not_settled(const std::vector<std::string>& names, const std::string& counted) {
  return caution(
      1838, "drive",
      fmt::format("What turns the cams is not known: {}. Counted is the dearest: {}", joined(names), counted),
      "A bill for the conversion tells, or the cover off");
}

Finding drive_unlike_engine(const std::string& drive, const std::string& engine) {
  return caution(1839, "drive", fmt::format("{} does not go with this engine: {}", drive, engine),
                 "Compare the engine's number with the papers, or correct the drive");
}

Finding year_and_engine_differ(std::string_view engine) {
  return caution(1822, "year", fmt::format("The year is not one of this engine's: {}", engine),
                 "Is the engine the one the bike was made with? Compare its number with the papers");
}

Finding no_odometer() {
  return caution(1823, "odometer", "No odometer: each chance is taken as for a bike of many miles",
                 "Read it, and ask for a paper with a date and a reading");
}

Finding rare_odometer(Distance odometer) {
  return caution(1824, "odometer", fmt::format("A bike of {} is a rare one", miles_and_km(odometer)),
                 "Tenths typed as well? A km clock?");
}

Finding few_miles(Distance odometer) {
  return caution(1829, "odometer", fmt::format("A used bike of only {}?", miles_and_km(odometer)),
                 "Thousands typed with a point? Write 41300, not 41.300");
}

Finding nothing_seen() {
  return caution(1825, "answers", "Nothing was looked at: the sum rests on the engine and the odometer alone",
                 "Start with the look that stands first");
}

Finding proof_of_a_day_to_come(std::string field, Date day, Date today) {
  return caution(1840, std::move(field),
                 fmt::format("The bill is of {}, and today is {}: it contradicts the clock and proves nothing",
                             format_date(day), format_date(today)),
                 "Typed wrong? Correct the day. If the bill says so, walk away");
}

Finding proof_too_old(std::string field, std::string_view risk, Distance since, Distance every) {
  return caution(
      1841, std::move(field),
      fmt::format("{}: the bill is {} old, and it is due every {}", risk, miles_and_km(since), miles_and_km(every)),
      "The work is due again, so it stays in the sum");
}

Finding proof_without_distance(std::string field, std::string_view risk) {
  return caution(1842, std::move(field), fmt::format("{}: a bill without a reading does not clear it", risk),
                 "Enter the odometer on the bill, and that of the bike");
}

Finding silence_proves_nothing(std::string field, std::string_view question) {
  return note(1826, std::move(field),
              fmt::format("\"{}\" Silence proves nothing: worn shoes often make no noise. Nothing changes", question));
}

Finding good_answer_hidden(std::string field, std::string_view question, std::string_view hidden_by) {
  return caution(1827, std::move(field), fmt::format("\"{}\" doesn't count: \"{}\"", question, hidden_by),
                 "Only what is not hidden proves anything: look again when it shows");
}

Finding proof_above_odometer(std::string field, Distance reading, Distance odometer) {
  return caution(1828, std::move(field),
                 fmt::format("The bill says {}, the clock only {}: it contradicts the clock and proves nothing",
                             miles_and_km(reading), miles_and_km(odometer)),
                 "Typed wrong? Correct the reading. If the bill says so, walk away");
}

Finding placeholder_money(const std::vector<std::string>& risks) {
  constexpr std::size_t few = 3;
  return doubt(1830, "money_confirmed",
               risks.size() > few
                   ? fmt::format("No offer: {} prices of work for certain are made up", risks.size())
                   : fmt::format("No offer: these prices of work for certain are made up: {}", joined(risks)),
               "Enter yours row by row, or take a row as yours");
}

Finding no_asking_price() {
  return note(1831, "asking", "No asking price, so no offer; what to knock off stands by itself",
              "Enter what the seller wants");
}

Finding rare_price(Money asking) {
  return caution(1835, "asking", fmt::format("The seller asks only {:g}?", asking.in_amount()),
                 "Thousands typed with a point? Write 5800, not 5.800");
}

Finding costs_more_than_asked() {
  return caution(1832, "asking", "Putting it right costs more than the seller asks", "Buy it for parts, or leave it");
}

Finding asking_taken_as_sound() {
  return note(1833, "asking", "The asking price is taken as that of a sound bike",
              "Dearer than others like it? Enter what a sound one fetches instead");
}

Finding walk_away(const std::string& why) {
  return doubt(1834, "answers", "Walk away: " + why, "So there is no offer: no price makes up for it");
}

}  // namespace camside::remarks::look_over
