// How a <topic>_remarks.cpp builds a finding of each severity, and writes a length in both systems.
#pragma once

#include <string>
#include <utility>

#include "findings/finding.hpp"
#include "units/quantity.hpp"

namespace camside::remarks {

inline Finding refusal(int number, std::string field, std::string text, std::string remedy) {
  return {number, Severity::Refusal, std::move(field), std::move(text), std::move(remedy)};
}
inline Finding doubt(int number, std::string field, std::string text, std::string remedy) {
  return {number, Severity::Doubt, std::move(field), std::move(text), std::move(remedy)};
}
inline Finding caution(int number, std::string field, std::string text, std::string remedy) {
  return {number, Severity::Caution, std::move(field), std::move(text), std::move(remedy)};
}
inline Finding note(int number, std::string field, std::string text, std::string remedy = "") {
  return {number, Severity::Note, std::move(field), std::move(text), std::move(remedy)};
}

// All with the true minus sign. "0.00144 in (0.0366 mm)": the trade's unit first, for texts that must serve both
// systems.
std::string decimal(double v, int decimals);
std::string inch_and_mm(Length v, int mm_decimals = 4);
std::string mm_only(Length v, int decimals = 4);

}  // namespace camside::remarks
