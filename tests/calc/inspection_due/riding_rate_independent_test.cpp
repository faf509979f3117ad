// The median slope by brute force, and how often Sen's interval holds the true rate.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

#include "calc/inspection_due/riding_rate.hpp"

namespace camside::riding_rate {
namespace {

// The rate that as many slopes lie below as above, by testing every slope against all others.
double brute_median(const std::vector<Point>& p) {
  std::vector<double> slopes;
  for (const Point& a : p)
    for (const Point& b : p)
      if (b.day > a.day) slopes.push_back((b.km - a.km) / (b.day - a.day));
  const auto ranked = [&](std::size_t rank) {
    for (const double s : slopes) {
      const auto below =
          static_cast<std::size_t>(std::count_if(slopes.begin(), slopes.end(), [s](double v) { return v < s; }));
      const auto equal = static_cast<std::size_t>(std::count(slopes.begin(), slopes.end(), s));
      if (below <= rank && rank < below + equal) return s;
    }
    return 0.0;
  };
  const std::size_t n = slopes.size();
  return n % 2 == 1 ? ranked(n / 2) : (ranked(n / 2 - 1) + ranked(n / 2)) / 2.0;
}

TEST(RidingRateIndependent, MedianByCountingEverySlope) {
  std::mt19937 random(20240514);
  std::uniform_int_distribution<int> days(0, 40);
  std::uniform_int_distribution<int> km(0, 500);
  for (int round = 0; round < 60; ++round) {
    std::vector<Point> points;
    for (int i = 0; i < 9; ++i) points.push_back({1.0 * days(random), 1.0 * km(random)});
    EXPECT_NEAR(theil_sen(points)->km_per_day, brute_median(points), 1e-12);
  }
}

double coverage(int n, int rounds) {
  std::mt19937 random(7);
  std::normal_distribution<double> noise(0.0, 30.0);
  int held = 0;
  for (int round = 0; round < rounds; ++round) {
    std::vector<Point> points;
    for (int i = 0; i < n; ++i) points.push_back({i * 7.0, i * 7.0 * 11.0 + noise(random)});
    const auto r = theil_sen(points);
    held += *r->low_km_per_day <= 11.0 && 11.0 <= *r->high_km_per_day ? 1 : 0;
  }
  return static_cast<double>(held) / rounds;
}

// Half widths: four standard deviations of the count over 4,000 rounds.
TEST(RidingRateIndependent, TheIntervalHoldsTheTrueRateAsOftenAsItSays) {
  EXPECT_NEAR(coverage(3, 4000), 2.0 / 3.0, 0.030);
  EXPECT_NEAR(coverage(4, 4000), 11.0 / 12.0, 0.018);
  EXPECT_NEAR(coverage(12, 4000), 0.95, 0.020);
  EXPECT_NEAR(coverage(30, 4000), 0.95, 0.020);
}

}  // namespace
}  // namespace camside::riding_rate
