#include "maths/turn_fit.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "oracle/runout_rows.hpp"

namespace camside::turn_fit {
namespace {

constexpr double deg = std::numbers::pi / 180.0;

std::vector<double> even_angles(std::size_t n, double turns = 1.0) {
  std::vector<double> angles(n);
  for (std::size_t i = 0; i < n; ++i) {
    angles[i] = 2.0 * std::numbers::pi * turns * static_cast<double>(i) / static_cast<double>(n);
  }
  return angles;
}

TEST(TurnFit, TwelvePointAnalysis) {
  const auto& row = oracle::twelve_point;
  const auto f = fit(even_angles(12), row.reading, {1.0, 1});
  ASSERT_TRUE(f);
  EXPECT_NEAR(f->coefficient[0], row.mean, 5e-10);  // rows are printed to nine places
  EXPECT_NEAR(f->coefficient[1], row.cosine, 5e-10);
  EXPECT_NEAR(f->coefficient[2], row.sine, 5e-10);
  EXPECT_NEAR(f->amplitude(1), row.eccentricity, 5e-10);
  EXPECT_NEAR(f->crest_rad(1) / deg, row.high_spot_deg, 5e-9);
  ASSERT_TRUE(f->scatter());
  EXPECT_EQ(f->degrees_of_freedom(), 9u);
  EXPECT_NEAR(*f->scatter(), row.scatter, 5e-10);
  EXPECT_NEAR(*f->scatter() * std::sqrt(f->covariance[1][1]), row.coefficient_uncertainty, 5e-10);
  EXPECT_NEAR(*f->scatter() * std::sqrt(f->amplitude_variance_factor(1)), row.coefficient_uncertainty, 5e-10);
  const auto [low, high] = std::minmax_element(f->residuals.begin(), f->residuals.end());
  EXPECT_NEAR(*high - *low, row.residual_range, 5e-10);
}

TEST(TurnFit, SixPointAnalysis) {
  const auto& row = oracle::six_point;
  const auto f = fit(even_angles(6), row.reading, {1.0, 2});
  ASSERT_TRUE(f);
  const Vector expected{row.mean, row.cosine, row.sine, row.cosine2, row.sine2};
  for (std::size_t i = 0; i < expected.size(); ++i) EXPECT_NEAR(f->coefficient[i], expected[i], 5e-10) << i;
}

TEST(TurnFit, EqualSpacingGivesTwoOverN) {
  const auto f = fit(even_angles(10), std::vector<double>(10, 0.0), {1.0, 2});
  ASSERT_TRUE(f);
  EXPECT_NEAR(f->covariance[0][0], 0.1, 1e-15);
  for (std::size_t i = 1; i < most_unknowns; ++i) EXPECT_NEAR(f->covariance[i][i], 0.2, 1e-15);
  EXPECT_NEAR(f->covariance[1][3], 0.0, 1e-15);
  EXPECT_NEAR(f->variance_factor_at(1.234), 0.5, 1e-14);  // 1/10 + 2/10 + 2/10
}

TEST(TurnFit, TwoTurnsWithHalfOrder) {
  const auto angles = even_angles(8, 2.0);
  std::vector<double> reading;
  for (const double t : angles) {
    reading.push_back(3.0 + 0.4 * std::cos(t / 2 - 1.0) + 0.25 * std::cos(t - 2.0));
  }
  const auto f = fit(angles, reading, {0.5, 2});
  ASSERT_TRUE(f);
  EXPECT_NEAR(f->model.period_rad(), 4.0 * std::numbers::pi, 1e-15);
  EXPECT_NEAR(f->amplitude(1), 0.4, 1e-14);
  EXPECT_NEAR(f->crest_rad(1), 2.0, 1e-13);  // crank angle, of two turns
  EXPECT_NEAR(f->amplitude(2), 0.25, 1e-14);
  EXPECT_NEAR(f->crest_rad(2), 2.0, 1e-13);
  const Extremes e = extremes(*f);
  EXPECT_NEAR(e.greatest, 3.65, 1e-13);  // both crests at 2 rad
  EXPECT_NEAR(e.greatest_at_rad, 2.0, 1e-7);
}

TEST(TurnFit, ExtremesOfPlainAndFlatCurves) {
  Fit f;
  f.model = {1.0, 2};
  f.coefficient = {1.0, 3.0, 4.0, 0.0, 0.0};
  EXPECT_NEAR(extremes(f).greatest, 6.0, 1e-14);
  EXPECT_NEAR(extremes(f).least, -4.0, 1e-14);
  EXPECT_NEAR(extremes(f).greatest_at_rad, std::atan2(4.0, 3.0), 1e-12);
  f.coefficient = {1.0, 0.0, 0.0, 0.0, 0.0};
  EXPECT_EQ(extremes(f).greatest, 1.0);
  EXPECT_EQ(extremes(f).least, 1.0);
  f.coefficient = {0.0, 1.0, 0.0, 0.25, 0.0};  // cos x + ¼ cos 2x: three turning places fall together at 180°
  EXPECT_NEAR(extremes(f).greatest, 1.25, 1e-15);
  EXPECT_NEAR(extremes(f).least, -0.75, 1e-15);
  EXPECT_NEAR(extremes(f).least_at_rad, std::numbers::pi, 1e-4);
}

TEST(TurnFit, WhereTheDialStandsAtZeroCostsNoDigits) {
  const auto angles = even_angles(9);
  std::vector<double> reading;
  for (const double t : angles) reading.push_back(1.0e6 + std::cos(t));
  const auto f = fit(angles, reading, {1.0, 1});
  ASSERT_TRUE(f);
  EXPECT_NEAR(f->amplitude(1), 1.0, 2e-10);  // all that a double at 1e6 holds
}

TEST(TurnFit, RefusesWhatCannotBeDetermined) {
  EXPECT_EQ(fit({}, {}, {1.0, 1}).error(), Fault::TooFewReadings);
  const std::vector<double> two{0.0, std::numbers::pi};
  EXPECT_EQ(fit(two, two, {1.0, 1}).error(), Fault::TooFewReadings);
  const std::vector<double> repeated{0.0, 1.0, 0.0, 1.0, 0.0, 1.0};
  EXPECT_EQ(fit(repeated, repeated, {1.0, 1}).error(), Fault::AnglesDoNotDetermine);
  const std::vector<double> four{0.0, 1.5, 3.0, 4.5, 0.0, 1.5, 3.0, 4.5};
  EXPECT_EQ(fit(four, four, {1.0, 2}).error(), Fault::AnglesDoNotDetermine);
  EXPECT_TRUE(fit(four, four, {1.0, 1}));
}

TEST(TurnFit, NothingLeftOverMeansNoScatter) {
  const auto f = fit(even_angles(3), std::vector<double>{1.0, 2.0, 4.0}, {1.0, 1});
  ASSERT_TRUE(f);
  EXPECT_FALSE(f->scatter());
  for (const double r : f->residuals) EXPECT_NEAR(r, 0.0, 1e-14);
}

TEST(TurnFit, BlocksOfRowsGiveTheSameAsOne) {
  // 1,537 readings are four blocks; the coefficients of an exact curve come back.
  std::vector<double> angles;
  std::vector<double> reading;
  for (int i = 0; i < 1537; ++i) {
    const double t = 0.0137 * i;
    angles.push_back(t);
    reading.push_back(-2.0 + 0.5 * std::cos(t) - 0.3 * std::sin(t) + 0.1 * std::cos(2 * t) + 0.2 * std::sin(2 * t));
  }
  const auto f = fit(angles, reading, {1.0, 2});
  ASSERT_TRUE(f);
  const Vector expected{-2.0, 0.5, -0.3, 0.1, 0.2};
  for (std::size_t i = 0; i < expected.size(); ++i) EXPECT_NEAR(f->coefficient[i], expected[i], 1e-14) << i;
  EXPECT_EQ(f->residuals.size(), 1537u);
}

}  // namespace
}  // namespace camside::turn_fit
