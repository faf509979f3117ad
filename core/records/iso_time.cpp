#include "records/iso_time.hpp"

#include <fmt/format.h>

#include <chrono>
#include <optional>

#include "units/quantity.hpp"

namespace camside::records {

namespace {

// Reads `digits` digits off the front.
std::optional<int> take_number(std::string_view& rest, std::size_t digits) {
  if (rest.size() < digits) return std::nullopt;
  int value = 0;
  for (const char c : rest.substr(0, digits)) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  rest.remove_prefix(digits);
  return value;
}

bool take(std::string_view& rest, char wanted) {
  if (rest.empty() || rest.front() != wanted) return false;
  rest.remove_prefix(1);
  return true;
}

struct Moment {
  std::int64_t days = 0;  // since 1970-01-01
  int hours = 0;
  int minutes = 0;
  int seconds = 0;
  int milliseconds = 0;
  int offset_minutes = 0;
};

bool take_day(std::string_view& rest, Moment& to) {
  const auto year = take_number(rest, 4);
  if (!year || !take(rest, '-')) return false;
  const auto month = take_number(rest, 2);
  if (!month || !take(rest, '-')) return false;
  const auto day = take_number(rest, 2);
  if (!day) return false;
  const Date date{std::chrono::year{*year}, std::chrono::month{static_cast<unsigned>(*month)},
                  std::chrono::day{static_cast<unsigned>(*day)}};
  if (!date.ok()) return false;
  to.days = std::chrono::sys_days(date).time_since_epoch().count();
  return true;
}

bool take_hours_minutes(std::string_view& rest, int& to_hours, int& to_minutes) {
  const auto hours = take_number(rest, 2);
  if (!hours || *hours > 23 || !take(rest, ':')) return false;
  const auto minutes = take_number(rest, 2);
  if (!minutes || *minutes > 59) return false;
  to_hours = *hours;
  to_minutes = *minutes;
  return true;
}

bool take_seconds(std::string_view& rest, Moment& to) {
  if (!take(rest, ':')) return true;  // may be left out
  const auto seconds = take_number(rest, 2);
  if (!seconds || *seconds > 60) return false;
  to.seconds = *seconds;
  if (!take(rest, '.')) return true;
  std::size_t digits = 0;
  int weight = 100;
  while (const auto digit = take_number(rest, 1)) {
    to.milliseconds += *digit * weight;
    weight /= 10;
    ++digits;
  }
  return digits > 0;
}

bool take_offset(std::string_view& rest, Moment& to) {
  if (take(rest, 'Z')) return true;
  const int sign = !rest.empty() && rest.front() == '-' ? -1 : 1;
  int hours = 0;
  int minutes = 0;
  if (!take(rest, '+') && !take(rest, '-')) return false;
  if (!take_hours_minutes(rest, hours, minutes)) return false;
  to.offset_minutes = sign * (hours * 60 + minutes);
  return true;
}

std::optional<Moment> moment_of(std::string_view text) {
  Moment moment;
  if (!take_day(text, moment)) return std::nullopt;
  if (text.empty()) return moment;
  const bool good = take(text, 'T') && take_hours_minutes(text, moment.hours, moment.minutes) &&
                    take_seconds(text, moment) && take_offset(text, moment) && text.empty();
  return good ? std::optional(moment) : std::nullopt;
}

constexpr std::int64_t in_a_minute = 60'000;
constexpr std::int64_t minutes_in_a_day = std::int64_t{24} * 60;
constexpr std::int64_t in_a_day = minutes_in_a_day * in_a_minute;

}  // namespace

bool is_iso_time(std::string_view text) {
  return moment_of(text).has_value();
}

std::optional<std::int64_t> utc_milliseconds(std::string_view text) {
  const auto m = moment_of(text);
  if (!m) return std::nullopt;
  const std::int64_t minutes_of_day = std::int64_t{m->hours} * 60 + m->minutes - m->offset_minutes;
  return (m->days * minutes_in_a_day + minutes_of_day) * in_a_minute + std::int64_t{m->seconds} * 1000 +
         m->milliseconds;
}

std::string iso_time(std::int64_t utc_milliseconds, int offset_minutes) {
  const std::int64_t local = utc_milliseconds + offset_minutes * in_a_minute;
  const std::int64_t days = local / in_a_day - (local % in_a_day < 0 ? 1 : 0);
  const std::int64_t in_day = local - days * in_a_day;
  const Date date{std::chrono::sys_days(std::chrono::days(days))};
  const int off = offset_minutes < 0 ? -offset_minutes : offset_minutes;
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}.{:03}{}{:02}:{:02}", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()), in_day / 3'600'000,
                     in_day / in_a_minute % 60, in_day / 1000 % 60, in_day % 1000, offset_minutes < 0 ? '-' : '+',
                     off / 60, off % 60);
}

}  // namespace camside::records
