#include "calc/backlash/backlash.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>

#include "calc/answers.hpp"
#include "calc/backlash/backlash_test_inputs.hpp"
#include "maths/involute.hpp"
#include "oracle/backlash_rows.hpp"

namespace camside::backlash {
namespace {

using lash_temperature::State;

Finding finding(const Input& in, int number) {
  const auto r = solve(in);
  for (const Finding& f : r ? r->outcome.findings : r.error())
    if (f.number == number) return f;
  return {};
}

testing::AssertionResult doubted(const Input& in, int number, const std::string& field) {
  const Finding f = finding(in, number);
  if (f.number != number) return testing::AssertionFailure() << "no finding " << number;
  if (f.severity != Severity::Doubt) return testing::AssertionFailure() << number << " is no doubt";
  if (f.field != field) return testing::AssertionFailure() << number << " is about " << f.field;
  return testing::AssertionSuccess();
}

Verdict verdict(const Input& in) {
  const Result r = solved(in);
  EXPECT_TRUE(r.outcome.judgement) << "no judgement";
  return r.outcome.judgement ? r.outcome.judgement->verdict : Verdict::NotProven;
}

bool has_finding(const Input& in, int number) {
  return finding(in, number).number == number;
}

// Readings that would be Within when nothing stood against it.
Input sound() {
  Input in = crank_mesh();
  in.window = window_of(0.2, 3.0);
  return in;
}

// ---- published and derived rows ----

TEST(Backlash, CycleMeetsTheRows) {
  for (const auto& row : oracle::cycle_rows) {
    const Result r = solved(of_row(row));
    EXPECT_NEAR(r.curve.mean.in_mm(), row.coefficients_mm[0], 1e-11);
    EXPECT_NEAR(r.curve.cos_half.in_mm(), row.coefficients_mm[1], 1e-11);
    EXPECT_NEAR(r.curve.sin_half.in_mm(), row.coefficients_mm[2], 1e-11);
    EXPECT_NEAR(r.curve.cos_one.in_mm(), row.coefficients_mm[3], 1e-11);
    EXPECT_NEAR(r.curve.sin_one.in_mm(), row.coefficients_mm[4], 1e-11);
    EXPECT_NEAR(r.lowest.lash.in_mm(), row.low_mm, 1e-11);
    EXPECT_NEAR(r.lowest.crank.in_deg(), row.low_deg, 2e-6);
    EXPECT_NEAR(r.lowest.uncertainty.in_mm(), row.low_u_mm, 1e-11);
    EXPECT_EQ(r.lowest.from_reading, row.low_from_reading);
    EXPECT_NEAR(r.highest.lash.in_mm(), row.high_mm, 1e-11);
    EXPECT_NEAR(r.highest.crank.in_deg(), row.high_deg, 2e-6);
    EXPECT_NEAR(r.highest.uncertainty.in_mm(), row.high_u_mm, 1e-11);
    EXPECT_EQ(r.highest.from_reading, row.high_from_reading);
  }
}

TEST(Backlash, FourReadingsInOneTurnMissWhatEightOverTwoFind) {
  const oracle::TwoPeriods p = oracle::two_periods;
  const auto lash_mm = [&](double t) {
    return 0.0254 * (p.mean_thou + p.pinion_thou * std::cos(t) + p.gear_thou * std::sin(0.5 * t));
  };
  Input in = crank_mesh();
  const double k = solved(in).lash_per_reading;
  read_curve(in, {0, 90, 180, 270}, k, lash_mm);
  EXPECT_NEAR(solved(in).lowest.lash.in_thou(), p.lowest_in_turn_1_thou, 1e-12);
  EXPECT_TRUE(doubted(in, 1206, "readings"));
  read_curve(in, {0, 90, 180, 270, 360, 450, 540, 630}, k, lash_mm);
  const Result all = solved(in);
  EXPECT_NEAR(all.lowest.lash.in_thou(), p.lowest_thou, 1e-12);
  EXPECT_NEAR(all.lowest.crank.in_deg(), 540.0, 1e-5);
  EXPECT_NEAR(all.gear_share.in_thou(), p.gear_thou, 1e-12);
  EXPECT_NEAR(all.pinion_share.in_thou(), p.pinion_thou, 1e-12);
  EXPECT_FALSE(has(all.outcome.findings, 1206));
}

TEST(Backlash, FlankReadingsMeetTheRows) {
  for (const auto& row : oracle::flank_rows) {
    Input in = crank_mesh();  // gear 2 with a base radius of 30 cos 20° mm
    in.module = Module::mm(1.5);
    in.centre_distance = Length::mm(45.0);
    in.contact = Contact::ToothFlank;
    in.contact_radius = Length::mm(row.radius_mm);
    in.indicator_angle = Angle::deg(row.indicator_deg);
    const double travel = solved(in).lash_per_reading * row.radius_mm / 30.0;
    EXPECT_NEAR(travel * row.reading_per_travel, 1.0, 2e-5);
  }
}

TEST(Backlash, SquareToTheFlankDividesByCosine) {
  Input in = crank_mesh();
  in.module = Module::mm(1.5);
  in.centre_distance = Length::mm(45.0);
  in.contact = Contact::FlankSquare;
  in.contact_radius = Length::mm(30.0);
  in.indicator_angle.reset();  // not asked here
  EXPECT_NEAR(solved(in).lash_per_reading, 1.0 / std::cos(Angle::deg(20).in_rad()), 1e-14);
  Input arm = in;
  arm.contact = Contact::ArmFace;
  arm.indicator_angle = Angle::deg(20.0);
  EXPECT_NEAR(solved(arm).lash_per_reading / solved(in).lash_per_reading, 0.883022221559, 1e-11)
      << "arm taken for flank";
}

TEST(Backlash, SpiralTeethSquareToTheFlank) {
  Input in = crank_mesh();
  in.module = Module::mm(1.5);
  in.helix = Angle::deg(25.0);
  in.contact = Contact::FlankSquare;
  const double reference = 1.5 / std::cos(in.helix.in_rad()) * 20.0;
  in.centre_distance = Length::mm(1.5 * reference);
  in.contact_radius = Length::mm(reference);
  EXPECT_NEAR(solved(in).lash_per_reading, 1.0 / oracle::helical_square, 1e-12);
}

TEST(Backlash, ArmLongerThanTheGearReadsMore) {
  Input in = crank_mesh();
  in.indicator_angle = Angle::deg(10.0);
  const double r_w = 38.15 * 40.0 / 60.0;
  EXPECT_NEAR(solved(in).lash_per_reading, std::cos(Angle::deg(10).in_rad()) * r_w / 31.75, 1e-14);
  in.rocked = Rocked::Gear1;
  EXPECT_NEAR(solved(in).lash_per_reading, std::cos(Angle::deg(10).in_rad()) * 0.5 * r_w / 31.75, 1e-14);
}

TEST(Backlash, TemperatureMeetsTheRows) {
  for (const auto& row : oracle::warm_rows) {
    Input in = row.teeth1 == row.teeth2 ? plate_mesh() : crank_mesh();
    in.teeth1 = row.teeth1;
    in.teeth2 = row.teeth2;
    in.module = Module::mm(row.module_mm);
    in.centre_distance = Length::mm(row.centre_mm);
    const double k = solved(in).lash_per_reading;
    for (Reading& r : in.readings) r.reading = Length::mm(row.lash_mm / k);
    lash_temperature::Conditions c;
    c.gear1 = c.gear2 = Expansion::ppm_per_kelvin(row.gears_ppm);
    c.warm_up_gears = Temperature::celsius(20.0 + row.gears_k);
    c.warm_up_case = Temperature::celsius(20.0 + row.case_k);
    in.temperatures = c;
    const Result r = solved(in);
    EXPECT_NEAR(r.states[2].lowest.in_mm(), row.warm_mm, 5e-11);
    EXPECT_NEAR(r.outcome.figure("warm_up_highest")->base, row.warm_mm, 5e-11);
    EXPECT_FALSE(has(r.outcome.findings, 1260));
  }
}

TEST(Backlash, TemperaturesNobodyEnteredAreSaid) {
  Input in = sound();
  in.temperatures.reset();
  EXPECT_TRUE(has_finding(in, 1260));
  EXPECT_FALSE(has_finding(in, 1152));
  in.temperatures.emplace();
  in.temperatures->gear2 = Expansion::ppm_per_kelvin(18.0);
  EXPECT_FALSE(has_finding(in, 1260));
  EXPECT_TRUE(has_finding(in, 1152)) << "gears of unlike metals";
}

TEST(Backlash, PlayEntersByTheTangent) {
  Input in = plate_mesh();
  in.module = Module::mm(1.0);
  in.centre_distance = Length::mm(30.0);  // α_w = 20°
  read_at(in, {0, 120, 240, 360, 480, 600}, {1, 1, 1, 1, 1, 1});
  in.graduation = Length::mm(1e-9);
  in.play1 = Length::thou(1.5);
  in.play2 = Length::thou(1.0);
  EXPECT_NEAR(solved(in).lowest.uncertainty.in_thou(), 2.0 * oracle::play_thou / std::sqrt(3.0), 1e-9);
}

// ---- by subtraction ----

// A train made of angles: crank held, the rear cam turns by the outer lash, the front cam by that and the inner lash.
Input by_subtraction(const std::vector<double>& inner_mm, const std::vector<double>& outer_mm) {
  Input in = plate_mesh();
  in.access = Access::Subtraction;
  in.outer = {Length::mm(25.4), Length::mm(0.002)};
  const double r_i = 38.12 / 2.0;
  in.readings.clear();
  for (std::size_t i = 0; i < inner_mm.size(); ++i) {
    const double front_cam_rad = outer_mm[i] / 25.4 + inner_mm[i] / r_i;
    const double swing = front_cam_rad * in.contact_radius->in_mm();
    in.readings.push_back({Angle::deg(120.0 * static_cast<double>(i)), {}, Length::mm(swing), Length::mm(outer_mm[i])});
  }
  return in;
}

TEST(Backlash, SubtractionFindsTheInnerLashOfASyntheticTrain) {
  const std::vector<double> inner{0.03, 0.04, 0.05, 0.045, 0.03, 0.02};
  const Input in = by_subtraction(inner, {0.05, 0.06, 0.04, 0.03, 0.05, 0.07});
  const Result r = solved(in);
  for (std::size_t i = 0; i < inner.size(); ++i) EXPECT_NEAR(r.points[i].lash.in_mm(), inner[i], 1e-15);
  EXPECT_NEAR(r.outcome.figure("true_lash[2]")->base, 0.05, 1e-15);
}

TEST(Backlash, SubtractionCarriesTheOuterUncertainty) {
  Input in = by_subtraction({0.03, 0.03, 0.03, 0.03, 0.03, 0.03}, {0.05, 0.05, 0.05, 0.05, 0.05, 0.05});
  in.graduation = Length::mm(1e-9);
  in.play1 = in.play2 = Length{};
  // u(j_o) = 0.001; scaled by r_i/r_o; half of the variance is left with three unknowns from six positions.
  EXPECT_NEAR(solved(in).lowest.uncertainty.in_mm(), 2.0 * 0.001 * 19.06 / 25.4 * std::sqrt(0.5), 1e-9);
}

TEST(Backlash, SubtractionAsksForWhatItNeeds) {
  Input in = by_subtraction({0.03, 0.03, 0.03, 0.03, 0.03, 0.03}, {0.05, 0.05, 0.05, 0.05, 0.05, 0.05});
  Input lacking = in;
  lacking.readings[3].outer_lash.reset();
  EXPECT_TRUE(refused(lacking, 1225, "readings[3].outer_lash"));
  lacking = in;
  lacking.outer.reset();
  EXPECT_TRUE(refused(lacking, 201, "outer"));
  lacking = in;
  lacking.rocked = Rocked::Gear1;
  EXPECT_TRUE(refused(lacking, 1226, "rocked"));
  Input crank = crank_mesh();
  crank.access = Access::Subtraction;
  crank.outer = in.outer;
  EXPECT_TRUE(refused(crank, 1224, "access"));
  EXPECT_TRUE(
      has_finding(by_subtraction({-0.03, 0.03, 0.03, 0.03, 0.03, 0.03}, {0.05, 0.05, 0.05, 0.05, 0.05, 0.05}), 1242));
}

// ---- access ----

TEST(Backlash, ByFeelIsLoggedAndNeverWithin) {
  Input in = sound();
  in.access = Access::ByFeel;
  in.readings.clear();
  in.contact.reset();
  in.contact_radius.reset();
  in.graduation.reset();
  EXPECT_TRUE(refused(in, 201, "feel"));
  for (const Feel feel : {Feel::Tight, Feel::JustFelt, Feel::Loose}) {
    in.feel = feel;
    const Result r = solved(in);
    EXPECT_TRUE(r.by_feel);
    EXPECT_EQ(r.outcome.judgement->verdict, Verdict::NotProven);
    EXPECT_EQ(r.outcome.figure("lowest"), nullptr);
    EXPECT_TRUE(doubted(in, 1241, "access"));
  }
  EXPECT_FALSE(has_finding(sound(), 1241));
  EXPECT_EQ(solved(in).outcome.figure("feel")->text, "loose");
  in.window.reset();
  EXPECT_FALSE(solved(in).outcome.judgement);
}

TEST(Backlash, OnTheBenchIsDoubtful) {
  Input in = plate_mesh();
  in.window = window_of(0.1, 9.0);
  in.window->method.place = Place::OnBench;
  in.access = Access::Bench;
  EXPECT_TRUE(doubted(in, 1240, "access"));
  EXPECT_FALSE(has_finding(in, 1252)) << "the sheet means the bench as well";
  EXPECT_EQ(verdict(in), Verdict::NotProven);
}

TEST(Backlash, NoFlankIsReachedBehindThePlate) {
  Input in = plate_mesh();
  in.contact = Contact::ToothFlank;
  in.contact_radius = Length::mm(19.06);
  EXPECT_TRUE(refused(in, 1223, "contact"));
  in.access = Access::Bench;
  EXPECT_TRUE(solve(in));
}

// ---- verdict ----

TEST(Backlash, NoWindowNoVerdict) {
  const Result r = solved(crank_mesh());
  EXPECT_FALSE(r.outcome.judgement);
  EXPECT_FALSE(r.outcome.figure("lowest")->verdict);
}

TEST(Backlash, ThreeVerdicts) {
  Input in = sound();
  EXPECT_EQ(verdict(in), Verdict::Within);
  const Result r = solved(in);
  EXPECT_EQ(r.outcome.judgement->source.text(), "sheet of the gear set");
  EXPECT_EQ(r.outcome.figure("lowest")->verdict, Verdict::Within);
  in.window = window_of(0.2, r.highest.lash.in_thou());
  EXPECT_EQ(verdict(in), Verdict::NotProven);
  EXPECT_EQ(solved(in).outcome.figure("lowest")->verdict, Verdict::Within);
  EXPECT_EQ(solved(in).outcome.judgement->figure, "highest");
  in.window = window_of(0.1, 0.5);
  EXPECT_EQ(verdict(in), Verdict::Outside);
  EXPECT_TRUE(has_finding(in, 1259));
  in.window = window_of(2.5, 3.5);
  EXPECT_EQ(verdict(in), Verdict::Outside);
  EXPECT_TRUE(has_finding(in, 1258));
}

TEST(Backlash, MeetingALimitExactlyIsWithin) {
  Input in = crank_mesh();
  const Result r = solved(in);
  const Length low = r.lowest.lash - r.lowest.uncertainty;
  const Length high = r.highest.lash + r.highest.uncertainty;
  in.window = window_of(low.in_thou(), high.in_thou());
  EXPECT_EQ(verdict(in), Verdict::Within);
  in.window->min = low + Length::mm(1e-8);
  EXPECT_EQ(verdict(in), Verdict::NotProven);
  in.window->min = low;
  in.window->max = high - Length::mm(1e-8);
  EXPECT_EQ(verdict(in), Verdict::NotProven);
}

TEST(Backlash, TouchingALimitFromBeyondIsNotYetOutside) {
  Input in = crank_mesh();
  const Result r = solved(in);
  in.window = window_of(0.0, 9.0);
  in.window->min = r.lowest.lash + r.lowest.uncertainty;
  EXPECT_EQ(verdict(in), Verdict::NotProven);
  in.window->min = *in.window->min + Length::mm(1e-8);
  EXPECT_EQ(verdict(in), Verdict::Outside);
}

TEST(Backlash, GuardIsAShareOfTheUncertainty) {
  Input in = crank_mesh();
  const Result r = solved(in);
  in.window = window_of(0.0, 9.0);
  in.window->min = r.lowest.lash - 0.5 * r.lowest.uncertainty;
  EXPECT_EQ(verdict(in), Verdict::NotProven);
  in.guard = 0.5;
  EXPECT_EQ(verdict(in), Verdict::Within);
}

TEST(Backlash, AWindowForAnotherMethodProvesNothing) {
  const auto with = [](const auto& change) {
    Input in = sound();
    change(in.window->method);
    return in;
  };
  for (const Input& in :
       {with([](auto& m) { m.place = Place::OnBench; }), with([](auto& m) { m.plate_torqued = false; }),
        with([](auto& m) { m.engine = Engine::Hot; }), with([](auto& m) { m.spots = Spots::OneSpot; }),
        with([](auto& m) { m.line = Line::SquareToFlank; })}) {
    EXPECT_TRUE(doubted(in, 1252, "window.method"));
    const Result r = solved(in);
    EXPECT_EQ(r.outcome.judgement->verdict, Verdict::NotProven);
    EXPECT_NE(r.outcome.judgement->reason.find("another way"), std::string::npos);
  }
  EXPECT_TRUE(has_finding(with([](auto& m) { m.line = Line::SquareToFlank; }), 1256));
  EXPECT_TRUE(doubted(with([](auto& m) { m = {}; }), 1254, "window.method"));
  Input silent = sound();
  silent.method.plate_torqued.reset();
  EXPECT_TRUE(doubted(silent, 1253, "method"));
  EXPECT_EQ(verdict(silent), Verdict::NotProven);
  silent.window->method.plate_torqued.reset();
  EXPECT_EQ(verdict(silent), Verdict::Within) << "the sheet does not ask for it";
}

TEST(Backlash, AnotherMethodStopsOutsideToo) {
  Input in = sound();
  in.window = window_of(2.5, 3.5);
  in.window->method.engine = Engine::Hot;
  EXPECT_EQ(verdict(in), Verdict::NotProven);
}

TEST(Backlash, OneSpotIsJudgedAgainstAWindowForOneSpot) {
  Input in = sound();
  in.window->method.spots = Spots::OneSpot;
  read_at(in, {0, 0, 0}, {1.4, 1.5, 1.6});
  const Result r = solved(in);
  EXPECT_EQ(r.outcome.judgement->verdict, Verdict::Within);
  EXPECT_EQ(r.positions, 1u);
  EXPECT_FALSE(has(r.outcome.findings, 1207));
  in.window->method.spots = Spots::RoundTheTurn;
  EXPECT_EQ(verdict(in), Verdict::NotProven);
  EXPECT_TRUE(has_finding(in, 1207));
}

TEST(Backlash, WindowsOfStatesAreJudgedInTheirState) {
  Input in = crank_mesh();
  const Result r = solved(in);
  EXPECT_EQ(r.tightest, State::ColdestStart);
  EXPECT_EQ(r.loosest, State::FullyHot);
  const Source sheet = Source::makers_sheet("sheet of the gear set");
  const Length low = r.states[1].lowest - r.states[1].lowest_uncertainty;
  const Length high = r.states[3].highest + r.states[3].highest_uncertainty;
  in.state_windows = {{State::ColdestStart, low, {}, sheet}, {State::FullyHot, {}, high, sheet}};
  EXPECT_EQ(verdict(in), Verdict::Within);
  in.state_windows[0].min = low + Length::mm(1e-6);
  EXPECT_EQ(verdict(in), Verdict::NotProven);
  EXPECT_EQ(solved(in).outcome.judgement->figure, "cold_lowest");
  in.state_windows[1].max = r.states[3].highest - r.states[3].highest_uncertainty - Length::mm(1e-6);
  EXPECT_EQ(verdict(in), Verdict::Outside);
  EXPECT_EQ(solved(in).outcome.judgement->figure, "hot_highest");
}

TEST(Backlash, WindowsThatCannotBeAreRefused) {
  Input in = sound();
  in.window = window_of(3.0, 2.0);
  EXPECT_TRUE(refused(in, 1251, "window"));
  in.window->min.reset();
  in.window->max.reset();
  EXPECT_TRUE(refused(in, 1250, "window"));
  in = sound();
  in.window->source.reset();
  EXPECT_TRUE(refused(in, 201, "window.source"));
  in = sound();
  in.state_windows.push_back({State::WarmUp, {}, {}, Source::memory()});
  EXPECT_TRUE(refused(in, 1250, "state_windows[0]"));
}

TEST(Backlash, AWindowTooNarrowToProveIsSaidSo) {
  Input in = sound();
  EXPECT_FALSE(has_finding(in, 1255));
  in.graduation = Length::thou(1.0);
  in.window = window_of(0.5, 1.0);
  EXPECT_TRUE(has_finding(in, 1255));
}

// A cold sheet's window says nothing of the hot lash that stands beside it; a window for that state judges it.
TEST(Backlash, ALashOutsideOfAColdWindowIsSaidToBeUnjudged) {
  Input in = sound();
  const Result r = solved(in);
  in.window = window_of(0.0, r.highest.lash.in_thou() + 0.1);
  ASSERT_GT(r.states[3].highest, *in.window->max) << "hot, the lash grows past it";
  EXPECT_TRUE(has_finding(in, 1257));
  in.state_windows = {{State::FullyHot, {}, Length::thou(20.0), Source::memory()}};
  EXPECT_FALSE(has_finding(in, 1257));
  in.state_windows.clear();
  in.window->max = Length::thou(20.0);
  EXPECT_FALSE(has_finding(in, 1257));
}

TEST(Backlash, FingersOutOfOpenGearsUnlessOnTheBench) {
  Input in = sound();
  EXPECT_TRUE(has_finding(in, 1911));
  in.access = Access::Bench;
  EXPECT_FALSE(has_finding(in, 1911));
}

// ---- doubts ----

TEST(Backlash, LoadsOnProveNothing) {
  Input in = sound();
  in.loads_off = false;
  EXPECT_TRUE(doubted(in, 1210, "loads_off"));
  EXPECT_EQ(verdict(in), Verdict::NotProven);
  in.window = window_of(5.0, 9.0);
  EXPECT_EQ(verdict(in), Verdict::NotProven) << "a rod pressing on a lobe reads too tight";
}

TEST(Backlash, AllZeroAsksForTheRods) {
  Input in = sound();
  for (Reading& r : in.readings) r.reading = Length{};
  EXPECT_EQ(finding(in, 1211).severity, Severity::Caution);
  EXPECT_EQ(verdict(in), Verdict::Outside) << "the teeth are jammed when the loads really are off";
  in.loads_off = false;
  EXPECT_TRUE(doubted(in, 1211, "readings"));
  EXPECT_EQ(verdict(in), Verdict::NotProven);
}

TEST(Backlash, NegativeMeansTheDialMoved) {
  Input in = sound();
  in.readings[4].reading = Length::thou(-0.5);
  in.readings[6].reading = Length::thou(-0.2);
  EXPECT_TRUE(doubted(in, 1212, "readings[4].reading"));
  EXPECT_NE(finding(in, 1212).text.find("2 readings are below 0"), std::string::npos);
  EXPECT_EQ(verdict(in), Verdict::NotProven);
}

TEST(Backlash, UnitsMixedUpAreCaughtBothWays) {
  Input in = sound();
  in.readings[2].reading = Length::inches(1.4);
  EXPECT_TRUE(refused(in, 1213, "readings[2].reading"));
  in.readings[2].reading = Length::thou(0.0014);
  EXPECT_TRUE(doubted(in, 1214, "readings[2].reading"));
  in.readings[2].reading = Length::thou(30.0);
  EXPECT_TRUE(has_finding(in, 1216));
}

TEST(Backlash, DialWrapIsAskedAbout) {
  Input in = sound();
  in.graduation = Length::thou(0.5);
  in.needle_turn = Length::thou(100.0);
  in.readings[5].reading = Length::thou(98.4);
  EXPECT_TRUE(doubted(in, 1215, "readings[5].reading"));
  EXPECT_NE(finding(in, 1215).remedy.find("0.00160 in"), std::string::npos) << finding(in, 1215).remedy;
  EXPECT_EQ(verdict(in), Verdict::NotProven);
  in.needle_turn.reset();
  in.readings[5].reading = Length::thou(48.4);
  EXPECT_TRUE(has_finding(in, 1215)) << "100 graduations to a turn unless said";
  in.readings[5].reading = Length::thou(1.6);
  EXPECT_FALSE(has_finding(in, 1215));
}

TEST(Backlash, PlayNotGivenIsADoubt) {
  Input in = sound();
  in.play2.reset();
  EXPECT_TRUE(doubted(in, 1230, "play2"));
  EXPECT_EQ(verdict(in), Verdict::NotProven);
  in = sound();
  in.play1 = Length::thou(2.5);
  EXPECT_EQ(finding(in, 1232).severity, Severity::Caution);
}

TEST(Backlash, RockedHardStopsAllButTooTight) {
  Input in = sound();
  in.force = Force::Hard;
  EXPECT_TRUE(doubted(in, 1231, "force"));
  EXPECT_EQ(verdict(in), Verdict::NotProven);
  in.window = window_of(0.1, 0.5);
  EXPECT_EQ(verdict(in), Verdict::NotProven) << "sideways play reads as lash";
  in.window = window_of(3.0, 4.0);
  EXPECT_EQ(verdict(in), Verdict::Outside);
}

// ---- positions ----

TEST(Backlash, OneTurnOnlyStopsWithinButNotOutside) {
  Input in = sound();
  read_at(in, {0, 45, 90, 135, 180, 225, 270, 315}, {1.5, 1.8, 1.4, 1.1, 1.3, 1.6, 1.2, 0.9});
  EXPECT_TRUE(doubted(in, 1206, "readings"));
  EXPECT_EQ(verdict(in), Verdict::NotProven);
  in.window = window_of(3.0, 4.0);
  EXPECT_EQ(verdict(in), Verdict::Outside) << "one position proven too tight is enough";
}

TEST(Backlash, TurnAndAngleWithinItMeanTheSameAsZeroTo720) {
  Input in = sound();
  const Result plain = solved(in);
  for (Reading& r : in.readings) {
    r.turn = r.angle->in_deg() < 360.0 ? 1 : 2;
    if (*r.turn == 2) r.angle = *r.angle - Angle::deg(360.0);
  }
  const Result by_turn = solved(in);
  EXPECT_NEAR(by_turn.lowest.lash.in_mm(), plain.lowest.lash.in_mm(), 1e-15);
  EXPECT_NEAR(by_turn.lowest.crank.in_deg(), plain.lowest.crank.in_deg(), 1e-9);
  in.readings[3].turn.reset();
  EXPECT_TRUE(refused(in, 1201, "readings[3].turn"));
  in.readings[3].turn = 1;
  in.readings[6].angle = Angle::deg(540.0);
  EXPECT_TRUE(refused(in, 1202, "readings[6].angle"));
}

TEST(Backlash, BackAtTheStartIsAClosingReading) {
  Input in = sound();
  const Result without = solved(in);
  in.readings.push_back({Angle::deg(720.0), {}, Length::thou(1.55), {}});
  const Result with = solved(in);
  EXPECT_EQ(with.lowest.lash, without.lowest.lash);
  EXPECT_EQ(with.lowest.uncertainty, without.lowest.uncertainty);
  EXPECT_EQ(with.positions, 8u);
  EXPECT_TRUE(with.points[8].closing);
  EXPECT_TRUE(has(with.outcome.findings, 1204));
  EXPECT_FALSE(has(with.outcome.findings, 1205));
  in.readings[8].reading = Length::thou(1.9);
  EXPECT_EQ(finding(in, 1205).severity, Severity::Caution);
}

TEST(Backlash, A360RepeatedInOneTurnIsAClosingReadingToo) {
  Input in = sound();
  read_at(in, {0, 90, 180, 270, 360}, {1.5, 1.8, 1.4, 1.1, 1.5});
  EXPECT_TRUE(has_finding(in, 1204));
  EXPECT_TRUE(has_finding(in, 1206));
  EXPECT_EQ(solved(in).positions, 4u);
}

TEST(Backlash, TooFewOrTooUnevenPositions) {
  Input in = sound();
  read_at(in, {0, 144, 288, 432, 576}, {1.5, 1.8, 1.4, 1.1, 1.3});
  EXPECT_TRUE(doubted(in, 1207, "readings"));
  EXPECT_FALSE(solved(in).curve.fitted);
  read_at(in, {0, 90, 180, 270, 360, 450}, {1.5, 1.8, 1.4, 1.1, 1.3, 1.6});
  EXPECT_TRUE(doubted(in, 1208, "readings"));
  read_at(in, {0, 120, 240, 360, 480, 600}, {1.5, 1.8, 1.4, 1.1, 1.3, 1.6});
  EXPECT_FALSE(has_finding(in, 1207));
  EXPECT_FALSE(has_finding(in, 1208));
  Input plate = plate_mesh();
  read_at(plate, {0, 180, 360, 540}, {1.5, 1.8, 1.4, 1.1});
  EXPECT_FALSE(has_finding(plate, 1207));
  EXPECT_FALSE(has_finding(plate, 1208));
  EXPECT_TRUE(solved(plate).curve.fitted);
  read_at(plate, {0, 240, 480}, {1.5, 1.8, 1.4});
  EXPECT_TRUE(doubted(plate, 1207, "readings"));
}

// Half a degree apart is the closest that two positions can be: five of them and one far away leave the least.
TEST(Backlash, PositionsInABunchStillGiveACurve) {
  Input in = sound();
  read_at(in, {0, 0.51, 1.02, 1.53, 2.04, 362}, {1.5, 1.5, 1.5, 1.5, 1.5, 1.4});
  EXPECT_TRUE(doubted(in, 1208, "readings"));
  EXPECT_TRUE(solved(in).curve.fitted);
}

TEST(Backlash, TightSpotIsNamedByToothAndTurn) {
  Input in = crank_mesh();
  const double k = solved(in).lash_per_reading;
  const double tight = Angle::deg(450.0).in_rad();
  read_curve(in, {0, 90, 180, 270, 360, 450, 540, 630}, k,
             [&](double t) { return 0.04 - 0.01 * std::cos(t - tight) - 0.01 * std::cos(0.5 * (t - tight)); });
  const Result r = solved(in);
  EXPECT_NEAR(r.lowest.crank.in_deg(), 450.0, 1e-5);
  EXPECT_EQ(r.tight_tooth2, 26);  // 450/720 of 40 teeth on, the tooth at the mark being 1
  EXPECT_EQ(r.tight_tooth1, 6);   // 25 teeth on, 20 to a turn
  EXPECT_EQ(r.outcome.figure("tight_spot")->text, "turn 2, 90°");
  EXPECT_EQ(r.outcome.figure("tight_tooth")->base, 26.0);
  in.turned = Turned::Backward;
  EXPECT_NEAR(solved(in).lowest.crank.in_deg(), 270.0, 1e-5);
}

// ---- mesh ----

TEST(Backlash, RatioOfMeshAndTrain) {
  Input in = sound();
  in.teeth2 = 41;
  EXPECT_TRUE(refused(in, 1105, "teeth2"));
  in = plate_mesh();
  in.teeth2 = 31;
  EXPECT_TRUE(refused(in, 1106, "teeth2"));
  in = sound();
  in.train = {{20, 40}, {30, 30}};
  EXPECT_EQ(verdict(in), Verdict::Within);
  in.train = {{20, 40}, {30, 31}};
  EXPECT_TRUE(refused(in, 1105, "train"));
  in.train = {{22, 44}, {30, 30}};
  EXPECT_TRUE(doubted(in, 1228, "train"));
  in.train = {{20, 40}, {999, 1000}, {1000, 999}};
  EXPECT_EQ(verdict(in), Verdict::Within);
  in.train.assign(7, {30, 30});
  EXPECT_TRUE(refused(in, 200, "train"));
}

TEST(Backlash, PitchAndTeethThatMissTheCentresAreAskedAbout) {
  Input in = sound();
  in.centre_distance = Length::mm(38.4);
  EXPECT_TRUE(doubted(in, 1102, "centre_distance"));
  EXPECT_EQ(verdict(in), Verdict::NotProven);
  in.sizes_confirmed = true;
  EXPECT_EQ(verdict(in), Verdict::Within);
  in.centre_distance = Length::mm(30.0);
  EXPECT_TRUE(refused(in, 1101, "centre_distance"));
}

TEST(Backlash, DiameterTypedForRadius) {
  Input in = sound();
  in.contact_radius = Length::inches(2.0 * 1.3);  // 2 r_w is 2.0 in
  EXPECT_TRUE(doubted(in, 1220, "contact_radius"));
  in.contact_radius = Length::inches(2.0);
  EXPECT_TRUE(doubted(in, 1220, "contact_radius"));
  in.sizes_confirmed = true;
  EXPECT_TRUE(has_finding(in, 1227));
  EXPECT_FALSE(has_finding(in, 1220));
  in = sound();
  in.contact = Contact::ToothFlank;
  in.contact_radius = Length::inches(2.0);
  EXPECT_TRUE(refused(in, 1221, "contact_radius"));
  EXPECT_NE(finding(in, 1221).remedy.find("Diameter"), std::string::npos);
  in.contact_radius = Length::inches(1.25);
  EXPECT_TRUE(refused(in, 1221, "contact_radius"));
  EXPECT_EQ(finding(in, 1221).remedy.find("Diameter"), std::string::npos);
}

TEST(Backlash, IndicatorAngle) {
  Input in = sound();
  in.indicator_angle = Angle::deg(15.0);
  EXPECT_FALSE(has_finding(in, 1222));
  in.indicator_angle = Angle::deg(-16.0);
  EXPECT_EQ(finding(in, 1222).severity, Severity::Caution);
  in.indicator_angle = Angle::deg(61.0);
  EXPECT_TRUE(refused(in, 200, "indicator_angle"));
  in = sound();
  in.contact = Contact::ToothFlank;
  in.contact_radius = Length::inches(1.0);
  for (const double good : {0.0, 20.0}) {
    in.indicator_angle = Angle::deg(good);
    EXPECT_FALSE(has_finding(in, 1222)) << good;
  }
  in.indicator_angle = Angle::deg(-30.0);
  EXPECT_TRUE(has_finding(in, 1222));
}

TEST(Backlash, NothingIsAssumed) {
  const auto without = [](const auto& change) {
    Input in = sound();
    change(in);
    return in;
  };
  EXPECT_TRUE(refused(without([](Input& in) { in.contact.reset(); }), 201, "contact"));
  EXPECT_TRUE(refused(without([](Input& in) { in.contact_radius.reset(); }), 201, "contact_radius"));
  EXPECT_TRUE(refused(without([](Input& in) { in.indicator_angle.reset(); }), 201, "indicator_angle"));
  EXPECT_TRUE(refused(without([](Input& in) { in.graduation.reset(); }), 201, "graduation"));
  EXPECT_TRUE(refused(without([](Input& in) { in.mesh.reset(); }), 201, "mesh"));
  EXPECT_TRUE(refused(without([](Input& in) { in.access.reset(); }), 201, "access"));
  EXPECT_TRUE(refused(without([](Input& in) { in.readings.clear(); }), 1203, "readings"));
  EXPECT_TRUE(refused(without([](Input& in) { in.readings[1].reading.reset(); }), 201, "readings[1].reading"));
  EXPECT_TRUE(refused(Input{}, 201, "mesh"));
}

TEST(Backlash, NumbersOutOfRangeNameTheirField) {
  Input in = sound();
  in.readings[3].reading = Length::mm(std::numeric_limits<double>::infinity());
  EXPECT_TRUE(refused(in, 202, "readings[3].reading"));
  in = sound();
  in.readings[3].angle = Angle::deg(721.0);
  EXPECT_TRUE(refused(in, 200, "readings[3].angle"));
  in = sound();
  in.teeth1 = 3;
  EXPECT_TRUE(refused(in, 200, "teeth1"));
  in = sound();
  in.play1 = Length::mm(-0.1);
  EXPECT_TRUE(refused(in, 200, "play1"));
}

TEST(Backlash, EveryFigureIsFinite) {
  for (const Input& in : {sound(), plate_mesh()}) {
    const Result r = solved(in);
    for (const Figure& f : r.outcome.figures) {
      EXPECT_TRUE(std::isfinite(f.base)) << f.key;
      EXPECT_TRUE(std::isfinite(f.uncertainty.value_or(0.0))) << f.key;
    }
    EXPECT_GE(r.outcome.working.size(), 10u);
  }
}

TEST(Backlash, AHundredThousandReadingsAreTaken) {
  Input in = sound();
  const std::vector<Reading> eight = in.readings;
  in.readings.clear();
  for (int i = 0; i < 12'500; ++i) in.readings.insert(in.readings.end(), eight.begin(), eight.end());
  const Result r = solved(in);
  EXPECT_EQ(r.positions, 8u);
  EXPECT_NEAR(r.lowest.lash.in_mm(), solved(sound()).lowest.lash.in_mm(), 1e-9);
  EXPECT_EQ(r.outcome.figure("true_lash[0]"), nullptr);
}

}  // namespace
}  // namespace camside::backlash
