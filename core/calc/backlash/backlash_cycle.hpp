// Inside of backlash.hpp: from lash at positions to lowest and highest over the cycle, with their uncertainty.
#pragma once

#include <optional>

#include "calc/backlash/backlash_readings.hpp"
#include "maths/turn_fit.hpp"

namespace camside::backlash {

struct CycleExtreme {
  double lash_mm = 0.0;
  double crank_rad = 0.0;
  double variance_factor = 1.0;  // on the variance of one reading
  bool from_reading = false;
};

struct Cycle {
  std::optional<turn_fit::Fit> fit;  // none: too few positions, or not spread over both turns
  double mean_mm = 0.0;
  double mean_variance_factor = 1.0;
  CycleExtreme low;
  CycleExtreme high;
  double scatter_mm = 0.0;  // s of one reading
  double scatter_degrees_of_freedom = 0.0;
  bool scatter_declared = false;  // nothing to judge it by: a third of a graduation is taken
  double declared_mm = 0.0;       // √(g'²/6 + e'²/3) of one lash
  double play_mm = 0.0;           // standard uncertainty by the play of both shafts
};
Cycle cycle_of(const Input& in, const gear_pair::Frame& f, const Conversion& c, const Round& round);

// Expanded uncertainty U = k u of a value with this factor on the variance of one reading. The amplitudes of the two
// periods are differences within one set-up: play that only shifts the whole curve is left out of them.
double coverage_of(const Cycle& cycle, double variance_factor, bool with_play = true);
double expanded_mm(const Cycle& cycle, double variance_factor, bool with_play = true);

bool one_turn(const Round& round);                 // nothing was read over a whole turn: only one was turned
bool enough(const Input& in, const Round& round);  // positions for a curve
int least_positions(Mesh mesh);
int usual_positions(Mesh mesh);

}  // namespace camside::backlash
