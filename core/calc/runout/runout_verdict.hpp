// What a runout proves, and why. Part of runout.hpp, whose point 5 this is.
#pragma once

#include <string>

#include "calc/runout/runout.hpp"
#include "calc/runout/runout_readings.hpp"
#include "findings/decision.hpp"

namespace camside::runout {

// What the numbers say, doubts left aside.
struct ByNumbers {
  Verdict verdict = Verdict::NotProven;
  bool drift_decides = false;  // it would be another one with the indicator's drift taken out
};
ByNumbers verdict_by_numbers(const Shape& shape, const Uncertainty& u, Length limit, double guard);

// In a sentence: the doubt that decided, or the numbers and what would settle them.
std::string reason_of(const Decision& decision, const Shape& shape, const Uncertainty& u, Length limit);

}  // namespace camside::runout
