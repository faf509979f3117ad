#include "findings/remark.hpp"

#include <fmt/format.h>

#include <cmath>

#include "base/harmless.hpp"
#include "units/format.hpp"

namespace camside::remarks {

namespace {

std::string grouped(double value) {
  std::string digits = fmt::format("{:.0f}", std::abs(value));
  for (std::size_t at = digits.size(); at > 3;) digits.insert(at -= 3, ",");
  return value <= -0.5 ? "−" + digits : digits;
}

}  // namespace

std::string repeated(std::string_view text) {
  return fmt::format("“{}”", harmless_start(text, 60));
}

std::string inch_and_mm(Length v, int mm_decimals) {
  return fmt::format("{} in ({} mm)", format_decimal(v.in_inches(), mm_decimals + 1),
                     format_decimal(v.in_mm(), mm_decimals));
}

std::string mm_only(Length v, int decimals) {
  return fmt::format("{} mm", format_decimal(v.in_mm(), decimals));
}

std::string miles_and_km(Distance d) {
  return fmt::format("{} mi ({} km)", grouped(d.in_miles()), grouped(d.in_km()));
}

std::string trimmed(double value, int most, std::size_t least) {
  std::string text = format_decimal(value, most);
  const std::size_t point = text.find('.');
  if (point == std::string::npos) return text;
  while (text.size() > point + 1 + least && text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string short_inches(Length v) {
  return trimmed(v.in_inches(), 5, 3) + " in";
}

std::string short_inch_and_mm(Length v) {
  return fmt::format("{} ({} mm)", short_inches(v), trimmed(v.in_mm(), 4, 2));
}

}  // namespace camside::remarks
