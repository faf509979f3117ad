// The preload of a hot and of a cold engine, from how the pieces grow; for pushrod.cpp.
#pragma once

#include "calc/pushrod/pushrod.hpp"

namespace camside::pushrod {

// Journal of Research of the National Institute of Standards and Technology 99 (1994): typical steel and aluminium.
inline constexpr Expansion usual_steel = Expansion::ppm_per_kelvin(11.5);
inline constexpr Expansion usual_aluminium = Expansion::ppm_per_kelvin(23.1);

// A part is never this much hotter than the engine was while setting.
inline constexpr TemperatureDifference most_rise = TemperatureDifference::kelvin(200.0);

HotPreload hot_preload(const Heat& heat, Length set);

// Rises beyond 200 K, rod as hot as the stack, assumed expansions, valve side left out, no pieces.
Findings heat_remarks(const Heat& heat);

}  // namespace camside::pushrod
