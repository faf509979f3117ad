#include "work/day_as_written.hpp"

#include <charconv>
#include <optional>
#include <vector>

#include "units/format.hpp"
#include "units/quantity.hpp"

namespace camside::work {

namespace {

struct Written {
  std::vector<std::string_view> parts;
  char mark = 0;  // between them
};

bool is_mark(char c) {
  return c == '.' || c == '/' || c == '-' || c == ' ';
}

// "14. 6. 2019" has marks of two kinds in a row; the first counts.
Written cut(std::string_view text) {
  Written all;
  std::size_t from = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    if (i < text.size() && !is_mark(text[i])) continue;
    if (i > from) all.parts.push_back(text.substr(from, i - from));
    if (i < text.size() && all.mark == 0) all.mark = text[i];
    from = i + 1;
  }
  return all;
}

std::optional<int> number(std::string_view digits) {
  int value = 0;
  const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  const bool whole = read.ec == std::errc{} && read.ptr == digits.data() + digits.size();
  return whole ? std::optional(value) : std::nullopt;
}

std::optional<Date> date(int year, int month, int day) {
  if (year < 1900 || month < 1 || day < 1) return {};
  const Date d{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
               std::chrono::day{static_cast<unsigned>(day)}};
  return d.ok() ? std::optional(d) : std::nullopt;
}

// Points put the day first, strokes may put either: one above 12 tells.
std::optional<Date> day_month_year(int first, int second, int year, char mark) {
  if (mark == '.' || first > 12 || first == second) return date(year, second, first);
  return second > 12 ? date(year, first, second) : std::nullopt;
}

std::optional<Date> read(const Written& w) {
  std::vector<int> n;
  for (const std::string_view part : w.parts) {
    const auto value = number(part);
    if (!value) return {};
    n.push_back(*value);
  }
  const bool year_first = !w.parts.empty() && w.parts.front().size() == 4;
  const bool year_last = !w.parts.empty() && w.parts.back().size() == 4;
  if (n.size() == 3 && year_first) return date(n[0], n[1], n[2]);
  if (n.size() == 3 && year_last) return day_month_year(n[0], n[1], n[2], w.mark);
  if (n.size() == 2 && year_first) return date(n[0], n[1], 1);
  if (n.size() == 2 && year_last) return date(n[1], n[0], 1);
  return {};
}

}  // namespace

std::string day_as_written(std::string_view text) {
  const auto day = read(cut(text));
  return day ? format_date(*day) : std::string(text);
}

}  // namespace camside::work
