// The C++ side of the browser's log (app-web/browser_log) against a simulated page: promises of storage/log_store.hpp
// by their letters, and that nothing confirmed is ever lost, whatever the browser answers, in whatever order.
#include "browser_log.hpp"

#include <gtest/gtest.h>

#include <set>

#include "log/log_samples.hpp"
#include "storage/log_lines.hpp"
#include "storage/simulated_page.hpp"

// The bridge leads to the browser of the tab whose code runs.
namespace camside::page {

using test::Browser;

void log_open() {
  Browser::running->browser().open(*Browser::running);
}
void log_append(std::uint64_t before, std::uint64_t number, std::string_view bytes) {
  Browser::running->browser().append(*Browser::running, before, number, std::string(bytes));
}
void log_damaged() {
  Browser::running->browser().damaged(*Browser::running);
}
void log_take_over() {
  Browser::running->browser().take_over(*Browser::running);
}
// Of the other store, which nobody asks here.
void load(int /*ticket*/, const std::string& /*name*/) {}
void save(int /*ticket*/, const std::string& /*name*/, std::string_view /*bytes*/) {}
void set_aside(const std::string& /*name*/, bool /*previous_is_good*/) {}

}  // namespace camside::page

namespace camside::page::test {
namespace {

using namespace records::samples;
using records::Entry;
using storage::SaveState;

std::set<std::string> ids_in(const Browser& browser) {
  std::set<std::string> ids;
  const storage::ReadLines read = storage::read_lines(browser.all_bytes());
  EXPECT_TRUE(read.damaged.empty());
  EXPECT_TRUE(read.gaps.empty());
  for (const Entry& entry : read.entries) ids.insert(entry.id());
  return ids;
}

std::set<std::string> ids_of(const records::Log& log) {
  std::set<std::string> ids;
  for (const Entry& entry : log.entries()) ids.insert(entry.id());
  return ids;
}

struct BrowserLogTest : testing::Test {
  Browser browser;

  Tab& opened() {
    Tab& tab = browser.open_tab();
    browser.settle();
    return tab;
  }
};

TEST_F(BrowserLogTest, SavedOnlyAfterTheBrowserConfirmed) {  // a, b, c
  Tab& tab = browser.open_tab();
  EXPECT_FALSE(tab.add({facts()})) << "not open yet";
  browser.settle();
  ASSERT_TRUE(tab.add({facts()}));
  EXPECT_EQ(tab.keeper.state(), SaveState::Saving);
  browser.step();  // written, not said
  EXPECT_EQ(ids_in(browser).size(), 1U);
  EXPECT_EQ(tab.keeper.state(), SaveState::Saving);
  browser.step();
  EXPECT_EQ(tab.keeper.state(), SaveState::Saved);
  EXPECT_FALSE(browser.busy());
}

TEST_F(BrowserLogTest, WhatComesMeanwhileGoesTogetherAndInOrder) {
  Tab& tab = opened();
  tab.add({facts()});
  tab.add({odometer("o1", 1, "1 mi")});
  tab.add({odometer("o2", 2, "2 mi")});
  browser.settle();
  EXPECT_EQ(tab.appends, 2U);
  EXPECT_EQ(browser.database.size(), 2U);
  EXPECT_EQ(browser.database.rbegin()->first, 3U);
  EXPECT_EQ(ids_in(browser), (std::set<std::string>{"facts", "o1", "o2"}));
}

TEST_F(BrowserLogTest, AFullAndARefusingBrowserAreSaidAndTheEntriesGoAgain) {
  for (const auto& [fault, words] : {std::pair{Fault::Full, "it is full"}, {Fault::Refused, "the browser refuses"}}) {
    Browser one;
    Tab& tab = one.open_tab();
    one.settle();
    tab.fault = fault;
    tab.add({facts()});
    one.settle();
    EXPECT_EQ(tab.keeper.state(), SaveState::Failed);
    ASSERT_TRUE(tab.keeper.reason());
    EXPECT_EQ(tab.keeper.reason()->number, 352);
    EXPECT_NE(tab.keeper.reason()->text.find(words), std::string::npos);
    EXPECT_TRUE(one.database.empty());
    tab.retry();
    one.settle();
    EXPECT_EQ(tab.keeper.state(), SaveState::Saved);
    EXPECT_EQ(ids_in(one).size(), 1U);
  }
}

TEST_F(BrowserLogTest, WhatTheDatabaseLostComesBackFromTheSecondCopyAndIsSavedAnew) {
  opened().add({facts(), odometer("o1", 1, "1 mi")});
  browser.settle();
  Browser emptied;
  emptied.copied = browser.all_bytes() + browser.all_bytes();  // an append that was made again stands there twice
  Tab& tab = emptied.open_tab();
  emptied.settle();
  EXPECT_EQ(ids_of(tab.keeper.log()), (std::set<std::string>{"facts", "o1"}));
  ASSERT_EQ(tab.keeper.findings().size(), 1U);
  EXPECT_EQ(tab.keeper.findings().front().number, 359);
  EXPECT_NE(tab.keeper.findings().front().text.find("2 entries"), std::string::npos);
  EXPECT_EQ(tab.keeper.state(), SaveState::Saved);
  EXPECT_EQ(ids_in(emptied), (std::set<std::string>{"facts", "o1"}));
}

TEST_F(BrowserLogTest, ASecondCopyJoinsWhatWasAddedAfterTheLoss) {
  opened().add({facts(), odometer("o1", 1, "1 mi")});
  browser.settle();
  Browser later;
  Tab& first = later.open_tab();
  later.settle();
  first.add({odometer("o2", 2, "2 mi")});  // under the number that the copy has for another one
  later.settle();
  Browser again;
  again.database = later.database;
  again.copied = browser.all_bytes() + later.all_bytes().substr(0, 30);  // and an end that was cut off
  Tab& tab = again.open_tab();
  again.settle();
  EXPECT_EQ(ids_of(tab.keeper.log()), (std::set<std::string>{"facts", "o1", "o2"}));
  EXPECT_EQ(ids_in(again), (std::set<std::string>{"facts", "o1", "o2"}));
}

TEST_F(BrowserLogTest, ASecondCopyWithNothingNewSaysNothingAndAddsNothing) {
  opened().add({facts(), odometer("o1", 1, "1 mi")});
  browser.settle();
  Browser other;
  other.database = browser.database;
  other.copied = browser.all_bytes();
  Tab& tab = other.open_tab();
  other.settle();
  EXPECT_TRUE(tab.keeper.findings().empty());
  EXPECT_EQ(tab.appends, 0U);
}

TEST_F(BrowserLogTest, WhatComesBackAndIsRefusedWaitsLikeAnyOther) {
  opened().add({facts()});
  browser.settle();
  Browser full;
  full.copied = browser.all_bytes();
  Tab& tab = full.open_tab();
  tab.fault = Fault::Full;
  full.settle();
  EXPECT_EQ(tab.keeper.state(), SaveState::Failed);
  EXPECT_EQ(tab.keeper.unsaved(), 1U);
  tab.retry();
  full.settle();
  EXPECT_EQ(tab.keeper.state(), SaveState::Saved);
  EXPECT_EQ(ids_in(full), (std::set<std::string>{"facts"}));
}

TEST_F(BrowserLogTest, ADatabaseDeletedWhileItIsOpenIsWrittenAnewFromMemoryAndSaid) {  // e
  for (const bool noticed : {true, false}) {
    Browser one;
    Tab& tab = one.open_tab();
    one.settle();
    for (int n = 0; n < 3; ++n) tab.add({odometer("o" + std::to_string(n), n, "1 mi")});
    one.settle();
    one.lose_database(noticed);
    if (!noticed) tab.add({odometer("o3", 3, "2 mi")});
    one.settle();
    EXPECT_EQ(ids_in(one), ids_of(tab.keeper.log()));
    EXPECT_EQ(tab.keeper.state(), SaveState::Saved);
    EXPECT_TRUE(has(tab.keeper.findings(), 364));
    tab.add({odometer("o4", 4, "3 mi")});
    one.settle();
    EXPECT_EQ(tab.keeper.state(), SaveState::Saved);
    EXPECT_EQ(ids_in(one), ids_of(tab.keeper.log()));
  }
}

TEST_F(BrowserLogTest, WhatCannotBeWrittenAnewIsNotSavedAndGoesWithTheNextTry) {  // e
  Tab& tab = opened();
  tab.add({facts()});
  tab.add({odometer("o1", 1, "1 mi")});
  browser.settle();
  browser.lose_database(true);
  tab.fault = Fault::Full;
  browser.settle();
  EXPECT_EQ(tab.keeper.state(), SaveState::Failed);
  EXPECT_EQ(tab.keeper.unsaved(), 2U);
  tab.retry();
  browser.settle();
  EXPECT_EQ(tab.keeper.state(), SaveState::Saved);
  EXPECT_EQ(ids_in(browser), (std::set<std::string>{"facts", "o1"}));
}

TEST_F(BrowserLogTest, TabsThatFollowHearOfAnEntryBehindALostDatabase) {  // d, e
  Tab& writer = opened();
  Tab& other = opened();
  writer.add({facts()});
  browser.settle();
  browser.lose_database(false);
  writer.add({odometer("o1", 1, "1 mi")});
  browser.settle();
  EXPECT_EQ(ids_of(other.keeper.log()), (std::set<std::string>{"facts", "o1"}));
  EXPECT_EQ(ids_in(browser), ids_of(other.keeper.log()));
}

TEST_F(BrowserLogTest, AConnectionLostAfterTheWriteLosesNothing) {
  Tab& tab = opened();
  tab.add({facts()});
  browser.settle();
  tab.fault = Fault::LostAfterWrite;
  tab.add({odometer("o1", 1, "1 mi")});
  browser.settle();
  EXPECT_EQ(tab.keeper.state(), SaveState::Saved);
  EXPECT_EQ(ids_in(browser), (std::set<std::string>{"facts", "o1"}));
  EXPECT_EQ(tab.keeper.log().size(), 2U);
}

TEST_F(BrowserLogTest, OpeningIsRefusedSaidAndTriedAgain) {
  Tab& tab = browser.open_tab();
  tab.refuses_to_open = true;
  browser.settle();
  EXPECT_EQ(tab.keeper.state(), SaveState::Failed);
  EXPECT_EQ(tab.keeper.reason()->number, 351);
  EXPECT_TRUE(tab.add({facts()})) << "kept in memory, to be exported";
  EXPECT_EQ(tab.appends, 0U);
  tab.refuses_to_open = false;
  tab.retry();
  browser.settle();
  EXPECT_EQ(tab.keeper.state(), SaveState::Saved);
  EXPECT_EQ(ids_in(browser).size(), 1U);
}

TEST_F(BrowserLogTest, OfADatabaseThatCannotBeReadTheSecondCopyIsShown) {
  opened().add({facts(), odometer("o1", 1, "1 mi")});
  browser.settle();
  Browser sick;
  sick.database = browser.database;
  sick.whole_copy = browser.all_bytes();
  Tab& tab = sick.open_tab();
  tab.refuses_to_open = true;
  sick.settle();
  EXPECT_EQ(ids_of(tab.keeper.log()), (std::set<std::string>{"facts", "o1"}));
  EXPECT_EQ(tab.keeper.state(), SaveState::Failed);
  EXPECT_EQ(tab.keeper.reason()->number, 351);
  EXPECT_NE(tab.keeper.reason()->text.find("second copy, 2 entries"), std::string::npos) << tab.keeper.reason()->text;
  EXPECT_TRUE(tab.add({odometer("o2", 2, "2 mi")}));
  EXPECT_NE(tab.keeper.export_bytes().find("\"o1\""), std::string::npos);
  tab.refuses_to_open = false;
  tab.retry();
  sick.settle();
  EXPECT_EQ(tab.keeper.state(), SaveState::Saved);
  EXPECT_EQ(ids_in(sick), (std::set<std::string>{"facts", "o1", "o2"}));
  EXPECT_EQ(tab.appends, 1U) << "what the copy holds is saved already";
}

TEST_F(BrowserLogTest, OneTabWritesTheOthersFollowAndTakeOver) {  // d
  Tab& one = opened();
  Tab& two = opened();
  EXPECT_FALSE(one.keeper.read_only());
  EXPECT_TRUE(two.keeper.read_only());
  EXPECT_TRUE(two.keeper.can_take_over());
  EXPECT_FALSE(two.add({facts()}));
  one.add({facts()});
  browser.settle();
  EXPECT_EQ(two.keeper.log().size(), 1U);
  one.add({odometer("o1", 1, "1 mi")});
  two.take_over();
  browser.settle();
  EXPECT_TRUE(one.keeper.read_only());
  EXPECT_FALSE(two.keeper.read_only());
  EXPECT_TRUE(one.keeper.all_safe()) << "whoever stops writing has first saved what it was handed";
  EXPECT_EQ(two.keeper.log().size(), 2U);
  two.add({odometer("o2", 2, "2 mi")});
  browser.settle();
  EXPECT_EQ(one.keeper.log().size(), 3U);
  EXPECT_EQ(ids_in(browser).size(), 3U);
}

TEST_F(BrowserLogTest, AFrozenTabThatLostTheLockSavesNothingLateAndKeepsWhatItHas) {
  Tab& frozen = opened();
  Tab& two = opened();
  frozen.deaf = true;
  two.take_over();
  browser.step();   // the lock is stolen; the frozen one has not heard of it
  browser.step(1);  // the other one has
  frozen.add({odometer("o1", 1, "1 mi")});
  two.add({facts()});
  browser.settle();
  EXPECT_EQ(frozen.keeper.state(), SaveState::Failed);
  EXPECT_EQ(frozen.keeper.unsaved(), 1U);
  EXPECT_EQ(frozen.keeper.reason()->text, "Not saved in this browser: another tab writes there now");
  EXPECT_EQ(ids_in(browser), std::set<std::string>{"facts"});
  frozen.deaf = false;
  frozen.take_over();
  browser.settle();
  EXPECT_TRUE(frozen.keeper.all_safe());
  EXPECT_EQ(ids_in(browser), (std::set<std::string>{"facts", "o1"}));
}

TEST_F(BrowserLogTest, WithoutLocksTheNumbersKeepTabsApart) {
  browser.locks = false;
  Tab& one = opened();
  Tab& two = opened();
  one.add({facts()});
  two.add({odometer("o1", 1, "1 mi")});
  browser.settle();
  EXPECT_TRUE(one.keeper.all_safe());
  EXPECT_TRUE(two.keeper.all_safe());
  EXPECT_EQ(ids_in(browser), (std::set<std::string>{"facts", "o1"}));
  EXPECT_EQ(two.keeper.log().size(), 2U) << "it was told what had come before its own";
}

TEST_F(BrowserLogTest, ADamagedRecordCostsOnlyItsOwnAndIsSaid) {
  {
    Tab& tab = opened();
    for (const char* id : {"o1", "o2", "o3"}) {
      tab.add({odometer(id, 1, "1 mi")});
      browser.settle();
    }
  }
  browser.tabs.clear();
  Browser damaged;
  damaged.database = browser.database;
  std::string& second = damaged.database.at(2);
  second[second.size() - 5] ^= 1;
  Tab& tab = damaged.open_tab();
  damaged.settle();
  EXPECT_EQ(ids_of(tab.keeper.log()), (std::set<std::string>{"o1", "o3"}));
  EXPECT_TRUE(has(tab.keeper.findings(), 354));
  const std::string before = second;
  tab.add({odometer("o4", 4, "4 mi")});
  damaged.settle();
  EXPECT_EQ(tab.keeper.state(), SaveState::Saved);
  EXPECT_EQ(damaged.database.at(2), before) << "nothing is ever written over";
}

TEST_F(BrowserLogTest, ADamagedRecordComesBackFromTheSecondCopy) {
  for (const char* id : {"o1", "o2", "o3"}) {
    (browser.tabs.empty() ? opened() : *browser.tabs.front()).add({odometer(id, 1, "1 mi")});
    browser.settle();
  }
  Browser damaged;
  damaged.database = browser.database;
  damaged.whole_copy = browser.all_bytes();
  std::string& second = damaged.database.at(2);
  second[second.size() - 5] ^= 1;
  Tab& tab = damaged.open_tab();
  Tab& other = damaged.open_tab();  // only reads: it is not his to look
  damaged.settle();
  EXPECT_EQ(ids_of(tab.keeper.log()), (std::set<std::string>{"o1", "o2", "o3"}));
  EXPECT_NE(damaged.database.at(4).find("\"o2\""), std::string::npos) << "saved anew";
  EXPECT_TRUE(has(tab.keeper.findings(), 354));
  EXPECT_TRUE(has(tab.keeper.findings(), 359));
  EXPECT_EQ(ids_of(other.keeper.log()), (std::set<std::string>{"o1", "o2", "o3"})) << "heard of it";
  EXPECT_EQ(damaged.copies_asked, 1U);
  // The next opening finds the damage again, but nothing that is missing.
  Browser again;
  again.database = damaged.database;
  again.whole_copy = damaged.all_bytes();
  Tab& next = again.open_tab();
  again.settle();
  EXPECT_FALSE(has(next.keeper.findings(), 359));
  EXPECT_EQ(next.appends, 0U);
}

TEST_F(BrowserLogTest, ANewerLogIsReadOnlyAndCannotBeTakenOver) {
  browser.database.emplace(
      1, storage::log_header(storage::lines_version + 1) + storage::log_line(1, facts()));
  Tab& tab = opened();
  EXPECT_TRUE(tab.keeper.read_only());
  EXPECT_FALSE(tab.keeper.can_take_over());
  EXPECT_TRUE(has(tab.keeper.findings(), 357));
  EXPECT_EQ(tab.keeper.log().size(), 1U);
  EXPECT_FALSE(tab.add({odometer("o1", 1, "1 mi")}));
}

// ---- a storm: tabs that write, fail, freeze, take over, in any order of what happens

struct Storm {
  Browser browser;
  std::mt19937 chance;
  std::set<std::string> added;
  std::set<std::string> confirmed;
  std::set<std::string> there;
  std::uint64_t looked = 0;

  explicit Storm(unsigned seed, bool locks) : chance(seed) {
    browser.locks = locks;
    for (int i = 0; i < 3; ++i) browser.open_tab();
  }

  bool one_in(unsigned n) { return chance() % n == 0; }
  Tab& any() { return *browser.tabs[chance() % browser.tabs.size()]; }

  void act() {
    Tab& tab = any();
    if (one_in(6)) tab.fault = static_cast<Fault>(1 + chance() % 3);
    if (one_in(9)) tab.deaf = !tab.deaf;
    if (one_in(5)) tab.retry();
    if (one_in(7) && tab.keeper.can_take_over()) tab.take_over();
    const std::string id = "e" + std::to_string(added.size());
    if (tab.add({odometer(id, static_cast<int>(added.size()), "1 mi")})) added.insert(id);
  }

  // Records are never changed, so each is read once.
  void look() {
    for (auto record = browser.database.upper_bound(looked); record != browser.database.end(); ++record) {
      for (const Entry& entry : storage::read_lines(record->second).entries) there.insert(entry.id());
      looked = record->first;
    }
  }

  void check() {
    look();
    for (const auto& tab : browser.tabs) {
      if (tab->keeper.state() != SaveState::Saved) continue;
      const std::set<std::string> shown = ids_of(tab->keeper.log());
      confirmed.insert(shown.begin(), shown.end());
    }
    for (const std::string& id : confirmed) ASSERT_TRUE(there.count(id)) << id << " was said to be saved";
  }

  void calm() {
    for (const auto& tab : browser.tabs) {
      tab->fault = Fault::None;
      tab->deaf = false;
    }
    browser.settle(chance);
    for (int round = 0; round < 2; ++round) {
      for (const auto& tab : browser.tabs) {
        if (tab->keeper.can_take_over()) tab->take_over();
        browser.settle(chance);
        tab->retry();
        browser.settle(chance);
      }
    }
  }
};

void blow(unsigned seed, bool locks) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  Storm storm(seed, locks);
  for (int i = 0; i < 60; ++i) {
    storm.act();
    for (std::size_t n = storm.chance() % 6; n > 0 && storm.browser.busy(); --n) {
      storm.browser.step(storm.chance());
      storm.check();
    }
  }
  storm.calm();
  EXPECT_EQ(ids_in(storm.browser), storm.added) << "every entry that was taken is saved in the end";
  for (const auto& tab : storm.browser.tabs) EXPECT_TRUE(tab->keeper.all_safe());
  if (locks)
    for (const auto& tab : storm.browser.tabs) EXPECT_EQ(ids_of(tab->keeper.log()), storm.added);
}

TEST(BrowserLogStorm, NothingConfirmedIsLostWhileTabsTakeOver) {
  for (unsigned seed = 0; seed < 40; ++seed) blow(seed, true);
}

TEST(BrowserLogStorm, NothingConfirmedIsLostWithoutLocks) {
  for (unsigned seed = 0; seed < 40; ++seed) blow(seed, false);
}

}  // namespace
}  // namespace camside::page::test
