#include "browser_log.hpp"

#include <algorithm>

#include "bridge.hpp"
#include "findings/log_remarks.hpp"
#include "records/log_migration.hpp"
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
  const bool newer = read.version > records::log_version;
  if (newer && !newer_) findings.push_back(remarks::store_is_newer(here));
  newer_ = newer_ || newer;
  if (read.torn.size > 0) read.damaged.push_back(read.torn);
  for (const storage::Piece& piece : read.damaged)
    findings.push_back(remarks::records_damaged({piece.first_line, piece.last_line}, "a record of this browser"));
  for (const auto& [first, last] : read.gaps) findings.push_back(remarks::records_missing(first, last));
  last_ = std::max({last_, read.last_number, news.last});
  return std::move(read.entries);
}

void BrowserLog::told(const News& news) {
  const OpenDone opening = std::exchange(opening_, {});
  if (news.answer != Answer::Done) {
    if (opening) opening(tl::unexpected(remarks::log_cannot_be_read(here, why(news.answer))));
    return;
  }
  Findings findings;
  std::vector<Entry> entries = taken(news, findings);
  writes_ = news.writes;
  const bool read_only = !writes_ || newer_;
  if (!opening) return heard_(std::move(entries), read_only);
  records::Log log;
  for (Entry& entry : entries) log.add(std::move(entry));
  std::vector<Entry> beside;
  if (!read_only) beside = missing_from(log, news.copied);
  if (!beside.empty()) findings.push_back(remarks::recovered_from_copy(beside.size()));
  opening(storage::OpenedStore{std::move(log), std::move(findings), read_only, std::move(beside)});
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
