// The store in the browser: page/store.js over IndexedDB. Keeps the promises of storage/store.hpp; confirmations come
// from the event loop by themselves.
#pragma once

#include <map>
#include <string>

#include "storage/store.hpp"

namespace camside::page {

inline constexpr const char* here = "this browser";

// How it went; the same numbers as in page/store.js and page/log_store.js.
enum class Answer { Done = 1, Refused = 0, Full = -1, Blocked = -2, Newer = -3, Behind = -4, Lost = -5 };
const char* why(Answer answer);

class BrowserStore : public storage::Store {
 public:
  void load(const std::string& name, Whole whole, LoadDone done) override;
  void save(const std::string& name, std::string bytes, SaveDone done) override;

  // What the page answers.
  struct Versions {
    std::string newest, previous;
  };
  void loaded(int ticket, Answer answer, Versions versions);
  void saved(int ticket, Answer answer);

 private:
  struct Load {
    std::string name;
    Whole whole;
    LoadDone done;
  };
  static storage::Loaded without_the_newest(const Load& asked, std::string previous);

  int next_ticket_ = 1;
  std::map<int, Load> loads_;
  std::map<int, SaveDone> saves_;
};

}  // namespace camside::page
