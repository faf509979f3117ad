#include "calc/wear/wear.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "calc/answers.hpp"
#include "calc/wear/wear_inputs.hpp"
#include "maths/coverage.hpp"
#include "oracle/wear_rows.hpp"

namespace camside::wear {
namespace {

Verdict verdict_of(const Result& r) {
  EXPECT_TRUE(r.outcome.judgement.has_value());
  return r.outcome.judgement ? r.outcome.judgement->verdict : Verdict::NotProven;
}

std::string forecast_words(const Result& r) {
  const Figure* f = r.outcome.figure("forecast");
  return f == nullptr ? "" : f->text;
}

std::vector<lines::LinePoint> points_of(const std::vector<double>& x, const std::vector<double>& y) {
  std::vector<lines::LinePoint> points;
  for (std::size_t i = 0; i < x.size(); ++i) points.push_back({x[i], y[i]});
  return points;
}

// ---- the line ----

TEST(WearLine, CertifiedValues) {
  const auto& row = oracle::norris;
  const auto line = lines::fit_line(points_of(row.x, row.y));
  ASSERT_TRUE(line.has_value());
  EXPECT_NEAR(line->mm_per_km, row.slope, 1e-13);
  EXPECT_NEAR(line->at(0.0), row.intercept, 1e-11);
  EXPECT_NEAR(line->scatter_mm, row.residual_deviation, 1e-12);
  EXPECT_NEAR(line->scatter_mm / std::sqrt(line->sxx_km2), row.slope_deviation, 1e-15);
}

TEST(WearLine, ThermometerOfTheGuide) {
  const auto& row = oracle::thermometer;
  const auto line = lines::fit_line(points_of(row.x, row.y));
  EXPECT_NEAR(line->mm_per_km, row.slope, 1e-14);
  EXPECT_NEAR(line->at(0.0), row.intercept, 1e-13);
  EXPECT_NEAR(line->scatter_mm / std::sqrt(line->sxx_km2), row.slope_deviation, 1e-13);
  EXPECT_NEAR(line->scatter_mm, row.residual_deviation, 5e-10);
}

TEST(WearLine, NeedsTwoDistances) {
  EXPECT_FALSE(lines::fit_line(points_of({}, {})).has_value());
  EXPECT_FALSE(lines::fit_line(points_of({7.0}, {1.0})).has_value());
  EXPECT_FALSE(lines::fit_line(points_of({7.1, 7.1, 7.1}, {1.0, 2.0, 3.0})).has_value());
  EXPECT_TRUE(lines::fit_line(points_of({7.0, 8.0}, {1.0, 1.0})).has_value());
}

TEST(WearLine, FarFromZeroKeepsItsDigits) {
  const auto near = lines::fit_line(points_of({0, 1, 2, 3}, {3, 2, 2, 0}));
  const auto far = lines::fit_line(points_of({1e6, 1e6 + 1, 1e6 + 2, 1e6 + 3}, {3, 2, 2, 0}));
  EXPECT_NEAR(near->mm_per_km, far->mm_per_km, 1e-12);
  EXPECT_NEAR(near->scatter_mm, far->scatter_mm, 1e-12);
}

TEST(WearLine, CrossingsByInversionAsPublished) {
  for (const auto& row : oracle::crossing_rows) {
    const auto line = lines::fit_line(points_of(row.x, row.y));
    const lines::Crossing c = lines::crossing_with_interval(*line, row.level, line->scatter_mm, row.probability);
    ASSERT_TRUE(c.low_km.has_value()) << row.what;
    EXPECT_NEAR(c.km, row.estimate, row.estimate_tolerance) << row.what;
    EXPECT_NEAR(*c.low_km, row.low, row.tolerance) << row.what;
    EXPECT_NEAR(*c.high_km, row.high, row.tolerance) << row.what;
  }
}

TEST(WearLine, ASlopeThatIsNotProvenHasNoInterval) {
  const auto line = lines::fit_line(points_of(oracle::unproven_x, oracle::unproven_y));
  const lines::Crossing c = lines::crossing_with_interval(*line, 5.0, line->scatter_mm, 0.95);
  EXPECT_GE(c.g, 1.0);
  EXPECT_FALSE(c.low_km.has_value());
  EXPECT_FALSE(c.high_km.has_value());
  const lines::Crossing at_90 = lines::crossing_with_interval(*line, 5.0, line->scatter_mm, 0.90);
  EXPECT_LT(at_90.g, 1.0);
  EXPECT_TRUE(at_90.low_km.has_value());
}

// Where the published limit of the mean response equals the level, the distance is an end of the interval.
TEST(WearLine, LimitsOfTheMeanAsPublished) {
  const auto line = lines::fit_line(points_of(oracle::unproven_x, oracle::unproven_y));
  const double t = coverage::student_two_sided(0.95, line->degrees_of_freedom());
  for (const auto& row : oracle::unproven_means) {
    const double from_mean = row.x - line->mean_km;
    const double half = t * line->scatter_mm *
                        std::sqrt(1.0 / static_cast<double>(line->points) + from_mean * from_mean / line->sxx_km2);
    EXPECT_NEAR(line->at(row.x), row.fitted, 0.005);
    EXPECT_NEAR(line->at(row.x) - half, row.low, 0.005);
    EXPECT_NEAR(line->at(row.x) + half, row.high, 0.005);
  }
}

// ---- how many readings there are ----

TEST(Wear, OneReadingHasNoForecastOfItsOwn) {
  const Result r = solved(shoe({{41'300, 0.250}}));
  EXPECT_EQ(r.rests_on, RestsOn::Nothing);
  EXPECT_EQ(r.outlook, Outlook::NoRate);
  EXPECT_FALSE(r.forecast.has_value());
  EXPECT_FALSE(r.mm_per_km.has_value());
  EXPECT_TRUE(says(r, 1651));
  EXPECT_EQ(verdict_of(r), Verdict::Within);
}

TEST(Wear, OneReadingTakesTheEnteredRateAndSaysSo) {
  Input in = shoe({{41'300, 0.250}});
  in.usual_wear = usual(3.0, 1'000.0);
  const Result r = solved(in);
  EXPECT_EQ(r.rests_on, RestsOn::UsualWear);
  ASSERT_TRUE(r.forecast.has_value());
  EXPECT_NEAR(r.forecast->crossing.in_miles(), 41'300.0 + 170.0 / 3.0 * 1'000.0, 1e-6);
  EXPECT_FALSE(r.forecast->low.has_value());
  EXPECT_FALSE(r.forecast->high.has_value());
  EXPECT_FALSE(r.rate_plus_minus.has_value());
  EXPECT_TRUE(says(r, 1644));
  EXPECT_NE(forecast_words(r).find("no interval"), std::string::npos);
}

TEST(Wear, SeveralReadingsAtOneDistanceAreStillOneDistance) {
  Input in = shoe({{41'300, 0.250}, {41'300, 0.248}, {41'300, 0.251}});
  EXPECT_EQ(solved(in).outlook, Outlook::NoRate);
  EXPECT_NEAR(solved(in).thickness.in_inches(), 0.248, 1e-12);  // the thinnest counts
  in.usual_wear = usual(3.0, 1'000.0);
  EXPECT_EQ(solved(in).rests_on, RestsOn::UsualWear);
}

TEST(Wear, TwoReadingsGiveTheLineAndNoInterval) {
  const Result r = solved(shoe({{40'000, 0.250}, {50'000, 0.220}}));
  EXPECT_EQ(r.rests_on, RestsOn::TwoReadings);
  ASSERT_TRUE(r.forecast.has_value());
  EXPECT_NEAR(r.forecast->crossing.in_miles(), 50'000.0 + 140.0 / 3.0 * 1'000.0, 1e-6);
  EXPECT_EQ(r.forecast->no_sooner, r.forecast->crossing);
  EXPECT_FALSE(r.forecast->low.has_value());
  EXPECT_FALSE(r.forecast->high.has_value());
  EXPECT_FALSE(r.rate_plus_minus.has_value());
  EXPECT_TRUE(says(r, 1650));
}

TEST(Wear, ThreeReadingsGiveAnInterval) {
  const Result r = solved(shoe({{40'000, 0.250}, {50'000, 0.2205}, {60'000, 0.190}}));
  EXPECT_EQ(r.rests_on, RestsOn::FittedLine);
  ASSERT_TRUE(r.forecast.has_value());
  ASSERT_TRUE(r.forecast->low.has_value());
  EXPECT_LT(*r.forecast->low, r.forecast->crossing);
  EXPECT_EQ(r.forecast->no_sooner, *r.forecast->low);
  EXPECT_TRUE(r.rate_plus_minus.has_value());
}

TEST(Wear, OwnReadingsWinOverTheUsualWear) {
  Input in = steady_shoe();
  const Result alone = solved(in);
  in.usual_wear = usual(30.0, 1'000.0);
  const Result with = solved(in);
  EXPECT_EQ(alone.forecast->crossing, with.forecast->crossing);
  EXPECT_TRUE(says(with, 1663));
}

TEST(Wear, ThreeReadingsThatHappenToLieOnALineProveNoMoreThanTheyCan) {
  const Result r = solved(shoe({{40'000, 0.250}, {50'000, 0.220}, {60'000, 0.190}}));
  EXPECT_NEAR(r.line->scatter_mm, 0.0, 1e-12);
  ASSERT_TRUE(r.forecast.has_value());
  const double half = (r.forecast->crossing - *r.forecast->low).in_miles();
  // t(1) = 12.706, u = 1.01 thou, Sxx = 2e8 mi²: more than 5,000 mi of doubt about where 80 thou are reached
  EXPECT_GT(half, 5'000.0);
}

// ---- when there is no forecast ----

TEST(WearForecast, WordsAreNoSoonerProofThan) {
  const std::string words = forecast_words(solved(steady_shoe()));
  EXPECT_EQ(words.rfind("no sooner proof than ", 0), 0U);
  const Result r = solved(steady_shoe());
  for (const Figure& f : r.outcome.figures) EXPECT_EQ((f.label + f.text).find("good until"), std::string::npos);
  EXPECT_TRUE(says(r, 1657));
}

TEST(WearForecast, ALineThatDoesNotFallNeverReaches) {
  for (const double last : {0.250, 0.2505, 0.251}) {  // within what the readings may scatter
    const Result r = solved(shoe({{40'000, 0.250}, {50'000, 0.250}, {60'000, last}}));
    EXPECT_EQ(r.outlook, Outlook::Never) << last;
    EXPECT_FALSE(r.forecast.has_value());
    EXPECT_TRUE(says(r, 1653));
    EXPECT_EQ(forecast_words(r).rfind("never", 0), 0U);
  }
  EXPECT_EQ(solved(shoe({{40'000, 0.250}, {50'000, 0.250}})).outlook, Outlook::Never);
}

TEST(WearForecast, ScatterThatProvesNoWearHasNoEnd) {
  const Result r = solved(shoe({{40'000, 0.250}, {41'000, 0.247}, {42'000, 0.2495}}));
  EXPECT_GE(r.g, 1.0);
  EXPECT_EQ(r.outlook, Outlook::Unbounded);
  EXPECT_FALSE(r.forecast.has_value());
  EXPECT_TRUE(says(r, 1652));
}

TEST(WearForecast, TooSlowToMeetTheLimitOnAnyOdometer) {
  const Result r = solved(shoe({{40'000, 0.2500}, {60'000, 0.2499}}));
  EXPECT_EQ(r.outlook, Outlook::Never);
  EXPECT_TRUE(says(r, 1654));
}

TEST(WearForecast, TheLateEndMayStayOpen) {
  // g a little below 1: the early end is there, the late one lies beyond any odometer
  Input in = shoe({{40'000, 0.250}, {44'000, 0.2445}, {48'000, 0.2395}});
  double most_seen = 0.0;
  bool open = false;
  for (double thou = 0.1; thou < 3.0; thou += 0.001) {
    in.repeatability = Length::thou(thou);
    const Result r = solved(in);
    if (!r.forecast) break;
    open = open || !r.forecast->high;
    if (r.forecast->high) most_seen = std::max(most_seen, r.forecast->high->in_miles());
    EXPECT_EQ(says(r, 1656), !r.forecast->high.has_value());
  }
  EXPECT_GT(most_seen, 200'000.0);
  EXPECT_LE(most_seen, 1'000'000.0);
  EXPECT_TRUE(open);
}

TEST(WearForecast, NoneWithoutALimitBelowItOrForADamagedShoe) {
  Input in = steady_shoe();
  in.limit.reset();
  EXPECT_EQ(solved(in).outlook, Outlook::NoLimit);
  EXPECT_TRUE(says(solved(in), 1655));
  EXPECT_FALSE(says(solved(steady_shoe()), 1655));
  EXPECT_FALSE(solved(in).outcome.judgement.has_value());
  in.limit = Limit<Length>{Length::inches(0.190), Source::owner("the shop's own rule")};
  EXPECT_EQ(solved(in).outlook, Outlook::Reached);
  EXPECT_TRUE(says(solved(in), 1659));
  EXPECT_FALSE(says(solved(steady_shoe()), 1659));
  in = steady_shoe();
  in.seen.cracked = true;
  EXPECT_EQ(solved(in).outlook, Outlook::Damaged);
  EXPECT_FALSE(solved(in).forecast.has_value());
  EXPECT_TRUE(says(solved(in), 1660));
  EXPECT_FALSE(says(solved(steady_shoe()), 1660));
}

// 58,900 mi and a line that says nothing before 93,000: the look at 30,000 mi comes first, and that is what is said.
TEST(WearForecast, NeverReachesBeyondTheNextLookAndSaysSo) {
  Input in = shoe({{40'000, 0.250}, {50'000, 0.240}, {58'900, 0.231}});
  EXPECT_FALSE(solved(in).forecast->capped);
  in.look_again.reset();
  const Result r = solved(in);
  ASSERT_TRUE(r.forecast);
  EXPECT_TRUE(r.forecast->capped);
  EXPECT_NEAR(r.forecast->no_sooner.in_miles(), 88'900.0, 1e-6);
  EXPECT_TRUE(says(r, 1664));
  EXPECT_EQ(r.outcome.figure("no_sooner")->label, "Look again by");
  EXPECT_EQ(r.outcome.figure("forecast")->text.find("no sooner proof than"), std::string::npos);
}

TEST(WearForecast, RiddenOnPastTheEarlyEndIsADoubt) {
  Input in = steady_shoe();
  const Result at_reading = solved(in);
  EXPECT_EQ(verdict_of(at_reading), Verdict::Within);
  in.odometer_now = at_reading.forecast->no_sooner - Distance::miles(10.0);
  EXPECT_EQ(verdict_of(solved(in)), Verdict::Within);
  EXPECT_NEAR(solved(in).forecast->left.in_miles(), 10.0, 1e-6);
  in.odometer_now = at_reading.forecast->no_sooner + Distance::miles(10.0);
  EXPECT_EQ(verdict_of(solved(in)), Verdict::NotProven);
  EXPECT_TRUE(says(solved(in), 1625));
}

TEST(WearForecast, AnEarlyEndAlreadyPassedIsSaid) {
  // scatters so much that the limit may be behind it
  Input in = shoe({{40'000, 0.120},
                   {45'000, 0.112},
                   {50'000, 0.108},
                   {55'000, 0.098},
                   {60'000, 0.097},
                   {65'000, 0.085},
                   {70'000, 0.0865}});
  in.limit = Limit<Length>{Length::inches(0.083), Source::owner("the shop's own rule")};
  const Result r = solved(in);
  ASSERT_TRUE(r.forecast.has_value());
  EXPECT_LT(r.forecast->left.in_miles(), 0.0);
  EXPECT_TRUE(says(r, 1642));
  EXPECT_EQ(forecast_words(r).find("no sooner"), std::string::npos);  // it lies behind
}

TEST(WearForecast, FarBeyondTheReadingsIsSaid) {
  EXPECT_TRUE(says(solved(steady_shoe()), 1645));
  EXPECT_FALSE(says(solved(shoe({{10'000, 0.300}, {30'000, 0.240}, {50'000, 0.181}, {60'000, 0.150}})), 1645));
}

// ---- verdict ----

TEST(WearVerdict, AnyDamageIsOutsideAtAnyThickness) {
  for (std::optional<bool> Seen::*damage : {&Seen::cracked, &Seen::stepped, &Seen::piece_missing, &Seen::bare_metal}) {
    for (const bool limit : {true, false}) {
      Input in = shoe({{41'300, 0.400}});
      in.seen.*damage = true;
      if (!limit) in.limit.reset();
      in.anvil = Anvil::FlatJaws;  // no doubt saves it
      const Result r = solved(in);
      EXPECT_EQ(verdict_of(r), Verdict::Outside);
      EXPECT_EQ(r.outcome.judgement->figure, "condition");
      EXPECT_EQ(r.outcome.judgement->source, Source::common_practice());
      EXPECT_TRUE(says(r, 1640));
    }
  }
}

TEST(WearVerdict, AgainstTheLimitWithItsUncertainty) {
  const auto verdict = [](double inches) { return verdict_of(solved(shoe({{41'300, inches}}))); };
  // U = 2 √(1² + 0.5²/12) thou = 2.0207 thou about 80
  EXPECT_EQ(verdict(0.0821), Verdict::Within);
  EXPECT_EQ(verdict(0.0820), Verdict::NotProven);
  EXPECT_EQ(verdict(0.0780), Verdict::NotProven);
  EXPECT_EQ(verdict(0.0779), Verdict::Outside);
  EXPECT_NEAR(solved(shoe({{41'300, 0.1}})).uncertainty.in_thou(), 2.0 * std::sqrt(1.0 + 0.25 / 12.0), 1e-9);
}

TEST(WearVerdict, OutsideAndWithinEachHaveTheirWord) {
  const Result good = solved(shoe({{41'300, 0.0821}}));
  const Result near = solved(shoe({{41'300, 0.0780}}));
  const Result thin = solved(shoe({{41'300, 0.0779}}));
  EXPECT_TRUE(says(thin, 1641));
  EXPECT_FALSE(says(near, 1641));
  EXPECT_TRUE(says(good, 1662));
  EXPECT_FALSE(says(near, 1662));
}

TEST(WearVerdict, TheInstrumentsErrorWidensIt) {
  Input in = shoe({{41'300, 0.084}});
  EXPECT_EQ(verdict_of(solved(in)), Verdict::Within);
  in.stated_error = Length::thou(4.0);
  EXPECT_EQ(verdict_of(solved(in)), Verdict::NotProven);
}

TEST(WearVerdict, WithoutRepeatabilityOneGraduationIsTaken) {
  Input in = shoe({{41'300, 0.250}});
  in.repeatability.reset();
  const Result r = solved(in);
  EXPECT_NEAR(r.uncertainty.in_thou(), 2.0 * 0.5 * std::sqrt(1.0 + 1.0 / 12.0), 1e-9);
  EXPECT_TRUE(says(r, 1658));
}

TEST(WearVerdict, WhatMakesAShoeLookBetterStopsWithinAndLeavesOutside) {
  const auto doubtful = [](double inches, int number, auto change) {
    Input in = shoe({{41'300, inches}});
    change(in);
    const Result r = solved(in);
    EXPECT_TRUE(says(r, number));
    return verdict_of(r);
  };
  const auto flat = [](Input& in) { in.anvil = Anvil::FlatJaws; };
  const auto not_said = [](Input& in) { in.anvil.reset(); };
  const auto not_seen = [](Input& in) { in.seen.bare_metal.reset(); };
  EXPECT_EQ(doubtful(0.250, 1620, flat), Verdict::NotProven);
  EXPECT_EQ(doubtful(0.050, 1620, flat), Verdict::Outside);
  EXPECT_EQ(doubtful(0.250, 1621, not_said), Verdict::NotProven);
  EXPECT_EQ(doubtful(0.050, 1621, not_said), Verdict::Outside);
  EXPECT_EQ(doubtful(0.250, 1622, not_seen), Verdict::NotProven);
  EXPECT_EQ(doubtful(0.050, 1622, not_seen), Verdict::Outside);
  EXPECT_EQ(doubtful(0.600, 1624, [](Input&) {}), Verdict::NotProven);
}

TEST(WearVerdict, ThickerThanBeforeIsAnotherShoe) {
  const Result r = solved(shoe({{41'300, 0.250}, {46'050, 0.236}, {52'480, 0.320}, {58'900, 0.200}}));
  EXPECT_EQ(r.outlook, Outlook::MixedUp);
  EXPECT_FALSE(r.forecast.has_value());
  EXPECT_EQ(verdict_of(r), Verdict::NotProven);
  EXPECT_TRUE(says(r, 1661));
  EXPECT_FALSE(says(solved(steady_shoe()), 1661));
  EXPECT_TRUE(says(r, 1623));
  const auto it = std::find_if(r.outcome.findings.begin(), r.outcome.findings.end(),
                               [](const Finding& f) { return f.number == 1623; });
  ASSERT_NE(it, r.outcome.findings.end());
  EXPECT_EQ(it->field, "readings[2].thickness");
}

TEST(WearVerdict, SaysWhoseLimitItIs) {
  const Result r = solved(steady_shoe());
  EXPECT_EQ(r.outcome.judgement->source, Source::owner("the shop's own rule"));
  EXPECT_NEAR(*r.outcome.judgement->lower, 0.080 * 25.4, 1e-12);
}

TEST(WearVerdict, LargeScatterIsSaid) {
  EXPECT_FALSE(says(solved(steady_shoe()), 1643));
  Input in = steady_shoe();
  in.readings[2].thickness = Length::inches(0.205);
  EXPECT_TRUE(says(solved(in), 1643));
}

// ---- entries ----

TEST(WearEntries, OrderDoesNotMatter) {
  Input in = steady_shoe();
  const Result one = solved(in);
  std::reverse(in.readings.begin(), in.readings.end());
  const Result other = solved(in);
  EXPECT_EQ(one.thickness, other.thickness);
  EXPECT_EQ(one.forecast->crossing, other.forecast->crossing);
  EXPECT_EQ(one.forecast->low, other.forecast->low);
}

TEST(WearEntries, RefusedWithTheirField) {
  EXPECT_TRUE(has(refused(shoe({})), 1601));
  Input in = steady_shoe();
  in.odometer_now = Distance::miles(60'000.0);
  EXPECT_TRUE(has(refused(in), 1602));
  in = steady_shoe();
  in.graduation.reset();
  EXPECT_EQ(refused(in).front().field, "graduation");
  in = steady_shoe();
  in.readings[1].thickness = Length::inches(1.5);
  EXPECT_EQ(refused(in).front().field, "readings[1].thickness");
  in = steady_shoe();
  in.limit = Limit<Length>{Length{}, Source::memory()};
  EXPECT_EQ(refused(in).front().field, "limit.value");
  in = steady_shoe();
  in.usual_wear = UsualWear{Length::thou(3.0), Distance{}, Source::memory()};
  EXPECT_EQ(refused(in).front().field, "usual_wear.over");
  in.usual_wear = UsualWear{Length::thou(3.0), Distance::miles(1'000.0), {}};
  EXPECT_EQ(refused(in).front().field, "usual_wear.source");
}

TEST(WearEntries, NothingThatIsNotANumberGetsThrough) {
  for (const double bad : {std::nan(""), std::numeric_limits<double>::infinity(), -1.0}) {
    Input in = steady_shoe();
    in.readings[0].odometer = Distance::miles(bad);
    EXPECT_TRUE(any_refusal(refused(in)));
    in = steady_shoe();
    in.readings[0].thickness = Length::inches(bad);
    EXPECT_TRUE(any_refusal(refused(in)));
  }
}

TEST(WearEntries, EveryFigureIsFinite) {
  for (const Figure& f : solved(steady_shoe()).outcome.figures) {
    EXPECT_TRUE(std::isfinite(f.base)) << f.key;
    EXPECT_TRUE(std::isfinite(f.uncertainty.value_or(0.0))) << f.key;
  }
}

}  // namespace
}  // namespace camside::wear
