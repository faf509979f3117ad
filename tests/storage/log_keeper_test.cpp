// The promises of core/storage/log_keeper.hpp by their numbers, with a store whose answers come when the test lets
// them.
#include "storage/log_keeper.hpp"

#include <gtest/gtest.h>

#include <deque>

#include "log/log_remarks.hpp"
#include "log/log_file.hpp"
#include "log/log_samples.hpp"

namespace camside::storage {
namespace {

using namespace records::samples;
using records::Entry;

class FakeLogStore final : public LogStore {
 public:
  struct Append {
    std::vector<Entry> entries;
    Done done;
  };
  std::deque<Append> appends;
  OpenDone opening;
  Heard heard;

  void listen(const Heard& to, const Lost& /*lost*/) override { heard = to; }
  void open(OpenDone done) override { opening = std::move(done); }
  void append(std::vector<Entry> entries, Done done) override {
    appends.push_back({std::move(entries), std::move(done)});
  }

  void answer_open(OpenedStore opened = {}) { opening(std::move(opened)); }
  void confirm() { take().done({}); }
  void refuse() { take().done(tl::unexpected(remarks::log_not_saved("here", "No space left on device"))); }

 private:
  Append take() {
    Append append = std::move(appends.front());
    appends.pop_front();
    return append;
  }
};

struct LogKeeperTest : testing::Test {
  FakeLogStore store;
  LogKeeper keeper{store};
};

TEST_F(LogKeeperTest, TakesNothingBeforeTheLogIsThere) {
  int changes = 0;
  keeper.open([&] { ++changes; });
  EXPECT_FALSE(keeper.add({facts()}));
  store.answer_open({brindle_log(), {}, false});
  EXPECT_EQ(changes, 1);
  EXPECT_EQ(keeper.log().size(), 5U);
  EXPECT_EQ(keeper.state(), SaveState::Idle);
}

TEST_F(LogKeeperTest, NotSavedOfOpeningIsTakenBackByTheFirstConfirmation) {
  keeper.open();
  const Findings both{remarks::log_not_saved("here", "Input/output error"), remarks::records_missing(2, 2)};
  store.answer_open({brindle_log(), both, false});
  keeper.add({odometer("o1", 1, "1 mi")});
  store.refuse();
  EXPECT_TRUE(has(keeper.findings(), 352));
  keeper.retry();
  store.confirm();
  EXPECT_FALSE(has(keeper.findings(), 352));
  EXPECT_TRUE(has(keeper.findings(), 355));
}

TEST_F(LogKeeperTest, SavedOnlyWhenEveryEntryIsConfirmed) {  // 1, 2, 3
  keeper.open();
  store.answer_open();
  EXPECT_TRUE(keeper.add({facts()}));
  EXPECT_EQ(keeper.log().size(), 1U);
  EXPECT_EQ(keeper.state(), SaveState::Saving);
  keeper.add({odometer("o1", 1, "1 mi")});
  keeper.add({odometer("o2", 2, "2 mi")});
  EXPECT_EQ(store.appends.size(), 1U);
  store.confirm();
  EXPECT_EQ(keeper.state(), SaveState::Saving);
  EXPECT_EQ(keeper.unsaved(), 2U);
  ASSERT_EQ(store.appends.size(), 1U);
  EXPECT_EQ(store.appends.front().entries.size(), 2U);  // together
  store.confirm();
  EXPECT_EQ(keeper.state(), SaveState::Saved);
  EXPECT_TRUE(keeper.all_safe());
}

TEST_F(LogKeeperTest, AfterAFailureEverythingIsStillThereAndGoesAgain) {  // 1, 2, 3
  keeper.open();
  store.answer_open();
  keeper.add({facts()});
  store.refuse();
  EXPECT_EQ(keeper.state(), SaveState::Failed);
  EXPECT_EQ(keeper.reason()->number, 352);
  EXPECT_NE(keeper.export_bytes().find("Brindle"), std::string::npos);
  EXPECT_TRUE(store.appends.empty());  // no hurry
  keeper.add({odometer("o1", 1, "1 mi")});
  ASSERT_EQ(store.appends.size(), 1U);
  EXPECT_EQ(store.appends.front().entries.size(), 2U);
  store.refuse();
  keeper.retry();
  store.confirm();
  EXPECT_EQ(keeper.state(), SaveState::Saved);
  EXPECT_FALSE(keeper.reason());
}

TEST_F(LogKeeperTest, WhatIsKnownIsNotSavedAgain) {
  keeper.open();
  store.answer_open({brindle_log(), {}, false});
  EXPECT_TRUE(keeper.add(brindle_log().entries()));
  EXPECT_TRUE(store.appends.empty());
}

TEST_F(LogKeeperTest, AReadOnlyLogTakesNoEntries) {  // 4
  keeper.open();
  store.answer_open({brindle_log(), {remarks::log_open_elsewhere("here")}, true});
  EXPECT_FALSE(keeper.add({odometer("o9", 1, "1 mi")}));
  EXPECT_EQ(keeper.log().size(), 5U);
  EXPECT_TRUE(has(keeper.findings(), 350));
}

TEST_F(LogKeeperTest, AStoreThatCannotBeReadIsNeverWrittenButWhatIsAddedCanBeExported) {  // 1, 4
  keeper.open();
  store.opening(tl::unexpected(remarks::log_cannot_be_read("here", "Input/output error")));
  EXPECT_TRUE(keeper.ready());
  EXPECT_TRUE(keeper.add({facts()}));
  EXPECT_TRUE(store.appends.empty());
  EXPECT_EQ(keeper.state(), SaveState::Failed);
  EXPECT_EQ(keeper.reason()->number, 351);
  EXPECT_NE(keeper.export_bytes().find("Brindle"), std::string::npos);
}

TEST_F(LogKeeperTest, AnotherTryOpensTheStoreAndSavesWhatWaited) {  // 4
  keeper.open();
  store.opening(tl::unexpected(remarks::log_cannot_be_read("here", "Input/output error")));
  keeper.add({odometer("o9", 9, "9 mi")});
  keeper.retry();
  store.answer_open({brindle_log(), {}, false});
  EXPECT_EQ(keeper.log().size(), 6U);
  ASSERT_EQ(store.appends.size(), 1U);
  store.confirm();
  EXPECT_EQ(keeper.state(), SaveState::Saved);
  EXPECT_FALSE(keeper.reason());
}

TEST_F(LogKeeperTest, FollowsTheOneThatWritesAndSavesWhatWaitedWhenItWritesAgain) {  // 5
  int changes = 0;
  keeper.open([&] { ++changes; });
  store.answer_open();
  keeper.add({facts()});
  store.heard({odometer("o1", 1, "1 mi")}, true);
  EXPECT_EQ(changes, 2);
  EXPECT_EQ(keeper.log().size(), 2U);
  EXPECT_TRUE(keeper.read_only());
  EXPECT_FALSE(keeper.add({odometer("o2", 2, "2 mi")}));
  store.refuse();
  EXPECT_EQ(keeper.state(), SaveState::Failed);
  store.heard({odometer("o3", 3, "3 mi")}, false);
  ASSERT_EQ(store.appends.size(), 1U);
  EXPECT_EQ(store.appends.front().entries.size(), 1U);
  store.confirm();
  EXPECT_TRUE(keeper.all_safe());
  EXPECT_EQ(keeper.log().size(), 3U);
}

}  // namespace
}  // namespace camside::storage
