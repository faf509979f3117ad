// The same answers by another route: GSL's least squares (SVD), the extremes by walking the cycle, Student's t by GSL.
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_matrix.h>
#include <gsl/gsl_multifit.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <vector>

#include "calc/backlash/backlash.hpp"
#include "calc/backlash/backlash_test_inputs.hpp"

namespace camside::backlash {
namespace {

struct Independent {
  std::vector<double> c;
  double rss = 0.0;
  gsl_matrix* inverse = nullptr;  // (XᵀX)⁻¹

  ~Independent() { gsl_matrix_free(inverse); }
};

std::vector<double> row(double t, std::size_t p) {
  const std::vector<double> all{1.0, std::cos(t / 2), std::sin(t / 2), std::cos(t), std::sin(t)};
  return {all.begin(), all.begin() + static_cast<std::ptrdiff_t>(p)};
}

void fit(const std::vector<double>& t, const std::vector<double>& y, std::size_t p, Independent& out) {
  gsl_matrix* x = gsl_matrix_alloc(t.size(), p);
  gsl_vector* v = gsl_vector_alloc(t.size());
  gsl_vector* c = gsl_vector_alloc(p);
  for (std::size_t i = 0; i < t.size(); ++i) {
    const auto r = row(t[i], p);
    for (std::size_t j = 0; j < p; ++j) gsl_matrix_set(x, i, j, r[j]);
    gsl_vector_set(v, i, y[i]);
  }
  gsl_multifit_linear_workspace* w = gsl_multifit_linear_alloc(t.size(), p);
  out.inverse = gsl_matrix_alloc(p, p);
  gsl_multifit_linear(x, v, c, out.inverse, &out.rss, w);
  gsl_matrix_scale(out.inverse, static_cast<double>(t.size() - p) / out.rss);
  for (std::size_t j = 0; j < p; ++j) out.c.push_back(gsl_vector_get(c, j));
  gsl_multifit_linear_free(w);
  gsl_matrix_free(x);
  gsl_vector_free(v);
  gsl_vector_free(c);
}

double value(const Independent& f, double t) {
  const auto r = row(t, f.c.size());
  double sum = 0.0;
  for (std::size_t j = 0; j < r.size(); ++j) sum += f.c[j] * r[j];
  return sum;
}

double variance_factor(const Independent& f, double t) {
  const auto r = row(t, f.c.size());
  double sum = 0.0;
  for (std::size_t i = 0; i < r.size(); ++i)
    for (std::size_t j = 0; j < r.size(); ++j) sum += r[i] * gsl_matrix_get(f.inverse, i, j) * r[j];
  return sum;
}

// The lowest point by brute force: every tenth of a degree, then ever finer round the best.
double lowest_at(const Independent& f) {
  double best = 0.0;
  double step = 4.0 * M_PI / 7'200;
  for (int i = 0; i < 7'200; ++i)
    if (value(f, i * step) < value(f, best)) best = i * step;
  for (; step > 1e-9; step /= 10.0) {
    const double from = best;
    for (int i = -10; i <= 10; ++i)
      if (value(f, from + i * step / 10.0) < value(f, best)) best = from + i * step / 10.0;
  }
  return best;
}

double expanded(double s, double degrees_of_freedom, double declared, double factor, double play) {
  const double sf = s * s * factor;
  const double u2 = sf + declared * declared * factor + play * play;
  const double effective = u2 * u2 / (sf * sf / degrees_of_freedom);
  const double k = effective >= 30.0 ? 2.0 : gsl_cdf_tdist_Pinv(0.5 + 0.9545 / 2.0, effective);
  return k * std::sqrt(u2);
}

struct Case {
  Input in;
  std::vector<double> t, y;
};

Case random_case(std::mt19937& random, bool crank) {
  std::uniform_real_distribution<double> thou(0.4, 3.0);
  std::uniform_real_distribution<double> off(-8.0, 8.0);
  std::uniform_real_distribution<double> grade(0.05, 0.8);
  Case c{crank ? crank_mesh() : plate_mesh(), {}, {}};
  c.in.graduation = Length::thou(grade(random));
  for (Reading& r : c.in.readings) {
    r.angle = Angle::deg(std::abs(r.angle->in_deg() + off(random)));
    r.reading = Length::thou(thou(random));
  }
  return c;
}

TEST(BacklashIndependent, FitExtremesAndUncertaintyAgree) {
  std::mt19937 random(20030514);
  int by_curve = 0;
  int by_reading = 0;
  for (int n = 0; n < 60; ++n) {
    const bool crank = n % 2 == 0;
    Case c = random_case(random, crank);
    const auto r = solve(c.in);
    ASSERT_TRUE(r);
    const double a = crank ? 38.15 : 38.12;
    const double r_w = crank ? a * 2.0 / 3.0 : a / 2.0;
    const double k = r_w / (crank ? 31.75 : 25.4);
    double lowest_reading = 1e9;
    for (const Reading& reading : c.in.readings) {
      c.t.push_back(reading.angle->in_rad());
      c.y.push_back(reading.reading->in_mm() * k);
      lowest_reading = std::min(lowest_reading, c.y.back());
    }
    Independent f;
    fit(c.t, c.y, crank ? 5 : 3, f);
    EXPECT_NEAR(r->curve.mean.in_mm(), f.c[0], 1e-12);
    EXPECT_NEAR(r->gear_share.in_mm(), std::hypot(f.c[1], f.c[2]), 1e-12);
    if (crank) {
      EXPECT_NEAR(r->pinion_share.in_mm(), std::hypot(f.c[3], f.c[4]), 1e-12);
    }

    const double at = lowest_at(f);
    const bool curve = value(f, at) < lowest_reading;
    (curve ? by_curve : by_reading) += 1;
    EXPECT_NEAR(r->lowest.lash.in_mm(), std::min(value(f, at), lowest_reading), 1e-12);
    EXPECT_EQ(r->lowest.from_reading, !curve);
    const double alpha = std::acos(1.27 * 30.0 * std::cos(20.0 * M_PI / 180.0) / a);
    const double degrees_of_freedom = static_cast<double>(c.t.size() - f.c.size());
    EXPECT_NEAR(r->lowest.uncertainty.in_mm(),
                expanded(std::sqrt(f.rss / degrees_of_freedom), degrees_of_freedom,
                         k * c.in.graduation->in_mm() / std::sqrt(6.0), curve ? variance_factor(f, at) : 1.0,
                         0.3 * 0.0254 * std::tan(alpha) / std::sqrt(3.0)),
                1e-8);
  }
  EXPECT_GT(by_curve, 5);
  EXPECT_GT(by_reading, 5);
}

// Coverage by trial: noisy readings of a known curve; the true lowest lash should lie inside ± about as often as 95 %.
TEST(BacklashIndependent, TheUncertaintyCoversWhatIsTrue) {
  std::mt19937 random(41300);
  std::normal_distribution<double> noise(0.0, 0.0015);
  std::uniform_real_distribution<double> phase(0.0, 4.0 * M_PI);
  int covered = 0;
  constexpr int trials = 200;
  for (int n = 0; n < trials; ++n) {
    const double p1 = phase(random);
    const double p2 = phase(random);
    const auto truth = [&](double t) { return 0.05 + 0.012 * std::cos(t - p1) + 0.01 * std::cos((t - p2) / 2.0); };
    double lowest = 1.0;
    for (int i = 0; i < 720; ++i) lowest = std::min(lowest, truth(4.0 * M_PI * i / 720.0));
    Input in = crank_mesh();
    in.graduation = Length::mm(1e-6);
    in.play1 = in.play2 = Length{};
    for (Reading& r : in.readings)
      r.reading = Length::mm((truth(r.angle->in_rad()) + noise(random)) * 31.75 / (38.15 * 2.0 / 3.0));
    const auto r = solve(in);
    ASSERT_TRUE(r);
    covered += std::abs(r->lowest.lash.in_mm() - lowest) <= r->lowest.uncertainty.in_mm();
  }
  const double share = 1.0 * covered / trials;
  EXPECT_GT(share, 0.90) << "± is too small";
  RecordProperty("covered_percent", std::to_string(100.0 * share));
}

}  // namespace
}  // namespace camside::backlash
