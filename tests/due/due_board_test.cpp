// The due list of a bike from its log, case by case.
#include "due/due_board.hpp"

#include <gtest/gtest.h>

#include "due/due_samples.hpp"
#include "due/due_words.hpp"

namespace camside::due_board {
namespace {

using inspection_due::State;

const Date today = day(2024, 6, 1);
constexpr const char* shoes = "Tensioner shoes";
constexpr const char* bearings = "Inner cam bearings";

// ---- the items

TEST(DueBoard, TheUsualItemsAreTheSameHereAndOnTheBench) {
  for (const auto& [choice, years] :
       {std::pair{"single cam", inspection_due::EngineYears::SingleCam},
        std::pair{"two cams, sprung chains", inspection_due::EngineYears::SprungChain},
        std::pair{"two cams, hydraulic chains", inspection_due::EngineYears::HydraulicChain},
        std::pair{"own", inspection_due::EngineYears::Own}}) {
    const History h = Bike(choice).history(today);
    const auto usual = inspection_due::usual_items(years);
    ASSERT_EQ(h.due.items.size(), usual.size()) << choice;
    EXPECT_TRUE(h.engine_known);
    for (std::size_t i = 0; i < usual.size(); ++i) {
      EXPECT_EQ(h.due.items[i].name, usual[i].name);
      EXPECT_NEAR(h.due.items[i].every->in_km(), usual[i].every->in_km(), 1e-6);
      EXPECT_EQ(h.due.items[i].source, usual[i].source);
    }
  }
}

TEST(DueBoard, BrindleWithoutPapersIsOverdueAndSaysNoProof) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  const Board board = bike.board(today);
  ASSERT_EQ(board.rows.size(), 2U);
  EXPECT_EQ(board.rows[0].result.name, shoes);
  EXPECT_EQ(board.rows[0].state, State::Overdue);
  EXPECT_FALSE(board.rows[0].result.proof);
  EXPECT_NEAR(board.rows[0].result.distance->left.in_miles(), -11'300.0, 1e-6);
  EXPECT_EQ(board.rows[1].state, State::Good);
  EXPECT_NEAR(board.rows[1].result.distance->left.in_miles(), 8'700.0, 1e-6);
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
  bike.finding(day(2024, 5, 14), "  tensioner SHOES ", "worn", 41'300);
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
  EXPECT_EQ(board.rows.size(), 2U) << "it is the same item, not another one";
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
  EXPECT_EQ(names, (std::vector<std::string>{shoes, "Soon one", "Unknown one", bearings, "Good one"}));
}

TEST(DueBoard, TheRowSaysWhatWhenWhyAndWhatToLog) {
  Bike bike;
  bike.odometer(day(2024, 5, 14), 41'300);
  const History h = bike.history(today);
  const RowWords w = words_of(h, *row_of(board_of(h), shoes), System::Metric);
  EXPECT_EQ(w.state, "Overdue by 11,300 mi, No proof") << "in the unit of the bike's clock";
  EXPECT_EQ(w.next, "Due at 30,000 mi");
  EXPECT_EQ(w.why, "Why: every 30,000 mi (48,280 km); common practice, no published source");
  EXPECT_EQ(w.to_log, "When done, log a finding of Tensioner shoes");
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
  ASSERT_EQ(events.size(), 2U) << "what is good and has no day is no reminder";
  EXPECT_EQ(events[0].summary, "Brindle: Tensioner shoes");
  EXPECT_EQ(events[0].day, today);
  EXPECT_NE(events[0].description.find("Overdue by 11,300 mi"), std::string::npos);
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
  ASSERT_EQ(a.size(), 2U);
  ASSERT_EQ(b.size(), 2U);
  EXPECT_EQ(a[0].uid, b[0].uid);
  EXPECT_NE(a[0].uid, a[1].uid);
}

}  // namespace
}  // namespace camside::due_board
