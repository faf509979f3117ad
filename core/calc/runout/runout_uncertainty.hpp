// How sure a runout is. Part of runout.hpp, whose point 4 this is.
#pragma once

#include "calc/runout/runout.hpp"
#include "calc/runout/runout_readings.hpp"

namespace camside::runout {

// Of one total reading. Repeat turns count through their pooled squares; 0 degrees of freedom means there were none.
Uncertainty uncertainty_of(const Setup& setup, double repeat_squares_mm2, double repeat_degrees_of_freedom);

// Expanded uncertainty of 2·(amplitude of harmonic 1 or 2) of the fit; play and stand don't turn with the shaft.
double expanded_of_amplitude_mm(const Uncertainty& u, const turn_fit::Fit& fit, int harmonic);

}  // namespace camside::runout
