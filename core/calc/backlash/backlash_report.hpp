// Inside of backlash.hpp: a lash measurement told in figures, working and the verdict's sentence.
#pragma once

#include <vector>

#include "calc/backlash/backlash_cycle.hpp"
#include "calc/backlash/backlash_verdict.hpp"

namespace camside::backlash {

// Everything that was worked out, for the telling.
struct Working {
  const Input& in;
  const gear_pair::Frame& frame;
  const Conversion& conversion;
  const Cycle& cycle;
  const lash_temperature::Conditions& conditions;
  const lash_temperature::Forecast& forecast;
  const std::vector<Gate>& gates;
};
void report(const Working& w, Result& r);
void report_feel(const Input& in, Outcome& out);

}  // namespace camside::backlash
