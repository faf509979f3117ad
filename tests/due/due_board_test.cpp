// The due list of a bike from its log, case by case.
#include "due/due_board.hpp"

#include <gtest/gtest.h>

#include "due/due_samples.hpp"
#include "due/due_words.hpp"

namespace camside::due_board {
namespace {

using inspection_due::State;

const Date today = day(2024, 6, 1);
constexpr const char* whole = "Tensioner shoes";
constexpr const char* shoes = "Outer tensioner shoe";
constexpr const char* inner = "Inner tensioner shoe";
constexpr const char* bearings = "Inner cam bearings";

// ---- the items

TEST(DueBoard, TheUsualItemsAreTheSameHereAndOnTheBench) {
  for (const auto& [choice, years] :
       {std::pair{"single cam", inspection_due::EngineYears::SingleCam},
        std::pair{"two cams, sprung chains", inspection_due::EngineYears::SprungChain},
        std::pair{"two cams, hydraulic chains", inspection_due::EngineYears::HydraulicChain},
        std::pair{"single cam, one chain", inspection_due::EngineYears::SingleChain},
        std::pair{"four cams, gears", inspection_due::EngineYears::FourCam},
        std::pair{"own", inspection_due::EngineYears::Own}}) {
    const History h = Bike(choice).history(today);
    const auto usual = inspection_due::usual_items(years);
    ASSERT_EQ(h.due.items.size(), usual.size()) << choice;
    EXPECT_TRUE(h.engine_known);
    for (std::size_t i = 0; i < usual.size(); ++i) {
      EXPECT_EQ(h.due.items[i].name, usual[i].name);
      EXPECT_NEAR(h.due.items[i].every->in_km(), usual[i].every->in_km(), 1e-6);
      EXPECT_EQ(h.due.items[i].source, usual[i].source);
      EXPECT_NEAR(h.due.items[i].due_from->in_km(), usual[i].due_from->in_km(), 1e-6);
    }
  }
}

TEST(DueBoard, BrindleWithoutPapersIsDueNowAndSaysNoProof) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  const History h = bike.history(today);
  const Board board = board_of(h);
  ASSERT_EQ(board.rows.size(), 3U);
  for (const char* shoe : {shoes, inner}) {
    EXPECT_EQ(row_of(board, shoe)->state, State::Overdue);
    EXPECT_FALSE(row_of(board, shoe)->result.proof);
    EXPECT_EQ(words_of(h, *row_of(board, shoe), System::Inch).state, "Due now, No proof");
  }
  const Row with = *row_of(board, bearings);
  EXPECT_EQ(with.state, State::Overdue) << "the cams come out with the shoes";
  EXPECT_EQ(words_of(h, with, System::Inch).state, "Due with: Tensioner shoes, No proof");
}

TEST(DueBoard, BearingsAloneAreNotDueBeforeFiftyThousandAndSayNoProof) {
  Bike bike;
  bike.service(day(2024, 5, 1), whole, 41'000);
  bike.odometer(day(2024, 5, 14), 41'300);
  const History h = bike.history(today);
  const Row row = *row_of(board_of(h), bearings);
  EXPECT_EQ(row.state, State::Good);
  EXPECT_NEAR(row.result.distance->left.in_miles(), 8'700.0, 1e-6);
  EXPECT_EQ(words_of(h, row, System::Inch).state, "Good, 8,700 mi left, No proof");
}

// ---- two shoes, outer and inner

TEST(DueShoes, ABillForTheShoesIsOneForBoth) {
  Bike bike;
  bike.service(day(2024, 5, 14), whole, 41'300);
  EXPECT_EQ(row_of(bike.board(today), shoes)->state, State::Good);
  EXPECT_EQ(row_of(bike.board(today), inner)->state, State::Good);
}

TEST(DueShoes, APeekAtTheOuterNeverClearsTheUnseenInner) {
  Bike bike;
  bike.finding(day(2024, 5, 14), whole, "good", 41'300);
  EXPECT_EQ(row_of(bike.board(today), shoes)->state, State::Good);
  EXPECT_EQ(row_of(bike.board(today), inner)->state, State::Overdue);
  bike.finding(day(2024, 5, 15), inner, "good", 41'310);
  EXPECT_EQ(row_of(bike.board(today), inner)->state, State::Good);
  bike.finding(day(2024, 5, 16), whole, "failed", 41'320);
  EXPECT_EQ(row_of(bike.board(today), inner)->state, State::Overdue) << "bad news is of both";
}

TEST(DueShoes, WornShortensTheIntervalAndAsksForOne) {
  Bike bike;
  bike.finding(day(2024, 5, 14), shoes, "worn", 41'300);
  const History h = bike.history(today);
  const Row row = *row_of(board_of(h), shoes);
  EXPECT_NEAR(row.result.distance->left.in_miles(), 10'000.0, 1e-6) << "not the 30,000 of a good one";
  EXPECT_EQ(h.due.items[row.item].source->basis(), Basis::Memory);
  EXPECT_EQ(words_of(h, row, System::Inch).found,
            "Seen worn on 2024-05-14: look again within 10,000 mi, or enter your own interval");
  bike.finding(day(2024, 5, 20), shoes, "good", 41'350);
  EXPECT_NEAR(row_of(bike.board(today), shoes)->result.every.in_miles(), 10'000.0, 1e-6) << "nothing grows back";
  Bike ruled = bike;
  ruled.add(day(2024, 5, 21), "rule", {{"item", shoes}, {"every", "5000 mi"}});
  EXPECT_NEAR(row_of(ruled.board(today), shoes)->result.every.in_miles(), 5'000.0, 1e-6) << "the owner says how long";
  bike.service(day(2024, 5, 22), shoes, 41'400);
  EXPECT_NEAR(row_of(bike.board(today), shoes)->result.every.in_miles(), 30'000.0, 1e-6) << "replaced";
}

TEST(DueShoes, ABillWithoutAReadingOrOlderThanTheIntervalDoesNotClear) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  bike.add(day(2023, 5, 14), "service", {{"items", Json::array({whole})}, {"proof", "paper"}});
  EXPECT_EQ(row_of(bike.board(today), shoes)->state, State::Overdue);
  bike.service(day(2022, 5, 14), whole, 11'000);
  EXPECT_EQ(row_of(bike.board(today), shoes)->state, State::Overdue) << "30,300 mi ago";
}

TEST(DueShoes, OneWithoutADayIsPlacedByItsReading) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  bike.add(day(2024, 5, 14), "service",
           {{"items", Json::array({whole})}, {"odometer", "20000 mi"}, {"proof", "paper"}, {"undated", true}});
  const Board board = bike.board(today);
  EXPECT_NEAR(board.ridden->in_miles(), 41'300.0, 1e-6) << "it is no reading of that day";
  EXPECT_NEAR(row_of(board, inner)->result.distance->left.in_miles(), 8'700.0, 1e-6);
}

// ---- what turns the cams now

TEST(DueDrive, AConvertedBikeHasNoneOfTheOldDrivesItems) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  EXPECT_TRUE(row_of(bike.board(today), shoes));
  bike.add(
      day(2024, 5, 15), "facts",
      {{"nickname", "Brindle"}, {"engine", "two cams, sprung chains"}, {"drive", "gears"}, {"odometer_unit", "mi"}});
  const Board board = bike.board(today);
  EXPECT_FALSE(row_of(board, shoes));
  EXPECT_FALSE(row_of(board, inner));
  EXPECT_EQ(row_of(board, "Gear drive: runout and lash")->state, State::Overdue) << "no figure on paper";
}

TEST(DueDrive, NotKnownHasTheItemsOfEveryDriveAndSaysSo) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  bike.add(day(2024, 5, 15), "facts", {{"engine", "two cams, sprung chains"}, {"drive", "not known"}});
  const History h = bike.history(today);
  const Board board = board_of(h);
  EXPECT_TRUE(row_of(board, shoes));
  EXPECT_TRUE(row_of(board, "Gear drive: runout and lash"));
  EXPECT_NE(print_board(h, board, System::Inch).find("What turns the cams is not known"), std::string::npos);
}

// ---- faults seen on what has no interval

TEST(DueFaults, StandBesideTheListUntilAServiceOfThem) {
  constexpr const char* leak = "Oil leak at the rocker boxes or pushrod tubes";
  Bike bike;
  bike.finding(day(2024, 5, 14), leak, "failed", 41'300);
  const History h = bike.history(today);
  ASSERT_EQ(h.faults.size(), 1U);
  EXPECT_NE(print_board(h, board_of(h), System::Inch).find(std::string(leak) + ": Found failed on 2024-05-14"),
            std::string::npos);
  const auto events = reminders(h, board_of(h), System::Inch);
  EXPECT_TRUE(std::any_of(events.begin(), events.end(),
                          [&](const auto& e) { return e.summary == std::string("Brindle: ") + leak; }));
  bike.service(day(2024, 5, 20), leak, 41'320, "own entry");
  EXPECT_TRUE(bike.history(today).faults.empty());
}

TEST(DueBoard, AnEngineNobodyNamedHasNoUsualItems) {
  Bike bike("");
  bike.odometer(day(2024, 5, 14), 41'300);
  EXPECT_FALSE(bike.history(today).engine_known);
  EXPECT_TRUE(bike.board(today).rows.empty());
}

// ---- what was done

TEST(DueBoard, AFindingWithProofCountsAsTheLook) {
  Bike bike;
  bike.finding(day(2024, 5, 14), "  outer tensioner SHOE ", "good", 41'300);
  const Row row = *row_of(bike.board(today), shoes);
  EXPECT_TRUE(row.result.proof);
  EXPECT_EQ(row.state, State::Good);
  EXPECT_NEAR(row.result.distance->left.in_miles(), 30'000.0, 1e-6);
}

TEST(DueBoard, AFindingWithoutProofDoesNot) {
  Bike bike;
  bike.finding(day(2024, 5, 14), shoes, "good", 41'300, "none");
  EXPECT_EQ(row_of(bike.board(today), shoes)->state, State::Overdue);
}

TEST(DueBoard, ALookAtWhatIsDueToBeReplacedIsNotItsReplacement) {
  Bike bike;
  bike.finding(day(2024, 5, 14), bearings, "good", 52'000);
  EXPECT_EQ(row_of(bike.board(today), bearings)->state, State::Overdue);
  bike.service(day(2024, 5, 20), bearings, 52'010);
  EXPECT_EQ(row_of(bike.board(today), bearings)->state, State::Good);
}

TEST(DueBoard, WhatWasFoundFailedIsOverdueUntilItIsDone) {
  Bike bike;
  bike.finding(day(2024, 5, 1), shoes, "good", 20'000);
  bike.finding(day(2024, 5, 14), shoes, "failed", 20'100);
  const Board failed = bike.board(today);
  EXPECT_EQ(row_of(failed, shoes)->state, State::Overdue);
  EXPECT_EQ(row_of(failed, shoes)->result.state, State::Good) << "by the interval alone there is time";
  bike.finding(day(2024, 5, 15), shoes, "not seen", 20'110);
  EXPECT_EQ(row_of(bike.board(today), shoes)->state, State::Overdue) << "not having seen it mends nothing";
  bike.service(day(2024, 5, 20), shoes, 20'120, "own entry");
  EXPECT_EQ(row_of(bike.board(today), shoes)->state, State::Good);
}

TEST(DueBoard, AtItsLimitIsDueSoon) {
  Bike bike;
  bike.finding(day(2024, 5, 1), shoes, "good", 20'000);
  bike.finding(day(2024, 5, 14), shoes, "at limit", 20'100);
  EXPECT_EQ(row_of(bike.board(today), shoes)->state, State::DueSoon);
}

TEST(DueBoard, ADoubtfulPaperIsHearsayAndNoReading) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  bike.service(day(2024, 5, 20), shoes, 90'000, "hearsay");
  const Board board = bike.board(today);
  EXPECT_NEAR(board.ridden->in_miles(), 41'300.0, 1e-6);
  EXPECT_FALSE(row_of(board, shoes)->result.proof);
}

// ---- the odometer

TEST(DueBoard, TheNextDayFollowsFromTheRidingWithItsSpread) {
  Bike bike;
  for (int week = 0; week < 10; ++week)
    bike.odometer(Date(std::chrono::sys_days(day(2024, 3, 1)) + std::chrono::days(7 * week)),
                  10'000 + 70 * week + week % 3);
  bike.finding(day(2024, 3, 1), shoes, "good", 10'000);
  const Row row = *row_of(bike.board(today), shoes);
  ASSERT_TRUE(row.result.forecast);
  EXPECT_LE(*row.result.forecast->earliest, row.result.forecast->expected);
  EXPECT_GE(*row.result.forecast->latest, row.result.forecast->expected);
  const long days = inspection_due::days_between(today, row.result.forecast->expected);
  EXPECT_NEAR(static_cast<double>(days), row.result.distance->left.in_miles() / 10.0, 60.0);
}

TEST(DueBoard, ASwappedClockGoesOnWhereTheOldOneEnded) {
  Bike bike;
  bike.finding(day(2023, 1, 1), shoes, "good", 30'000);
  bike.add(day(2023, 6, 1), "clock", {{"old_reading", "40000 mi"}, {"new_reading", "0 mi"}});
  bike.odometer(day(2024, 5, 1), 5'000);
  const Board board = bike.board(today);
  EXPECT_NEAR(board.ridden->in_miles(), 45'000.0, 1e-6);
  EXPECT_NEAR(row_of(board, shoes)->result.distance->on_clock.in_miles(), 20'000.0, 1e-6);
}

TEST(DueBoard, AClockThatWentBackIsSaidAndSwallowsNothing) {
  Bike bike;
  bike.odometer(day(2024, 1, 1), 41'300);
  bike.odometer(day(2024, 2, 1), 30'100);
  const Board board = bike.board(today);
  EXPECT_EQ(row_of(board, shoes)->state, State::Overdue);
  EXPECT_TRUE(
      std::any_of(board.findings.begin(), board.findings.end(), [](const Finding& f) { return f.number == 1503; }));
}

TEST(DueBoard, AReadingWithADigitTooManyIsLeftOutAndSaid) {
  Bike bike;
  bike.odometer(day(2024, 1, 1), 41'200);
  bike.odometer(day(2024, 2, 1), 413'000);
  bike.odometer(day(2024, 3, 1), 41'400);
  const Board board = bike.board(today);
  EXPECT_NEAR(board.ridden->in_miles(), 41'400.0, 1e-6);
  ASSERT_FALSE(board.findings.empty());
  EXPECT_EQ(board.findings.front().number, 1504);
  EXPECT_EQ(board.findings.front().severity, Severity::Caution);
  EXPECT_EQ(row_of(board, shoes)->state, State::Overdue) << "one bad reading hides nothing";
}

TEST(DueBoard, WhatLiesAheadOfTodayIsLeftOutAndSaid) {
  Bike bike;
  bike.odometer(day(2024, 5, 1), 41'300);
  bike.odometer(day(2025, 5, 1), 50'000);
  bike.service(day(2025, 5, 1), shoes, 50'000);
  const Board board = bike.board(today);
  EXPECT_NEAR(board.ridden->in_miles(), 41'300.0, 1e-6);
  EXPECT_FALSE(row_of(board, shoes)->result.proof);
  EXPECT_EQ(
      std::count_if(board.findings.begin(), board.findings.end(), [](const Finding& f) { return f.number == 1502; }),
      2);
}

TEST(DueBoard, AServiceThatContradictsTheClockIsLeftOutAndTheRestStands) {
  Bike bike;
  bike.odometer(day(2024, 5, 1), 41'300);
  bike.add(day(2023, 1, 1), "service", {{"items", Json::array({shoes})}, {"odometer", "90000 mi"}, {"proof", "none"}});
  const Board board = bike.board(today);
  EXPECT_EQ(row_of(board, shoes)->state, State::Overdue);
}

TEST(DueBoard, ALongLogIsThinnedOutButKeepsItsSwapsAndItsEnd) {
  Bike bike;
  for (int i = 0; i < 1100; ++i)
    bike.odometer(Date(std::chrono::sys_days(day(2020, 1, 1)) + std::chrono::days(i)), 1'000 + 10 * i);
  bike.add(day(2023, 6, 1), "clock", {{"old_reading", "12500 mi"}, {"new_reading", "0 mi"}});
  bike.odometer(day(2024, 5, 1), 777);
  const History h = bike.history(today);
  EXPECT_LE(h.riding.log.points.size(), most_readings);
  EXPECT_EQ(h.riding.log.clocks.size(), 2U);
  EXPECT_NEAR(board_of(h).ridden->in_miles(), 13'277.0, 1e-6);
  EXPECT_NEAR(h.riding.rate->km_per_day, 10 * 1.609344, 0.5);
}

// ---- the owner's rules

TEST(DueBoard, TheOwnersIntervalGoesBeforeTheUsualOneAndSaysSo) {
  Bike bike;
  bike.finding(day(2024, 1, 1), shoes, "good", 41'300);
  bike.add(day(2024, 1, 2), "rule", {{"item", "tensioner shoes"}, {"every", "10000 mi"}, {"why", "Rough chains"}});
  const History h = bike.history(today);
  const Board board = board_of(h);
  const Row row = *row_of(board, shoes);
  EXPECT_NEAR(row.result.distance->left.in_miles(), 10'000.0, 1e-6);
  EXPECT_EQ(h.due.items[row.item].source->basis(), Basis::Owner);
  EXPECT_EQ(h.watched[row.item].note, "Rough chains");
  EXPECT_EQ(board.rows.size(), 3U) << "it is both shoes, not another item";
}

TEST(DueBoard, AnItemOfTheOwnersOwnStandsBesideTheUsualOnes) {
  Bike bike;
  bike.service(day(2024, 1, 31), "Engine oil and filter", 41'000);
  bike.add(day(2024, 2, 1), "rule", {{"item", "Engine oil and filter"}, {"every", "2500 mi"}, {"months", 1}});
  const Row row = *row_of(bike.board(day(2024, 2, 10)), "Engine oil and filter");
  EXPECT_EQ(row.result.date->due, day(2024, 2, 29)) << "a leap year's February has a 29th";
  EXPECT_EQ(row.state, State::DueSoon);
}

TEST(DueBoard, WhatTheBikeHasNotGotIsNotDueAndIsStillSaid) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  bike.add(day(2024, 5, 15), "rule", {{"item", shoes}, {"none", true}, {"why", "Gear drive fitted"}});
  const History h = bike.history(today);
  const Board board = board_of(h);
  EXPECT_FALSE(row_of(board, shoes));
  ASSERT_EQ(h.not_fitted.size(), 1U);
  EXPECT_EQ(h.not_fitted[0].why, "Gear drive fitted");
  EXPECT_NE(print_board(h, board, System::Inch).find("none on this bike; Gear drive fitted"), std::string::npos);
  bike.add(day(2024, 5, 16), "rule", {{"item", shoes}, {"every", "20000 mi"}});
  EXPECT_TRUE(row_of(bike.board(today), shoes)) << "the later rule holds";
}

TEST(DueBoard, ARuleThatCannotBeReadChangesNothing) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  bike.add(day(2024, 5, 15), "rule", {{"item", shoes}, {"every", "a lot"}});
  EXPECT_NEAR(row_of(bike.board(today), shoes)->result.every.in_miles(), 30'000.0, 1e-6);
}

// ---- put off

TEST(DueBoard, WhatIsPutOffIsStillOverdueAndSaysWhy) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  bike.add(day(2024, 5, 15), "snooze", {{"item", shoes}, {"until", "2024-07-01"}, {"reason", "Parts on their way"}});
  const History h = bike.history(today);
  const Board board = board_of(h);
  const Row row = *row_of(board, shoes);
  EXPECT_EQ(row.state, State::Overdue);
  EXPECT_TRUE(row.put_off);
  EXPECT_EQ(board.rows.back().result.name, shoes) << "behind what was not put off";
  EXPECT_EQ(words_of(h, row, System::Inch).put_off, "Put off until 2024-07-01: Parts on their way");
}

TEST(DueBoard, PutOffEndsOnItsDayAtItsReadingAndWhenItIsDone) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  bike.add(day(2024, 5, 15), "snooze",
           {{"item", shoes}, {"until", "2024-07-01"}, {"odometer", "42000 mi"}, {"reason", "Season"}});
  EXPECT_TRUE(row_of(bike.board(day(2024, 6, 30)), shoes)->put_off);
  EXPECT_FALSE(row_of(bike.board(day(2024, 7, 1)), shoes)->put_off);
  Bike ridden = bike;
  ridden.odometer(day(2024, 5, 20), 42'000);
  EXPECT_FALSE(row_of(ridden.board(today), shoes)->put_off);
  bike.finding(day(2024, 5, 20), shoes, "good", 41'350);
  EXPECT_FALSE(row_of(bike.board(today), shoes)->put_off);
}

// ---- order and words

TEST(DueBoard, WhatNeedsLookingAtFirstStandsFirst) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  bike.service(day(2024, 5, 1), "Good one", 41'200);
  bike.service(day(2023, 6, 10), "Soon one", 30'000);
  for (const char* item : {"Good one", "Soon one", "Unknown one"})
    bike.add(day(2024, 5, 2), "rule", {{"item", item}, {"months", 12}});
  std::vector<std::string> names;
  for (const Row& row : bike.board(today).rows) names.push_back(row.result.name);
  EXPECT_EQ(names, (std::vector<std::string>{shoes, inner, bearings, "Soon one", "Unknown one", "Good one"}));
}

TEST(DueBoard, TheRowSaysWhatWhenWhyAndWhatToLog) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  const History h = bike.history(today);
  const RowWords w = words_of(h, *row_of(board_of(h), shoes), System::Metric);
  EXPECT_EQ(w.state, "Due now, No proof");
  EXPECT_EQ(w.next, "") << "from no figure";
  bike.service(day(2020, 5, 14), shoes, 10'000);
  const History done = bike.history(today);
  const RowWords past = words_of(done, *row_of(board_of(done), shoes), System::Metric);
  EXPECT_EQ(past.state, "Overdue by 1,300 mi") << "in the unit of the bike's clock";
  EXPECT_EQ(past.next, "Due at 40,000 mi");
  EXPECT_EQ(w.why, "Why: every 30,000 mi (48,280 km); common practice, no published source");
  EXPECT_EQ(w.to_log, "When done, log a finding of Outer tensioner shoe");
  EXPECT_EQ(w.put_off, "");
}

// ---- reminders

TEST(DueReminders, OnTheDayOfTheDateAndTodayForWhatIsOverdue) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  bike.service(day(2024, 5, 1), "Engine oil and filter", 41'200);
  bike.add(day(2024, 5, 2), "rule", {{"item", "Engine oil and filter"}, {"months", 12}});
  const History h = bike.history(today);
  const auto events = reminders(h, board_of(h), System::Inch);
  ASSERT_EQ(events.size(), 4U) << "two shoes, the bearings with them, and the oil";
  EXPECT_EQ(events[0].summary, "Brindle: Outer tensioner shoe");
  EXPECT_EQ(events[0].day, today);
  EXPECT_NE(events[0].description.find("Due now, No proof"), std::string::npos);
  const auto oil = std::find_if(events.begin(), events.end(),
                                [](const auto& e) { return e.summary == "Brindle: Engine oil and filter"; });
  ASSERT_NE(oil, events.end());
  EXPECT_EQ(oil->day, day(2025, 5, 1));
}

TEST(DueReminders, PutOffComesOnItsDayWithItsReason) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  bike.add(day(2024, 5, 15), "snooze", {{"item", shoes}, {"until", "2024-07-01"}, {"reason", "Parts on their way"}});
  const History h = bike.history(today);
  const auto events = reminders(h, board_of(h), System::Inch);
  EXPECT_EQ(events.back().day, day(2024, 7, 1));
  EXPECT_NE(events.back().description.find("Parts on their way"), std::string::npos);
}

TEST(DueReminders, TheSameThingHasTheSameNameWheneverItIsMade) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 51'300);
  const History now = bike.history(today);
  bike.odometer(day(2024, 5, 20), 51'500);
  const History later = bike.history(day(2024, 6, 8));
  const auto a = reminders(now, board_of(now), System::Inch);
  const auto b = reminders(later, board_of(later), System::Inch);
  ASSERT_EQ(a.size(), 3U);
  ASSERT_EQ(b.size(), 3U);
  EXPECT_EQ(a[0].uid, b[0].uid);
  EXPECT_NE(a[0].uid, a[1].uid);
}

}  // namespace
}  // namespace camside::due_board
