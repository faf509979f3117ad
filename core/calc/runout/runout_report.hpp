// Figures and working of a runout. Part of runout.hpp.
#pragma once

#include "calc/runout/runout.hpp"
#include "calc/runout/runout_readings.hpp"

namespace camside::runout {

// Fills result.outcome's figures and working from what result and shape hold, and puts its findings in order.
void report(const Input& input, const Shape& shape, Result& result);

}  // namespace camside::runout
