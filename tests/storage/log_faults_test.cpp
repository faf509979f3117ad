// Every call of a sitting fails, is cut or is the last before a kill, in every state the folder of a log can be in; and
// every two calls of mending, one after the other. Nothing that was confirmed, and nothing that the files still hold,
// is missing afterwards. CAMSIDE_FAULTS=all tries them all, which takes minutes; without it a part is drawn by a fixed
// seed.
#include <gtest/gtest.h>

#include <cstdlib>
#include <cstring>
#include <functional>
#include <map>
#include <random>

#include "storage/log_program.hpp"

namespace camside::storage {
namespace {

using Files = std::map<std::string, std::string>;

struct State {
  const char* name;
  Files files;
  int must = 0;  // entries 1 to this many are there, confirmed long ago,
  int but = 0;   // but for this one, which is damaged
};

std::string lines(int first, int last, bool header = true) {
  std::string bytes = header ? log_header() : "";
  for (int n = first; n <= last; ++n) bytes += log_line(static_cast<std::uint64_t>(n), nth(n));
  return bytes;
}

std::string with_damage_in(int n, std::string bytes) {
  bytes[bytes.find(std::to_string(41'300 + n))] = '9';
  return bytes;
}

std::string long_lines(int count) {
  std::string bytes = log_header();
  for (int n = 1; n <= count; ++n) {
    Entry e = nth(n);
    e.record.json["note"] = std::string(20'000, 'x');
    bytes += log_line(static_cast<std::uint64_t>(n), e);
  }
  return bytes;
}

constexpr const char* log = "log.camside";
constexpr const char* previous = "log.previous.camside";
constexpr const char* temporary = "log.camside.tmp";
constexpr const char* damaged = "log.damaged.camside";
constexpr const char* cut = "9 0123456789abcdef {\"id\": \"cut o";

const std::vector<State>& states() {
  static const std::vector<State> all = {
      {"none", {}, 0, 0},
      {"small", {{log, lines(1, 3)}}, 3, 0},
      {"torn", {{log, lines(1, 3) + cut}}, 3, 0},
      {"damaged", {{log, with_damage_in(2, lines(1, 4))}}, 4, 2},
      {"damaged and torn", {{log, with_damage_in(2, lines(1, 4)) + cut}}, 4, 2},
      {"damaged, and the previous generation has it",
       {{log, with_damage_in(2, lines(1, 4))}, {previous, lines(1, 2)}},
       4,
       0},
      {"header", {{log, log_header()}}, 0, 0},
      {"half a header", {{log, "camside-l"}}, 0, 0},
      {"of the first version", {{log, log_header(unsealed_version) + lines(1, 3, false)}}, 3, 0},
      {"a damaged header", {{log, "camside-log 6\n" + lines(1, 3, false)}}, 3, 0},
      {"torn, of the first version, and there is a previous generation",
       {{log, log_header(unsealed_version) + lines(1, 3, false) + cut}, {previous, lines(1, 2)}},
       3,
       0},
      {"empty, and there is a previous generation", {{log, ""}, {previous, lines(1, 3)}}, 3, 0},
      {"due for a snapshot", {{log, long_lines(4)}}, 0, 0},
      {"without its last line feed", {{log, lines(1, 3).substr(0, lines(1, 3).size() - 1)}}, 3, 0},
      {"only a temporary file", {{temporary, lines(1, 3)}}, 3, 0},
      {"temporary and damaged", {{temporary, lines(1, 3)}, {damaged, with_damage_in(2, lines(1, 3)) + cut}}, 3, 0},
      {"temporary cut off, and damaged",
       {{temporary, lines(1, 2) + "3 01"}, {damaged, with_damage_in(1, lines(1, 4))}},
       4,
       0},
      {"temporary and damaged have different ones", {{temporary, lines(1, 2)}, {damaged, lines(3, 4)}}, 4, 0},
      {"only a previous generation", {{previous, lines(1, 3)}}, 3, 0},
      {"the previous generation is longer", {{log, lines(1, 2)}, {previous, lines(1, 4)}}, 4, 0},
      {"the temporary file is longer", {{log, lines(1, 2)}, {temporary, lines(1, 4)}, {previous, lines(1, 1)}}, 4, 0},
      {"cut off, and the previous generation is longer", {{log, lines(1, 2) + cut}, {previous, lines(1, 4)}}, 4, 0},
  };
  return all;
}

using Set = std::set<std::string>;

Set ids(const Log& of) {  // much cheaper than contents(); nothing else makes an entry whose sum is right
  Set all;
  for (const Entry& e : of.entries()) all.insert(e.id());
  return all;
}
using Chance = std::mt19937;
using After = std::function<void(SimulatedDisk&)>;

constexpr int first_new = 90;

// What is asked of a program on the way, and what it promised.
struct Story {
  explicit Story(const State& state) : must() {
    for (const auto& [name, bytes] : state.files) disk.set(name, bytes);
    for (int n = 1; n <= state.must; ++n)
      if (n != state.but) must.insert(nth(n).id());
    for (const auto& [name, bytes] : state.files)
      for (const Entry& e : read_lines(bytes).entries) may.insert(e.id());
    for (int n = first_new; n < first_new + 10; ++n) may.insert(nth(n).id());
  }

  // Opens, adds, takes a batch as merging does, takes a snapshot; whoever is killed is started again.
  void sit(const After& killed, bool long_sitting) {
    for (int starts = 0; starts < 4; ++starts) {
      {
        Program program(disk);
        look(program);
        add(program, {nth(first_new)});
        if (long_sitting) {
          add(program, {nth(91), nth(92), nth(93)});
          static_cast<void>(program.engine.snapshot(program.log));
          add(program, {nth(94)});
        }
      }
      if (!disk.off) return;
      killed(disk);
    }
  }

  void check(const After& power_goes) {
    power_goes(disk);
    disk.mend();
    {
      Program program(disk);
      ASSERT_TRUE(program.opens);
      EXPECT_FALSE(program.opened.read_only);
      EXPECT_EQ(minus(must, ids(program.log)), Set{}) << "lost";
      EXPECT_EQ(minus(ids(program.log), may), Set{}) << "invented";
      EXPECT_TRUE(add(program, {nth(99)}));
    }
    disk.restart(Survives::Nothing);
    const Program last(disk);
    EXPECT_EQ(minus(must, ids(last.log)), Set{}) << "lost later";
    EXPECT_FALSE(has(last.opened.findings, 353) || has(last.opened.findings, 354)) << "not mended";
  }

  bool add(Program& program, const std::vector<Entry>& entries) {
    if (!program.add(entries)) return false;
    for (const Entry& e : entries) must.insert(e.id());
    return true;
  }

  // What opens says what it can't show.
  void look(const Program& program) const {
    if (!program.opens || minus(must, ids(program.log)).empty()) return;
    EXPECT_TRUE(has(program.opened.findings, 362)) << "missing without a word";
  }

  SimulatedDisk disk;
  Set must;
  Set may;
};

bool all_of_them() {
  const char* wanted = std::getenv("CAMSIDE_FAULTS");
  return wanted != nullptr && std::strcmp(wanted, "all") == 0;
}

void kill_alone(SimulatedDisk& disk) {
  disk.restart(Survives::Everything);
}

bool is_an_end(Fault fault) {
  return fault == Fault::PowerCut || fault == Fault::KillBefore || fault == Fault::KillAfter;
}

constexpr Fault every_fault[] = {Fault::Fail,     Fault::FailOn,     Fault::Cut,
                                 Fault::PowerCut, Fault::KillBefore, Fault::KillAfter};

int calls_of(const State& state, bool long_sitting) {
  Story story(state);
  story.sit(kill_alone, long_sitting);
  return story.disk.calls;
}

std::string words_of(Fault fault) {
  const char* const words[] = {"fails", "cut", "fails for good", "killed halfway", "killed before", "killed after"};
  const Fault order[] = {Fault::Fail, Fault::Cut, Fault::FailOn, Fault::PowerCut, Fault::KillBefore, Fault::KillAfter};
  for (std::size_t i = 0; i < std::size(order); ++i)
    if (order[i] == fault) return words[i];
  return "";
}

class Faults : public testing::TestWithParam<std::size_t> {
 protected:
  const State& state() const { return states()[GetParam()]; }
  Chance chance_{20261201U + static_cast<unsigned>(GetParam())};

  // After a kill everything written is there; after a power cut, which `seed` draws, only what was synced is sure.
  void tell(const std::map<int, Fault>& strikes, bool long_sitting, unsigned seed) {
    std::string words = state().name;
    for (const auto& [call, fault] : strikes) words += "; call " + std::to_string(call) + " " + words_of(fault);
    SCOPED_TRACE(words + (seed == 0 ? "" : "; power cut " + std::to_string(seed)));
    Chance cut_by(seed);
    const After after = seed == 0 ? After(kill_alone) : [&cut_by](SimulatedDisk& d) { d.restart_shuffled(cut_by); };
    Story story(state());
    story.disk.strikes = strikes;
    story.sit(after, long_sitting);
    story.check(after);
    ++told_;
  }

  int told_ = 0;
};

TEST_P(Faults, OfOneCallLoseNothing) {
  const int count = calls_of(state(), true);
  const unsigned cuts = all_of_them() ? 12 : 1;
  const unsigned one_of = all_of_them() ? 1 : 12;
  for (int call = 0; call < count; ++call)
    for (const Fault fault : every_fault)
      for (unsigned seed = 0; seed <= cuts; ++seed)
        if (chance_() % one_of == 0) tell({{call, fault}}, true, seed == 0 ? 0 : static_cast<unsigned>(chance_()) | 1U);
  EXPECT_GT(told_, 10);
}

TEST_P(Faults, OfTwoCallsOfMendingLoseNothing) {
  const int count = calls_of(state(), false);
  const unsigned one_of = all_of_them() ? 1 : 400;
  for (int first = 0; first < count; ++first) {
    for (int second = first + 1; second < first + 1 + count; ++second) {
      for (const Fault a : every_fault) {
        for (const Fault b : every_fault) {
          if (!is_an_end(a) && second >= count + 6) continue;  // nothing is left to be called
          if (chance_() % one_of == 0) tell({{first, a}, {second, b}}, false, 0);
          if (chance_() % one_of == 0) tell({{first, a}, {second, b}}, false, static_cast<unsigned>(chance_()) | 1U);
        }
      }
    }
  }
  EXPECT_GT(told_, 10);
}

INSTANTIATE_TEST_SUITE_P(Simulated, Faults, testing::Range(std::size_t{0}, states().size()),
                         [](const auto& what) { return "State" + std::to_string(what.param); });

// ---- the ways in which logs were lost, each by itself

SimulatedDisk disk_of(const Files& files) {
  SimulatedDisk disk;
  for (const auto& [name, bytes] : files) disk.set(name, bytes);
  return disk;
}

TEST(LogEngine, WhatFollowsAnEndThatCouldNotBeMendedBeginsOnItsOwnLine) {  // 3
  for (const std::string& bytes : {with_damage_in(2, lines(1, 3)) + cut, lines(1, 3) + cut}) {
    for (int step = 0; step < 6; ++step) {
      SimulatedDisk disk = disk_of({{log, bytes}});
      disk.fault = Fault::Fail;
      disk.fault_at = step;
      Set saved;
      {
        Program program(disk);
        program.add(nth(90), &saved);
        program.add(nth(91), &saved);
      }
      EXPECT_EQ(saved.size(), step < 5 ? 2U : saved.size()) << step;
      EXPECT_EQ(minus(saved, contents(reopened(disk))), Set{}) << step;
    }
  }
}

TEST(LogEngine, ALogWhoseMendingWasKilledBetweenItsRenamesIsNeverBegunAnew) {  // 5
  const Files between = {{temporary, lines(1, 3)}, {damaged, with_damage_in(2, lines(1, 4))}};
  for (const Fault fault : {Fault::Fail, Fault::PowerCut, Fault::Cut, Fault::KillBefore, Fault::KillAfter}) {
    bool struck = true;
    for (int call = 0; struck; ++call) {
      SimulatedDisk disk = disk_of(between);
      disk.strikes = {{call, fault}};
      { const Program program(disk); }
      struck = disk.hurt;
      disk.restart(Survives::Everything);
      disk.mend();
      const Program program(disk);
      EXPECT_EQ(program.log.size(), 4U) << call;
      EXPECT_EQ(contents(program.log), contents(reopened(disk)));
    }
  }
}

TEST(LogEngine, ATemporaryFileThatIsWholeOnlyWantsItsName) {  // 5
  SimulatedDisk disk = disk_of({{temporary, lines(1, 3)}});
  const Program program(disk);
  EXPECT_EQ(program.log.size(), 3U);
  EXPECT_TRUE(has(program.opened.findings, 356));
  EXPECT_EQ(disk.content(log), lines(1, 3));
  EXPECT_EQ(disk.bytes_written, 0U);
}

TEST(LogEngine, ALogCutBetweenTwoLinesIsMissedAndComesBack) {  // 5
  SimulatedDisk disk = disk_of({{log, lines(1, 2)}, {previous, lines(1, 4)}});
  {
    const Program program(disk);
    EXPECT_EQ(program.log.size(), 4U);
    EXPECT_TRUE(has(program.opened.findings, 356));
  }
  disk.seen.erase(previous);
  EXPECT_EQ(reopened(disk).size(), 4U);  // saved, not only shown
}

TEST(LogEngine, APreviousGenerationWithHigherNumbersIsLookedIntoThoughItIsShorter) {  // 5
  Entry wordy = nth(1);
  wordy.record.json["note"] = std::string(5'000, 'x');
  SimulatedDisk disk = disk_of({{log, log_header() + log_line(1, wordy)}, {previous, lines(2, 5)}});
  EXPECT_EQ(reopened(disk).size(), 5U);
}

TEST(LogEngine, ALongerPreviousGenerationWithNothingNewIsNotTalkedAbout) {  // 9
  SimulatedDisk disk = disk_of({{log, lines(1, 2)}, {previous, lines(1, 2) + lines(1, 2, false)}});
  const Program program(disk);
  EXPECT_TRUE(program.opened.findings.empty());
  EXPECT_EQ(disk.bytes_written, 0U);
}

TEST(LogEngine, ALogOfNoBytesIsSaid) {
  SimulatedDisk disk = disk_of({{log, ""}});
  {
    Program program(disk);
    EXPECT_TRUE(has(program.opened.findings, 363));
    EXPECT_TRUE(program.add(nth(1)));
  }
  EXPECT_FALSE(has(Program(disk).opened.findings, 363));
}

TEST(LogEngine, AFileBesideTheLogThatCannotBeReadKeepsNobodyFromAWholeLog) {  // 10
  for (const char* name : {previous, temporary, damaged}) {
    for (const std::string& bytes : {lines(1, 3), lines(1, 3) + cut}) {
      SimulatedDisk disk = disk_of({{log, bytes}, {name, lines(1, 4)}});
      disk.unreadable_names = {name};
      Program program(disk);
      ASSERT_TRUE(program.opens) << name;
      EXPECT_EQ(program.log.size(), 3U);
      EXPECT_TRUE(program.add(nth(90)));
      EXPECT_TRUE(program.engine.snapshot(program.log));
      EXPECT_EQ(disk.content(name), lines(1, 4));  // what could not be read is kept
    }
  }
}

TEST(LogEngine, ADamagedLogBesideAFileThatCannotBeReadOpensForReadingOnly) {  // 10
  SimulatedDisk disk = disk_of({{log, with_damage_in(2, lines(1, 3))}, {previous, lines(1, 2)}});
  disk.unreadable_names = {previous};
  {
    Program program(disk);
    EXPECT_EQ(program.log.size(), 2U);
    EXPECT_TRUE(program.opened.read_only);
    EXPECT_TRUE(has(program.opened.findings, 362) && has(program.opened.findings, 354));
    EXPECT_FALSE(program.add(nth(90)));
  }
  disk.unreadable_names.clear();
  EXPECT_EQ(reopened(disk).size(), 3U);
}

TEST(LogEngine, DamageInAFolderThatCannotBeWrittenIsSaid) {  // 4, 6
  SimulatedDisk disk = disk_of({{log, with_damage_in(2, lines(1, 3)) + cut}});
  disk.read_only_folder = true;
  const Program program(disk);
  EXPECT_EQ(program.log.size(), 2U);
  for (const int number : {353, 354, 361}) EXPECT_TRUE(has(program.opened.findings, number)) << number;
}

TEST(LogEngine, ADamagedLogThatCouldNotBeSetAsideIsNotPushedOutByASnapshot) {  // 4, 9
  const std::string bytes = with_damage_in(2, lines(1, 3));
  SimulatedDisk disk = disk_of({{log, bytes}});
  disk.fault = Fault::Fail;
  disk.fault_at = 0;
  Program program(disk);
  EXPECT_TRUE(has(program.opened.findings, 358));
  EXPECT_TRUE(program.engine.snapshot(program.log));
  EXPECT_TRUE(program.engine.snapshot(program.log));
  EXPECT_EQ(disk.content(damaged), bytes);
}

}  // namespace
}  // namespace camside::storage
