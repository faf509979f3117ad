// A value as the screens show it, in the units chosen.
//
// units/format computes with exact fractions, which is too slow to repeat for every value in every frame: each text is
// made once and kept.
#pragma once

#include <string>

#include "units/quantity.hpp"
#include "units/unit.hpp"

namespace camside::screens {

std::string shown(Kind kind, double base, System system);

}  // namespace camside::screens
