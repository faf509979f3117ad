// Question: which straight line do these readings wear along, and between which distances does it reach a level?
//
// Method: least squares, y = ȳ + b (x − x̄), b = Σ(x − x̄)(y − ȳ)/Sxx, Sxx = Σ(x − x̄)²; scatter s² = Σ(residual)²/(n −
// 2). Inverse prediction (Fieller): the level L is met at x0 = x̄ + (L − ȳ)/b. The interval is all x whose point on the
// line may be L:  (ȳ + b (x − x̄) − L)² ≤ t² s² (1/n + (x − x̄)²/Sxx). With q = (L − ȳ)/b and g = t² s²/(b² Sxx)
//   x = x̄ + [q ± (t s/|b|) √((1 − g)/n + q²/Sxx)] / (1 − g)      for g < 1.
// For g ≥ 1 the slope itself is not proven to differ from nothing: the interval has no end on at least one side.
// The level is taken as exactly known, so the scatter of a further reading does not enter.
// Source: NIST/SEMATECH e-Handbook of Statistical Methods, 4.1.4.1 and 2.3.6 (least squares, calibration); "Some
// Problems in Interval Estimation", Journal of the Royal Statistical Society B 16 (1954), for the interval (from
// memory).
//
// Inputs: points in km and mm, any order, finite; spread s ≥ 0 in mm; probability between 0 and 1. Result in km and mm.
// Accuracy: certified least-squares values to 13 digits; the interval to 1e-10 of its width unless g is within 1e-6
// of 1. Not covered: weights, curves. Findings: none here.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace camside::lines {

struct LinePoint {
  double km = 0.0;
  double mm = 0.0;
};

struct Line {
  std::size_t points = 0;
  double mean_km = 0.0;
  double mean_mm = 0.0;
  double mm_per_km = 0.0;   // slope b
  double sxx_km2 = 0.0;     // Σ(x − x̄)²
  double scatter_mm = 0.0;  // s; 0 with two points, which have none

  double degrees_of_freedom() const { return static_cast<double>(points) - 2.0; }
  double at(double km) const { return mean_mm + mm_per_km * (km - mean_km); }
};

// Nothing unless two points differ in their distance.
std::optional<Line> fit_line(std::span<const LinePoint> points);

struct Crossing {
  double km = 0.0;
  double g = 0.0;  // 0 without an interval
  std::optional<double> low_km;
  std::optional<double> high_km;
};

// Where the line meets the level; the slope must not be 0.
Crossing crossing_of(const Line& line, double level_mm);

// The same with Fieller's interval for the given spread of one point; no ends when g ≥ 1. At least three points.
Crossing crossing_with_interval(const Line& line, double level_mm, double spread_mm, double probability);

}  // namespace camside::lines
