#include "screens/bikes/due_list.hpp"

#include <algorithm>
#include <utility>

#include "screens/drawings/road_drawing.hpp"
#include "screens/widgets/answer.hpp"
#include "screens/widgets/due_mark.hpp"
#include "screens/widgets/shown.hpp"
#include "screens/words.hpp"
#include "units/parse.hpp"

namespace camside::screens {

using due_board::Row;
using inspection_due::State;
using records::Bike;

namespace {

std::size_t entries_of(const Bike& bike) {
  std::size_t count = 0;
  for (const records::Line& line : bike.lines) count += line.current.size() + line.replaced.size();
  return count;
}

std::string today(const BikeLog& log) {
  return log.now().substr(0, 10);
}

bool pressing(const Row& row) {
  return row.state != State::Good && !row.put_off;
}

RoadPlot road_of(const Theme& theme, const due_board::Board& board, const Row& row) {
  RoadPlot plot;
  plot.proven = row.result.proof;
  plot.state = colour_of(theme, row.state);
  plot.from = row.result.distance->start;
  plot.due = row.result.distance->due;
  plot.now = board.ridden.value_or(plot.from);
  return plot;
}

}  // namespace

bool DueList::up_to_date(const BikeLog& log, const Bike& bike, System system) const {
  const auto it = kept_.find(bike.id);
  return it != kept_.end() && it->second.entries == entries_of(bike) && it->second.day == today(log) &&
         it->second.system == system;
}

const DueList::Kept& DueList::read(const BikeLog& log, const Bike& bike, System system) {
  if (up_to_date(log, bike, system)) return kept_.find(bike.id)->second;
  Kept kept{entries_of(bike), today(log), system, {}, {}, {}};
  if (const auto day = parse_date(kept.day))
    kept.history = due_board::history_of(log.log(), bike, knowledge::usual_knowledge(), *day);
  kept.board = due_board::board_of(kept.history);
  for (const Row& row : kept.board.rows) kept.words.push_back(due_board::words_of(kept.history, row, system));
  return kept_[bike.id] = std::move(kept);
}

void DueList::prepare(const BikeLog& log, System system) {
  const std::string day = today(log);
  if (seen_ == log.version() && seen_day_ == day && seen_system_ == system) return;
  const auto old = std::find_if(log.rows().begin(), log.rows().end(), [&](const BikeRow& row) {
    const Bike* const bike = row.removed || row.id.empty() ? nullptr : log.bike(row.id);
    return bike && !up_to_date(log, *bike, system);
  });
  more_ = old != log.rows().end();
  if (more_) {
    read(log, *log.bike(old->id), system);
    return;
  }
  seen_ = log.version();
  seen_day_ = day;
  seen_system_ = system;
}

std::string DueList::first(const std::string& bike) const {
  const auto it = kept_.find(bike);
  if (it == kept_.end()) return {};
  const due_board::History& history = it->second.history;
  const auto& rows = it->second.board.rows;
  if (rows.empty() || !pressing(rows.front()))
    return history.faults.empty()
               ? std::string()
               : words::due_in_list(std::string(inspection_due::word_of(State::Overdue)), history.faults.front().part);
  const Row& row = rows.front();
  return words::due_in_list(std::string(inspection_due::word_of(row.state)),
                            it->second.history.due.items[row.item].name);
}

// ---- on screen

bool DueList::draw_row(Ui& ui, const Kept& kept, std::size_t row) {
  const Row& of = kept.board.rows[row];
  const std::string& item = kept.history.due.items[of.item].name;
  const std::string& state = of.put_off ? kept.words[row].put_off : kept.words[row].state;
  const float radius = 0.6f * ui.px(18);
  const float left = 2 * radius + 26;
  const float room = ui.width() - left - 12;
  const auto height_of = [&](ImFont* font, float size, const std::string& text) {
    return size_of(font, size, broken(font, size, text, room)).y;
  };
  const float above = height_of(ui.fonts().bold, ui.px(18), item);
  const float below = height_of(ui.fonts().words, ui.px(16), state);
  const float height = std::max(ui.target(), above + below + 22);
  return ui.area("due " + item, Role::Row, item, {ui.width(), height}, [&](const Area& at, bool pressed) {
    ImGui::GetWindowDrawList()->AddRectFilled(at.min, at.max, pressed ? ui.theme().pressed : ui.theme().card, 10);
    const ImU32 colour = colour_of(ui.theme(), of.state);
    draw_verdict_mark(ui.pen(ui.theme().card), {at.min.x + 12 + radius, at.centre().y}, radius, shape_of(of.state),
                      colour);
    const ImVec2 from{at.min.x + left, at.min.y + 9};
    const float right = from.x + room + 1;
    ui.fit({from, {right, from.y + above}}, item, ui.theme().text, ui.px(18), ui.fonts().bold, {0, 0});
    const Area second{{from.x, from.y + above + 4}, {right, from.y + above + 4 + below}};
    ui.fit(second, state, colour, ui.px(16), ui.fonts().words, {0, 0});
    ui.publish(Role::Text, state, second.min, second.max);
  });
}

DueList::Asked DueList::draw_open(Ui& ui, const BikeLog& log, const Kept& kept, std::size_t row, System system) {
  const Row& of = kept.board.rows[row];
  const due_board::RowWords& words = kept.words[row];
  const due_board::Watched& watched = kept.history.watched[of.item];
  const std::string& item = kept.history.due.items[of.item].name;
  // The row above says one of the two.
  for (const std::string* line : {of.put_off ? &words.state : &words.put_off, &words.found, &words.next})
    if (!line->empty()) ui.text(*line);
  if (of.result.distance && !of.result.due_for_want_of_proof) {
    const Pen pen = ui.pen(ui.theme().ground);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const Area area{at, {at.x + ui.width(), at.y + road_height(pen)}};
    const System units = kept.history.clock.value_or(system);
    draw_road(pen, area, road_of(ui.theme(), kept.board, of),
              [units](Distance d) { return shown(Kind::Distance, d.base(), units); });
    ImGui::Dummy({area.width(), area.height()});
  }
  ui.quiet(words.why);
  if (!watched.note.empty()) ui.quiet(watched.note);
  Asked asked;
  if (!log.takes_entries()) return asked;
  ui.gap(8);
  if (ui.button("log due", words::log_it_done())) {
    asked.kind = watched.by_finding ? "finding" : "service";
    asked.about = item;
  }
  if (ui.button("put off", words::put_off(), Look::Quiet)) asked = {"snooze", item};
  if (ui.button("own interval", words::own_interval(), Look::Quiet)) asked = {"rule", item};
  ui.gap(8);
  return asked;
}

DueList::Asked DueList::draw_rows(Ui& ui, const BikeLog& log, const Kept& kept, System system) {
  Asked asked;
  const auto& rows = kept.board.rows;
  const auto urgent = static_cast<std::size_t>(std::count_if(rows.begin(), rows.end(), pressing));
  const std::size_t count = all_ || urgent == 0 ? rows.size() : urgent;  // those come first
  for (std::size_t i = 0; i < count; ++i) {
    const std::string& item = kept.history.due.items[rows[i].item].name;
    if (draw_row(ui, kept, i)) open_ = open_ == item ? std::string() : item;
    if (open_ == item)
      if (Asked now = draw_open(ui, log, kept, i, system); !now.kind.empty()) asked = std::move(now);
    ui.gap(4);
  }
  if (count < rows.size() && ui.button("all due", words::show_all_due(rows.size()), Look::Quiet)) all_ = true;
  return asked;
}

// Found failed or at its limit, and no item of an interval: it stands here until a service of it.
DueList::Asked DueList::draw_faults(Ui& ui, const BikeLog& log, const Kept& kept) {
  Asked asked;
  for (const due_board::Fault& fault : kept.history.faults) {
    const char* const action = log.takes_entries() ? words::log_it_done() : "";
    if (ui.row("fault " + fault.part, fault.part, action) && log.takes_entries()) asked = {"service", fault.part};
    ui.quiet(due_board::words_of(fault));
    ui.gap(4);
  }
  return asked;
}

DueList::Asked DueList::draw(Ui& ui, BikeLog& log, const std::string& id, System system) {
  const Bike* const bike = log.bike(id);
  if (!bike || id.empty() || bike->removed) return {};
  if (open_of_ != id) {
    open_of_ = id;
    open_.clear();
    all_ = false;
  }
  const Kept& kept = read(log, *bike, system);
  ui.heading(words::due());
  if (!kept.history.engine_known)
    ui.quiet(words::engine_not_entered());
  else if (kept.board.rows.empty())
    ui.quiet(words::nothing_looked_after());
  Asked asked = draw_rows(ui, log, kept, system);
  if (Asked fault = draw_faults(ui, log, kept); !fault.kind.empty()) asked = std::move(fault);
  if (kept.history.drives.size() > 1) ui.quiet(due_board::drive_not_known_words());
  for (const due_board::NotFitted& none : kept.history.not_fitted)
    ui.quiet(words::none_on_this_bike(none.item, none.why));
  draw_remarks(ui, kept.board.findings);
  if (!kept.board.rows.empty() && log.ways().save && ui.button("reminders", words::reminders(), Look::Quiet))
    log.give_reminders(exchange::calendar_of(due_board::reminders(kept.history, kept.board, system), log.now()));
  return asked;
}

}  // namespace camside::screens
