// The fit against GSL's minimiser, the information against differences of the likelihood, the bands against the
// likelihood's own profile and against simulation.
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_multimin.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <random>
#include <vector>

#include "calc/life/life.hpp"
#include "calc/life/life_inputs.hpp"

namespace camside::life {
namespace {

using Times = std::vector<weibull::Time>;

// From the density and the survival function of GSL's Weibull distribution, nothing simplified.
double ln_likelihood(const Times& times, double ln_eta, double ln_shape) {
  const double eta = std::exp(ln_eta);
  const double shape = std::exp(ln_shape);
  double sum = 0.0;
  for (const auto& t : times) {
    const double x = t.at / eta;
    if (t.failed) sum += std::log(shape / eta) + (shape - 1.0) * std::log(x);
    sum -= std::pow(x, shape);
  }
  return sum;
}

Times simulated(std::mt19937_64& random, std::size_t n, double shape, double censored_up_to) {
  std::weibull_distribution<double> life(shape, 50'000.0);
  std::uniform_real_distribution<double> seen(5'000.0, censored_up_to);
  Times times;
  for (std::size_t i = 0; i < n; ++i) {
    const double fails = life(random);
    const double stops = seen(random);
    times.push_back({std::max(0.5, std::min(fails, stops)), fails <= stops});
  }
  return times;
}

double minus_ln_likelihood(const gsl_vector* at, void* times) {
  return -ln_likelihood(*static_cast<const Times*>(times), gsl_vector_get(at, 0), gsl_vector_get(at, 1));
}

struct Found {
  double ln_eta;
  double ln_shape;
};

Found by_simplex(const Times& times) {
  gsl_multimin_function f{&minus_ln_likelihood, 2, const_cast<Times*>(&times)};
  gsl_vector* at = gsl_vector_alloc(2);
  gsl_vector* step = gsl_vector_alloc(2);
  gsl_vector_set(at, 0, std::log(times.front().at));
  gsl_vector_set(at, 1, 0.0);
  gsl_vector_set_all(step, 0.5);
  gsl_multimin_fminimizer* search = gsl_multimin_fminimizer_alloc(gsl_multimin_fminimizer_nmsimplex2, 2);
  gsl_multimin_fminimizer_set(search, &f, at, step);
  for (int i = 0; i < 2'000 && gsl_multimin_fminimizer_size(search) > 1e-9; ++i) {
    if (gsl_multimin_fminimizer_iterate(search) != 0) break;
  }
  const Found found{gsl_vector_get(search->x, 0), gsl_vector_get(search->x, 1)};
  gsl_multimin_fminimizer_free(search);
  gsl_vector_free(step);
  gsl_vector_free(at);
  return found;
}

bool can_be_fitted(const Times& times) {
  double longest = 0.0;
  for (const auto& t : times) longest = std::max(longest, t.at);
  return std::any_of(times.begin(), times.end(), [&](const auto& t) { return t.failed && t.at < longest; });
}

TEST(LifeIndependent, FitAgainstGslsSimplex) {
  std::mt19937_64 random(3);
  int tried = 0;
  for (int run = 0; run < 60; ++run) {
    const Times times = simulated(random, 5 + static_cast<std::size_t>(run), 0.7 + 0.07 * run, 80'000.0);
    if (!can_be_fitted(times)) continue;
    ++tried;
    const auto fit = weibull::fit(times);
    const Found found = by_simplex(times);
    EXPECT_NEAR(fit->curve.ln_eta, found.ln_eta, 2e-6) << run;
    EXPECT_NEAR(std::log(fit->curve.shape), found.ln_shape, 2e-6) << run;
    EXPECT_GE(fit->log_likelihood, ln_likelihood(times, found.ln_eta, found.ln_shape) - 1e-9) << run;
  }
  EXPECT_GT(tried, 50);
}

TEST(LifeIndependent, InformationAgainstDifferencesOfTheLikelihood) {
  std::mt19937_64 random(4);
  for (int run = 0; run < 30; ++run) {
    const Times times = simulated(random, 30, 0.8 + 0.1 * run, 90'000.0);
    const auto fit = weibull::fit(times);
    ASSERT_TRUE(fit.has_value());
    const double a = fit->curve.ln_eta;
    const double b = std::log(fit->curve.shape);
    const double h = 1e-3;
    const auto f = [&](double da, double db) { return ln_likelihood(times, a + da * h, b + db * h); };
    const double i11 = -(f(1, 0) - 2.0 * f(0, 0) + f(-1, 0)) / (h * h);
    const double i22 = -(f(0, 1) - 2.0 * f(0, 0) + f(0, -1)) / (h * h);
    const double i12 = -(f(1, 1) - f(1, -1) - f(-1, 1) + f(-1, -1)) / (4.0 * h * h);
    const double determinant = i11 * i22 - i12 * i12;
    EXPECT_NEAR(fit->covariance.eta, i22 / determinant, 1e-3 * fit->covariance.eta);
    EXPECT_NEAR(fit->covariance.shape, i11 / determinant, 1e-3 * fit->covariance.shape);
    EXPECT_NEAR(fit->covariance.both, -i12 / determinant,
                1e-3 * std::sqrt(fit->covariance.eta * fit->covariance.shape));
  }
}

// The chance ahead as a function of (ln η, ln β), its slopes by differences: the interval must be the delta method's.
TEST(LifeIndependent, IntervalsAgainstSlopesByDifferences) {
  const auto fit = weibull::fit(times_of(oracle::shock_absorbers));
  const double h = 1e-5;
  const auto check = [&](const std::function<double(const weibull::Curve&)>& ln_hazard, weibull::Interval got) {
    const auto at = [&](double da, double db) {
      return ln_hazard({fit->curve.ln_eta + da, fit->curve.shape * std::exp(db)});
    };
    const double ga = (at(h, 0) - at(-h, 0)) / (2.0 * h);
    const double gb = (at(0, h) - at(0, -h)) / (2.0 * h);
    const auto& v = fit->covariance;
    const double reach =
        gsl_cdf_ugaussian_Pinv(0.975) * std::sqrt(ga * ga * v.eta + 2.0 * ga * gb * v.both + gb * gb * v.shape);
    EXPECT_NEAR(std::log(-std::log1p(-got.low)), at(0, 0) - reach, 1e-7);
    EXPECT_NEAR(std::log(-std::log1p(-got.high)), at(0, 0) + reach, 1e-7);
  };
  for (const double s : {0.0, 10.0, 5'000.0, 20'000.0}) {
    for (const double d : {1.0, 3'000.0, 30'000.0}) {
      check([&](const weibull::Curve& c) { return std::log(-std::log1p(-weibull::chance_between(c, s, d))); },
            weibull::chance_between_interval(*fit, s, d));
    }
    if (s > 0.0)
      check([&](const weibull::Curve& c) { return std::log(-std::log1p(-weibull::chance_by(c, s))); },
            weibull::chance_interval(*fit, s));
  }
}

// Many failures: the band must agree with the likelihood's own profile, χ² 3.84 below its top.
TEST(LifeIndependent, BandAgainstTheProfileOfTheLikelihood) {
  std::mt19937_64 random(9);
  const Times times = simulated(random, 3'000, 2.0, 90'000.0);
  const auto fit = weibull::fit(times);
  const double top = fit->log_likelihood;
  const double drop = 0.5 * gsl_cdf_chisq_Pinv(0.95, 1.0);
  // for a given shape the likeliest η is in closed form
  const auto profile = [&](double ln_shape) {
    double sum = 0.0;
    double failures = 0.0;
    for (const auto& t : times) {
      sum += std::pow(t.at / 50'000.0, std::exp(ln_shape));
      failures += t.failed ? 1.0 : 0.0;
    }
    return ln_likelihood(times, std::log(50'000.0) + std::log(sum / failures) / std::exp(ln_shape), ln_shape);
  };
  const weibull::Interval got = weibull::shape_interval(*fit);
  EXPECT_NEAR(profile(std::log(got.low)), top - drop, 0.15);
  EXPECT_NEAR(profile(std::log(got.high)), top - drop, 0.15);
}

TEST(LifeIndependent, BandKeepsItsPromiseWithManyFailures) {
  std::mt19937_64 random(20'261'125);
  constexpr int runs = 4'000;
  int shape_held = 0;
  int half_held = 0;
  int chance_held = 0;
  const weibull::Curve truth{std::log(50'000.0), 2.0};
  for (int run = 0; run < runs; ++run) {
    const auto fit = weibull::fit(simulated(random, 150, truth.shape, 90'000.0));
    const auto holds = [](weibull::Interval i, double v) { return i.low <= v && v <= i.high ? 1 : 0; };
    shape_held += holds(weibull::shape_interval(*fit), truth.shape);
    half_held += holds(weibull::ln_time_interval(*fit, 0.5), weibull::ln_time_at(truth, 0.5));
    chance_held += holds(weibull::chance_between_interval(*fit, 30'000.0, 5'000.0),
                         weibull::chance_between(truth, 30'000.0, 5'000.0));
  }
  for (const int held : {shape_held, half_held, chance_held}) {
    EXPECT_GT(held, 0.935 * runs);
    EXPECT_LT(held, 0.965 * runs);
  }
}

// What the cautions for few failures say: of shops with 20 parts and so many failures, how often the band holds, and
// how far the half life is off.
struct Few {
  double shape_held = 0.0;
  double half_held = 0.0;
  double worst_half = 0.0;  // ratio to the truth that 1 in 40 exceeds
};

Few shops_with(std::size_t failures, double censored_up_to) {
  constexpr std::size_t wanted = 1'000;
  const weibull::Curve truth{std::log(50'000.0), 1.5};
  const double ln_half = weibull::ln_time_at(truth, 0.5);
  std::mt19937_64 random(2);
  std::vector<double> ratios;
  Few few;
  while (ratios.size() < wanted) {
    const Times times = simulated(random, 20, truth.shape, censored_up_to);
    const auto failed = std::count_if(times.begin(), times.end(), [](const auto& t) { return t.failed; });
    if (static_cast<std::size_t>(failed) != failures || !can_be_fitted(times)) continue;
    const auto fit = weibull::fit(times);
    const weibull::Interval shape = weibull::shape_interval(*fit);
    const weibull::Interval half = weibull::ln_time_interval(*fit, 0.5);
    if (shape.low <= truth.shape && truth.shape <= shape.high) few.shape_held += 1.0 / wanted;
    if (half.low <= ln_half && ln_half <= half.high) few.half_held += 1.0 / wanted;
    ratios.push_back(std::exp(weibull::ln_time_at(fit->curve, 0.5) - ln_half));
  }
  std::sort(ratios.begin(), ratios.end());
  few.worst_half = ratios[wanted - wanted / 40];
  return few;
}

TEST(LifeIndependent, OneFailureIsATenfoldCautionForAReason) {
  const Few one = shops_with(1, 9'000.0);
  EXPECT_GT(one.worst_half, 10.0);
  EXPECT_LT(one.half_held, 0.93);
}

TEST(LifeIndependent, FewFailuresHoldLessThanPromised) {
  for (const std::size_t failures : {std::size_t{2}, std::size_t{3}, std::size_t{4}}) {
    const Few few = shops_with(failures, 25'000.0);
    EXPECT_LT(few.shape_held, 0.95) << failures;
    EXPECT_GT(few.shape_held, 0.84) << failures;
  }
}

// No failure among n parts that stop at one distance: the bound holds the truth in at least 95 % of shops, and is not
// far from losing it: at the bound itself a record without a failure has a chance of 5 %.
TEST(LifeIndependent, TheBoundIsWhereNoFailureHasFivePercent) {
  for (const double shape : {0.8, 2.0, 4.0}) {
    const Times times{{12'000.0, false}, {25'000.0, false}, {31'000.0, false}, {31'000.0, false}};
    const double eta = std::exp(weibull::ln_eta_at_least(times, shape, 0.95));
    double chance = 1.0;
    for (const auto& t : times) chance *= gsl_cdf_weibull_Q(t.at, eta, shape);
    EXPECT_NEAR(chance, 0.05, 1e-9);
  }
  // with failures: the Poisson limit is half of χ²
  Times failed(7, weibull::Time{1.0, true});
  failed.push_back({1.0, false});
  const double events = gsl_cdf_chisq_Pinv(0.95, 16.0) / 2.0;
  EXPECT_NEAR(std::exp(weibull::ln_eta_at_least(failed, 1.0, 0.95)), 8.0 / events, 1e-9);
}

TEST(LifeIndependent, ChancesAgainstGsl) {
  for (const double shape : {0.6, 1.0, 3.2}) {
    const weibull::Curve c{std::log(40'000.0), shape};
    for (const double t : {10.0, 5'000.0, 40'000.0, 90'000.0}) {
      EXPECT_NEAR(weibull::chance_by(c, t) / gsl_cdf_weibull_P(t, 40'000.0, shape), 1.0, 1e-12);
      const double to_go =
          1.0 - gsl_cdf_weibull_Q(t + 2'000.0, 40'000.0, shape) / gsl_cdf_weibull_Q(t, 40'000.0, shape);
      EXPECT_NEAR(weibull::chance_between(c, t, 2'000.0), to_go, 1e-13);
      EXPECT_NEAR(std::exp(weibull::ln_time_at(c, 0.3)) / gsl_cdf_weibull_Pinv(0.3, 40'000.0, shape), 1.0, 1e-12);
    }
  }
}

// Adjusted ranks by their meaning: the mean over every order in which all could have failed in the end, given what was
// seen: whoever failed did so before all that had come further.
bool could_be(const Times& times, const std::vector<std::size_t>& order) {
  for (std::size_t i = 0; i < order.size(); ++i) {
    for (std::size_t later = i + 1; later < order.size(); ++later) {
      const auto& first = times[order[i]];
      const auto& second = times[order[later]];
      if (second.failed && second.at < first.at) return false;
    }
  }
  return true;
}

TEST(LifeIndependent, RanksAreMeansOverAllFutures) {
  const Times times{{10, true}, {20, false}, {30, true}, {40, false}, {50, true}, {60, true}, {70, false}};
  std::vector<std::size_t> order{0, 1, 2, 3, 4, 5, 6};
  std::vector<double> rank(times.size(), 0.0);
  double orders = 0.0;
  do {
    if (!could_be(times, order)) continue;
    for (std::size_t i = 0; i < order.size(); ++i) rank[order[i]] += static_cast<double>(i) + 1.0;
    orders += 1.0;
  } while (std::next_permutation(order.begin(), order.end()));
  const auto points = weibull::plot_points(times);
  ASSERT_EQ(points.size(), 4U);
  for (const auto& p : points) EXPECT_NEAR(p.rank, rank[p.entry] / orders, 1e-12) << p.at;
}

}  // namespace
}  // namespace camside::life
