#include "browser_log.hpp"

#include <algorithm>

#include "bridge.hpp"
#include "log/log_remarks.hpp"
#include "storage/log_lines.hpp"

namespace camside::page {

using records::Entry;

namespace {

// Each once: an append that was made again stands in the copy twice.
std::vector<Entry> missing_from(const records::Log& log, const std::string& copied) {
  records::Log copy;
  for (Entry& entry : storage::read_lines(copied).entries) copy.add(std::move(entry));
  std::vector<Entry> missing;
  for (const Entry& entry : copy.entries())
    if (log.lacks(entry)) missing.push_back(entry);
  return missing;
}

}  // namespace

void BrowserLog::open(OpenDone done) {
  opening_ = std::move(done);
  log_open();
}

void BrowserLog::take_over() {
  log_take_over();
}

std::vector<Entry> BrowserLog::taken(const News& news, Findings& findings) {
  storage::ReadLines read = storage::read_lines(news.bytes, last_);
  const bool newer = read.version > storage::lines_version;
  if (newer && !newer_) findings.push_back(remarks::store_is_newer(here));
  newer_ = newer_ || newer;
  if (read.torn.size > 0) read.damaged.push_back(read.torn);
  for (const storage::Piece& piece : read.damaged)
    findings.push_back(remarks::records_damaged({piece.first_line, piece.last_line}, "a record of this browser"));
  for (const auto& [first, last] : read.gaps) findings.push_back(remarks::records_missing(first, last));
  last_ = std::max({last_, read.last_number, news.last});
  return std::move(read.entries);
}

// Whoever writes hears of it: on the next append, or when the browser says so.
void BrowserLog::lost(const News& news) {
  if (opening_) return cannot_open(news);
  Findings findings;
  last_ = 0;
  std::vector<Entry> entries = taken(news, findings);  // another tab may have begun anew
  if (!entries.empty()) heard_(std::move(entries), newer_);
  lost_(remarks::log_lost(here));
}

void BrowserLog::told(const News& news) {
  if (news.answer == Answer::Lost) return lost(news);
  if (news.answer != Answer::Done) return cannot_open(news);
  Findings findings;
  std::vector<Entry> entries = taken(news, findings);
  writes_ = news.writes;
  if (!opening_) return heard_(std::move(entries), !writes_ || newer_);
  opened(news, std::move(entries), std::move(findings));
}

// What is shown then is what the second copy holds; it is safe there.
void BrowserLog::cannot_open(const News& news) {
  const OpenDone opening = std::exchange(opening_, {});
  if (!opening) return;
  copy_asked_ = false;
  std::vector<Entry> shown = storage::read_lines(news.copied).entries;
  opening(tl::unexpected(remarks::log_cannot_be_read(here, why(news.answer), shown.size())));
  if (!shown.empty()) heard_(std::move(shown), false);
}

void BrowserLog::opened(const News& news, std::vector<Entry> entries, Findings findings) {
  for (Entry& entry : entries) read_.add(std::move(entry));
  found_.insert(found_.end(), findings.begin(), findings.end());
  const bool read_only = !writes_ || newer_;
  if (!found_.empty() && !read_only && news.copied.empty() && !std::exchange(copy_asked_, true)) return log_damaged();
  copy_asked_ = false;
  records::Log log = std::exchange(read_, {});
  Findings found = std::exchange(found_, {});
  std::vector<Entry> beside;
  if (!read_only) beside = missing_from(log, news.copied);
  if (!beside.empty()) found.push_back(remarks::recovered_from_copy(beside.size()));
  const OpenDone opening = std::exchange(opening_, {});
  opening(storage::OpenedStore{std::move(log), std::move(found), read_only, std::move(beside)});
}

void BrowserLog::append(std::vector<Entry> entries, Done done) {
  waiting_.emplace_back(std::move(entries), std::move(done));
  if (waiting_.size() == 1) send();
}

void BrowserLog::send() {
  std::string bytes = storage::log_header();
  before_ = sent_ = last_;
  for (const Entry& entry : waiting_.front().first) bytes += storage::log_line(++sent_, entry);
  log_append(before_, sent_, bytes);
}

void BrowserLog::appended(Answer answer) {
  if (waiting_.empty()) return;
  if (answer == Answer::Behind && writes_ && last_ > before_) return send();  // the numbers go on behind the news
  const Done done = std::move(waiting_.front().second);
  waiting_.pop_front();
  const bool more = !waiting_.empty();  // else what done() appends is sent at once
  if (answer == Answer::Done) {
    last_ = std::max(last_, sent_);
    done({});
  } else {
    done(tl::unexpected(remarks::log_not_saved(here, writes_ ? why(answer) : "another tab writes there now")));
  }
  if (more) send();
}

}  // namespace camside::page
