// The line against GSL's, the interval against a search for its ends, its promise against simulation.
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_fit.h>
#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <random>
#include <vector>

#include "calc/wear/wear.hpp"
#include "calc/wear/wear_inputs.hpp"

namespace camside::wear {
namespace {

struct Readings {
  std::vector<double> km;
  std::vector<double> mm;

  std::vector<lines::LinePoint> points() const {
    std::vector<lines::LinePoint> all;
    for (std::size_t i = 0; i < km.size(); ++i) all.push_back({km[i], mm[i]});
    return all;
  }
};

// A shoe of 6.35 mm that loses 0.05 mm in 1,000 km.
constexpr double true_mm = 6.35;
constexpr double true_rate = 5e-5;

Readings simulated(std::mt19937_64& random, std::size_t n, double spread_mm) {
  std::normal_distribution<double> error(0.0, spread_mm);
  Readings r;
  for (std::size_t i = 0; i < n; ++i) {
    r.km.push_back(70'000.0 + 8'000.0 * static_cast<double>(i) + 500.0 * static_cast<double>(i % 3));
    r.mm.push_back(true_mm - true_rate * (r.km.back() - 60'000.0) + error(random));
  }
  return r;
}

TEST(WearIndependent, LineAgainstGsl) {
  std::mt19937_64 random(5);
  for (int run = 0; run < 200; ++run) {
    const Readings r = simulated(random, 3 + static_cast<std::size_t>(run % 8), 0.03);
    double c0 = 0, c1 = 0, v00 = 0, v01 = 0, v11 = 0, squares = 0;
    gsl_fit_linear(r.km.data(), 1, r.mm.data(), 1, r.km.size(), &c0, &c1, &v00, &v01, &v11, &squares);
    const auto line = lines::fit_line(r.points());
    EXPECT_NEAR(line->mm_per_km, c1, 1e-12 * std::abs(c1) + 1e-16);
    EXPECT_NEAR(line->at(0.0), c0, 1e-10);
    EXPECT_NEAR(line->scatter_mm, std::sqrt(squares / line->degrees_of_freedom()), 1e-10);
    EXPECT_NEAR(line->scatter_mm / std::sqrt(line->sxx_km2), std::sqrt(v11), 1e-12);
  }
}

// The interval is where GSL's own limits of the mean response hold the level: walk from the crossing to where they end.
class Limits {
 public:
  explicit Limits(const Readings& r) : t_(gsl_cdf_tdist_Pinv(0.975, static_cast<double>(r.km.size()) - 2.0)) {
    double squares = 0.0;
    gsl_fit_linear(r.km.data(), 1, r.mm.data(), 1, r.km.size(), &c0_, &c1_, &v00_, &v01_, &v11_, &squares);
  }
  double crossing(double level) const { return (level - c0_) / c1_; }
  bool proven() const { return std::abs(c1_) > t_ * std::sqrt(v11_); }

  bool hold(double km, double level) const {
    double y = 0.0;
    double deviation = 0.0;
    gsl_fit_linear_est(km, c0_, c1_, v00_, v01_, v11_, &y, &deviation);
    return std::abs(y - level) <= t_ * deviation;
  }

  double end(double level, double step) const {
    double inside = crossing(level);
    double outside = inside + step;
    while (hold(outside, level)) outside += (step *= 2.0);
    for (int i = 0; i < 200; ++i) {
      const double middle = 0.5 * (inside + outside);
      (hold(middle, level) ? inside : outside) = middle;
    }
    return inside;
  }

 private:
  double t_;
  double c0_ = 0, c1_ = 0, v00_ = 0, v01_ = 0, v11_ = 0;
};

TEST(WearIndependent, IntervalAgainstASearchOfGslsLimits) {
  std::mt19937_64 random(11);
  int bounded = 0;
  int unbounded = 0;
  for (int run = 0; run < 400; ++run) {
    const Readings r = simulated(random, 3 + static_cast<std::size_t>(run % 6), run % 2 == 0 ? 0.02 : 0.6);
    const auto line = lines::fit_line(r.points());
    const lines::Crossing c = lines::crossing_with_interval(*line, 2.0, line->scatter_mm, 0.95);
    const Limits limits(r);
    ASSERT_EQ(c.low_km.has_value(), limits.proven()) << run;
    ++(c.low_km ? bounded : unbounded);
    if (!c.low_km || c.g > 0.99) continue;
    const double tolerance = 1e-7 * std::abs(*c.high_km - *c.low_km) + 1e-6;
    EXPECT_NEAR(*c.low_km, limits.end(2.0, -10.0), tolerance) << run;
    EXPECT_NEAR(*c.high_km, limits.end(2.0, 10.0), tolerance) << run;
  }
  EXPECT_GT(bounded, 100);
  EXPECT_GT(unbounded, 50);
}

// Nominal 95 %: of 20,000 shoes the interval holds the true distance in 94 to 96 %. (Chance alone: ±0.3 %.)
double coverage_of(std::size_t n, double spread_mm, int runs, int& unbounded) {
  std::mt19937_64 random(20'261'125);
  const double level_mm = 2.0;
  const double truth_km = 60'000.0 + (true_mm - level_mm) / true_rate;
  int held = 0;
  for (int run = 0; run < runs; ++run) {
    const auto line = lines::fit_line(simulated(random, n, spread_mm).points());
    const lines::Crossing c = lines::crossing_with_interval(*line, level_mm, line->scatter_mm, interval_probability);
    if (!c.low_km) ++unbounded;
    if (c.low_km && *c.low_km <= truth_km && truth_km <= *c.high_km) ++held;
  }
  return static_cast<double>(held) / static_cast<double>(runs);
}

TEST(WearIndependent, TheIntervalKeepsItsPromise) {
  constexpr int runs = 20'000;
  for (const std::size_t n : {std::size_t{4}, std::size_t{6}, std::size_t{10}}) {
    int unbounded = 0;
    const double share = coverage_of(n, 0.02, runs, unbounded);
    RecordProperty("coverage_with_" + std::to_string(n), std::to_string(share));
    EXPECT_LT(unbounded, runs / 500) << n;
    EXPECT_GT(share, 0.94) << n;
    EXPECT_LT(share, 0.96) << n;
  }
}

// The whole calculator, with readings rounded to the caliper's half thou: never less than promised, as the spread is
// never taken below that of one reading.
TEST(WearIndependent, TheWholeCalculatorKeepsItsPromise) {
  std::mt19937_64 random(7);
  const double truth_km = 60'000.0 + (true_mm - 2.0) / true_rate;
  int held = 0;
  int given = 0;
  for (int run = 0; run < 4'000; ++run) {
    const Readings r = simulated(random, 6, Length::thou(1.0).in_mm());
    Input in = shoe({});
    for (std::size_t i = 0; i < r.km.size(); ++i) {
      const double steps = std::round(Length::mm(r.mm[i]).in_thou() / 0.5);
      in.readings.push_back({Distance::km(r.km[i]), Length::thou(0.5 * steps)});
    }
    in.limit = Limit<Length>{Length::mm(2.0), Source::memory()};
    const auto solved = solve(in);
    ASSERT_TRUE(solved.has_value());
    if (!solved->forecast || !solved->forecast->high) continue;
    ++given;
    if (solved->forecast->low->in_km() <= truth_km && truth_km <= solved->forecast->high->in_km()) ++held;
  }
  EXPECT_GT(given, 3'900);
  EXPECT_GT(static_cast<double>(held) / given, 0.94);
}

}  // namespace
}  // namespace camside::wear
