#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "calc/wear/wear.hpp"
#include "calc/wear/wear_inputs.hpp"

namespace camside::wear {
namespace {

double whole(int low, int high) {
  return static_cast<double>(*rc::gen::inRange(low, high));
}

// A shoe that wears 1 to 6 thou in 1,000 mi and scatters by up to 2 thou.
Input any_shoe(int fewest) {
  std::vector<Row> rows;
  const double rate = whole(10, 60) / 1e7;
  double miles = whole(0, 50'000);
  double inches = whole(250, 400) / 1e3;
  const int count = *rc::gen::inRange(fewest, 9);
  for (int k = 0; k < count; ++k) {
    rows.push_back({miles, std::max(0.0, inches + whole(-20, 21) / 1e4)});
    const double ridden = whole(1'000, 9'000);
    miles += ridden;
    inches -= rate * ridden;
  }
  return shoe(rows);
}

RC_GTEST_PROP(WearProperties, TheIntervalHoldsItsCrossingAndTheWordsTakeTheEarlyEnd, ()) {
  const auto r = solve(any_shoe(3));
  RC_ASSERT(r.has_value());
  if (!r->forecast) {
    RC_ASSERT(r->outlook != Outlook::Forecast);
    RC_DISCARD("no forecast");
  }
  const Forecast& f = *r->forecast;
  RC_ASSERT(f.low.has_value());
  RC_ASSERT(*f.low < f.crossing);
  RC_ASSERT(!f.high || f.crossing < *f.high);
  RC_ASSERT(f.no_sooner == *f.low);
  RC_ASSERT(r->g < 1.0);
}

// Each end meets the inequality that defines it, whatever formula it was worked out with.
RC_GTEST_PROP(WearProperties, EndsLieOnTheLimitsOfTheLine, ()) {
  const Input in = any_shoe(4);
  std::vector<lines::LinePoint> points;
  for (const Reading& r : in.readings) points.push_back({r.odometer->in_km(), r.thickness->in_mm()});
  const auto line = lines::fit_line(points);
  RC_ASSERT(line.has_value());
  const double level = whole(0, 5);
  const lines::Crossing c = lines::crossing_with_interval(*line, level, line->scatter_mm, 0.95);
  RC_PRE(c.low_km.has_value());
  RC_PRE(c.g < 0.99);
  const double t = std::sqrt(c.g * line->sxx_km2) * std::abs(line->mm_per_km) / std::max(line->scatter_mm, 1e-30);
  for (const double x : {*c.low_km, *c.high_km}) {
    const double dx = x - line->mean_km;
    const double half =
        t * line->scatter_mm * std::sqrt(1.0 / static_cast<double>(line->points) + dx * dx / line->sxx_km2);
    RC_ASSERT(std::abs(std::abs(line->at(x) - level) - half) < 1e-8 * (1.0 + half));
  }
}

RC_GTEST_PROP(WearProperties, AnotherUnitChangesNothing, ()) {
  // the same shoe read in mm and km, twice as long a road to each mm: the crossing scales with the road
  const Input in = any_shoe(2);
  Input far = in;
  for (Reading& r : far.readings) r.odometer = *r.odometer * 2.0;
  const auto a = solve(in);
  const auto b = solve(far);
  RC_ASSERT(a->forecast.has_value() || !b->forecast.has_value());
  RC_PRE(b->forecast.has_value());
  RC_ASSERT(std::abs(b->forecast->crossing / a->forecast->crossing - 2.0) < 1e-9);
  RC_ASSERT(std::abs(b->forecast->no_sooner / a->forecast->no_sooner - 2.0) < 1e-6);
}

RC_GTEST_PROP(WearProperties, AStricterLimitIsNeverReachedLater, ()) {
  Input in = any_shoe(2);
  in.limit = Limit<Length>{Length::thou(whole(10, 100)), Source::memory()};
  const auto wide = solve(in);
  in.limit->value = in.limit->value + Length::thou(whole(1, 40));
  const auto strict = solve(in);
  RC_PRE(wide->forecast.has_value() && strict->forecast.has_value());
  RC_ASSERT(strict->forecast->crossing < wide->forecast->crossing);
  RC_ASSERT(strict->forecast->no_sooner < wide->forecast->no_sooner);
}

int goodness(const Result& r) {
  switch (r.outcome.judgement->verdict) {
    case Verdict::Within:
      return 2;
    case Verdict::NotProven:
      return 1;
    case Verdict::Outside:
      break;
  }
  return 0;
}

RC_GTEST_PROP(WearProperties, AThinnerShoeNeverBettersTheVerdict, ()) {
  Input in = any_shoe(1);
  in.readings.back().thickness = Length::thou(whole(60, 120));
  const auto thick = solve(in);
  in.readings.back().thickness = std::max(Length{}, *in.readings.back().thickness - Length::thou(whole(1, 30) / 4.0));
  const auto thin = solve(in);
  // a thinner last reading can take away the doubt that it was thicker than the one before; then nothing is compared
  RC_PRE(!has(thick->outcome.findings, 1623));
  RC_ASSERT(goodness(*thin) <= goodness(*thick));
}

RC_GTEST_PROP(WearProperties, DamageAndDoubtNeverBetterTheVerdict, ()) {
  Input in = any_shoe(1);
  in.readings.back().thickness = Length::thou(whole(60, 120));
  const auto clean = solve(in);
  Input worse = in;
  if (*rc::gen::arbitrary<bool>()) worse.seen.stepped = true;
  if (*rc::gen::arbitrary<bool>()) worse.seen.cracked.reset();
  if (*rc::gen::arbitrary<bool>()) worse.anvil = Anvil::FlatJaws;
  if (*rc::gen::arbitrary<bool>()) worse.stated_error = Length::thou(whole(1, 10));
  const auto r = solve(worse);
  // a larger ± may leave a thin shoe unproven: the only way up
  if (!worse.stated_error) RC_ASSERT(goodness(*r) <= goodness(*clean));
  if (worse.seen.stepped.value_or(false)) RC_ASSERT(goodness(*r) == 0);
  RC_ASSERT(goodness(*r) < 2 || goodness(*clean) == 2);
}

RC_GTEST_PROP(WearProperties, MoreScatterDeclaredNeverMovesTheEarlyEndLater, ()) {
  Input in = any_shoe(3);
  in.repeatability = Length::thou(whole(1, 20) / 10.0);
  const auto fine = solve(in);
  in.repeatability = *in.repeatability + Length::thou(whole(1, 20) / 10.0);
  const auto rough = solve(in);
  RC_PRE(fine->forecast.has_value() && rough->forecast.has_value());
  RC_ASSERT(rough->forecast->crossing == fine->forecast->crossing);
  RC_ASSERT(rough->forecast->no_sooner <= fine->forecast->no_sooner);
}

RC_GTEST_PROP(WearProperties, WhateverIsEnteredEveryNumberIsFinite, ()) {
  std::vector<Row> rows;
  const int count = *rc::gen::inRange(1, 6);
  for (int k = 0; k < count; ++k) rows.push_back({whole(0, 1'000'000), whole(0, 1001) / 1000.0});
  Input in = shoe(rows);
  if (*rc::gen::arbitrary<bool>()) in.usual_wear = usual(whole(1, 1000) / 1e3, whole(1, 1'000'000));
  const auto r = solve(in);
  RC_ASSERT(r.has_value());
  RC_ASSERT((r->outlook == Outlook::Forecast) == r->forecast.has_value());
  for (const Figure& f : r->outcome.figures) {
    RC_ASSERT(std::isfinite(f.base));
    RC_ASSERT(std::isfinite(f.uncertainty.value_or(0.0)));
  }
}

}  // namespace
}  // namespace camside::wear
