#include "calc/life/life.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "calc/answers.hpp"
#include "calc/life/life_inputs.hpp"

namespace camside::life {
namespace {

// Location, scale and their covariances, as the publications print them.
struct LocationScale {
  double location, scale, var_location, covariance, var_scale;
};
LocationScale as_published(const weibull::Fit& f) {
  const double scale = 1.0 / f.curve.shape;
  return {f.curve.ln_eta, scale, f.covariance.eta, -scale * f.covariance.both, scale * scale * f.covariance.shape};
}

// ---- published fits ----

TEST(LifePublished, ShockAbsorbers) {
  const auto fit = weibull::fit(times_of(oracle::shock_absorbers));
  ASSERT_TRUE(fit.has_value());
  const LocationScale got = as_published(*fit);
  const auto& row = oracle::shock_fit;
  EXPECT_NEAR(got.location, row.location, 2e-7);  // not 10.2298143, the fit of the misprinted set
  EXPECT_NEAR(got.scale, row.scale, 1e-5 * row.scale);
  EXPECT_NEAR(got.var_location, row.var_location, 2e-5 * row.var_location);
  EXPECT_NEAR(got.covariance, row.covariance, 2e-5 * row.covariance);
  EXPECT_NEAR(got.var_scale, row.var_scale, 2e-5 * row.var_scale);
  EXPECT_NEAR(fit->log_likelihood, row.log_likelihood, 5e-5);
}

TEST(LifePublished, ShockAbsorbersAgain) {
  const auto& row = oracle::shock_again;
  const Result r = solved(shock_absorbers());
  EXPECT_NEAR(r.fit->curve.ln_eta, row.location, 5e-9);
  EXPECT_NEAR(1.0 / r.fit->curve.shape, row.scale, 5e-11);
  EXPECT_NEAR(r.fit->log_likelihood, row.log_likelihood, 5e-8);
  EXPECT_NEAR(std::exp(weibull::ln_time_at(*r.curve, 0.01)), row.life_1, 5e-4);
  EXPECT_NEAR(r.tenth_km.value, row.life_10, 5e-4);
  EXPECT_NEAR(r.half_km.value, row.life_50, 5e-4);
  EXPECT_NEAR(weibull::chance_by(*r.curve, 10'000.0), row.by_10000, 5e-8);
  EXPECT_NEAR(*r.characteristic_km.low, row.eta_low, 5e-4);
  EXPECT_NEAR(*r.characteristic_km.high, row.eta_high, 5e-4);
  EXPECT_NEAR(*r.shape.low, row.shape_low, 5e-7);
  EXPECT_NEAR(*r.shape.high, row.shape_high, 5e-7);
}

TEST(LifePublished, ChanceGivenSurvival) {
  Input in = shock_absorbers();
  in.survived = Distance::km(10'000.0);
  in.next = Distance::km(10'000.0);
  EXPECT_NEAR(solved(in).ahead->value, 1.0 - oracle::shock_again.reach_20000_from_10000, 5e-8);
}

TEST(LifePublished, PlotOfShockAbsorbers) {
  const auto points = weibull::plot_points(times_of(oracle::shock_absorbers));
  ASSERT_EQ(points.size(), oracle::shock_ranks.size());
  for (std::size_t i = 0; i < points.size(); ++i) {
    EXPECT_NEAR(points[i].rank, oracle::shock_ranks[i], 1e-6) << i;
    EXPECT_NEAR(points[i].share, oracle::shock_shares[i], 5.1e-8) << i;
  }
}

TEST(LifePublished, MedianRanksOfElevenFailures) {
  std::vector<double> eleven;
  for (int i = 1; i <= 11; ++i) eleven.push_back(100.0 * i);
  const auto points = weibull::plot_points(times_of(eleven));
  EXPECT_NEAR(points[0].share, oracle::complete_shares[0], 5e-8);
  EXPECT_NEAR(points[5].share, oracle::complete_shares[1], 1e-15);
  EXPECT_NEAR(points[10].share, oracle::complete_shares[2], 5e-8);
}

TEST(LifePublished, CompleteSample) {
  const auto& row = oracle::complete_fit;
  const auto fit = weibull::fit(times_of(oracle::complete_sample));
  const double shape = fit->curve.shape;
  const double ln_eta = fit->curve.ln_eta;
  EXPECT_NEAR(shape, row.shape, 5.1e-5);
  EXPECT_NEAR(-shape * ln_eta, row.ln_lambda, 5.1e-5);
  EXPECT_NEAR(shape * std::sqrt(fit->covariance.shape), row.shape_deviation, 5.1e-5);
  // ln λ = −β ln η: along ln η by −β, along ln β by −β ln η
  const auto& v = fit->covariance;
  const double variance = shape * shape * (v.eta + 2.0 * ln_eta * v.both + ln_eta * ln_eta * v.shape);
  EXPECT_NEAR(std::sqrt(variance), row.ln_lambda_deviation, 5.1e-5);
}

TEST(LifePublished, MedicalSet) {
  const auto& row = oracle::medical_fit;
  const auto fit = weibull::fit(times_of(oracle::medical));
  EXPECT_NEAR(fit->curve.ln_eta, row.location, 5.1e-4);
  EXPECT_NEAR(std::sqrt(fit->covariance.eta), row.location_deviation, 5.1e-4);
  EXPECT_NEAR(-std::log(fit->curve.shape), row.ln_scale, 5.1e-4);
  EXPECT_NEAR(std::sqrt(fit->covariance.shape), row.ln_scale_deviation, 5.1e-4);
  EXPECT_NEAR(fit->log_likelihood, row.log_likelihood, 0.5);
}

TEST(LifePublished, PoissonLimitsBehindTheBound) {
  // for a shape of 1 and one unit of total distance the bound is 1 over the limit
  for (std::size_t failures = 0; failures < oracle::poisson_limits.size(); ++failures) {
    std::vector<weibull::Time> times;
    for (std::size_t i = 0; i < 4; ++i) times.push_back({0.25, i < failures});
    const double limit = std::exp(-weibull::ln_eta_at_least(times, 1.0, 0.95));
    EXPECT_NEAR(limit, oracle::poisson_limits[failures], 0.0051) << failures;
  }
}

// ---- two quantiles ----

Input two_quantiles(double miles1, double share1, double miles2, double share2) {
  Input in;
  in.from = From::TwoQuantiles;
  in.early = Quantile{Distance::miles(miles1), share1};
  in.late = Quantile{Distance::miles(miles2), share2};
  in.source = Source::memory();
  return in;
}

TEST(LifeQuantiles, TheCurveGoesThroughBoth) {
  const Result r = solved(two_quantiles(30'000, 0.1, 60'000, 0.5));
  EXPECT_NEAR(weibull::chance_by(*r.curve, Distance::miles(30'000).in_km()), 0.1, 1e-13);
  EXPECT_NEAR(weibull::chance_by(*r.curve, Distance::miles(60'000).in_km()), 0.5, 1e-13);
  EXPECT_NEAR(r.shape.value, std::log(std::log(0.5) / std::log(0.9)) / std::log(2.0), 1e-13);
  EXPECT_FALSE(r.shape.low.has_value());
  EXPECT_FALSE(r.characteristic_km.low.has_value());
  EXPECT_TRUE(r.band.empty());
  EXPECT_TRUE(says(r, 1728));
}

TEST(LifeQuantiles, MustDifferAndStandInOrder) {
  EXPECT_TRUE(has(refused(two_quantiles(60'000, 0.1, 30'000, 0.5)), 1704));
  EXPECT_TRUE(has(refused(two_quantiles(30'000, 0.5, 60'000, 0.1)), 1704));
  EXPECT_TRUE(has(refused(two_quantiles(30'000, 0.1, 30'000, 0.5)), 1704));
  EXPECT_TRUE(has(refused(two_quantiles(30'000, 0.1, 60'000, 0.1)), 1704));
  EXPECT_TRUE(has(refused(two_quantiles(30'000, 0.1, 30'001, 0.9)), 1705));
  EXPECT_TRUE(has(refused(two_quantiles(1, 0.1, 900'000, 0.101)), 1705));
}

TEST(LifeQuantiles, NeedBothAndTheirSource) {
  Input in = two_quantiles(30'000, 0.1, 60'000, 0.5);
  in.late.reset();
  EXPECT_EQ(refused(in).front().field, "late");
  in = two_quantiles(30'000, 0.1, 60'000, 0.5);
  in.source.reset();
  EXPECT_EQ(refused(in).front().field, "source");
  in = two_quantiles(30'000, 10.0, 60'000, 0.5);  // per cent typed
  EXPECT_EQ(refused(in).front().field, "early.share");
}

// ---- what a list can't give ----

TEST(LifeRefused, NoFailureNamesTheBound) {
  Input in = list_of({{10'000, false}, {20'000, false}, {30'000, false}});
  const Findings f = refused(in);
  EXPECT_TRUE(has(f, 1702));
  // (1² + 2² + 3²) · 1e8 km² over −ln 0.05, shape 2: 21,618 km
  EXPECT_NE(text_of(f, 1702).find("21,618 km"), std::string::npos) << text_of(f, 1702);
  EXPECT_NE(text_of(f, 1702).find("shape of 2 (assumed"), std::string::npos);
}

TEST(LifeRefused, WithAnAssumedShapeTheBoundIsTheResult) {
  Input in = list_of({{10'000, false}, {20'000, false}, {30'000, false}});
  in.assumed_shape = 1.0;
  in.survived = Distance::km(10'000.0);
  in.next = Distance::km(5'000.0);
  const Result r = solved(in);
  EXPECT_FALSE(r.curve.has_value());
  EXPECT_NEAR(*r.least_km, 60'000.0 / -std::log(0.05), 1e-6);
  EXPECT_NEAR(*r.ahead->high, -std::expm1(-5'000.0 / *r.least_km), 1e-12);
  EXPECT_TRUE(says(r, 1726));
  EXPECT_EQ(r.outcome.figure("ahead"), nullptr);
  EXPECT_NE(r.outcome.figure("ahead_high"), nullptr);
}

TEST(LifeRefused, FailuresOnlyAtTheLongestDistance) {
  for (const auto& times : std::vector<std::vector<weibull::Time>>{{{10'000, false}, {20'000, true}},
                                                                   {{20'000, true}},
                                                                   {{20'000, true}, {20'000, true}},
                                                                   {{20'000, true}, {20'000, true}, {20'000, false}}}) {
    Input in = list_of(times);
    EXPECT_TRUE(has(refused(in), 1703));
    in.assumed_shape = 2.0;
    EXPECT_TRUE(says(solved(in), 1727));
  }
  // one meter short of the longest is enough for a curve, however steep
  EXPECT_TRUE(solved(list_of({{10'000, false}, {19'999.999, true}, {20'000, false}})).curve.has_value());
}

TEST(LifeRefused, AnEmptyOrEndlessList) {
  EXPECT_TRUE(has(refused(Input{}), 1701));
  Input in;
  in.parts.assign(most_parts + 1, Part{Distance::km(10.0), true});
  EXPECT_TRUE(has(refused(in), 1706));
}

TEST(LifeRefused, FailedIsNeverGuessed) {
  Input in = shock_absorbers();
  in.parts[3].failed.reset();
  EXPECT_EQ(refused(in).front().field, "parts[3].failed");
  in = shock_absorbers();
  in.parts[3].distance = Distance{};
  EXPECT_EQ(refused(in).front().field, "parts[3].distance");
  for (const double bad : {std::nan(""), std::numeric_limits<double>::infinity(), -1.0}) {
    in.parts[3].distance = Distance::km(bad);
    EXPECT_TRUE(any_refusal(refused(in)));
  }
}

// ---- what is said beside the curve ----

TEST(LifeRemarks, OneFailureIsATenfoldCaution) {
  const Result r = solved(list_of({{10'000, true}, {20'000, false}, {30'000, false}}));
  ASSERT_TRUE(r.curve.has_value());
  EXPECT_TRUE(says(r, 1720));
  EXPECT_NE(text_of(r.outcome.findings, 1720).find("factor of ten"), std::string::npos);
  EXPECT_FALSE(says(solved(shock_absorbers()), 1720));
}

TEST(LifeRemarks, FewFailuresAndNoSurvivors) {
  const Result r = solved(list_of({{10'000, true}, {20'000, true}, {30'000, true}}));
  EXPECT_TRUE(says(r, 1721));
  EXPECT_TRUE(says(r, 1722));
  const Result many = solved(shock_absorbers());
  EXPECT_FALSE(says(many, 1721));
  EXPECT_FALSE(says(many, 1722));
}

TEST(LifeRemarks, ShapesThatAreNoWear) {
  std::vector<weibull::Time> young;
  for (int i = 1; i <= 40; ++i) young.push_back({std::pow(1.3, i), true});
  EXPECT_TRUE(says(solved(list_of(young)), 1723));
  std::vector<weibull::Time> alike;
  for (int i = 0; i < 10; ++i) alike.push_back({30'000.0 + 10.0 * i, true});
  EXPECT_TRUE(says(solved(list_of(alike)), 1724));
  EXPECT_FALSE(says(solved(shock_absorbers()), 1723));
  EXPECT_FALSE(says(solved(shock_absorbers()), 1724));
}

TEST(LifeRemarks, OneCurveIsOfOneKindOfPart) {
  EXPECT_TRUE(says(solved(shock_absorbers()), 1740));
  EXPECT_FALSE(says(solved(two_quantiles(30'000, 0.1, 60'000, 0.5)), 1740)) << "no list, no mixture";
}

TEST(LifeRemarks, BeyondTheRecord) {
  Input in = shock_absorbers();
  in.survived = Distance::km(20'000.0);
  in.next = Distance::km(8'100.0);
  EXPECT_FALSE(says(solved(in), 1725));
  in.next = Distance::km(8'101.0);
  EXPECT_TRUE(says(solved(in), 1725));
  std::vector<weibull::Time> running(60, weibull::Time{20'000.0, false});
  running.push_back({19'000.0, true});
  running.push_back({1'000.0, true});
  EXPECT_TRUE(says(solved(list_of(running)), 1729));
}

TEST(LifeRemarks, ANewPartAndTheOtherWay) {
  Input in = shock_absorbers();
  in.next = Distance::km(1'000.0);
  EXPECT_TRUE(says(solved(in), 1741));
  EXPECT_NEAR(solved(in).ahead->value, weibull::chance_by(*solved(in).curve, 1'000.0), 1e-15);
  in.early = Quantile{Distance::km(1'000.0), 0.1};
  EXPECT_TRUE(says(solved(in), 1742));
}

// ---- chances ----

TEST(LifeChance, TinyChancesKeepTheirDigits) {
  const weibull::Curve c{std::log(1e6), 3.0};
  // H = (0.1/1e6)³ = 1e-21: as a difference of survivals nothing would be left
  EXPECT_NEAR(weibull::chance_between(c, 0.0, 0.1) / 1e-21, 1.0, 1e-12);
  // ΔH at 1000 km over 0.001 km: 3 · 1000² · 0.001/1e18
  EXPECT_NEAR(weibull::chance_between(c, 1'000.0, 0.001) / 3.000003e-15, 1.0, 1e-9);
  EXPECT_EQ(weibull::chance_by(c, 0.0), 0.0);
}

TEST(LifeChance, IntervalsHoldTheirValues) {
  Input in = shock_absorbers();
  in.survived = Distance::km(10'000.0);
  in.next = Distance::km(5'000.0);
  const Result r = solved(in);
  EXPECT_LT(*r.ahead->low, r.ahead->value);
  EXPECT_GT(*r.ahead->high, r.ahead->value);
  ASSERT_EQ(r.band.size(), 61U);
  for (const BandPoint& p : r.band) {
    EXPECT_LE(p.low, p.share);
    EXPECT_GE(p.high, p.share);
    EXPECT_GE(p.low, 0.0);
    EXPECT_LE(p.high, 1.0);
  }
  EXPECT_NEAR(r.band.front().distance.in_km(), 0.5 * 6'700.0, 1e-6);
  EXPECT_NEAR(r.band.back().distance.in_km(), 1.5 * 28'100.0, 1e-6);
}

TEST(LifeChance, ALifeHasNoVerdict) {
  EXPECT_FALSE(solved(shock_absorbers()).outcome.judgement.has_value());
}

TEST(LifeChance, EveryFigureIsFiniteEvenForWildLists) {
  std::vector<weibull::Time> wild(20'000, weibull::Time{1'600'000.0, false});
  wild.push_back({0.1, true});
  Input in = list_of(wild);
  in.next = Distance::km(1.0);
  const Result r = solved(in);
  for (const Figure& f : r.outcome.figures) EXPECT_TRUE(std::isfinite(f.base)) << f.key;
  EXPECT_TRUE(says(r, 1729));
  EXPECT_TRUE(says(r, 1730));
}

}  // namespace
}  // namespace camside::life
