#include "units/format.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "units/entry.hpp"
#include "units/exact.hpp"

namespace camside {

namespace {

using exact::Decimal;
using exact::Ratio;

constexpr auto no_number = "no finite number";
constexpr int most_decimals = 30;

// "41,300": an odometer's digits in threes. Parsing takes that comma as a group mark for distances only.
std::string in_threes(std::string number) {
  const std::size_t point = std::min(number.find('.'), number.size());
  const std::size_t first = number.find_first_of("0123456789");
  for (std::size_t at = point; at > first + 3;) number.insert(at -= 3, ",");
  return number;
}

std::string number_text(const Decimal& d, int decimals, Kind kind) {
  std::string text = exact::plain_text(d, decimals);
  return kind == Kind::Distance ? in_threes(std::move(text)) : text;
}

std::string with_unit(const std::string& number, const Unit& unit) {
  return unit.symbol.empty() ? number : number + " " + std::string(unit.symbol);
}

int decimals_for(const Unit& unit, int decimals) {
  return std::min(decimals < 0 ? unit.display_decimals : decimals, most_decimals);
}

std::string rounded_text(const Ratio& value, const Unit& unit, int decimals) {
  const int places = decimals_for(unit, decimals);
  return with_unit(number_text(exact::round_half_even(value, places), places, unit.kind), unit);
}

bool has_value(double base, const Unit& unit) {
  return std::isfinite(base) && !(unit.reciprocal && base == 0.0);
}

}  // namespace

std::string format_decimal(double value, int decimals) {
  if (!std::isfinite(value)) return no_number;
  const int places = std::clamp(decimals, 0, most_decimals);
  return exact::plain_text(exact::round_half_even(ratio_of(exact::shortest_decimal(value)), places), places);
}

std::string format_full(double base, const Unit& unit) {
  if (!has_value(base, unit)) return no_number;
  const Decimal d = exact::shortest_in_unit(base, unit);
  const int magnitude = static_cast<int>(d.digits.size()) + d.exponent;
  if (magnitude > 21 || magnitude < -9) {
    const Decimal mantissa{d.negative, d.digits, 1 - static_cast<int>(d.digits.size())};
    return with_unit(fmt::format("{}e{}", exact::plain_text(mantissa), magnitude - 1), unit);
  }
  return with_unit(number_text(d, 0, unit.kind), unit);
}

std::string format(double base, const Unit& unit, int decimals) {
  if (!has_value(base, unit)) return no_number;
  return rounded_text(ratio_of(exact::shortest_in_unit(base, unit)), unit, decimals);
}

std::string format(Kind kind, double base, System system) {
  return format(base, preferred_unit(kind, system));
}
std::string format(Length v, System system) {
  return format(Kind::Length, v.base(), system);
}
std::string format(Angle v) {
  return format(Kind::Angle, v.base(), System::Metric);
}
std::string format(Distance v, System system) {
  return format(Kind::Distance, v.base(), system);
}
std::string format(Temperature v, System system) {
  return format(Kind::Temperature, v.base(), system);
}

std::string convert(const Entered& entered, const Unit& unit, int decimals) {
  const auto entry = exact::read_entry(entered.kind, entered.text, {entered.unit, entered.flats_per_turn});
  if (!entry || (unit.reciprocal && entry->base.is_zero())) return format(entered.base, unit, decimals);
  Unit scale = unit;
  if (unit.symbol == "flat") {
    scale.numerator = 2;
    scale.denominator = entered.flats_per_turn;
  }
  // Degrees to turns: π stands on both sides and cancels, so nothing is rounded.
  const bool cancels = entry->times_pi && unit.times_pi;
  if (cancels) scale.times_pi = false;
  const Ratio base = entry->times_pi && !cancels ? entry->base * exact::pi() : entry->base;
  return rounded_text(exact::from_base(base, scale), unit, decimals);
}

std::string format_turns_flats(long whole_flats, int flats_per_turn) {
  const long per_turn = std::max(flats_per_turn, 1);
  const long turns = std::labs(whole_flats / per_turn);
  const long flats = std::labs(whole_flats % per_turn);
  const auto counted = [](long n, const char* one) { return fmt::format("{} {}{}", n, one, n == 1 ? "" : "s"); };
  std::string text = whole_flats < 0 ? "\u2212" : "";
  if (turns != 0) text += counted(turns, "turn");
  if (flats != 0 || turns == 0) text += (turns != 0 ? " " : "") + counted(flats, "flat");
  return text;
}

std::string format_date(Date date) {
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                     static_cast<unsigned>(date.day()));
}

}  // namespace camside
