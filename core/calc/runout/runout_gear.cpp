#include "calc/runout/runout_gear.hpp"

#include <cmath>
#include <complex>

#include "calc/runout/runout_needle.hpp"

namespace camside::runout {

namespace {

// Two offsets as arrows across the shaft.
Spot together(const Spot& a, const Spot& b) {
  const std::complex<double> sum =
      std::polar(a.tir.in_mm(), a.high_spot.in_rad()) + std::polar(b.tir.in_mm(), b.high_spot.in_rad());
  return {Length::mm(std::abs(sum)), Angle::rad(direction_of(std::arg(sum)))};
}

void take_budget(const Budget& budget, const Result& so_far, AtTheGear& g) {
  g.swing_per_tir = 2.0 * std::tan(budget.pressure_angle.in_rad());
  g.window = budget.lash_most - budget.lash_least;
  g.budget = *g.window / g.swing_per_tir;
  g.lash_swing = g.swing_per_tir * so_far.judged;
}

}  // namespace

AtTheGear at_the_gear(const Input& input, const Result& so_far) {
  AtTheGear g;
  if (input.at_gear) g.carried = input.at_gear->to_gear / input.at_gear->to_contact;
  if (so_far.eccentricity) g.shaft_tir = 2.0 * g.carried * *so_far.eccentricity;
  const bool both_known = input.gear && input.gear->high_spot && g.shaft_tir && so_far.high_spot;
  if (both_known) g.total = together({*g.shaft_tir, *so_far.high_spot}, {input.gear->tir, *input.gear->high_spot});
  if (input.budget) take_budget(*input.budget, so_far, g);
  return g;
}

}  // namespace camside::runout
