// The log on a real disk: the promises of log_engine.hpp through the system's calls, and a writing process killed at
// any moment. CAMSIDE_KILLS says how many kills; 25 without it, 200 in the long run.
#include "disk_log.hpp"

#include <gtest/gtest.h>
#include <signal.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>
#include <thread>

#include "log/log_file.hpp"
#include "log/log_samples.hpp"
#include "storage/log_keeper.hpp"

namespace camside {
namespace {

namespace fs = std::filesystem;
using namespace records::samples;
using records::Entry;
using storage::LogEngine;
using storage::LogKeeper;
using storage::SaveState;

class DiskLogTest : public testing::Test {
 protected:
  DiskLogTest() : folder_(fs::temp_directory_path() / ("camside-log-" + std::to_string(::getpid()))) {
    fs::remove_all(folder_);
  }
  ~DiskLogTest() override {
    fs::permissions(folder_ / "data", fs::perms::owner_all, fs::perm_options::add, ignored_);
    fs::remove_all(folder_);
  }

  std::string folder() const { return folder_ / "data"; }
  std::string read(const std::string& name) const {
    std::ostringstream out;
    out << std::ifstream(folder() + "/" + name, std::ios::binary).rdbuf();
    return out.str();
  }

 private:
  fs::path folder_;
  std::error_code ignored_;
};

Entry nth(int n, std::size_t length = 0) {
  Entry e = odometer("id" + std::to_string(n), n, std::to_string(41'300 + n) + " mi");
  if (length > 0) e.record.json["note"] = std::string(length, 'x');
  return e;
}

template <class Reached>
void poll_until(DiskLog& store, Reached reached) {
  for (int i = 0; i < 5000 && !reached(); ++i) {
    store.poll();
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
}

TEST_F(DiskLogTest, WhatAKeeperSavedIsThereAfterARestart) {
  {
    DiskLog store(folder());
    LogKeeper keeper(store);
    EXPECT_FALSE(keeper.add({nth(1)}));  // not open yet
    keeper.open();
    EXPECT_FALSE(keeper.ready());  // b: answers come from poll()
    poll_until(store, [&] { return keeper.ready(); });
    EXPECT_TRUE(keeper.add(brindle_log().entries()));
    EXPECT_EQ(keeper.state(), SaveState::Saving);
    EXPECT_TRUE(keeper.add({nth(1)}));
    poll_until(store, [&] { return keeper.all_safe(); });
    EXPECT_EQ(keeper.state(), SaveState::Saved);
  }
  DiskFiles files(folder());
  LogEngine engine(files);
  auto opened = engine.open();
  ASSERT_TRUE(opened);
  records::Log wanted = brindle_log();
  wanted.add(nth(1));
  EXPECT_EQ(records::export_log(opened->log), records::export_log(wanted));
  EXPECT_TRUE(opened->findings.empty());
}

TEST_F(DiskLogTest, FinishesWhatWasHandedOverBeforeItEnds) {
  {
    DiskLog store(folder());
    store.open([](const auto&) {});
    for (int n = 1; n <= 20; ++n) store.append({nth(n)}, [](const auto&) {});
  }
  DiskFiles files(folder());
  EXPECT_EQ(LogEngine(files).open()->log.size(), 20U);
}

TEST_F(DiskLogTest, ASecondWriterIsToldSo) {
  DiskFiles first(folder());
  LogEngine writer(first);
  ASSERT_TRUE(writer.open());
  ASSERT_TRUE(writer.append(std::vector<Entry>{nth(1)}));
  DiskFiles second(folder());
  LogEngine reader(second);
  const auto opened = reader.open();
  ASSERT_TRUE(opened);
  EXPECT_TRUE(opened->read_only);
  EXPECT_TRUE(has(opened->findings, 350));
  EXPECT_EQ(opened->log.size(), 1U);
  EXPECT_FALSE(reader.append(std::vector<Entry>{nth(2)}));
}

TEST_F(DiskLogTest, AFolderThatCannotBeMadeIsSaidAndTheLogStaysInMemory) {
  fs::create_directories(fs::path(folder()).parent_path());
  std::ofstream(folder()) << "a file where the folder should be";
  DiskLog store(folder());
  LogKeeper keeper(store);
  keeper.open();
  poll_until(store, [&] { return keeper.ready(); });
  keeper.add({nth(1)});
  poll_until(store, [&] { return keeper.reason().has_value(); });
  EXPECT_EQ(keeper.state(), SaveState::Failed);
  EXPECT_NE(keeper.export_bytes().find("41301 mi"), std::string::npos);
  EXPECT_EQ(keeper.unsaved(), 1U);
}

TEST_F(DiskLogTest, ATornEndIsSetAsideOnDisk) {
  {
    DiskFiles files(folder());
    LogEngine engine(files);
    ASSERT_TRUE(engine.open());
    ASSERT_TRUE(engine.append(std::vector<Entry>{nth(1), nth(2)}));
  }
  const std::string whole = read("log.camside");
  std::ofstream(folder() + "/log.camside", std::ios::app | std::ios::binary) << "3 0123456789abcdef {\"id\": \"cut of";
  DiskFiles files(folder());
  LogEngine engine(files);
  const auto opened = engine.open();
  EXPECT_TRUE(has(opened->findings, 353));
  EXPECT_EQ(read("log.camside"), whole);
  EXPECT_EQ(read("log.torn.txt"), "3 0123456789abcdef {\"id\": \"cut of\n");
}

TEST_F(DiskLogTest, ALinkInPlaceOfTheTemporaryFileIsNotFollowed) {
  const fs::path elsewhere = fs::path(folder()).parent_path() / "elsewhere";
  fs::create_directories(folder());
  std::ofstream(elsewhere) << "keep me";
  fs::create_symlink(elsewhere, folder() + "/log.camside.tmp");
  DiskFiles files(folder());
  LogEngine engine(files);
  auto opened = engine.open();
  ASSERT_TRUE(opened);
  opened->log.add(nth(1));
  ASSERT_TRUE(engine.append(std::vector<Entry>{nth(1)}));
  ASSERT_TRUE(engine.snapshot(opened->log));
  std::ostringstream kept;
  kept << std::ifstream(elsewhere).rdbuf();
  EXPECT_EQ(kept.str(), "keep me");
  EXPECT_FALSE(fs::is_symlink(folder() + "/log.camside"));
}

TEST_F(DiskLogTest, WhatIsNoFileIsNeverWaitedFor) {
  for (const char* name : {"log.camside", "log.previous.camside", "log.camside.tmp", "log.torn.txt"}) {
    fs::remove_all(folder());
    fs::create_directories(folder());
    ASSERT_EQ(::mkfifo((folder() + "/" + name).c_str(), 0600), 0);
    DiskFiles files(folder());
    EXPECT_FALSE(files.read(name)) << name;
    EXPECT_FALSE(files.append(name, "x")) << name;
    EXPECT_TRUE(files.write(name, "x")) << name;  // it takes its place
    EXPECT_EQ(files.read(name).value(), "x");
  }
}

TEST_F(DiskLogTest, AWriterWithPatienceWaitsForOneThatIsJustWriting) {
  auto first = std::make_unique<DiskFiles>(folder());
  ASSERT_TRUE(first->lock().value());
  DiskFiles hasty(folder());
  EXPECT_FALSE(hasty.lock().value());
  std::thread ends([&first] {
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
    first.reset();
  });
  DiskFiles patient(folder(), std::chrono::seconds(20));
  EXPECT_TRUE(patient.lock().value());
  ends.join();
}

// ---- killed while writing

int kills() {
  const char* wanted = std::getenv("CAMSIDE_KILLS");
  return wanted == nullptr ? 25 : std::max(1, std::atoi(wanted));
}

// Writes until it is killed: single entries, batches, long ones, a snapshot now and then. Each number that was
// confirmed goes through the pipe, after the store said so.
[[noreturn]] void write_for_ever(const std::string& folder, int first, int pipe_end) {
  DiskFiles files(folder);
  LogEngine engine(files);
  auto opened = engine.open();
  if (!opened) ::_exit(1);
  records::Log log = std::move(opened->log);
  for (int n = first;; ++n) {
    const Entry e = nth(n, static_cast<std::size_t>(n * 131 % 20'000));
    log.add(e);
    if (!engine.append(std::vector<Entry>{e})) ::_exit(2);
    if (::write(pipe_end, &n, sizeof n) != static_cast<ssize_t>(sizeof n)) ::_exit(3);
    if (n % 7 == 0 && !engine.snapshot(log)) ::_exit(4);
  }
}

// Kills it some time after its first confirmed entry, or, early, some time after it began. The last entry confirmed.
int kill_a_writer(const std::string& folder, int first, std::chrono::microseconds after, bool early) {
  int ends[2];
  if (::pipe(ends) != 0) return -1;
  const pid_t child = ::fork();
  if (child == 0) {
    ::close(ends[0]);
    write_for_ever(folder, first, ends[1]);
  }
  ::close(ends[1]);
  int last = first - 1;
  int n = 0;
  if (!early && ::read(ends[0], &n, sizeof n) == static_cast<ssize_t>(sizeof n)) last = n;
  std::this_thread::sleep_for(after);
  ::kill(child, SIGKILL);
  int status = 0;
  ::waitpid(child, &status, 0);
  EXPECT_TRUE(WIFSIGNALED(status)) << "the writer ended by itself: " << WEXITSTATUS(status);
  while (::read(ends[0], &n, sizeof n) == static_cast<ssize_t>(sizeof n)) last = n;
  ::close(ends[0]);
  return last;
}

TEST_F(DiskLogTest, KilledAtAnyMomentNoConfirmedEntryIsLost) {
  std::set<int> confirmed;
  int next = 1;
  int torn = 0;
  int in_all = 0;
  for (int round = 0; round < kills(); ++round) {
    if (round % 10 == 9) {  // a fresh folder now and then, so that beginning a log is hit too
      fs::remove_all(folder());
      confirmed.clear();
    }
    const int first = next;
    const int last = kill_a_writer(folder(), first, std::chrono::microseconds(round * 7'919 % 50'000), round % 5 == 4);
    ASSERT_GE(last, first - 1);
    for (int n = first; n <= last; ++n) confirmed.insert(n);
    in_all += last - first + 1;
    next = last + 2;  // one may have been written without being confirmed

    DiskFiles files(folder());
    LogEngine engine(files);
    const auto opened = engine.open();
    ASSERT_TRUE(opened) << round;
    EXPECT_FALSE(opened->read_only);
    EXPECT_FALSE(has(opened->findings, 354) || has(opened->findings, 355)) << round;
    torn += has(opened->findings, 353) ? 1 : 0;
    for (const int n : confirmed)
      ASSERT_EQ(opened->log.with_id("id" + std::to_string(n)).size(), 1U) << "lost " << n << " in round " << round;
    for (const Entry& e : opened->log.entries()) ASSERT_EQ(e.record.json->contains("entered"), true);
  }
  EXPECT_GT(in_all, 2 * kills());  // the writers did write
  std::printf("%d kills, %d entries confirmed, %d torn ends\n", kills(), in_all, torn);
}

}  // namespace
}  // namespace camside
