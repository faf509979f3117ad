// What a runout means where the gear sits, and for its lash. Part of runout.hpp, whose points 7 and 8 this is.
#pragma once

#include "calc/runout/runout.hpp"

namespace camside::runout {

// From the eccentricity, high spot and judged value that `so_far` holds.
AtTheGear at_the_gear(const Input& input, const Result& so_far);

}  // namespace camside::runout
