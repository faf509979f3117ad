#include "calc/look_over/look_over.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "calc/answers.hpp"
#include "calc/look_over/look_over_inputs.hpp"
#include "calc/look_over/look_over_model.hpp"
#include "oracle/look_over_rows.hpp"

namespace camside::look_over {
namespace {

constexpr double end_of_range = 2.0 * 1'100.0 / 2'048.0;  // a step of all worst costs of the small book for each fault

double middle(const Input& in) {
  return solved(in).knock_off.middle.in_amount();
}

const Found& found(const std::vector<Found>& list, const std::string& risk) {
  const auto it = std::find_if(list.begin(), list.end(), [&](const Found& f) { return f.risk == risk; });
  static const Found none;
  EXPECT_NE(it, list.end()) << risk;
  return it == list.end() ? none : *it;
}

// ---- rows ----

TEST(LookOverRows, BayesByASign) {
  for (const auto& row : oracle::bayes_rows) {
    Input in = small_input();
    const double shows = (row.with_cause - row.without_cause) / (1.0 - row.without_cause);
    in.known.questions = {question("sign", YesNo::Yes, row.without_cause)};
    in.known.risks = {risk("cause", row.before, cost(1, 1, 1), {sign("sign", shows)})};
    const Result r = solved(answered(in, "sign", Said::Yes));
    EXPECT_NEAR(found(r.may_find, "cause").chance, row.after, row.tolerance);
  }
}

TEST(LookOverRows, PertMean) {
  for (const auto& row : oracle::pert_rows)
    EXPECT_NEAR(pert_mean({Money::amount(row.best), Money::amount(row.likely), Money::amount(row.worst)}), row.mean,
                1e-12);
}

TEST(LookOverRows, NothingSeenByHand) {
  const Result r = solved(small_input());
  EXPECT_NEAR(r.knock_off.low.in_amount(), oracle::nothing_seen.low, end_of_range);
  EXPECT_NEAR(r.knock_off.middle.in_amount(), oracle::nothing_seen.middle, 1e-9);
  EXPECT_NEAR(r.knock_off.high.in_amount(), oracle::nothing_seen.high, end_of_range);
  EXPECT_NEAR(r.once_seen.low.in_amount(), oracle::nothing_seen.all_good, 1e-9);
  EXPECT_EQ(r.once_seen.middle, r.knock_off.middle);
  EXPECT_NEAR(r.once_seen.high.in_amount(), oracle::nothing_seen.all_bad, 1e-9);
  ASSERT_TRUE(r.offer);
  EXPECT_NEAR(r.offer->middle.in_amount(), 5'540.0, 1e-9);
  EXPECT_NEAR(r.offer->low.in_amount(), 6'000.0 - oracle::nothing_seen.high, end_of_range);
  EXPECT_NEAR(r.offer->high.in_amount(), 6'000.0 - oracle::nothing_seen.low, end_of_range);
  EXPECT_TRUE(says(r, 1825));
}

// ---- the range ----

// Pump alone: 300 in 2 of 10; the sum of 60 lies between.
TEST(LookOverRange, IsOfWhatItReallyCosts) {
  Input in = small_input();
  in.known.risks = {risk("pump", 0.2, cost(300, 300, 300))};
  const Span off = solved(in).knock_off;
  EXPECT_EQ(off.low, Money{});
  EXPECT_NEAR(off.middle.in_amount(), 60.0, 1e-9);
  EXPECT_NEAR(off.high.in_amount(), 300.0, end_of_range);
}

TEST(LookOverRange, HoldsTheSumOfARareDearFault) {
  Input in = small_input();
  in.known.risks = {risk("pump", 0.02, cost(3000, 3000, 3000))};
  const Span off = solved(in).knock_off;
  EXPECT_NEAR(off.middle.in_amount(), 60.0, 1e-9);
  EXPECT_EQ(off.high, off.middle) << "49 in 50 cost nothing";
}

TEST(LookOverRange, OfWhatMustBeDoneIsOfItsCost) {
  Input in = small_input();
  in.known.risks.pop_back();
  const Span off = solved(answered(in, "papers", Said::No)).knock_off;
  EXPECT_NEAR(off.low.in_amount(), 200.0, end_of_range);
  EXPECT_NEAR(off.high.in_amount(), 600.0, end_of_range);
  EXPECT_EQ(solved(in).knock_off.low, off.low) << "not seen is no proof either";
}

TEST(LookOverRange, OfNoMoneyAtAllIsNone) {
  Input in = small_input();
  in.known.risks = {risk("pump", 0.2, cost(0, 0, 0))};
  EXPECT_EQ(solved(in).knock_off.high, Money{});
}

// ---- must do anyway ----

TEST(LookOverMust, NoProofMustBeDoneWhateverElseLooksGood) {
  const Result unseen = solved(small_input());
  ASSERT_EQ(unseen.must_do.size(), 1U);
  EXPECT_EQ(unseen.must_do[0].risk, "shoes");
  EXPECT_NEAR(unseen.must_do[0].expected.in_amount(), 400.0, 1e-9);
  EXPECT_EQ(solved(answered(small_input(), "papers", Said::No)).must_do.size(), 1U);
}

TEST(LookOverMust, ProofLeavesASmallChance) {
  const Result r = solved(answered(small_input(), "papers", Said::Yes));
  EXPECT_TRUE(r.must_do.empty());
  EXPECT_NEAR(found(r.may_find, "shoes").chance, 0.025 / 1.025, 1e-12);
}

TEST(LookOverMust, OnlyFromItsOdometerOn) {
  Input in = small_input();
  in.known.risks[0].must_from = Distance::miles(30'000.0);
  EXPECT_EQ(solved(in).must_do.size(), 1U);  // the reading itself counts
  in.odometer = Distance::miles(29'999.0);
  EXPECT_TRUE(solved(in).must_do.empty());
  in.odometer.reset();
  EXPECT_EQ(solved(in).must_do.size(), 1U);
}

// ---- answers ----

TEST(LookOverAnswers, DidntSeeIsTheSameAsNoAnswer) {
  const Input in = answered(answered(small_input(), "lamp", Said::DidntSee), "papers", Said::DidntSee);
  EXPECT_EQ(middle(in), middle(small_input()));
}

TEST(LookOverAnswers, GoodAndBadMoveTheChance) {
  EXPECT_NEAR(found(solved(answered(small_input(), "lamp", Said::Yes)).may_find, "pump").chance, 1.375 / 2.375, 1e-12);
  EXPECT_NEAR(found(solved(answered(small_input(), "lamp", Said::No)).may_find, "pump").chance, 1.0 / 9.0, 1e-12);
}

TEST(LookOverAnswers, AWarmEngineVoidsAGoodColdStartAndNotABadOne) {
  Input in = answered(small_input(), "lamp", Said::Yes);
  in.known.questions[1].cold_only = true;
  const Input cold = in;
  EXPECT_FALSE(says(solved(in), 1820));
  EXPECT_GT(middle(in), middle(small_input()));
  for (const Touched t : {Touched::Warm, Touched::Not}) {
    in.touched = t;
    const Result r = solved(in);
    EXPECT_FALSE(says(r, 1820));
    EXPECT_EQ(r.knock_off.middle, solved(cold).knock_off.middle) << "warming the engine must not raise the offer";
    Input good = in;
    good.answers[0].said = Said::No;
    const Result quiet = solved(good);
    EXPECT_TRUE(says(quiet, 1820));
    EXPECT_EQ(quiet.knock_off.middle, solved(small_input()).knock_off.middle);
    const auto is_lamp = [](const Look& l) { return l.question == "lamp"; };
    const auto look = std::find_if(quiet.looks.begin(), quiet.looks.end(), is_lamp);
    ASSERT_NE(look, quiet.looks.end());
    EXPECT_TRUE(look->needs_cold);
  }
}

TEST(LookOverAnswers, SilenceProvesNothingButNoiseCounts) {
  Input in = small_input();
  in.known.questions[1].silence = true;
  const Result quiet = solved(answered(in, "lamp", Said::No));
  EXPECT_NEAR(found(quiet.may_find, "pump").chance, 0.2, 1e-12);
  EXPECT_TRUE(says(quiet, 1826));
  EXPECT_NEAR(found(solved(answered(in, "lamp", Said::Yes)).may_find, "pump").chance, 1.375 / 2.375, 1e-12);
}

TEST(LookOverAnswers, AWarmEngineHidesAGoodAnswerButNotABadOne) {
  Input in = small_input();
  in.known.questions[1].warm_hides = true;
  in.touched = Touched::Warm;
  const Result good = solved(answered(in, "lamp", Said::No));
  EXPECT_NEAR(found(good.may_find, "pump").chance, 0.2, 1e-12);
  EXPECT_TRUE(says(good, 1820));
  EXPECT_TRUE(std::any_of(good.looks.begin(), good.looks.end(),
                          [](const Look& l) { return l.question == "lamp" && l.needs_cold; }));
  const Result bad = solved(answered(in, "lamp", Said::Yes));
  EXPECT_NEAR(found(bad.may_find, "pump").chance, 1.375 / 2.375, 1e-12);
  EXPECT_FALSE(says(bad, 1820));
  EXPECT_FALSE(solved(in).looks.back().needs_cold) << "not answered: a bad answer still tells";
  in.touched = Touched::Cold;
  EXPECT_NEAR(found(solved(answered(in, "lamp", Said::No)).may_find, "pump").chance, 1.0 / 9.0, 1e-12);
}

// Fresh oil and no glitter: nothing was seen, so nothing is ruled out.
TEST(LookOverAnswers, WhatHidesAGoodAnswerMakesItNotSeen) {
  Input in = small_input();
  in.known.questions.push_back(question("fresh", YesNo::Yes, 0.2));
  in.known.questions[1].hidden_by = "fresh";
  in.known.questions[1].walk_away = "glitter";
  in.known.risks[1].signs.push_back(sign("fresh", 0.0001));
  const Input clean = answered(in, "lamp", Said::No);
  EXPECT_EQ(solved(clean).walk_away[0].met, Met::NotMet);
  EXPECT_FALSE(says(solved(clean), 1827));
  const Result hidden = solved(answered(clean, "fresh", Said::Yes));
  EXPECT_EQ(hidden.walk_away[0].met, Met::NotSeen);
  EXPECT_TRUE(says(hidden, 1827));
  EXPECT_NEAR(found(hidden.may_find, "pump").chance, 0.2, 1e-3);
  ASSERT_FALSE(hidden.looks.empty());
  EXPECT_EQ(hidden.looks.back().question, "lamp") << "last: a look tells nothing today";
  EXPECT_EQ(hidden.looks.back().hidden_by, "fresh");
  const Result glitter = solved(answered(answered(in, "lamp", Said::Yes), "fresh", Said::Yes));
  EXPECT_EQ(glitter.walk_away[0].met, Met::Met) << "seen all the same";
}

// ---- a reading on the bill ----

Input with_bill(double miles) {
  Input in = small_input();
  in.known.risks[0].chances = {{Distance::miles(0.0), 0.02}, {Distance::miles(60'000.0), 0.62}};
  in.answers.push_back({"papers", Said::Yes, Distance::miles(miles)});
  return in;
}

TEST(LookOverBill, ItsReadingCountsFromThereOn) {
  const Found fresh = found(solved(with_bill(20'000.0)).may_find, "shoes");
  EXPECT_NEAR(fresh.chance, 0.02 + 0.6 * 10'000.0 / 60'000.0, 1e-12);
  EXPECT_NE(fresh.chance_from.find("since it was done"), std::string::npos) << fresh.chance_from;
  EXPECT_EQ(fresh.chance_from.find("papers"), std::string::npos) << "the bill is no sign any more";
  EXPECT_GT(found(solved(with_bill(1'000.0)).may_find, "shoes").chance, fresh.chance) << "an old bill proves less";
}

TEST(LookOverBill, AboveTheOdometerItContradictsAndDoesNotCount) {
  Input in = with_bill(30'001.0);
  const Result r = solved(in);
  EXPECT_TRUE(says(r, 1828));
  EXPECT_EQ(r.must_do.size(), 1U) << "it proves nothing";
  EXPECT_FALSE(says(solved(with_bill(30'000.0)), 1828));
  in.known.questions[1].clock = true;
  in.known.questions[1].walk_away = "the papers contradict the odometer";
  EXPECT_EQ(solved(answered(in, "lamp", Said::No)).walk_away[0].met, Met::Met) << "whatever was said";
}

TEST(LookOverBill, OfADayToComeItContradictsToo) {
  Input in = with_bill(20'000.0);
  in.today = Date{std::chrono::year{2027}, std::chrono::month{9}, std::chrono::day{18}};
  in.answers[0].day = in.today;
  EXPECT_FALSE(says(solved(in), 1840));
  in.answers[0].day = Date{std::chrono::year{2027}, std::chrono::month{9}, std::chrono::day{19}};
  const Result r = solved(in);
  EXPECT_TRUE(says(r, 1840));
  EXPECT_EQ(r.must_do.size(), 1U);
}

TEST(LookOverBill, OneThatIsTooOldOrHasNoReadingLeavesTheWorkInTheSum) {
  Input in = with_bill(20'000.0);
  in.known.risks[0].every = Distance::miles(30'000.0);
  EXPECT_TRUE(solved(in).must_do.empty());
  in.odometer = Distance::miles(50'000.0);
  EXPECT_TRUE(solved(in).must_do.empty()) << "on the due reading still in time";
  in.odometer = Distance::miles(50'001.0);
  const Result old = solved(in);
  ASSERT_EQ(old.must_do.size(), 1U);
  EXPECT_TRUE(says(old, 1841));
  EXPECT_EQ(old.must_do[0].why_must, "the bill is older than the interval");
  in.answers[0].reading.reset();
  const Result bare = solved(in);
  ASSERT_EQ(bare.must_do.size(), 1U);
  EXPECT_TRUE(says(bare, 1842));
  EXPECT_EQ(bare.must_do[0].why_must, "the bill has no reading to count from");
}

// ---- what turns the cams now ----

Input with_drives() {
  Input in = small_input();
  in.known.drives = {{"chains", "Chains", ""}, {"gears", "Gears", "Ask who fitted them"}};
  in.known.engines[0].drives = {"chains", "gears"};
  in.known.risks[0].drives = {"chains"};
  Risk gears = risk("gears", 0.1, cost(300, 600, 900));
  gears.drives = {"gears"};
  gears.must_when_bad = {"lamp"};
  in.known.risks.push_back(gears);
  return in;
}

TEST(LookOverDrive, AConvertedBikeHasNoneOfTheOldDrivesWorkAndQuestions) {
  Input in = with_drives();
  const Result built = solved(in);
  EXPECT_EQ(built.drive, "chains");
  EXPECT_TRUE(says(built, 1837)) << "not asked, so taken as built";
  EXPECT_EQ(built.must_do.size(), 1U);
  in.drive = "gears";
  const Result gears = solved(in);
  EXPECT_EQ(gears.drive, "gears");
  EXPECT_FALSE(says(gears, 1837));
  EXPECT_TRUE(gears.must_do.empty());
  EXPECT_EQ(gears.questions, std::vector<std::string>{"lamp"}) << "nobody is asked for papers of shoes it hasn't got";
  const Result whine = solved(answered(in, "lamp", Said::Yes));
  ASSERT_EQ(whine.must_do.size(), 1U);
  EXPECT_EQ(whine.must_do[0].risk, "gears");
  in.drive = std::string(drive_not_known);
  const Result open = solved(in);
  EXPECT_TRUE(says(open, 1838));
  EXPECT_EQ(open.drives.size(), 2U);
  EXPECT_GE(open.knock_off.middle, std::max(built.knock_off.middle, gears.knock_off.middle));
  in.drive = "belt";
  EXPECT_TRUE(says(solved(in), 1839));
}

TEST(LookOverMust, DoneWithTheWorkThatOpensItAnyway) {
  Input in = small_input();
  in.known.risks[1].proof = "lamp";
  in.known.risks[1].must_from = Distance::miles(50'000.0);
  in.known.risks[1].must_with = "shoes";
  EXPECT_EQ(solved(in).must_do.size(), 2U);
  EXPECT_EQ(solved(in).must_do[1].why_must, "with the work on: risk shoes");
  EXPECT_TRUE(solved(answered(in, "papers", Said::Yes)).must_do.empty()) << "alone it is not due at 30,000 mi";
}

TEST(LookOverQuestions, FirstTheFewThatCanEndItOrAreWorthMostThenTheOthersByWorth) {
  Input in = small_input();
  for (int i = 0; i < 12; ++i) {
    const std::string id = "q" + std::to_string(i);
    in.known.questions.push_back(question(id, YesNo::Yes, 0.1));
    in.known.risks.push_back(risk("r" + id, 0.2, cost(10, 10.0 + 10.0 * i, 300), {sign(id, 0.5)}));
  }
  in.known.questions.back().walk_away = "it ends";
  const Result r = solved(in);
  EXPECT_EQ(r.first, 8U);
  EXPECT_EQ(r.questions.size(), 14U);
  EXPECT_EQ(r.questions[7], "q11") << "as one walks round the bike, and so last in the book's order";
  EXPECT_EQ(r.questions[0], "papers");
  EXPECT_EQ(r.questions.back(), "q0") << "worth least";
  EXPECT_EQ(r.rest_open, 6U);
  EXPECT_GT(r.rest_narrows.in_amount(), 0.0);
  const Result one = solved(answered(in, "q0", Said::No));
  EXPECT_EQ(one.questions, r.questions) << "no order changes under the thumb";
  EXPECT_EQ(one.rest_open, 5U);
}

TEST(LookOverAnswers, NoPapersIsAnAnswerAndNoLongerTheNextAdvice) {
  Input in = small_input();
  in.known.questions[1].none = "No papers";
  in.known.questions[1].walk_away = "they contradict";
  EXPECT_EQ(solved(in).looks.front().question, "lamp");
  EXPECT_EQ(solved(in).may_end_it, 1U);
  const Result none = solved(answered(in, "lamp", Said::None));
  EXPECT_TRUE(std::none_of(none.looks.begin(), none.looks.end(), [](const Look& l) { return l.question == "lamp"; }));
  EXPECT_EQ(none.may_end_it, 0U);
  EXPECT_EQ(none.knock_off.middle, solved(in).knock_off.middle) << "it proves nothing either way";
}

TEST(LookOverEngines, AYearOutsideAllGoesOnAsYourOwnEngine) {
  Input in = small_input();
  in.known.engines.push_back(engine("mine", {}, {}));
  in.known.engines.back().own = true;
  in.year = 1950;
  const Result r = solved(in);
  EXPECT_EQ(r.engine, "mine");
  EXPECT_TRUE(says(r, 1836));
}

TEST(LookOverEngines, OneBuiltBesideTheOthersCountsOnlyWhenPicked) {
  Input in = small_input();
  in.known.engines.push_back(engine("small", 1986, 2022));
  in.known.engines.back().picked = true;
  EXPECT_EQ(solved(in).engines, std::vector<std::string>{"sprung"});
  in.engine = "small";
  EXPECT_EQ(solved(in).engine, "small");
}

// ---- one sentence, whose parts add up ----

TEST(LookOverSentence, ItsPartsAddUpToTheOffer) {
  const Input in = small_input();
  EXPECT_EQ(in_one_sentence(in, solved(in)), "Offer 5,540: risk shoes 400, the rest 60");
  EXPECT_EQ(sum_shown(solved(in)), Money::amount(460.0));
  Input dollars = in;
  dollars.currency = "$";
  EXPECT_EQ(in_one_sentence(dollars, solved(dollars)), "Offer $5,540: risk shoes 400, the rest 60");
  Input open = in;
  open.known.questions[1].walk_away = "lamp on";
  EXPECT_TRUE(in_one_sentence(open, solved(open)).starts_with("Offer 5,")) << in_one_sentence(open, solved(open));
  EXPECT_NE(in_one_sentence(open, solved(open)).find("once 1 point that can end it is looked at"), std::string::npos);
  EXPECT_EQ(in_one_sentence(open, solved(answered(open, "lamp", Said::Yes))), "Walk away: lamp on");
  Input nobodys = in;
  nobodys.known.risks[0].cost.placeholder = true;
  EXPECT_EQ(in_one_sentence(nobodys, solved(nobodys)), "Must do anyway: risk shoes") << "no figure that is nobody's";
}

TEST(LookOverWorking, EachAnswerSaysItsFactorAndTheStepsAddUp) {
  Input in = answered(small_input(), "lamp", Said::Yes);
  for (int i = 0; i < 5; ++i) in.known.risks.push_back(risk("r" + std::to_string(i), 0.13, cost(33, 77, 100)));
  const Result r = solved(in);
  EXPECT_NE(found(r.may_find, "pump").chance_from.find("“Is it so: lamp?” × 5.5"), std::string::npos)
      << found(r.may_find, "pump").chance_from;
  double sum = 0.0;
  for (const Step& s : r.outcome.working) {
    if (s.title == "Engine work") {
      EXPECT_EQ(money_text(Money::amount(sum)), s.result);
      break;
    }
    const std::size_t at = s.result.rfind(' ');
    sum += std::stod(at == std::string::npos ? s.result : s.result.substr(at + 1));
  }
}

TEST(LookOverBill, WithAnotherAnswerItWaits) {
  Input in = with_bill(20'000.0);
  in.answers[0].said = Said::No;
  EXPECT_EQ(solved(in).must_do.size(), 1U);
  Input without = in;
  without.answers[0].reading.reset();
  EXPECT_EQ(middle(in), middle(without));
}

TEST(LookOverBill, OnlyOnProof) {
  Input in = small_input();
  in.answers.push_back({"lamp", Said::Yes, Distance::miles(20'000.0)});
  EXPECT_TRUE(refused(in, 1809, "answers[0]"));
  in.answers[0] = {"lamp", Said::Yes, {}, Date{std::chrono::year{2023}, std::chrono::month{5}, std::chrono::day{14}}};
  EXPECT_TRUE(refused(in, 1809, "answers[0]"));
}

TEST(LookOverAnswers, WalkAwayIsMetOrNotOrNotSeen) {
  Input in = small_input();
  in.known.questions[1].walk_away = "lamp on hot";
  EXPECT_EQ(solved(in).walk_away[0].met, Met::NotSeen);
  EXPECT_EQ(solved(answered(in, "lamp", Said::No)).walk_away[0].met, Met::NotMet);
  const Result met = solved(answered(in, "lamp", Said::Yes));
  EXPECT_EQ(met.walk_away[0].met, Met::Met);
  EXPECT_TRUE(says(met, 1834));
  EXPECT_FALSE(met.offer);  // no price makes up for it
  EXPECT_TRUE(solved(answered(in, "lamp", Said::No)).offer);
  EXPECT_TRUE(solved(in).looks[0].can_end_it || solved(in).looks[1].can_end_it);
}

// ---- chances ----

TEST(LookOverChance, StraightLinesBetweenThePointsLevelOutside) {
  Input in = small_input();
  in.known.risks[1].chances = {{Distance::miles(10'000.0), 0.1}, {Distance::miles(30'000.0), 0.3}};
  const auto chance = [&](double miles) {
    in.odometer = Distance::miles(miles);
    return found(solved(in).may_find, "pump").chance;
  };
  EXPECT_NEAR(chance(0.0), 0.1, 1e-12);
  EXPECT_NEAR(chance(20'000.0), 0.2, 1e-12);
  EXPECT_NEAR(chance(30'000.0), 0.3, 1e-12);
  EXPECT_NEAR(chance(90'000.0), 0.3, 1e-12);
}

TEST(LookOverChance, NoOdometerCountsAsManyMilesAndWidens) {
  Input in = small_input();
  in.known.risks[1].chances = {{Distance::miles(10'000.0), 0.1}, {Distance::miles(30'000.0), 0.3}};
  const Result known = solved(in);
  in.odometer.reset();
  const Result r = solved(in);
  EXPECT_TRUE(says(r, 1823));
  EXPECT_NEAR(found(r.may_find, "pump").chance, 0.3, 1e-12);
  EXPECT_LT(r.once_seen.low, known.once_seen.low);
  in.odometer = Distance::miles(413'000.0);
  EXPECT_TRUE(says(solved(in), 1824));
}

TEST(LookOverChance, ThousandsTypedWithAPointAreAskedAbout) {
  Input in = small_input();
  in.odometer = Distance::miles(100.0);
  in.asking = Money::amount(100.0);
  EXPECT_FALSE(says(solved(in), 1829));
  EXPECT_FALSE(says(solved(in), 1835));
  in.odometer = Distance::miles(41.3);
  in.asking = Money::amount(5.8);
  EXPECT_TRUE(says(solved(in), 1829));
  EXPECT_TRUE(says(solved(in), 1835));
}

TEST(LookOverChance, WordsForTheBuyersScreen) {
  Input in = small_input();
  const auto word = [&](double chance) {
    in.known.risks[1].chances = {{Distance{}, chance}};
    return word_of(found(solved(in).may_find, "pump").likelihood);
  };
  EXPECT_EQ(word(0.05), "seldom");
  EXPECT_EQ(word(0.2), "may be");
  EXPECT_EQ(word(0.6), "likely");
}

TEST(LookOverChance, NearlyCertainIsNoWonderOfDigits) {
  EXPECT_EQ(percent(0.004), "0.4 %");
  EXPECT_EQ(percent(0.088), "8.8 %");
  EXPECT_EQ(percent(0.275), "28 %");
  EXPECT_EQ(percent(0.99), "99 %");
  EXPECT_EQ(percent(0.998), "over 99 %");
}

TEST(LookOverChance, SaysWhereItComesFrom) {
  const Result r = solved(answered(small_input(), "lamp", Said::Yes));
  const std::string& from = found(r.may_find, "pump").chance_from;
  EXPECT_NE(from.find("common practice, no published source"), std::string::npos) << from;
  EXPECT_NE(from.find("“Is it so: lamp?” × 5.5"), std::string::npos) << from;
  EXPECT_NE(from.find("30,000 mi"), std::string::npos) << from;
}

// ---- engines ----

Input two_engines() {
  Input in = small_input();
  in.known.engines.push_back(engine("hydraulic", 2006, 2017));
  in.known.engines.push_back(engine("mine", {}, {}));
  in.known.engines.back().own = true;
  in.known.risks[0].engines = {"sprung"};
  return in;
}

TEST(LookOverEngine, ByYearAndOwnOnlyWhenPicked) {
  Input in = two_engines();
  EXPECT_EQ(solved(in).engines, std::vector<std::string>{"sprung"});
  in.year = 2010;
  EXPECT_EQ(solved(in).engine, "hydraulic");
  EXPECT_TRUE(solved(in).must_do.empty());
  in.engine = "mine";
  EXPECT_EQ(solved(in).engine, "mine");
  in.engine = "sprung";
  EXPECT_TRUE(says(solved(in), 1822));
}

TEST(LookOverEngine, NotSettledCountsTheDearestAndCoversAll) {
  Input in = two_engines();
  in.year = 2006;
  const Result r = solved(in);
  EXPECT_EQ(r.engine, "sprung");
  EXPECT_EQ(r.engines.size(), 2U);
  EXPECT_TRUE(says(r, 1821));
  EXPECT_NEAR(r.knock_off.middle.in_amount(), 460.0, 1e-9);
  EXPECT_NEAR(r.once_seen.low.in_amount(), 300.0 / 9.0, 1e-9) << "the other has no shoes";
  EXPECT_NEAR(r.knock_off.high.in_amount(), oracle::nothing_seen.high, end_of_range);
  in.year.reset();
  EXPECT_EQ(solved(in).engines.size(), 2U);
}

TEST(LookOverEngine, WhatOnlyTheOtherHasIsListedApart) {
  Input in = two_engines();
  in.year = 2006;
  EXPECT_TRUE(solved(in).elsewhere.empty());
  in.known.risks.push_back(risk("other", 0.01, cost(1, 2, 3, true)));
  in.known.risks.back().engines = {"hydraulic"};
  const Result r = solved(in);
  ASSERT_EQ(r.elsewhere.size(), 1U);
  EXPECT_EQ(r.elsewhere[0].risk, "other");
  EXPECT_TRUE(r.elsewhere[0].placeholder);
  EXPECT_EQ(r.knock_off.middle, Money::amount(460.0));
}

TEST(LookOverEngine, NoneIsRefused) {
  Input in = two_engines();
  in.year = 1970;
  for (Engine& e : in.known.engines) e.own = false;
  for (Engine& e : in.known.engines) e.first_year = 1999;
  EXPECT_TRUE(has(refused(in), 1801));
  in.engine = "theirs";
  EXPECT_TRUE(has(refused(in), 1802));
}

// ---- money ----

Input with_placeholders() {
  Input in = small_input();
  in.known.risks[0].cost.placeholder = true;
  in.known.risks[1].cost.placeholder = true;
  return in;
}

OwnCost own(const std::string& risk, double best, double likely, double worst) {
  return {risk, Money::amount(best), Money::amount(likely), Money::amount(worst)};
}

TEST(LookOverMoney, PlaceholdersNeverYieldAnOffer) {
  Input in = with_placeholders();
  const Result r = solved(in);
  EXPECT_FALSE(r.offer);
  EXPECT_TRUE(says(r, 1830));
  EXPECT_EQ(r.outcome.figure("offer"), nullptr);
  EXPECT_NE(r.outcome.figure("knock_off")->label.find("made-up prices"), std::string::npos);
  in.money_confirmed = true;
  EXPECT_TRUE(solved(in).offer);
  EXPECT_FALSE(says(solved(in), 1830));
}

TEST(LookOverMoney, OnesOwnPricesOfWhatMustBeDoneYieldOneAndTheRestStaysMarked) {
  Input in = with_placeholders();
  in.costs = {own("pump", 100, 300, 500)};
  EXPECT_FALSE(solved(in).offer);
  EXPECT_NE(text_of(solved(in).outcome.findings, 1830).find("risk shoes"), std::string::npos);
  in.costs = {own("shoes", 300, 300, 300)};
  const Result half = solved(in);
  EXPECT_TRUE(half.offer);
  EXPECT_FALSE(says(half, 1830));
  EXPECT_TRUE(prices_rest_on_nobody(half)) << "the pump's is still made up, and says so";
  EXPECT_NEAR(half.knock_off.middle.in_amount(), 300.0 + 60.0, 1e-9);
  in.costs.push_back(own("pump", 100, 300, 500));
  EXPECT_FALSE(prices_rest_on_nobody(solved(in)));
}

TEST(LookOverMoney, APlaceholderOfAnEngineItOnlyMayBeStopsTheOfferToo) {
  Input in = two_engines();
  in.year = 2006;
  in.known.risks.push_back(risk("other", 0.01, cost(1, 2, 3, true)));
  in.known.risks.back().engines = {"hydraulic"};
  in.known.risks.back().proof = "papers";
  EXPECT_EQ(solved(in).engine, "sprung");
  EXPECT_FALSE(solved(in).offer);
  in.engine = "sprung";
  EXPECT_TRUE(solved(in).offer);
}

TEST(LookOverMoney, NoOfferBelowNothingOrWithoutAskingPrice) {
  Input in = small_input();
  in.asking = Money::amount(300.0);
  const Result r = solved(in);
  EXPECT_EQ(r.offer->low, Money{});
  EXPECT_EQ(r.offer->middle, Money{});
  EXPECT_GT(r.offer->high, Money{});
  EXPECT_TRUE(says(r, 1832));
  EXPECT_TRUE(says(r, 1833));
  in.asking.reset();
  EXPECT_FALSE(solved(in).offer);
  EXPECT_TRUE(says(solved(in), 1831));
  EXPECT_FALSE(says(solved(in), 1833));
}

TEST(LookOverMoney, RankedByExpectedCost) {
  Input in = small_input();
  in.known.risks = {risk("a", 0.5, cost(10, 10, 10)), risk("b", 0.1, cost(900, 900, 900)),
                    risk("c", 0.9, cost(50, 50, 50))};
  const Result r = solved(in);
  ASSERT_EQ(r.may_find.size(), 3U);
  EXPECT_EQ(r.may_find[0].risk, "b");
  EXPECT_EQ(r.may_find[1].risk, "c");
  EXPECT_EQ(r.may_find[2].risk, "a");
}

// ---- looking ----

TEST(LookOverLooks, OnlyWhatWasNotSeenAndMattersMostFirst) {
  Input in = small_input();
  in.known.questions.push_back(question("idle", YesNo::Yes, 0.5));  // nothing hangs on it
  const Result r = solved(in);
  ASSERT_EQ(r.looks.size(), 2U);
  EXPECT_GE(r.looks[0].narrows, r.looks[1].narrows);
  EXPECT_GT(r.looks[1].narrows, Money{});
  const Result after = solved(answered(in, "papers", Said::Yes));
  EXPECT_EQ(after.questions, (std::vector<std::string>{"papers", "lamp"}));
  ASSERT_EQ(after.looks.size(), 1U);
  EXPECT_EQ(after.looks[0].question, "lamp");
  EXPECT_EQ(after.outcome.figure("look_next")->text, after.looks[0].text);
}

TEST(LookOverLooks, WhatCanEndItFirstInTheBooksOrderThenProofThenByValue) {
  Input in = small_input();
  in.known.questions.push_back(question("hammer", YesNo::Yes, 0.02));
  in.known.questions.back().walk_away = "it hammers";
  in.known.questions.push_back(question("title", YesNo::No, 0.02));
  in.known.questions.back().walk_away = "no title";
  in.known.questions.push_back(question("tick", YesNo::Yes, 0.1));
  in.known.questions.back().cold_only = true;
  in.known.risks[1].signs.push_back(sign("tick", 0.9));
  const auto order = [](const Result& r) {
    std::vector<std::string> ids;
    for (const Look& l : r.looks) ids.push_back(l.question);
    return ids;
  };
  EXPECT_EQ(order(solved(in)), (std::vector<std::string>{"hammer", "title", "papers", "tick", "lamp"}));
  in.touched = Touched::Warm;
  const Result warm = solved(in);
  EXPECT_EQ(order(warm), (std::vector<std::string>{"hammer", "title", "papers", "lamp", "tick"}));
  EXPECT_TRUE(warm.looks.back().needs_cold);
  EXPECT_TRUE(warm.looks[2].spares_must);
  EXPECT_FALSE(warm.looks[3].spares_must);
  in.known.risks[0].must_from = Distance::miles(50'000.0);  // nothing to spare yet
  const Result young = solved(in);
  for (const Look& l : young.looks) EXPECT_FALSE(l.spares_must) << l.question;
}

TEST(LookOverLooks, WhatAQuestionTellsAbout) {
  Book b = small_book();
  b.risks[1].engines = {"other"};
  b.engines.push_back(engine("other", 2007, 2017));
  Input in = small_input();
  in.known = b;
  EXPECT_EQ(told_by(in, solved(in), "papers"), (std::vector<std::string>{"risk shoes"}));
  EXPECT_TRUE(told_by(in, solved(in), "lamp").empty());
  in.year = 2007;
  EXPECT_EQ(told_by(in, solved(in), "lamp"), (std::vector<std::string>{"risk pump"}));
}

// ---- what is refused ----

TEST(LookOverRefused, NamesTheField) {
  EXPECT_EQ(refused(answered(small_input(), "colour", Said::Yes)).front().number, 1803);
  EXPECT_EQ(refused(answered(small_input(), "colour", Said::Yes)).front().field, "answers[0].question");
  const Input twice = answered(answered(small_input(), "lamp", Said::Yes), "lamp", Said::Yes);
  EXPECT_EQ(refused(twice).front().number, 1804);
  EXPECT_EQ(refused(twice).front().field, "answers[1].question");
  Input in = small_input();
  in.answers.push_back({"lamp", {}});
  EXPECT_EQ(refused(in).front().field, "answers[0].said");
}

TEST(LookOverRefused, OwnMoneyOutOfOrder) {
  Input in = small_input();
  in.costs = {own("engine", 1, 2, 3)};
  EXPECT_TRUE(has(refused(in), 1805));
  in.costs = {own("pump", 3, 2, 4)};
  EXPECT_TRUE(has(refused(in), 1806));
  in.costs = {own("pump", 1, 2, 3), own("pump", 1, 2, 3)};
  EXPECT_TRUE(has(refused(in), 1807));
}

TEST(LookOverRefused, ABrokenBook) {
  Input in = small_input();
  in.known.risks[0].proof = "nothing";
  EXPECT_EQ(refused(in).front().field, "known.risks[0].proof");
  in = small_input();
  in.known.risks[1].chances.clear();
  EXPECT_TRUE(has(refused(in), 1933));
  in = small_input();
  in.known.risks[1].cost.likely.reset();
  EXPECT_EQ(refused(in).front().field, "known.risks[1].cost.likely");
}

TEST(LookOverRefused, NoFiguresThatAreNone) {
  for (const double bad : {std::nan(""), std::numeric_limits<double>::infinity(), -1.0}) {
    Input in = small_input();
    in.asking = Money::amount(bad);
    EXPECT_EQ(refused(in).front().field, "asking");
    in = small_input();
    in.odometer = Distance::km(bad);
    EXPECT_EQ(refused(in).front().field, "odometer");
  }
}

TEST(LookOverOutcome, EveryRiskHasItsStepAndEveryFigureIsFinite) {
  const Result r = solved(small_input());
  for (const Figure& f : r.outcome.figures) EXPECT_TRUE(std::isfinite(f.base)) << f.key;
  EXPECT_GE(r.outcome.working.size(), 2U + 3U + 2U);
  EXPECT_NE(r.outcome.working.front().numbers.find("own list"), std::string::npos);
  EXPECT_FALSE(r.outcome.judgement.has_value());
}

}  // namespace
}  // namespace camside::look_over
