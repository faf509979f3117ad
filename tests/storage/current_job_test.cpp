#include "storage/current_job.hpp"

#include <gtest/gtest.h>

#include "storage/fake_store.hpp"

namespace camside::storage {
namespace {

using records::Json;

const char* const stored =
    R"({"camside": 1, "kind": "measurements", "bike": "Brindle", "records": [{"id": "a", "kind": "gear_pair", "entered": {}}]})";

TEST(CurrentJob, IsNotReadyUntilTheStoreAnswered) {
  FakeStore store;
  CurrentJob job(store);
  int changes = 0;
  job.open([&] { ++changes; });
  EXPECT_FALSE(job.ready());
  EXPECT_FALSE(job.commit());  // would bury what is about to be loaded
  EXPECT_TRUE(store.saves.empty());
  store.kept["current-job"] = stored;
  store.answer_load();
  EXPECT_TRUE(job.ready());
  EXPECT_EQ(changes, 1);
  EXPECT_EQ(job.job().bike(), "Brindle");
  EXPECT_NE(job.job().find("a"), nullptr);
}

TEST(CurrentJob, BeginsEmptyInAnEmptyStore) {  // invariant 8
  FakeStore store;
  CurrentJob job(store);
  job.open();
  store.answer_load();
  EXPECT_TRUE(job.ready());
  EXPECT_TRUE(job.findings().empty());
  EXPECT_TRUE(job.job().records.empty());
  EXPECT_EQ(job.state(), SaveState::Idle);
}

TEST(CurrentJob, SurvivesARestart) {
  FakeStore store;
  {
    CurrentJob job(store);
    job.open();
    store.answer_load();
    records::Record record;
    record.json = Json{{"kind", "gear_pair"}, {"entered", Json{{"module", "16 DP"}, {"later field", 1}}}};
    job.job().records.push_back(record);
    EXPECT_TRUE(job.commit());
    EXPECT_EQ(job.state(), SaveState::Saving);
    store.confirm();
    EXPECT_EQ(job.state(), SaveState::Saved);
  }
  CurrentJob again(store);
  again.open();
  store.answer_load();
  ASSERT_EQ(again.job().records.size(), 1U);
  EXPECT_EQ(again.job().records[0].entered()["module"], "16 DP");
  EXPECT_EQ(again.job().records[0].entered()["later field"], 1);
}

TEST(CurrentJob, NeverSavesOverAStoreThatCouldNotBeRead) {
  FakeStore store;
  CurrentJob job(store);
  job.open();
  store.refuse_load();
  EXPECT_TRUE(job.ready());
  EXPECT_TRUE(has(job.findings(), 151));
  EXPECT_FALSE(job.commit());
  EXPECT_FALSE(job.replace(records::empty_file()));
  EXPECT_TRUE(store.saves.empty());
}

TEST(CurrentJob, NeverSavesOverAFileOfANewerCamside) {
  FakeStore store;
  store.kept["current-job"] = R"({"camside": 9, "kind": "measurements", "records": [], "new": true})";
  CurrentJob job(store);
  job.open();
  store.answer_load();
  EXPECT_TRUE(has(job.findings(), 111));
  EXPECT_FALSE(job.commit());
  EXPECT_TRUE(store.saves.empty());
}

TEST(CurrentJob, TellsTheStoreWhichBytesAreWhole) {
  FakeStore store;
  CurrentJob job(store);
  job.open();
  const auto whole = store.loads.front().whole;
  EXPECT_TRUE(whole(stored));
  EXPECT_FALSE(whole(std::string_view(stored).substr(0, 60)));
  EXPECT_FALSE(whole(""));
}

}  // namespace
}  // namespace camside::storage
