#include "calc/gear_pair/gear_pair.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include "calc/answers.hpp"
#include "oracle/gear_pair_rows.hpp"

namespace camside::gear_pair {
namespace {

constexpr double pi = std::numbers::pi;

Input pair_of(double module_mm, int teeth1, int teeth2, double centre_mm) {
  Input in;
  in.module = Module::mm(module_mm);
  in.gear1.teeth = teeth1;
  in.gear2.teeth = teeth2;
  in.centre_distance = Length::mm(centre_mm);
  in.place = Place::Elsewhere;
  return in;
}

// The invented crank mesh of the demo: 17/34 teeth at 16 per inch, 20°, a shade apart.
Input crank_pair() {
  Input in = pair_of(1.0, 17, 34, 40.5);
  in.module = Module::diametral_pitch(16.0);
  in.place = Place::CrankToCam;
  return in;
}

// The finding with this number (and about this field), from a result or from a refusal; number 0 when there is none.
Finding finding(const Input& in, int number, const std::string& field = "") {
  const auto r = solve(in);
  for (const Finding& f : r ? r->outcome.findings : r.error())
    if (f.number == number && (field.empty() || f.field == field)) return f;
  return {};
}
TEST(GearPair, LashAgainstCentreDistanceMeetsTheRows) {
  for (const auto& row : oracle::lash_rows) {
    const Result r = solved(pair_of(2.0, 20, 40, 60.0 + row.more_centre_mm));
    EXPECT_NEAR(r.lash.in_mm(), row.lash_mm, 1e-10);
    EXPECT_NEAR(r.lash_normal.in_mm(), row.lash_normal_mm, 1e-10);
    EXPECT_NEAR(r.operating_angle.in_deg(), row.operating_degrees, 5e-9);
    EXPECT_NEAR(2.0 * row.more_centre_mm * std::tan(Angle::deg(20).in_rad()), row.straight_line_mm, 5e-11);
    EXPECT_GT(r.lash.in_mm(), row.straight_line_mm);
  }
}

TEST(GearPair, ThinningTheTeethGivesThatMuchLash) {
  Input in = pair_of(2.0, 20, 40, 60.0);
  for (Gear* g : {&in.gear1, &in.gear2}) {
    g->thickness_from = ThicknessFrom::Thickness;
    g->thickness = Length::mm(pi - 0.05);
  }
  const Result r = solved(in);
  EXPECT_NEAR(r.lash.in_mm(), 0.1, 1e-13);
  EXPECT_NEAR(r.lash_normal.in_mm(), 0.0939692621, 5e-11);
}

TEST(GearPair, EnlargedCentreDistanceOfATextbook) {
  Input in = pair_of(1.0, 16, 40, 1.0);
  in.module = Module::diametral_pitch(2.0);
  in.centre_distance = Length::inches(14.25);
  const Result r = solved(in);
  EXPECT_NEAR(r.operating_angle.in_deg(), 22.600512, 5e-7);
  EXPECT_GT(std::abs(r.operating_angle.in_deg() - 22.56), 0.01) << "22.56 is a rounding product of the book";
  EXPECT_NEAR(r.gear1.base_radius.in_inches(), 3.758770, 5e-7);
  EXPECT_NEAR(r.gear2.base_radius.in_inches(), 9.396926, 5e-7);
  EXPECT_NEAR(2.0 * r.gear1.operating_radius.in_inches(), 8.142857, 5e-7);
  EXPECT_NEAR(2.0 * r.gear2.operating_radius.in_inches(), 20.357143, 5e-7);
}

Input shifted_pair(double centre_mm) {
  Input in = pair_of(3.0, 12, 24, centre_mm);
  in.gear1.profile_shift = 0.6;
  in.gear2.profile_shift = 0.36;
  in.gear1.tip_diameter = Length::mm(44.840);
  in.gear2.tip_diameter = Length::mm(79.400);
  in.gear1.root_diameter = Length::mm(44.840 - 2.0 * 6.370);
  in.gear2.root_diameter = Length::mm(79.400 - 2.0 * 6.370);
  return in;
}

TEST(GearPair, ShiftedPairHasNoLashAtItsPublishedCentreDistance) {
  const Result r = solved(shifted_pair(56.4998697));
  EXPECT_NEAR(r.lash.in_mm(), 0.0, 2e-7);
  EXPECT_NEAR(r.operating_angle.in_deg(), 26.08856, 5e-6);
  EXPECT_NEAR(2.0 * r.gear1.operating_radius.in_mm(), 37.66657981, 5e-8);
  EXPECT_NEAR(2.0 * r.gear2.base_radius.in_mm(), 67.65786870, 5e-9);
  EXPECT_FALSE(has(r.outcome.findings, 1102)) << "shifted gears ask for that centre distance";
}

TEST(GearPair, ShiftedPairOnARoundCentreDistance) {
  const Result r = solved(shifted_pair(56.5));
  EXPECT_NEAR(r.operating_angle.in_deg(), 26.08883326, 5e-9);
  EXPECT_NEAR(2.0 * r.gear1.operating_radius.in_mm(), 37.666667, 5e-7);
  EXPECT_NEAR(r.gear1.profile_shift + r.gear2.profile_shift, 0.96, 1e-14);
}

TEST(GearPair, ContactRatioMeetsItsRow) {
  EXPECT_NEAR(solved(pair_of(2.0, 24, 48, 72.0)).contact_ratio, 1.6747051481919764, 1e-12);
}

TEST(GearPair, RadialLashAndTheTurnOfEachGear) {
  const Result r = solved(pair_of(2.0, 30, 30, 60.05));
  EXPECT_NEAR(r.lash_radial.in_mm(), 0.0498446248, 5e-11);
  EXPECT_NEAR(r.gear1.turn.in_deg() * 60.0, 4.18387, 5e-6);
  EXPECT_DOUBLE_EQ(r.gear1.turn.in_rad(), r.gear2.turn.in_rad());
}

TEST(GearPair, RuleOfThumbForCentreDistance) {
  // 1/(2 tan α): 1.933 at 14.5°, 1.374 at 20° (Elements of Metric Gear Technology, section 14).
  for (const auto& [degrees, factor] : {std::pair{14.5, 1.93335655}, std::pair{20.0, 1.37373871}}) {
    Input in = pair_of(2.0, 30, 30, 60.0);
    in.pressure_angle = Angle::deg(degrees);
    in.centre_distance = Length::mm(60.0 + 1e-9);
    EXPECT_NEAR(1.0 / solved(in).lash_per_centre, factor, 1e-7);
  }
}

// --- four ways to one thickness ---

TEST(GearPair, EveryWayOfMeasuringTheToothGivesOneLash) {
  Input in = crank_pair();
  const Result by_shift = solved(in);
  const auto f1 = involute::form(17, in.module, in.pressure_angle, in.helix);
  const double s1 = by_shift.gear1.thickness.in_mm();
  const double pin_mm = 1.728 / 16.0 * 25.4;

  in.gear1.thickness_from = ThicknessFrom::OverPins;
  in.gear1.pin_diameter = Length::mm(pin_mm);
  in.gear1.over_pins = Length::mm(involute::pin_seat(f1, s1, pin_mm)->over_pins_mm);
  EXPECT_NEAR(solved(in).lash.in_mm(), by_shift.lash.in_mm(), 1e-12);

  in.gear1.thickness_from = ThicknessFrom::Span;
  in.gear1.span_teeth = 3;
  in.gear1.span = Length::mm(involute::span_mm(f1, s1, 3));
  EXPECT_NEAR(solved(in).lash.in_mm(), by_shift.lash.in_mm(), 1e-12);

  in.gear1.thickness_from = ThicknessFrom::AsFitted;
  in.measured_lash = by_shift.lash;
  EXPECT_NEAR(solved(in).gear1.thickness.in_mm(), s1, 1e-12);
}

TEST(GearPair, BothAsFittedShareTheThinningEqually) {
  Input in = crank_pair();
  const Result nominal = solved(in);
  in.gear1.thickness_from = in.gear2.thickness_from = ThicknessFrom::AsFitted;
  in.measured_lash = nominal.lash + Length::mm(0.04);
  const Result both = solved(in);
  EXPECT_NEAR(both.lash.in_mm(), in.measured_lash->in_mm(), 1e-12);
  EXPECT_NEAR((nominal.gear1.operating_thickness - both.gear1.operating_thickness).in_mm(), 0.02, 1e-12);
  EXPECT_NEAR((nominal.gear2.operating_thickness - both.gear2.operating_thickness).in_mm(), 0.02, 1e-12);
  EXPECT_TRUE(has(both.outcome.findings, 1142));
}

TEST(GearPair, AsFittedNeedsTheMeasuredLash) {
  Input in = crank_pair();
  in.gear1.thickness_from = ThicknessFrom::AsFitted;
  EXPECT_TRUE(refused(in, 201, "measured_lash"));
}

TEST(GearPair, MissingSizesAreNamed) {
  Input in = crank_pair();
  in.gear2.thickness_from = ThicknessFrom::OverPins;
  EXPECT_TRUE(refused(in, 201, "gear2.over_pins"));
  EXPECT_TRUE(refused(in, 201, "gear2.pin_diameter"));
  in.gear2.thickness_from = ThicknessFrom::Span;
  EXPECT_TRUE(refused(in, 201, "gear2.span_teeth"));
  in.gear2.thickness_from = ThicknessFrom::Thickness;
  EXPECT_TRUE(refused(in, 201, "gear2.thickness"));
}

TEST(GearPair, HelicalPairIsWorkedInTheTransversePlane) {
  Input in = pair_of(2.0, 24, 48, 72.0 / std::cos(Angle::deg(15).in_rad()));
  in.helix = Angle::deg(15.0);
  in.gear1.profile_shift = 0.2;  // in normal modules
  in.gear2.profile_shift = -0.2;
  const Result r = solved(in);
  EXPECT_NEAR(r.lash.in_mm(), 0.0, 1e-13);
  EXPECT_NEAR(r.transverse_angle.in_deg(), r.operating_angle.in_deg(), 1e-9);
  in.centre_distance = in.centre_distance + Length::mm(0.05);
  const Result apart = solved(in);
  EXPECT_NEAR(apart.lash_normal / apart.lash,
              std::cos(apart.operating_angle.in_rad()) * std::cos(apart.base_helix.in_rad()), 1e-14);
}

// --- typing mistakes and impossible pairs ---

TEST(GearPair, ThreeTeethAreRefused) {
  Input in = crank_pair();
  in.gear1.teeth = 3;
  EXPECT_TRUE(refused(in, 200, "gear1.teeth"));
  in.gear1.teeth = 0;
  EXPECT_FALSE(solve(in));
}

TEST(GearPair, NumbersThatAreNoneAreRefused) {
  for (const double bad : {std::numeric_limits<double>::infinity(), std::nan("")}) {
    Input in = crank_pair();
    in.centre_distance = Length::mm(bad);
    EXPECT_TRUE(refused(in, 202, "centre_distance"));
    in = crank_pair();
    in.module = Module::mm(bad);
    EXPECT_TRUE(refused(in, 202, "module"));
  }
}

TEST(GearPair, AnglesOutsideTheirRangeAreRefused) {
  Input in = crank_pair();
  in.pressure_angle = Angle{};
  EXPECT_TRUE(refused(in, 200, "pressure_angle"));
  in = crank_pair();
  in.helix = Angle::deg(60.0);
  EXPECT_TRUE(refused(in, 200, "helix"));
}

TEST(GearPair, ATrainThatIsNotTwoToOneIsRefused) {
  Input in = crank_pair();
  in.gear2.teeth = 35;
  EXPECT_TRUE(refused(in, 1105, "gear2.teeth"));
  in = pair_of(2.0, 30, 31, 61.0);
  in.place = Place::CamToCam;
  EXPECT_TRUE(refused(in, 1106, "gear2.teeth"));
  in.place = {};
  EXPECT_TRUE(has(solved(in).outcome.findings, 1107));
}

TEST(GearPair, PitchTypedAsModuleIsSeen) {
  Input in = crank_pair();
  in.module = Module::mm(16.0);  // 16 per inch was meant
  EXPECT_TRUE(refused(in, 1101, "centre_distance"));
  EXPECT_NE(finding(in, 1101).remedy.find("Diametral pitch 16"), std::string::npos) << finding(in, 1101).remedy;
}

TEST(GearPair, MiscountedTeethAreAskedAbout) {
  Input in = crank_pair();
  in.gear2.teeth = 33;
  in.place = Place::Elsewhere;
  in.centre_distance = Length::mm(40.5);
  const Finding f = finding(in, 1102);
  EXPECT_EQ(f.severity, Severity::Doubt);
  EXPECT_NE(f.remedy.find("51 teeth in all"), std::string::npos) << f.remedy;
  in.sizes_confirmed = true;
  EXPECT_EQ(finding(in, 1102).number, 0);
  EXPECT_EQ(finding(in, 1103).number, 1103);
  EXPECT_EQ(finding(in, 1103).severity, Severity::Note);
}

TEST(GearPair, HalfAPercentIsTheBorder) {
  Input in = pair_of(2.0, 30, 30, 60.0 * 1.00499);
  EXPECT_EQ(finding(in, 1102).number, 0);
  in.centre_distance = Length::mm(60.0 * 1.00501);
  EXPECT_EQ(finding(in, 1102).number, 1102);
}

Input pinned(double pin_mm, double over_pins_mm) {
  Input in = pair_of(1.0, 20, 40, 30.02);
  in.gear1.thickness_from = ThicknessFrom::OverPins;
  in.gear1.pin_diameter = Length::mm(pin_mm);
  in.gear1.over_pins = Length::mm(over_pins_mm);
  return in;
}
// Over pins of the same normal tooth for this pin.
double over_pins_of(double pin_mm) {
  return involute::pin_seat(involute::form(20, Module::mm(1.0), Angle::deg(20.0), Angle{}), pi / 2.0, pin_mm)
      ->over_pins_mm;
}

TEST(GearPair, AProperPinIsTaken) {
  EXPECT_NEAR(solved(pinned(1.7, over_pins_of(1.7))).gear1.thickness.in_mm(), pi / 2.0, 1e-12);
}

TEST(GearPair, PinsThatDoNotMeasureAreRefused) {
  EXPECT_TRUE(refused(pinned(1.7, 2.0), 1114, "gear1.over_pins"));
  EXPECT_TRUE(refused(pinned(1.197, over_pins_of(1.197)), 1118, "gear1.pin_diameter"));
  EXPECT_TRUE(refused(pinned(3.6, over_pins_of(3.6)), 1111, "gear1.pin_diameter"));
  EXPECT_TRUE(refused(pinned(1.40, over_pins_of(1.40)), 1113, "gear1.pin_diameter"));
  Input shallow = pinned(1.5, over_pins_of(1.5));
  shallow.gear1.root_diameter = Length::mm(19.0);
  EXPECT_TRUE(refused(shallow, 1112, "gear1.pin_diameter"));
}

TEST(GearPair, APinWhoseCentreIsOnTheBaseCircleTouchesNoFlank) {
  Input in = pinned(1.54, 0.0);
  in.gear1.teeth = 22;
  in.centre_distance = Length::mm(31.02);
  const double base = 2.0 * involute::form(22, Module::mm(1.0), Angle::deg(20.0), Angle{}).base_mm;
  double over_pins = base + 1.54;
  for (int i = 0; i < 300; ++i) {  // whichever way the last bits fall
    over_pins = std::nextafter(over_pins, 2.0 * base);
    if (i < 10) continue;
    in.gear1.over_pins = Length::mm(over_pins);
    EXPECT_TRUE(refused(in, 1118, "gear1.pin_diameter"));
  }
}

TEST(GearPair, MillimetresTypedAsInchesAreRefused) {
  Input in = pinned(1.7, over_pins_of(1.7));
  in.gear1.over_pins = Length::inches(22.294);
  EXPECT_FALSE(solve(in));
}

TEST(GearPair, OddTeethOverPinsAreRemarked) {
  Input in = crank_pair();
  in.gear1.thickness_from = ThicknessFrom::OverPins;
  const auto f1 = involute::form(17, in.module, in.pressure_angle, in.helix);
  in.gear1.pin_diameter = Length::mm(2.7);
  in.gear1.over_pins = Length::mm(involute::pin_seat(f1, pi * f1.module_mm / 2.0, 2.7)->over_pins_mm);
  EXPECT_EQ(finding(in, 1115).field, "gear1.over_pins");
  EXPECT_EQ(finding(in, 1116).number, 0);
}

TEST(GearPair, OddHelicalTeethAreMeasuredOverBalls) {
  Input in = pair_of(2.0, 17, 34, 51.05 / std::cos(Angle::deg(15.0).in_rad()));
  in.helix = Angle::deg(15.0);
  in.gear1.thickness_from = ThicknessFrom::OverPins;
  const auto f1 = involute::form(17, in.module, in.pressure_angle, in.helix);
  in.gear1.pin_diameter = Length::mm(3.4);
  in.gear1.over_pins =
      Length::mm(involute::pin_seat(f1, involute::thickness_from_shift_mm(f1, 0.0), 3.4)->over_pins_mm);
  EXPECT_EQ(finding(in, 1116).field, "gear1.pin_diameter");
  EXPECT_EQ(finding(in, 1115).number, 0);
}

TEST(GearPair, SpansThatTouchNoFlankAreRefused) {
  Input in = pair_of(3.0, 24, 48, 108.1);
  const auto f1 = involute::form(24, in.module, in.pressure_angle, in.helix);
  const auto with_span = [&](int k) {
    in.gear1.thickness_from = ThicknessFrom::Span;
    in.gear1.span_teeth = k;
    in.gear1.span = Length::mm(involute::span_mm(f1, pi * 1.5, k));
    return in;
  };
  EXPECT_TRUE(solve(with_span(3)));
  EXPECT_TRUE(refused(with_span(6), 1120, "gear1.span_teeth"));
  EXPECT_TRUE(refused(with_span(1), 1121, "gear1.span_teeth"));
  EXPECT_TRUE(refused(with_span(24), 1122, "gear1.span_teeth"));
}

TEST(GearPair, WrongNumberOfTeethInTheSpanIsSeen) {
  Input in = pair_of(3.0, 24, 48, 108.1);
  in.gear1.thickness_from = ThicknessFrom::Span;
  in.gear1.span_teeth = 4;
  const auto f1 = involute::form(24, in.module, in.pressure_angle, in.helix);
  in.gear1.span = Length::mm(involute::span_mm(f1, pi * 1.5, 3));
  EXPECT_TRUE(refused(in, 1125, "gear1.span"));
}

TEST(GearPair, AShiftNoGearHasIsDoubted) {
  Input in = pair_of(2.0, 20, 40, 60.05);
  in.gear1.thickness_from = ThicknessFrom::Thickness;
  in.gear1.tip_diameter = Length::mm(44.0);
  in.gear1.root_diameter = Length::mm(35.0);
  in.gear1.thickness = Length::mm(pi - 4.0 * std::tan(in.pressure_angle.in_rad()) * 0.99);
  EXPECT_EQ(finding(in, 1126).number, 0);
  in.gear1.thickness = Length::mm(pi - 4.0 * std::tan(in.pressure_angle.in_rad()) * 1.01);
  EXPECT_EQ(finding(in, 1126).field, "gear1.thickness");
  EXPECT_EQ(finding(in, 1126).severity, Severity::Doubt);
}

TEST(GearPair, ImpossiblePairsSayWhy) {
  Input pointed = pair_of(2.0, 20, 40, 60.05);
  pointed.gear1.tip_diameter = Length::mm(50.0);
  EXPECT_TRUE(refused(pointed, 1130, "gear1.tip_diameter"));

  Input bottoming = pair_of(2.0, 30, 30, 60.05);
  bottoming.gear1.tip_diameter = Length::mm(65.2);
  EXPECT_TRUE(refused(bottoming, 1132, "gear1.tip_diameter"));

  Input interfering = pair_of(2.0, 10, 40, 50.05);
  EXPECT_TRUE(refused(interfering, 1134, "gear2.tip_diameter"));
  EXPECT_NE(finding(interfering, 1134).remedy.find("assumed"), std::string::npos);

  Input apart = pair_of(2.0, 20, 40, 61.5);
  EXPECT_TRUE(refused(apart, 1135, "centre_distance"));
  EXPECT_NE(finding(apart, 1135).text.find("ratio 0.9"), std::string::npos) << finding(apart, 1135).text;

  Input upside_down = pair_of(2.0, 20, 40, 60.05);
  upside_down.gear2.tip_diameter = Length::mm(70.0);
  EXPECT_TRUE(refused(upside_down, 1139, "gear2.tip_diameter"));
}

TEST(GearPair, ThinTipsAndLittleClearanceAreCautions) {
  Input in = pair_of(2.0, 20, 40, 60.05);
  EXPECT_EQ(finding(in, 1131).number, 0);
  EXPECT_EQ(finding(in, 1133).number, 0);
  in.gear1.tip_diameter = Length::mm(44.9);
  EXPECT_EQ(finding(in, 1133).field, "gear1.tip_diameter");
  EXPECT_EQ(finding(in, 1131).number, 0);
  in.gear2.root_diameter = Length::mm(70.0);
  in.gear1.tip_diameter = Length::mm(46.0);
  EXPECT_EQ(finding(in, 1131).field, "gear1.tip_diameter");
  EXPECT_EQ(finding(in, 1133).number, 0);
}

TEST(GearPair, AHelixMayMakeUpForALowContactRatio) {
  const double wider = 1.0 / std::cos(Angle::deg(15.0).in_rad());
  Input in = pair_of(2.0, 20, 40, 60.05 * wider);
  in.helix = Angle::deg(15.0);
  EXPECT_EQ(finding(in, 1137).number, 0);
  in.centre_distance = Length::mm(61.7 * wider);
  EXPECT_LT(solved(in).contact_ratio, 1.0);
  EXPECT_EQ(finding(in, 1137).field, "helix");
}

TEST(GearPair, FiguresBeyondAllNumbersAreRefused) {
  Input in = pair_of(2.0, 200, 200, 401.0);
  for (Gear* g : {&in.gear1, &in.gear2}) {
    g->tip_diameter = Length::mm(403.0);
    g->root_diameter = Length::mm(396.0);
  }
  in.gear1.thickness_from = ThicknessFrom::Thickness;
  in.gear1.thickness = Length::mm(3.0);
  in.pressure_angle = Angle::deg(1e-300);
  EXPECT_EQ(finding(in, 1143).number, 0);
  in.pressure_angle = Angle::deg(1e-308);  // the profile shift divides by its tangent
  EXPECT_TRUE(refused(in, 1143, ""));
}

TEST(GearPair, LowContactRatioIsACaution) {
  Input in = pair_of(2.0, 20, 40, 60.05);
  in.gear1.tip_diameter = Length::mm(41.4);
  EXPECT_EQ(finding(in, 1136).severity, Severity::Caution);
}

TEST(GearPair, NoLashIsAResultAndOutside) {
  const Result r = solved(pair_of(2.0, 20, 40, 59.98));
  EXPECT_LT(r.lash.in_mm(), 0.0);
  ASSERT_TRUE(r.outcome.judgement);
  EXPECT_EQ(r.outcome.judgement->verdict, Verdict::Outside);
  EXPECT_TRUE(has(r.outcome.findings, 1140));
  EXPECT_FALSE(solved(pair_of(2.0, 20, 40, 60.05)).outcome.judgement) << "no window, no verdict";
}

TEST(GearPair, AssumedDiametersAreNamed) {
  EXPECT_EQ(finding(crank_pair(), 1138).field, "gear1");
  EXPECT_EQ(finding(shifted_pair(56.5), 1138).number, 0);
}

TEST(GearPair, MeasuredLashThatWasNotUsedIsSaid) {
  Input in = crank_pair();
  in.measured_lash = Length::mm(0.03);
  EXPECT_EQ(finding(in, 1141).field, "measured_lash");
}

TEST(GearPair, TemperaturesBringTheirFiguresAndWorking) {
  Input in = crank_pair();
  in.temperatures.emplace();
  const Result r = solved(in);
  ASSERT_TRUE(r.forecast);
  ASSERT_TRUE(r.outcome.figure("lash_fully_hot"));
  EXPECT_DOUBLE_EQ(r.outcome.figure("lash_as_measured")->base, r.lash.in_mm());
  EXPECT_GT(r.outcome.figure("lash_fully_hot")->base, r.lash.in_mm());
}

TEST(GearPair, EveryFigureIsFiniteAndHasWords) {
  Input in = crank_pair();
  in.temperatures.emplace();
  const Result r = solved(in);
  for (const Figure& f : r.outcome.figures) {
    EXPECT_TRUE(std::isfinite(f.base)) << f.key;
    EXPECT_FALSE(f.label.empty()) << f.key;
  }
  for (const Step& s : r.outcome.working) EXPECT_FALSE(s.result.empty()) << s.title;
}

}  // namespace
}  // namespace camside::gear_pair
