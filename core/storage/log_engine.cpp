#include "storage/log_engine.hpp"

#include <algorithm>
#include <utility>

#include "log/log_remarks.hpp"

namespace camside::storage {

namespace {

using records::Entry;
using records::Log;

// Smaller logs get no second generation on opening.
constexpr std::uint64_t worth_a_generation = std::uint64_t{64} << 10U;

// What a cut-off end is worth saying only where nobody may just be writing it.
void say_damage(const Generations& found, const std::string& kept_as, bool alone, Findings& findings) {
  for (const Piece& piece : found.lines.damaged)
    findings.push_back(remarks::records_damaged({piece.first_line, piece.last_line}, kept_as));
  for (const auto& [first, last] : found.lines.gaps) findings.push_back(remarks::records_missing(first, last));
  if (found.torn() && alone) findings.push_back(remarks::torn_end(found.lines.torn.size, kept_as));
}

std::string bytes_of(const Log& log) {
  std::string bytes = log_header();
  std::uint64_t number = 0;
  for (const Entry& entry : log.entries()) bytes += log_line(++number, entry);
  return bytes;
}

}  // namespace

// ---- opening

tl::expected<OpenedStore, Finding> LogEngine::open() {
  OpenedStore opened;
  Findings& findings = opened.findings;
  const bool alone = take_lock(findings);
  auto found = read_generations(files_);
  if (!found) return tl::unexpected(remarks::log_cannot_be_read(files_.place(), found.error()));
  begin_with(*found);
  read_only_ = !alone || found->newer || (found->damaged() && !found->unread.empty());
  for (const auto& [name, why] : found->unread) findings.push_back(remarks::beside_log_unread(name, why));
  if (found->newer) findings.push_back(remarks::store_is_newer(files_.place()));
  if (found->came_back()) findings.push_back(remarks::recovered_from_previous(found->all.size() - found->in_newest));
  if (alone && found->newest == 0U) findings.push_back(remarks::log_is_empty(files_.place()));
  if (!read_only_ && locked_)
    mend(*found, findings);
  else if (!found->newer)
    say_damage(*found, newest_name, alone, findings);
  opened.log = std::move(found->all);
  opened.read_only = read_only_;
  return opened;
}

void LogEngine::begin_with(const Generations& found) {
  open_ = true;
  good_size_ = found.newest.value_or(0);
  last_number_ = found.lines.last_number;
  needs_line_feed_ = found.lines.ends_open;
  header_owed_ = found.older();
  good_at_open_ = found.good();
  unmended_ = found.damaged() || found.torn();
  previous_unread_ = found.previous_unread();
  temporary_ = found.temporary.value_or("");
  whole_ = found.whole;
}

// False when another program has it. Without a lock to be had (a folder that can't be written) the log opens too, and
// the first append tries again.
bool LogEngine::take_lock(Findings& findings) {
  const auto locked = files_.lock();
  if (!locked) {
    findings.push_back(remarks::log_cannot_be_written(files_.place(), locked.error()));
    return true;
  }
  locked_ = *locked;
  if (!locked_) findings.push_back(remarks::log_open_elsewhere(files_.place()));
  return locked_;
}

// ---- mending, on opening

void LogEngine::mend(const Generations& found, Findings& findings) {
  if (found.damaged() || (found.torn() && found.came_back())) {
    mend_damage(found, findings);
  } else if (found.came_back() || found.wants_line_feed()) {
    if (auto done = bring_back(found.all); !done)
      findings.push_back(remarks::log_cannot_be_written(files_.place(), done.error()));
  } else if (found.torn()) {
    mend_torn_end(found, findings);
  }
  make_safe(findings);
  if (found.older())
    static_cast<void>(snapshot(found.all));  // in today's form; should that fail, today's lines get today's header
  else
    keep_a_generation(found.all);
}

void LogEngine::mend_torn_end(const Generations& found, Findings& findings) {
  if (auto done = set_torn_end_aside(found); !done) {
    findings.push_back(remarks::not_set_aside(files_.place(), done.error()));
    return;  // it stays, and what follows begins on its own line
  }
  findings.push_back(remarks::torn_end(found.lines.torn.size, torn_name));
  good_size_ = found.lines.torn.offset;
  needs_line_feed_ = false;
  unmended_ = false;
  end_unclear_ = true;
  cut_back();
}

LogEngine::Done LogEngine::set_torn_end_aside(const Generations& found) {
  const auto size = files_.append(torn_name, found.torn_end + "\n");
  if (!size) return tl::unexpected(size.error());
  if (auto done = files_.sync(torn_name); !done) return done;
  return files_.sync_folder();
}

// The damaged log is kept whole under another name; its good lines, and what stands beside it, become a new one. Should
// that fail, everything stays as it is, and appending goes on behind it, on a line of its own.
void LogEngine::mend_damage(const Generations& found, Findings& findings) {
  const auto aside = free_damaged_name();
  Done done;
  if (aside)
    done = write_generation(found.all, *aside);
  else
    done = tl::unexpected(aside.error());
  const bool as_it_was = unmended_ && !owed_;
  say_damage(found, as_it_was ? newest_name : *aside, true, findings);
  if (as_it_was) findings.push_back(remarks::not_set_aside(files_.place(), done.error()));
}

// What is shown after opening may never have been confirmed; now it is safe, or that it isn't is said.
void LogEngine::make_safe(Findings& findings) {
  if (good_size_ == 0 || folder_safe_) return;
  Done done = files_.sync(newest_name);
  if (done) done = files_.sync_folder();
  folder_safe_ = done.has_value();
  if (!done && !has(findings, 361)) findings.push_back(remarks::log_cannot_be_written(files_.place(), done.error()));
}

// A second generation once the log has doubled, so that keeping it costs each entry a constant.
void LogEngine::keep_a_generation(const Log& log) {
  if (good_size_ < worth_a_generation || end_unclear_ || !folder_safe_) return;
  if (unmended_ || previous_unread_ || owed_) return;
  const auto previous = files_.size(previous_name);
  if (!previous || (*previous && **previous * 2 > good_size_)) return;
  static_cast<void>(snapshot(log));  // the log is good as it is; this only adds to it
}

// ---- appending

std::optional<Finding> LogEngine::refused() {
  if (!open_ || read_only_) return remarks::log_read_only();
  if (!locked_) return lock_late();
  if (!owed_) return std::nullopt;
  const Log all = *owed_;
  const Done done = bring_back(all);
  return done ? std::nullopt : std::optional(not_saved(done.error()));
}

// What was read without the lock may have been written to meanwhile.
std::optional<Finding> LogEngine::lock_late() {
  const auto locked = files_.lock();
  if (!locked) return not_saved(locked.error());
  if (!*locked) return remarks::log_open_elsewhere(files_.place());
  const auto size = files_.size(newest_name);
  if (!size) return not_saved(size.error());
  if (!good_at_open_ || size->value_or(0) != good_size_) return not_saved("it changed since it was opened");
  locked_ = true;
  return std::nullopt;
}

tl::expected<void, Finding> LogEngine::append(std::span<const Entry> entries) {
  if (auto why = refused()) return tl::unexpected(*why);
  if (end_unclear_) cut_back();
  std::string bytes = end_unclear_ || needs_line_feed_ ? "\n" : "";
  if (good_size_ == 0 || header_owed_) bytes += log_header();
  std::uint64_t number = last_number_;
  for (const Entry& entry : entries) bytes += log_line(++number, entry);
  if (auto done = append_bytes(bytes); !done) return tl::unexpected(not_saved(done.error()));
  last_number_ = number;
  return {};
}

LogEngine::Done LogEngine::append_bytes(const std::string& bytes) {
  const auto size = files_.append(newest_name, bytes);
  Done done;
  if (!size)
    done = tl::unexpected(size.error());
  else
    done = files_.sync(newest_name);
  if (done && !folder_safe_) done = files_.sync_folder();
  if (!done) {
    end_unclear_ = true;
    cut_back();
    return done;
  }
  folder_safe_ = true;
  end_unclear_ = false;
  needs_line_feed_ = false;
  header_owed_ = false;
  good_size_ = *size;
  return {};
}

// Takes off what a failed append may have left. When even that fails, the next append begins on a line of its own.
void LogEngine::cut_back() {
  const auto size = files_.size(newest_name);
  if (!size || size->value_or(0) < good_size_) return;
  if (size->value_or(0) > good_size_ && !files_.truncate(newest_name, good_size_)) return;
  end_unclear_ = false;
}

// ---- generations

tl::expected<void, Finding> LogEngine::snapshot(const Log& log) {
  if (auto why = refused()) return tl::unexpected(*why);
  const auto becomes = old_becomes();
  if (!becomes) return tl::unexpected(not_saved(becomes.error()));
  if (auto done = write_generation(log, *becomes); !done) return tl::unexpected(not_saved(done.error()));
  return {};
}

// Neither damage nor a previous generation that could not be read is pushed out.
tl::expected<std::string, FileOperations::Why> LogEngine::old_becomes() {
  if (unmended_ || previous_unread_) return free_damaged_name();
  return previous_name;
}

// The log is missing, or whole but less than what is beside it, or but for its last line feed, behind which a power cut
// could garble its last record too. Until all of it is in place nothing is appended: a log begun anew would keep the
// next opening from looking beside it.
LogEngine::Done LogEngine::bring_back(const Log& log) {
  owed_ = log;
  if (!whole_) return write_generation(log, "");
  const WholeGeneration whole = *whole_;
  if (auto done = files_.sync(whole.name); !done) return done;
  if (auto done = files_.rename(whole.name, newest_name); !done) return done;
  return now_in_place(whole);
}

LogEngine::Done LogEngine::write_generation(const Log& log, const std::string& old_becomes) {
  if (temporary_.empty()) return tl::unexpected(FileOperations::Why("every temporary file holds something to be kept"));
  const std::string bytes = bytes_of(log);
  if (auto done = files_.write(temporary_, bytes); !done) return done;
  if (auto done = files_.sync(temporary_); !done) return done;
  if (auto done = files_.sync_folder(); !done) return done;  // from here on its name is safe too, whatever comes next
  return put_in_place(log, {temporary_, bytes.size(), log.size()}, old_becomes);
}

// Between the two renames there is no log, but the temporary file holds all of it, and opening looks there.
LogEngine::Done LogEngine::put_in_place(const Log& log, const WholeGeneration& written,
                                        const std::string& old_becomes) {
  const auto old = files_.size(newest_name);
  if (!old) return tl::unexpected(old.error());
  const bool moves = *old && !old_becomes.empty();
  if (moves) {
    folder_safe_ = false;
    if (auto done = files_.rename(newest_name, old_becomes); !done) return done;
  }
  if (auto done = files_.rename(written.name, newest_name); !done) {
    if (moves && !files_.rename(old_becomes, newest_name)) {
      owed_ = log;
      whole_ = written;
    }
    return done;
  }
  return now_in_place(written);
}

LogEngine::Done LogEngine::now_in_place(const WholeGeneration& generation) {
  good_size_ = generation.size;
  last_number_ = generation.last_number;
  end_unclear_ = false;
  needs_line_feed_ = false;
  header_owed_ = false;
  unmended_ = false;
  owed_.reset();
  whole_.reset();
  temporary_ = temporary_name();
  folder_safe_ = false;  // until the folder is synced, the names may fall back to the old ones
  auto done = files_.sync_folder();
  folder_safe_ = done.has_value();
  return done;
}

tl::expected<std::string, FileOperations::Why> LogEngine::free_damaged_name() {
  for (int n = 1;; ++n) {
    const auto size = files_.size(damaged_name(n));
    if (!size) return tl::unexpected(size.error());
    if (!*size) return damaged_name(n);
  }
}

Finding LogEngine::not_saved(const std::string& why) const {
  return remarks::log_not_saved(files_.place(), why);
}

}  // namespace camside::storage
