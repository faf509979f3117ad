// The invariants of core/storage/log_engine.hpp by their numbers, and a whole editing session with every fault at every
// operation.
#include "storage/log_engine.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <functional>
#include <iterator>
#include <set>

#include "log/log_file.hpp"
#include "log/log_samples.hpp"
#include "log/log_view.hpp"
#include "storage/log_program.hpp"

namespace camside::storage {
namespace {

TEST(LogEngine, AnEmptyFolderOpensAsAnEmptyLog) {
  SimulatedDisk disk;
  Program program(disk);
  ASSERT_TRUE(program.opens);
  EXPECT_EQ(program.log.size(), 0U);
  EXPECT_TRUE(program.opened.findings.empty());
  EXPECT_TRUE(disk.seen.empty());  // 9: nothing is made before something is added
}

TEST(LogEngine, WhatIsAddedIsThereAgainAsItWas) {
  SimulatedDisk disk;
  Log wanted = brindle_log();
  {
    Program program(disk);
    ASSERT_TRUE(program.add(wanted.entries()));
    Entry later = entry("gizmo", "g", 5, {{"unknown", 0.1}});
    later.record.json["unheard of"] = Json::array({1, "two\nlines", Json()});
    ASSERT_TRUE(program.add(later));
    wanted.add(later);
  }
  EXPECT_EQ(records::export_log(reopened(disk)), records::export_log(wanted));
  EXPECT_EQ(disk.content("log.camside").substr(0, 31),
            "camside-log 2 " + disk.content("log.camside").substr(14, 16) + "\n");
}

TEST(LogEngine, ConfirmsOnlyWhatAPowerCutLeaves) {  // 1
  for (int n = 1; n <= 3; ++n) {
    SimulatedDisk disk;
    {
      Program program(disk);
      for (int i = 1; i <= n; ++i) ASSERT_TRUE(program.add(nth(i)));
    }
    disk.restart(Survives::Nothing);
    EXPECT_EQ(reopened(disk).size(), static_cast<std::size_t>(n));
  }
}

TEST(LogEngine, AnAppendCostsTheSameInALongLog) {  // 2
  std::vector<std::size_t> written;
  std::vector<int> operations;
  for (const int count : {10, 2'000}) {
    SimulatedDisk disk;
    Program program(disk);
    std::vector<Entry> many;
    for (int n = 1000; n < 1000 + count; ++n) many.push_back(nth(n));
    ASSERT_TRUE(program.add(many));
    disk.bytes_read = disk.bytes_written = 0;
    disk.operations = 0;
    ASSERT_TRUE(program.add(odometer("one more", 1, "50,000 mi")));
    EXPECT_EQ(disk.bytes_read, 0U);
    written.push_back(disk.bytes_written);
    operations.push_back(disk.operations);
  }
  EXPECT_NEAR(static_cast<double>(written[0]), static_cast<double>(written[1]), 3.0);  // more digits in the number
  EXPECT_EQ(operations[0], operations[1]);
}

TEST(LogEngine, ACutOffEndAtEveryByteIsSetAsideAndReported) {  // 3
  const SimulatedDisk whole = disk_with(3);
  const std::string bytes = whole.content("log.camside");
  const std::size_t last_line = bytes.rfind('\n', bytes.size() - 2) + 1;
  for (std::size_t cut = 0; cut < bytes.size(); ++cut) {
    SimulatedDisk disk;
    disk.set("log.camside", bytes.substr(0, cut));
    std::set<std::string> seen;
    {
      Program program(disk);
      ASSERT_TRUE(program.opens);
      seen = contents(program.log);
      const auto lines =
          static_cast<std::size_t>(std::count(bytes.begin(), bytes.begin() + static_cast<long>(cut), '\n'));
      const bool at_the_end_of_a_line = cut == 0 || bytes[cut - 1] == '\n';
      const bool whole_but_for_the_line_feed = bytes[cut] == '\n' && lines > 0;
      EXPECT_EQ(seen.size(), (lines > 0 ? lines - 1 : 0) + (whole_but_for_the_line_feed ? 1 : 0)) << cut;
      EXPECT_EQ(has(program.opened.findings, 353), !at_the_end_of_a_line && !whole_but_for_the_line_feed) << cut;
      if (has(program.opened.findings, 353)) {
        const std::size_t start = lines == 0 ? 0 : bytes.rfind('\n', cut - 1) + 1;
        EXPECT_EQ(disk.content("log.torn.txt"), bytes.substr(start, cut - start) + "\n");
      }
      ASSERT_TRUE(program.add(nth(9)));
      seen.insert(content_of(nth(9)));
    }
    Program again(disk);
    EXPECT_EQ(contents(again.log), seen) << cut;
    EXPECT_TRUE(again.opened.findings.empty()) << cut;  // said once, then mended
  }
  EXPECT_GT(last_line, 0U);
}

TEST(LogEngine, AChangedByteAnywhereCostsOneEntryAndIsReported) {  // 4
  const std::string bytes = disk_with(4).content("log.camside");
  for (std::size_t at = 0; at < bytes.size(); ++at) {
    SimulatedDisk disk;
    std::string damaged = bytes;
    damaged[at] = static_cast<char>(damaged[at] ^ 0x11);
    disk.set("log.camside", damaged);
    Program program(disk);
    ASSERT_TRUE(program.opens);
    EXPECT_FALSE(program.opened.findings.empty()) << at;
    for (const Entry& e : program.log.entries()) EXPECT_EQ(content_of(e), content_of(nth(std::stoi(e.id().substr(2)))));
    EXPECT_GE(program.log.size(), bytes[at] == '\n' ? 2U : 3U) << at;
    if (program.log.size() < 4 && program.log.size() > 0 && at < bytes.rfind("\n4 ")) {
      EXPECT_TRUE(has(program.opened.findings, 355) || has(program.opened.findings, 353)) << at;
    }
  }
}

TEST(LogEngine, DamagedLinesHaveNumbersAndTheFileIsKeptWhole) {  // 4, 9
  SimulatedDisk disk = disk_with(5);
  std::string damaged = disk.content("log.camside");
  damaged[damaged.find("41303")] = '9';
  disk.set("log.camside", damaged);
  {
    Program program(disk);
    EXPECT_EQ(program.log.size(), 4U);
    EXPECT_TRUE(has(program.opened.findings, 354));
    EXPECT_NE(program.opened.findings[0].text.find("Line 4 is"), std::string::npos) << program.opened.findings[0].text;
    EXPECT_NE(program.opened.findings[1].text.find("Record 3 is"), std::string::npos)
        << program.opened.findings[1].text;
    EXPECT_EQ(disk.content("log.damaged.camside"), damaged);
    EXPECT_TRUE(program.add(nth(6)));
  }
  Program again(disk);
  EXPECT_EQ(again.log.size(), 5U);
  EXPECT_TRUE(again.opened.findings.empty());
}

TEST(LogEngine, ALineThatNeverReachedTheDiskIsMissedByItsNumber) {  // 4
  SimulatedDisk disk = disk_with(5);
  std::string bytes = disk.content("log.camside");
  const std::size_t start = bytes.find("\n2 ") + 1;
  bytes.erase(start, bytes.find("\n4 ") + 1 - start);
  disk.set("log.camside", bytes);
  const Program program(disk);
  EXPECT_EQ(program.log.size(), 3U);
  ASSERT_TRUE(has(program.opened.findings, 355));
  EXPECT_NE(program.opened.findings[0].text.find("Records 2 to 3"), std::string::npos);
}

TEST(LogEngine, WhatIsMissingComesBackFromTheGenerationBefore) {  // 5
  SimulatedDisk disk;
  {
    Program program(disk);
    for (int n = 1; n <= 3; ++n) ASSERT_TRUE(program.add(nth(n)));
    ASSERT_TRUE(program.engine.snapshot(program.log));
    ASSERT_TRUE(program.add(nth(4)));
  }
  std::string bytes = disk.content("log.camside");
  bytes[bytes.find("41302")] = '9';
  disk.set("log.camside", bytes);
  {
    const Program program(disk);
    EXPECT_EQ(program.log.size(), 4U);
    EXPECT_TRUE(has(program.opened.findings, 356));
  }
  disk.seen.erase("log.camside");
  disk.safe.erase("log.camside");
  const Program program(disk);
  EXPECT_EQ(program.log.size(), 4U);  // what the generation before and the damaged log hold
  EXPECT_TRUE(has(program.opened.findings, 356));
}

TEST(LogEngine, ALogThatDoubledGetsASecondGeneration) {  // 5
  SimulatedDisk disk;
  {
    Program program(disk);
    std::vector<Entry> many;
    for (int n = 0; n < 1'000; ++n) many.push_back(nth(n));
    ASSERT_TRUE(program.add(many));
    EXPECT_EQ(disk.seen.count("log.previous.camside"), 0U);
  }
  EXPECT_EQ(reopened(disk).size(), 1'000U);
  EXPECT_EQ(disk.seen.count("log.previous.camside"), 1U);
  const int before = disk.operations;
  EXPECT_EQ(reopened(disk).size(), 1'000U);
  EXPECT_LE(disk.operations - before, 2);  // syncs only
}

TEST(LogEngine, ASecondProgramReadsAndChangesNothing) {  // 6
  SimulatedDisk disk;
  Program first(disk);
  ASSERT_TRUE(first.add(nth(1)));
  Program second(disk);
  EXPECT_TRUE(second.opened.read_only);
  EXPECT_TRUE(has(second.opened.findings, 350));
  EXPECT_EQ(second.log.size(), 1U);
  const int before = disk.operations;
  EXPECT_FALSE(second.add(nth(2)));
  EXPECT_EQ(second.last.number, 360);
  EXPECT_FALSE(second.engine.snapshot(second.log));
  EXPECT_EQ(disk.operations, before);
  EXPECT_TRUE(first.add(nth(3)));
}

TEST(LogEngine, ASecondProgramLeavesATornEndAlone) {  // 6: the first may just be writing it
  SimulatedDisk disk = disk_with(2);
  disk.seen["log.camside"]->seen += "3 0123";
  int owner = 0;
  disk.lock_owner = &owner;
  const int before = disk.operations;
  const Program second(disk);
  EXPECT_EQ(second.log.size(), 2U);
  EXPECT_EQ(disk.operations, before);
}

TEST(LogEngine, AReadOnlyFolderIsSaidAndOpens) {  // 6, 10
  SimulatedDisk disk = disk_with(2);
  disk.read_only_folder = true;
  Program program(disk);
  EXPECT_EQ(program.log.size(), 2U);
  EXPECT_TRUE(has(program.opened.findings, 361));
  EXPECT_FALSE(program.add(nth(3)));
  EXPECT_EQ(program.last.number, 352);
  EXPECT_NE(program.last.text.find("Read-only file system"), std::string::npos);
  EXPECT_EQ(program.log.size(), 3U);
  disk.read_only_folder = false;  // mended: 7
  EXPECT_TRUE(program.add(nth(4)));
}

TEST(LogEngine, ALockTakenLateChecksThatNobodyWroteMeanwhile) {  // 6
  SimulatedDisk disk = disk_with(2);
  disk.read_only_folder = true;
  Program program(disk);
  disk.read_only_folder = false;
  {
    Program other(disk);
    ASSERT_TRUE(other.add(nth(3)));
  }
  EXPECT_FALSE(program.add(nth(4)));
  EXPECT_EQ(reopened(disk).size(), 3U);
}

TEST(LogEngine, AnUnreadableLogIsNeverWritten) {  // 10
  SimulatedDisk disk = disk_with(2);
  disk.unreadable = true;
  Program program(disk);
  EXPECT_FALSE(program.opens);
  EXPECT_FALSE(program.add(nth(3)));
  disk.unreadable = false;
  EXPECT_EQ(reopened(disk).size(), 2U);
}

TEST(LogEngine, ALogOfANewerCamsideIsReadAndNotWritten) {  // 8
  SimulatedDisk disk = disk_with(2);
  std::string bytes = disk.content("log.camside");
  bytes.replace(0, log_header().size(), log_header(lines_version + 1));
  disk.set("log.camside", bytes + "half a li");
  Program program(disk);
  EXPECT_TRUE(program.opened.read_only);
  EXPECT_TRUE(has(program.opened.findings, 357));
  EXPECT_EQ(program.log.size(), 2U);
  EXPECT_FALSE(program.add(nth(3)));
  EXPECT_EQ(disk.content("log.camside"), bytes + "half a li");
}

TEST(LogEngine, AFlippedBitInTheHeaderIsDamageThatIsSaidAndMended) {  // 4, 8
  for (const std::uint64_t version : {unsealed_version, lines_version}) {
    const std::string header = log_header(version);
    for (std::size_t bit = 0; bit < 8 * (header.size() - 1); ++bit) {
      SimulatedDisk disk = disk_with(3);
      std::string bytes = header + disk.content("log.camside").substr(log_header().size());
      bytes[bit / 8] = static_cast<char>(bytes[bit / 8] ^ (1 << (bit % 8)));
      disk.set("log.camside", bytes);
      {
        Program program(disk);
        EXPECT_FALSE(has(program.opened.findings, 357)) << bit << " is taken for a newer Camside's";
        EXPECT_TRUE(has(program.opened.findings, 354)) << bit;
        EXPECT_GE(program.log.size(), bytes[bit / 8] == '\n' ? 2U : 3U) << bit;
        EXPECT_TRUE(program.add(nth(9)));
      }
      EXPECT_EQ(disk.content("log.damaged.camside"), bytes);
      const Program again(disk);
      EXPECT_TRUE(again.opened.findings.empty()) << bit;
      EXPECT_EQ(again.log.size(), 4U) << bit;
    }
  }
}

std::string first_version() {
  std::ifstream file(CAMSIDE_SOURCE_DIR "/tests/files/stored_log_version_1.txt", std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

TEST(LogEngine, ALogOfTheFirstVersionBecomesOneOfToday) {  // 8
  const std::string old = first_version();
  ASSERT_EQ(old.substr(0, 14), "camside-log 1\n");
  SimulatedDisk disk;
  disk.set("log.camside", old);
  {
    Program program(disk);
    EXPECT_TRUE(program.opened.findings.empty());
    EXPECT_EQ(program.log.size(), 3U);
    EXPECT_TRUE(program.add(nth(9)));
  }
  EXPECT_EQ(disk.content("log.camside").substr(0, log_header().size()), log_header());
  EXPECT_EQ(disk.content("log.previous.camside"), old);
  EXPECT_EQ(reopened(disk).size(), 4U);
}

TEST(LogEngine, ALogOfTheFirstVersionThatCannotBeWrittenAnewIsGoneOnWith) {  // 7, 8
  SimulatedDisk disk;
  disk.set("log.camside", first_version());
  disk.fault = Fault::Fail;
  disk.fault_at = 2;  // the first call that writes the new generation
  {
    Program program(disk);
    EXPECT_FALSE(program.opened.read_only);
    EXPECT_TRUE(program.add(nth(8)));
    EXPECT_TRUE(program.add(nth(9)));
  }
  const std::string bytes = disk.content("log.camside");
  EXPECT_EQ(bytes.find(log_header()), first_version().size());  // once, before the first line of today
  EXPECT_EQ(bytes.rfind(log_header()), first_version().size());
  EXPECT_EQ(reopened(disk).size(), 5U);
}

TEST(LogEngine, AFullDiskKeepsWhatIsThereAndGoesOnWhenThereIsRoom) {  // 7, 10
  SimulatedDisk disk = disk_with(2);
  std::set<std::string> confirmed;
  {
    Program program(disk);
    disk.fault = Fault::FailOn;
    disk.fault_at = disk.operations + 1;  // the sync of the next append, and all after it
    EXPECT_FALSE(program.add(nth(3), &confirmed));
    EXPECT_FALSE(program.add(nth(4), &confirmed));
    EXPECT_EQ(program.last.number, 352);
    EXPECT_NE(program.last.text.find("No space left"), std::string::npos);
    EXPECT_FALSE(program.last.remedy.empty());
    disk.fault = Fault::None;
    EXPECT_TRUE(program.add({nth(3), nth(4)}, &confirmed));
    EXPECT_TRUE(program.add(nth(5), &confirmed));
  }
  disk.restart(Survives::Nothing);
  Program again(disk);
  EXPECT_EQ(again.log.size(), 5U);
  EXPECT_FALSE(has(again.opened.findings, 355));
}

TEST(LogEngine, OpeningAGoodLogChangesNoByte) {  // 9
  SimulatedDisk disk = disk_with(5);
  const std::string before = disk.content("log.camside");
  const std::size_t names = disk.seen.size();
  disk.bytes_written = 0;
  reopened(disk);
  EXPECT_EQ(disk.content("log.camside"), before);
  EXPECT_EQ(disk.bytes_written, 0U);
  EXPECT_EQ(disk.seen.size(), names);
}

TEST(LogEngine, WhatCannotBeSetAsideStays) {  // 9
  for (int step = 0; step < 4; ++step) {
    SimulatedDisk disk = disk_with(2);
    const std::string torn = disk.content("log.camside") + "3 0123";
    disk.set("log.camside", torn);
    disk.fault = Fault::FailOn;
    disk.fault_at = disk.operations + step;
    {
      Program program(disk);
      EXPECT_EQ(program.log.size(), 2U);
      if (step < 3) {
        EXPECT_TRUE(has(program.opened.findings, 358)) << step;
      }
      EXPECT_EQ(disk.content("log.camside"), torn);
      disk.fault = Fault::None;
      EXPECT_TRUE(program.add(nth(3)));  // 7
    }
    EXPECT_EQ(reopened(disk).size(), 3U);
  }
}

// ---- a whole editing session, every fault at every operation

struct Session {
  std::set<std::string> confirmed;
  std::set<std::string> made;
  bool all_in_memory = true;

  void make(Program& program, const std::vector<Entry>& entries) {
    for (const Entry& e : entries) made.insert(content_of(e));
    program.add(entries, &confirmed);
    for (const Entry& e : entries) all_in_memory = all_in_memory && program.log.with_id(e.id()).size() == 1;
  }

  // Two sittings: bike, readings, a service, a correction, a snapshot, a deletion, a batch.
  void run(SimulatedDisk& disk) {
    {
      Program program(disk);
      make(program, {facts()});
      for (int n = 1; n <= 3; ++n) make(program, {nth(n)});
      make(program, {replacing(odometer("better", 10, "41,030 mi"), "id2")});
      static_cast<void>(program.engine.snapshot(program.log));
      make(program, {nth(4)});
    }
    Program program(disk);
    make(program, {deleting("gone", 20, "id3")});
    make(program, {nth(5), nth(6), nth(7)});
    static_cast<void>(program.engine.snapshot(program.log));
    make(program, {nth(8)});
  }
};

int operations_of_a_session() {
  SimulatedDisk disk;
  Session().run(disk);
  return disk.operations;
}

class EveryOperation : public testing::TestWithParam<std::tuple<Fault, Survives>> {};

TEST_P(EveryOperation, LosesNothingThatWasConfirmedAndInventsNothing) {  // 1, 3, 5, 7, 10
  const auto [fault, survives] = GetParam();
  const int count = operations_of_a_session();
  ASSERT_GT(count, 30);
  int struck = 0;
  for (int n = 0; n < count; ++n) {
    SimulatedDisk disk;
    disk.fault = fault;
    disk.fault_at = n;
    Session session;
    session.run(disk);
    struck += disk.hurt ? 1 : 0;
    EXPECT_TRUE(session.all_in_memory) << n;
    disk.restart(survives);
    Program after(disk);
    ASSERT_TRUE(after.opens) << n;
    EXPECT_EQ(minus(session.confirmed, contents(after.log)), std::set<std::string>{}) << "lost, operation " << n;
    EXPECT_EQ(minus(contents(after.log), session.made), std::set<std::string>{}) << "invented, operation " << n;
    EXPECT_FALSE(after.opened.read_only);
    std::set<std::string> more;
    EXPECT_TRUE(after.add(nth(99), &more)) << n;  // 7
    disk.restart(Survives::Nothing);
    const std::set<std::string> last = contents(reopened(disk));
    EXPECT_EQ(minus(more, last), std::set<std::string>{}) << n;
    EXPECT_EQ(minus(session.confirmed, last), std::set<std::string>{}) << "lost later, operation " << n;
  }
  EXPECT_EQ(struck, count);
}

INSTANTIATE_TEST_SUITE_P(Simulated, EveryOperation,
                         testing::Combine(testing::Values(Fault::Fail, Fault::Cut, Fault::FailOn, Fault::PowerCut),
                                          testing::Values(Survives::Nothing, Survives::Everything,
                                                          Survives::HalfOfBytes, Survives::NamesOnly,
                                                          Survives::BytesOnly, Survives::LastNameOnly)));

// Opening a damaged log rewrites it; that is a moment at which everything could be lost.
TEST(LogEngine, MendingSurvivesEveryFaultAtEveryOperation) {  // 1, 4, 9
  const SimulatedDisk whole = disk_with(4);
  std::string damaged = whole.content("log.camside");
  damaged[damaged.find("41302")] = '9';
  for (const Fault fault : {Fault::Fail, Fault::FailOn, Fault::PowerCut}) {
    for (const Survives survives : {Survives::Nothing, Survives::Everything, Survives::HalfOfBytes, Survives::NamesOnly,
                                    Survives::BytesOnly, Survives::LastNameOnly}) {
      bool struck = true;
      for (int n = 0; struck; ++n) {
        SimulatedDisk disk;
        disk.set("log.camside", damaged);
        disk.fault = fault;
        disk.fault_at = n;
        { const Program mending(disk); }
        struck = disk.hurt;
        disk.restart(survives);
        const std::set<std::string> after = contents(reopened(disk));
        for (const int good : {1, 3, 4}) EXPECT_EQ(after.count(content_of(nth(good))), 1U) << n << ": " << good;
      }
    }
  }
}

// A disk that lies: bytes change or never arrive though it said they did. Then an entry can be lost; but only the ones
// of that write, and whatever is missing inside the log is reported.
class LyingDisk : public testing::TestWithParam<Fault> {};

TEST_P(LyingDisk, LosesOnlyWhatItLiedAboutAndThatIsReported) {  // 4
  const int count = operations_of_a_session();
  int lost_in_all = 0;
  for (int n = 0; n < count; ++n) {
    SimulatedDisk disk;
    disk.fault = GetParam();
    disk.fault_at = n;
    Session session;
    session.run(disk);
    disk.restart(Survives::Everything);
    const Program after(disk);
    ASSERT_TRUE(after.opens) << n;
    const auto lost = minus(session.confirmed, contents(after.log));
    EXPECT_LE(lost.size(), 3U) << n;  // the largest append of the session
    EXPECT_EQ(minus(contents(after.log), session.made), std::set<std::string>{}) << n;
    lost_in_all += static_cast<int>(lost.size());
  }
  EXPECT_GT(lost_in_all, 0);  // else the disk didn't lie where it matters
}

INSTANTIATE_TEST_SUITE_P(Simulated, LyingDisk, testing::Values(Fault::Garble, Fault::Forget));

TEST(LyingDisk, AGarbledOrForgottenAppendInsideTheLogIsReported) {  // 4
  for (const Fault fault : {Fault::Garble, Fault::Forget}) {
    SimulatedDisk disk;
    {
      Program program(disk);
      ASSERT_TRUE(program.add(nth(1)));
      disk.fault = fault;
      disk.fault_at = disk.operations;
      program.add(nth(2));
      disk.fault = Fault::None;
      ASSERT_TRUE(program.add(nth(3)));
    }
    const Program after(disk);
    EXPECT_EQ(after.log.size(), 2U);
    EXPECT_TRUE(has(after.opened.findings, 355));
    EXPECT_EQ(has(after.opened.findings, 354), fault == Fault::Garble);
  }
}

}  // namespace
}  // namespace camside::storage
