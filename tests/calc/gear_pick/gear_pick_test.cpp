#include "calc/gear_pick/gear_pick.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <set>

#include "calc/answers.hpp"
#include "calc/gear_pick/gear_pick_engines.hpp"
#include "oracle/gear_pick_rows.hpp"

namespace camside::gear_pick {
namespace {

using namespace engines;

std::vector<Length> offsets() {
  std::vector<Length> v;
  for (const double mm : oracle::pick_offsets_mm) v.push_back(Length::mm(mm));
  return v;
}

Input five_by_five() {
  Input in = one_mesh(oracle::pick_lash_mm, oracle::pick_lash_mm, oracle::pick_lowest_mm, oracle::pick_highest_mm);
  for (Gear& g : in.gears) offer(g, SizeMeans::Class, Length{}, offsets());
  return in;
}

TEST(GearPick, TheHandSearchOfFiveByFive) {
  const Result r = solved(five_by_five());
  ASSERT_EQ(r.sets.size(), 1U);
  const Set& set = r.sets[0];
  EXPECT_EQ(set.ranked.size(), 25U) << "the fitted size on offer again is not another option";
  EXPECT_EQ(set.fitting, oracle::pick_pairs.size());
  std::set<std::pair<long, long>> found;
  for (std::size_t i = 0; i < set.fitting; ++i)
    found.insert({std::lround(set.choice(set.ranked[i], 0).thicker.in_um()),
                  std::lround(set.choice(set.ranked[i], 1).thicker.in_um())});
  for (const auto& [a, b] : oracle::pick_pairs)
    EXPECT_TRUE(found.contains({std::lround(a * 1000), std::lround(b * 1000)})) << a << " " << b;
}

TEST(GearPick, TheMiddleOfTheWindowIsBest) {
  const Result r = solved(five_by_five());
  const LashRange lash = r.sets[0].lash(r.sets[0].best(), 0, State::AsMeasured);
  EXPECT_NEAR(lash.low.in_mm(), 0.030, 1e-12);
  EXPECT_NEAR(r.sets[0].best().score_mm, 0.010, 1e-12);
}

TEST(GearPick, MeetingAnEdgeExactlyFits) {
  const Result r = solved(five_by_five());
  const Candidate& last = r.sets[0].ranked[r.sets[0].fitting - 1];
  EXPECT_NEAR(last.score_mm, 0.0, 1e-12);
  EXPECT_EQ(last.standing, Standing::Fits);
}

TEST(GearPick, SeparateMeshesAreSolvedApart) {
  const Result r = solved(two_cam_engine(9));
  ASSERT_EQ(r.sets.size(), 2U);
  EXPECT_EQ(r.sets[0].ranked.size(), 81U);
  EXPECT_EQ(r.sets[1].ranked.size(), 81U);
}

TEST(GearPick, AnOuterGearDoesNothingToTheInnerMesh) {
  Input in = two_cam_engine(9);
  const Result before = solved(in);
  in.gears[0].sizes.pop_back();
  in.meshes[0].lash_low = Length::thou(0.2);
  const Result after = solved(in);
  EXPECT_EQ(before.sets[1].best().index, after.sets[1].best().index);
  EXPECT_EQ(before.sets[1].best().score_mm, after.sets[1].best().score_mm);
}

TEST(GearPick, ASharedGearJoinsItsMeshes) {
  const Result r = solved(row_of_three(9));
  ASSERT_EQ(r.sets.size(), 1U);
  EXPECT_EQ(r.sets[0].ranked.size(), 729U);
  EXPECT_EQ(r.sets[0].meshes.size(), 2U);
}

TEST(GearPick, EveryCombinationStandsInTheRankingOnce) {
  const Set set = solved(row_of_three(5)).sets[0];
  std::set<std::uint32_t> seen;
  for (const Candidate& c : set.ranked) seen.insert(c.index);
  EXPECT_EQ(seen.size(), 125U);
  EXPECT_EQ(set.ranked[set.leave_it].index, 0U);
}

TEST(GearPick, SwingOverTheTurnIsKept) {
  const Result r = solved(two_cam_engine(5));
  for (const Candidate& c : r.sets[0].ranked) {
    const LashRange lash = r.sets[0].lash(c, 0, State::AsMeasured);
    EXPECT_NEAR((lash.high - lash.low).in_thou(), 0.8, 1e-9);
  }
}

// --- what a size means ---

double pin_step(int teeth, double degrees) {
  Input in = one_mesh(0.05, 0.05, 0.0, 0.1);
  for (Gear& g : in.gears) g.teeth = teeth;
  in.meshes[0].pressure_angle = Angle::deg(degrees);
  in.meshes[0].centre_distance = Length::mm(teeth);
  const auto form = involute::form(teeth, Module::mm(1.0), Angle::deg(degrees), Angle{});
  const double m = involute::pin_seat(form, std::numbers::pi / 2.0, 1.728)->over_pins_mm;
  offer(in.gears[0], SizeMeans::OverPins, Length::mm(m), {Length::mm(m + 0.0254)});
  in.gears[0].pin_diameter = Length::mm(1.728);
  return solved(in).lash_per_size[0];
}

TEST(GearPick, AThouOverPinsIsLessThanHalfAThouOfLash) {
  for (const auto& row : oracle::pin_step_rows) {
    double least = 1.0;
    double most = 0.0;
    for (int teeth = 17; teeth <= 52; ++teeth) {
      least = std::min(least, pin_step(teeth, row.degrees));
      most = std::max(most, pin_step(teeth, row.degrees));
    }
    EXPECT_NEAR(least, row.least, 1e-12);
    EXPECT_NEAR(most, row.most, 1e-12);
  }
}

TEST(GearPick, TheStepIsSaidNotToBeTheLash) {
  const Result r = solved(two_cam_engine(3));
  EXPECT_TRUE(has(r.outcome.findings, 1327));
  const Option& thicker = r.sets[0].options[0].back();
  EXPECT_LT(thicker.lash_change.in_thou(), -0.40) << "one thou over pins, and + is tighter";
  EXPECT_GT(thicker.lash_change.in_thou(), -0.47);
}

TEST(GearPick, PitchRadiusAndThicknessAndClassEachCountTheirOwnWay) {
  Input in = one_mesh(0.05, 0.05, 0.0, 0.1);
  offer(in.gears[0], SizeMeans::PitchRadius, Length::mm(20.0), {Length::mm(20.01)});
  EXPECT_NEAR(solved(in).lash_per_size[0], oracle::radius_step, 5e-11);
  EXPECT_NEAR(solved(in).sets[0].options[0][1].lash_change.in_mm(), -0.01 * oracle::radius_step, 1e-12);
  in.gears[0].sizes.clear();
  offer(in.gears[0], SizeMeans::Thickness, Length::mm(1.55), {Length::mm(1.56)});
  EXPECT_NEAR(solved(in).sets[0].options[0][1].lash_change.in_mm(), -0.01, 1e-12);
  in.gears[0].sizes.clear();
  offer(in.gears[0], SizeMeans::Class, Length::mm(-0.01), {Length::mm(0.01)});
  EXPECT_NEAR(solved(in).sets[0].options[0][1].lash_change.in_mm(), -0.02, 1e-12);
}

TEST(GearPick, TheMeaningOfASizeIsAskedNeverAssumed) {
  Input in = five_by_five();
  in.gears[1].size_means.reset();
  EXPECT_TRUE(refused(in, 1310, "gears[1].size_means"));
  in = five_by_five();
  in.gears[0].fitted.reset();
  EXPECT_TRUE(refused(in, 201, "gears[0].fitted"));
  in = two_cam_engine(3);
  in.gears[2].pin_diameter.reset();
  EXPECT_TRUE(refused(in, 201, "gears[2].pin_diameter"));
}

TEST(GearPick, ASizeFarFromTheFittedGearIsACaution) {
  Input in = five_by_five();
  EXPECT_FALSE(has(solved(in).outcome.findings, 1314));
  in.gears[1].sizes[2].value = Length::mm(0.051);  // a twentieth of module 1 is 0.050
  const Findings f = solved(in).outcome.findings;
  EXPECT_NE(text_of(f, 1314).find("front 3"), std::string::npos) << text_of(f, 1314);
}

TEST(GearPick, SizesOverPinsThatCanNotBeAreRefused) {
  Input in = two_cam_engine(3);
  in.gears[0].sizes[1].value = Length::mm(1.0);
  EXPECT_TRUE(refused(in, 1114, "gears[0].sizes[1].value"));
  in = two_cam_engine(3);
  in.gears[1].pin_diameter = Length::mm(9.0);
  EXPECT_FALSE(solve(in));
  in = five_by_five();
  in.gears[0].size_means = SizeMeans::Thickness;
  EXPECT_TRUE(refused(in, 200, "gears[0].fitted"));
}

// --- ranking ---

TEST(GearPick, TiesGoToTheLooserOne) {
  // Lash 0.03 in the middle of the window: ±0.01 lie equally far from its edges.
  Input in = one_mesh(0.04, 0.04, 0.02, 0.04);
  offer(in.gears[0], SizeMeans::Class, Length{}, {Length::mm(0.015), Length::mm(0.005)});
  const Set set = solved(in).sets[0];
  EXPECT_NEAR(set.ranked[0].score_mm, set.ranked[1].score_mm, 1e-12);
  EXPECT_NEAR(set.choice(set.ranked[0], 0).thicker.in_mm(), 0.005, 1e-12) << "tight teeth never run in";
}

TEST(GearPick, ThenTheLeastEffortThenThePrice) {
  Input in = five_by_five();
  in.gears[1].joint = Joint::Pressed;
  const Set pressed = solved(in).sets[0];
  // +0.03 has two ways, both change both gears; +0.02 has (0,.02), (.02,0), (.01,.01).
  const auto first_of_sum = [](const Set& set, double sum_mm) {
    return *std::find_if(set.ranked.begin(), set.ranked.end(), [&](const Candidate& c) {
      return std::abs((set.choice(c, 0).thicker + set.choice(c, 1).thicker).in_mm() - sum_mm) < 1e-9;
    });
  };
  EXPECT_NEAR(pressed.choice(first_of_sum(pressed, 0.02), 0).thicker.in_mm(), 0.02, 1e-12);
  EXPECT_EQ(first_of_sum(pressed, 0.02).effort, 1.0);

  in.gears[1].effort = 0.5;
  const Set easy = solved(in).sets[0];
  EXPECT_NEAR(easy.choice(first_of_sum(easy, 0.02), 1).thicker.in_mm(), 0.02, 1e-12);

  in = five_by_five();
  for (Gear& g : in.gears)
    for (Size& s : g.sizes) s.price = Money::amount(g.name == "rear" ? 90.0 : 40.0);
  const Set priced = solved(in).sets[0];
  EXPECT_EQ(first_of_sum(priced, 0.02).price, 40.0);
}

TEST(GearPick, LeavingItIsACandidateAndCanWin) {
  Input in = one_mesh(0.03, 0.03, 0.02, 0.04);
  for (Gear& g : in.gears) offer(g, SizeMeans::Class, Length{}, offsets());
  const Set set = solved(in).sets[0];
  EXPECT_EQ(set.leave_it, 0U) << "as good as −0.01 and +0.01 together, and no work";
  EXPECT_EQ(choice_text(in, set, set.best()), "leave it");
}

TEST(GearPick, WhatIsNotInStockComesAfterWhatIs) {
  Input in = one_mesh(0.06, 0.06, 0.02, 0.06);
  offer(in.gears[0], SizeMeans::Class, Length{}, {Length::mm(0.02), Length::mm(0.01)});
  in.gears[0].sizes[0].stock = 0;
  const Set set = solved(in).sets[0];
  EXPECT_NEAR(set.choice(set.best(), 0).thicker.in_mm(), 0.01, 1e-12);
  EXPECT_EQ(set.ranked.back().standing, Standing::NotInStock);
}

// --- temperatures ---

Input in_aluminium(double low_mm, double high_mm) {
  Input in = one_mesh(low_mm, high_mm, 0.0, 0.2);
  in.temperatures = {};
  offer(in.gears[0], SizeMeans::Class, Length{}, offsets());
  return in;
}

TEST(GearPick, LashMustBeLeftInEveryState) {
  Input in = in_aluminium(0.006, 0.010);
  in.temperatures.coldest_start = Temperature::celsius(-30.0);
  const Set set = solved(in).sets[0];
  const Candidate& left = set.ranked[set.leave_it];
  EXPECT_LE(set.lash(left, 0, State::ColdestStart).low.in_mm(), 0.0);
  EXPECT_EQ(left.standing, Standing::NoLash);
  EXPECT_EQ(left.verdict, Verdict::Outside);
  EXPECT_GT(set.best().least_mm, 0.0);
}

TEST(GearPick, EachWindowIsJudgedInItsOwnState) {
  Input in = in_aluminium(0.030, 0.030);
  in.meshes[0].windows = {{State::ColdestStart, Length::mm(0.020), {}}, {State::FullyHot, {}, Length::mm(0.050)}};
  const Set set = solved(in).sets[0];
  for (const Candidate& c : set.ranked) {
    const double cold = set.lash(c, 0, State::ColdestStart).low.in_mm() - 0.020;
    const double hot = 0.050 - set.lash(c, 0, State::FullyHot).high.in_mm();
    EXPECT_NEAR(c.score_mm, std::min(cold, hot), 1e-12);
  }
}

TEST(GearPick, StatesAreThoseOfTheMeasuredLash) {
  const Input in = in_aluminium(0.030, 0.040);
  const Set set = solved(in).sets[0];
  const auto frame = gear_pair::frame(40, 40, Module::mm(1.0), Angle::deg(20), Angle{}, Length::mm(40.0)).value();
  for (const State s : lash_temperature::all_states) {
    const auto growth = lash_temperature::growth_in(in.temperatures, s);
    EXPECT_NEAR(set.lash(set.ranked[set.leave_it], 0, s).high.in_mm(),
                lash_temperature::lash_after(gear_pair::mesh_of(frame), Length::mm(0.040), growth)->in_mm(), 1e-13);
  }
}

TEST(GearPick, TeethOfAChoiceHaveItsLeastLashAndItsSize) {
  const Input in = two_cam_engine(3);
  for (const Set& set : solved(in).sets) {
    for (const Candidate& c : set.ranked) {
      const auto pair = teeth(in, set, c, 0);
      ASSERT_TRUE(pair) << choice_text(in, set, c);
      EXPECT_NEAR(pair->lash.in_mm(), set.lash(c, 0, State::AsMeasured).low.in_mm(), 1e-12);
      const Gear& gear = in.gears[static_cast<std::size_t>(set.gears[set.meshes[0].gear_a])];
      const auto form = involute::form(gear.teeth, in.meshes[0].module, Angle::deg(20.0), Angle{});
      const double over_pins_mm = set.choice(c, set.meshes[0].gear_a).value.in_mm();
      EXPECT_NEAR(pair->gear1.thickness.in_mm(),
                  involute::thickness_from_pins_mm(form, over_pins_mm, gear.pin_diameter->in_mm()).value(), 1e-12);
    }
  }
}

// --- verdicts ---

TEST(GearPick, WithinOutsideAndNotProven) {
  Input in = one_mesh(0.030, 0.030, 0.020, 0.040);
  const auto verdict = [&](double u_mm) {
    in.meshes[0].uncertainty = Length::mm(u_mm);
    return solved(in).outcome.judgement->verdict;
  };
  EXPECT_EQ(verdict(0.010), Verdict::Within) << "reaching the edge with U is still within";
  EXPECT_EQ(verdict(0.0101), Verdict::NotProven);
  in.meshes[0].lash_low = in.meshes[0].lash_high = Length::mm(0.045);
  EXPECT_EQ(verdict(0.004), Verdict::Outside);
  EXPECT_EQ(verdict(0.006), Verdict::NotProven);
}

TEST(GearPick, WithoutUncertaintyOrByAnotherMethodNothingIsProven) {
  Input in = one_mesh(0.030, 0.030, 0.020, 0.040);
  in.meshes[0].uncertainty.reset();
  EXPECT_EQ(solved(in).outcome.judgement->verdict, Verdict::NotProven);
  EXPECT_TRUE(has(solved(in).outcome.findings, 1320));
  in = one_mesh(0.030, 0.030, 0.020, 0.040);
  for (const std::optional<bool> answer : {std::optional<bool>{}, std::optional(false)}) {
    in.meshes[0].measured_by_window_method = answer;
    EXPECT_EQ(solved(in).outcome.judgement->verdict, Verdict::NotProven);
    EXPECT_TRUE(has(solved(in).outcome.findings, 1321));
  }
}

TEST(GearPick, ADoubtfulCentreDistanceStopsWithinUntilConfirmed) {
  Input in = one_mesh(0.030, 0.030, 0.020, 0.040);
  in.meshes[0].centre_distance = Length::mm(40.3);
  EXPECT_EQ(solved(in).outcome.judgement->verdict, Verdict::NotProven);
  EXPECT_TRUE(has(solved(in).outcome.findings, 1102));
  in.meshes[0].sizes_confirmed = true;
  EXPECT_EQ(solved(in).outcome.judgement->verdict, Verdict::Within);
}

TEST(GearPick, TheWorstSetDecides) {
  Input in = two_cam_engine(9);
  EXPECT_EQ(solved(in).outcome.judgement->verdict, Verdict::Within);
  in.meshes[1].windows = {{State::AsMeasured, Length::thou(20.0), Length::thou(21.0)}};
  const Result r = solved(in);
  EXPECT_EQ(r.outcome.judgement->verdict, Verdict::Outside);
  EXPECT_EQ(r.outcome.judgement->figure, "sets[1].score");
  EXPECT_EQ(r.sets[0].best().verdict, Verdict::Within);
}

// --- nothing fits ---

TEST(GearPick, WhereNothingFitsTheNearestAndTheSizeThatWouldAreNamed) {
  Input in = one_mesh(0.100, 0.105, 0.020, 0.040);
  for (Gear& g : in.gears) offer(g, SizeMeans::Class, Length{}, offsets());
  const Result r = solved(in);
  const Set& set = r.sets[0];
  EXPECT_EQ(set.fitting, 0U);
  EXPECT_EQ(set.best().standing, Standing::TooLoose);
  EXPECT_NEAR(set.best().score_mm, -(0.105 - 0.04 - 0.040), 1e-12);
  EXPECT_TRUE(has(r.outcome.findings, 1322));
  EXPECT_TRUE(has(r.outcome.findings, 1323));
  EXPECT_FALSE(has(r.outcome.findings, 1326));
  ASSERT_EQ(set.would_fit.size(), 2U);
  // The other gear at +0.02: this one must be +0.045 … +0.060.
  EXPECT_NEAR(set.would_fit[0].from.in_mm(), 0.045, 1e-12);
  EXPECT_NEAR(set.would_fit[0].to.in_mm(), 0.060, 1e-12);

  in.gears[0].sizes.push_back({"made to order", set.would_fit[0].value, {}, {}});
  EXPECT_GT(solved(in).sets[0].fitting, 0U) << "the size that would do, does";
}

TEST(GearPick, TheSizeThatWouldDoIsNamedOverPinsToo) {
  Input in = two_cam_engine(3);
  in.meshes[0].lash_low = Length::thou(5.0);
  in.meshes[0].lash_high = Length::thou(5.8);
  const Set set = solved(in).sets[0];
  ASSERT_FALSE(set.would_fit.empty());
  for (const WouldFit& w : set.would_fit) {
    Input better = in;
    better.gears[static_cast<std::size_t>(w.gear)].sizes.push_back({"made to order", w.value, {}, {}});
    EXPECT_GT(solved(better).sets[0].fitting, 0U);
    EXPECT_LT(w.from, w.to);
  }
}

TEST(GearPick, ASwingWiderThanTheWindowCanNotBeCuredBySize) {
  Input in = one_mesh(0.010, 0.050, 0.020, 0.040);
  for (Gear& g : in.gears) offer(g, SizeMeans::Class, Length{}, offsets());
  const Result r = solved(in);
  EXPECT_EQ(r.sets[0].fitting, 0U);
  EXPECT_TRUE(r.sets[0].would_fit.empty());
  EXPECT_TRUE(has(r.outcome.findings, 1324));
  EXPECT_TRUE(has(r.outcome.findings, 1326));
  EXPECT_FALSE(has(r.outcome.findings, 1323));
}

TEST(GearPick, WhatFitsButIsNotToBeHadIsSaid) {
  Input in = five_by_five();
  EXPECT_FALSE(has(solved(in).outcome.findings, 1325));
  for (Gear& g : in.gears)
    for (Size& s : g.sizes) s.stock = 0;
  const Result r = solved(in);
  EXPECT_EQ(r.sets[0].best().standing, Standing::NotInStock);
  EXPECT_TRUE(has(r.outcome.findings, 1325));
  EXPECT_FALSE(has(r.outcome.findings, 1322)) << "something does fit";
}

TEST(GearPick, EachOneOutHasItsReason) {
  const Input in = five_by_five();
  const Set set = solved(in).sets[0];
  std::set<Standing> seen;
  for (const Candidate& c : set.ranked) {
    seen.insert(c.standing);
    EXPECT_FALSE(standing_text(in, set, c).empty());
  }
  EXPECT_TRUE(seen.contains(Standing::TooLoose));
  EXPECT_NE(standing_text(in, set, set.ranked.back()).find("too loose by"), std::string::npos);
}

// --- the engine as entered ---

TEST(GearPick, NamesMustExistAndBeTheirOwn) {
  Input in = five_by_five();
  in.meshes[0].gear_b = "frnot";
  EXPECT_TRUE(refused(in, 1301, "meshes[0].gear_b"));
  in = five_by_five();
  in.gears[0].shaft = "nowhere";
  EXPECT_TRUE(refused(in, 1301, "gears[0].shaft"));
  in = five_by_five();
  in.gears[1].name = "rear";
  EXPECT_TRUE(refused(in, 1302, "gears[1].name"));
  in = five_by_five();
  in.gears[1].shaft = "rear cam";
  EXPECT_TRUE(refused(in, 1303, "meshes[0].gear_b"));
  in = five_by_five();
  in.meshes.clear();
  EXPECT_TRUE(refused(in, 1304, "meshes"));
}

TEST(GearPick, OneGearHasOneSetOfTeeth) {
  Input in = row_of_three(3);
  in.meshes[1].pressure_angle = Angle::deg(25.0);
  EXPECT_TRUE(refused(in, 1305, "meshes[1].gear_a"));
}

TEST(GearPick, TheWantedLashMustBeThereWithItsSource) {
  Input in = five_by_five();
  in.meshes[0].windows.clear();
  EXPECT_TRUE(refused(in, 1308, "meshes[0].windows"));
  in = five_by_five();
  in.meshes[0].window_source.reset();
  EXPECT_TRUE(refused(in, 201, "meshes[0].window_source"));
  in = five_by_five();
  std::swap(in.meshes[0].windows[0].lowest, in.meshes[0].windows[0].highest);
  EXPECT_TRUE(refused(in, 1309, "meshes[0].windows[0].lowest"));
  in = five_by_five();
  in.meshes[0].lash_low = Length::mm(0.2);
  EXPECT_TRUE(refused(in, 1307, "meshes[0].lash_low"));
}

TEST(GearPick, ATrainThatIsNotTwoToOneIsRefused) {
  Input in = two_cam_engine(3);
  in.gears[0].teeth = 16;
  EXPECT_TRUE(refused(in, 1105, "shafts[1].role"));
  EXPECT_TRUE(refused(in, 1105, "shafts[2].role"));
  in = two_cam_engine(3);
  std::swap(in.gears[1].teeth, in.gears[2].teeth);  // inner and outer gear exchanged
  EXPECT_FALSE(solve(in));
  in = five_by_five();
  in.gears[1].teeth = 39;
  EXPECT_TRUE(refused(in, 1106, "shafts[1].role"));
}

TEST(GearPick, TwoToOneMayComeOutOverIdlers) {
  Input in;
  in.shafts = {{"crank", Role::Crank}, {"idler", Role::Idler}, {"cam", Role::Cam}};
  in.gears = {gear("pinion", "crank", 20), gear("idler gear", "idler", 30), gear("cam gear", "cam", 40)};
  in.meshes = {mesh("lower", "pinion", "idler gear", Module::mm(2.0), Length::mm(50.05)),
               mesh("upper", "idler gear", "cam gear", Module::mm(2.0), Length::mm(70.05))};
  for (Mesh& m : in.meshes) {
    m.lash_low = m.lash_high = Length::mm(0.036);
    m.windows = {{State::AsMeasured, Length::mm(0.02), Length::mm(0.05)}};
  }
  EXPECT_FALSE(has(solved(in).outcome.findings, 1317));
  in.gears[1].teeth = 31;
  in.meshes[0].sizes_confirmed = in.meshes[1].sizes_confirmed = true;
  EXPECT_TRUE(solve(in)) << "an idler's teeth do not matter to the ratio";
  in.gears[2].teeth = 41;
  EXPECT_FALSE(solve(in));
  in.shafts[2].role = Role::Other;  // nothing says what it should turn
  EXPECT_TRUE(has(solved(in).outcome.findings, 1317));
}

TEST(GearPick, ARingOfGearsMustAgreeWithItself) {
  Input in = row_of_three(3);
  in.shafts[2].role = Role::Other;
  in.gears[2].teeth = 26;
  Mesh closing = in.meshes[0];
  closing.name = "closing mesh";
  closing.gear_a = "first";
  closing.gear_b = "third";
  in.meshes.push_back(closing);
  EXPECT_TRUE(solve(in));
  Gear extra = gear("third small", "third cam", 25);
  in.gears.push_back(extra);
  in.meshes[2].gear_b = "third small";
  EXPECT_TRUE(refused(in, 1316, "meshes[2].gear_b"));
}

TEST(GearPick, TooManyCombinationsAreRefused) {
  EXPECT_TRUE(refused(row_of_three(101), 1306, "gears"));
  EXPECT_TRUE(solve(row_of_three(21)));
}

TEST(GearPick, ThreeTeethAndInfinityAreRefused) {
  Input in = two_cam_engine(3);
  in.gears[0].teeth = 3;
  EXPECT_TRUE(refused(in, 200, "gears[0].teeth"));
  in = two_cam_engine(3);
  in.gears[0].sizes[0].value = Length::mm(std::numeric_limits<double>::infinity());
  EXPECT_TRUE(refused(in, 202, "gears[0].sizes[0].value"));
}

TEST(GearPick, APressedGearInThePickIsSaid) {
  Input in = five_by_five();
  in.gears[0].sizes.clear();
  in.gears[1].joint = Joint::Pressed;
  EXPECT_TRUE(has(solved(in).outcome.findings, 1328));
}

TEST(GearPick, EveryFigureIsFiniteAndTheKeysAreUnique) {
  const Result r = solved(two_cam_engine(9));
  std::set<std::string> keys;
  for (const Figure& f : r.outcome.figures) {
    EXPECT_TRUE(std::isfinite(f.base)) << f.key;
    EXPECT_TRUE(keys.insert(f.key).second) << f.key;
  }
  EXPECT_TRUE(r.outcome.figure("meshes[1].pick.warm_up.low"));
  EXPECT_TRUE(r.outcome.figure("meshes[1].pick.warm_up.low")->uncertainty);
}

}  // namespace
}  // namespace camside::gear_pick
