#include "calc/look_over/look_over_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"

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
                 warm ? "The engine was warm: what it did at the start proves nothing and is not counted"
                      : "Nobody touched the engine first: what it did at the start proves nothing and is not counted",
                 "\"I'd like to start it cold, please.\" Come back when it has stood overnight");
}

Finding engine_not_settled(const std::vector<std::string>& names, const std::string& counted) {
  return caution(
      1821, "year",
      fmt::format("It can be any of: {}. Counted is the dearest: {}; the range covers all", joined(names), counted),
      "Read the model year off the papers or the frame, or pick the engine");
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

Finding silence_proves_nothing(std::string field, std::string_view question) {
  return note(1826, std::move(field),
              fmt::format("\"{}\" Silence proves nothing: worn shoes often make no noise. The chance stays as it was",
                          question));
}

Finding good_answer_hidden(std::string field, std::string_view question, std::string_view hidden_by) {
  return caution(1827, std::move(field),
                 fmt::format("\"{}\" counts as not seen, because of: \"{}\"", question, hidden_by),
                 "Only what is not hidden proves anything: look again when it shows");
}

Finding proof_above_odometer(std::string field, Distance reading, Distance odometer) {
  return caution(1828, std::move(field),
                 fmt::format("The proof says {}, the odometer only {}, so its reading does not count",
                             miles_and_km(reading), miles_and_km(odometer)),
                 "Correct the reading; if it is so, the papers contradict the odometer");
}

Finding placeholder_money(const std::vector<std::string>& risks) {
  constexpr std::size_t few = 3;
  return doubt(1830, "money_confirmed",
               risks.size() > few
                   ? fmt::format("No offer: {} of the costs are placeholders, nobody's figures", risks.size())
                   : fmt::format("No offer: these costs are placeholders, nobody's figures: {}", joined(risks)),
               "Your figures? Enter them, or confirm the placeholders as yours");
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
