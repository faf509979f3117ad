#include <algorithm>
#include <chrono>

#include "base/stable_sort.hpp"
#include "calc/inspection_due/inspection_due.hpp"
#include "calc/inspection_due/inspection_due_remarks.hpp"

namespace camside::inspection_due {

namespace {

constexpr Distance slack = Distance::km(1e-6);
constexpr Distance most_per_day = Distance::miles(1500.0);
constexpr Distance very_large = Distance::miles(250'000.0);

std::string path_of(std::size_t entry) {
  return "log[" + std::to_string(entry) + "].odometer";
}

// Readings of one day may have been written down in any order, as long as no clock was swapped that day.
void order_within_days(std::span<const LogEntry> entries, std::vector<std::size_t>& order) {
  const auto swapped = [&](std::size_t i) { return entries[i].new_clock.has_value(); };
  for (auto first = order.begin(); first != order.end();) {
    const auto last =
        std::find_if(first, order.end(), [&](std::size_t i) { return entries[i].date != entries[*first].date; });
    if (std::none_of(first, last, swapped))
      sort_stably(first, last,
                  [&](std::size_t a, std::size_t b) { return *entries[a].odometer < *entries[b].odometer; });
    first = last;
  }
}

std::vector<std::size_t> by_date(std::span<const LogEntry> entries) {
  std::vector<std::size_t> order =
      sorted_indices(entries.size(), [&](std::size_t a, std::size_t b) { return *entries[a].date < *entries[b].date; });
  order_within_days(entries, order);
  return order;
}

bool possible(Distance ridden, long days) {
  return ridden >= -slack && ridden <= most_per_day * static_cast<double>(std::max(1L, days));
}

// A reading ten times too large, seen against the one before or after it on the same clock.
bool tenths_typed(Distance large, Distance neighbour, bool neighbour_is_earlier, long days) {
  const Distance likely = large / 10.0;
  return possible(neighbour_is_earlier ? likely - neighbour : neighbour - likely, days);
}

class Reader {
 public:
  explicit Reader(Log& log) : log_(log) { log_.clocks.push_back({}); }

  void read(std::size_t entry, const LogEntry& e) {
    LogPoint p{entry, *e.date, day_number(*e.date), *e.odometer, *e.odometer + log_.clocks.back().offset};
    if (!log_.points.empty()) compare(log_.points.back(), p);
    log_.points.push_back(p);
    if (e.new_clock) start_clock(p, *e.new_clock);
    swapped_ = e.new_clock.has_value();
  }

 private:
  void compare(const LogPoint& before, LogPoint& now) {
    const Distance ridden = now.total - before.total;
    const long days = now.day - before.day;
    if (ridden < -slack) {
      went_back(before, now, days);
    } else if (!possible(ridden, days)) {
      jumped(before, now, days);
    }
  }

  void went_back(const LogPoint& before, LogPoint& now, long days) {
    if (!swapped_ && tenths_typed(before.odometer, now.odometer, false, days) && before.odometer > 5.0 * now.odometer) {
      log_.findings.push_back(
          remarks::tenths_digit_typed(path_of(before.entry), before.odometer, before.odometer / 10.0));
      return;
    }
    log_.findings.push_back(remarks::clock_went_back(path_of(now.entry), clock_before(before, now), now.odometer));
    log_.in_doubt = true;
    now.total = before.total;
    start_clock(now, now.odometer);
  }

  // What the clock would have shown: the old reading, or the start of a clock just swapped in.
  Distance clock_before(const LogPoint& before, const LogPoint& now) const {
    return before.total - (now.total - now.odometer);
  }

  void jumped(const LogPoint& before, const LogPoint& now, long days) {
    const Distance from = clock_before(before, now);
    if (tenths_typed(now.odometer, from, true, days))
      log_.findings.push_back(remarks::tenths_digit_typed(path_of(now.entry), now.odometer, now.odometer / 10.0));
    else
      log_.findings.push_back(remarks::jump_too_far(
          path_of(now.entry), {from, now.odometer, days, possible(now.odometer / 1.609344 - from, days)}));
  }

  void start_clock(const LogPoint& p, Distance reading) { log_.clocks.push_back({p.day, p.total, p.total - reading}); }

  Log& log_;
  bool swapped_ = false;
};

}  // namespace

long day_number(Date date) {
  return static_cast<long>(std::chrono::sys_days(date).time_since_epoch().count());
}

Date date_of(long day) {
  return Date(std::chrono::sys_days(std::chrono::days(day)));
}

Log read_log(std::span<const LogEntry> entries) {
  Log log;
  Reader reader(log);
  for (const std::size_t i : by_date(entries)) {
    if (any_refusal(log.findings)) return log;
    reader.read(i, entries[i]);
  }
  if (!log.points.empty() && log.points.back().total > very_large)
    log.findings.push_back(remarks::reading_very_large(path_of(log.points.back().entry), log.points.back().odometer));
  if (log.in_doubt) log.findings.push_back(remarks::states_in_doubt());
  return log;
}

Distance total_of(const Log& log, Distance odometer, long day) {
  std::size_t i = 0;
  while (i + 1 < log.clocks.size() && log.clocks[i + 1].from_day < day) ++i;
  Distance best = odometer + log.clocks[i].offset;
  for (++i; i < log.clocks.size() && log.clocks[i].from_day == day; ++i) {
    const Distance other = odometer + log.clocks[i].offset;
    if (abs(other - log.clocks[i].from_total) < abs(best - log.clocks[i].from_total)) best = other;
  }
  return best;
}

Riding riding_of(std::span<const LogEntry> entries) {
  Riding riding{read_log(entries), {}};
  std::vector<riding_rate::Point> points;
  points.reserve(riding.log.points.size());
  for (const LogPoint& p : riding.log.points) points.push_back({static_cast<double>(p.day), p.total.in_km()});
  riding.rate = riding_rate::theil_sen(points);
  return riding;
}

Finding dated_after_today(Date day, Date today) {
  return remarks::day_after_today("", day, today);
}

}  // namespace camside::inspection_due
