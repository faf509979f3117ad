#include "calc/runout/runout.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "calc/answers.hpp"
#include "calc/runout/runout_uncertainty.hpp"
#include "findings/decision.hpp"
#include "oracle/runout_rows.hpp"

namespace camside::runout {
namespace {

constexpr double deg = std::numbers::pi / 180.0;

// Plate off, on the band, a half-thou dial, play known: nothing to doubt but the readings.
Setup sound_setup() {
  runout::Setup s;
  s.contact = Contact::BushingBand;
  s.plate = Plate::Off;
  s.stand = Stand::Crankcase;
  s.graduation = Length::thou(0.5);
  s.stated_error = Length::thou(0.0);
  s.repeatability = Length::thou(0.0);
  s.play = Length::thou(0.0);
  s.seen_from = SeenFrom::Right;
  return s;
}

Input swings(std::vector<std::pair<double, double>> low_high_thou) {
  Input in;
  in.setup = sound_setup();
  for (const auto& [low, high] : low_high_thou) {
    in.readings.swings.push_back({Length::thou(low), Length::thou(high), {}});
  }
  return in;
}

Input stations(const std::vector<double>& thou, double step_deg) {
  Input in;
  in.setup = sound_setup();
  in.readings.method = Method::Stations;
  for (std::size_t i = 0; i < thou.size(); ++i) {
    in.readings.stations.push_back({Angle::deg(step_deg * static_cast<double>(i)), Length::thou(thou[i]), 1});
  }
  return in;
}

// A plain bend, read at n even marks.
Input bend(double tir_thou, double high_spot_deg, std::size_t n, double noise_thou = 0.0) {
  std::vector<double> r;
  for (std::size_t i = 0; i < n; ++i) {
    const double t = 2.0 * std::numbers::pi * static_cast<double>(i) / static_cast<double>(n);
    const double ripple = noise_thou * std::cos(3.0 * t);
    r.push_back(5.0 + 0.5 * tir_thou * std::cos(t - high_spot_deg * deg) + ripple);
  }
  return stations(r, 360.0 / static_cast<double>(n));
}

const Finding* find(const Findings& findings, int number) {
  const auto it = std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.number == number; });
  return it == findings.end() ? nullptr : &*it;
}

double figure_thou(const Result& r, const char* key) {
  const Figure* f = r.outcome.figure(key);
  if (f == nullptr) {
    ADD_FAILURE() << "no figure " << key;
    return std::numeric_limits<double>::quiet_NaN();
  }
  return Length::mm(f->base).in_thou();
}

// ---- published rows ----

TEST(Runout, TwelvePointRow) {
  const auto& row = oracle::twelve_point;
  const Result r = solved(stations(row.reading, 30.0));
  ASSERT_TRUE(r.eccentricity && r.high_spot);
  EXPECT_NEAR(r.eccentricity->in_thou(), row.eccentricity, 5e-10);
  EXPECT_NEAR(r.high_spot->in_deg(), row.high_spot_deg, 5e-9);
  EXPECT_NEAR(r.tir.in_thou(), row.tir, 1e-12);
  EXPECT_GE(r.judged, r.tir);
  EXPECT_EQ(r.fit->model.harmonics, 2);
}

TEST(Runout, SixPointRow) {
  const auto& row = oracle::six_point;
  const Result r = solved(stations(row.reading, 60.0));
  EXPECT_NEAR(r.eccentricity->in_thou(), row.eccentricity, 5e-10);
  EXPECT_NEAR(r.high_spot->in_deg(), row.high_spot_deg, 5e-7);
  EXPECT_NEAR(Length::mm(r.fit->coefficient[0]).in_thou(), row.mean, 5e-10);
  EXPECT_FALSE(r.ovality);  // six readings: not determined
  EXPECT_TRUE(has(r.outcome.findings, 1062));
}

TEST(Runout, ReturnToTheStartIsNoSeventhStation) {
  const auto& row = oracle::six_point;
  std::vector<double> with_return = row.reading;
  with_return.push_back(row.reading.front());
  const Result r = solved(stations(with_return, 60.0));
  EXPECT_EQ(r.stations.size(), 6u);
  EXPECT_EQ(r.fit->readings, 6u);
  EXPECT_NEAR(Length::mm(r.fit->coefficient[1]).in_thou(), row.cosine, 5e-10);
  EXPECT_GT(std::abs(Length::mm(r.fit->coefficient[1]).in_thou() - oracle::six_point_with_the_repeat_counted[1]), 0.01);
  EXPECT_TRUE(has(r.outcome.findings, 1061));
  ASSERT_TRUE(r.closing_error);
  EXPECT_NEAR(r.closing_error->in_thou(), 0.0, 1e-12);
}

TEST(Runout, OffsetAndTirRow) {
  for (const auto& row : oracle::offset_and_tir_in_and_mm) {
    const Result r = solved(bend(1000.0 * row.tir / 10.0, 40.0, 12));  // a tenth: within what a crank can show
    EXPECT_NEAR(2.0 * r.eccentricity->in_thou(), 100.0 * row.tir, 1e-9);
    EXPECT_NEAR(r.eccentricity->in_thou(), 100.0 * row.offset, 1e-9);
  }
}

TEST(Runout, OffsetCircleShowsNoOvalityOfItsOwn) {
  const double e = oracle::offset_circle_offset_mm;
  const double radius = oracle::offset_circle_radius_mm;
  std::vector<double> thou;
  for (int i = 0; i < 12; ++i) {
    const double t = 30.0 * i * deg;
    const double mm = e * std::cos(t) + std::sqrt(radius * radius - std::pow(e * std::sin(t), 2)) - radius;
    thou.push_back(Length::mm(mm).in_thou());
  }
  const Result r = solved(stations(thou, 30.0));
  EXPECT_NEAR(r.tir.in_mm(), 2.0 * e, 1e-14);
  EXPECT_NEAR(r.eccentricity->in_mm(), e, 1e-9);
  EXPECT_NEAR(0.5 * r.ovality->in_mm(), oracle::offset_circle_second_harmonic_mm, 5e-10);
  EXPECT_FALSE(has(r.outcome.findings, 1026));
}

TEST(Runout, LeverAngleRows) {
  for (const auto& row : oracle::lever_factor) {
    Input in = swings({{0.0, 2.0}, {0.0, 2.0}});
    in.setup.indicator = Indicator::Lever;
    in.setup.indicator_angle = Angle::deg(row.angle_deg);
    const Result r = solved(in);
    EXPECT_NEAR(r.tir.in_thou(), 2.0 * row.factor, 1e-4);
    EXPECT_NEAR(r.tir.in_thou(), 2.0 * std::cos(row.angle_deg * deg), 1e-12);
    EXPECT_EQ(has(r.outcome.findings, 1042), row.angle_deg > 15.0);
  }
}

TEST(Runout, DecisionRows) {
  for (const auto& row : oracle::decisions) {
    EXPECT_EQ(verdict_of_numbers(Bound::Most, measured(row.value, oracle::decision_uncertainty_mm),
                                 oracle::decision_limit_mm),
              row.verdict)
        << row.value;
  }
}

TEST(Runout, UncertaintyIsPutTogetherFromItsParts) {
  // Graduation 1 on its own: u(TIR) = √2/√12; a stated error of 4: √2·4/√3; play p: p/(2√3).
  runout::Setup s;
  s.graduation = Length::mm(0.1);
  s.repeatability = Length::mm(0.0);
  EXPECT_NEAR(uncertainty_of(s, 0, 0).reading.in_mm(), 0.1 * oracle::resolution_of_1, 1e-7);
  EXPECT_NEAR(uncertainty_of(s, 0, 0).tir.in_mm(), 0.1 * std::sqrt(2.0 / 12.0), 1e-15);
  s.stated_error = Length::mm(0.4);
  EXPECT_NEAR(uncertainty_of(s, 0, 0).reading.in_mm(),
              0.1 * std::hypot(oracle::resolution_of_1, oracle::rectangular_of_4), 1e-7);
  s.stated_error.reset();
  s.graduation = Length::mm(1e-9);
  s.play = Length::mm(0.6);
  EXPECT_NEAR(uncertainty_of(s, 0, 0).tir.in_mm(), 0.6 / (2.0 * std::sqrt(3.0)), 1e-9);
  EXPECT_EQ(uncertainty_of(s, 0, 0).coverage_factor, 2.0);
}

// Graduation 2√3 and repeatability 1 have the same u, play 4√3 twice that; each reading counts twice, play once.
TEST(Runout, SharesOfTheUncertaintyAreThoseOfItsSquares) {
  runout::Setup s;
  s.graduation = Length::mm(0.02 * std::sqrt(3.0));
  s.repeatability = Length::mm(0.01);
  s.play = Length::mm(0.04 * std::sqrt(3.0));
  const auto u = uncertainty_of(s, 0, 0);
  EXPECT_NEAR(u.resolution_share, 0.25, 1e-12);
  EXPECT_NEAR(u.repeat_share, 0.25, 1e-12);
  EXPECT_NEAR(u.play_share, 0.5, 1e-12);
}

TEST(Runout, ScatterOfRepeatsIsTheStandardDeviation) {
  // Twenty readings of one place, JCGM 100:2008 4.4.3, as repeat turns of one station among others that agree.
  Input in;
  in.setup = sound_setup();
  in.setup.repeatability.reset();
  in.readings.method = Method::Stations;
  for (int turn = 1; turn <= 20; ++turn) {
    const double thou = oracle::twenty_readings[static_cast<std::size_t>(turn - 1)] - 100.0;
    in.readings.stations.push_back({Angle::deg(0.0), Length::thou(thou), turn});
  }
  for (int i = 1; i < 6; ++i) in.readings.stations.push_back({Angle::deg(60.0 * i), Length::thou(0.1 * i), 1});
  const Result r = solved(in);
  EXPECT_TRUE(r.uncertainty.from_repeats);
  EXPECT_NEAR(r.uncertainty.repeatability.in_thou(), oracle::twenty_readings_deviation, 5e-7);
  EXPECT_EQ(r.uncertainty.repeat_degrees_of_freedom, 19.0);
  EXPECT_NEAR(r.stations.front().reading.in_thou(), 0.145, 1e-10);  // published mean 100.145
  EXPECT_EQ(r.stations.front().count, 20u);
  // Welch–Satterthwaite by hand: only the scatter has finite freedom.
  const double s2 = 2.0 * std::pow(r.uncertainty.repeatability.in_mm(), 2);
  EXPECT_NEAR(r.uncertainty.degrees_of_freedom, 19.0 * std::pow(std::pow(r.uncertainty.tir.in_mm(), 2) / s2, 2), 1e-9);
}

// ---- swing ----

TEST(Runout, SwingIsHighLessLow) {
  const Result r = solved(swings({{-0.4, 1.1}, {-0.4, 1.1}}));
  EXPECT_NEAR(r.tir.in_thou(), 1.5, 1e-12);
  EXPECT_EQ(r.judged, r.tir);
  EXPECT_NEAR(r.eccentricity->in_thou(), 0.75, 1e-12);
  EXPECT_EQ(*r.verdict, Verdict::Within);
  EXPECT_EQ(r.outcome.judgement->source.basis(), Basis::CommonPractice);
  EXPECT_FALSE(r.high_spot);
}

TEST(Runout, SwingsPoolLowsAndHighs) {
  Input in = swings({{0.0, 2.0}, {0.2, 2.4}});
  in.setup.repeatability.reset();
  const Result r = solved(in);
  EXPECT_NEAR(r.tir.in_thou(), 2.1, 1e-12);
  // lows ±0.1, highs ±0.2: Σ² = 0.1 in 2 degrees of freedom
  EXPECT_NEAR(r.uncertainty.repeatability.in_thou(), std::sqrt(0.05), 1e-12);
  EXPECT_EQ(r.uncertainty.repeat_degrees_of_freedom, 2.0);
  EXPECT_FALSE(has(r.outcome.findings, 1044));  // the turns differ by 0.2, less than half a graduation
  EXPECT_TRUE(has(solved(swings({{0.0, 2.0}, {0.0, 2.3}})).outcome.findings, 1044));
}

TEST(Runout, OneSwingNeverProvesWithin) {
  EXPECT_EQ(*solved(swings({{0.0, 0.5}})).verdict, Verdict::NotProven);
  EXPECT_TRUE(has(solved(swings({{0.0, 0.5}})).outcome.findings, 1020));
  EXPECT_EQ(*solved(swings({{0.0, 9.0}})).verdict, Verdict::Outside);  // but bent is bent
}

TEST(Runout, HighSpotOfSwingsIsTheirMeanDirection) {
  Input in = swings({{0.0, 2.0}, {0.0, 2.0}});
  in.readings.swings[0].high_spot = Angle::deg(350.0);
  in.readings.swings[1].high_spot = Angle::deg(20.0);
  EXPECT_NEAR(solved(in).high_spot->in_deg(), 5.0, 1e-9);
}

// ---- verdicts ----

TEST(Runout, VerdictAtItsEdges) {
  // U of a half-thou dial alone: 2 √(2/12) · 0.5 = 0.408 thou.
  const double u = 2.0 * std::sqrt(2.0 / 12.0) * 0.5;
  const auto verdict = [](double tir) { return *solved(swings({{0.0, tir}, {0.0, tir}})).verdict; };
  EXPECT_EQ(verdict(3.0 - u), Verdict::Within);  // exactly at the limit
  EXPECT_EQ(verdict(3.0 - u + 0.001), Verdict::NotProven);
  EXPECT_EQ(verdict(3.0 + u), Verdict::NotProven);
  EXPECT_EQ(verdict(3.0 + u + 0.001), Verdict::Outside);
}

TEST(Runout, ACrankThatIsOutsideNeedsTruingAndEveryCrankShifts) {
  const Result outside = solved(swings({{0.0, 5.0}, {0.0, 5.0}}));
  EXPECT_TRUE(has(outside.outcome.findings, 1088));
  EXPECT_TRUE(has(outside.outcome.findings, 1050)) << "pump and bushing suffer with chains too";
  EXPECT_TRUE(has(outside.outcome.findings, 1068));
  const Result within = solved(swings({{0.0, 0.5}, {0.0, 0.5}}));
  EXPECT_FALSE(has(within.outcome.findings, 1088));
  EXPECT_FALSE(has(within.outcome.findings, 1050));
  EXPECT_TRUE(has(within.outcome.findings, 1068));
  Input shaft = swings({{0.0, 5.0}, {0.0, 5.0}});
  shaft.subject = Subject::OtherShaft;
  shaft.limit = Limit<Length>{Length::thou(1.5), Source::makers_sheet("shaft sheet")};
  EXPECT_EQ(*solved(shaft).verdict, Verdict::Outside);
  EXPECT_FALSE(has(solved(shaft).outcome.findings, 1088)) << "pressed cranks only";
  EXPECT_FALSE(has(solved(shaft).outcome.findings, 1068));
}

TEST(Runout, GuardFactorMovesTheEdges) {
  Input in = swings({{0.0, 2.7}, {0.0, 2.7}});
  EXPECT_EQ(*solved(in).verdict, Verdict::NotProven);
  in.guard_factor = 0.0;
  EXPECT_EQ(*solved(in).verdict, Verdict::Within);
  EXPECT_NEAR(solved(in).pass_line->in_thou(), 3.0, 1e-12);
}

TEST(Runout, OwnLimitAndNoLimit) {
  Input in = swings({{0.0, 2.0}, {0.0, 2.0}});
  EXPECT_NEAR(solved(in).limit->value.in_thou(), 3.0, 1e-12);
  EXPECT_TRUE(has(solved(in).outcome.findings, 1064));
  in.limit = Limit<Length>{Length::thou(1.5), Source::makers_sheet("gear sheet, page 2")};
  const Result own = solved(in);
  EXPECT_EQ(*own.verdict, Verdict::Outside);
  EXPECT_EQ(own.outcome.judgement->source.text(), "gear sheet, page 2");
  EXPECT_FALSE(has(own.outcome.findings, 1064));
  in.no_limit = true;
  const Result none = solved(in);
  EXPECT_FALSE(none.verdict || none.outcome.judgement || none.pass_line);
  EXPECT_TRUE(has(none.outcome.findings, 1063));
  in.no_limit = false;
  in.limit->value = Length::thou(0.0);
  EXPECT_TRUE(has(refused(in), 1006));
}

TEST(Runout, AnotherShaftHasNoLimitOfItsOwn) {
  Input in = swings({{0.0, 2.0}, {0.0, 2.0}});
  in.subject = Subject::OtherShaft;
  in.setup.contact.reset();
  in.setup.plate.reset();
  EXPECT_FALSE(solved(in).verdict);
  EXPECT_FALSE(has(solved(in).outcome.findings, 1024));
}

TEST(Runout, NotProvenSaysWhatWouldSettleIt) {
  Input in = swings({{0.0, 2.8}, {0.0, 2.8}});
  EXPECT_NE(solved(in).outcome.judgement->reason.find("finer indicator"), std::string::npos);
  in.setup.play = Length::thou(1.9);
  EXPECT_NE(solved(in).outcome.judgement->reason.find("play"), std::string::npos);
  in = swings({{0.0, 2.5}, {0.0, 2.9}});
  EXPECT_NE(solved(in).outcome.judgement->reason.find("more often"), std::string::npos);
}

TEST(Runout, PassLineBeforeTheFirstReading) {
  // Graduation alone (repeatability declared as nothing), the figures of trade practice: 0.0022, 0.0026, 0.0029 in.
  runout::Setup s;
  s.repeatability = Length::thou(0.0);
  const auto needle = [&](double graduation_thou) {
    s.graduation = Length::thou(graduation_thou);
    return pass_line(s, Length::thou(3.0))->needle.in_thou();
  };
  EXPECT_NEAR(needle(1.0), 2.2, 0.05);
  EXPECT_NEAR(needle(0.5), 2.6, 0.05);
  EXPECT_NEAR(needle(0.1), 2.9, 0.05);
  EXPECT_NEAR(needle(1.0), 3.0 - 2.0 * std::sqrt(2.0 / 12.0), 1e-12);
  s.repeatability.reset();  // then a third of a graduation
  EXPECT_NEAR(needle(1.0), 3.0 - 2.0 * std::sqrt(2.0 * (1.0 / 9.0 + 1.0 / 12.0)), 1e-12);
}

TEST(Runout, PassLineIsWhatTheVerdictThenUses) {
  Input in = swings({{0.0, 1.0}, {0.0, 1.0}});
  in.setup.play = Length::thou(0.8);
  const auto line = pass_line(in.setup, Length::thou(3.0));
  ASSERT_TRUE(line && line->provable);
  EXPECT_NEAR(line->needle.in_mm(), solved(in).pass_line->in_mm(), 1e-15);
  for (const double off : {-0.001, 0.001}) {
    for (Swing& s : in.readings.swings) s.high = line->needle + Length::thou(off);
    EXPECT_EQ(*solved(in).verdict, off < 0 ? Verdict::Within : Verdict::NotProven);
  }
}

TEST(Runout, PassLineKnowsWhatCannotPass) {
  runout::Setup s;
  s.graduation = Length::thou(5.0);
  EXPECT_FALSE(pass_line(s, Length::thou(3.0))->provable);
  s.graduation = Length::thou(0.5);
  EXPECT_TRUE(pass_line(s, Length::thou(3.0))->provable);
  EXPECT_FALSE(pass_line(s, Length::thou(3.0), Method::Swing, 1)->provable);
  EXPECT_TRUE(pass_line(s, Length::thou(3.0), Method::Stations, 1)->provable);
  s.indicator_angle = Angle::deg(60.0);  // the needle shows twice what the shaft does
  EXPECT_NEAR(
      pass_line(s, Length::thou(3.0))->needle / (Length::thou(3.0) - pass_line(s, Length::thou(3.0))->uncertainty), 2.0,
      1e-9);
  EXPECT_FALSE(pass_line({}, Length::thou(3.0)));
  s.graduation = Length::mm(std::numeric_limits<double>::quiet_NaN());
  EXPECT_FALSE(pass_line(s, Length::thou(3.0)));
}

TEST(Runout, TooCoarseADialSaysSo) {
  Input in = swings({{0.0, 1.0}, {0.0, 1.0}});
  in.setup.graduation = Length::thou(5.0);
  const Result r = solved(in);
  EXPECT_EQ(*r.verdict, Verdict::NotProven);
  EXPECT_TRUE(has(r.outcome.findings, 1041));
  EXPECT_LT(r.pass_line->in_mm(), 0.0);
}

// ---- stations ----

TEST(Runout, StationsThatMissThePeaks) {
  // Six marks, the crest half way between two: the readings show 2e cos 30°, the curve the whole.
  const Result r = solved(bend(3.0, 30.0, 6));
  EXPECT_NEAR(r.tir.in_thou(), 3.0 * std::cos(30.0 * deg), 1e-12);
  EXPECT_NEAR(r.judged.in_thou(), 3.0, 1e-12);
  // The limit of 3 thou: as read it would be Within.
  EXPECT_EQ(*solved(bend(3.0, 30.0, 6)).verdict, Verdict::NotProven);
}

TEST(Runout, FewerThanSixStationsNeverProveWithin) {
  for (const std::size_t n : {3u, 4u, 5u}) {
    EXPECT_EQ(*solved(bend(0.5, 10.0, n)).verdict, Verdict::NotProven) << n;
    EXPECT_TRUE(has(solved(bend(0.5, 10.0, n)).outcome.findings, 1021));
    EXPECT_EQ(*solved(bend(9.0, 10.0, n)).verdict, Verdict::Outside) << n;
  }
  EXPECT_EQ(*solved(bend(0.5, 10.0, 6)).verdict, Verdict::Within);
}

TEST(Runout, RepeatingFourMarksDoesNotMakeSix) {
  Input in = bend(0.5, 10.0, 4);
  const auto once = in.readings.stations;
  for (Station s : once) {
    s.turn = 2;
    in.readings.stations.push_back(s);
  }
  EXPECT_EQ(*solved(in).verdict, Verdict::NotProven);
  EXPECT_EQ(solved(in).fit->model.harmonics, 1);  // eight readings, but at four directions
}

TEST(Runout, OvalityFromEightReadingsAtFiveDirections) {
  Input in = bend(1.0, 10.0, 5);
  EXPECT_EQ(solved(in).fit->model.harmonics, 1);
  const auto once = in.readings.stations;
  for (Station s : once) {
    s.turn = 2;
    in.readings.stations.push_back(s);
  }
  EXPECT_EQ(solved(in).fit->model.harmonics, 2);
  EXPECT_TRUE(solved(in).ovality);
}

TEST(Runout, RefusesTooFewDirectionsAndWideGaps) {
  EXPECT_TRUE(has(refused(stations({0.0, 1.0}, 180.0)), 1003));
  EXPECT_TRUE(has(refused(stations({0.0, 1.0, 0.0}, 180.0)), 1003));  // the third is the first again
  const Findings gap = refused(stations({0.0, 1.0, 2.0, 1.0}, 45.0));
  ASSERT_TRUE(has(gap, 1004));
  EXPECT_NE(find(gap, 1004)->text.find("between 135° and 0°"), std::string::npos);
  EXPECT_TRUE(solve(bend(1.0, 0.0, 3)));  // gaps of exactly 120°
}

TEST(Runout, AnyOrderAnyTurnAnyCount) {
  Input in = bend(2.0, 77.0, 9);
  const Result expected = solved(in);
  std::reverse(in.readings.stations.begin(), in.readings.stations.end());
  for (Station& s : in.readings.stations) s.angle = s.angle + Angle::turns(3.0);
  const Result r = solved(in);
  EXPECT_NEAR(r.judged.in_mm(), expected.judged.in_mm(), 1e-13);
  EXPECT_NEAR(r.high_spot->in_deg(), 77.0, 1e-9);
}

TEST(Runout, ScatterIsReportedAndKeptOutOfU) {
  const Result smooth = solved(bend(2.0, 10.0, 12));
  const Result lumpy = solved(bend(2.0, 10.0, 12, 0.3));
  EXPECT_NEAR(smooth.scatter->in_thou(), 0.0, 1e-12);
  EXPECT_GT(lumpy.scatter->in_thou(), 0.2);
  EXPECT_EQ(smooth.uncertainty.expanded, lumpy.uncertainty.expanded);
}

TEST(Runout, UncertaintyOfTheBendForEqualSpacing) {
  const Result r = solved(bend(2.0, 10.0, 12));
  const Figure* f = r.outcome.figure("bend");
  ASSERT_NE(f, nullptr);
  EXPECT_NEAR(*f->uncertainty, 2.0 * 2.0 * r.uncertainty.reading.in_mm() * std::sqrt(2.0 / 12.0), 1e-15);
}

TEST(Runout, PlayAndStatedErrorWidenU) {
  Input in = swings({{0.0, 2.0}, {0.0, 2.0}});
  in.setup.stated_error = Length::thou(0.3);
  in.setup.play = Length::thou(1.5);
  in.setup.repeatability = Length::thou(0.2);
  const double u2 = 2.0 * (0.04 + 0.25 / 12.0 + 0.09 / 3.0) + 2.25 / 12.0;
  EXPECT_NEAR(solved(in).uncertainty.expanded.in_thou(), 2.0 * std::sqrt(u2), 1e-12);
}

TEST(Runout, AFewTurnsBringStudentsFactor) {
  Input in = swings({{0.0, 2.0}, {0.3, 2.3}});
  in.setup.repeatability.reset();
  const Result r = solved(in);
  const double s2 = 0.045;  // 4 · 0.15² / 2
  const double u2 = 2.0 * (s2 + 0.25 / 12.0);
  EXPECT_NEAR(r.uncertainty.degrees_of_freedom, 2.0 * std::pow(u2 / (2.0 * s2), 2), 1e-9);
  EXPECT_GT(r.uncertainty.coverage_factor, 2.5);
  in.setup.repeatability = Length::thou(0.5);  // declared larger than shown: it counts, as known
  EXPECT_EQ(solved(in).uncertainty.coverage_factor, 2.0);
  EXPECT_NEAR(solved(in).uncertainty.repeatability.in_thou(), 0.5, 1e-12);
  in.setup.repeatability = Length::thou(0.05);  // declared better than shown: what was shown counts, and is said
  EXPECT_NEAR(solved(in).uncertainty.repeatability.in_thou(), std::sqrt(s2), 1e-12);
  EXPECT_TRUE(has(solved(in).outcome.findings, 1048));
}

// ---- closing reading and drift ----

TEST(Runout, ClosingReadingFieldAndItsError) {
  Input in = bend(2.0, 10.0, 8);
  in.readings.closing = in.readings.stations.front().reading + Length::thou(0.5);
  EXPECT_FALSE(has(solved(in).outcome.findings, 1043));  // one graduation exactly is still good
  in.readings.closing = in.readings.stations.front().reading - Length::thou(0.6);
  const Result r = solved(in);
  EXPECT_TRUE(has(r.outcome.findings, 1043));
  EXPECT_NEAR(r.closing_error->in_thou(), 0.6, 1e-12);
  EXPECT_TRUE(r.judged_without_drift);
}

TEST(Runout, DriftIsTakenOutByOrderOfReading) {
  Input in = bend(2.0, 50.0, 8);
  for (std::size_t i = 0; i < 8; ++i) {
    in.readings.stations[i].reading = in.readings.stations[i].reading + Length::thou(0.2 * static_cast<double>(i));
  }
  in.readings.stations.push_back(
      {Angle::deg(360.0), in.readings.stations.front().reading + Length::thou(1.6), 1});  // 8 steps on
  const Result r = solved(in);
  EXPECT_NEAR(r.judged_without_drift->in_thou(), 2.0, 1e-12);
  EXPECT_GT(std::abs(r.judged.in_thou() - 2.0), 0.2);
}

TEST(Runout, VerdictThatHangsOnTheDriftIsNotProven) {
  Input in = bend(2.0, 315.0, 8);  // the crest comes last, where the drift is largest
  for (std::size_t i = 0; i < 8; ++i) {
    in.readings.stations[i].reading = in.readings.stations[i].reading + Length::thou(0.5 * static_cast<double>(i));
  }
  in.readings.closing = in.readings.stations.front().reading + Length::thou(4.0);
  const Result r = solved(in);
  EXPECT_NEAR(r.judged_without_drift->in_thou(), 2.0, 1e-12);  // Within by itself
  EXPECT_GT(r.tir.in_thou(), 3.5);                             // Outside as read
  EXPECT_EQ(*r.verdict, Verdict::NotProven);
  EXPECT_TRUE(has(r.outcome.findings, 1031));
}

TEST(Runout, EachTurnMayCloseByItself) {
  Input in = bend(2.0, 10.0, 8);
  const auto once = in.readings.stations;
  in.readings.stations.push_back({Angle::deg(360.0), once.front().reading, 1});
  for (Station s : once) {
    s.turn = 2;
    in.readings.stations.push_back(s);
  }
  in.readings.stations.push_back({Angle::deg(360.0), once.front().reading, 2});
  const Result r = solved(in);
  EXPECT_EQ(r.stations.size(), 8u);
  EXPECT_EQ(r.fit->readings, 16u);
  EXPECT_NEAR(r.judged.in_thou(), 2.0, 1e-12);
}

TEST(Runout, StartingElsewhereAndComingBackCloses) {
  Input in = bend(2.0, 10.0, 8);
  std::rotate(in.readings.stations.begin(), in.readings.stations.begin() + 2, in.readings.stations.end());
  in.readings.stations.push_back(in.readings.stations.front());  // 90° … 45°, 90°
  const Result r = solved(in);
  EXPECT_EQ(r.fit->readings, 8u);
  EXPECT_TRUE(r.closing_error);
}

TEST(Runout, ThreeHundredSixtyAloneIsTheFirstMark) {
  Input in = bend(2.0, 10.0, 8);
  in.readings.stations.front().angle = Angle::deg(360.0);
  const Result r = solved(in);
  EXPECT_EQ(r.stations.size(), 8u);
  EXPECT_EQ(r.stations.front().angle.in_rad(), 0.0);
  EXPECT_FALSE(r.closing_error);
}

// ---- set-up: what is no proof ----

TEST(Runout, PlateOnIsNoProofEitherWay) {
  for (const double tir : {0.5, 9.0}) {
    Input in = swings({{0.0, tir}, {0.0, tir}});
    in.setup.plate = Plate::On;
    EXPECT_EQ(*solved(in).verdict, Verdict::NotProven);
    EXPECT_TRUE(has(solved(in).outcome.findings, 1022));
    EXPECT_NE(solved(in).outcome.judgement->reason.find("bushing holds the shaft"), std::string::npos);
  }
}

TEST(Runout, WrongContactIsNoProof) {
  for (const Contact c : {Contact::Gear, Contact::Splines, Contact::ThreadOrBolt, Contact::FlatOrAdapter}) {
    Input in = swings({{0.0, 0.5}, {0.0, 0.5}});
    in.setup.contact = c;
    EXPECT_EQ(*solved(in).verdict, Verdict::NotProven);
    EXPECT_TRUE(has(solved(in).outcome.findings, 1023));
  }
}

TEST(Runout, WhatWasNotSaidProvesNothing) {
  Input in = swings({{0.0, 0.5}, {0.0, 0.5}});
  in.setup.plate.reset();
  EXPECT_EQ(*solved(in).verdict, Verdict::NotProven);
  EXPECT_TRUE(has(solved(in).outcome.findings, 1024));
  in.setup.stand = Stand::TruingStand;  // crank out: there is no plate
  EXPECT_EQ(*solved(in).verdict, Verdict::Within);
}

TEST(Runout, IndicatorOnTheFrameIsNoProof) {
  Input in = swings({{0.0, 0.5}, {0.0, 0.5}});
  in.setup.stand = Stand::FrameOrLift;
  EXPECT_EQ(*solved(in).verdict, Verdict::NotProven);
  EXPECT_TRUE(has(solved(in).outcome.findings, 1025));
}

TEST(Runout, AnErrorOfTheIndicatorNotStatedIsSaid) {
  Input in = swings({{0.0, 0.5}, {0.0, 0.5}});
  EXPECT_FALSE(has(solved(in).outcome.findings, 1066));
  in.setup.stated_error.reset();
  EXPECT_TRUE(has(solved(in).outcome.findings, 1066));
}

TEST(Runout, PlayMissingOrLarge) {
  Input in = swings({{0.0, 0.5}, {0.0, 0.5}});
  in.setup.play.reset();
  EXPECT_TRUE(has(solved(in).outcome.findings, 1060));
  EXPECT_EQ(*solved(in).verdict, Verdict::Within);
  in.setup.play = Length::inches(0.002);
  EXPECT_FALSE(has(solved(in).outcome.findings, 1040));
  in.setup.play = Length::inches(0.0021);
  ASSERT_TRUE(has(solved(in).outcome.findings, 1040));
  EXPECT_NE(find(solved(in).outcome.findings, 1040)->text.find("main bearing is the first question"),
            std::string::npos);
}

TEST(Runout, ReadOnAFlat) {
  std::vector<double> r;
  for (int i = 0; i < 8; ++i) r.push_back(3.0 * std::cos(90.0 * i * deg) + 0.5 * std::cos(45.0 * i * deg));
  const Result flat = solved(stations(r, 45.0));
  EXPECT_GT(flat.ovality->in_thou(), 5.0);
  EXPECT_TRUE(has(flat.outcome.findings, 1026));
  EXPECT_EQ(*flat.verdict, Verdict::NotProven);  // though far above the limit
  for (double& v : r) v *= 0.5;
  EXPECT_FALSE(has(solved(stations(r, 45.0)).outcome.findings, 1026));
}

// ---- mistakes of typing ----

TEST(Runout, InchesTypedForThou) {
  const Findings f = refused(swings({{0.0, 3200.0}, {0.0, 3200.0}}));
  ASSERT_TRUE(has(f, 1005));
  EXPECT_NE(find(f, 1005)->text.find("3.200 in"), std::string::npos);
  EXPECT_NE(find(f, 1005)->remedy.find("Typed in thou?"), std::string::npos);
  EXPECT_EQ(find(f, 1005)->field, "swings[0].high");

  const Result r = solved(swings({{0.0, 310.0}, {0.0, 310.0}}));  // 0.31 for 0.00031
  EXPECT_TRUE(has(r.outcome.findings, 1028));
  EXPECT_EQ(*r.verdict, Verdict::NotProven);
}

TEST(Runout, BeyondTheIndicatorsRange) {
  Input in = bend(2.0, 10.0, 8);
  in.setup.range = Length::inches(0.03);
  in.readings.stations[5].reading = Length::inches(0.2);
  in.readings.stations[6].reading = Length::inches(-0.031);
  const Findings f = refused(in);
  ASSERT_TRUE(has(f, 1005));
  EXPECT_EQ(find(f, 1005)->field, "stations[5].reading");
  EXPECT_NE(find(f, 1005)->text.find("1 more"), std::string::npos);
}

TEST(Runout, ZeroLostOrMetricDial) {
  Input in = swings({{0.0, 30.0}, {0.0, 30.0}});  // 0.03 for 0.003
  EXPECT_TRUE(has(solved(in).outcome.findings, 1029));
  EXPECT_EQ(*solved(in).verdict, Verdict::NotProven);
  in.readings_checked = true;
  EXPECT_EQ(*solved(in).verdict, Verdict::Outside);
  EXPECT_TRUE(has(solved(in).outcome.findings, 1069));

  in = swings({{0.0, 80.0}, {0.0, 80.0}});  // 0.08 mm typed as 0.08 in, on a dial whose turn is larger
  in.setup.needle_turn = Length::inches(0.5);
  const Result metric = solved(in);
  ASSERT_TRUE(has(metric.outcome.findings, 1029));
  EXPECT_NE(find(metric.outcome.findings, 1029)->remedy.find("0.08 mm is 0.00315 in"), std::string::npos);
}

TEST(Runout, InchDialTypedAsMetric) {
  const Result r = solved(swings({{0.0, 0.031}, {0.0, 0.031}}));  // a half-thou dial cannot show that
  EXPECT_TRUE(has(r.outcome.findings, 1030));
  EXPECT_EQ(*r.verdict, Verdict::NotProven);
}

TEST(Runout, HalfOfTheSwing) {
  Input in = swings({{0.0, 1.8}, {0.0, 1.8}});
  ASSERT_TRUE(has(solved(in).outcome.findings, 1067));
  EXPECT_NE(find(solved(in).outcome.findings, 1067)->remedy.find("0.0036 in"), std::string::npos);
  in.setup.swing_means = SwingMeans::NeedleEnds;
  EXPECT_FALSE(has(solved(in).outcome.findings, 1067));
  EXPECT_EQ(*solved(in).verdict, Verdict::Within);
  in.setup.swing_means = SwingMeans::OffsetOnly;
  EXPECT_NEAR(solved(in).tir.in_thou(), 3.6, 1e-12);
  EXPECT_EQ(*solved(in).verdict, Verdict::Outside);
  EXPECT_TRUE(has(solved(in).outcome.findings, 1070));
}

TEST(Runout, PlusAndMinusOnABalancedDial) {
  Input in = swings({{1.0, 2.0}, {1.0, 2.0}});
  in.setup.dial = Dial::Balanced;
  EXPECT_TRUE(has(solved(in).outcome.findings, 1032));
  for (Swing& s : in.readings.swings) s.low = Length::thou(-1.0);
  EXPECT_FALSE(has(solved(in).outcome.findings, 1032));
}

TEST(Runout, LowAboveHigh) {
  EXPECT_TRUE(has(refused(swings({{2.0, 1.0}, {1.0, 2.0}})), 1002));
}

TEST(Runout, DialWrapOfSwingIsAskedAbout) {
  Input in = swings({{2.0, 98.0}, {2.0, 98.0}});
  in.setup.graduation = Length::thou(1.0);
  in.setup.needle_turn = Length::thou(100.0);
  const Result asked = solved(in);
  EXPECT_NEAR(asked.tir.in_thou(), 96.0, 1e-9);  // as typed, not silently mended
  ASSERT_TRUE(asked.proposed_tir);
  EXPECT_NEAR(asked.proposed_tir->in_thou(), 4.0, 1e-9);
  EXPECT_EQ(*asked.verdict, Verdict::NotProven);
  EXPECT_TRUE(has(asked.outcome.findings, 1027));
  EXPECT_FALSE(has(asked.outcome.findings, 1029));  // one question at a time
  in.setup.passed_zero = true;
  EXPECT_NEAR(solved(in).tir.in_thou(), 4.0, 1e-9);
  EXPECT_TRUE(has(solved(in).outcome.findings, 1065));
  in.setup.passed_zero = false;
  EXPECT_NEAR(solved(in).tir.in_thou(), 96.0, 1e-9);
  EXPECT_FALSE(has(solved(in).outcome.findings, 1027));

  for (Swing& s : in.readings.swings) std::swap(s.low, s.high);  // noted as lowest 98, highest 2
  in.setup.passed_zero.reset();
  const Findings f = refused(in);
  ASSERT_TRUE(has(f, 1008));
  EXPECT_NE(find(f, 1008)->remedy.find("−0.002 in"), std::string::npos);
  in.setup.passed_zero = true;
  EXPECT_NEAR(solved(in).tir.in_thou(), 4.0, 1e-9);
}

TEST(Runout, DialWrapOfStationsIsAskedAbout) {
  Input in = bend(3.0, 10.0, 8);
  in.setup.graduation = Length::thou(1.0);
  for (Station& s : in.readings.stations) {
    double thou = s.reading.in_thou() - 5.0;  // about zero
    if (thou < 0.0) thou += 100.0;
    s.reading = Length::thou(thou);
  }
  const Result asked = solved(in);
  EXPECT_GT(asked.tir.in_thou(), 90.0);
  ASSERT_TRUE(asked.proposed_tir);
  const double at_stations = 1.5 * (std::cos(10.0 * deg) - std::cos(190.0 * deg));
  EXPECT_NEAR(asked.proposed_tir->in_thou(), at_stations, 1e-9);
  EXPECT_EQ(*asked.verdict, Verdict::NotProven);
  ASSERT_TRUE(has(asked.outcome.findings, 1027));
  EXPECT_FALSE(has(asked.outcome.findings, 1026));

  in.setup.passed_zero = true;
  in.readings.closing = in.readings.stations.front().reading + Length::thou(100.0);
  const Result told = solved(in);
  EXPECT_NEAR(told.judged.in_thou(), 3.0, 1e-9);
  EXPECT_NEAR(told.closing_error->in_thou(), 0.0, 1e-9);
  EXPECT_NEAR(Length::mm(told.fit->coefficient[0]).in_thou(), 0.0, 1e-9);  // back near zero, where it was typed
  in.setup.passed_zero = false;
  EXPECT_EQ(solved(in).tir, asked.tir);
  EXPECT_FALSE(solved(in).proposed_tir);
}

TEST(Runout, ALargeRunoutIsNoDialWrap) {
  const Result r = solved(bend(12.0, 10.0, 8));  // the most that cranks show
  EXPECT_FALSE(r.proposed_tir);
  EXPECT_EQ(*r.verdict, Verdict::Outside);
}

TEST(Runout, NeedleThatNeverMoved) {
  EXPECT_TRUE(has(solved(swings({{0.0, 0.0}, {0.0, 0.0}})).outcome.findings, 1045));
  EXPECT_TRUE(has(solved(stations(std::vector<double>(8, 2.0), 45.0)).outcome.findings, 1045));
}

TEST(Runout, NotANumberAndInfinityAreRefusedWithTheirField) {
  for (const double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    Input in = bend(2.0, 10.0, 8);
    in.readings.stations[3].reading = Length::mm(bad);
    ASSERT_TRUE(has(refused(in), 202));
    EXPECT_EQ(find(refused(in), 202)->field, "stations[3].reading");
  }
  Input in = bend(2.0, 10.0, 8);
  in.setup.graduation = Length::mm(0.0);
  EXPECT_TRUE(has(refused(in), 200));
  in.setup.graduation.reset();
  ASSERT_TRUE(has(refused(in), 201));
  EXPECT_EQ(find(refused(in), 201)->field, "setup.graduation");
  in = bend(2.0, 10.0, 8);
  in.setup.indicator_angle = Angle::deg(61.0);
  EXPECT_TRUE(has(refused(in), 200));
}

TEST(Runout, ReadingsOfTheOtherWay) {
  Input in = bend(2.0, 10.0, 8);
  in.readings.method = Method::Swing;
  ASSERT_TRUE(has(refused(in), 1001));
  EXPECT_NE(find(refused(in), 1001)->remedy.find("pick that one"), std::string::npos);
}

// ---- two planes ----

Input both_sides(double right_at_deg, double left_at_deg, double pin_deg = 0.0) {
  Input in = bend(2.0, right_at_deg, 8);
  OtherSide o;
  o.readings = bend(2.0, left_at_deg, 8).readings;
  o.seen_from = SeenFrom::Right;
  o.one_zero = true;
  o.same_side = true;
  o.crankpin = Angle::deg(pin_deg);
  o.support = Support::OwnMains;
  o.read_at = ReadAt::OutboardOfSupports;
  in.other_side = o;
  return in;
}

TEST(Runout, ScissoredWheels) {
  const Result r = solved(both_sides(90.0, 270.0));
  ASSERT_TRUE(r.two_planes);
  EXPECT_EQ(r.two_planes->opposed_is, TwoPlanes::Part::Scissored);
  EXPECT_NEAR(r.two_planes->opposed.in_thou(), 2.0, 1e-9);
  EXPECT_EQ(r.two_planes->common_is, TwoPlanes::Part::TooSmall);
  EXPECT_TRUE(has(r.outcome.findings, 1080));
  EXPECT_NEAR(figure_thou(r, "common"), 0.0, 1e-9);
}

// Rigid wheels joined at the pin, each tipped by w about the axis square to pin and shaft: the height of the shafts'
// middle line at a distance x from the wheel is −w·x toward the pin when the rims close up on the far side. Read
// against a line through the supports at x_s.
double toward_pin_when_pinched(double x_read, double x_support) {
  const double tip = 1.0;
  return -tip * x_read - -tip * x_support;
}

TEST(Runout, PinchedOrSpreadFollowsTheGeometry) {
  // Own mains near the wheel, read further out; and centres at the shaft's end, read near the wheel.
  const bool outboard_toward = toward_pin_when_pinched(3.0, 1.0) > 0.0;
  const bool inboard_toward = toward_pin_when_pinched(1.0, 4.0) > 0.0;
  EXPECT_NE(outboard_toward, inboard_toward);
  for (const bool toward : {false, true}) {
    Input in = both_sides(toward ? 0.0 : 180.0, toward ? 0.0 : 180.0);
    const auto pinched_if = [](bool same) { return same ? TwoPlanes::Part::Pinched : TwoPlanes::Part::Spread; };
    EXPECT_EQ(solved(in).two_planes->common_is, pinched_if(toward == outboard_toward));
    in.other_side->support = Support::Centres;
    in.other_side->read_at = ReadAt::InboardOfSupports;
    EXPECT_EQ(solved(in).two_planes->common_is, pinched_if(toward == inboard_toward));
    EXPECT_TRUE(has(solved(in).outcome.findings, 1081));
  }
}

TEST(Runout, OppositePartElsewhereIsNotScissoredWheelsAlone) {
  const Result r = solved(both_sides(45.0, 225.0));
  EXPECT_EQ(r.two_planes->opposed_is, TwoPlanes::Part::Unnamed);
  EXPECT_TRUE(has(r.outcome.findings, 1087));
  EXPECT_FALSE(has(solved(both_sides(90.0, 270.0)).outcome.findings, 1087));
}

TEST(Runout, CommonPartElsewhereIsSetUp) {
  const Result r = solved(both_sides(80.0, 80.0));
  EXPECT_EQ(r.two_planes->common_is, TwoPlanes::Part::SetUp);
  EXPECT_TRUE(has(r.outcome.findings, 1082));
}

TEST(Runout, LeftAnglesAreTurnedRound) {
  // The same scissored crank, its left side marked as seen from the left: 270° reads as 90°.
  Input in = both_sides(90.0, 90.0);
  EXPECT_EQ(solved(in).two_planes->common_is, TwoPlanes::Part::SetUp);
  in.other_side->seen_from = SeenFrom::Left;
  EXPECT_EQ(solved(in).two_planes->opposed_is, TwoPlanes::Part::Scissored);
  EXPECT_TRUE(has(solved(in).outcome.findings, 1084));
}

TEST(Runout, IndicatorsOnOppositeSidesSwapTheSigns) {
  Input in = both_sides(90.0, 90.0);
  in.other_side->same_side = false;
  EXPECT_EQ(solved(in).two_planes->opposed_is, TwoPlanes::Part::Scissored);
  EXPECT_TRUE(has(solved(in).outcome.findings, 1086));
}

TEST(Runout, UnansweredQuestionsLeaveThePartsUnnamed) {
  Input in = both_sides(90.0, 270.0);
  in.other_side->same_side.reset();
  const Result r = solved(in);
  EXPECT_EQ(r.two_planes->opposed_is, TwoPlanes::Part::Unnamed);
  EXPECT_NEAR(r.two_planes->opposed.in_thou(), 2.0, 1e-9);  // shown all the same
  EXPECT_TRUE(has(r.outcome.findings, 1083));
  in = both_sides(90.0, 270.0);
  in.other_side->support = Support::VBlocks;
  EXPECT_TRUE(has(solved(in).outcome.findings, 1085));
}

TEST(Runout, TwoPlanesFromSwingsWithHighSpots) {
  Input in = swings({{0.0, 2.0}, {0.0, 2.0}});
  OtherSide o = *both_sides(0, 0).other_side;
  o.readings = in.readings;
  in.other_side = o;
  EXPECT_TRUE(has(solved(in).outcome.findings, 1089));
  for (Swing& s : in.readings.swings) s.high_spot = Angle::deg(90.0);
  for (Swing& s : in.other_side->readings.swings) s.high_spot = Angle::deg(270.0);
  EXPECT_EQ(solved(in).two_planes->opposed_is, TwoPlanes::Part::Scissored);
}

TEST(Runout, DoubtOfTheOtherSideLeavesThisVerdictAlone) {
  Input in = both_sides(90.0, 270.0);
  in.other_side->readings = bend(2.0, 270.0, 4).readings;
  const Result r = solved(in);
  EXPECT_EQ(*r.verdict, Verdict::Within);
  ASSERT_TRUE(has(r.outcome.findings, 1021));
  EXPECT_EQ(find(r.outcome.findings, 1021)->severity, Severity::Caution);
  in.other_side->readings.stations.resize(2);
  ASSERT_TRUE(has(refused(in), 1003));
  EXPECT_EQ(find(refused(in), 1003)->field, "other_side.stations");
}

// ---- at the gear, budget ----

TEST(Runout, AtTheGear) {
  Input in = bend(2.0, 10.0, 8);
  EXPECT_TRUE(has(solved(in).outcome.findings, 1046));
  in.at_gear = AtGear{Length::inches(2.0), Length::inches(3.0)};
  const Result r = solved(in);
  EXPECT_NEAR(figure_thou(r, "at_gear"), 1.5, 1e-9);
  EXPECT_NEAR(figure_thou(r, "at_gear_tir"), 3.0, 1e-9);
  EXPECT_NEAR(*r.outcome.figure("at_gear")->uncertainty, 1.5 * *r.outcome.figure("eccentricity")->uncertainty, 1e-15);
  EXPECT_FALSE(has(r.outcome.findings, 1046));
}

TEST(Runout, ShaftAndGearAddAsArrows) {
  Input in = bend(2.0, 0.0, 8);
  in.gear = GearRunout{Length::thou(1.5), Angle::deg(90.0)};
  const Result r = solved(in);
  EXPECT_NEAR(figure_thou(r, "gear_total"), 2.5, 1e-9);
  EXPECT_NEAR(Angle::rad(r.outcome.figure("gear_total_high_spot")->base).in_deg(), std::atan2(1.5, 2.0) / deg, 1e-9);
  in.gear->high_spot.reset();
  EXPECT_TRUE(has(solved(in).outcome.findings, 1049));
  EXPECT_EQ(solved(in).outcome.figure("gear_total"), nullptr);
}

TEST(Runout, BudgetOfTheWantedWindow) {
  Input in = bend(2.0, 0.0, 8);
  in.budget = Budget{Length::thou(0.5), Length::thou(1.0), Angle::deg(20.0)};
  const Result r = solved(in);
  EXPECT_NEAR(figure_thou(r, "budget"), 0.5 / (2.0 * std::tan(20.0 * deg)), 1e-12);
  EXPECT_NEAR(figure_thou(r, "lash_swing") / r.judged.in_thou(), 0.728, 5e-4);  // trade practice: 0.73 TIR at 20°
  EXPECT_TRUE(has(r.outcome.findings, 1047));
  in.budget->lash_most = Length::thou(0.5);
  EXPECT_TRUE(has(refused(in), 1007));
}

// ---- the outcome as a whole ----

TEST(Runout, OutcomeCarriesTheAnswerFirstAndItsWorking) {
  const Result r = solved(bend(2.0, 10.0, 8));
  ASSERT_FALSE(r.outcome.figures.empty());
  EXPECT_EQ(r.outcome.figures.front().key, "judged");
  EXPECT_EQ(r.outcome.figures.front().verdict, Verdict::Within);
  EXPECT_NEAR(*r.outcome.figures.front().uncertainty, r.uncertainty.expanded.in_mm(), 0.0);
  EXPECT_EQ(r.outcome.judgement->figure, "judged");
  EXPECT_NEAR(*r.outcome.judgement->upper, 0.0762, 1e-15);
  for (const char* key : {"tir", "eccentricity", "bend", "high_spot", "ovality", "pass_line", "scatter"}) {
    EXPECT_NE(r.outcome.figure(key), nullptr) << key;
  }
  EXPECT_GE(r.outcome.working.size(), 8u);
  for (const Step& s : r.outcome.working) EXPECT_FALSE(s.title.empty() || s.formula.empty() || s.result.empty());
  EXPECT_TRUE(std::is_sorted(r.outcome.findings.begin(), r.outcome.findings.end(),
                             [](const Finding& a, const Finding& b) { return a.severity > b.severity; }));
}

// Outside, what is open must be said: chains or a trued crank, not only that it is bad.
TEST(RunoutWords, OutsideSaysWhatIsOpen) {
  for (const Finding& f : solved(swings({{0.0, 6.0}, {0.0, 6.0}})).outcome.findings) {
    if (f.number != 1088) continue;
    EXPECT_NE(f.text.find("chains, if it is inside the engine maker's own limit"), std::string::npos);
    EXPECT_NE(f.text.find("trued"), std::string::npos);
    return;
  }
  FAIL() << "1088 is missing";
}

TEST(RunoutSafety, FingersOutOfOpenGearsUnlessTheCrankIsOut) {
  Input in = swings({{0.0, 1.0}, {0.0, 1.0}});
  EXPECT_TRUE(has(solved(in).outcome.findings, 1911));
  in.setup.stand = Stand::TruingStand;
  EXPECT_FALSE(has(solved(in).outcome.findings, 1911));
}

TEST(Runout, AHundredThousandReadings) {
  Input in;
  in.setup = sound_setup();
  in.readings.method = Method::Stations;
  in.readings.stations.reserve(100000);
  for (int i = 0; i < 100000; ++i) {
    const double t = 2.0 * std::numbers::pi * (i % 5000) / 5000.0;
    const double thou = 1.0 * std::cos(t - 1.0) + 0.1 * std::cos(2.0 * t);
    in.readings.stations.push_back({Angle::rad(t), Length::thou(thou), 1 + i / 5000});
  }
  const Result r = solved(in);
  EXPECT_EQ(r.stations.size(), 5000u);
  EXPECT_NEAR(r.eccentricity->in_thou(), 1.0, 1e-12);
  EXPECT_NEAR(r.ovality->in_thou(), 0.2, 1e-12);
  EXPECT_EQ(*r.verdict, Verdict::Within);
}

}  // namespace
}  // namespace camside::runout
