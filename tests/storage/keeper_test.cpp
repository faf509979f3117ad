#include "storage/keeper.hpp"

#include <gtest/gtest.h>

#include "storage/fake_store.hpp"

namespace camside::storage {
namespace {

TEST(Keeper, SaysSavedOnlyAfterTheStoreConfirmed) {  // invariant 2
  FakeStore store;
  Keeper keeper(store, "job");
  EXPECT_EQ(keeper.state(), SaveState::Idle);
  EXPECT_TRUE(keeper.all_safe());
  keeper.put("one");
  EXPECT_EQ(keeper.state(), SaveState::Saving);
  EXPECT_FALSE(keeper.all_safe());
  store.confirm();
  EXPECT_EQ(keeper.state(), SaveState::Saved);
  EXPECT_TRUE(keeper.all_safe());
}

TEST(Keeper, IsNotSavedWhileNewerBytesWait) {
  FakeStore store;
  Keeper keeper(store, "job");
  keeper.put("one");
  keeper.put("two");
  keeper.put("three");
  ASSERT_EQ(store.saves.size(), 1U);  // one at a time
  store.confirm();
  EXPECT_EQ(keeper.state(), SaveState::Saving);
  ASSERT_EQ(store.saves.size(), 1U);
  EXPECT_EQ(store.saves.front().bytes, "three");  // the newest; what came between needs no save of its own
  store.confirm();
  EXPECT_EQ(keeper.state(), SaveState::Saved);
  EXPECT_EQ(store.kept["job"], "three");
  EXPECT_TRUE(store.saves.empty());
}

TEST(Keeper, KeepsTheBytesAndTheReasonAfterAFailure) {  // invariant 1
  FakeStore store;
  Keeper keeper(store, "job");
  keeper.put("one");
  store.refuse();
  EXPECT_EQ(keeper.state(), SaveState::Failed);
  ASSERT_TRUE(keeper.reason());
  EXPECT_NE(keeper.reason()->text.find("disk is full"), std::string::npos);
  EXPECT_EQ(keeper.newest(), "one");
  EXPECT_FALSE(keeper.all_safe());
  keeper.retry();
  EXPECT_EQ(keeper.state(), SaveState::Saving);
  store.confirm();
  EXPECT_EQ(keeper.state(), SaveState::Saved);
  EXPECT_FALSE(keeper.reason());
  EXPECT_EQ(store.kept["job"], "one");
}

TEST(Keeper, TriesAgainWithNewerBytesAfterAFailure) {
  FakeStore store;
  Keeper keeper(store, "job");
  keeper.put("one");
  keeper.put("two");
  store.refuse();
  ASSERT_EQ(store.saves.size(), 1U);
  EXPECT_EQ(store.saves.front().bytes, "two");
  store.refuse();
  EXPECT_EQ(keeper.state(), SaveState::Failed);
  EXPECT_TRUE(store.saves.empty());  // no endless trying
  keeper.put("three");
  store.confirm();
  EXPECT_EQ(store.kept["job"], "three");
}

TEST(Keeper, RetryWithNothingToSaveDoesNothing) {
  FakeStore store;
  Keeper keeper(store, "job");
  keeper.retry();
  keeper.put("one");
  store.confirm();
  keeper.retry();
  EXPECT_TRUE(store.saves.empty());
}

TEST(Keeper, MayBeGoneWhenTheAnswerComes) {
  FakeStore store;
  {
    Keeper keeper(store, "job");
    keeper.put("one");
    keeper.put("two");
  }
  store.confirm();
  store.confirm();
  EXPECT_EQ(store.kept["job"], "two");
}

}  // namespace
}  // namespace camside::storage
