// What the commands on a log refuse, by number; tests/command_line runs them whole.
#include "log/log_commands.hpp"

#include <gtest/gtest.h>

#include "log/log_samples.hpp"

namespace camside::records {
namespace {

using namespace samples;

// The number that a change of Brindle's log is refused by; 0 when it is taken.
int refusal_of(const Change& change, const Log& log = brindle_log()) {
  const auto made = entries_of(log, change, [] { return stamp("new", 60); });
  return made ? 0 : made.error().front().number;
}

Change added(std::string bike, std::string kind) {
  Change change;
  change.bike = std::move(bike);
  change.kind = std::move(kind);
  change.fields = {{"reading", "41,400 mi"}};
  return change;
}

TEST(LogCommands, ABikeIsNamedByWhatIsThereAndByOneOfThem) {
  EXPECT_EQ(refusal_of(added("Brindle", "odometer")), 0);
  EXPECT_EQ(refusal_of(added(brindle, "odometer")), 0);
  EXPECT_EQ(refusal_of(added("Tern", "odometer")), 326);
  Log two = brindle_log();
  two.add(entry("facts", "facts2", 5, {{"nickname", "Brindle"}}, "b2"));
  EXPECT_EQ(refusal_of(added("Brindle", "odometer"), two), 327);
  EXPECT_EQ(refusal_of(added("b2", "odometer"), two), 0);
}

TEST(LogCommands, AKindOfEntryThatIsNoneIsRefused) {
  EXPECT_EQ(refusal_of(added("Brindle", "gizmo")), 330);
}

TEST(LogCommands, AnEntryThatIsNotThereIsNotChanged) {
  for (std::string Change::*how : {&Change::replaces, &Change::remove, &Change::undo}) {
    Change change;
    change.*how = "o9";
    EXPECT_EQ(refusal_of(change), 329);
    change.*how = "o1";
    EXPECT_EQ(refusal_of(change), 0);
  }
}

TEST(LogCommands, ANewerLogIsNotMerged) {
  Findings findings;
  const std::string mine = export_log(brindle_log());
  EXPECT_TRUE(log_to_merge(mine, findings));
  const std::string newer = "{\"camside\": 2" + mine.substr(mine.find(','));
  const auto merged = log_to_merge(newer, findings);
  ASSERT_FALSE(merged);
  EXPECT_EQ(merged.error().front().number, 325);
}

}  // namespace
}  // namespace camside::records
