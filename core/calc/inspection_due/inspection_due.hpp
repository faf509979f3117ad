// Question: what is due, is it due by distance or by date first, when will that be, and who can prove the last time?
//
// Method
//   1 Every item has a rule "every X distance or Y months, whichever first" with the source of its interval. Counting
//     starts at the latest proven service: the latest proven reading for the distance, the latest proven date for the
//     months. No proof: distance counts from zero, there is no date, and the item says No proof beside its state. An
//     item with `due_from` is due from that odometer on while there is no proof, whatever its interval; for it a proof
//     without a reading is none.
//   2 Distance is summed over clock swaps: an entry of the log with `new_clock` ends the old clock at its odometer
//     and starts the new one. A clock that goes back without a swap is an event to record: it is flagged, counting
//     goes on with nothing ridden in between, and every state is in doubt.
//   3 Due reading = start + X; due date = start + Y months, the day clamped to the end of its month, always counted
//     from the start and never chained (31 January + 1 month = 28 or 29 February, + 2 months = 31 March).
//   4 On the due day or reading itself still in time. Overdue: past either. Due soon: not more than `soon_share` of
//     the interval (10 %) or `soon_days` (30) left. Else Good.
//   5 Forecast: rate of riding from the log (riding_rate.hpp, Theil–Sen with Sen's 95 % interval); day = today +
//     floor(left / rate), left counted from the last reading of the log; earliest and latest from the interval's ends.
//     A low end of nothing or less leaves the latest day open. A forecast beyond 100 years is none.
// Source of default intervals: common practice or from memory, as each says; the owner's or maker's win.
//
// Inputs: today; log of (date, odometer, new clock) in any order, at most riding_rate::most_points; items with rule
// and services; engine years, for the usual items. Units and ranges: describe().
// Result: per item state, Proof or No proof, distance left (negative: past), reading on the present clock, days left,
// date, forecast with range, which comes first. No verdict: a due list has states. Accuracy: dates exact; distances
// 1e-9 km. Not covered: hours of running, season-dependent riding. Findings: 1501-1509 log · 1510-1519 items and
// services · 1520-1524 states · 1530-1533 rate. Example: examples/inspection_due.json
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "base/function_view.hpp"
#include "calc/inspection_due/riding_rate.hpp"
#include "fields/field.hpp"
#include "findings/outcome.hpp"
#include "units/quantity.hpp"

namespace camside::inspection_due {

enum class EngineYears : std::uint8_t { SingleCam, SprungChain, HydraulicChain, Own, SingleChain, FourCam };
Choices engine_choices();

// What turns the cams now; a bike may have been converted.
enum class CamDrive : std::uint8_t { SprungChains, HydraulicChains, Gears, WorksGears, Another, NotKnown };
Choices drive_choices();

struct LogEntry {
  std::optional<Date> date;
  std::optional<Distance> odometer;
  std::optional<Distance> new_clock;  // the clock was swapped here: reading at which the new one starts
};
void describe(FieldVisitor& v, LogEntry& e);

struct Service {
  std::optional<Date> date;
  std::optional<Distance> odometer;  // on the clock of that day
  bool proof = false;                // paper, photo or own entry
  std::string note;
};
void describe(FieldVisitor& v, Service& s);

struct Item {
  std::string name;
  std::optional<Distance> every;
  std::optional<int> months;
  std::optional<Source> source;      // of the interval
  std::optional<Distance> due_from;  // with no proof it is due from this odometer on; left out: every
  std::vector<Service> services;
};
void describe(FieldVisitor& v, Item& i);

struct Input {
  std::optional<Date> today;
  std::optional<EngineYears> engine;  // its usual items come in, unless an item of the same name has its own rule
  std::vector<LogEntry> log;
  std::vector<Item> items;
  double soon_share = 0.1;
  int soon_days = 30;
};
void describe(FieldVisitor& v, Input& in);

enum class State : std::uint8_t { Overdue, DueSoon, Good, NotKnown };
std::string_view word_of(State state);  // "Overdue", "Due soon", "Good", "No proof": nothing to count from
enum class First : std::uint8_t { Distance, Date, NotKnown };

struct ByDistance {
  Distance start;     // summed over clocks
  Distance due;       // summed over clocks
  Distance on_clock;  // the same on the present clock
  Distance left;      // negative: past
};
struct ByDate {
  Date start;
  Date due;
  long days_left = 0;  // negative: past
};
struct Forecast {
  Date expected;
  std::optional<Date> earliest;
  std::optional<Date> latest;  // none: open
};

struct ItemResult {
  std::string name;
  State state = State::NotKnown;
  bool proof = false;
  bool due_for_want_of_proof = false;  // overdue, and no figure says by how much
  std::optional<ByDistance> distance;
  std::optional<ByDate> date;
  std::optional<Forecast> forecast;  // of the distance; only with proof and not past
  First first = First::NotKnown;
  std::optional<Date> next;  // the earlier of date and forecast
  Distance every;            // the rule taken; 0: none
  int months = 0;            // the rule taken; 0: none
  std::string why;           // "every 30,000 mi (48,280 km) or 60 months; common practice, no published source"
};

struct Result {
  std::vector<ItemResult> items;
  std::optional<Distance> odometer;  // last reading, on its clock
  std::optional<Distance> ridden;    // summed over clocks
  std::optional<riding_rate::Rate> rate;
  bool log_in_doubt = false;
  Outcome outcome;
};

tl::expected<Result, Findings> solve(const Input& input);

// The usual items of an engine's years with their intervals and what those rest on.
std::vector<Item> usual_items(EngineYears engine);

// Calendar arithmetic the service book's way: the day clamps to the end of the month.
Date months_after(Date start, int months);
long days_between(Date from, Date to);

// --- pieces for a board of many bikes, which reads each log once and keeps it ---

struct LogPoint {
  std::size_t entry = 0;  // index in the input
  Date date;
  long day = 0;  // since 1970-01-01
  Distance odometer;
  Distance total;  // summed over clocks
};

// From this entry on, a reading r of the clock is r + offset in all.
struct Clock {
  long from_day = 0;
  Distance from_total;
  Distance offset;
};

struct Log {
  std::vector<LogPoint> points;  // by date, entries of one day in the order they were made
  std::vector<Clock> clocks;     // the first is the clock of the first reading
  bool in_doubt = false;         // a clock went back
  Findings findings;             // refusals too
};

Log read_log(std::span<const LogEntry> entries);

// A clock's reading on a day, summed over clocks. On the day of a swap the clock that fits better.
Distance total_of(const Log& log, Distance odometer, long day);

// The log read and the rate found, the long part of the work. Neither depends on the day or on the items, so a board of
// many bikes makes it once and keeps it.
struct Riding {
  Log log;
  std::optional<riding_rate::Rate> rate;
};
Riding riding_of(std::span<const LogEntry> entries);

// What solve() finds, for a log read before: `input.log` is passed over, the fields are taken as checked, and no words
// are made (no working, no figures, no `why`, no remarks on states). A refusal among the findings leaves no items.
Result standing(const Input& input, const Riding& riding);

long day_number(Date date);
Date date_of(long day_number);

Finding dated_after_today(Date day, Date today);  // 1502, for a board that leaves such a reading out

// In words.
std::string why_text(const Item& item);  // the rule, with its source
std::string by_how_much(const ItemResult& item, FunctionView<std::string(Distance)> show);
std::string by_how_much(const ItemResult& item);  // "11,300 mi (18,186 km)", "12 days"
// "Overdue by 300 mi", "Good, 12 days left", "Due now, No proof"; `state` where something else made it worse.
std::string standing_text(const ItemResult& item, State state, FunctionView<std::string(Distance)> show);

}  // namespace camside::inspection_due
