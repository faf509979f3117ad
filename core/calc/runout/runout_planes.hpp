// Both shafts together: what the wheels did. Part of runout.hpp, whose point 6 this is.
#pragma once

#include <optional>

#include "calc/runout/runout.hpp"
#include "calc/runout/runout_readings.hpp"

namespace camside::runout {

// None when a high spot is missing on either side. Parts stay Unnamed where an answer is missing that would name them.
std::optional<TwoPlanes> two_planes(const Shape& first, const Setup& first_setup, const Shape& other,
                                    const OtherSide& about, Length expanded_uncertainty);

}  // namespace camside::runout
