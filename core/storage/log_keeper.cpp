#include "storage/log_keeper.hpp"

#include <utility>

#include "log/log_file.hpp"
#include "log/log_remarks.hpp"

namespace camside::storage {

using records::Added;
using records::Entry;

struct LogKeeper::Shared {
  explicit Shared(LogStore& to) : store(to) {}
  LogStore& store;
  records::Log log;
  Findings findings;
  std::vector<Entry> waiting;  // not confirmed; the first `handed_over` of them are under way
  std::size_t handed_over = 0;
  std::size_t confirmed = 0;
  std::optional<Finding> reason;
  std::function<void()> changed;
  bool ready = false;
  bool read_only = false;
  bool unreadable = false;

  // What is in the log already is passed over.
  void join(std::vector<Entry> entries) {
    for (Entry& entry : entries)
      if (log.add(entry) != Added::Known) waiting.push_back(std::move(entry));
  }

  void take(tl::expected<OpenedStore, Finding> answer) {
    ready = true;
    unreadable = !answer;
    if (!answer) {
      findings = {answer.error()};
      reason = answer.error();
      return;
    }
    reason.reset();
    log = std::move(answer->log);
    for (const Entry& entry : waiting) log.add(entry);  // from before a second try
    join(std::move(answer->beside));
    findings = std::move(answer->findings);
    read_only = answer->read_only;
  }

  void take(const tl::expected<void, Finding>& answer) {
    const std::size_t count = std::exchange(handed_over, 0);
    if (!answer) {
      reason = answer.error();
      return;
    }
    waiting.erase(waiting.begin(), waiting.begin() + static_cast<std::ptrdiff_t>(count));
    confirmed += count;
    reason.reset();
    remarks::take_back_not_saved(findings);
  }

  void lose(const Finding& why) {
    if (!has(findings, why.number)) findings.push_back(why);
    waiting = log.entries();
    confirmed = 0;
  }

  void hear(std::vector<Entry> entries, bool only_reading) {
    for (Entry& entry : entries) log.add(std::move(entry));
    read_only = only_reading;
  }
};

namespace {

template <class Shared>
void hand_over(const std::shared_ptr<Shared>& s) {
  if (s->unreadable || s->handed_over > 0 || s->waiting.empty()) return;
  s->handed_over = s->waiting.size();
  s->store.append(s->waiting, [s](const tl::expected<void, Finding>& answer) {
    const std::size_t count = s->handed_over;
    const bool newer_ones = s->waiting.size() > count;
    s->take(answer);
    if (newer_ones) hand_over(s);
  });
}

template <class Shared>
void open_store(const std::shared_ptr<Shared>& s) {
  s->store.open([s](tl::expected<OpenedStore, Finding> answer) {
    s->take(std::move(answer));
    if (!s->read_only) hand_over(s);
    if (s->changed) s->changed();
  });
}

}  // namespace

LogKeeper::LogKeeper(LogStore& store) : shared_(std::make_shared<Shared>(store)) {}

void LogKeeper::open(std::function<void()> changed) {
  shared_->changed = std::move(changed);
  const auto heard = [s = shared_](std::vector<Entry> entries, bool read_only) {
    s->hear(std::move(entries), read_only);
    if (!read_only) hand_over(s);
    if (s->changed) s->changed();
  };
  shared_->store.listen(heard, [s = shared_](const Finding& why) {
    s->lose(why);
    hand_over(s);
    if (s->changed) s->changed();
  });
  open_store(shared_);
}

void LogKeeper::poll() {
  const auto shared = shared_;
  shared->store.poll();
}

bool LogKeeper::ready() const {
  return shared_->ready;
}
bool LogKeeper::read_only() const {
  return shared_->read_only;
}
const records::Log& LogKeeper::log() const {
  return shared_->log;
}
const Findings& LogKeeper::findings() const {
  return shared_->findings;
}

bool LogKeeper::add(std::vector<Entry> entries) {
  if (!shared_->ready || shared_->read_only) return false;
  shared_->join(std::move(entries));
  hand_over(shared_);
  return true;
}

void LogKeeper::retry() {
  if (shared_->unreadable) return open_store(shared_);
  hand_over(shared_);
}

bool LogKeeper::can_take_over() const {
  return shared_->read_only && shared_->store.can_take_over();
}
void LogKeeper::take_over() {
  shared_->store.take_over();
}

SaveState LogKeeper::state() const {
  if (shared_->unreadable) return SaveState::Failed;
  if (shared_->handed_over > 0) return SaveState::Saving;
  if (!shared_->waiting.empty()) return shared_->reason ? SaveState::Failed : SaveState::Saving;
  return shared_->confirmed > 0 ? SaveState::Saved : SaveState::Idle;
}

const std::optional<Finding>& LogKeeper::reason() const {
  return shared_->reason;
}
std::size_t LogKeeper::unsaved() const {
  return shared_->waiting.size();
}
std::string LogKeeper::export_bytes() const {
  return records::export_log(shared_->log);
}

}  // namespace camside::storage
