// The log in the browser: page/log_store.js over IndexedDB, whose head has the promises. Keeps those of
// storage/log_store.hpp; answers come from the event loop by themselves.
//
// Numbers and checksums are given here (storage/log_lines.hpp). Damaged records cost only their own entries, are
// reported and stay where they are: nothing in the database is ever written over. What only the second copy still holds
// (page/log_copy.js) is saved anew; it is looked into where the database lost it, or holds it damaged. Of a database
// that can't be read the copy is shown. A database that is lost while it is open is written anew from memory.
// Findings: 351 can't be read, 352 not saved, 354 damaged, 355 missing, 357 newer, 359 back from the second copy, 364
// lost while open.
#pragma once

#include <cstdint>
#include <deque>
#include <string>
#include <utility>
#include <vector>

#include "browser_store.hpp"
#include "storage/log_store.hpp"

namespace camside::page {

class BrowserLog : public storage::LogStore {
 public:
  void listen(const Heard& heard, const Lost& lost) override {
    heard_ = heard;
    lost_ = lost;
  }
  void open(OpenDone done) override;
  void append(std::vector<records::Entry> entries, Done done) override;
  bool can_take_over() const override { return !newer_ && !writes_; }
  void take_over() override;

  // What the page answers.
  struct News {
    Answer answer = Answer::Refused;
    bool writes = false;
    std::uint64_t last = 0;  // number of the last entry in the database
    std::string bytes;       // the records that came since
    std::string copied;      // the second copy: at opening when it holds what the database does not, or when asked for
  };
  // noinline: doors of later.py
  [[gnu::noinline]] void told(const News& news);
  [[gnu::noinline]] void appended(Answer answer);

 private:
  void send();
  std::vector<records::Entry> taken(const News& news, Findings& findings);
  void cannot_open(const News& news);
  void opened(const News& news, std::vector<records::Entry> entries, Findings findings);

  void lost(const News& news);

  Heard heard_;
  Lost lost_;
  OpenDone opening_;
  records::Log read_;  // while opening: what the database holds, should the second copy be asked for
  Findings found_;
  std::deque<std::pair<std::vector<records::Entry>, Done>> waiting_;  // the first one is under way
  std::uint64_t last_ = 0;                                            // number of the last entry known
  std::uint64_t before_ = 0;  // of what is under way: the last number before it, and its own last one
  std::uint64_t sent_ = 0;
  bool writes_ = false;
  bool newer_ = false;
  bool copy_asked_ = false;
};

}  // namespace camside::page
