// How a <topic>_remarks.cpp builds a finding of each severity, and writes a length in both systems.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

#include "findings/finding.hpp"
#include "units/quantity.hpp"

namespace camside::remarks {

inline Finding refusal(int number, std::string field, std::string text, std::string remedy) {
  return {number, Severity::Refusal, std::move(field), std::move(text), std::move(remedy)};
}
inline Finding doubt(int number, std::string field, std::string text, std::string remedy,
                     Misleads misleads = Misleads::Flatters) {
  return {number, Severity::Doubt, std::move(field), std::move(text), std::move(remedy), misleads};
}
// A doubt that falsifies: the reading is none of what was meant.
inline Finding no_reading(int number, std::string field, std::string text, std::string remedy) {
  return doubt(number, std::move(field), std::move(text), std::move(remedy), Misleads::EitherWay);
}
inline Finding caution(int number, std::string field, std::string text, std::string remedy) {
  return {number, Severity::Caution, std::move(field), std::move(text), std::move(remedy)};
}
inline Finding note(int number, std::string field, std::string text, std::string remedy = "") {
  return {number, Severity::Note, std::move(field), std::move(text), std::move(remedy)};
}

std::string repeated(std::string_view text);  // what someone else wrote, in quotes, harmless and short enough

// All with the true minus sign, and rounded half to even on the decimal that people would write. Both systems at once,
// the trade's unit first, for texts that must serve both.
std::string inch_and_mm(Length v, int mm_decimals = 4);  // "0.00144 in (0.0366 mm)", digits that stand under each other
std::string mm_only(Length v, int decimals = 4);
std::string miles_and_km(Distance d);  // "41,300 mi (66,466 km)"

// For running text: decimals that say nothing are left off, down to `least` of them.
std::string trimmed(double value, int most, std::size_t least);
std::string short_inches(Length v);       // "0.0031 in"
std::string short_inch_and_mm(Length v);  // "0.0031 in (0.0787 mm)"

}  // namespace camside::remarks
