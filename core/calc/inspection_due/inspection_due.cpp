#include "calc/inspection_due/inspection_due.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <iterator>
#include <utility>

#include "calc/inspection_due/inspection_due_remarks.hpp"
#include "calc/inspection_due/inspection_due_report.hpp"
#include "fields/path.hpp"

namespace camside::inspection_due {

namespace {

constexpr Distance slack = Distance::km(1e-6);
constexpr double most_days_ahead = 36'525.0;  // 100 years
constexpr long old_reading_days = 90;

// An item with the rule that holds for it, and where it stands in the input.
struct Ruled {
  Item item;
  std::string field;
};

// A service with its reading summed over clocks.
struct Done {
  std::optional<Date> date;
  std::optional<Distance> total;
  bool proof = false;
};

// What is being worked out.
struct Working {
  const Input& in;
  Result& r;
  const Riding& riding;
  bool in_words = true;
  std::vector<Ruled> ruled;

  void say(Finding f) { r.outcome.findings.push_back(std::move(f)); }
};

// ---- entries ----

bool likely_year(Date d) {
  const int year = static_cast<int>(d.year());
  return year >= 1900 && year <= 2200;
}

void check_day(const std::optional<Date>& day, Date today, std::string field, Findings& found) {
  if (!day || found.size() > 50) return;
  if (!likely_year(*day))
    found.push_back(remarks::day_unlikely(std::move(field), *day));
  else if (*day > today)
    found.push_back(remarks::day_after_today(std::move(field), *day, today));
}

void check_services(const Item& item, const std::string& at, Date today, Findings& found) {
  for (std::size_t k = 0; k < item.services.size(); ++k) {
    const Service& s = item.services[k];
    const std::string field = item_path(at + ".services", k);
    check_day(s.date, today, field + ".date", found);
    if (s.proof && !s.date && !s.odometer) found.push_back(remarks::proof_without_anything(field, item.name));
  }
}

Findings entry_refusals(const Input& in) {
  Findings found = check_fields(in);
  if (any_refusal(found)) return found;
  if (in.log.size() > riding_rate::most_points)
    found.push_back(remarks::log_too_long(in.log.size(), riding_rate::most_points));
  check_day(in.today, *in.today, "today", found);
  for (std::size_t i = 0; i < in.log.size(); ++i)
    check_day(in.log[i].date, *in.today, item_path("log", i, "date"), found);
  for (std::size_t i = 0; i < in.items.size(); ++i)
    check_services(in.items[i], item_path("items", i), *in.today, found);
  return found;
}

// ---- rules ----

bool has_rule(const Item& item) {
  return item.every || item.months;
}

// The name of old files for the two shoes together.
bool stands_for(const Item& own, const Item& usual) {
  return own.name == usual.name || (own.name == "Tensioner shoes" && usual.name.ends_with("tensioner shoe"));
}

Item with_usual_rule(Item item, const std::vector<Item>& usual) {
  const auto same = [&](const Item& u) { return stands_for(item, u); };
  const auto it = std::find_if(usual.begin(), usual.end(), same);
  if (it == usual.end()) return item;
  if (!item.due_from) item.due_from = it->due_from;  // its own interval is no proof either
  if (has_rule(item)) return item;
  item.every = it->every;
  item.months = it->months;
  item.source = it->source;
  return item;
}

// The bike's own items, then the usual ones that are not among them.
std::vector<Ruled> ruled_items(const Input& in) {
  const std::vector<Item> usual = in.engine ? usual_items(*in.engine) : std::vector<Item>{};
  std::vector<Ruled> all;
  for (std::size_t i = 0; i < in.items.size(); ++i)
    all.push_back({with_usual_rule(in.items[i], usual), item_path("items", i)});
  for (const Item& u : usual) {
    const auto same = [&](const Item& own) { return stands_for(own, u); };
    if (std::none_of(in.items.begin(), in.items.end(), same)) all.push_back({u, "engine"});
  }
  return all;
}

void check_rules(Working& w) {
  if (w.ruled.empty()) w.say(remarks::nothing_listed());
  for (const Ruled& ruled : w.ruled) {
    if (!has_rule(ruled.item))
      w.say(remarks::item_without_rule(ruled.field, ruled.item.name));
    else if (!ruled.item.source)
      w.say(remarks::source_taken_as_owner(ruled.field + ".source", ruled.item.name));
  }
}

// ---- services against the log ----

// Without a date only one clock can be meant; with none in the log a reading is what it says.
std::optional<Distance> total_at(const Log& log, const Service& s) {
  if (!s.date) return log.clocks.size() > 1 ? std::nullopt : std::optional(*s.odometer);
  return total_of(log, *s.odometer, day_number(*s.date));
}

// Done after the last reading of the log: the paper is itself a newer reading.
bool newer_than_log(const Log& log, const Service& s) {
  return s.date && (log.points.empty() || day_number(*s.date) >= log.points.back().day);
}

// The totals never fall (a clock that went back counts on from where it was), so the readings before and after decide.
bool fits_log(const Log& log, long day, Distance total) {
  const auto& points = log.points;
  const auto from =
      std::lower_bound(points.begin(), points.end(), day, [](const LogPoint& p, long d) { return p.day < d; });
  const auto after = std::upper_bound(from, points.end(), day, [](long d, const LogPoint& p) { return d < p.day; });
  return (from == points.begin() || std::prev(from)->total <= total + slack) &&
         (after == points.end() || after->total >= total - slack);
}

// The service with its distance, or nothing when it contradicts the log.
std::optional<Done> place_service(Working& w, const Ruled& ruled, std::size_t k) {
  const Service& s = ruled.item.services[k];
  const std::string field = item_path(ruled.field + ".services", k, "odometer");
  Done done{s.date, {}, s.proof};
  if (!s.odometer) return done;
  done.total = total_at(w.riding.log, s);
  if (!done.total) {
    w.say(remarks::service_on_which_clock(field, ruled.item.name));
    return {};
  }
  const bool beyond = !w.riding.log.points.empty() && *done.total > w.riding.log.points.back().total + slack;
  if (beyond && !newer_than_log(w.riding.log, s)) {
    w.say(remarks::service_beyond_clock(field, ruled.item.name, *s.odometer, w.riding.log.points.back().odometer));
    return {};
  }
  if (s.date && !fits_log(w.riding.log, day_number(*s.date), *done.total))
    w.say(remarks::service_against_log(field, ruled.item.name, *s.odometer, *s.date));
  return done;
}

std::vector<Done> place_services(Working& w, const Ruled& ruled) {
  std::vector<Done> all;
  for (std::size_t k = 0; k < ruled.item.services.size(); ++k) {
    if (auto done = place_service(w, ruled, k)) {
      if (done->total && newer_than_log(w.riding.log, ruled.item.services[k]))
        w.r.ridden = std::max(w.r.ridden.value_or(Distance{}), *done->total);
      all.push_back(*done);
    }
  }
  return all;
}

template <class T>
std::optional<T> latest_proven(const std::vector<Done>& all, std::optional<T> Done::*member) {
  std::optional<T> latest;
  for (const Done& d : all)
    if (d.proof && d.*member && (!latest || *latest < *(d.*member))) latest = *(d.*member);
  return latest;
}

// ---- one item ----

struct Start {
  bool proof = false;
  std::optional<Distance> total;
  std::optional<Date> date;
};

Start unread_proof(Working& w, const Ruled& ruled) {
  w.say(remarks::proof_without_reading(ruled.field + ".services", ruled.item.name));
  Start none;
  none.total = Distance{};
  return none;
}

// Zero without proof; nothing for a leg the proof says nothing about.
Start start_of(Working& w, const Ruled& ruled, const std::vector<Done>& all) {
  Start s;
  s.proof = std::any_of(all.begin(), all.end(), [](const Done& d) { return d.proof; });
  if (!s.proof) {
    s.total = Distance{};
    return s;
  }
  s.total = latest_proven(all, &Done::total);
  s.date = latest_proven(all, &Done::date);
  if (ruled.item.due_from && !s.total && w.r.ridden) return unread_proof(w, ruled);
  const std::string field = ruled.field + ".services";
  if (ruled.item.every && !s.total) w.say(remarks::proof_without_reading(field, ruled.item.name));
  if (ruled.item.months && !s.date) w.say(remarks::proof_without_date(field, ruled.item.name));
  return s;
}

std::optional<ByDistance> by_distance(const Working& w, const Item& item, const Start& start) {
  if (!item.every || !start.total || !w.r.ridden) return {};
  ByDistance d;
  d.start = *start.total;
  d.due = !start.proof && item.due_from ? *item.due_from : d.start + *item.every;
  d.on_clock = d.due - w.riding.log.clocks.back().offset;
  d.left = d.due - *w.r.ridden;
  return d;
}

std::optional<ByDate> by_date(const Working& w, const Item& item, const Start& start) {
  if (!item.months || !start.date) return {};
  const Date due = months_after(*start.date, *item.months);
  return ByDate{*start.date, due, days_between(*w.in.today, due)};
}

State distance_state(const Input& in, const Item& item, Distance left) {
  if (left < -slack) return State::Overdue;
  return left <= *item.every * in.soon_share + slack ? State::DueSoon : State::Good;
}

State date_state(const Input& in, long days_left) {
  if (days_left < 0) return State::Overdue;
  return days_left <= in.soon_days ? State::DueSoon : State::Good;
}

State state_of(const Input& in, const Item& item, const ItemResult& r) {
  if (r.due_for_want_of_proof) return State::Overdue;
  State state = State::NotKnown;
  if (r.distance) state = std::min(state, distance_state(in, item, r.distance->left));
  if (r.date) state = std::min(state, date_state(in, r.date->days_left));
  return state;
}

std::optional<Date> day_reached(Date today, Distance left, std::optional<double> km_per_day) {
  if (!km_per_day || *km_per_day <= 0.0) return {};
  const double days = std::floor(std::max(0.0, left.in_km()) / *km_per_day + 1e-9);
  if (!(days <= most_days_ahead)) return {};
  return date_of(day_number(today) + static_cast<long>(days));
}

std::optional<Forecast> forecast_of(const Working& w, const ItemResult& item) {
  if (!w.r.rate || !item.proof || !item.distance || item.distance->left < -slack) return {};
  const auto day = [&](std::optional<double> rate) { return day_reached(*w.in.today, item.distance->left, rate); };
  const auto expected = day(w.r.rate->km_per_day);
  if (!expected) return {};
  return Forecast{*expected, day(w.r.rate->high_km_per_day), day(w.r.rate->low_km_per_day)};
}

bool past(const ItemResult& r, bool by_distance) {
  return by_distance ? r.distance && r.distance->left < -slack : r.date && r.date->days_left < 0;
}

First first_of(const ItemResult& r) {
  if (!r.distance || !r.date) return r.distance ? First::Distance : r.date ? First::Date : First::NotKnown;
  if (past(r, true) != past(r, false)) return past(r, true) ? First::Distance : First::Date;
  if (past(r, true) || !r.forecast) return First::NotKnown;
  return r.date->due <= r.forecast->expected ? First::Date : First::Distance;
}

std::optional<Date> next_of(const ItemResult& r) {
  if (r.date && r.forecast) return std::min(r.date->due, r.forecast->expected);
  if (r.date) return r.date->due;
  return r.forecast ? std::optional(r.forecast->expected) : std::nullopt;
}

void remark_item(Working& w, const Ruled& ruled, const ItemResult& r) {
  const std::string& name = ruled.item.name;
  if (r.due_for_want_of_proof) return w.say(remarks::due_for_want_of_proof(ruled.field, name));
  if (r.state == State::Overdue) w.say(remarks::overdue(ruled.field, name, by_how_much(r)));
  if (!r.proof) w.say(remarks::no_proof(ruled.field, name));
  if (r.state == State::DueSoon) w.say(remarks::due_soon(ruled.field, name, by_how_much(r)));
  if (r.state == State::NotKnown) w.say(remarks::nothing_to_count_from(ruled.field, name));
}

ItemResult judge(Working& w, const Ruled& ruled, const std::vector<Done>& services) {
  const Item& item = ruled.item;
  const Start start = start_of(w, ruled, services);
  ItemResult r;
  r.name = item.name;
  r.proof = start.proof;
  r.every = item.every.value_or(Distance{});
  r.months = item.months.value_or(0);
  r.distance = by_distance(w, item, start);
  r.date = by_date(w, item, start);
  r.due_for_want_of_proof = !r.proof && item.due_from && r.distance && r.distance->left <= slack;
  r.state = state_of(w.in, item, r);
  r.forecast = forecast_of(w, r);
  r.first = first_of(r);
  r.next = next_of(r);
  if (!w.in_words) return r;
  r.why = why_text(item);
  remark_item(w, ruled, r);
  return r;
}

// ---- the whole ----

bool any_by_distance(const Working& w) {
  return std::any_of(w.ruled.begin(), w.ruled.end(), [](const Ruled& r) { return r.item.every.has_value(); });
}

void add_rate(Working& w) {
  if (!w.r.ridden) w.say(remarks::log_empty());
  w.r.rate = w.riding.rate;
  if (!w.r.rate) return w.say(remarks::rate_not_known());
  if (!w.r.rate->covers_95) w.say(remarks::rate_from_few(w.riding.log.points.size()));
  if (w.r.rate->km_per_day <= 0.0) return w.say(remarks::not_ridden());
  if (w.r.rate->low_km_per_day.value_or(1.0) <= 0.0) w.say(remarks::latest_day_open());
}

void take_log(Working& w) {
  w.r.log_in_doubt = w.riding.log.in_doubt;
  for (const Finding& f : w.riding.log.findings) w.say(f);
  if (any_refusal(w.r.outcome.findings) || w.riding.log.points.empty()) return;
  w.r.ridden = w.riding.log.points.back().total;
  const long age = days_between(w.riding.log.points.back().date, *w.in.today);
  if (age > old_reading_days) w.say(remarks::last_reading_old(w.riding.log.points.back().date, age));
}

void work_out(Working& w) {
  take_log(w);
  w.ruled = ruled_items(w.in);
  check_rules(w);
  if (any_refusal(w.r.outcome.findings)) return;
  std::vector<std::vector<Done>> services;
  for (const Ruled& ruled : w.ruled) services.push_back(place_services(w, ruled));
  if (any_refusal(w.r.outcome.findings)) return;
  if (w.r.ridden) w.r.odometer = *w.r.ridden - w.riding.log.clocks.back().offset;
  if (any_by_distance(w)) add_rate(w);
  for (std::size_t i = 0; i < w.ruled.size(); ++i) w.r.items.push_back(judge(w, w.ruled[i], services[i]));
}

}  // namespace

std::string_view word_of(State state) {
  switch (state) {
    case State::Overdue:
      return "Overdue";
    case State::DueSoon:
      return "Due soon";
    case State::Good:
      return "Good";
    case State::NotKnown:
      break;
  }
  return "No proof";
}

Date months_after(Date start, int months) {
  const Date moved = start + std::chrono::months(months);
  return moved.ok() ? moved : Date(moved.year() / moved.month() / std::chrono::last);
}

long days_between(Date from, Date to) {
  return day_number(to) - day_number(from);
}

tl::expected<Result, Findings> solve(const Input& input) {
  Findings refused = entry_refusals(input);
  if (any_refusal(refused)) return tl::make_unexpected(std::move(refused));
  Result result;
  const Riding riding = riding_of(input.log);
  Working w{input, result, riding, true, {}};
  work_out(w);
  if (any_refusal(result.outcome.findings)) return tl::make_unexpected(only_refusals(result.outcome.findings));
  add_report(input, result, result.outcome);
  return result;
}

Result standing(const Input& input, const Riding& riding) {
  Result result;
  Working w{input, result, riding, false, {}};
  work_out(w);
  return result;
}

}  // namespace camside::inspection_due
