// What holds for every log.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <set>

#include "due/due_samples.hpp"
#include "due/due_words.hpp"

namespace camside::due_board {
namespace {

using inspection_due::State;

Date day_after(Date start, int days) {
  return Date(std::chrono::sys_days(start) + std::chrono::days(days));
}

// Anything a log may hold, whether it makes sense or not.
Bike any_bike() {
  Bike bike(*rc::gen::element("two cams, sprung chains", "two cams, hydraulic chains", "single cam", "own", ""));
  const char* items[] = {"Tensioner shoes", "Inner cam bearings", "Engine oil and filter"};
  const int count = *rc::gen::inRange(0, 30);
  for (int i = 0; i < count; ++i) {
    const Date about = day_after(day(2022, 1, 1), *rc::gen::inRange(0, 900));
    const int miles = *rc::gen::inRange(0, 120'000);
    const char* item = *rc::gen::element(items[0], items[1], items[2]);
    const char* proof = *rc::gen::element("none", "hearsay", "own entry", "photo", "paper");
    switch (*rc::gen::inRange(0, 6)) {
      case 0:
        bike.add(about, "clock",
                 {{"old_reading", std::to_string(miles) + " mi"},
                  {"new_reading", std::to_string(*rc::gen::inRange(0, 1'000)) + " km"}});
        break;
      case 1:
        bike.service(about, item, miles, proof);
        break;
      case 2:
        bike.finding(about, item, *rc::gen::element("good", "worn", "at limit", "failed", "not seen"), miles, proof);
        break;
      case 3:
        bike.add(about, "rule", {{"item", item}, {"months", *rc::gen::inRange(1, 60)}, {"every", "9000 km"}});
        break;
      case 4:
        bike.add(
            about, "snooze",
            {{"item", item}, {"until", format_date(day_after(about, *rc::gen::inRange(1, 400)))}, {"reason", "r"}});
        break;
      default:
        bike.odometer(about, miles);
    }
  }
  return bike;
}

RC_GTEST_PROP(DueBoardProperties, NoItemIsEverLostWhateverTheLogHolds, ()) {
  const Bike bike = any_bike();
  const History h = bike.history(day(2024, 6, 1));
  const Board board = board_of(h);
  RC_ASSERT(board.rows.size() == h.due.items.size());
  RC_ASSERT(h.watched.size() == h.due.items.size());
  for (const Row& row : board.rows) RC_ASSERT(row.state <= row.result.state);
}

RC_GTEST_PROP(DueBoardProperties, PuttingOffChangesNoStateAndHidesNothing, ()) {
  Bike bike = any_bike();
  const Date today = day(2024, 6, 1);
  const Board before = bike.board(today);
  bike.add(day(2024, 5, 31), "snooze",
           {{"item", "Tensioner shoes"}, {"until", "2024-09-01"}, {"reason", "Parts on their way"}});
  const History h = bike.history(today);
  const Board after = board_of(h);
  RC_ASSERT(before.rows.size() == after.rows.size());
  for (const Row& row : after.rows) {
    RC_ASSERT(row.state == row_of(before, row.result.name)->state);
    RC_ASSERT(row.put_off == !words_of(h, row, System::Inch).put_off.empty());
  }
}

RC_GTEST_PROP(DueBoardProperties, TheOrderOfTheEntriesMakesNoDifference, ()) {
  const Bike bike = any_bike();
  Bike turned = bike;
  turned.log = {};
  const auto& entries = bike.log.entries();
  for (auto it = entries.rbegin(); it != entries.rend(); ++it) turned.log.add(*it);
  const Date today = day(2024, 6, 1);
  const History a = bike.history(today);
  const History b = turned.history(today);
  RC_ASSERT(print_board(a, board_of(a), System::Inch) == print_board(b, board_of(b), System::Inch));
}

// The C++ calendar itself as the other route: the month counted on, the day taken back to the last one there is.
RC_GTEST_PROP(DueBoardProperties, MonthsEndOnTheLastDayThereIs, ()) {
  const Date done = day_after(day(1996, 1, 1), *rc::gen::inRange(0, 11'000));
  const int months = *rc::gen::inRange(1, 240);
  Bike bike("own");
  bike.service(done, "Oil", 1'000);
  bike.add(done, "rule", {{"item", "Oil"}, {"months", months}});
  const Row row = *row_of(bike.board(done), "Oil");
  const auto month = std::chrono::year_month(done.year(), done.month()) + std::chrono::months(months);
  const std::chrono::year_month_day_last last(month.year(), std::chrono::month_day_last(month.month()));
  RC_ASSERT(row.result.date->due == Date(month.year(), month.month(), std::min(done.day(), last.day())));
  RC_ASSERT(row.result.date->days_left ==
            (std::chrono::sys_days(row.result.date->due) - std::chrono::sys_days(done)).count());
}

RC_GTEST_PROP(DueBoardProperties, EveryReminderIsTodayOrLaterAndHasAnIdOfItsOwn, ()) {
  const Bike bike = any_bike();
  const Date today = day(2024, 6, 1);
  const History h = bike.history(today);
  const auto events = reminders(h, board_of(h), System::Inch);
  std::set<std::string> ids;
  for (const auto& event : events) {
    RC_ASSERT(event.day >= today);
    RC_ASSERT(ids.insert(event.uid).second);
  }
}

}  // namespace
}  // namespace camside::due_board
