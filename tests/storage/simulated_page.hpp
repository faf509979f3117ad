// A browser with one database and several tabs, as page/log_store.js behaves; for the C++ side of it,
// app-web/browser_log. Whatever the page would do later waits in a list until the test lets it happen, in any order
// across tabs; of one tab a step follows the one that caused it. Faults are set per tab and strike the next append.
#pragma once

#include <cstdint>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <random>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "bridge.hpp"
#include "browser_log.hpp"
#include "storage/log_keeper.hpp"

namespace camside::page::test {

enum class Fault : std::uint8_t {
  None,
  Full,           // QuotaExceededError, nothing was written
  Refused,        // the browser stopped the transaction, nothing was written
  LostAfterWrite  // written, but the connection was lost before it said so; the second attempt finds it there
};

class Browser;

class Tab {
 public:
  explicit Tab(Browser& browser) : browser_(browser) {}
  Tab(const Tab&) = delete;
  Tab& operator=(const Tab&) = delete;

  void start();
  bool add(std::vector<records::Entry> entries);
  void retry();
  void take_over();

  BrowserLog log;
  storage::LogKeeper keeper{log};
  Fault fault = Fault::None;
  bool deaf = false;  // frozen: hears no other tab
  bool refuses_to_open = false;
  std::size_t appends = 0;  // that were asked of the page

  Browser& browser() { return browser_; }

 private:
  friend class Browser;
  Browser& browser_;
  bool told = false;
  std::uint64_t last = 0;
  bool writes = false;
  bool leaving = false;
  int appending = 0;
};

class Browser {
 public:
  std::map<std::uint64_t, std::string> database;  // by the number of the last entry
  std::string copied;                             // lines of the second copy that the page hands to the tab that opens
  std::string whole_copy;                         // what it hands out where the database is damaged or can't be read
  std::size_t copies_asked = 0;
  std::vector<std::unique_ptr<Tab>> tabs;
  bool locks = true;  // false: there are no Web Locks and no tabs that hear of each other

  Tab& open_tab() {
    tabs.push_back(std::make_unique<Tab>(*this));
    tabs.back()->start();
    return *tabs.back();
  }

  // ---- what waits to happen

  bool busy() const { return !waiting_.empty(); }
  void step(std::size_t which = 0) {
    const auto chosen = waiting_.begin() + static_cast<std::ptrdiff_t>(which % waiting_.size());
    const auto happens = std::move(*chosen);
    waiting_.erase(chosen);
    if (++steps > 100000) throw std::runtime_error("the page and the program ask each other for ever");
    happens();
  }
  std::size_t steps = 0;
  void settle() {
    while (busy()) step();
  }
  void settle(std::mt19937& chance) {
    while (busy()) step(chance());
  }
  std::size_t waiting() const { return waiting_.size(); }

  // ---- log_store.js

  void open(Tab& tab) {
    if (!locks) tab.writes = true;
    if (locks && !holder_) give_lock(tab);
    later([this, &tab] {
      tab.told = true;
      if (tab.refuses_to_open)
        return call(tab, [&] { tab.log.told({Answer::Refused, false, 0, "", tab.writes ? whole_copy : ""}); });
      news(tab, tab.writes ? copied : "");
    });
  }

  void damaged(Tab& tab) {
    ++copies_asked;
    later([this, &tab] { news(tab, whole_copy); });
  }

  void append(Tab& tab, std::uint64_t before, std::uint64_t number, std::string bytes) {
    ++tab.appends;
    ++tab.appending;
    later([this, &tab, before, number, bytes = std::move(bytes)] {
      const Answer answer = tab.writes ? write(tab, before, number, bytes) : Answer::Refused;
      later([this, &tab, number, answer] {
        if (answer == Answer::Done) {
          tab.last = number;
          tell_others(tab);
        } else if (answer == Answer::Behind) {
          news(tab);
        } else if (answer == Answer::Lost) {
          tell_lost(tab);
        }
        call(tab, [&] { tab.log.appended(answer); });
        --tab.appending;
        leave(tab);
      });
    });
  }

  void take_over(Tab& tab) {
    if (tab.writes) return later([this, &tab] { news(tab); });
    Tab* const other = holder_;
    wants_ = &tab;
    if (other && !other->deaf) later([this, other] { hand_over(*other); });
    later([this, &tab] { steal(tab); });  // patience is over; nothing, when it was handed over before
  }

  // Somebody deletes the database while tabs have it open; the one that writes looks, unless it is just appending.
  void lose_database(bool noticed) {
    database.clear();
    if (noticed)
      later([this] {
        if (holder_ && holder_->told && holder_->appending == 0) tell_lost(*holder_);
      });
  }

  static Tab* running;  // whose code calls the bridge

  template <class What>
  void call(Tab& tab, What what) {
    Tab* const before = std::exchange(running, &tab);
    what();
    running = before;
  }

  std::string all_bytes() const {
    std::string all;
    for (const auto& [number, bytes] : database) all += bytes;
    return all;
  }

 private:
  void later(std::function<void()> happens) { waiting_.push_back(std::move(happens)); }

  std::uint64_t last_key() const { return database.empty() ? 0 : database.rbegin()->first; }

  Answer write(Tab& tab, std::uint64_t before, std::uint64_t number, const std::string& bytes) {
    const Fault fault = std::exchange(tab.fault, Fault::None);
    if (fault == Fault::Full) return Answer::Full;
    if (fault == Fault::Refused) return Answer::Refused;
    if (last_key() != before) return last_key() < before ? Answer::Lost : Answer::Behind;
    database.emplace(number, bytes);
    return fault == Fault::LostAfterWrite ? Answer::Behind : Answer::Done;
  }

  void news(Tab& tab, const std::string& from_copy = "") {
    std::string bytes;
    for (auto record = database.upper_bound(tab.last); record != database.end(); ++record) bytes += record->second;
    tab.last = std::max(tab.last, last_key());
    call(tab, [&] { tab.log.told({Answer::Done, tab.writes && !tab.leaving, tab.last, bytes, from_copy}); });
  }

  void tell_lost(Tab& tab) {
    tab.last = last_key();
    call(tab, [&] { tab.log.told({Answer::Lost, true, tab.last, all_bytes(), ""}); });
  }

  void tell_others(const Tab& from) {
    for (const auto& tab : tabs)
      if (locks && tab.get() != &from && tab->told && !tab->deaf) later([this, other = tab.get()] { news(*other); });
  }

  void give_lock(Tab& tab) {
    holder_ = &tab;
    tab.writes = true;
    if (wants_ == &tab) wants_ = nullptr;
    if (tab.told) later([this, &tab] { news(tab); });
  }

  void hand_over(Tab& tab) {
    if (holder_ != &tab) return;
    tab.leaving = true;
    call(tab, [&] { tab.log.told({Answer::Done, false, tab.last, "", ""}); });
    leave(tab);
  }

  void leave(Tab& tab) {
    if (!tab.leaving || tab.appending > 0) return;
    tab.writes = tab.leaving = false;
    holder_ = nullptr;
    if (wants_) give_lock(*wants_);
  }

  void steal(Tab& tab) {
    if (wants_ != &tab) return;
    if (Tab* const other = holder_) {
      other->writes = other->leaving = false;
      later([this, other] {
        call(*other, [&] { other->log.told({Answer::Done, false, other->last, "", ""}); });
        news(*other);
      });
    }
    give_lock(tab);
  }

  std::deque<std::function<void()>> waiting_;
  Tab* holder_ = nullptr;
  Tab* wants_ = nullptr;
};

inline Tab* Browser::running = nullptr;

inline void Tab::start() {
  browser_.call(*this, [&] { keeper.open(); });
}
inline bool Tab::add(std::vector<records::Entry> entries) {
  bool taken = false;
  browser_.call(*this, [&] { taken = keeper.add(std::move(entries)); });
  return taken;
}
inline void Tab::retry() {
  browser_.call(*this, [&] { keeper.retry(); });
}
inline void Tab::take_over() {
  browser_.call(*this, [&] { keeper.take_over(); });
}

}  // namespace camside::page::test
