// The fit against GSL's (singular values, not QR) and the curve's extremes against brute force.
#include <gsl/gsl_multifit.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include "maths/turn_fit.hpp"

namespace camside::turn_fit {
namespace {

struct Problem {
  std::vector<double> angles;
  std::vector<double> reading;
};

Problem random_problem(std::mt19937_64& random, std::size_t n, double turns) {
  std::uniform_real_distribution<double> angle(0.0, 2.0 * std::numbers::pi * turns);
  std::normal_distribution<double> reading(0.05, 0.02);
  Problem p;
  for (std::size_t i = 0; i < n; ++i) {
    p.angles.push_back(angle(random));
    p.reading.push_back(reading(random));
  }
  return p;
}

struct GslFit {
  std::vector<double> coefficient;
  std::vector<double> unscaled_covariance;  // row by row
  double sum_of_squares = 0.0;
};

GslFit fit_by_gsl(const Problem& problem, Model model) {
  const std::size_t n = problem.angles.size();
  const std::size_t p = model.unknowns();
  gsl_matrix* x = gsl_matrix_alloc(n, p);
  gsl_vector* y = gsl_vector_alloc(n);
  gsl_vector* c = gsl_vector_alloc(p);
  gsl_matrix* cov = gsl_matrix_alloc(p, p);
  for (std::size_t i = 0; i < n; ++i) {
    gsl_vector_set(y, i, problem.reading[i]);
    gsl_matrix_set(x, i, 0, 1.0);
    for (int h = 1; h <= model.harmonics; ++h) {
      const double angle = model.base_order * h * problem.angles[i];
      gsl_matrix_set(x, i, static_cast<std::size_t>(2 * h - 1), std::cos(angle));
      gsl_matrix_set(x, i, static_cast<std::size_t>(2 * h), std::sin(angle));
    }
  }
  GslFit out;
  gsl_multifit_linear_workspace* work = gsl_multifit_linear_alloc(n, p);
  gsl_multifit_linear(x, y, c, cov, &out.sum_of_squares, work);
  for (std::size_t i = 0; i < p; ++i) {
    out.coefficient.push_back(gsl_vector_get(c, i));
    for (std::size_t j = 0; j < p; ++j) {  // GSL scales by the residual variance; take it out again
      out.unscaled_covariance.push_back(gsl_matrix_get(cov, i, j) / out.sum_of_squares * static_cast<double>(n - p));
    }
  }
  gsl_multifit_linear_free(work);
  gsl_matrix_free(cov);
  gsl_vector_free(c);
  gsl_vector_free(y);
  gsl_matrix_free(x);
  return out;
}

void compare(const Problem& problem, Model model) {
  const auto ours = fit(problem.angles, problem.reading, model);
  ASSERT_TRUE(ours);
  const GslFit theirs = fit_by_gsl(problem, model);
  const std::size_t p = model.unknowns();
  for (std::size_t i = 0; i < p; ++i) {
    EXPECT_NEAR(ours->coefficient[i], theirs.coefficient[i], 1e-13 * (1.0 + 100.0 * ours->covariance[i][i]));
    for (std::size_t j = 0; j < p; ++j) {
      const double scale = std::sqrt(ours->covariance[i][i] * ours->covariance[j][j]);
      EXPECT_NEAR(ours->covariance[i][j] / scale, theirs.unscaled_covariance[i * p + j] / scale, 1e-9);
    }
  }
  EXPECT_NEAR(ours->residual_sum_of_squares / theirs.sum_of_squares, 1.0, 1e-9);
}

TEST(TurnFitIndependent, AgainstSingularValues) {
  std::mt19937_64 random(20240514);
  for (int i = 0; i < 200; ++i) {
    const std::size_t n = 9 + static_cast<std::size_t>(random() % 30);
    compare(random_problem(random, n, 1.0), {1.0, 1});
    compare(random_problem(random, n, 1.0), {1.0, 2});
    compare(random_problem(random, n, 2.0), {0.5, 2});
  }
}

// A scan of the whole period, then the best place narrowed by thirds.
double brute_greatest(const Fit& f, double sign) {
  constexpr int steps = 20000;
  const double step = f.model.period_rad() / steps;
  double best_at = 0.0;
  for (int i = 0; i < steps; ++i) {
    if (sign * f.value_at(i * step) > sign * f.value_at(best_at)) best_at = i * step;
  }
  double low = best_at - step;
  double high = best_at + step;
  for (int i = 0; i < 200; ++i) {
    const double a = low + (high - low) / 3.0;
    const double b = high - (high - low) / 3.0;
    (sign * f.value_at(a) < sign * f.value_at(b) ? low : high) = (sign * f.value_at(a) < sign * f.value_at(b) ? a : b);
  }
  return f.value_at(0.5 * (low + high));
}

TEST(TurnFitIndependent, ExtremesAgainstBruteForce) {
  std::mt19937_64 random(41300);
  std::normal_distribution<double> coefficient(0.0, 1.0);
  for (int i = 0; i < 300; ++i) {
    Fit f;
    f.model = {i % 3 == 0 ? 0.5 : 1.0, 2};
    for (double& c : f.coefficient) c = coefficient(random);
    if (i % 5 == 0) f.coefficient[3] = f.coefficient[4] = 0.0;
    const Extremes e = extremes(f);
    ASSERT_NEAR(e.greatest, brute_greatest(f, 1.0), 2e-13) << i;
    ASSERT_NEAR(e.least, brute_greatest(f, -1.0), 2e-13) << i;
    ASSERT_EQ(e.greatest, f.value_at(e.greatest_at_rad));
    ASSERT_GE(e.least_at_rad, 0.0);
    ASSERT_LT(e.least_at_rad, f.model.period_rad());
  }
}

}  // namespace
}  // namespace camside::turn_fit
