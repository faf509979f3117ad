#include "browser_store.hpp"

#include <utility>

#include "bridge.hpp"
#include "records/file_remarks.hpp"

namespace camside::page {
namespace {

bool readable(const std::string& bytes, const storage::Store::Whole& whole) {
  return bytes.empty() || !whole || whole(bytes);
}

}  // namespace

const char* why(Answer answer) {
  switch (answer) {
    case Answer::Full:
      return "it is full";
    case Answer::Blocked:
      return "another tab has an older Camside open; close it, then try again";
    case Answer::Newer:
      return "a newer Camside keeps its records here; load this page again";
    case Answer::Behind:
      return "another tab was quicker; try again";
    case Answer::Lost:
      return "it was deleted while it was open; try again";
    case Answer::Done:
    case Answer::Refused:
      break;
  }
  return "the browser refuses, as in a private window";
}

void BrowserStore::load(const std::string& name, Whole whole, LoadDone done) {
  const int ticket = next_ticket_++;
  loads_[ticket] = Load{name, std::move(whole), std::move(done)};
  page::load(ticket, name);
}

void BrowserStore::save(const std::string& name, std::string bytes, SaveDone done) {
  const int ticket = next_ticket_++;
  saves_[ticket] = std::move(done);
  page::save(ticket, name, bytes);
}

void BrowserStore::loaded(int ticket, Answer answer, Versions versions) {
  const auto found = loads_.find(ticket);
  if (found == loads_.end()) return;
  const Load asked = std::move(found->second);
  loads_.erase(found);
  if (answer != Answer::Done) return asked.done(tl::unexpected(remarks::cannot_load(here, why(answer))));
  if (readable(versions.newest, asked.whole)) return asked.done(storage::Loaded{std::move(versions.newest), false, {}});
  asked.done(without_the_newest(asked, std::move(versions.previous)));
}

// The damaged newest version is kept under a name of its own, so that no later save pushes the good one out.
storage::Loaded BrowserStore::without_the_newest(const Load& asked, std::string previous) {
  const bool good = !previous.empty() && readable(previous, asked.whole);
  set_aside(asked.name, good);
  const std::string aside = asked.name + "/damaged";
  if (!good) return {"", false, {remarks::opened_nothing(aside)}};
  return {std::move(previous), true, {remarks::opened_previous(aside)}};
}

void BrowserStore::saved(int ticket, Answer answer) {
  const auto found = saves_.find(ticket);
  if (found == saves_.end()) return;
  const SaveDone done = std::move(found->second);
  saves_.erase(found);
  if (answer == Answer::Done) return done({});
  done(tl::unexpected(remarks::cannot_save(here, why(answer))));
}

}  // namespace camside::page
