#include "work/day_as_written.hpp"

#include <gtest/gtest.h>

namespace camside::work {
namespace {

TEST(DayAsWritten, AsPeopleWriteIt) {
  EXPECT_EQ(day_as_written("14.6.2019"), "2019-06-14");
  EXPECT_EQ(day_as_written("14. 6. 2019"), "2019-06-14");
  EXPECT_EQ(day_as_written("2019-06-14"), "2019-06-14");
  EXPECT_EQ(day_as_written("6/14/2019"), "2019-06-14");
  EXPECT_EQ(day_as_written("14/6/2019"), "2019-06-14");
}

TEST(DayAsWritten, TheMonthWillDo) {
  EXPECT_EQ(day_as_written("06/2019"), "2019-06-01");
  EXPECT_EQ(day_as_written("6.2019"), "2019-06-01");
  EXPECT_EQ(day_as_written("2019-06"), "2019-06-01");
}

TEST(DayAsWritten, WhatIsNoDayOrCanBeTwoStaysAsItWasTyped) {
  for (const char* odd : {"-06-01", "5/6/2019", "31.2.2019", "2019", "13/2019", "", "june"})
    EXPECT_EQ(day_as_written(odd), odd);
}

}  // namespace
}  // namespace camside::work
