#include "knowledge/knowledge_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"

namespace camside::remarks {

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

Finding intervals_differ(std::string field, std::string_view risk) {
  return refusal(1940, std::move(field), fmt::format("The interval is not that of the risk \"{}\"", risk),
                 "Give both the same, or the look-over and the due list would disagree");
}

}  // namespace camside::remarks
