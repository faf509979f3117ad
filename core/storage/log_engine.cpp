#include "storage/log_engine.hpp"

#include <algorithm>
#include <utility>

#include "log/log_remarks.hpp"
#include "log/log_migration.hpp"

namespace camside::storage {

namespace {

using records::Entry;
using records::Log;

constexpr const char* newest_name = "log.camside";
constexpr const char* previous_name = "log.previous.camside";
constexpr const char* temporary_name = "log.camside.tmp";
constexpr const char* torn_name = "log.torn.txt";

// Smaller logs get no second generation on opening.
constexpr std::uint64_t worth_a_generation = std::uint64_t{64} << 10U;

void add_all(Log& log, std::vector<Entry> entries) {
  for (Entry& entry : entries) log.add(std::move(entry));
}

std::string bytes_of(const Log& log) {
  std::string bytes = log_header();
  std::uint64_t number = 0;
  for (const Entry& entry : log.entries()) bytes += log_line(++number, entry);
  return bytes;
}

}  // namespace

struct LogEngine::Loading {
  std::optional<std::string> newest;
  ReadLines lines;  // without the entries
  std::size_t in_newest = 0;
  bool newer = false;
  OpenedStore opened;

  bool damaged() const { return !lines.damaged.empty() || !lines.gaps.empty(); }
  bool torn() const { return lines.torn.size > 0; }
  bool came_back() const { return opened.log.size() > in_newest; }
  bool older() const { return lines.version > 0 && lines.version < records::log_version; }
  bool good() const { return !damaged() && !torn() && !came_back(); }
};

// ---- opening

tl::expected<OpenedStore, Finding> LogEngine::open() {
  Loading loading;
  const bool alone = take_lock(loading.opened.findings);
  if (auto done = read_generations(loading); !done)
    return tl::unexpected(remarks::log_cannot_be_read(files_.place(), done.error()));
  open_ = true;
  read_only_ = !alone || loading.newer;
  good_size_ = loading.newest ? loading.newest->size() : 0;
  last_number_ = loading.lines.last_number;
  good_at_open_ = loading.good();
  needs_line_feed_ = loading.lines.ends_open && !loading.torn();
  if (!read_only_ && locked_) mend(loading);
  loading.opened.read_only = read_only_;
  return std::move(loading.opened);
}

// False when another program has it. Without a lock to be had (a folder that can't be written) the log opens too, and
// the first append tries again.
bool LogEngine::take_lock(Findings& findings) {
  const auto locked = files_.lock();
  if (!locked) {
    findings.push_back(not_saved(locked.error()));
    return true;
  }
  locked_ = *locked;
  if (!locked_) findings.push_back(remarks::log_open_elsewhere(files_.place()));
  return locked_;
}

LogEngine::Done LogEngine::read_generations(Loading& loading) {
  auto newest = files_.read(newest_name);
  if (!newest) return tl::unexpected(newest.error());
  loading.newest = std::move(*newest);
  if (loading.newest) loading.lines = read_lines(*loading.newest);
  loading.newer = loading.lines.version > records::log_version;
  add_all(loading.opened.log, std::exchange(loading.lines.entries, {}));
  loading.in_newest = loading.opened.log.size();
  if (loading.in_newest == 0 || loading.damaged() || loading.torn()) {
    for (const char* name : {previous_name, temporary_name})
      if (auto done = read_older(loading, name); !done) return done;
  }
  if (loading.newer) loading.opened.findings.push_back(remarks::store_is_newer(files_.place()));
  if (loading.came_back())
    loading.opened.findings.push_back(remarks::recovered_from_previous(loading.opened.log.size() - loading.in_newest));
  return {};
}

LogEngine::Done LogEngine::read_older(Loading& loading, const std::string& name) {
  const auto bytes = files_.read(name);
  if (!bytes) return tl::unexpected(bytes.error());
  if (!*bytes) return {};
  ReadLines lines = read_lines(**bytes);
  if (lines.version > records::log_version) loading.newer = true;
  add_all(loading.opened.log, std::move(lines.entries));
  return {};
}

// ---- mending, on opening

void LogEngine::mend(Loading& loading) {
  if (loading.damaged() || loading.came_back())
    mend_damage(loading);
  else if (loading.torn())
    mend_torn_end(loading);
  make_safe(loading.opened.findings);
  if (loading.older())
    read_only_ = !snapshot(loading.opened.log);  // lines of today don't go into an older log
  else
    keep_a_generation(loading);
}

void LogEngine::mend_torn_end(Loading& loading) {
  const Piece& torn = loading.lines.torn;
  const std::string piece = loading.newest->substr(torn.offset, torn.size) + "\n";
  good_size_ = torn.offset;
  end_unclear_ = true;
  Done aside;
  if (const auto size = files_.append(torn_name, piece); !size)
    aside = tl::unexpected(size.error());
  else
    aside = files_.sync(torn_name);
  if (aside) aside = files_.sync_folder();
  if (!aside) {
    loading.opened.findings.push_back(remarks::not_set_aside(files_.place(), aside.error()));
    return;
  }
  loading.opened.findings.push_back(remarks::torn_end(torn.size, torn_name));
  cut_back();
}

// The damaged log is kept whole under another name; its good lines, and what the previous generation has, become a new
// one. Should that fail, everything stays as it is, and appending goes on behind it.
void LogEngine::mend_damage(Loading& loading) {
  Findings& findings = loading.opened.findings;
  const std::string aside = free_damaged_name();
  for (const Piece& piece : loading.lines.damaged)
    findings.push_back(remarks::records_damaged({piece.first_line, piece.last_line}, aside));
  for (const auto& [first, last] : loading.lines.gaps) findings.push_back(remarks::records_missing(first, last));
  if (loading.torn()) findings.push_back(remarks::torn_end(loading.lines.torn.size, aside));
  end_unclear_ = loading.torn();
  if (auto done = write_generation(loading.opened.log, loading.newest ? aside : ""); !done)
    findings.push_back(remarks::not_set_aside(files_.place(), done.error()));
}

// What is shown after opening may never have been confirmed; now it is safe, or that it isn't is said.
void LogEngine::make_safe(Findings& findings) {
  if (good_size_ == 0 || folder_safe_) return;
  Done done = files_.sync(newest_name);
  if (done) done = files_.sync_folder();
  folder_safe_ = done.has_value();
  if (!done && !has(findings, 352)) findings.push_back(not_saved(done.error()));
}

// A second generation once the log has doubled, so that keeping it costs each entry a constant.
void LogEngine::keep_a_generation(const Loading& loading) {
  if (good_size_ < worth_a_generation || end_unclear_ || !folder_safe_) return;
  const auto previous = files_.size(previous_name);
  if (!previous || (*previous && **previous * 2 > good_size_)) return;
  static_cast<void>(snapshot(loading.opened.log));  // the log is good as it is; this only adds to it
}

// ---- appending

std::optional<Finding> LogEngine::refused() {
  if (!open_ || read_only_) return remarks::log_read_only();
  return locked_ ? std::nullopt : lock_late();
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
  if (good_size_ == 0) bytes += log_header();
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
  if (auto done = write_generation(log, previous_name); !done) return tl::unexpected(not_saved(done.error()));
  return {};
}

LogEngine::Done LogEngine::write_generation(const Log& log, const std::string& old_becomes) {
  const std::string bytes = bytes_of(log);
  if (auto done = files_.write(temporary_name, bytes); !done) return done;
  if (auto done = files_.sync(temporary_name); !done) return done;
  if (auto done = files_.sync_folder(); !done) return done;  // from here on its name is safe too, whatever comes next
  if (auto done = put_in_place(old_becomes); !done) return done;
  good_size_ = bytes.size();
  last_number_ = log.size();
  end_unclear_ = false;
  needs_line_feed_ = false;
  folder_safe_ = false;  // until the folder is synced, the names may fall back to the old ones
  auto done = files_.sync_folder();
  folder_safe_ = done.has_value();
  return done;
}

// Between the two renames there is no log, but the temporary file holds all of it, and opening looks there. Numbers go
// on, so that a log begun anew after a failure here shows a gap, and opening looks too.
LogEngine::Done LogEngine::put_in_place(const std::string& old_becomes) {
  const auto old = files_.size(newest_name);
  if (!old) return tl::unexpected(old.error());
  if (*old && !old_becomes.empty()) {
    folder_safe_ = false;
    if (auto done = files_.rename(newest_name, old_becomes); !done) return done;
  }
  auto done = files_.rename(temporary_name, newest_name);
  if (!done && *old && !old_becomes.empty() && !files_.rename(old_becomes, newest_name)) good_size_ = 0;
  return done;
}

std::string LogEngine::free_damaged_name() {
  std::string name = "log.damaged.camside";
  for (int n = 2;; ++n) {
    const auto size = files_.size(name);
    if (!size || !*size) return name;
    name = "log.damaged-" + std::to_string(n) + ".camside";
  }
}

Finding LogEngine::not_saved(const std::string& why) const {
  return remarks::log_not_saved(files_.place(), why);
}

}  // namespace camside::storage
