// Question: which smooth curve round the turn do these readings lie on, how sure is it, and what are its least and
// greatest?
//
// Method: least squares by QR, by plane (Givens) rotations, row by row (Golub and Van Loan, Matrix
// Computations, chapter 5), of
//   r_i = a0 + Σ_h [a_h cos(h·q·θ_i) + b_h sin(h·q·θ_i)] + ε_i,  h = 1 … harmonics (1 or 2),
// with q the base order: q = 1 for a shaft read over one turn (period 360°; orders 1 and 2), q = ½ for a cam gear read
// over two crank turns (period 720°; orders ½ and 1). Source: NIST/SEMATECH e-Handbook of Statistical Methods, 2.3.4.4,
// for equally spaced readings; JCGM 100:2008 for the covariance.
//
// Inputs: angles in rad, any spacing and order; readings in any one unit (mm here), finite.
// Result: coefficients [a0, a1, b1, a2, b2] in the unit of the readings; (XᵀX)⁻¹, by which the variance of one reading
// is multiplied; residuals; the least and greatest of the curve over its whole period. Accuracy: coefficients to 1e-12
// of the readings' spread for well-spread angles; least and greatest to 1e-12 of the amplitude (the curve's slope is a
// quartic in tan of the half angle on each half turn; its roots are isolated between those of its own derivatives, so
// none is missed). Time and memory grow with the number of readings, no faster. Not covered: weights, outliers. Faults:
// too few readings; angles that do not determine the curve.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <tl/expected.hpp>
#include <vector>

namespace camside::turn_fit {

inline constexpr int most_harmonics = 2;
inline constexpr std::size_t most_unknowns = 1 + 2 * most_harmonics;
using Vector = std::array<double, most_unknowns>;
using Matrix = std::array<Vector, most_unknowns>;

struct Model {
  double base_order = 1.0;  // waves per turn of the first harmonic
  int harmonics = 1;        // 1: the base order alone; 2: and twice the base order

  std::size_t unknowns() const { return 1 + 2 * static_cast<std::size_t>(harmonics); }
  double period_rad() const;
};

struct Fit {
  Model model;
  std::size_t readings = 0;
  Vector coefficient{};  // a0, a1, b1, a2, b2; those beyond the model are 0
  Matrix covariance{};   // (XᵀX)⁻¹
  std::vector<double> residuals;
  double residual_sum_of_squares = 0.0;

  std::size_t degrees_of_freedom() const { return readings - model.unknowns(); }
  // Standard deviation of the residuals; none when nothing is left over to judge by.
  std::optional<double> scatter() const;

  double value_at(double angle_rad) const;
  double variance_factor_at(double angle_rad) const;  // cᵀ (XᵀX)⁻¹ c

  // Of harmonic h = 1 or 2: √(a² + b²), where on the turn its (first) crest stands, in [0, its period), and the factor
  // on the variance of one reading that gives the variance of the amplitude.
  double amplitude(int harmonic) const;
  double crest_rad(int harmonic) const;
  double amplitude_variance_factor(int harmonic) const;
};

enum class Fault : std::uint8_t { TooFewReadings, AnglesDoNotDetermine };

tl::expected<Fit, Fault> fit(std::span<const double> angle_rad, std::span<const double> reading, Model model);

// The curve over its whole period; angles in [0, period).
struct Extremes {
  double least = 0.0;
  double least_at_rad = 0.0;
  double greatest = 0.0;
  double greatest_at_rad = 0.0;
};
Extremes extremes(const Fit& fit);

}  // namespace camside::turn_fit
