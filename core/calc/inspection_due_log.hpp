// The odometer's log: distances summed over clock swaps; for inspection_due.cpp, and for a board that keeps it.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "calc/inspection_due.hpp"

namespace camside::inspection_due {

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

}  // namespace camside::inspection_due
