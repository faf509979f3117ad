#include "records/iso_time.hpp"

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

bool take_day(std::string_view& rest) {
  const auto year = take_number(rest, 4);
  if (!year || !take(rest, '-')) return false;
  const auto month = take_number(rest, 2);
  if (!month || !take(rest, '-')) return false;
  const auto day = take_number(rest, 2);
  if (!day) return false;
  return Date{std::chrono::year{*year}, std::chrono::month{static_cast<unsigned>(*month)},
              std::chrono::day{static_cast<unsigned>(*day)}}
      .ok();
}

bool take_hours_minutes(std::string_view& rest) {
  const auto hours = take_number(rest, 2);
  if (!hours || *hours > 23 || !take(rest, ':')) return false;
  const auto minutes = take_number(rest, 2);
  return minutes && *minutes <= 59;
}

bool take_seconds(std::string_view& rest) {
  if (!take(rest, ':')) return true;  // may be left out
  const auto seconds = take_number(rest, 2);
  if (!seconds || *seconds > 60) return false;
  if (!take(rest, '.')) return true;
  std::size_t digits = 0;
  while (take_number(rest, 1)) ++digits;
  return digits > 0;
}

bool take_offset(std::string_view& rest) {
  if (take(rest, 'Z')) return true;
  return (take(rest, '+') || take(rest, '-')) && take_hours_minutes(rest);
}

}  // namespace

bool is_iso_time(std::string_view text) {
  if (!take_day(text)) return false;
  if (text.empty()) return true;
  return take(text, 'T') && take_hours_minutes(text) && take_seconds(text) && take_offset(text) && text.empty();
}

}  // namespace camside::records
