#include "due/due_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "calc/inspection_due/inspection_due.hpp"
#include "units/format.hpp"

namespace camside::due_board {

namespace {

using inspection_due::ItemResult;
using inspection_due::State;

std::string shown(Distance d, System system) {
  return format(d, system);
}

std::string state_words(const Row& row, System system) {
  if (!row.with.empty()) return fmt::format("Due with: {}, No proof", row.with);
  return inspection_due::standing_text(row.result, row.state, [&](Distance d) { return shown(d, system); });
}

std::string worn_words(const Watched& watched, const inspection_due::Item& item, System system) {
  if (!watched.worn) return {};
  std::string text = "Seen worn on " + format_date(watched.worn->day);
  if (item.every) text += fmt::format(": look again within {}", shown(*item.every, system));
  if (!watched.worn->own_interval_since) text += ", or enter your own interval";
  return text;
}

std::string found_words(const Watched& watched, const inspection_due::Item& item, System system) {
  if (!watched.bad) return worn_words(watched, item, system);
  const bool failed = watched.bad->grade == records::entered::Grade::Failed;
  return fmt::format("Found {} on {}, nothing done since", failed ? "failed" : "at its limit",
                     format_date(watched.bad->day));
}

std::string forecast_words(const inspection_due::Forecast& f) {
  std::string text = ", about " + format_date(f.expected);
  if (f.earliest && f.latest)
    text += fmt::format(" ({} to {})", format_date(*f.earliest), format_date(*f.latest));
  else if (f.earliest)
    text += fmt::format(" ({} at the earliest)", format_date(*f.earliest));
  return text;
}

std::string next_words(const ItemResult& r, System system) {
  if (r.due_for_want_of_proof) return {};  // now, and from no figure
  std::string text;
  if (r.distance) text = "Due at " + shown(r.distance->on_clock, system);
  if (r.forecast) text += forecast_words(*r.forecast);
  if (r.date) text += (text.empty() ? "Due on " : "; by date on ") + format_date(r.date->due);
  return text;
}

std::string put_off_words(const PutOff& off, System system) {
  std::string until;
  if (off.until) until = format_date(*off.until);
  if (off.odometer) until += (until.empty() ? "" : " or ") + shown(*off.odometer, system);
  return fmt::format("Put off until {}: {}", until, off.reason);
}

// ---- reminders

// The day on which a reading is come to, by the rate of riding.
std::optional<Date> day_at(const History& h, const Board& board, Distance total) {
  if (!board.rate || !board.ridden || board.rate->km_per_day <= 0.0) return {};
  constexpr double most_days = 36'525.0;
  const double days = std::floor((total - *board.ridden).in_km() / board.rate->km_per_day);
  if (!(days <= most_days)) return {};
  return inspection_due::date_of(inspection_due::day_number(*h.due.today) + static_cast<long>(std::max(0.0, days)));
}

Date day_of(const History& h, const Board& board, const Row& row) {
  const Date today = *h.due.today;
  std::optional<Date> day = row.state == State::Overdue ? std::nullopt : row.result.next;
  if (const auto& off = h.watched[row.item].put_off) {
    day = off->until;
    if (off->total)
      if (const auto at = day_at(h, board, *off->total)) day = day ? std::min(*day, *at) : *at;
  }
  return std::max(today, day.value_or(today));
}

bool reminded(const Row& row) {
  return row.state != State::Good || row.put_off || row.result.next;
}

std::string lowered(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

}  // namespace

RowWords words_of(const History& h, const Row& row, System system) {
  const System units = h.clock.value_or(system);
  const Watched& watched = h.watched[row.item];
  const inspection_due::Item& item = h.due.items[row.item];
  RowWords w;
  w.state = state_words(row, units);
  w.found = found_words(watched, item, units);
  w.next = next_words(row.result, units);
  w.why = "Why: " + inspection_due::why_text(item);
  if (watched.put_off) w.put_off = put_off_words(*watched.put_off, units);
  w.to_log = fmt::format("When done, log a {} of {}", watched.by_finding ? "finding" : "service", item.name);
  return w;
}

const char* drive_not_known_words() {
  return "What turns the cams is not known: the items of every drive stand here";
}

std::string words_of(const Fault& fault) {
  const bool failed = fault.grade == records::entered::Grade::Failed;
  return fmt::format("Found {} on {}, nothing done since", failed ? "failed" : "at its limit", format_date(fault.day));
}

std::string print_board(const History& h, const Board& board, System system) {
  std::string out = h.name + "\n";
  if (board.odometer) out += "  Odometer " + shown(*board.odometer, h.clock.value_or(system)) + "\n";
  for (const Row& row : board.rows) {
    const RowWords w = words_of(h, row, system);
    out += fmt::format("  {}: {}\n", h.due.items[row.item].name, w.state);
    for (const std::string* line : {&w.put_off, &w.found, &w.next, &w.why, &w.to_log})
      if (!line->empty()) out += "    " + *line + "\n";
  }
  for (const Fault& fault : h.faults) out += fmt::format("  {}: {}\n", fault.part, words_of(fault));
  if (h.drives.size() > 1) out += std::string("  ") + drive_not_known_words() + "\n";
  for (const NotFitted& none : h.not_fitted)
    out += fmt::format("  {}: none on this bike{}\n", none.item, none.why.empty() ? "" : "; " + none.why);
  if (!h.engine_known) out += "  The engine's years are not entered: their usual items are missing here\n";
  if (board.rows.empty() && h.not_fitted.empty() && h.faults.empty())
    out += "  No checks yet; enter an interval of your own\n";
  return out;
}

std::vector<exchange::CalendarEvent> reminders(const History& h, const Board& board, System system) {
  std::vector<exchange::CalendarEvent> events;
  for (const Row& row : board.rows) {
    if (!reminded(row)) continue;
    const RowWords w = words_of(h, row, system);
    const std::string& item = h.due.items[row.item].name;
    exchange::CalendarEvent event;
    event.uid = fmt::format("{}-{:016x}@camside", h.bike, records::fingerprint(lowered(item)));
    event.day = day_of(h, board, row);
    event.summary = fmt::format("{}: {}", h.name, item);
    event.description = w.state;
    for (const std::string* line : {&w.put_off, &w.found, &w.next, &w.why, &w.to_log})
      if (!line->empty()) event.description += "\n" + *line;
    events.push_back(std::move(event));
  }
  for (const Fault& fault : h.faults) {
    exchange::CalendarEvent event;
    event.uid = fmt::format("{}-{:016x}@camside", h.bike, records::fingerprint(lowered(fault.part)));
    event.day = *h.due.today;
    event.summary = fmt::format("{}: {}", h.name, fault.part);
    event.description = words_of(fault);
    events.push_back(std::move(event));
  }
  return events;
}

}  // namespace camside::due_board
