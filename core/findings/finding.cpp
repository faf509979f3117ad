#include "findings/finding.hpp"

#include <algorithm>
#include <iterator>
#include <string_view>

namespace camside {

bool has(const Findings& findings, int number) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) { return f.number == number; });
}

bool any_refusal(const Findings& findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](const Finding& f) { return f.severity == Severity::Refusal; });
}

Findings only_refusals(const Findings& findings) {
  Findings refused;
  std::copy_if(findings.begin(), findings.end(), std::back_inserter(refused),
               [](const Finding& f) { return f.severity == Severity::Refusal; });
  return refused;
}

std::string_view word_of(Severity severity) {
  switch (severity) {
    case Severity::Note:
      return "note";
    case Severity::Caution:
      return "caution";
    case Severity::Doubt:
      return "doubt";
    case Severity::Refusal:
      return "refusal";
  }
  return "";
}

}  // namespace camside
