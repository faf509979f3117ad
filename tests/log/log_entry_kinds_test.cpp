// The owner's interval and "put off": read as entered, kept through file and back, refused with the reason.
#include "log/log_entry_kinds.hpp"

#include <gtest/gtest.h>

#include "log/log_file.hpp"
#include "log/log_samples.hpp"

namespace camside::records {
namespace {

using samples::entry;

std::vector<int> refusals(const Entry& one) {
  std::vector<int> numbers;
  for (const Finding& f : check_entry(one))
    if (f.severity == Severity::Refusal) numbers.push_back(f.number);
  return numbers;
}

Entry rule() {
  return entry("rule", "r1", 1,
               {{"item", "Engine oil and filter"}, {"every", "2,500 mi"}, {"months", 6}, {"why", "Short trips"}});
}

Entry put_off() {
  return entry("snooze", "z1", 2,
               {{"item", "Tensioner shoes"}, {"until", "2024-07-01"}, {"odometer", "42000 km"}, {"reason", "Parts"}});
}

TEST(LogEntryKinds, AnIntervalIsReadAsEntered) {
  const auto read = entered_as<entered::Rule>(rule());
  ASSERT_TRUE(read);
  EXPECT_EQ(read->item, "Engine oil and filter");
  EXPECT_NEAR(read->every->in_miles(), 2500.0, 1e-9);
  EXPECT_EQ(read->months, 6);
  EXPECT_EQ(read->why, "Short trips");
  EXPECT_FALSE(entered_as<entered::Snooze>(rule())) << "another kind";
}

TEST(LogEntryKinds, PutOffIsReadAsEntered) {
  const auto read = entered_as<entered::Snooze>(put_off());
  ASSERT_TRUE(read);
  EXPECT_EQ(static_cast<int>(read->until->year()), 2024);
  EXPECT_NEAR(read->odometer->in_km(), 42'000.0, 1e-9);
  EXPECT_EQ(read->reason, "Parts");
}

TEST(LogEntryKinds, BothComeBackFromTheFileDigitForDigit) {
  Log log;
  log.add(rule());
  log.add(put_off());
  const auto back = read_log_file(export_log(log));
  ASSERT_TRUE(back);
  ASSERT_EQ(back->file.log.size(), 2U);
  for (std::size_t i = 0; i < 2; ++i) EXPECT_EQ(content_of(back->file.log.entries()[i]), content_of(log.entries()[i]));
}

TEST(LogEntryKinds, AnIntervalNeedsADistanceMonthsOrThatThereIsNone) {
  EXPECT_TRUE(refusals(rule()).empty());
  EXPECT_EQ(refusals(entry("rule", "r", 1, {{"item", "Oil"}})), std::vector<int>{310});
  EXPECT_EQ(refusals(entry("rule", "r", 1, {{"item", "Oil"}, {"months", 6}, {"none", true}})), std::vector<int>{311});
  EXPECT_TRUE(refusals(entry("rule", "r", 1, {{"item", "Shoes"}, {"none", true}})).empty());
  EXPECT_EQ(refusals(entry("rule", "r", 1, {{"item", "Oil"}, {"months", 0}})), std::vector<int>{200});
  EXPECT_EQ(refusals(entry("rule", "r", 1, {{"months", 6}})), std::vector<int>{201});
}

TEST(LogEntryKinds, NothingIsPutOffForEverOrWithoutAReason) {
  EXPECT_TRUE(refusals(put_off()).empty());
  EXPECT_EQ(refusals(entry("snooze", "z", 1, {{"item", "Shoes"}, {"reason", "Later"}})), std::vector<int>{312});
  EXPECT_EQ(refusals(entry("snooze", "z", 1, {{"item", "Shoes"}, {"until", "2024-07-01"}})), std::vector<int>{201});
  EXPECT_FALSE(entered_as<entered::Snooze>(entry("snooze", "z", 1, {{"item", "Shoes"}, {"reason", "Later"}})));
}

}  // namespace
}  // namespace camside::records
