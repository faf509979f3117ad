// Runout by another route: GSL's least squares and Student quantile, the curve's range by brute force, the verdict
// written out again from ISO 14253-1, and the two-plane parts by plain sums.
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_multifit.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <random>
#include <vector>

#include "calc/runout/runout.hpp"

namespace camside::runout {
namespace {

constexpr double two_pi = 2.0 * std::numbers::pi;

struct Case {
  std::vector<double> angle_deg;  // whole degrees, so that repeats meet exactly
  std::vector<double> reading_mm;
  std::vector<int> turn;
  double graduation_mm = 0.0;
  double error_mm = 0.0;
  double play_mm = 0.0;
};

Case random_case(std::mt19937_64& random) {
  std::uniform_real_distribution<double> unit(0.0, 1.0);
  std::normal_distribution<double> noise(0.0, 0.006);
  Case c;
  const int n = 6 + static_cast<int>(unit(random) * 10);
  const int turns = 1 + static_cast<int>(unit(random) * 4);
  const double e = 0.005 + 0.06 * unit(random);
  const double phase = two_pi * unit(random);
  for (int t = 1; t <= turns; ++t) {
    for (int i = 0; i < n; ++i) {
      const double deg = std::round(360.0 * i / n) + (i % 3);
      const double rad = deg * two_pi / 360.0;
      c.angle_deg.push_back(deg);
      c.reading_mm.push_back(e * std::cos(rad - phase) + 0.005 * std::cos(2.0 * rad) + noise(random));
      c.turn.push_back(t);
    }
  }
  c.graduation_mm = unit(random) < 0.5 ? 0.01 : 0.0127;
  c.error_mm = 0.003 * unit(random);
  c.play_mm = 0.04 * unit(random);
  return c;
}

Input input_of(const Case& c) {
  Input in;
  in.setup.contact = Contact::BushingBand;
  in.setup.plate = Plate::Off;
  in.setup.graduation = Length::mm(c.graduation_mm);
  in.setup.stated_error = Length::mm(c.error_mm);
  in.setup.play = Length::mm(c.play_mm);
  in.readings.method = Method::Stations;
  for (std::size_t i = 0; i < c.angle_deg.size(); ++i) {
    in.readings.stations.push_back({Angle::deg(c.angle_deg[i]), Length::mm(c.reading_mm[i]), c.turn[i]});
  }
  return in;
}

struct Answer {
  double tir = 0.0;
  double judged = 0.0;
  double e = 0.0;
  double u = 0.0;
};

std::vector<double> coefficients_by_gsl(const Case& c, std::size_t p) {
  const std::size_t n = c.angle_deg.size();
  gsl_matrix* x = gsl_matrix_alloc(n, p);
  gsl_vector* y = gsl_vector_alloc(n);
  gsl_vector* solution = gsl_vector_alloc(p);
  gsl_matrix* cov = gsl_matrix_alloc(p, p);
  for (std::size_t i = 0; i < n; ++i) {
    const double t = c.angle_deg[i] * two_pi / 360.0;
    const double row[5] = {1.0, std::cos(t), std::sin(t), std::cos(2 * t), std::sin(2 * t)};
    for (std::size_t j = 0; j < p; ++j) gsl_matrix_set(x, i, j, row[j]);
    gsl_vector_set(y, i, c.reading_mm[i]);
  }
  double squares = 0.0;
  gsl_multifit_linear_workspace* work = gsl_multifit_linear_alloc(n, p);
  gsl_multifit_linear(x, y, solution, cov, &squares, work);
  std::vector<double> out(5, 0.0);
  for (std::size_t j = 0; j < p; ++j) out[j] = gsl_vector_get(solution, j);
  gsl_multifit_linear_free(work);
  gsl_matrix_free(cov);
  gsl_vector_free(solution);
  gsl_vector_free(y);
  gsl_matrix_free(x);
  return out;
}

// 200,000 steps round: the crest is flat, so a step of 3e-5 rad misses less than 1e-9 of the amplitude.
double range_by_force(const std::vector<double>& a) {
  double low = 1e9;
  double high = -1e9;
  for (int i = 0; i < 200000; ++i) {
    const double t = two_pi * i / 200000.0;
    const double v = a[1] * std::cos(t) + a[2] * std::sin(t) + a[3] * std::cos(2 * t) + a[4] * std::sin(2 * t);
    low = std::min(low, v);
    high = std::max(high, v);
  }
  return high - low;
}

Answer by_other_route(const Case& c) {
  std::map<int, std::vector<double>> places;
  for (std::size_t i = 0; i < c.angle_deg.size(); ++i) {
    places[static_cast<int>(c.angle_deg[i]) % 360].push_back(c.reading_mm[i]);
  }
  double low = 1e9;
  double high = -1e9;
  double squares = 0.0;
  double degrees_of_freedom = 0.0;
  for (const auto& [angle, readings] : places) {
    double mean = 0.0;
    for (const double r : readings) mean += r / static_cast<double>(readings.size());
    for (const double r : readings) squares += (r - mean) * (r - mean);
    degrees_of_freedom += static_cast<double>(readings.size()) - 1.0;
    low = std::min(low, mean);
    high = std::max(high, mean);
  }
  Answer out;
  out.tir = high - low;
  const std::size_t p = c.angle_deg.size() >= 8 && places.size() >= 5 ? 5 : 3;
  const std::vector<double> a = coefficients_by_gsl(c, p);
  out.e = std::hypot(a[1], a[2]);
  out.judged = std::max(out.tir, range_by_force(a));

  const double g2 = c.graduation_mm * c.graduation_mm;
  const double s2 = degrees_of_freedom > 0.0 ? squares / degrees_of_freedom : g2 / 9.0;
  const double u2 = 2.0 * (s2 + g2 / 12.0 + c.error_mm * c.error_mm / 3.0) + c.play_mm * c.play_mm / 12.0;
  const double effective = degrees_of_freedom > 0.0 ? u2 * u2 / (4.0 * s2 * s2 / degrees_of_freedom) : 1e9;
  const double k = effective >= 30.0 ? 2.0 : gsl_cdf_tdist_Pinv(0.5 + 0.9545 / 2.0, effective);
  out.u = k * std::sqrt(u2);
  return out;
}

Verdict rule_by_hand(const Answer& a, double limit) {
  if (a.judged + a.u <= limit) return Verdict::Within;
  return a.tir - a.u > limit ? Verdict::Outside : Verdict::NotProven;
}

TEST(RunoutIndependent, StationsByAnotherRoute) {
  std::mt19937_64 random(2003);
  int seen[3] = {0, 0, 0};
  int student = 0;
  for (int i = 0; i < 200; ++i) {
    const Case c = random_case(random);
    const auto ours = solve(input_of(c));
    ASSERT_TRUE(ours) << ours.error().front().text;
    const Answer theirs = by_other_route(c);
    ASSERT_NEAR(ours->tir.in_mm(), theirs.tir, 1e-13);
    ASSERT_NEAR(ours->eccentricity->in_mm(), theirs.e, 1e-13);
    ASSERT_NEAR(ours->judged.in_mm(), theirs.judged, 1e-10);
    ASSERT_NEAR(ours->uncertainty.expanded.in_mm(), theirs.u, 1e-9);
    ASSERT_EQ(*ours->verdict, rule_by_hand(theirs, 0.0762)) << i;
    ++seen[static_cast<int>(*ours->verdict)];
    student += ours->uncertainty.coverage_factor > 2.0;
  }
  EXPECT_GT(*std::min_element(seen, seen + 3), 5) << "each verdict must have come up";
  EXPECT_GT(student, 5);
}

TEST(RunoutIndependent, TwoPlanesByPlainSums) {
  // Right and left shaft bent as a sum of a common and an opposed part; both must come back.
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> size(0.002, 0.03);
  std::uniform_real_distribution<double> at(0.0, two_pi);
  for (int i = 0; i < 50; ++i) {
    const double common = size(random);
    const double opposed = size(random);
    const double common_at = at(random);
    const double opposed_at = at(random);
    Input in;
    in.setup.graduation = Length::mm(0.01);
    in.readings.method = Method::Stations;
    OtherSide other;
    other.readings.method = Method::Stations;
    for (int k = 0; k < 8; ++k) {
      const double t = two_pi * k / 8.0;
      const double both = common * std::cos(t - common_at);
      const double apart = opposed * std::cos(t - opposed_at);
      in.readings.stations.push_back({Angle::rad(t), Length::mm(both - apart), 1});
      other.readings.stations.push_back({Angle::rad(t), Length::mm(both + apart), 1});
    }
    in.other_side = other;
    const auto r = solve(in);
    ASSERT_TRUE(r && r->two_planes);
    EXPECT_NEAR(r->two_planes->common.in_mm(), 2.0 * common, 1e-13);
    EXPECT_NEAR(r->two_planes->opposed.in_mm(), 2.0 * opposed, 1e-13);
    EXPECT_NEAR(std::remainder(r->two_planes->opposed_high_spot.in_rad() - opposed_at, two_pi), 0.0, 1e-10);
    EXPECT_NEAR(std::remainder(r->two_planes->common_high_spot.in_rad() - common_at, two_pi), 0.0, 1e-10);
  }
}

}  // namespace
}  // namespace camside::runout
