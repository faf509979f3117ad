#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <chrono>
#include <cmath>

#include "calc/inspection_due/inspection_due.hpp"
#include "calc/inspection_due/inspection_due_inputs.hpp"

namespace camside::inspection_due {
namespace {

double whole(int low, int high) {
  return static_cast<double>(*rc::gen::inRange(low, high));
}

Date after(Date d, int days) {
  return Date(std::chrono::sys_days(d) + std::chrono::days(days));
}

// A bike ridden at uneven pace from 2020 on, its shoes done some time ago with proof.
Input any_bike() {
  Input in;
  Date d = day(2020, 1, 1);
  double miles = whole(100, 30'000);
  Item i = item("Tensioner shoes", whole(1'000, 40'000), *rc::gen::inRange(1, 120));
  i.services = {proven(d, miles)};
  const int entries = *rc::gen::inRange(1, 12);
  for (int k = 0; k < entries; ++k) {
    in.log.push_back(reading(d, miles));
    d = after(d, *rc::gen::inRange(1, 90));
    miles += whole(0, 900);
  }
  in.log.push_back(reading(d, miles));
  in.today = after(d, *rc::gen::inRange(0, 60));
  in.items = {i};
  return in;
}

RC_GTEST_PROP(DueProperties, RidingOnNeverBringsADueBack, ()) {
  Input in = any_bike();
  const auto before = solve(in);
  in.log.back().odometer = *in.log.back().odometer + Distance::miles(whole(0, 1000));
  const auto later = solve(in);
  RC_ASSERT(before.has_value());
  RC_ASSERT(later.has_value());
  RC_ASSERT(later->items[0].date->due == before->items[0].date->due);
  RC_ASSERT(later->items[0].distance->due >= before->items[0].distance->due);
  RC_ASSERT(later->items[0].distance->left <= before->items[0].distance->left);
  RC_ASSERT(later->items[0].state <= before->items[0].state);  // never better
}

RC_GTEST_PROP(DueProperties, LaterProofNeverBringsTheDueEarlier, ()) {
  Input in = any_bike();
  const auto before = solve(in);
  const LogEntry& seen = in.log[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(in.log.size())))];
  in.items[0].services.push_back({seen.date, seen.odometer, true, ""});
  const auto later = solve(in);
  RC_ASSERT(later.has_value());
  RC_ASSERT(later->items[0].date->due >= before->items[0].date->due);
  RC_ASSERT(later->items[0].distance->due >= before->items[0].distance->due);
  RC_ASSERT(later->items[0].state >= before->items[0].state);  // never worse
}

RC_GTEST_PROP(DueProperties, AClockSwapWithRightReadingsChangesNothing, ()) {
  const Input one_clock = any_bike();
  Input two_clocks = one_clock;
  const std::size_t at = static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(one_clock.log.size())));
  const Distance start = Distance::miles(whole(0, 100));
  const Distance taken_off = *one_clock.log[at].odometer - start;
  two_clocks.log[at].new_clock = start;
  for (std::size_t k = at + 1; k < two_clocks.log.size(); ++k)
    two_clocks.log[k].odometer = *two_clocks.log[k].odometer - taken_off;
  const auto a = solve(one_clock);
  const auto b = solve(two_clocks);
  RC_ASSERT(b.has_value());
  RC_ASSERT(std::abs(a->ridden->in_km() - b->ridden->in_km()) < 1e-8);
  RC_ASSERT(std::abs(a->items[0].distance->left.in_km() - b->items[0].distance->left.in_km()) < 1e-8);
  RC_ASSERT(a->items[0].state == b->items[0].state);
  RC_ASSERT(a->items[0].date->due == b->items[0].date->due);
  RC_ASSERT(a->rate.has_value() == b->rate.has_value());
  RC_ASSERT(!a->rate || std::abs(a->rate->km_per_day - b->rate->km_per_day) < 1e-8);
  RC_ASSERT(!b->log_in_doubt);
}

RC_GTEST_PROP(DueProperties, MonthsNeverLeaveTheirMonth, ()) {
  const Date start = after(day(1900, 1, 1), *rc::gen::inRange(0, 100'000));
  const int months = *rc::gen::inRange(1, 1201);
  const Date due = months_after(start, months);
  RC_ASSERT(due.ok());
  const auto count = [](Date d) {
    return static_cast<int>(d.year()) * 12 + static_cast<int>(static_cast<unsigned>(d.month()));
  };
  RC_ASSERT(count(due) - count(start) == months);
  RC_ASSERT(due.day() <= start.day());
}

}  // namespace
}  // namespace camside::inspection_due
