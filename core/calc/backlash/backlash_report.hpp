// Inside of backlash.hpp: the figures and the working of a lash measurement.
#pragma once

#include "calc/backlash/backlash_cycle.hpp"

namespace camside::backlash {

// Everything that was worked out, for the telling.
struct Working {
  const Input& in;
  const gear_pair::Frame& frame;
  const Conversion& conversion;
  const Cycle& cycle;
  const lash_temperature::Conditions& conditions;
  const lash_temperature::Forecast& forecast;
};
void report(const Working& w, Result& r);
void report_verdict(const Input& in, Result& r);
void report_feel(const Input& in, Outcome& outcome);

}  // namespace camside::backlash
