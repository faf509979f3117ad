#include "maths/coverage.hpp"

#include <cmath>
#include <numbers>

namespace camside::coverage {

namespace {

// Γ(z + ½) / Γ(z). Above 80 the series in 1/z is exact to a double and Γ itself would soon overflow.
double gamma_ratio(double z) {
  if (z < 80.0) return std::tgamma(z + 0.5) / std::tgamma(z);
  const double y = 1.0 / z;
  const double series =
      1.0 + y * (-1.0 / 8.0 + y * (1.0 / 128.0 + y * (5.0 / 1024.0 + y * (-21.0 / 32768.0 + y * (-399.0 / 262144.0)))));
  return std::sqrt(z) * series;
}

// Keeps Lentz's recurrence away from a division by nothing.
double not_zero(double v) {
  constexpr double tiny = 1e-300;
  return std::abs(v) < tiny ? tiny : v;
}

// The continued fraction of the incomplete beta function (modified Lentz); converges fast for x < (a+1)/(a+b+2).
double beta_fraction(double x, double a, double b) {
  double c = 1.0;
  double d = 1.0 / not_zero(1.0 - (a + b) * x / (a + 1.0));
  double f = d;
  for (int m = 1; m < 5000; ++m) {
    const double even = m * (b - m) * x / ((a + 2 * m - 1.0) * (a + 2 * m));
    const double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1.0));
    d = 1.0 / not_zero(1.0 + even * d);
    c = not_zero(1.0 + even / c);
    f *= d * c;
    d = 1.0 / not_zero(1.0 + odd * d);
    c = not_zero(1.0 + odd / c);
    f *= d * c;
    if (std::abs(d * c - 1.0) < 1e-16) break;
  }
  return f;
}

// Student's density at t.
double density(double t, double degrees_of_freedom) {
  const double height = gamma_ratio(0.5 * degrees_of_freedom) / std::sqrt(std::numbers::pi * degrees_of_freedom);
  return height * std::exp(-0.5 * (degrees_of_freedom + 1.0) * std::log1p(t * t / degrees_of_freedom));
}

// P(−t ≤ T ≤ t): the incomplete beta function I_x(½, ν/2) at x = t²/(ν + t²), from whichever end converges. Both ends
// share the front factor x^½ (1−x)^(ν/2) / B(½, ν/2).
double central_probability(double t, double degrees_of_freedom) {
  const double a = 0.5;
  const double b = 0.5 * degrees_of_freedom;
  const double x = t * t / (degrees_of_freedom + t * t);
  const double front = std::sqrt(x) * std::exp(-b * std::log1p(t * t / degrees_of_freedom)) * gamma_ratio(b) /
                       std::sqrt(std::numbers::pi);
  const bool near_the_middle = x < (a + 1.0) / (a + b + 2.0) || (x < 0.02 && t < 5.0);
  if (near_the_middle) return front * beta_fraction(x, a, b) / a;
  return 1.0 - front * beta_fraction(1.0 - x, b, a) / b;
}

}  // namespace

double combined_uncertainty(std::span<const Contribution> contributions) {
  double sum = 0.0;
  for (const Contribution& c : contributions) sum += c.uncertainty * c.uncertainty;
  return std::sqrt(sum);
}

double effective_degrees_of_freedom(std::span<const Contribution> contributions) {
  const double u = combined_uncertainty(contributions);
  if (u <= 0.0) return infinite_degrees_of_freedom;
  double sum = 0.0;  // of shares to the fourth power, so that no unit can underflow
  for (const Contribution& c : contributions) sum += std::pow(c.uncertainty / u, 4) / c.degrees_of_freedom;
  return sum > 0.0 ? 1.0 / sum : infinite_degrees_of_freedom;
}

double coverage_factor(double degrees_of_freedom) {
  return degrees_of_freedom >= enough_degrees_of_freedom ? 2.0 : student_two_sided(covered, degrees_of_freedom);
}

// Newton from the left: the central probability bends one way only, so no step can overshoot.
double student_two_sided(double probability, double degrees_of_freedom) {
  double t = 0.5 * probability / density(0.0, degrees_of_freedom);
  for (int i = 0; i < 200; ++i) {
    const double step =
        (probability - central_probability(t, degrees_of_freedom)) / (2.0 * density(t, degrees_of_freedom));
    t += step;
    if (std::abs(step) <= 1e-15 * t) break;
  }
  return t;
}

}  // namespace camside::coverage
