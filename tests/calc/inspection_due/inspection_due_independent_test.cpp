// Dates against a day counter written by hand: turn the pages of the calendar one by one.
#include <gtest/gtest.h>

#include <algorithm>

#include "calc/inspection_due/inspection_due.hpp"
#include "calc/inspection_due/inspection_due_inputs.hpp"

namespace camside::inspection_due {
namespace {

struct Page {
  int y, m, d;
  bool operator==(const Page&) const = default;
};

bool leap(int y) {
  return (y % 4 == 0 && y % 100 != 0) || y % 400 == 0;
}

int days_in(int y, int m) {
  if (m == 2) return leap(y) ? 29 : 28;
  return m == 4 || m == 6 || m == 9 || m == 11 ? 30 : 31;
}

Page next(Page p) {
  if (++p.d > days_in(p.y, p.m)) p = {p.y, p.m + 1, 1};
  if (p.m > 12) p = {p.y + 1, 1, 1};
  return p;
}

TEST(DueIndependent, DaysByTurningPages) {
  Page p{1999, 12, 1};
  for (long n = 0; n < 40'000; ++n, p = next(p))
    ASSERT_EQ(days_between(day(1999, 12, 1), day(p.y, p.m, p.d)), n) << p.y << "-" << p.m << "-" << p.d;
}

TEST(DueIndependent, MonthsByTurningPages) {
  for (Page start{2023, 1, 1}; start.y < 2025; start = next(start)) {
    int y = start.y;
    int m = start.m;
    for (int months = 1; months <= 30; ++months) {
      if (++m > 12) {
        m = 1;
        ++y;
      }
      ASSERT_EQ(months_after(day(start.y, start.m, start.d), months), day(y, m, std::min(start.d, days_in(y, m))));
    }
  }
}

// Ride day by day at the rate until the distance is used up: the last day on which it isn't is the forecast.
TEST(DueIndependent, ForecastByRidingDayByDay) {
  for (const double daily : {7.0, 13.0, 29.5, 111.0}) {
    Input in;
    in.today = day(2024, 1, 1);
    Item i = item("Tensioner shoes", 5'000.0, {});
    i.services = {proven(day(2023, 12, 1), 1'000.0)};
    in.items = {i};
    in.log = {reading(day(2023, 12, 1), 1'000.0), reading(day(2023, 12, 31), 1'000.0 + 30.0 * daily)};
    double ridden = 1'000.0 + 30.0 * daily;
    Page p{2024, 1, 1};
    while (ridden + daily <= 6'000.0 + 1e-6) {
      ridden += daily;
      p = next(p);
    }
    const auto r = solve(in);
    ASSERT_TRUE(r.has_value());
    EXPECT_EQ(r->items[0].forecast->expected, day(p.y, p.m, p.d)) << daily;
  }
}

}  // namespace
}  // namespace camside::inspection_due
