#include "screens/bikes/log_transfer.hpp"

#include <utility>

#include "log/bike_code.hpp"
#include "log/log_commands.hpp"
#include "records/file_remarks.hpp"
#include "records/iso_time.hpp"
#include "screens/widgets/answer.hpp"
#include "screens/widgets/cut.hpp"
#include "screens/words.hpp"

namespace camside::screens {

namespace {
constexpr const char* last_copy = "last-copy";
constexpr std::size_t read_at_once = std::size_t{1} << 20U;  // bytes; a phone reads that in less than half a second
}  // namespace

LogTransfer::LogTransfer(BikeLog& log, Platform& platform, storage::Store& store)
    : log_(log), platform_(platform), keeper_(store, last_copy) {
  if (!log.present()) return;
  store.load(
      last_copy, [](std::string_view) { return true; },
      [copied = std::weak_ptr(copied_)](const tl::expected<storage::Loaded, Finding>& loaded) {
        const auto time = copied.lock();
        if (time && loaded && time->empty()) *time = loaded->bytes;
      });
}

// ---- what comes and goes

bool LogTransfer::look() {
  if (!log_.ready()) return false;
  if (const auto given = platform_.file_given()) note_given(*given);
  if (waiting() && file_->unread && file_->announced) read(*std::exchange(file_->unread, std::nullopt));
  if (waiting()) return false;  // the next one waits its turn
  auto come = platform_.file_come();
  if (come) take(std::move(*come));
  return come.has_value();
}

std::string LogTransfer::said(Left what) const {
  return log_.left() == what ? said_ : std::string();
}

void LogTransfer::note_given(const FileGiven& given) {
  said_ = given.trouble;
  if (!given.given) return;
  said_ = given.where.empty() ? words::file_left() : words::file_written(given.where);
  if (log_.left() != Left::Copy) return;
  *copied_ = platform_.local_time();
  keeper_.put(*copied_);
}

void LogTransfer::take(FileCome come) {
  file_ = File{};
  file_->name = records::is_bike_code(come.bytes) ? words::came_by_code() : std::move(come.name);
  if (!come.trouble.empty()) {
    file_->findings = {remarks::cannot_open(file_->name, come.trouble)};
    return;
  }
  if (come.bytes.size() > read_at_once)
    file_->unread = std::move(come.bytes);
  else
    read(come.bytes);
}

void LogTransfer::read(const std::string& bytes) {
  Findings findings;
  auto log = records::log_to_merge(bytes, findings);
  file_->findings = log ? std::move(findings) : std::move(log.error());
  if (log) file_->log = std::move(*log);
}

void LogTransfer::look_again() {
  if (!file_->log || file_->version == log_.version()) return;
  file_->version = log_.version();
  file_->brings = words::would_bring(records::preview_merge(log_.log(), *file_->log));
  file_->entries = records::to_take_over(log_.log(), *file_->log);
}

// ---- on screen

std::optional<int> LogTransfer::days_since_copy() const {
  constexpr std::int64_t day_ms = std::int64_t{24} * 3600 * 1000;
  const auto then = records::utc_milliseconds(copied_->substr(0, 10));
  const auto now = records::utc_milliseconds(platform_.local_time().substr(0, 10));
  if (!then || !now) return std::nullopt;
  return static_cast<int>((*now - *then) / day_ms);
}

void LogTransfer::draw_copies(Ui& ui) {
  const FileWays ways = platform_.file_ways();
  if (!ways.save) return;
  ui.gap(16);
  ui.heading(words::copies());
  if (const std::string about = said(Left::Copy); !about.empty()) ui.text(about);
  ui.quiet(words::copies_help());
  if (log_.log().size() > 0) {
    ui.quiet(words::copy_age(days_since_copy()));
    if (const auto promised = platform_.storage_promised()) ui.quiet(words::storage_promise(*promised));
    ui.gap(8);
    if (ways.share && ui.button("send copy", words::send_copy())) log_.give_copy(true);
    if (ui.button("save copy", words::save_copy())) log_.give_copy(false);
  }
  if (!ways.pick) return ui.quiet(words::drop_copy());
  if (ui.button("take in copy", words::take_in_copy())) platform_.pick_file();
}

void LogTransfer::draw_file(Ui& ui) {
  look_again();
  ui.heading(cut_to(ui.fonts().bold, ui.px(20), file_->name, ui.width()));  // it has no blank to break at
  if (file_->unread) {
    ui.text(words::reading_copy(file_->unread->size()));
    file_->announced = true;
    return;
  }
  for (const std::string& line : file_->brings) ui.text(line);
  ui.gap(8);
  draw_remarks(ui, file_->findings);
}

void LogTransfer::draw_take_in(Ui& ui) {
  if (file_->unread) return;
  look_again();
  const bool can = log_.takes_entries() && !file_->entries.empty();
  if (!ui.button("take in", words::take_in(file_->entries.size()), Look::Main, can)) return;
  if (log_.take_in(file_->entries)) leave();
}

}  // namespace camside::screens
