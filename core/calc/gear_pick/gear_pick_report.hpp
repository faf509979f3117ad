// Inside of gear_pick.hpp: figures, working, remarks and the judgement of what was found.
#pragma once

#include "calc/gear_pick/gear_pick_engine.hpp"

namespace camside::gear_pick {

void report(const Engine& e, Result& r);

}  // namespace camside::gear_pick
