#include "calc/inspection_due/inspection_due_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "calc/inspection_due/inspection_due.hpp"
#include "calc/inspection_due/inspection_due_remarks.hpp"
#include "findings/outcome_writer.hpp"
#include "findings/remark.hpp"
#include "units/format.hpp"

namespace camside::inspection_due {

namespace {

using figures::distance;
using figures::number;

using remarks::miles_and_km;

std::string days_text(long days) {
  return fmt::format("{} {}", days, days == 1 ? "day" : "days");
}

// The day's number since 1970-01-01 for machines, the date for people.
Figure day(std::string key, std::string label, Date d) {
  return number(std::move(key), std::move(label), static_cast<double>(day_number(d)), format_date(d));
}

std::string standing_text(const ItemResult& item) {
  return standing_text(item, item.state, [](Distance d) { return miles_and_km(d); });
}

std::string_view first_text(First first) {
  switch (first) {
    case First::Distance:
      return "by distance";
    case First::Date:
      return "by date";
    case First::NotKnown:
      break;
  }
  return "whichever comes first";
}

// ---- figures ----

void add_forecast(const std::string& at, const Forecast& f, Outcome& out) {
  out.figures.push_back(day(at + "forecast", "Distance runs out about", f.expected));
  if (f.earliest) out.figures.push_back(day(at + "forecast_earliest", "At the earliest", *f.earliest));
  if (f.latest) out.figures.push_back(day(at + "forecast_latest", "At the latest", *f.latest));
}

void add_item(std::size_t i, const ItemResult& item, Outcome& out) {
  const std::string at = fmt::format("items[{}].", i);
  out.figures.push_back(number(at + "state", item.name, static_cast<double>(item.state), standing_text(item)));
  out.figures.push_back(number(at + "proof", "Proof", item.proof ? 1.0 : 0.0, item.proof ? "Proof" : "No proof"));
  if (item.distance) {
    out.figures.push_back(distance(at + "left", "Distance left", item.distance->left));
    out.figures.push_back(distance(at + "due_clock", "Due at, by the odometer", item.distance->on_clock));
    out.figures.push_back(distance(at + "due_total", "Due at, total distance", item.distance->due));
  }
  if (item.date) {
    out.figures.push_back(number(at + "days_left", "Days left", static_cast<double>(item.date->days_left)));
    out.figures.push_back(day(at + "due_date", "Due on", item.date->due));
  }
  if (item.forecast) add_forecast(at, *item.forecast, out);
  if (item.next) out.figures.push_back(day(at + "next", "Next look about", *item.next));
  out.figures.push_back(
      number(at + "first", "Comes first", static_cast<double>(item.first), std::string(first_text(item.first))));
  out.figures.push_back(number(at + "why", "Why", 0.0, item.why));
}

void add_riding(const Result& r, Outcome& out) {
  if (r.odometer) out.figures.push_back(distance("odometer", "Odometer at last reading", *r.odometer));
  if (r.ridden) out.figures.push_back(distance("ridden", "Ridden in all", *r.ridden));
  if (!r.rate) return;
  out.figures.push_back(distance("rate", "Ridden a day", Distance::km(r.rate->km_per_day)));
  if (!r.rate->low_km_per_day) return;
  const std::string range = r.rate->covers_95 ? "95 % range" : "range";
  out.figures.push_back(distance("rate_low", "A day, " + range + ", low", Distance::km(*r.rate->low_km_per_day)));
  out.figures.push_back(distance("rate_high", "A day, " + range + ", high", Distance::km(*r.rate->high_km_per_day)));
}

// The item to look at next: the worst state, then the one least far off in its own interval.
const ItemResult* most_pressing(const Result& r) {
  const auto share = [](const ItemResult& item) {
    return item.distance && item.every > Distance{} ? item.distance->left / item.every : 1.0;
  };
  const auto before = [&](const ItemResult& a, const ItemResult& b) {
    return a.state != b.state ? a.state < b.state : share(a) < share(b);
  };
  const auto it = std::min_element(r.items.begin(), r.items.end(), before);
  return it == r.items.end() ? nullptr : &*it;
}

// ---- working ----

void add_rate_step(const Result& r, Outcome& out) {
  const auto a_day = [](double km) { return fmt::format("{:.4g} mi ({:.4g} km)", km / 1.609344, km); };
  std::string result = a_day(r.rate->km_per_day) + " a day";
  if (r.rate->low_km_per_day)
    result += fmt::format(", {} to {}", a_day(*r.rate->low_km_per_day), a_day(*r.rate->high_km_per_day));
  out.working.push_back({"Rate of riding", "median of all slopes (Theil–Sen), range by ranks (Sen, 95 %)",
                         fmt::format("{} slopes", r.rate->slopes), std::move(result)});
}

void add_distance_step(const ItemResult& item, const Result& r, Outcome& out) {
  const ByDistance& d = *item.distance;
  out.working.push_back(
      {item.name + ", distance left", "start + interval − ridden",
       fmt::format("{} + {} − {}", miles_and_km(d.start), miles_and_km(d.due - d.start), miles_and_km(*r.ridden)),
       miles_and_km(d.left)});
}

void add_date_step(const ItemResult& item, const Input& in, Outcome& out) {
  out.working.push_back(
      {item.name + ", due date", "last proven date + months, the day clamped to its month's end",
       fmt::format("{} + {} months, today {}", format_date(item.date->start), item.months, format_date(*in.today)),
       fmt::format("{}, {} left", format_date(item.date->due), days_text(item.date->days_left))});
}

void add_forecast_step(const ItemResult& item, const Input& in, const Result& r, Outcome& out) {
  out.working.push_back({item.name + ", forecast", "today + floor(left / rate)",
                         fmt::format("{} + floor({:.6g} km / {:.6g} km a day)", format_date(*in.today),
                                     item.distance->left.in_km(), r.rate->km_per_day),
                         format_date(item.forecast->expected)});
}

}  // namespace

std::string why_text(const Item& item) {
  std::string rule;
  if (item.every) rule = "every " + miles_and_km(*item.every);
  if (item.months) rule += (rule.empty() ? "every " : " or ") + fmt::format("{} months", *item.months);
  return rule + "; " + (item.source ? item.source->text() : "the owner's own interval");
}

std::string standing_text(const ItemResult& item, State state, FunctionView<std::string(Distance)> show) {
  if (item.due_for_want_of_proof) return "Due now, No proof";
  std::string text{word_of(state)};
  const std::string much = by_how_much(item, show);
  if (state == item.state && !much.empty()) text += state == State::Overdue ? " by " + much : ", " + much + " left";
  if (!item.proof && item.state != State::NotKnown) text += ", No proof";
  return text;
}

std::string by_how_much(const ItemResult& item) {
  return by_how_much(item, [](Distance d) { return miles_and_km(d); });
}

std::string by_how_much(const ItemResult& item, FunctionView<std::string(Distance)> show) {
  const bool past = item.state == State::Overdue;
  const bool date_past = item.date && item.date->days_left < 0;
  const bool distance_past = item.distance && item.distance->left < Distance{};
  std::string text;
  if (item.distance && (!past || distance_past)) text = show(abs(item.distance->left));
  if (item.date && (!past || date_past))
    text += (text.empty() ? "" : past ? " and " : " or ") + days_text(std::abs(item.date->days_left));
  return text;
}

void add_report(const Input& in, const Result& r, Outcome& out) {
  if (const ItemResult* item = most_pressing(r))
    out.figures.push_back(number("most_pressing", "First on the list", static_cast<double>(item->state),
                                 item->name + ": " + standing_text(*item)));
  for (std::size_t i = 0; i < r.items.size(); ++i) add_item(i, r.items[i], out);
  add_riding(r, out);
  if (r.rate) add_rate_step(r, out);
  for (const ItemResult& item : r.items) {
    if (item.distance) add_distance_step(item, r, out);
    if (item.date) add_date_step(item, in, out);
    if (item.forecast) add_forecast_step(item, in, r, out);
  }
}

}  // namespace camside::inspection_due
