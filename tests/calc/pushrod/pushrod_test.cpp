#include "calc/pushrod/pushrod.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <limits>
#include <string>
#include <vector>

#include "calc/answers.hpp"
#include "calc/pushrod/pushrod_inputs.hpp"
#include "oracle/pushrod_rows.hpp"

namespace camside::pushrod {
namespace {

const Finding* finding(const Findings& findings, int number) {
  for (const Finding& f : findings)
    if (f.number == number) return &f;
  return nullptr;
}

Verdict verdict(const Result& r) {
  EXPECT_TRUE(r.outcome.judgement.has_value());
  return r.outcome.judgement ? r.outcome.judgement->verdict : Verdict::NotProven;
}

// ---- turns and flats ----

TEST(PushrodTurns, MeetsTheRowsOfCommonPractice) {
  for (const auto& row : oracle::thread_rows) {
    Input in = wet();
    in.pitch = ThreadPitch::threads_per_inch(row.tpi);
    const Setting s = *solved(in).setting;
    EXPECT_NEAR(s.exact_turns, row.turns_for_100_thou, 1e-12) << row.tpi;
    EXPECT_NEAR(s.per_turn.in_inches(), row.per_turn_in, 5e-7);
    EXPECT_NEAR(s.per_flat.in_inches(), row.per_flat_in, 5e-8);
  }
}

TEST(PushrodTurns, DoesNotMatchFiguresCutShortInPrint) {
  Input in = wet();
  in.pitch = ThreadPitch::threads_per_inch(24.0);
  in.turned = Turned{oracle::turns_24_tpi, 0.0};
  const Result r = solved(in);
  EXPECT_GT(std::abs(r.setting->per_turn.in_inches() - oracle::cut_short_24_tpi), 1e-5);
  EXPECT_NEAR(r.counted->preload.in_inches(), oracle::preload_24_tpi_in, 1e-15);
}

TEST(PushrodTurns, SplitsTheExactAnswerAndRoundsTheSetting) {
  const Setting s = *solved(wet()).setting;
  EXPECT_EQ(s.exact.turns, 3);
  EXPECT_EQ(s.exact.flats, 1);
  EXPECT_NEAR(s.exact.degrees, 12.0, 1e-9);
  EXPECT_EQ(s.set_flats, 19);
  EXPECT_EQ(s.set.turns, 3);
  EXPECT_EQ(s.set.flats, 1);
  EXPECT_NEAR(s.given.in_inches(), 19.0 / 6.0 / 32.0, 1e-15);
}

TEST(PushrodTurns, DryCountsBackFromTheBottom) {
  Input in = dry();
  in.preload = Length::inches(0.09);
  const Setting s = *solved(in).setting;
  EXPECT_EQ(s.way, Way::BottomAndBackOff);
  EXPECT_NEAR(s.exact_turns, (0.2 - 0.09) * 32.0, 1e-12);  // 3.52 turns, 21.12 flats
  EXPECT_EQ(s.set_flats, 21);
  EXPECT_NEAR(s.given.in_inches(), 0.2 - 21.0 / 6.0 / 32.0, 1e-15);
}

TEST(PushrodTurns, WetForDryIsAnotherAnswer) {
  Input in = wet();
  in.preload = Length::inches(0.06);
  const double from_zero = solved(in).setting->exact_turns;
  in.lifter_state = LifterState::Dry;
  EXPECT_NEAR(from_zero, 1.92, 1e-12);
  EXPECT_NEAR(solved(in).setting->exact_turns, 4.48, 1e-12);
}

TEST(PushrodTurns, NotSureGoesTheDryWay) {
  Input in = dry();
  in.lifter_state = LifterState::NotSure;
  const Result r = solved(in);
  EXPECT_EQ(r.setting->way, Way::BottomAndBackOff);
  EXPECT_TRUE(has(r.outcome.findings, 1424));
}

struct Rounding {
  double preload_in;
  long flats;
};
TEST(PushrodTurns, RoundsTowardTheMiddleOfTravelFromBothSides) {
  // 32 tpi, hexagon, travel 0.200 in: flats of 1/192 in, the middle at 19.2.
  for (const Rounding row : {Rounding{0.0705, 14}, Rounding{0.0735, 15}, Rounding{0.0995, 19}, Rounding{0.1005, 19},
                             Rounding{0.1290, 24}, Rounding{0.1299, 24}}) {
    Input in = wet();
    in.preload = Length::inches(row.preload_in);
    EXPECT_EQ(solved(in).setting->set_flats, row.flats) << row.preload_in;
  }
}

TEST(PushrodSetting, HalfwayBetweenTwoFlatsTheShallowerOneWins) {
  Input in = wet();  // 39 flats of travel: the middle is 19.5 flats from either end
  in.travel = Length::inches(39.0 / 192.0);
  in.preload = *in.travel / 2.0;
  EXPECT_EQ(solved(in).setting->set_flats, 19);
  in.lifter_state = LifterState::Dry;  // backed off from the bottom
  EXPECT_EQ(solved(in).setting->set_flats, 20);
}

TEST(PushrodTurns, WithoutTravelTakesTheNearestFlat) {
  Input in = wet();
  in.travel.reset();
  in.preload = Length::inches(0.0705);  // 13.536 flats
  const Result r = solved(in);
  EXPECT_EQ(r.setting->set_flats, 14);
  in.preload = Length::inches(0.0700);  // 13.44
  EXPECT_EQ(solved(in).setting->set_flats, 13);
  EXPECT_EQ(verdict(r), Verdict::NotProven);
  EXPECT_TRUE(has(r.outcome.findings, 1413));
  EXPECT_TRUE(says(r, 1414));
  EXPECT_FALSE(says(solved(wet()), 1414));
}

TEST(PushrodTurns, ThreeTurnsExactlyAreNotTwoTurnsAndNearlySixFlats) {
  Input in = wet();
  in.pitch = ThreadPitch::threads_per_inch(30.0);
  const Setting s = *solved(in).setting;
  EXPECT_EQ(s.exact.turns, 3);
  EXPECT_EQ(s.exact.flats, 0);
  EXPECT_EQ(s.exact.degrees, 0.0);
  EXPECT_EQ(s.set_flats, 18);
}

TEST(PushrodTurns, PitchFromTpiMillimetresAndTenThreadsIsOne) {
  const double tpi = solved(wet()).setting->exact_turns;
  Input mm = wet();
  mm.pitch = ThreadPitch::mm(0.79375);
  Input ten = wet();
  ten.pitch.reset();
  ten.ten_threads = Length::mm(7.9375);
  EXPECT_NEAR(solved(mm).setting->exact_turns, tpi, 1e-12);
  EXPECT_NEAR(solved(ten).setting->exact_turns, tpi, 1e-12);
}

TEST(PushrodTurns, TwoThreadsMoveByTheSumOfTheirPitches) {
  Input in = wet();
  in.second_pitch = ThreadPitch::threads_per_inch(24.0);
  const Setting s = *solved(in).setting;
  EXPECT_NEAR(s.per_turn.in_inches(), 1.0 / 32.0 + 1.0 / 24.0, 1e-15);
  EXPECT_NEAR(s.exact_turns, 0.1 / (1.0 / 32.0 + 1.0 / 24.0), 1e-12);
}

TEST(PushrodTurns, FlatsAreAPropertyOfThePart) {
  Input in = wet();
  in.flats_per_turn = 4;
  const Setting s = *solved(in).setting;
  EXPECT_EQ(s.exact.flats, 0);
  EXPECT_NEAR(s.exact.degrees, 72.0, 1e-9);  // 0.8 of a flat of 90°
  EXPECT_EQ(s.set_flats, 13);
}

TEST(PushrodTurns, SenseSeenFromAbove) {
  EXPECT_EQ(lengthening_sense(Hand::Right, AdjusterEnd::Lower), Sense::Clockwise);
  EXPECT_EQ(lengthening_sense(Hand::Right, AdjusterEnd::Upper), Sense::CounterClockwise);
  EXPECT_EQ(lengthening_sense(Hand::Left, AdjusterEnd::Lower), Sense::CounterClockwise);
  EXPECT_EQ(lengthening_sense(Hand::Left, AdjusterEnd::Upper), Sense::Clockwise);
}

TEST(PushrodTurns, BackingOffTurnsTheOtherWay) {
  Input in = dry();
  in.thread_hand = Hand::Right;
  in.adjuster_end = AdjusterEnd::Lower;
  const Setting s = *solved(in).setting;
  EXPECT_EQ(*s.lengthens, Sense::Clockwise);
  EXPECT_EQ(*s.turn, Sense::CounterClockwise);
  EXPECT_TRUE(says(solved(in), 1420));
  EXPECT_FALSE(says(solved(in), 1421));
  EXPECT_TRUE(has(solved(dry()).outcome.findings, 1421));  // not said
  EXPECT_FALSE(says(solved(dry()), 1420));
}

TEST(PushrodTurns, EachWayIsSaidInItsWords) {
  Input solid = wet();
  solid.lifter = Lifter::Solid;
  solid.preload.reset();
  const Result ways[] = {solved(wet()), solved(dry()), solved(solid)};
  EXPECT_TRUE(says(ways[0], 1422));
  EXPECT_TRUE(says(ways[1], 1423));
  EXPECT_TRUE(says(ways[2], 1425));
  for (const int number : {1422, 1423, 1425}) {
    const auto said = std::count_if(std::begin(ways), std::end(ways), [&](const Result& r) { return says(r, number); });
    EXPECT_EQ(said, 1) << number;
  }
}

TEST(PushrodTurns, AZeroFoundOnADryLifterAndTheLocknutAreSpokenOf) {
  EXPECT_TRUE(says(solved(wet()), 1427));
  EXPECT_FALSE(says(solved(dry()), 1427));
  EXPECT_TRUE(says(solved(wet()), 1428));
  Input fixed = wet();
  fixed.rods = Rods::Fixed;
  EXPECT_FALSE(says(solved(fixed), 1427));
  EXPECT_FALSE(says(solved(fixed), 1428)) << "there is no locknut";
}

// ---- preload and margins ----

TEST(PushrodMargins, DefaultIsHalfOfTravelAndNothingWithoutTravel) {
  Input in = wet();
  in.preload.reset();
  EXPECT_NEAR(solved(in).setting->wanted.in_inches(), 0.1, 1e-15);
  EXPECT_TRUE(says(solved(in), 1415));
  EXPECT_FALSE(says(solved(wet()), 1415));
  in.travel.reset();
  EXPECT_TRUE(has(refused(in), 1404));
}

TEST(PushrodMargins, JudgesTheRoundedSettingAgainstThirtyThou) {
  const Result r = solved(wet());
  EXPECT_EQ(verdict(r), Verdict::Within);
  EXPECT_NEAR(*r.outcome.judgement->lower, 0.762, 1e-12);
  EXPECT_EQ(r.outcome.judgement->source.basis(), Basis::CommonPractice);
  EXPECT_NEAR(r.margins->least->in_inches(), 19.0 / 192.0, 1e-15);
  EXPECT_EQ(r.outcome.figure("least_margin")->verdict, Verdict::Within);
}

TEST(PushrodMargins, ExactlyAtTheLimitIsWithin) {
  Input in = wet();
  in.pitch = ThreadPitch::threads_per_inch(25.0);  // 0.04 in a turn
  in.flats_per_turn = 4;                           // 0.01 in a flat
  in.turned = Turned{0.0, 3.0};
  in.preload.reset();
  EXPECT_EQ(verdict(solved(in)), Verdict::Within);
  EXPECT_FALSE(says(solved(in), 1410));
  in.turned = Turned{0.0, 2.0};
  EXPECT_EQ(verdict(solved(in)), Verdict::Outside);
  EXPECT_TRUE(says(solved(in), 1410));
  in.turned = Turned{0.0, 17.0};  // 0.170 of 0.200
  EXPECT_EQ(verdict(solved(in)), Verdict::Within);
  in.turned = Turned{0.0, 18.0};
  const Result deep = solved(in);
  EXPECT_EQ(verdict(deep), Verdict::Outside);
  EXPECT_TRUE(has(deep.outcome.findings, 1411));
}

TEST(PushrodMargins, TheMakersSheetWins) {
  Input in = wet();
  in.travel = Length::inches(0.05);
  in.preload.reset();
  const Result common = solved(in);
  EXPECT_EQ(verdict(common), Verdict::Outside);
  EXPECT_TRUE(has(common.outcome.findings, 1412));
  in.least_margin = Limit<Length>{Length::inches(0.015), Source::makers_sheet("lifter sheet, page 2")};
  const Result sheet = solved(in);
  EXPECT_EQ(verdict(sheet), Verdict::Within);
  EXPECT_EQ(sheet.outcome.judgement->source.basis(), Basis::MakersSheet);
}

TEST(PushrodMargins, SolidLiftersTakeNone) {
  Input in = wet();
  in.lifter = Lifter::Solid;
  EXPECT_TRUE(has(refused(in), 1408));
  in.preload.reset();
  const Result r = solved(in);
  EXPECT_EQ(r.setting->way, Way::JustFree);
  EXPECT_EQ(r.setting->set_flats, 0);
  EXPECT_FALSE(r.outcome.judgement.has_value());
}

TEST(PushrodMargins, ASolidLifterTurnedPastZeroHoldsItsValve) {
  Input in = wet();
  in.lifter = Lifter::Solid;
  in.preload.reset();
  in.turned = Turned{0.0, 0.0};
  EXPECT_FALSE(says(solved(in), 1419));
  in.turned = Turned{0.0, 1.0};
  EXPECT_TRUE(says(solved(in), 1419));
}

// ---- what was counted ----

TEST(PushrodCount, GivesThePreloadOfWhatWasTurned) {
  Input in = wet();
  in.turned = Turned{2.0, 3.0};
  EXPECT_NEAR(solved(in).counted->preload.in_inches(), 2.5 / 32.0, 1e-15);
  in.lifter_state = LifterState::Dry;
  EXPECT_NEAR(solved(in).counted->preload.in_inches(), 0.2 - 2.5 / 32.0, 1e-15);
}

TEST(PushrodCount, FlatsCountedAsTurnsAreAskedAbout) {
  Input in = wet();
  in.preload = Length::inches(0.0157);
  in.least_margin = Limit<Length>{Length::inches(0.01), Source::makers_sheet("")};
  ASSERT_EQ(solved(in).setting->set_flats, 4);
  in.turned = Turned{4.0, 0.0};  // 4 turns for 4 flats
  const Result r = solved(in);
  ASSERT_TRUE(has(r.outcome.findings, 1416));
  EXPECT_EQ(finding(r.outcome.findings, 1416)->severity, Severity::Doubt);
  EXPECT_EQ(verdict(r), Verdict::NotProven);
}

TEST(PushrodCount, HalfTurnGripsCountedAsTurnsAreAskedAbout) {
  Input in = wet();
  in.turned = Turned{6.0, 2.0};
  EXPECT_TRUE(has(solved(in).outcome.findings, 1416));
}

TEST(PushrodCount, TheSettingItselfIsNotAskedAbout) {
  Input in = wet();
  in.turned = Turned{3.0, 1.0};
  const Result r = solved(in);
  EXPECT_FALSE(has(r.outcome.findings, 1416));
  EXPECT_FALSE(has(r.outcome.findings, 1417));
  in.turned = Turned{3.0, 3.0};
  EXPECT_TRUE(has(solved(in).outcome.findings, 1417));
}

TEST(PushrodCount, BeyondTheBottomIsAResultAndOutside) {
  Input in = wet();
  in.turned = Turned{7.0, 0.0};  // 0.219 of 0.200
  const Result r = solved(in);
  EXPECT_LT(r.margins->to_bottom->in_mm(), 0.0);
  EXPECT_EQ(verdict(r), Verdict::Outside);
  EXPECT_TRUE(has(r.outcome.findings, 1418));
}

// ---- entries refused ----

TEST(PushrodEntries, PitchTypedForThreadsPerInch) {
  Input in = wet();
  in.pitch = ThreadPitch::mm(32.0);
  const Findings f = refused(in);
  EXPECT_TRUE(has(f, 200));
  ASSERT_NE(finding(f, 1403), nullptr);
  EXPECT_EQ(finding(f, 1403)->field, "pitch");
  EXPECT_NE(finding(f, 1403)->remedy.find("tpi"), std::string::npos);
  in.pitch = ThreadPitch::threads_per_inch(0.03125);
  EXPECT_TRUE(has(refused(in), 1403));
}

TEST(PushrodEntries, InstalledHeightTypedForTravel) {
  Input in = wet();
  in.travel = Length::inches(1.6);
  EXPECT_TRUE(has(refused(in), 1407));
  in.travel = Length::inches(0.35);
  const Result r = solved(in);
  EXPECT_TRUE(has(r.outcome.findings, 1407));
  EXPECT_EQ(verdict(r), Verdict::NotProven);
}

TEST(PushrodEntries, StateOfTheLifterIsAskedFirst) {
  Input in = wet();
  in.lifter_state.reset();
  const Findings f = refused(in);
  ASSERT_NE(finding(f, 201), nullptr);
  EXPECT_EQ(finding(f, 201)->field, "lifter_state");
}

TEST(PushrodEntries, Contradictions) {
  Input both = wet();
  both.ten_threads = Length::mm(7.9);
  EXPECT_TRUE(has(refused(both), 1402));
  Input none = wet();
  none.pitch.reset();
  EXPECT_TRUE(has(refused(none), 1401));
  Input dry_without_travel = dry();
  dry_without_travel.travel.reset();
  EXPECT_TRUE(has(refused(dry_without_travel), 1405));
  Input beyond = wet();
  beyond.preload = Length::inches(0.21);
  EXPECT_TRUE(has(refused(beyond), 1406));
  Input fixed = wet();
  fixed.rods = Rods::Fixed;
  fixed.turned = Turned{1.0, 0.0};
  EXPECT_TRUE(has(refused(fixed), 1409));
}

TEST(PushrodEntries, NothingThatIsNotANumberGetsThrough) {
  for (const double bad : {std::nan(""), std::numeric_limits<double>::infinity()}) {
    Input in = wet();
    in.preload = Length::mm(bad);
    EXPECT_TRUE(has(refused(in), 202));
    in = wet();
    in.pitch = ThreadPitch::mm(bad);
    EXPECT_TRUE(has(refused(in), 202));
    in = wet();
    in.turned = Turned{bad, 0.0};
    EXPECT_TRUE(has(refused(in), 202));
  }
}

TEST(PushrodEntries, EveryFigureIsFinite) {
  Input in = wet();
  in.heat = heat_of_stack(23.1, 11.5);
  const Result r = solved(in);
  for (const Figure& f : r.outcome.figures) EXPECT_TRUE(std::isfinite(f.base)) << f.key;
}

// ---- crank ----

TEST(PushrodOrder, FortyFiveDegreeSinglePin) {
  Input in = wet();
  const Result r = solved(in);
  EXPECT_EQ(r.standings[0].cylinder, Cylinder::Front);
  EXPECT_EQ(r.standings[1].cylinder, Cylinder::Rear);
  EXPECT_NEAR(r.standings[1].crank.in_deg(), 315.0, 1e-9);
  EXPECT_NEAR(r.standings[1].to_next.in_deg(), 405.0, 1e-9);
  EXPECT_EQ(r.standings[0].rods, (std::array{Rod::FrontExhaust, Rod::FrontIntake}));
  EXPECT_EQ(r.standings[1].rods, (std::array{Rod::RearIntake, Rod::RearExhaust}));
  ASSERT_NE(finding(r.outcome.findings, 1440), nullptr);
  EXPECT_EQ(finding(r.outcome.findings, 1440)->field, "first");
  EXPECT_TRUE(says(r, 1441));
}

TEST(PushrodOrder, SwappedAgainstTheWheelsAndFromTheRear) {
  Input in = wet();
  in.turning = Turning::AgainstWheels;
  EXPECT_NEAR(solved(in).standings[0].to_next.in_deg(), 405.0, 1e-9);
  in.first = Cylinder::Rear;
  EXPECT_NEAR(solved(in).standings[0].to_next.in_deg(), 315.0, 1e-9);
  in.turning = Turning::WithWheels;
  EXPECT_NEAR(solved(in).standings[0].to_next.in_deg(), 405.0, 1e-9);
  EXPECT_EQ(solved(in).standings[0].cylinder, Cylinder::Rear);
}

TEST(PushrodOrder, PictureNeedsEachRodOnce) {
  Input in = wet();
  in.left_to_right = {{Rod::RearExhaust}, {Rod::RearIntake}, {Rod::FrontIntake}, {Rod::FrontExhaust}};
  EXPECT_EQ(solved(in).picture[0], Rod::RearExhaust);
  in.left_to_right[3].rod = Rod::RearExhaust;
  EXPECT_TRUE(has(refused(in), 1437));
}

// ---- release ----

RodCheck check(Rod rod, double minutes, std::optional<bool> spins = {}, std::optional<bool> play = {}) {
  return {rod, true, Duration::minutes(minutes), spins, play};
}

EngineLock lock_of(std::vector<RodCheck> checks) {
  return engine_lock(rod_states(checks, Duration::minutes(10.0)));
}

TEST(PushrodRelease, TheEndOfTheClockNeverReleases) {
  const auto after = [](double minutes) {
    return lock_of({check(Rod::FrontIntake, minutes), check(Rod::FrontExhaust, minutes)});
  };
  EXPECT_EQ(after(0.0), EngineLock::Locked);
  EXPECT_EQ(after(9.99), EngineLock::Locked);
  EXPECT_EQ(after(10.0), EngineLock::CheckNow);
  EXPECT_EQ(after(1e6), EngineLock::CheckNow);
  EXPECT_EQ(after(std::numeric_limits<double>::infinity()), EngineLock::Locked);
  EXPECT_EQ(after(std::nan("")), EngineLock::Locked);
}

TEST(PushrodRelease, OnlyBothRodsWithBothAnswersRelease) {
  const RodCheck good = check(Rod::FrontExhaust, 20.0, true, false);
  EXPECT_EQ(lock_of({good, check(Rod::FrontIntake, 20.0, true, false)}), EngineLock::Released);
  EXPECT_EQ(lock_of({good, check(Rod::FrontIntake, 20.0, true)}), EngineLock::CheckNow);
  EXPECT_EQ(lock_of({good, check(Rod::FrontIntake, 20.0)}), EngineLock::CheckNow);
  EXPECT_EQ(lock_of({good, check(Rod::FrontIntake, 20.0, false, false)}), EngineLock::Locked);
  EXPECT_EQ(lock_of({good}), EngineLock::Locked);  // the other rod of the cylinder is not set yet
}

TEST(PushrodRelease, ARodThatSpinsBecauseItIsLooseLocks) {
  const RodCheck good = check(Rod::FrontExhaust, 20.0, true, false);
  EXPECT_EQ(rod_state(check(Rod::FrontIntake, 20.0, true, true), Duration{}), RodState::Loose);
  EXPECT_EQ(lock_of({good, check(Rod::FrontIntake, 20.0, true, true)}), EngineLock::Locked);
}

TEST(PushrodRelease, OneCylinderLocksTheWholeEngine) {
  std::vector<RodCheck> checks{check(Rod::FrontIntake, 60.0, true, false), check(Rod::FrontExhaust, 60.0, true, false)};
  EXPECT_EQ(lock_of(checks), EngineLock::Released);
  checks.push_back(check(Rod::RearIntake, 1.0));
  checks.push_back(check(Rod::RearExhaust, 1.0));
  EXPECT_EQ(lock_of(checks), EngineLock::Locked);
}

TEST(PushrodRelease, NothingLoadedIsClear) {
  EXPECT_EQ(lock_of({}), EngineLock::Clear);
}

TEST(PushrodRelease, DryLiftersHaveNoWaitButStillTheTest) {
  Input in = dry();
  in.checks = {check(Rod::FrontIntake, 0.0), check(Rod::FrontExhaust, 0.0)};
  EXPECT_EQ(solved(in).lock, EngineLock::CheckNow);
  in.lifter_state = LifterState::Wet;
  EXPECT_EQ(solved(in).lock, EngineLock::Locked);
}

TEST(PushrodRelease, SpinningAtOnceOnAWetLifterIsSuspect) {
  Input in = wet();
  in.checks = {check(Rod::FrontIntake, 1.0, true, false), check(Rod::FrontExhaust, 20.0, true, false)};
  const Result r = solved(in);
  EXPECT_EQ(r.lock, EngineLock::Released);
  EXPECT_TRUE(has(r.outcome.findings, 1434));
}

TEST(PushrodRelease, EachRodIsSpokenOfByWhatItShows) {
  Input in = wet();
  in.checks = {check(Rod::FrontIntake, 20.0), check(Rod::FrontExhaust, 20.0, false, false),
               check(Rod::RearIntake, 20.0, true, true)};
  const Result r = solved(in);
  for (const int number : {1431, 1432, 1433}) ASSERT_TRUE(says(r, number)) << number;
  EXPECT_EQ(finding(r.outcome.findings, 1431)->field, "checks[0]");
  EXPECT_EQ(finding(r.outcome.findings, 1432)->field, "checks[1]");
  EXPECT_EQ(finding(r.outcome.findings, 1433)->field, "checks[2]");
  in.checks = {check(Rod::FrontIntake, 5.0)};  // still bleeding down: nothing to feel for yet
  for (const int number : {1431, 1432, 1433}) EXPECT_FALSE(says(solved(in), number)) << number;
}

TEST(PushrodRelease, TheEngineIsLockedOrReleasedNeverBoth) {
  Input in = wet();
  EXPECT_FALSE(says(solved(in), 1435));
  EXPECT_FALSE(says(solved(in), 1438)) << "nothing was loaded";
  in.checks = {check(Rod::FrontIntake, 1.0), check(Rod::FrontExhaust, 1.0)};
  EXPECT_TRUE(says(solved(in), 1438));
  EXPECT_FALSE(says(solved(in), 1435));
  in.checks = {check(Rod::FrontIntake, 20.0), check(Rod::FrontExhaust, 20.0)};
  EXPECT_TRUE(says(solved(in), 1438)) << "the end of the clock releases nothing";
  EXPECT_FALSE(says(solved(in), 1435));
  in.checks = {check(Rod::FrontIntake, 20.0, true, false), check(Rod::FrontExhaust, 20.0, true, false)};
  EXPECT_TRUE(says(solved(in), 1435));
  EXPECT_FALSE(says(solved(in), 1438));
}

TEST(PushrodRelease, ARodListedTwiceIsRefused) {
  Input in = wet();
  in.checks = {check(Rod::FrontIntake, 1.0), check(Rod::FrontIntake, 9.0)};
  EXPECT_TRUE(has(refused(in), 1436));
}

// ---- heat ----

TEST(PushrodHeat, PiecesGrowAsPublished) {
  for (const auto& row : oracle::growth_rows) {
    if (row.length_mm > 1000.0) continue;  // 1275 m of steel is beyond any rod; see the independent test
    Input in = wet();
    in.heat = heat_of_stack(0.0, 0.0);
    in.heat->stack = {{"piece", Length::mm(row.length_mm), Expansion::ppm_per_kelvin(row.ppm_per_kelvin),
                       Temperature::celsius(20.0 + row.rise_kelvin)}};
    EXPECT_NEAR(-solved(in).heat->change.in_mm(), row.growth_mm, row.tolerance_mm) << row.source;
  }
}

TEST(PushrodHeat, AluminiumBarrelAndSteelRod) {
  Input in = wet();
  in.heat = heat_of_stack(0.0, 0.0);
  in.heat->rod = {"", Length::mm(150.0), {}, Temperature::celsius(120.0)};      // steel by default
  in.heat->stack = {{"", Length::mm(150.0), {}, Temperature::celsius(120.0)}};  // aluminium by default
  const Result r = solved(in);
  EXPECT_NEAR(r.heat->change.in_mm(), -oracle::barrel_loss_mm, 1e-12);
  EXPECT_TRUE(has(r.outcome.findings, 1453));  // rod as hot as the barrel
  EXPECT_TRUE(has(r.outcome.findings, 1454));
}

TEST(PushrodHeat, TradePracticeFigures) {
  const auto change_thou = [](double stack_ppm, double rod_ppm) {
    Input in = wet();
    in.heat = heat_of_stack(stack_ppm, rod_ppm);
    return solved(in).heat->change.in_thou();
  };
  EXPECT_NEAR(change_thou(23.1, 11.5), -15.3, 0.05);  // 0.015-0.02 in less hot
  EXPECT_NEAR(change_thou(23.1, 23.1), -5.5, 0.05);   // about 0.005 with aluminium rods
}

TEST(PushrodHeat, ValveSideCountsOnlyWhatTheStemGrowsBeyondTheHead) {
  Input in = wet();
  in.heat = heat_of_stack(23.1, 11.5);
  EXPECT_TRUE(says(solved(in), 1459));
  const double without = solved(in).heat->hot.in_mm();
  in.heat->valve = ValveGrowth{{"", Length::mm(110.0), Expansion::ppm_per_kelvin(11.5), Temperature::celsius(220.0)},
                               {"", Length::mm(100.0), Expansion::ppm_per_kelvin(23.1), Temperature::celsius(120.0)},
                               1.6};
  const double stem = 110.0 * 11.5e-6 * 200.0;
  const double head = 100.0 * 23.1e-6 * 100.0;
  const Result r = solved(in);
  EXPECT_NEAR(r.heat->hot.in_mm(), without + (stem - head) / 1.6, 1e-12);
  EXPECT_FALSE(has(r.outcome.findings, 1451));  // 200 K is not above 200 K
  EXPECT_FALSE(says(r, 1459));
}

TEST(PushrodHeat, FahrenheitTypedAsCelsiusIsAskedAbout) {
  Input in = wet();
  in.heat = heat_of_stack(23.1, 11.5);
  in.heat->stack[0].hot = Temperature::celsius(285.0);
  const Result asked = solved(in);
  ASSERT_TRUE(has(asked.outcome.findings, 1451));
  EXPECT_EQ(finding(asked.outcome.findings, 1451)->field, "heat.stack[0].hot");
  EXPECT_EQ(verdict(asked), Verdict::NotProven);
  in.heat->temperatures_confirmed = true;
  EXPECT_FALSE(has(solved(in).outcome.findings, 1451));
  EXPECT_TRUE(has(solved(in).outcome.findings, 1452));
}

TEST(PushrodHeat, LashThatOpensHotIsOutside) {
  Input in = wet();
  in.preload = Length::inches(0.010);
  in.least_margin = Limit<Length>{Length::inches(0.005), Source::makers_sheet("")};
  EXPECT_EQ(verdict(solved(in)), Verdict::Within);
  in.heat = heat_of_stack(23.1, 11.5);
  const Result r = solved(in);
  EXPECT_LT(r.heat->hot.in_mm(), 0.0);
  EXPECT_TRUE(has(r.outcome.findings, 1455));
  EXPECT_EQ(verdict(r), Verdict::Outside);
  EXPECT_EQ(r.outcome.judgement->figure, "hot_preload");
}

TEST(PushrodHeat, PlungerThatBottomsHotIsOutside) {
  Input in = wet();
  in.heat = heat_of_stack(0.0, 40.0);
  in.heat->rod.hot = Temperature::celsius(200.0);
  in.preload = Length::inches(0.16);
  in.least_margin = Limit<Length>{Length::inches(0.01), Source::makers_sheet("")};
  const Result r = solved(in);
  EXPECT_TRUE(has(r.outcome.findings, 1456));
  EXPECT_EQ(verdict(r), Verdict::Outside);
}

TEST(PushrodHeat, LittleRoomLeftHotIsSaid) {
  Input in = wet();
  in.heat = heat_of_stack(23.1, 11.5);
  EXPECT_FALSE(says(solved(in), 1457)) << "0.099 less 0.015 in";
  in.preload = Length::inches(0.035);
  const Result r = solved(in);
  EXPECT_FALSE(says(r, 1410)) << "cold it has enough";
  EXPECT_TRUE(says(r, 1457));
}

TEST(PushrodHeat, AStackOfNothingIsRefused) {
  Input in = wet();
  in.heat = heat_of_stack(23.1, 11.5);
  in.heat->stack.clear();
  EXPECT_TRUE(refused(in, 1458, "heat.stack"));
}

TEST(PushrodHeat, AWarmEngineSetToColdFiguresGainsPreloadCold) {
  Input in = wet();
  in.heat = heat_of_stack(23.1, 11.5);
  in.heat->setting_temperature = Temperature::celsius(70.0);
  const Result r = solved(in);
  const double gain = (9.0 * 23.1e-6 - 10.5 * 11.5e-6) * 50.0 * 25.4;
  EXPECT_NEAR(r.heat->cold.in_mm() - r.setting->given.in_mm(), gain, 1e-12);
  EXPECT_TRUE(has(r.outcome.findings, 1450));
}

// ---- rods ----

TEST(PushrodLength, EverySignOfTheSum) {
  const auto change = [](auto set) {
    Input in = wet();
    in.new_length.emplace();
    in.new_length->rocker_ratio = 1.6;
    set(*in.new_length);
    return solved(in).length_change->in_mm();
  };
  EXPECT_NEAR(change([](NewLength& n) { n.gasket_change = Length::mm(0.5); }), 0.5, 1e-15);
  EXPECT_NEAR(change([](NewLength& n) { n.deck_removed = Length::mm(0.5); }), -0.5, 1e-15);
  EXPECT_NEAR(change([](NewLength& n) { n.head_removed = Length::mm(0.5); }), -0.5, 1e-15);
  EXPECT_NEAR(change([](NewLength& n) { n.heel_radius_change = Length::mm(0.5); }), -0.5, 1e-15);
  EXPECT_NEAR(change([](NewLength& n) { n.cup_rise = Length::mm(0.5); }), -0.5, 1e-15);
  EXPECT_NEAR(change([](NewLength& n) { n.tip_rise = Length::mm(0.8); }), -0.5, 1e-15);
}

TEST(PushrodLength, FixedRodsKeepTheirLength) {
  Input in = wet();
  in.rods = Rods::Fixed;
  in.new_length.emplace();
  in.new_length->head_removed = Length::inches(0.08);
  const Result r = solved(in);
  EXPECT_FALSE(r.setting.has_value());
  EXPECT_NEAR(r.margins->preload.in_inches(), 0.18, 1e-15);
  EXPECT_EQ(verdict(r), Verdict::Outside);
  EXPECT_TRUE(has(r.outcome.findings, 1426));
  EXPECT_NE(text_of(r.outcome.findings, 1460).find("0.0800 in (2.032 mm) shorter"), std::string::npos)
      << text_of(r.outcome.findings, 1460);
  EXPECT_NE(text_of(r.outcome.findings, 1461).find("0.1800 in"), std::string::npos);
  in.new_length.reset();
  EXPECT_FALSE(says(solved(in), 1460));
  EXPECT_FALSE(says(solved(in), 1461));
}

TEST(PushrodLength, AdjustableRodsTakeUpTheChange) {
  Input in = wet();
  in.new_length.emplace();
  in.new_length->head_removed = Length::inches(0.08);
  EXPECT_TRUE(says(solved(in), 1460));
  EXPECT_FALSE(says(solved(in), 1461)) << "their preload is set anew";
}

TEST(PushrodEngagement, OneDiameterUnlessTheMakerMarksIt) {
  Input in = wet();
  in.engagement = Engagement{Length::inches(0.25), Length::inches(0.25), {}};
  EXPECT_EQ(verdict(solved(in)), Verdict::Within);
  EXPECT_FALSE(says(solved(in), 1470));
  in.engagement->engaged = Length::inches(0.24);
  const Result r = solved(in);
  EXPECT_EQ(verdict(r), Verdict::Outside);
  EXPECT_EQ(r.outcome.judgement->figure, "engaged");
  EXPECT_TRUE(says(r, 1470));
  EXPECT_TRUE(says(r, 1471));
  in.engagement->least = Limit<Length>{Length::inches(0.2), Source::makers_sheet("mark on the adjuster")};
  EXPECT_EQ(verdict(solved(in)), Verdict::Within);
  EXPECT_FALSE(says(solved(in), 1471));
}

TEST(PushrodCollapsed, MustPassOnTheHeel) {
  Input in = wet();
  in.collapsed = Collapsed{Length::inches(10.0), {}, Length::inches(10.2), MeasuredOn::Heel};
  EXPECT_NEAR(solved(in).collapsed_spare->in_inches(), 0.2, 1e-12);
  EXPECT_FALSE(says(solved(in), 1480));
  EXPECT_FALSE(says(solved(in), 1481));
  EXPECT_TRUE(says(solved(in), 1483));
  EXPECT_FALSE(says(solved(wet()), 1483));
  in.collapsed->measured_on = MeasuredOn::Lift;
  EXPECT_EQ(verdict(solved(in)), Verdict::NotProven);
  EXPECT_TRUE(says(solved(in), 1481));
  in.collapsed->measured_on = MeasuredOn::Heel;
  in.collapsed->shortest = Length::inches(10.3);
  EXPECT_EQ(verdict(solved(in)), Verdict::Outside);
  EXPECT_TRUE(says(solved(in), 1480));
}

TEST(PushrodCollapsed, TheLongestRodMustReachWithThePreload) {
  Input in = wet();
  in.collapsed = Collapsed{Length::inches(10.0), Length::inches(10.25), Length::inches(10.2), MeasuredOn::Heel};
  const Result r = solved(in);
  EXPECT_NEAR(r.longest_spare->in_inches(), 0.05 - 19.0 / 192.0, 1e-12);
  EXPECT_EQ(verdict(r), Verdict::Outside);
  EXPECT_TRUE(says(r, 1482));
  in.collapsed->longest = Length::inches(10.3);
  EXPECT_FALSE(says(solved(in), 1482));
}

RodsOut advice(std::optional<bool> leak, double lift_in, std::optional<bool> again) {
  Input in = wet();
  in.save_or_cut = SaveOrCut{leak, Length::inches(lift_in), {}, again};
  return *solved(in).rods_out;
}
TEST(PushrodSaveOrCut, ReasonsLeadToOneWay) {
  EXPECT_EQ(advice({}, 0.5, {}), RodsOut::LookFirst);
  EXPECT_EQ(advice(true, 0.5, {}), RodsOut::SaveAndRefit);
  EXPECT_EQ(advice(true, 0.51, {}), RodsOut::SaveAndRefit);
  EXPECT_EQ(advice(true, 0.58, {}), RodsOut::SaveAndFitAdjustable);
  EXPECT_EQ(advice(false, 0.5, true), RodsOut::SaveAndRefit);
  EXPECT_EQ(advice(false, 0.58, {}), RodsOut::CutAndFitAdjustable);
}

TEST(PushrodSaveOrCut, EachWayNamesItsReasons) {
  const auto with = [](std::optional<bool> leak, std::optional<Length> lift, std::optional<bool> again) {
    Input in = wet();
    in.save_or_cut = SaveOrCut{leak, lift, {}, again};
    return solved(in);
  };
  const Length stock = Length::inches(0.5);
  const Length high = Length::inches(0.58);
  EXPECT_TRUE(says(with({}, stock, {}), 1491));
  EXPECT_TRUE(says(with(true, stock, {}), 1490));
  EXPECT_TRUE(says(with(false, stock, true), 1494));
  EXPECT_TRUE(says(with(false, stock, {}), 1495));
  for (const int number : {1490, 1491, 1494, 1495}) {
    int said = 0;
    for (const Result& r :
         {with({}, stock, {}), with(true, stock, {}), with(false, stock, true), with(false, stock, {})})
      said += says(r, number) ? 1 : 0;
    EXPECT_EQ(said, 1) << number << " is the reason of one way only";
  }
  EXPECT_TRUE(says(with(true, stock, {}), 1493));
  EXPECT_FALSE(says(with(true, high, {}), 1493));
  EXPECT_TRUE(says(with(true, high, {}), 1492));
  EXPECT_FALSE(says(with(true, stock, {}), 1492));
  EXPECT_TRUE(says(with(true, {}, {}), 1496));
  EXPECT_FALSE(says(with(true, stock, {}), 1496));
}

TEST(PushrodSaveOrCut, CuttingCarriesItsCaution) {
  Input in = wet();
  in.save_or_cut = SaveOrCut{false, Length::inches(0.58), {}, false};
  EXPECT_TRUE(has(solved(in).outcome.findings, 1914));
  in.save_or_cut->use_again = true;
  EXPECT_FALSE(says(solved(in), 1914)) << "they come out whole";
}

TEST(PushrodSafety, CautionsStandAtTheStep) {
  const Findings f = solved(wet()).outcome.findings;
  for (const int number : {1430, 1912, 1913}) EXPECT_TRUE(has(f, number)) << number;
  EXPECT_FALSE(has(f, 1911)) << "battery and plugs are said once, before the first rod";
}

// Words for an engine without rods, where "watch the rod" is no help, and for a plunger that must not be driven down.
TEST(PushrodWords, SayWhatToDoWithoutRodsInAndWhereToStop) {
  const auto remedy = [](const Input& in, int number) {
    for (const Finding& f : solved(in).outcome.findings)
      if (f.number == number) return f.remedy;
    return std::string();
  };
  EXPECT_NE(remedy(wet(), 1440).find("or its lifter where no rod is in"), std::string::npos);
  EXPECT_NE(remedy(wet(), 1440).find("thumb over its plug hole"), std::string::npos);
  for (const LifterState state : {LifterState::Dry, LifterState::NotSure}) {
    Input in = wet();
    in.lifter_state = state;
    const int number = state == LifterState::Dry ? 1423 : 1424;
    EXPECT_NE(remedy(in, number).find("Stop at the first firm resistance"), std::string::npos) << number;
  }
}

// "Engine: clear" under "do not turn the engine" was read as leave to turn it.
TEST(PushrodWords, NothingIsClearBeforeARodWasSet) {
  const auto locks = [](const Input& in) {
    const Outcome out = solved(in).outcome;
    return std::count_if(out.figures.begin(), out.figures.end(),
                         [](const Figure& f) { return f.key == "engine_lock"; });
  };
  Input in = wet();
  in.checks.clear();
  EXPECT_EQ(locks(in), 0);
  in.checks = {{Rod::FrontIntake, true, {}, {}, {}}};
  EXPECT_EQ(locks(in), 1);
}

// What a high lift asks of the engine comes before the rods.
TEST(PushrodWords, AHighLiftAsksForSpringsAndClearancesFirst) {
  Input in = wet();
  in.save_or_cut = SaveOrCut{true, Length::inches(0.6), Limit<Length>{Length::inches(0.5), Source::memory()}, {}};
  for (const Finding& f : solved(in).outcome.findings) {
    if (f.number != 1492) continue;
    EXPECT_EQ(f.severity, Severity::Caution);
    for (const char* first : {"coil bind", "retainer to seal", "piston to valve"})
      EXPECT_NE(f.remedy.find(first), std::string::npos) << first;
    return;
  }
  FAIL() << "1492 is missing";
}

TEST(PushrodSafety, RockerSupportsAreLoosenedForFixedRods) {
  EXPECT_FALSE(says(solved(wet()), 1915));
  Input fixed = wet();
  fixed.rods = Rods::Fixed;
  EXPECT_TRUE(says(solved(fixed), 1915));
}

}  // namespace
}  // namespace camside::pushrod
