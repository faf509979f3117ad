#include "findings/knowledge_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"

namespace camside::remarks::knowledge {

Finding id_twice(std::string field, std::string_view id) {
  return refusal(1930, std::move(field), fmt::format("\"{}\" stands here twice", id), "Give each its own name");
}

Finding names_nothing(std::string field, std::string_view what, std::string_view name) {
  return refusal(1931, std::move(field), fmt::format("There is no {} \"{}\"", what, name),
                 fmt::format("Write the id of one of the {}s", what));
}

Finding costs_out_of_order(std::string field) {
  return refusal(1932, std::move(field), "The likely cost must lie between best and worst",
                 "Enter best, likely and worst in rising order");
}

Finding no_chances(std::string field) {
  return refusal(1933, std::move(field), "There is no chance at any distance",
                 "Enter at least one distance with its chance");
}

Finding distances_not_rising(std::string field) {
  return refusal(1934, std::move(field), "The distances must rise from one to the next", "Put them in order");
}

Finding chances_falling(std::string field) {
  return refusal(1935, std::move(field), "A chance by a distance cannot fall as the distance grows",
                 "Correct the chance or the distance");
}

Finding years_backwards(std::string field, int first, int last) {
  return refusal(1936, std::move(field), fmt::format("The last year, {}, is before the first, {}", last, first),
                 "Correct one of them");
}

Finding empty_item(std::string field) {
  return refusal(1937, std::move(field), "Neither a distance nor months are given", "Enter one or both");
}

Finding range_backwards(std::string field) {
  return refusal(1938, std::move(field), "The least is more than the most", "Enter the smaller figure as the least");
}

Finding unknown_name(Finding kept) {
  if (kept.severity == Severity::Refusal) return kept;
  kept.severity = Severity::Refusal;
  kept.text = fmt::format("\"{}\" is not a known field", kept.field);
  if (kept.remedy.empty()) kept.remedy = "Correct its name or take it out";
  return kept;
}

Finding not_knowledge(std::string_view found) {
  return refusal(1939, "", fmt::format("A file of what is known of engines is an object; this is {}", found),
                 "Start from assets/knowledge");
}

}  // namespace camside::remarks::knowledge
