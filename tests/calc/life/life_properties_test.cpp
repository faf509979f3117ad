#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "calc/life/life.hpp"
#include "calc/life/life_inputs.hpp"

namespace camside::life {
namespace {

double whole(int low, int high) {
  return static_cast<double>(*rc::gen::inRange(low, high));
}

// 2 to 30 parts, some failed, at least one of them short of the longest.
std::vector<weibull::Time> any_list() {
  std::vector<weibull::Time> times;
  const int count = *rc::gen::inRange(1, 30);
  double longest = 0.0;
  for (int i = 0; i < count; ++i) {
    times.push_back({whole(100, 100'000), *rc::gen::arbitrary<bool>()});
    longest = std::max(longest, times.back().at);
  }
  times.push_back({whole(50, static_cast<int>(longest)), true});
  return times;
}

double ln_likelihood(const std::vector<weibull::Time>& times, const weibull::Curve& c) {
  double sum = 0.0;
  for (const auto& t : times) {
    const double z = c.shape * (std::log(t.at) - c.ln_eta);
    sum -= std::exp(z);
    if (t.failed) sum += std::log(c.shape) + z - std::log(t.at);
  }
  return sum;
}

RC_GTEST_PROP(LifeProperties, NoNeighbourIsLikelier, ()) {
  const auto times = any_list();
  const auto fit = weibull::fit(times);
  RC_ASSERT(fit.has_value());
  const double best = ln_likelihood(times, fit->curve);
  RC_ASSERT(std::abs(best - fit->log_likelihood) < 1e-9 * (1.0 + std::abs(best)));
  for (const double step : {1e-3, 0.1, 2.0}) {
    for (const double angle : {0.0, 0.9, 1.7, 2.6, 3.5, 4.4, 5.3}) {
      const weibull::Curve near{fit->curve.ln_eta + step * std::cos(angle) / fit->curve.shape,
                                fit->curve.shape * std::exp(step * std::sin(angle))};
      RC_ASSERT(ln_likelihood(times, near) <= best + 1e-9 * (1.0 + std::abs(best)));
    }
  }
}

RC_GTEST_PROP(LifeProperties, AnotherUnitScalesTheLifeAndLeavesTheShape, ()) {
  const auto times = any_list();
  auto miles = times;
  for (auto& t : miles) t.at /= 1.609344;
  const auto a = weibull::fit(times);
  const auto b = weibull::fit(miles);
  RC_ASSERT(std::abs(a->curve.shape / b->curve.shape - 1.0) < 1e-10);
  RC_ASSERT(std::abs(a->curve.ln_eta - b->curve.ln_eta - std::log(1.609344)) < 1e-9 / std::min(1.0, a->curve.shape));
  RC_ASSERT(std::abs(a->covariance.eta / b->covariance.eta - 1.0) < 1e-8);
}

RC_GTEST_PROP(LifeProperties, OrderDoesNotMatter, ()) {
  auto times = any_list();
  const auto a = weibull::fit(times);
  std::reverse(times.begin(), times.end());
  const auto b = weibull::fit(times);
  RC_ASSERT(std::abs(a->curve.shape / b->curve.shape - 1.0) < 1e-11);
  const auto pa = weibull::plot_points(times);
  std::rotate(times.begin(), times.begin() + 1, times.end());
  const auto pb = weibull::plot_points(times);
  RC_ASSERT(pa.size() == pb.size());
  for (std::size_t i = 0; i < pa.size(); ++i) RC_ASSERT(pa[i].rank == pb[i].rank);
}

RC_GTEST_PROP(LifeProperties, ASurvivorThatRidesOnNeverShortensTheLife, ()) {
  auto times = any_list();
  const auto it = std::find_if(times.begin(), times.end(), [](const auto& t) { return !t.failed; });
  RC_PRE(it != times.end());
  const double assumed = whole(5, 60) / 10.0;
  const double before = weibull::ln_eta_at_least(times, assumed, 0.95);
  it->at += whole(1, 50'000);
  RC_ASSERT(weibull::ln_eta_at_least(times, assumed, 0.95) >= before);
}

RC_GTEST_PROP(LifeProperties, RanksRiseAndStayWithinTheList, ()) {
  const auto times = any_list();
  const auto points = weibull::plot_points(times);
  double before = 0.0;
  for (const auto& p : points) {
    RC_ASSERT(p.rank >= before + 1.0 - 1e-12);
    RC_ASSERT(p.rank <= static_cast<double>(times.size()) + 1e-9);
    RC_ASSERT(p.share > 0.0 && p.share < 1.0);
    RC_ASSERT(times[p.entry].failed && times[p.entry].at == p.at);
    before = p.rank;
  }
}

RC_GTEST_PROP(LifeProperties, ChancesAheadChain, ()) {
  const weibull::Curve c{std::log(whole(1'000, 100'000)), whole(5, 60) / 10.0};
  const double s = whole(0, 50'000);
  const double one = whole(1, 20'000);
  const double two = whole(1, 20'000);
  const double both =
      1.0 - (1.0 - weibull::chance_between(c, s, one)) * (1.0 - weibull::chance_between(c, s + one, two));
  RC_ASSERT(std::abs(weibull::chance_between(c, s, one + two) - both) < 1e-10);
}

RC_GTEST_PROP(LifeProperties, WearMakesOlderPartsFailSooner, ()) {
  const double s = whole(0, 50'000);
  const double further = whole(1, 20'000);
  const double ln_eta = std::log(whole(1'000, 100'000));
  const double younger_wear = weibull::chance_between({ln_eta, 2.5}, s, further);
  RC_ASSERT(weibull::chance_between({ln_eta, 2.5}, s + 1'000.0, further) >= younger_wear);
  RC_ASSERT(weibull::chance_between({ln_eta, 0.5}, s + 1'000.0, further) <=
            weibull::chance_between({ln_eta, 0.5}, s, further));
}

RC_GTEST_PROP(LifeProperties, QuantilesComeBack, ()) {
  const double share1 = whole(1, 500) / 1'000.0;
  const double share2 = share1 + whole(1, 400) / 1'000.0;
  const double t1 = whole(100, 50'000);
  const double t2 = t1 + whole(100, 50'000);
  const weibull::Curve c = weibull::from_quantiles(t1, share1, t2, share2);
  RC_ASSERT(std::abs(weibull::ln_time_at(c, share1) - std::log(t1)) < 1e-9);
  RC_ASSERT(std::abs(weibull::ln_time_at(c, share2) - std::log(t2)) < 1e-9);
  RC_ASSERT(std::abs(weibull::chance_by(c, t2) - share2) < 1e-9);
}

RC_GTEST_PROP(LifeProperties, WhateverTheListEitherARefusalOrFiniteFigures, ()) {
  std::vector<weibull::Time> times;
  const int count = *rc::gen::inRange(1, 8);
  for (int i = 0; i < count; ++i)
    times.push_back({whole(1, 5) * std::pow(10.0, whole(0, 5)), *rc::gen::arbitrary<bool>()});
  Input in = list_of(times);
  in.next = Distance::km(whole(1, 100'000));
  in.survived = Distance::km(whole(0, 100'000));
  if (*rc::gen::arbitrary<bool>()) in.assumed_shape = whole(2, 200) / 10.0;
  const auto r = solve(in);
  double longest = 0.0;
  for (const auto& t : times) longest = std::max(longest, t.at);
  const bool curve = std::any_of(times.begin(), times.end(), [&](const auto& t) { return t.failed && t.at < longest; });
  RC_ASSERT(r.has_value() == (curve || in.assumed_shape.has_value()));
  if (!r) {
    RC_ASSERT(any_refusal(r.error()));
    return;
  }
  RC_ASSERT(r->curve.has_value() == curve);
  for (const Figure& f : r->outcome.figures) RC_ASSERT(std::isfinite(f.base));
  for (const BandPoint& p : r->band) RC_ASSERT(p.low <= p.share && p.share <= p.high);
}

}  // namespace
}  // namespace camside::life
