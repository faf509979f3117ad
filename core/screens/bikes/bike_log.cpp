#include "screens/bikes/bike_log.hpp"

#include <algorithm>

#include "log/demo_bike.hpp"
#include "log/log_file.hpp"
#include "log/log_merge.hpp"
#include "log/log_moment.hpp"
#include "records/new_id.hpp"
#include "screens/widgets/answer.hpp"
#include "screens/words.hpp"

namespace camside::screens {

using records::Entry;

namespace {

BikeRow row_of(const records::Log& log, const records::Bike& bike) {
  BikeRow row;
  row.id = bike.id;
  row.name = bike.id.empty() ? words::no_bike_named() : bike.name();
  const auto odometer = records::latest_odometer(log, bike);
  if (odometer) row.about = log.entries()[*odometer].entered_text("reading");
  if (!bike.model_year.empty()) row.about += (row.about.empty() ? "" : " · ") + bike.model_year;
  row.invented = records::is_invented(log, bike);
  row.removed = bike.removed;
  return row;
}

}  // namespace

void BikeLog::open(std::function<void()> changed) {
  if (present()) keeper_->open(std::move(changed));
}

bool BikeLog::changed() const {
  return present() && (keeper_->ready() != seen_ready_ || keeper_->state() != seen_state_ ||
                       keeper_->log().size() != seen_ || keeper_->read_only() != seen_read_only_);
}

void BikeLog::refresh() {
  if (!present()) return;
  keeper_->poll();
  if (!keeper_->ready()) return;
  seen_state_ = keeper_->state();
  seen_read_only_ = keeper_->read_only();
  if (!seen_ready_ || keeper_->log().size() != seen_) look_again();
}

void BikeLog::look_again() {
  seen_ready_ = true;
  seen_ = log().size();
  ++version_;
  view_ = records::view(log());
  rows_.clear();
  measured_.clear();
  for (const records::Bike& bike : view_.bikes) {
    rows_.push_back(row_of(log(), bike));
    for (const records::Line& line : bike.lines)
      for (const std::size_t i : line.current)
        if (const auto measured = log().entries()[i].measurement()) measured_[measured->id()].push_back(i);
  }
  for (const Entry& entry : log().entries()) last_made_ = std::max(last_made_, entry.made_at());
}

std::vector<const BikeRow*> BikeLog::standing() const {
  std::vector<const BikeRow*> some;
  for (const BikeRow& row : rows_)
    if (!row.removed && !row.id.empty()) some.push_back(&row);
  return some;
}

records::Stamp BikeLog::next_stamp() {
  records::Stamp stamp{records::new_id(), records::moment_after(platform_.local_time(), last_made_), ""};
  const records::Entry made = records::make_entry("note", "", stamp);
  last_made_ = std::max(last_made_, made.made_at());
  return stamp;
}

bool BikeLog::add(std::vector<Entry> entries, std::string what) {
  if (entries.empty() || !takes_entries() || !keeper_->add(entries)) return false;
  last_ = std::move(entries);
  last_what_ = std::move(what);
  last_taken_in_ = 0;
  look_again();
  return true;
}

bool BikeLog::take_in(const std::vector<Entry>& entries) {
  std::vector<Entry> fresh;  // the others are here, perhaps written in another way
  for (const Entry& entry : entries)
    if (log().lacks(entry)) fresh.push_back(entry);
  if (!takes_entries() || !keeper_->add(entries)) return false;
  last_taken_in_ = fresh.size();
  last_what_ = fresh.empty() ? "" : words::taken_in(last_taken_in_);
  last_ = std::move(fresh);
  look_again();
  return true;
}

void BikeLog::give_copy(bool share) {
  left_ = Left::Copy;
  platform_.give_file("camside-log-" + platform_.local_time().substr(0, 10) + ".json", keeper_->export_bytes(), share);
}

void BikeLog::give_bike(const std::string& bike, bool share) {
  left_ = Left::Bike;
  platform_.give_file("camside-bike-" + platform_.local_time().substr(0, 10) + ".json",
                      records::export_log(records::log_of_bike(log(), bike)), share);
}

void BikeLog::give_reminders(const std::string& calendar) {
  left_ = Left::Reminders;
  platform_.give_file("camside-due-" + platform_.local_time().substr(0, 10) + ".ics", calendar, false);
}

void BikeLog::give_summary(const std::string& name, const std::string& text, bool share) {
  left_ = Left::Summary;
  platform_.give_file(name, text, share);
}

void BikeLog::undo_last() {
  const std::size_t count = last_taken_in_;
  std::vector<Entry> back = records::taken_back(log(), last_, [this] { return next_stamp(); });
  if (!add(std::move(back), count > 0 ? words::taken_back(count) : "")) return;
  if (count == 0) last_.clear();
}

std::string BikeLog::logged_to(const records::Record& measured) const {
  const auto found = measured_.find(measured.id());
  std::string names;
  if (found == measured_.end()) return names;
  for (const std::size_t i : found->second) {
    const Entry& entry = log().entries()[i];
    if (entry.measurement()->json != measured.json) continue;
    const records::Bike* const bike = this->bike(entry.bike());
    if (bike) names += (names.empty() ? "" : ", ") + bike->name();
  }
  return names;
}

// ---- what stands above every page that changes the log

namespace {

void draw_failure(Ui& ui, BikeLog& log) {
  ui.begin_card();
  ui.coloured(words::not_saved(), ui.theme().outside, ui.px(18), ui.fonts().bold);
  if (const auto& reason = log.keeper().reason()) {
    ui.text(reason->text);
    ui.quiet(reason->remedy);
  }
  if (ui.button("retry log", words::try_again())) log.keeper().retry();
  const FileWays ways = log.ways();
  if (ways.save && ui.button("copy now", ways.share ? words::send_copy() : words::save_copy()))
    log.give_copy(ways.share);
  ui.end_card();
}

}  // namespace

const char* word_of_state(BikeLog& log) {
  switch (log.keeper().state()) {
    case storage::SaveState::Failed:
      return words::not_saved();
    case storage::SaveState::Saving:
      return words::saving();
    case storage::SaveState::Saved:
    case storage::SaveState::Idle:
      break;
  }
  return words::saved();
}

void draw_log_state(Ui& ui, BikeLog& log) {
  if (!log.ready()) return ui.quiet(words::log_opening());
  if (log.keeper().can_take_over()) {
    ui.text(words::another_tab_writes());
    if (ui.button("write here", words::write_here())) log.keeper().take_over();
    ui.gap(8);
  } else if (log.keeper().read_only()) {
    ui.quiet(words::log_read_only());
  }
  if (log.keeper().state() == storage::SaveState::Failed) draw_failure(ui, log);
}

void draw_last_change(Ui& ui, BikeLog& log) {
  if (log.last_change().empty()) return;
  if (ui.row("undo last", words::change_and_state(word_of_state(log), log.last_change()), words::undo()))
    log.undo_last();
}

}  // namespace camside::screens
