#include "calc/runout/runout_uncertainty.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "findings/decision.hpp"
#include "maths/coverage.hpp"

namespace camside::runout {

namespace {

struct Repeats {
  double deviation_mm = 0.0;
  double degrees_of_freedom = coverage::infinite_degrees_of_freedom;
  bool pooled = false;
};

// The larger of declared and shown, so that neither a lucky pair of turns nor an optimistic declaration makes U small.
Repeats repeatability_of(const Setup& setup, double squares_mm2, double degrees_of_freedom) {
  const double cosine = indicator_cosine(setup);
  const bool repeated = degrees_of_freedom > 0.0;
  const double shown = repeated ? std::sqrt(squares_mm2 / degrees_of_freedom) : 0.0;
  if (setup.repeatability) {
    const double declared = setup.repeatability->in_mm() * cosine;
    if (!repeated || declared >= shown) return {declared, coverage::infinite_degrees_of_freedom, false};
  }
  if (repeated) return {shown, degrees_of_freedom, true};
  return {setup.graduation->in_mm() * cosine / 3.0, coverage::infinite_degrees_of_freedom, false};
}

double squared(double v) {
  return v * v;
}

// (graduation/√12)² + (stated error/√3)²
double declared_squares_mm2(const Setup& setup) {
  const double cosine = indicator_cosine(setup);
  const double error_mm = setup.stated_error.value_or(Length{}).in_mm() * cosine;
  return squared(setup.graduation->in_mm() * cosine) / 12.0 + squared(error_mm) / 3.0;
}

void take_shares(Uncertainty& u, double declared_mm2, double repeat_mm2, double play_mm2) {
  const double all = 2.0 * declared_mm2 + 2.0 * repeat_mm2 + play_mm2;
  u.resolution_share = 2.0 * declared_mm2 / all;
  u.repeat_share = 2.0 * repeat_mm2 / all;
  u.play_share = play_mm2 / all;
}

}  // namespace

Uncertainty uncertainty_of(const Setup& setup, double repeat_squares_mm2, double repeat_degrees_of_freedom) {
  const Repeats repeats = repeatability_of(setup, repeat_squares_mm2, repeat_degrees_of_freedom);
  const double declared_mm2 = declared_squares_mm2(setup);
  const double repeat_mm2 = squared(repeats.deviation_mm);
  const double play_mm2 = squared(setup.play.value_or(Length{}).in_mm() * indicator_cosine(setup)) / 12.0;
  const std::array<coverage::Contribution, 3> parts{{
      {std::sqrt(2.0 * declared_mm2)},
      {std::sqrt(2.0 * repeat_mm2), repeats.degrees_of_freedom},
      {std::sqrt(play_mm2)},
  }};
  Uncertainty u;
  u.repeatability = Length::mm(repeats.deviation_mm);
  u.from_repeats = repeats.pooled;
  u.repeat_degrees_of_freedom = repeats.degrees_of_freedom;
  u.reading = Length::mm(std::sqrt(declared_mm2 + repeat_mm2));
  u.tir = Length::mm(coverage::combined_uncertainty(parts));
  u.degrees_of_freedom = coverage::effective_degrees_of_freedom(parts);
  u.coverage_factor = coverage::coverage_factor(u.degrees_of_freedom);
  u.expanded = u.coverage_factor * u.tir;
  take_shares(u, declared_mm2, repeat_mm2, play_mm2);
  return u;
}

double expanded_of_amplitude_mm(const Uncertainty& u, const turn_fit::Fit& fit, int harmonic) {
  const double repeat_mm2 = squared(u.repeatability.in_mm());
  const double declared_mm2 = std::max(0.0, squared(u.reading.in_mm()) - repeat_mm2);
  const std::array<coverage::Contribution, 2> of_one_reading{
      {{std::sqrt(declared_mm2)}, {u.repeatability.in_mm(), u.repeat_degrees_of_freedom}}};
  const double k = coverage::coverage_factor(coverage::effective_degrees_of_freedom(of_one_reading));
  return 2.0 * k * u.reading.in_mm() * std::sqrt(fit.amplitude_variance_factor(harmonic));
}

std::optional<PassLine> pass_line(const Setup& setup, Length limit, Method method, int turns, double guard_factor) {
  if (!setup.graduation || !check_fields(setup).empty()) return std::nullopt;
  const bool sound = limit.finite() && std::isfinite(guard_factor) && guard_factor >= 0.0;
  if (!sound || turns < 1) return std::nullopt;
  const Uncertainty u = uncertainty_of(setup, 0.0, 0.0);
  const Length left = limit - guard_factor * u.expanded;
  PassLine line;
  line.needle = left / indicator_cosine(setup);
  line.uncertainty = u.expanded;
  line.provable = left.in_mm() >= -decision_slack && (method == Method::Stations || turns >= 2);
  return line;
}

}  // namespace camside::runout
