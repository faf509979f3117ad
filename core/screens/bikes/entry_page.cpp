#include "screens/bikes/entry_page.hpp"

#include <algorithm>

#include "records/form.hpp"
#include "screens/bikes/bike_page.hpp"
#include "screens/words.hpp"

namespace camside::screens {

using records::Entry;
using records::Line;

namespace {

std::vector<Entry> current_of(const BikeLog& log, const Line& line) {
  std::vector<Entry> all;
  for (const std::size_t i : line.current) all.push_back(log.log().entries()[i]);
  return all;
}

}  // namespace

void EntryPage::open(std::string bike, std::size_t entry) {
  open_ = true;
  bike_ = std::move(bike);
  entry_ = entry;
  version_ = -1;
}

const Line* EntryPage::line(const BikeLog& log) const {
  const records::Bike* const bike = log.bike(bike_);
  if (!bike) return nullptr;
  const auto holds = [this](const std::vector<std::size_t>& some) {
    return std::find(some.begin(), some.end(), entry_) != some.end();
  };
  for (const Line& line : bike->lines)
    if (holds(line.current) || holds(line.replaced)) return &line;
  return nullptr;
}

const Entry* EntryPage::entry(const BikeLog& log) const {
  const Line* const of = line(log);
  return of ? &log.log().entries()[of->current.front()] : nullptr;
}

std::string EntryPage::title(const BikeLog& log) const {
  const Entry* const of = entry(log);
  return of ? records::label_of_entry(of->kind()) : std::string();
}

EntryPage::Card EntryPage::card_of(const BikeLog& log, std::size_t index, System system) const {
  const Entry& entry = log.log().entries()[index];
  Card card;
  card.entry = index;
  card.heading = records::label_of_entry(entry.kind());
  card.made = words::made(entry.made(), entry.by());
  card.note = entry.note();
  if (const auto measured = entry.measurement()) {
    const RecordKind* const kind = records::find_kind(measured->kind());
    if (kind) card.heading = kind->label;
    if (!measured->name().empty()) card.lines.push_back({words::measurement_name(), measured->name()});
    for (EnteredLine& one : entered_lines(*measured, records::kinds(), system)) card.lines.push_back(std::move(one));
  } else if (!entry.is_deletion()) {
    card.lines.push_back({words::day(), entry.day()});
    for (EnteredLine& one : entered_lines(entry.record, records::entry_kinds(), system))
      card.lines.push_back(std::move(one));
  }
  return card;
}

void EntryPage::refresh(const BikeLog& log, System system) {
  if (version_ == log.version() && system_ == system) return;
  version_ = log.version();
  system_ = system;
  now_.clear();
  before_.clear();
  const Line* const of = line(log);
  if (!of) return;
  for (const std::size_t i : of->current) now_.push_back(card_of(log, i, system));
  for (auto it = of->replaced.rbegin(); it != of->replaced.rend(); ++it) before_.push_back(card_of(log, *it, system));
}

void EntryPage::draw_card(Ui& ui, const Card& card) const {
  ui.heading(card.heading);
  ui.quiet(card.made);
  for (const EnteredLine& line : card.lines) {
    ui.gap(4);
    ui.quiet(line.label);
    ui.text(line.text);
  }
  if (card.note.empty()) return;
  ui.gap(4);
  ui.quiet(card.note);
}

// The one that is kept takes the place of all, so that both devices agree again.
void EntryPage::keep(BikeLog& log, const Line& line, std::size_t entry) {
  std::vector<Entry> old = current_of(log, line);
  const auto chosen =
      static_cast<std::size_t>(std::find(line.current.begin(), line.current.end(), entry) - line.current.begin());
  std::swap(old.front(), old[chosen]);
  const records::Stamp stamp = log.next_stamp();
  Entry kept =
      old.front().is_deletion() ? records::deletion(log.log(), old, stamp) : records::correction(log.log(), old, stamp);
  log.add({std::move(kept)}, words::one_kept());
}

void EntryPage::draw_apart(Ui& ui, BikeLog& log, const Line& line) {
  ui.coloured(words::changed_apart(), ui.theme().not_proven, ui.px(18), ui.fonts().bold);
  ui.text(words::changed_apart_help());
  std::optional<std::size_t> chosen;
  for (std::size_t i = 0; i < now_.size(); ++i) {
    ui.gap(8);
    ui.begin_card();
    draw_card(ui, now_[i]);
    ui.gap(8);
    if (log.takes_entries() && ui.button("keep " + std::to_string(i), words::keep_nth(i + 1, now_.size())))
      chosen = now_[i].entry;
    ui.end_card();
  }
  if (chosen) keep(log, line, *chosen);
}

void EntryPage::remove(BikeLog& log, const Line& line) {
  const std::vector<Entry> old = current_of(log, line);
  const std::string what = words::deleted(words_for(old.front()));
  log.add({records::deletion(log.log(), old, log.next_stamp())}, what);
}

void EntryPage::bring_back(BikeLog& log, const Line& line) {
  const Entry taken = log.log().entries()[line.current.front()];
  log.add(records::undo(log.log(), taken, [&log] { return log.next_stamp(); }), words::brought_back());
}

EntryPage::Asked EntryPage::draw_actions(Ui& ui, BikeLog& log, const Line& line) {
  Asked asked = Asked::Nothing;
  const Entry& entry = log.log().entries()[line.current.front()];
  ui.gap(12);
  if (entry.measurement() && ui.button("reopen", words::show_on_bench(), Look::Main)) asked = Asked::Reopen;
  if (!log.takes_entries() || line.apart) return asked;
  if (line.deleted) {
    if (ui.button("bring back", words::bring_back())) bring_back(log, line);
    return asked;
  }
  const bool known = records::find_kind(entry.kind(), records::entry_kinds()) != nullptr;
  if (known && ui.button("correct", words::correct())) asked = Asked::Correct;
  if (ui.button("delete", words::delete_entry(), Look::Quiet)) remove(log, line);
  return asked;
}

EntryPage::Asked EntryPage::draw(Ui& ui, BikeLog& log, System system) {
  refresh(log, system);
  const Line* const of = line(log);
  if (!of || now_.empty()) return Asked::Nothing;
  const Line shown = *of;  // a change makes the view anew
  if (shown.apart) {
    draw_apart(ui, log, shown);
  } else {
    ui.begin_card();
    draw_card(ui, now_.front());
    ui.end_card();
  }
  const Asked asked = draw_actions(ui, log, shown);
  if (!before_.empty()) {
    ui.gap(16);
    ui.heading(words::before());
  }
  for (const Card& card : before_) {
    ui.gap(8);
    ui.begin_card();
    draw_card(ui, card);
    ui.end_card();
  }
  ui.gap(24);
  return asked;
}

}  // namespace camside::screens
