#include "log/demo_bike.hpp"

#include <gtest/gtest.h>

#include <string>

namespace camside::records {
namespace {

struct DemoBike : testing::Test {
  Stamp next() {
    const std::string n = std::to_string(100 + ++made);
    return {"e" + n, "2026-05-03T14:30:00." + n + "+02:00", ""};
  }
  void add_demo() {
    for (Entry& entry : demo_bike([this] { return next(); })) log.add(std::move(entry));
  }
  Log log;
  int made = 0;
};

TEST_F(DemoBike, EveryEntryCanBeReadAndSaysThatItIsInvented) {
  add_demo();
  for (const Entry& entry : log.entries()) {
    EXPECT_TRUE(check_entry(entry).empty()) << entry.kind();
    EXPECT_EQ(entry.note(), invented_mark);
  }
  const View seen = view(log);
  ASSERT_EQ(seen.bikes.size(), 1U);
  EXPECT_EQ(seen.bikes[0].name(), "Brindle");
  EXPECT_TRUE(is_invented(log, seen.bikes[0]));
}

TEST_F(DemoBike, ItsRemovalTakesEveryLineAndNothingIsLost) {
  add_demo();
  const std::size_t before = log.size();
  for (Entry& gone : removal_of(log, view(log).bikes[0], [this] { return next(); })) log.add(std::move(gone));
  EXPECT_TRUE(view(log).bikes[0].removed);
  EXPECT_EQ(log.size(), 2 * before);
}

TEST_F(DemoBike, ABikeOfOnesOwnIsNotInvented) {
  Entry own = make_entry("facts", "b1", next());
  own.record.entered()["nickname"] = "Brindle";
  log.add(std::move(own));
  EXPECT_FALSE(is_invented(log, view(log).bikes[0]));
}

}  // namespace
}  // namespace camside::records
