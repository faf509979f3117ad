// How sure a runout is, and what that proves. Part of runout.hpp.
#pragma once

#include <string>

#include "calc/runout/runout.hpp"
#include "calc/runout/runout_readings.hpp"

namespace camside::runout {

// Of one total reading. Repeat turns count through their pooled squares; freedom 0 means there were none.
Uncertainty uncertainty_of(const Setup& setup, double repeat_squares_mm2, double repeat_degrees_of_freedom);

// Expanded uncertainty of 2·(amplitude of harmonic 1 or 2) of the fit; play and stand don't turn with the shaft.
double expanded_of_amplitude_mm(const Uncertainty& u, const turn_fit::Fit& fit, int harmonic);

struct Ruling {
  Verdict verdict = Verdict::NotProven;
  std::string reason;
};
// `findings` are those raised so far. Adds doubt 1031 when the drift decides.
Ruling rule(const Shape& shape, const Uncertainty& u, const Limit<Length>& limit, double guard, Findings& findings);

}  // namespace camside::runout
