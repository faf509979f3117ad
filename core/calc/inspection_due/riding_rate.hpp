// Question: how far is this bike ridden in a day, and between which rates may the truth lie?
//
// Method: Theil–Sen. All slopes (y_j − y_i)/(x_j − x_i) with x_j > x_i; the rate is their median (mean of the two in
// the middle for an even number). Sen's 95 % interval: with N slopes of n points,
//   C = z σ,  z = 1.959963984540054 (97.5 % of the normal distribution),
//   σ² = [n(n−1)(2n+5) − Σ t(t−1)(2t+5) − Σ u(u−1)(2u+5)] / 18   (Kendall's variance; t, u sizes of ties in x and y)
//   low  = the slope ranked round((N − C)/2), not below the first
//   high = the slope ranked round((N + C)/2) + 1, not above the last      (ranks from 1, round half to even)
// Source: "Estimates of the Regression Coefficient Based on Kendall's Tau", Journal of the American Statistical
// Association 63 (1968), equation 2.6; rounding of the ranks as common statistics libraries do it.
//
// Few points: up to 4 even the whole span of slopes covers less than 95 % (3 points 67 %, 4 points 92 %, counted by
// permutations); the span is given and `covers_95` is false. Two points or fewer slopes than 2 have no interval.
//
// Inputs: points (day number, distance in km summed over clock swaps), any order, at most `most_points`.
// Result: km per day; nothing when no two points differ in their day. Accuracy: the slopes' own rounding.
// Not covered: seasons. Findings: none here.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace camside::riding_rate {

struct Point {
  double day = 0.0;
  double km = 0.0;
};

struct Rate {
  double km_per_day = 0.0;
  std::optional<double> low_km_per_day;
  std::optional<double> high_km_per_day;
  bool covers_95 = false;
  std::size_t slopes = 0;
};

inline constexpr std::size_t most_points = 2000;  // 2 million slopes

// Nothing for fewer than two days, or more points than most_points.
std::optional<Rate> theil_sen(std::span<const Point> points);

}  // namespace camside::riding_rate
