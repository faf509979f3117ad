#include "calc/backlash/backlash_cycle.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "calc/backlash/backlash_remarks.hpp"
#include "maths/coverage.hpp"

namespace camside::backlash {

namespace {

constexpr double one_turn_rad = 0.5 * cycle_rad;
constexpr double rounding_rad = 1e-9;
constexpr double default_repeatability = 1.0 / 3.0;  // of a graduation, declared; common practice

turn_fit::Model model_of(Mesh mesh) {
  return {.base_order = 0.5, .harmonics = mesh == Mesh::Crank ? 2 : 1};
}

std::optional<turn_fit::Fit> fitted(const Input& in, const Round& round) {
  if (!enough(in, round) || one_turn(round)) {
    return std::nullopt;
  }
  std::vector<double> angle;
  std::vector<double> lash;
  for (const Point& p : round.points) {
    if (p.closing) {
      continue;
    }
    angle.push_back(p.crank.in_rad());
    lash.push_back(p.lash.in_mm());
  }
  auto fit = turn_fit::fit(angle, lash, model_of(*in.mesh));
  if (!fit) {
    return std::nullopt;
  }
  return std::move(*fit);
}

CycleExtreme from_position(const Position& p) {
  return {p.lash_mm, p.crank_rad, 1.0 / static_cast<double>(p.count), true};
}

void take_positions(Cycle& cycle, const Round& round) {
  const auto [low, high] = std::minmax_element(round.positions.begin(), round.positions.end(),
                                               [](const auto& a, const auto& b) { return a.lash_mm < b.lash_mm; });
  cycle.low = from_position(*low);
  cycle.high = from_position(*high);
  double sum = 0.0;
  for (const Position& p : round.positions) {
    sum += p.lash_mm;
  }
  cycle.mean_mm = sum / static_cast<double>(round.positions.size());
  cycle.mean_variance_factor = 1.0 / static_cast<double>(round.positions.size());
}

// The curve governs where it goes beyond what was read, but for what rounding makes of readings that lie on it.
void take_curve(Cycle& cycle, const turn_fit::Fit& fit) {
  constexpr double rounding_mm = 1e-12;
  const turn_fit::Extremes ends = turn_fit::extremes(fit);
  if (ends.least < cycle.low.lash_mm + rounding_mm) {
    cycle.low = {ends.least, ends.least_at_rad, fit.variance_factor_at(ends.least_at_rad), false};
  }
  if (ends.greatest > cycle.high.lash_mm - rounding_mm) {
    cycle.high = {ends.greatest, ends.greatest_at_rad, fit.variance_factor_at(ends.greatest_at_rad), false};
  }
  cycle.mean_mm = fit.coefficient[0];
  cycle.mean_variance_factor = fit.covariance[0][0];
}

void take_scatter(Cycle& cycle, const Round& round, double graduation_mm) {
  if (cycle.fit && cycle.fit->scatter()) {
    cycle.scatter_mm = *cycle.fit->scatter();
    cycle.scatter_degrees_of_freedom = static_cast<double>(cycle.fit->degrees_of_freedom());
  } else if (round.repeat_degrees_of_freedom > 0) {
    cycle.scatter_degrees_of_freedom = static_cast<double>(round.repeat_degrees_of_freedom);
    cycle.scatter_mm = std::sqrt(round.repeat_squares_mm2 / cycle.scatter_degrees_of_freedom);
  } else {
    cycle.scatter_mm = default_repeatability * graduation_mm;
    cycle.scatter_degrees_of_freedom = coverage::infinite_degrees_of_freedom;
    cycle.scatter_declared = true;
  }
}

// Of one lash: the indicator's two readings, and by subtraction the outer lash that was taken off.
double declared_mm(const Input& in, const Conversion& c) {
  const double graduation = c.per_reading * in.graduation->in_mm() / std::sqrt(6.0);
  const double error = c.per_reading * in.stated_error.in_mm() / std::sqrt(3.0);
  const double outer = in.outer ? c.per_outer * in.outer->uncertainty->in_mm() / 2.0 : 0.0;
  return std::hypot(graduation, error, outer);
}

double play_mm(const Input& in, const gear_pair::Frame& f) {
  const Length play = in.play1.value_or(Length{}) + in.play2.value_or(Length{});
  return play.in_mm() * std::tan(f.operating_angle_rad) / std::sqrt(3.0);
}

std::array<coverage::Contribution, 3> contributions(const Cycle& c, double variance_factor, bool with_play) {
  const double root = std::sqrt(variance_factor);
  return {{{c.scatter_mm * root, c.scatter_degrees_of_freedom},
           {c.declared_mm * root, coverage::infinite_degrees_of_freedom},
           {with_play ? c.play_mm : 0.0, coverage::infinite_degrees_of_freedom}}};
}

}  // namespace

bool one_turn(const Round& round) {
  return round.largest_gap_rad > one_turn_rad - rounding_rad;
}

bool enough(const Input& in, const Round& round) {
  return round.positions.size() >= static_cast<std::size_t>(least_positions(*in.mesh));
}

int least_positions(Mesh mesh) {
  return mesh == Mesh::Crank ? 6 : 4;
}

int usual_positions(Mesh mesh) {
  return mesh == Mesh::Crank ? 8 : 6;
}

Cycle cycle_of(const Input& in, const gear_pair::Frame& f, const Conversion& c, const Round& round) {
  Cycle cycle;
  cycle.fit = fitted(in, round);
  take_positions(cycle, round);
  if (cycle.fit) {
    take_curve(cycle, *cycle.fit);
  }
  take_scatter(cycle, round, c.per_reading * in.graduation->in_mm());
  cycle.declared_mm = declared_mm(in, c);
  cycle.play_mm = play_mm(in, f);
  return cycle;
}

double coverage_of(const Cycle& cycle, double variance_factor, bool with_play) {
  return coverage::coverage_factor(
      coverage::effective_degrees_of_freedom(contributions(cycle, variance_factor, with_play)));
}

double expanded_mm(const Cycle& cycle, double variance_factor, bool with_play) {
  const auto parts = contributions(cycle, variance_factor, with_play);
  return coverage::coverage_factor(coverage::effective_degrees_of_freedom(parts)) *
         coverage::combined_uncertainty(parts);
}

}  // namespace camside::backlash
