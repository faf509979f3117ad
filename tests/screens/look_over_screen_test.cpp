// The place "Look-over" as a buyer handles it: by what stands on the screen.
#include <algorithm>

#include "calc/look_over/look_over.hpp"
#include "log/demo_bike.hpp"
#include "screens/drawings/place_drawing.hpp"
#include "screens/harness.hpp"
#include "screens/look_over/look_over_words.hpp"
#include "screens/words.hpp"

namespace camside::screens::test {
namespace {

using records::Entry;
using records::Record;

constexpr const char* mill = "Bike at the mill, no papers";
constexpr const char* ferry = "Bike at the ferry, year not known";

// The look-overs as they would be found after a crash now.
std::vector<Record> kept(const Harness& h) {
  const auto it = h.store.kept.find("current-job");
  if (it == h.store.kept.end()) return {};
  auto opened = records::read_file(it->second);
  return opened ? opened->file.records : std::vector<Record>{};
}

look_over::Result result_of(const Record& record) {
  const Solved solved = records::solve(record);
  const auto* const r = solved.result_as<look_over::Result>();
  EXPECT_NE(r, nullptr);
  return r ? *r : look_over::Result{};
}

look_over::Input input_of(const Record& record) {
  const Solved solved = records::solve(record);
  const auto* const in = solved.input_as<look_over::Input>();
  EXPECT_NE(in, nullptr);
  return in ? *in : look_over::Input{};
}

const Record& called(const std::vector<Record>& all, const std::string& name) {
  const auto it = std::find_if(all.begin(), all.end(), [&](const Record& r) { return r.name() == name; });
  EXPECT_NE(it, all.end()) << name;
  return it == all.end() ? all.front() : *it;
}

struct LookOverPlace : testing::Test {
  static void open(Harness& h) { h.tap("Look-over"); }
  static void open_example(Harness& h, const char* bike) {
    open(h);
    h.tap(words::show_example());
    h.tap(bike);
  }
  // A new one with its facts, typed as at the bike.
  static void begin(Harness& h, const std::string& year, const std::string& miles, const char* touched) {
    h.tap(words::check_over());
    h.tap(words::year_of_model());
    h.type_on_keypad(year);
    h.tap(words::next());
    h.type_on_keypad(miles);
    h.tap(words::next());
    h.type_on_keypad("7000");
    h.tap(words::done());
    h.tap(touched);
  }
  // Every row that is still made up, one by one.
  static void take_all_prices(Harness& h) {
    while (h.find(words::price_mine())) h.tap(words::price_mine());
    h.tap(words::done());
  }
  // To the result, with nothing answered.
  static void begin_and_look(Harness& h, const std::string& year, const std::string& miles) {
    begin(h, year, miles, "Stone cold");
    h.tap(words::start_round());
    h.tap(words::back());
  }
  // From the result and back to it.
  static void take_prices_with_shoes_at_700(Harness& h) {
    h.tap(words::look_at_prices());
    h.tap("Tensioner shoes, spring-loaded, Likely");
    h.type_on_keypad("700");
    h.tap(words::done());
    take_all_prices(h);
  }
};

TEST_F(LookOverPlace, TheExampleSaysThatItIsInvented) {
  Harness h({});
  open(h);
  EXPECT_EQ(h.find_text(words::invented_bikes()), nullptr);
  h.tap(words::show_example());
  EXPECT_NE(h.find_text(words::invented_bikes()), nullptr);
  ASSERT_NE(h.find(mill), nullptr);
  ASSERT_NE(h.find(ferry), nullptr);
  h.tap(mill);
  EXPECT_NE(h.find_text("Invented answers"), nullptr);
}

TEST_F(LookOverPlace, OneTapAnswersAndGoesOnToTheResultAndEveryTapIsKept) {
  Harness h({});
  open(h);
  begin(h, "2004", "38200", "Stone cold");
  h.tap(words::start_round());
  const std::size_t count = result_of(kept(h).front()).questions.size();
  ASSERT_GE(count, 20U);
  const std::size_t few = result_of(kept(h).front()).first;
  ASSERT_EQ(few, 8U);
  for (std::size_t i = 0; i < count; ++i) {
    if (i == few) {
      const auto r = result_of(kept(h).front());
      EXPECT_EQ(r.rest_open, count - few);
      EXPECT_EQ(h.find_text("You may stop here") != nullptr, !look_over::walk_away_met(r));
      h.tap(words::all_questions());
      const std::string next = look_over::question_of(input_of(kept(h).front()).known, r.questions[i])->text;
      h.tap(h.find_text(next)->label);
    }
    ASSERT_NE(h.find_text(words::progress(i + 1, count)), nullptr) << i;
    h.tap(i % 3 == 0 ? words::yes() : i % 3 == 1 ? words::no() : words::didnt_see());
    ASSERT_EQ(kept(h).front().entered()["answers"].size(), i + 1) << "lost when the phone dies now";
  }
  EXPECT_NE(h.find_text(words::must_do()), nullptr) << "the last answer leads to the result";
  const records::Json answers = kept(h).front().entered()["answers"];
  const auto questions = result_of(kept(h).front()).questions;
  for (std::size_t i = 0; i < count; ++i) {
    EXPECT_EQ(answers[i]["question"], questions[i]);
    EXPECT_EQ(answers[i]["said"], i % 3 == 0 ? "yes" : i % 3 == 1 ? "no" : "didn't see");
  }
}

TEST_F(LookOverPlace, FactsAreTypedInARow) {
  Harness h({});
  open(h);
  begin(h, "2004", "38200", "Warm");
  const Record made = kept(h).front();
  EXPECT_EQ(made.kind(), "look_over");
  const Solved solved = records::solve(made);
  const auto* const in = solved.input_as<look_over::Input>();
  ASSERT_NE(in, nullptr);
  EXPECT_EQ(in->year, 2004);
  EXPECT_NEAR(in->odometer->in_miles(), 38'200.0, 1e-6);
  EXPECT_EQ(in->asking, Money::amount(7000));
  EXPECT_EQ(in->touched, look_over::Touched::Warm);
  EXPECT_EQ(result_of(made).engine, "sprung_chain");
}

TEST_F(LookOverPlace, BackOneStepAndJumpToAny) {
  Harness h({});
  open(h);
  begin(h, "2004", "38200", "Stone cold");
  h.tap(words::start_round());
  h.tap(words::yes());
  h.tap(words::yes());
  h.tap(words::previous());
  EXPECT_NE(h.find_text("2 of "), nullptr);
  ASSERT_NE(h.find(words::yes()), nullptr);
  EXPECT_TRUE(h.find(words::yes())->chosen) << "what was said is shown";
  EXPECT_FALSE(h.find(words::no())->chosen);
  h.tap(words::no());
  EXPECT_EQ(kept(h).front().entered()["answers"][1]["said"], "no") << "the answer is changed, not doubled";
  EXPECT_EQ(kept(h).front().entered()["answers"].size(), 2U);
  h.tap(words::all_questions());
  const Item* const hammering = h.find_text("Is there any hammering?");
  ASSERT_NE(hammering, nullptr);
  h.tap(hammering->label);
  EXPECT_EQ(h.find_text("ends it: something hammers"), nullptr) << "two lines of question, one of help";
  h.tap(words::more_of_it());
  EXPECT_NE(h.find_text("ends it: something hammers"), nullptr);
}

TEST_F(LookOverPlace, PricesTakenRowByRowGiveAnOfferAndAWalkAwayTakesItAway) {
  Harness h({});
  open_example(h, mill);
  EXPECT_NE(h.find_text("No offer yet"), nullptr);
  EXPECT_NE(h.find_text(words::placeholder_sum()), nullptr);
  EXPECT_FALSE(result_of(called(kept(h), mill)).offer.has_value());
  h.tap(words::look_at_prices());
  const std::size_t must = result_of(called(kept(h), mill)).must_do.size();
  for (std::size_t i = 0; i < must; ++i) h.tap(words::price_mine());  // what must be done stands first
  h.tap(words::done());
  EXPECT_EQ(h.find_text("No offer yet"), nullptr);
  EXPECT_NE(h.find_text(words::placeholder_sum()), nullptr) << "the rest is still made up, and says so";
  const auto offer = result_of(called(kept(h), mill)).offer;
  ASSERT_TRUE(offer.has_value());
  EXPECT_NE(h.find_text("that can end it are looked at"), nullptr) << "no single figure before";
  EXPECT_NE(h.find_text(look_over::rough_range(*offer)), nullptr);
  h.tap(words::all_questions());
  h.tap(h.find_text("Is there any hammering?")->label);
  h.tap(words::yes());
  h.tap(words::to_result());
  EXPECT_NE(h.find_text("Met: something hammers in the engine"), nullptr);
  EXPECT_FALSE(result_of(called(kept(h), mill)).offer.has_value());
  EXPECT_EQ(h.find_text(look_over::rough_range(*offer)), nullptr);
}

TEST_F(LookOverPlace, AnOwnPriceReplacesThePlaceholderOfItsRow) {
  Harness h({});
  open_example(h, mill);
  const look_over::Span before = result_of(called(kept(h), mill)).knock_off;
  h.tap(words::look_at_prices());
  h.tap("Tensioner shoes, spring-loaded, Likely");
  h.type_on_keypad("700");
  h.tap(words::done());
  const records::Json cost = called(kept(h), mill).entered()["costs"][0];
  EXPECT_EQ(cost["risk"], "shoes");
  const auto after = result_of(called(kept(h), mill));
  ASSERT_EQ(after.must_do.front().risk, "shoes");
  EXPECT_EQ(after.must_do.front().cost.middle, Money::amount(700));
  EXPECT_EQ(after.must_do.front().cost.low, Money::amount(250));
  EXPECT_FALSE(after.must_do.front().placeholder);
  EXPECT_NEAR((after.knock_off.middle - before.middle).in_amount(), 4.0 * 250.0 / 6.0, 1e-6);
}

TEST_F(LookOverPlace, AListOfOnesOwnStandsInForTheBooksChanceAndGoesBack) {
  Harness h({});
  h.tap("Life");
  h.tap(words::show_example());
  h.tap(words::back());
  open_example(h, ferry);
  const auto lifters = [&] {
    const auto r = result_of(called(kept(h), ferry));
    const auto it =
        std::find_if(r.may_find.begin(), r.may_find.end(), [](const auto& f) { return f.risk == "lifters"; });
    EXPECT_NE(it, r.may_find.end());
    return it == r.may_find.end() ? look_over::Found{} : *it;
  };
  const look_over::Found by_book = lifters();
  h.tap(words::working());
  h.tap(words::counts_nowhere());
  h.tap(by_book.name);
  EXPECT_NE(h.find_text(words::counts_for(by_book.name)), nullptr);
  const look_over::Found by_list = lifters();
  EXPECT_NE(by_list.chance, by_book.chance);
  EXPECT_NE(by_list.chance_from.find("own list, Sprung tensioner shoes"), std::string::npos) << by_list.chance_from;
  EXPECT_NE(by_list.chance_from.find("(invented)"), std::string::npos);
  h.tap(words::counts_for(by_book.name));
  h.tap(words::none_of_them());
  EXPECT_EQ(lifters().chance, by_book.chance);
  EXPECT_EQ(h.find_text(words::counts_for(by_book.name)), nullptr);
}

TEST_F(LookOverPlace, TheExamplesListStaysOutOfABikeThatIsNotInvented) {
  Harness h({});
  h.tap("Life");
  h.tap(words::show_example());
  h.tap(words::back());
  open(h);
  begin_and_look(h, "2003", "30000");
  h.tap(words::working());
  EXPECT_NE(h.find_text(words::own_lists_help()), nullptr);
  EXPECT_EQ(h.find_text(words::counts_nowhere()), nullptr);
}

TEST_F(LookOverPlace, OwnPricesGoAlongToTheNextBike) {
  Harness h({});
  open(h);
  begin_and_look(h, "2003", "30000");
  take_prices_with_shoes_at_700(h);
  h.tap(words::back());
  h.tap(words::check_over());
  ASSERT_EQ(kept(h).size(), 2U);
  EXPECT_EQ(kept(h).back().entered()["costs"], kept(h).front().entered()["costs"]);
  EXPECT_GT(kept(h).back().entered()["costs"].size(), 5U) << "those taken as they stood, too";
  EXPECT_FALSE(kept(h).back().entered().contains("answers"));
}

std::size_t placeholders(const look_over::Result& r) {
  std::size_t count = 0;
  for (const auto* list : {&r.must_do, &r.may_find})
    count += static_cast<std::size_t>(
        std::count_if(list->begin(), list->end(), [](const look_over::Found& f) { return f.placeholder; }));
  return count;
}

// The six stand beside each other only when they stand on the same prices.
TEST_F(LookOverPlace, APriceHoldsForEveryBikeButNotForTheInventedOnes) {
  Harness h({});
  open(h);
  h.tap(words::show_example());
  begin_and_look(h, "2003", "30000");
  h.tap(words::back());
  begin_and_look(h, "2004", "40000");
  take_prices_with_shoes_at_700(h);
  const std::vector<Record> all = kept(h);
  ASSERT_EQ(all.size(), 4U);
  for (const Record& r : {called(all, "Bike 1"), called(all, "Bike 2")}) {
    EXPECT_EQ(result_of(r).must_do.front().cost.middle, Money::amount(700)) << r.name();
    EXPECT_EQ(placeholders(result_of(r)), 0U) << r.name();
  }
  EXPECT_FALSE(called(all, mill).entered().contains("costs")) << "invented";
}

TEST_F(LookOverPlace, OnlyThePricesShownAreTakenAndTheyCanBeGivenBack) {
  Harness h({});
  open(h);
  begin_and_look(h, "2003", "30000");
  take_prices_with_shoes_at_700(h);
  ASSERT_EQ(placeholders(result_of(kept(h).front())), 0U);
  h.tap("2003 · 30,000 mi · asks 7,000");
  h.tap(words::year_of_model());
  h.type_on_keypad("2011");
  h.tap(words::done());
  EXPECT_GE(placeholders(result_of(kept(h).front())), 1U) << "the hydraulic shoes' price was never shown";
  h.tap(words::year_of_model());
  h.type_on_keypad("2003");
  h.tap(words::done());
  h.tap(words::back());
  h.tap(words::prices());
  h.tap(words::prices_not_mine());
  const auto given_back = result_of(kept(h).front());
  EXPECT_GT(placeholders(given_back), 5U);
  EXPECT_EQ(given_back.must_do.front().cost.middle, Money::amount(700)) << "what was typed stays";
}

TEST_F(LookOverPlace, AReasonToWalkStandsAboveTheRestOfTheRoundAndStopsIt) {
  Harness h({});
  open(h);
  begin(h, "2004", "38200", "Stone cold");
  h.tap(words::start_round());
  EXPECT_EQ(h.find_text(words::stop_here()), nullptr);
  h.tap(words::no());  // no cold start
  ASSERT_NE(h.find_text("2 of "), nullptr);
  h.tap("Walk away: the seller forbids a cold start");
  EXPECT_NE(h.find_text("Met: the seller forbids a cold start"), nullptr);
  EXPECT_EQ(h.find(words::round_again()), nullptr);
  ASSERT_NE(h.find(words::check_over_another()), nullptr);
}

TEST_F(LookOverPlace, FreshOilMakesCleanOilWorthNothing) {
  Harness h({});
  open(h);
  begin(h, "2004", "38200", "Stone cold");
  h.tap(words::start_round());
  const auto jump = [&](const char* question) {
    h.tap(words::all_questions());
    h.tap(h.find_text(question)->label);
  };
  jump("Glitter or crumbs");
  h.tap(words::no());
  jump("Oil fresh for the sale");
  h.tap(words::yes());
  jump("Glitter or crumbs");
  EXPECT_NE(h.find_text("“No” doesn't count: “Oil fresh"), nullptr);
  h.tap(words::to_result());
  EXPECT_EQ(h.find_text("Ruled out: "), nullptr);
  EXPECT_NE(h.find_text("doesn't count: \"Oil fresh"), nullptr);
}

TEST_F(LookOverPlace, TheReadingOnTheBillIsTheWorkOfTheBoughtBike) {
  Harness h({.bikes = true});
  open(h);
  begin(h, "2003", "41300", "Stone cold");
  h.tap(words::start_round());
  h.tap(words::all_questions());
  constexpr const char* bill = "Is there a bill or photo for both tensioner shoes?";
  h.tap(h.find_text(bill)->label);
  h.tap(words::reading_on_bill());
  h.type_on_keypad("31000");
  h.tap(words::next());
  h.type_on_keypad("18.6.2023");
  EXPECT_NE(h.find_text(bill), nullptr) << "half a date or a whole one";
  h.tap(words::done());
  EXPECT_TRUE(h.find(words::yes())->chosen) << "who reads it off the bill has seen the bill";
  EXPECT_NE(h.find_text(bill), nullptr) << "still there";
  h.tap(words::yes());
  h.tap(words::all_questions());
  h.tap(h.find_text("Is there a bill for the inner cam bearings?")->label);
  h.tap(words::yes());  // a bill without a reading
  h.tap(words::all_questions());
  h.tap(h.find_text(bill)->label);
  h.tap(words::to_result());
  const auto r = result_of(kept(h).front());
  EXPECT_TRUE(r.must_do.empty());
  h.tap(words::it_is_mine());
  const std::vector<Entry>& log = h.log_store.kept;
  const auto done = std::find_if(log.begin(), log.end(), [](const Entry& e) { return e.kind() == "service"; });
  ASSERT_NE(done, log.end());
  EXPECT_EQ(done->record.entered()["items"], records::Json::array({"Outer tensioner shoe", "Inner tensioner shoe"}));
  EXPECT_EQ(done->entered_text("odometer"), "31000 mi");
  EXPECT_EQ(done->entered_text("proof"), "paper");
  EXPECT_EQ(done->day(), "2023-06-18");
  EXPECT_TRUE(records::check_entry(*done).empty());
  const auto note = std::find_if(log.begin(), log.end(), [](const Entry& e) { return e.kind() == "note"; });
  ASSERT_NE(note, log.end());
  EXPECT_NE(note->entered_text("text").find("inner cam bearings? Yes (bill seen without a reading"), std::string::npos)
      << note->entered_text("text");
  EXPECT_NE(h.find_text("19,700 mi"), nullptr) << "30,000 from 31,000 on, at 41,300";
}

TEST_F(LookOverPlace, NoTwoAreCalledTheSame) {
  Harness h({});
  open(h);
  for (int i = 0; i < 3; ++i) {
    h.tap(words::check_over());
    h.tap(words::back());
    h.tap(words::back());
  }
  h.tap("Bike 2");
  h.tap(words::remove_bike());
  h.tap(words::check_over());
  h.tap(words::back());
  h.tap(words::back());
  const auto all = kept(h);
  ASSERT_EQ(all.size(), 3U);
  EXPECT_EQ(all[0].name(), "Bike 1");
  EXPECT_EQ(all[1].name(), "Bike 3");
  EXPECT_EQ(all[2].name(), "Bike 4") << "a number is not used again";
}

// A phone ends a page in the background when it needs the room.
TEST_F(LookOverPlace, ComesBackToTheQuestionWhereItWasEnded) {
  Harness::Options options;
  {
    Harness h(options);
    open(h);
    begin(h, "2004", "38200", "Stone cold");
    h.tap(words::start_round());
    h.tap(words::yes());
    h.tap(words::yes());
    ASSERT_NE(h.find_text("3 of "), nullptr);
    options.kept = h.store.kept;
  }
  {
    Harness h(options);
    ASSERT_NE(h.find_text("3 of "), nullptr);
    h.tap(words::back());
    h.tap(words::remove_bike());
    h.tap(words::removed("Bike 1"));
    h.tap("Bike 1");
    options.kept = h.store.kept;
    options.kept.erase("current-job");
  }
  Harness h(options);
  EXPECT_EQ(h.shell->place(), PlaceId::LookOver);
  EXPECT_NE(h.find_text(words::look_over_question()), nullptr) << "that bike is gone: the list";
}

TEST_F(LookOverPlace, AYearOfTwoEnginesIsSaidWhereItIsTyped) {
  Harness h({});
  open(h);
  begin(h, "1999", "38200", "Stone cold");
  EXPECT_NE(h.find_text("It can be any of"), nullptr);
}

// "Best 1200" beside "Likely 450" locked every bike and the page of prices itself, also after a reload.
TEST_F(LookOverPlace, APriceOutOfOrderIsLeftOutAndLocksNothing) {
  Harness::Options options;
  {
    Harness h(options);
    open_example(h, mill);
    h.tap(words::look_at_prices());
    h.tap("Tensioner shoes, spring-loaded, Best");
    h.type_on_keypad("1200");
    h.tap(words::done());
    EXPECT_NE(h.find_text("must lie between best and worst"), nullptr);
    h.tap(words::back());
    EXPECT_NE(h.find_text(words::must_do()), nullptr) << "the last good one counts";
    h.tap(words::left_out("The likely cost must lie between best and worst"));
    EXPECT_NE(h.find("Tensioner shoes, spring-loaded, Best"), nullptr) << "the line leads to it";
    options.kept = h.store.kept;
  }
  Harness h(options);
  EXPECT_NE(h.find_text("must lie between best and worst"), nullptr);
  h.tap("Tensioner shoes, spring-loaded, Best");
  h.type_on_keypad("300");
  h.tap(words::done());
  EXPECT_EQ(h.find_text("must lie between best and worst"), nullptr);
}

// A day "-06-01" on a bill made the result unreachable for good.
TEST_F(LookOverPlace, AnOddDayOnABillIsLeftOutWithALineThatLeadsToIt) {
  Harness h({});
  open(h);
  begin(h, "2003", "41300", "Stone cold");
  h.tap(words::start_round());
  h.tap(words::all_questions());
  h.tap(h.find_text("Is there a bill or photo for both tensioner shoes?")->label);
  h.tap(words::day_on_bill());
  h.type_on_keypad("-06-01");
  h.tap(words::done());
  h.tap(words::to_result());
  EXPECT_NE(h.find_text(words::must_do()), nullptr) << "the result is there";
  EXPECT_NE(h.find(words::remove_bike()), nullptr) << "and remove always works";
  const Item* const line = h.find_text("Left out, can't be used");
  ASSERT_NE(line, nullptr);
  h.tap(std::string(line->label));
  EXPECT_NE(h.find_text("Is there a bill or photo for both tensioner shoes?"), nullptr);
  EXPECT_EQ(kept(h).front().entered()["answers"][0]["day"], "-06-01") << "as it was typed";
}

TEST_F(LookOverPlace, AnOddFactIsLeftOutAndEveryOtherCounts) {
  Harness h({});
  open(h);
  begin(h, "2003", "41300", "Stone cold");
  h.tap(words::year_of_model());
  h.type_on_keypad("3");
  h.tap(words::done());
  h.tap(words::back());
  EXPECT_NE(h.find_text("Left out, can't be used"), nullptr);
  EXPECT_NE(h.find_text(words::must_do()), nullptr);
  EXPECT_NE(h.find(words::remove_bike()), nullptr);
}

TEST_F(LookOverPlace, WhatDrivesTheCamsIsAskedFirstAndTakesTheShoesAway) {
  Harness h({});
  open(h);
  begin(h, "2003", "41300", "Stone cold");
  h.tap("Gears in place of chains");
  EXPECT_EQ(kept(h).front().entered()["drive"], "gears");
  const auto r = result_of(kept(h).front());
  EXPECT_EQ(std::count(r.questions.begin(), r.questions.end(), "papers_shoes"), 0);
  ASSERT_FALSE(r.must_do.empty());
  EXPECT_EQ(r.must_do.front().risk, "gears");
}

TEST_F(LookOverPlace, TheSumIsHiddenFromTheSellerBesideOne) {
  Harness h({});
  open_example(h, mill);
  EXPECT_NE(h.find_text("ikely range"), nullptr);
  h.tap(words::hide_sum());
  EXPECT_EQ(h.find_text("ikely range"), nullptr);
  EXPECT_EQ(h.find_text(words::must_do()), nullptr);
  h.tap(words::show_sum());
  EXPECT_NE(h.find_text("ikely range"), nullptr);
}

TEST_F(LookOverPlace, NoPapersIsAnAnswerOfItsOwn) {
  Harness h({});
  open(h);
  begin(h, "2003", "41300", "Stone cold");
  h.tap(words::start_round());
  h.tap(words::all_questions());
  h.tap(h.find_text("Do old papers agree with the odometer?")->label);
  h.tap("No papers");
  EXPECT_EQ(kept(h).front().entered()["answers"][0]["said"], "none");
}

TEST_F(LookOverPlace, ABadStartCountsOnAWarmEngineAsOnAColdOne) {
  Harness h({});
  open(h);
  begin(h, "2004", "38200", "Warm");
  h.tap(words::start_round());
  const auto rattle = [&] {
    h.tap(words::all_questions());
    h.tap(h.find_text("Does a tick at the top end stay?")->label);
  };
  rattle();
  EXPECT_NE(h.find_text(words::cold_void(true)), nullptr);
  const Money without = result_of(kept(h).front()).knock_off.middle;
  h.tap(words::yes());
  const Money warm = result_of(kept(h).front()).knock_off.middle;
  EXPECT_GT(warm, without) << "bad news always counts";
  rattle();
  h.tap("Stone cold");
  EXPECT_EQ(h.find_text(words::cold_void(true)), nullptr);
  EXPECT_EQ(result_of(kept(h).front()).knock_off.middle, warm) << "warming the engine never raised the offer";
}

TEST_F(LookOverPlace, SixStandBesideEachOtherInOrderAndNoSeventh) {
  Harness h({});
  open(h);
  const char* const years[] = {"1994", "2001", "2004", "2005", "2011", "2015"};
  for (const char* year : years) {
    ASSERT_NE(h.find(words::check_over()), nullptr) << year;
    begin(h, year, "41300", "Stone cold");
    h.tap(words::back());
    h.tap(words::back());
  }
  EXPECT_EQ(h.find(words::check_over()), nullptr);
  EXPECT_NE(h.find_text(words::six_at_most()), nullptr);
  const std::vector<Record> all = kept(h);
  ASSERT_EQ(all.size(), 6U);
  std::vector<std::pair<float, double>> sums;
  for (const Record& r : all) {
    const Item* const row = h.find(r.name());
    ASSERT_NE(row, nullptr) << r.name();
    sums.emplace_back(row->min.y, result_of(r).knock_off.middle.in_amount());
  }
  std::sort(sums.begin(), sums.end());
  for (std::size_t i = 1; i < sums.size(); ++i) EXPECT_LE(sums[i - 1].second, sums[i].second) << i;
}

TEST_F(LookOverPlace, OneToWalkAwayFromStandsLast) {
  Harness h({});
  open_example(h, ferry);
  h.tap(words::all_questions());
  h.tap(h.find_text("Is there any hammering?")->label);
  h.tap(words::yes());
  h.tap(words::back());
  h.tap(words::back());
  EXPECT_GT(h.find(ferry)->min.y, h.find(mill)->min.y);
}

TEST_F(LookOverPlace, RenamedRemovedAndBroughtBack) {
  Harness h({});
  open_example(h, mill);
  h.tap("2004 · 38,200 mi · asks 6,800");
  h.tap(words::nickname());
  h.platform.asked.changed("Grey one");
  h.run();
  h.tap(words::back());
  h.tap(words::remove_bike());
  EXPECT_EQ(h.find("Grey one"), nullptr);
  EXPECT_EQ(kept(h).size(), 1U);
  h.tap(words::removed("Grey one"));
  EXPECT_NE(h.find("Grey one"), nullptr);
  ASSERT_EQ(kept(h).size(), 2U);
  EXPECT_EQ(kept(h).front().name(), "Grey one") << "where it stood";
}

TEST_F(LookOverPlace, TheSummaryLeavesAsText) {
  Harness h({.bikes = true});
  h.platform.ways = {.share = false, .save = true, .pick = true};
  open_example(h, mill);
  h.tap(words::save_summary());
  EXPECT_TRUE(h.platform.gave_name.ends_with(".txt")) << h.platform.gave_name;
  EXPECT_NE(h.platform.gave.find(mill), std::string::npos);
  EXPECT_NE(h.platform.gave.find("Must do anyway"), std::string::npos);
  EXPECT_NE(h.platform.gave.find("Invented answers"), std::string::npos) << "it says so where it goes, too";
  EXPECT_EQ(h.platform.gave.find('%'), std::string::npos);
  h.tap(words::copy_summary());
  EXPECT_EQ(h.platform.copied, h.platform.gave);
  EXPECT_NE(h.find_text(words::copied()), nullptr);
}

TEST_F(LookOverPlace, UndoneItIsMineLeavesThePageOfABikeThatIsNotThere) {
  Harness h({.bikes = true});
  open_example(h, mill);
  h.tap(words::it_is_mine());
  ASSERT_NE(h.find(words::log_odometer()), nullptr);
  const auto undo =
      std::find_if(h.items().begin(), h.items().end(), [](const Item& i) { return i.value == words::undo(); });
  ASSERT_NE(undo, h.items().end());
  h.tap(std::string(undo->label));
  EXPECT_EQ(h.find(words::log_odometer()), nullptr);
  EXPECT_NE(h.find(words::add_bike()), nullptr);
}

TEST_F(LookOverPlace, ItIsMineNowMakesTheBikeAndGoesToItsPage) {
  Harness h({.bikes = true});
  open_example(h, mill);
  h.tap(words::it_is_mine());
  EXPECT_EQ(h.shell->place(), PlaceId::Bikes);
  EXPECT_NE(h.find_text(mill), nullptr);
  const std::vector<Entry>& log = h.log_store.kept;
  ASSERT_EQ(log.size(), 7U);
  EXPECT_EQ(log[0].kind(), "facts");
  EXPECT_EQ(log[0].entered_text("drive"), "sprung chains");
  EXPECT_EQ(log[0].entered_text("nickname"), mill);
  EXPECT_EQ(log[0].entered_text("engine"), "two cams, sprung chains");
  EXPECT_EQ(log[0].entered_text("model_year"), "2004");
  EXPECT_EQ(log[0].entered_text("odometer_unit"), "mi");
  EXPECT_EQ(log[1].kind(), "odometer");
  EXPECT_EQ(log[1].entered_text("reading"), "38,200 mi");
  EXPECT_EQ(log[2].kind(), "finding");
  EXPECT_EQ(log[2].entered_text("part"), "Oil leak at the rocker boxes or pushrod tubes") << "an entry of its own";
  EXPECT_NE(log[3].entered_text("text").find("Wet at the rocker boxes or pushrod tubes? Yes"), std::string::npos);
  EXPECT_NE(log[3].entered_text("text").find("rattle at the start? No (the engine was not stone cold"),
            std::string::npos);
  EXPECT_NE(log[4].entered_text("text").find("Tensioner shoes, spring-loaded (no proof)"), std::string::npos);
  EXPECT_NE(log[5].entered_text("text").find("\nDo old papers agree with the odometer?"), std::string::npos)
      << log[5].entered_text("text");
  EXPECT_TRUE(log[6].entered_text("text").starts_with("Asked 6,800. ")) << log[6].entered_text("text");
  for (const Entry& e : log) {
    EXPECT_TRUE(records::check_entry(e).empty()) << e.kind();
    EXPECT_EQ(e.bike(), log[0].bike());
    EXPECT_EQ(e.note(), records::invented_mark) << "an invented bike stays one";
  }
}

TEST_F(LookOverPlace, ItIsTakenOverOnceAndAgainOnlyAfterItWasRemoved) {
  Harness h({.bikes = true});
  open_example(h, mill);
  h.tap(words::it_is_mine());
  const std::size_t entries = h.log_store.kept.size();
  h.tap("Look-over");
  EXPECT_EQ(h.find(words::it_is_mine()), nullptr);
  h.tap(words::see_its_bike());
  EXPECT_NE(h.find(words::log_odometer()), nullptr);
  EXPECT_EQ(h.log_store.kept.size(), entries);
  const auto undo =
      std::find_if(h.items().begin(), h.items().end(), [](const Item& i) { return i.value == words::undo(); });
  ASSERT_NE(undo, h.items().end());
  h.tap(std::string(undo->label));
  h.tap("Look-over");
  h.tap(words::it_is_mine());
  EXPECT_NE(h.find(words::log_odometer()), nullptr);
  EXPECT_GT(h.log_store.kept.size(), entries);
}

TEST_F(LookOverPlace, AFileThatLeftIsSaidOnlyWhereItLeft) {
  Harness h({.bikes = true});
  h.platform.ways.save = true;
  open_example(h, mill);
  h.tap(words::it_is_mine());
  h.tap("Look-over");
  h.tap(words::save_summary());
  EXPECT_NE(h.find_text(words::file_left()), nullptr);
  h.tap("Bikes");
  EXPECT_NE(h.find(words::log_odometer()), nullptr);
  EXPECT_EQ(h.find_text(words::file_left()), nullptr) << "no reminders left";
  h.tap(words::back());
  EXPECT_NE(h.find_text(words::copies()), nullptr);
  EXPECT_EQ(h.find_text(words::file_left()), nullptr) << "no copy left";
}

// With the year not known the prices of every engine that it can be are asked for.
TEST_F(LookOverPlace, PricesTakenAsMineGiveAnOfferWhateverTheEngine) {
  Harness h({});
  open(h);
  begin_and_look(h, "", "52600");
  ASSERT_GT(result_of(kept(h).front()).engines.size(), 1U);
  EXPECT_FALSE(result_of(kept(h).front()).offer.has_value());
  h.tap(words::look_at_prices());
  EXPECT_NE(h.find_text("Tensioner shoes, hydraulic"), nullptr);
  take_all_prices(h);
  EXPECT_TRUE(result_of(kept(h).front()).offer.has_value());
}

TEST_F(LookOverPlace, WalkingAwayNothingIsArguedAnyMore) {
  Harness h({});
  open_example(h, mill);
  EXPECT_NE(h.find_text(words::look_next()), nullptr);
  h.tap(words::all_questions());
  h.tap(h.find_text("Is there any hammering?")->label);
  h.tap(words::yes());
  h.tap(words::to_result());
  EXPECT_NE(h.find_text(words::no_price_makes_up()), nullptr);
  EXPECT_EQ(h.find_text(words::look_next()), nullptr);
  EXPECT_EQ(h.find_text(words::offer()), nullptr);
  EXPECT_EQ(h.find_text("Engine work"), nullptr) << "no sum beside it";
}

TEST_F(LookOverPlace, ABikeOfOnesOwnIsNotMarkedInvented) {
  Harness h({.bikes = true});
  open(h);
  begin(h, "2011", "22000", "Stone cold");
  h.tap(words::start_round());
  h.tap(words::yes());
  h.tap(words::to_result());
  h.tap(words::it_is_mine());
  for (const Entry& e : h.log_store.kept) EXPECT_TRUE(e.note().empty()) << e.kind();
  EXPECT_EQ(h.log_store.kept.front().entered_text("engine"), "two cams, hydraulic chains");
}

TEST_F(LookOverPlace, WithoutALogNobodyIsAskedToPutItThere) {
  Harness h({});
  open_example(h, mill);
  EXPECT_EQ(h.find(words::it_is_mine()), nullptr);
}

TEST_F(LookOverPlace, AnEngineOfNoKnownYearIsSaidAndCanBeCorrected) {
  Harness h({});
  open(h);
  h.tap(words::check_over());
  h.tap(words::year_of_model());
  h.type_on_keypad("1930");
  h.tap(words::done());
  EXPECT_NE(h.find_text("1930 is outside all the engine years known here"), nullptr);
  EXPECT_TRUE(h.find(words::start_round())->enabled) << "it goes on as one's own engine";
  EXPECT_NE(h.find_text("exhaust fumes kill indoors"), nullptr) << "1918, before the round begins";
}

TEST_F(LookOverPlace, OnAWideScreenTheResultStandsBesideTheQuestionAndKeysAnswer) {
  Harness h({.size = {1440, 900}, .touch = false});
  open(h);
  begin(h, "2004", "38200", "Stone cold");
  h.tap(words::start_round());
  EXPECT_NE(h.find_text(words::must_do()), nullptr);
  h.press(ImGuiKey_Y);
  h.press(ImGuiKey_N);
  h.press(ImGuiKey_D);
  const records::Json answers = kept(h).front().entered()["answers"];
  ASSERT_EQ(answers.size(), 3U);
  EXPECT_EQ(answers[0]["said"], "yes");
  EXPECT_EQ(answers[1]["said"], "no");
  EXPECT_EQ(answers[2]["said"], "didn't see");
}

TEST_F(LookOverPlace, AQuestionThatSendsTheEyeSomewhereIsDrawn) {
  Harness h({});
  open(h);
  begin(h, "2003", "41300", "Stone cold");
  h.tap(words::start_round());
  int drawn = 0;
  const std::vector<std::string> asked = result_of(kept(h).front()).questions;
  const auto questions = static_cast<std::ptrdiff_t>(asked.size());
  h.tap(words::to_result());
  for (std::ptrdiff_t i = 0; i < questions; ++i) {
    h.tap(h.find_text("Next: ")->label);
    EXPECT_EQ(h.find_text("place drawing"), nullptr) << "a tap away";
    h.tap(words::more_of_it());
    if (h.find_text("place drawing")) ++drawn;
    h.tap(words::didnt_see());
    if (h.find(words::didnt_see())) h.tap(words::to_result());
  }
  const std::vector<Record> all = kept(h);
  ASSERT_EQ(all.size(), 1U);
  const Solved solved = records::solve(all.front());
  const auto* const in = solved.input_as<look_over::Input>();
  ASSERT_NE(in, nullptr);
  const auto placed = std::count_if(asked.begin(), asked.end(), [&](const std::string& id) {
    return question_of(in->known, id)->look_at.has_value();
  });
  EXPECT_GT(placed, 10);
  EXPECT_LT(placed, questions);
  EXPECT_EQ(drawn, placed);
}

constexpr ImU32 words_ink = 0xff000001;
constexpr ImU32 mark_ink = 0xff000002;
constexpr ImU32 bad_ink = 0xff000003;

// The corners of what is drawn of a place, by the colour's ink: edges fade, so its alpha doesn't count.
std::vector<ImVec2> corners_of(look_over::LookAt place, const Area& area, bool (*counts)(ImU32 ink)) {
  ImDrawList list(ImGui::GetDrawListSharedData());
  list._ResetForNewFrame();
  list.PushClipRectFullScreen();
  list.PushTexture(ImGui::GetIO().Fonts->TexRef);
  Pen pen;
  pen.list = &list;
  pen.words = pen.bold = ImGui::GetFont();
  pen.ink = {.text = words_ink, .line = 0xff000004, .accent = mark_ink, .outside = bad_ink};
  draw_place(pen, area, place);
  std::vector<ImVec2> corners;
  for (const ImDrawVert& v : list.VtxBuffer)
    if (counts(v.col | IM_COL32_A_MASK)) corners.push_back(v.pos);
  return corners;
}

bool same_corners(const std::vector<ImVec2>& a, const std::vector<ImVec2>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const ImVec2& one, const ImVec2& other) { return one.x == other.x && one.y == other.y; });
}

void expect_within(const std::vector<ImVec2>& corners, ImVec2 min, ImVec2 max, int place) {
  constexpr float fade = 2.0f;  // half the widest stroke, and the pixel over which its edge fades
  for (const ImVec2& c : corners) {
    EXPECT_GE(c.x, min.x - fade) << place;
    EXPECT_LE(c.x, max.x + fade) << place;
    EXPECT_GE(c.y, min.y - fade) << place;
    EXPECT_LE(c.y, max.y + fade) << place;
  }
}

// Every place is marked, each otherwise; nothing runs into the words below or out of the area.
TEST_F(LookOverPlace, EveryPlaceIsDrawnWithinItsAreaAndMarked) {
  const Harness h({});
  const Pen pen;
  const auto words = [](ImU32 ink) { return ink == words_ink; };
  const auto marks = [](ImU32 ink) { return ink == mark_ink || ink == bad_ink; };
  for (const float width : {250.0f, 330.0f, 416.0f}) {
    std::vector<std::vector<ImVec2>> before;
    for (int i = 0; i <= static_cast<int>(look_over::LookAt::Shoes); ++i) {
      const auto place = static_cast<look_over::LookAt>(i);
      const Area area{{40, 60}, {40 + width, 60 + place_drawing_height(pen, width, place)}};
      expect_within(corners_of(place, area, words), area.min, area.max, i);
      expect_within(corners_of(place, area, [](ImU32 ink) { return ink != words_ink; }), area.min,
                    {area.max.x, area.max.y - pen.body}, i);
      const std::vector<ImVec2> marked = corners_of(place, area, marks);
      EXPECT_FALSE(marked.empty()) << i;
      for (const auto& other : before) EXPECT_FALSE(same_corners(marked, other)) << i;
      before.push_back(marked);
    }
  }
}

}  // namespace
}  // namespace camside::screens::test
