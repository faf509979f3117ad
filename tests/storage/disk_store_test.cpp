// The promises of core/storage/store.hpp on a real disk, by their numbers.
#include "disk_store.hpp"

#include <gtest/gtest.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <optional>
#include <sstream>
#include <thread>

namespace camside {
namespace {

namespace fs = std::filesystem;
using storage::Loaded;
using Step = DiskStore::Step;

// Whole bytes here: "<n>:" and n times "x".
std::string version(std::size_t n) {
  return std::to_string(n) + ":" + std::string(n, 'x');
}
bool is_whole(std::string_view bytes) {
  const std::size_t colon = bytes.find(':');
  if (colon == std::string_view::npos) return false;
  return bytes == version(static_cast<std::size_t>(std::strtoul(std::string(bytes).c_str(), nullptr, 10)));
}

class DiskStoreTest : public testing::Test {
 protected:
  DiskStoreTest() : folder_(fs::temp_directory_path() / ("camside-store-" + std::to_string(::getpid()))) {
    fs::remove_all(folder_);
  }
  ~DiskStoreTest() override { fs::remove_all(folder_); }

  std::string folder() const { return folder_ / "data"; }
  std::string file(const std::string& ending) const { return folder() + "/job" + ending; }
  void write(const std::string& ending, const std::string& bytes) const {
    fs::create_directories(folder());
    std::ofstream(file(ending), std::ios::binary) << bytes;
  }
  std::string read(const std::string& ending) const {
    std::ostringstream out;
    out << std::ifstream(file(ending), std::ios::binary).rdbuf();
    return out.str();
  }

 private:
  fs::path folder_;
};

template <class Answered>
void poll_until(DiskStore& store, Answered answered) {
  for (int i = 0; i < 5000 && !answered(); ++i) {
    store.poll();
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
}

std::optional<Finding> save(DiskStore& store, const std::string& bytes) {
  std::optional<tl::expected<void, Finding>> answer;
  store.save("job", bytes, [&](tl::expected<void, Finding> a) { answer = std::move(a); });
  EXPECT_FALSE(answer);  // invariant 6
  poll_until(store, [&] { return answer.has_value(); });
  EXPECT_TRUE(answer);
  if (!answer || *answer) return std::nullopt;
  return answer->error();
}

tl::expected<Loaded, Finding> load(DiskStore& store) {
  std::optional<tl::expected<Loaded, Finding>> answer;
  store.load("job", is_whole, [&](tl::expected<Loaded, Finding> a) { answer = std::move(a); });
  EXPECT_FALSE(answer);  // invariant 6
  poll_until(store, [&] { return answer.has_value(); });
  EXPECT_TRUE(answer);
  return answer ? *answer : Loaded{};
}

TEST_F(DiskStoreTest, AnEmptyStoreLoadsAsNothing) {  // 8
  DiskStore store(folder());
  const auto loaded = load(store);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded->bytes, "");
  EXPECT_TRUE(loaded->findings.empty());
}

TEST_F(DiskStoreTest, WhatIsSavedIsThereAfterARestart) {
  {
    DiskStore store(folder());
    EXPECT_FALSE(save(store, version(10)));
    EXPECT_FALSE(save(store, version(20)));
  }
  DiskStore again(folder());
  EXPECT_EQ(load(again)->bytes, version(20));
  EXPECT_EQ(read(".previous.json"), version(10));
}

TEST_F(DiskStoreTest, FinishesWhatWasHandedOverBeforeItEnds) {  // 1
  {
    DiskStore store(folder());
    for (std::size_t n = 1; n <= 20; ++n) store.save("job", version(n), [](const auto&) {});
  }
  EXPECT_EQ(read(".json"), version(20));
}

TEST_F(DiskStoreTest, ConfirmsInOrderAndEachOnce) {  // 5, 7
  DiskStore store(folder());
  std::vector<int> order;
  for (int n = 0; n < 30; ++n)
    store.save("job", version(static_cast<std::size_t>(n)), [&order, n](const auto&) { order.push_back(n); });
  poll_until(store, [&] { return order.size() >= 30; });
  ASSERT_EQ(order.size(), 30U);
  for (int n = 0; n < 30; ++n) EXPECT_EQ(order[static_cast<std::size_t>(n)], n);
}

TEST_F(DiskStoreTest, StoppedAfterAnyStepHasTheOldOrTheNewBytesWhole) {  // 3
  for (const Step step : {Step::TempSynced, Step::PreviousKept, Step::Renamed}) {
    for (int already = 0; already <= 2; ++already) {
      fs::remove_all(folder());
      {
        DiskStore before(folder());
        for (int i = 0; i < already; ++i) save(before, version(static_cast<std::size_t>(i) + 1));
      }
      {
        DiskStore stopped(folder(), {}, [step](Step s) { return s == step; });
        EXPECT_TRUE(save(stopped, version(99)));  // never confirmed
      }
      DiskStore after(folder());
      const auto loaded = load(after);
      ASSERT_TRUE(loaded);
      const std::string old = already == 0 ? "" : version(static_cast<std::size_t>(already));
      EXPECT_EQ(loaded->bytes, step == Step::Renamed ? version(99) : old) << static_cast<int>(step) << already;
      EXPECT_FALSE(save(after, version(5)));  // leftovers of the crash don't stand in the way
      EXPECT_EQ(load(after)->bytes, version(5));
    }
  }
}

TEST_F(DiskStoreTest, KilledAtAnyMomentHasWholeBytesAndNoneThatWereConfirmedAreLost) {  // 3
  for (int round = 0; round < 25; ++round) {
    fs::remove_all(folder());
    int pipe_ends[2];
    ASSERT_EQ(::pipe(pipe_ends), 0);
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) {
      DiskStore store(folder());
      for (std::size_t n = 1;; ++n) {
        bool confirmed = false;
        store.save("job", version(n * 1000), [&](const auto& answer) { confirmed = answer.has_value(); });
        while (!confirmed) store.poll();
        if (::write(pipe_ends[1], &n, sizeof n) != static_cast<ssize_t>(sizeof n)) ::_exit(1);
      }
    }
    ::close(pipe_ends[1]);
    std::this_thread::sleep_for(std::chrono::microseconds(3000 + round * 1700));
    ::kill(child, SIGKILL);
    ::waitpid(child, nullptr, 0);
    std::size_t last_confirmed = 0;
    for (std::size_t n = 0; ::read(pipe_ends[0], &n, sizeof n) == static_cast<ssize_t>(sizeof n);) last_confirmed = n;
    ::close(pipe_ends[0]);

    DiskStore after(folder());
    const auto loaded = load(after);
    ASSERT_TRUE(loaded);
    if (last_confirmed == 0) continue;
    EXPECT_TRUE(is_whole(loaded->bytes));
    EXPECT_FALSE(loaded->previous);
    EXPECT_GE(loaded->bytes.size(), version(last_confirmed * 1000).size());
  }
}

TEST_F(DiskStoreTest, ADamagedVersionOpensThePreviousOneAndIsSetAside) {  // 4
  write(".previous.json", version(7));
  for (const std::string& damaged : {std::string(), std::string("9:xxx"), std::string(100, '\0')}) {
    write(".json", damaged);
    DiskStore store(folder());
    const auto loaded = load(store);
    ASSERT_TRUE(loaded);
    EXPECT_EQ(loaded->bytes, version(7));
    EXPECT_TRUE(loaded->previous);
    EXPECT_TRUE(has(loaded->findings, 152));
    EXPECT_EQ(read(".json"), damaged);  // loading changes nothing
    EXPECT_FALSE(save(store, version(8)));
    EXPECT_EQ(read(".json"), version(8));
    EXPECT_EQ(read(".previous.json"), version(7));  // the good one was not pushed out
  }
  EXPECT_TRUE(fs::exists(file(".damaged.json")));
  EXPECT_TRUE(fs::exists(file(".damaged-2.json")));
  EXPECT_EQ(read(".damaged-2.json"), "9:xxx");
}

TEST_F(DiskStoreTest, ADamagedVersionWithoutAPreviousOneIsSaid) {
  write(".json", "9:");
  DiskStore store(folder());
  const auto loaded = load(store);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded->bytes, "");
  EXPECT_TRUE(has(loaded->findings, 153));
  EXPECT_FALSE(save(store, version(1)));
  EXPECT_EQ(read(".damaged.json"), "9:");
}

TEST_F(DiskStoreTest, AMissingVersionOpensThePreviousOne) {
  write(".previous.json", version(7));
  DiskStore store(folder());
  const auto loaded = load(store);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded->bytes, version(7));
  EXPECT_TRUE(has(loaded->findings, 156));
}

TEST_F(DiskStoreTest, AFolderThatCannotBeWrittenIsAFindingWithItsReason) {  // 7
  fs::create_directories(fs::path(folder()).parent_path());
  std::ofstream(folder()) << "a file where the folder should be";
  DiskStore store(folder());
  const auto finding = save(store, version(1));
  ASSERT_TRUE(finding);
  EXPECT_EQ(finding->number, 150);
  EXPECT_NE(finding->text.find("Not a directory"), std::string::npos) << finding->text;
  EXPECT_FALSE(finding->remedy.empty());
}

// Files of this process may grow no further, as on a full disk.
class NoRoom {
 public:
  explicit NoRoom(rlim_t most_bytes) {
    ::signal(SIGXFSZ, SIG_IGN);
    ::getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit now{most_bytes, before_.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &now);
  }
  ~NoRoom() { ::setrlimit(RLIMIT_FSIZE, &before_); }
  NoRoom(const NoRoom&) = delete;
  NoRoom& operator=(const NoRoom&) = delete;

 private:
  rlimit before_{};
};

TEST_F(DiskStoreTest, AFullDiskIsAFindingAndTheOldBytesStay) {
  DiskStore store(folder());
  EXPECT_FALSE(save(store, version(3)));
  {
    const NoRoom no_room(1'000);
    const auto finding = save(store, version(4'000));
    ASSERT_TRUE(finding);
    EXPECT_NE(finding->text.find("File too large"), std::string::npos) << finding->text;
  }
  EXPECT_EQ(load(store)->bytes, version(3));
}

TEST_F(DiskStoreTest, ALinkInPlaceOfTheTemporaryFileIsNotFollowed) {
  DiskStore store(folder());
  EXPECT_FALSE(save(store, version(3)));
  const std::string elsewhere = folder() + "/elsewhere";
  std::ofstream(elsewhere) << "keep me";
  fs::create_symlink(elsewhere, file(".json.tmp"));
  EXPECT_FALSE(save(store, version(4)));
  std::ostringstream kept;
  kept << std::ifstream(elsewhere).rdbuf();
  EXPECT_EQ(kept.str(), "keep me");
  EXPECT_EQ(load(store)->bytes, version(4));
}

TEST_F(DiskStoreTest, ASecondOneReadsButDoesNotSave) {
  DiskStore first(folder());
  EXPECT_FALSE(save(first, version(3)));
  DiskStore second(folder());
  const auto loaded = load(second);
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded->bytes, version(3));
  EXPECT_TRUE(has(loaded->findings, 154));
  const auto finding = save(second, version(4));
  ASSERT_TRUE(finding);
  EXPECT_EQ(finding->number, 154);
  EXPECT_EQ(read(".json"), version(3));
}

TEST_F(DiskStoreTest, WakesTheWindowWhenAnAnswerWaits) {
  std::atomic<int> wakes{0};
  DiskStore store(folder(), [&] { ++wakes; });
  save(store, version(1));
  EXPECT_GE(wakes, 1);
}

TEST(DataFolder, FollowsXdgDataHome) {
  ::setenv("XDG_DATA_HOME", "/somewhere", 1);
  EXPECT_EQ(default_data_folder(), "/somewhere/camside");
  ::setenv("XDG_DATA_HOME", "relative", 1);  // the standard: relative paths are to be ignored
  ::setenv("HOME", "/home/me", 1);
  EXPECT_EQ(default_data_folder(), "/home/me/.local/share/camside");
  ::unsetenv("XDG_DATA_HOME");
  EXPECT_EQ(default_data_folder(), "/home/me/.local/share/camside");
  ::unsetenv("HOME");
  EXPECT_EQ(default_data_folder(), "");
}

}  // namespace
}  // namespace camside
