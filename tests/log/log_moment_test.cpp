#include "log/log_moment.hpp"

#include <gtest/gtest.h>

#include "records/iso_time.hpp"

namespace camside::records {
namespace {

constexpr const char* now = "2026-05-03T14:30:00+02:00";

std::int64_t at(const std::string& time) {
  return utc_milliseconds(time).value_or(-1);
}

TEST(LogMoment, IsNowWithItsOffset) {
  EXPECT_EQ(moment_after(now, 0), "2026-05-03T14:30:00.000+02:00");
  EXPECT_EQ(moment_after("2026-05-03T14:30:00-05:30", 0), "2026-05-03T14:30:00.000-05:30");
}

TEST(LogMoment, InTheSameSecondIsAMillisecondLater) {
  EXPECT_EQ(moment_after(now, at(now)), "2026-05-03T14:30:00.001+02:00");
  EXPECT_EQ(moment_after(now, at(now) + 41), "2026-05-03T14:30:00.042+02:00");
}

TEST(LogMoment, AnotherSecondBeforeOrAheadChangesNothing) {
  EXPECT_EQ(moment_after(now, at(now) - 1), "2026-05-03T14:30:00.000+02:00");
  EXPECT_EQ(moment_after(now, at(now) + 5000), "2026-05-03T14:30:00.000+02:00");
}

TEST(LogMoment, WhatIsNoTimeStaysAsItIs) {
  EXPECT_EQ(moment_after("soon", 0), "soon");
}

}  // namespace
}  // namespace camside::records
