// What must hold for every text and every value, not for chosen ones.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <string>

#include "units/exact.hpp"
#include "units/format.hpp"

namespace camside {
namespace {

constexpr std::array all_kinds{
    Kind::Number,    Kind::Length, Kind::Angle,  Kind::Distance, Kind::Temperature, Kind::TemperatureDifference,
    Kind::Expansion, Kind::Force,  Kind::Torque, Kind::Pressure, Kind::ThreadPitch, Kind::Module,
    Kind::Duration,  Kind::Money};

const Unit& any_unit() {
  const auto units = units_of(*rc::gen::elementOf(all_kinds));
  return units[*rc::gen::inRange<std::size_t>(0, units.size())];
}

std::string any_spelling(const Unit& unit) {
  const std::size_t n = *rc::gen::inRange<std::size_t>(0, unit.aliases.size() + 1);
  return std::string(n == 0 ? unit.symbol : unit.aliases[n - 1]);
}

// A decimal with up to 12 digits before and after the mark, never zero.
std::string any_decimal() {
  const auto digits = *rc::gen::container<std::string>(rc::gen::inRange('0', static_cast<char>('9' + 1)));
  const std::string all = digits.substr(0, 24) + std::to_string(*rc::gen::inRange(1, 10));
  const std::size_t after = *rc::gen::inRange<std::size_t>(0, std::min<std::size_t>(all.size(), 12) + 1);
  const std::string whole = all.substr(0, all.size() - after);
  return *rc::gen::elementOf(std::array<std::string, 3>{"", "-", "\u2212"}) + whole +
         (after == 0 ? "" : "." + all.substr(all.size() - after));
}

std::string any_text(const Unit& unit) {
  return any_decimal() + *rc::gen::elementOf(std::array<std::string, 3>{" ", "", "\u202f"}) + any_spelling(unit);
}

// Any bits but for the extremes, which conversion would carry out of range.
double any_finite() {
  const double mantissa = static_cast<double>(*rc::gen::arbitrary<std::int64_t>() | 1);
  return std::ldexp(mantissa, *rc::gen::inRange(-900, 800));
}

RC_GTEST_PROP(Parse, TextReadAgainGivesTheSameTextAndBits, ()) {
  const Unit& unit = any_unit();
  const std::string text = any_text(unit);
  const auto first = parse(unit.kind, text);
  RC_ASSERT(first);
  RC_ASSERT(first->unit == &unit);
  RC_ASSERT(std::isfinite(first->base));
  const auto again = parse(unit.kind, first->text);
  RC_ASSERT(again);
  RC_ASSERT(again->text == first->text);
  RC_ASSERT(again->base == first->base);
}

// The plain arithmetic of the long double, which knows nothing of the exact fractions.
RC_GTEST_PROP(Parse, IsWithinAnUlpOfPlainArithmetic, ()) {
  const Unit& unit = any_unit();
  const std::string number = any_decimal();
  const auto entered = parse(unit.kind, number + " " + std::string(unit.symbol));
  RC_ASSERT(entered);
  std::string plain = number;
  if (plain.starts_with("\u2212")) plain.replace(0, 3, "-");
  const double rough = unit.to_base(std::strtod(plain.c_str(), nullptr));
  const double scale = std::max(std::fabs(rough), unit.zero_hundredths == 0 ? 0.0 : 300.0);
  RC_ASSERT(std::fabs(rough - entered->base) <= 4.5e-16 * scale);
}

RC_GTEST_PROP(Parse, TakesMinusOnlyInFront, ()) {
  const Unit& unit = any_unit();
  const std::string number = any_decimal();
  RC_PRE(number[0] != '-' && number[0] != '\xe2');
  const auto plus = parse(unit.kind, number + " " + std::string(unit.symbol));
  const auto minus = parse(unit.kind, "-" + number + " " + std::string(unit.symbol));
  RC_ASSERT(plus && minus);
  RC_ASSERT(unit.zero_hundredths != 0 || minus->base == -plus->base);
  RC_ASSERT(!parse(unit.kind, number + "- " + std::string(unit.symbol)));
}

RC_GTEST_PROP(Format, AllDigitsReadBackToTheSameBits, ()) {
  const Unit& unit = any_unit();
  if (unit.zero_hundredths != 0) return;  // close to the zero of its scale a reading has too many digits
  const double base = any_finite();
  const auto again = parse(unit.kind, format_full(base, unit));
  RC_ASSERT(again);
  RC_ASSERT(again->base == base);
}

// Within half a unit of the last place, and never "−0".
RC_GTEST_PROP(Format, RoundsToTheNearestAndNeverShowsMinusNothing, ()) {
  const double value =
      static_cast<double>(*rc::gen::arbitrary<std::int32_t>()) / 1e4 * *rc::gen::inRange(1, 9999) / 1e3;
  const int decimals = *rc::gen::inRange(0, 8);
  std::string text = format_decimal(value, decimals);
  const bool minus = text.starts_with("\u2212");
  if (minus) text.erase(0, 3);
  const double shown = std::strtod(text.c_str(), nullptr);
  RC_ASSERT(!minus || shown > 0.0);
  const double last_bits = 4e-16 * std::fabs(value);  // of reading the text back and of the difference
  RC_ASSERT(std::fabs((minus ? -shown : shown) - value) <= 0.5 * std::pow(10.0, -decimals) + last_bits);
}

// In its own unit, with at least as many places as typed, an entered value shows the digits typed.
RC_GTEST_PROP(Convert, ToTheOwnUnitKeepsTheDigits, ()) {
  const Unit& unit = any_unit();
  RC_PRE(unit.kind != Kind::Distance);  // shown in threes
  const std::string number = any_decimal();
  const auto entered = parse(unit.kind, number + " " + std::string(unit.symbol));
  RC_ASSERT(entered);
  std::string whole = convert(*entered, unit, 12);
  const std::size_t n = whole.find(' ');
  whole.erase(std::min(n, whole.size()));
  const auto back = parse(Kind::Number, whole);
  RC_ASSERT(back);
  RC_ASSERT(back->base == parse(Kind::Number, number)->base);
}

RC_GTEST_PROP(Convert, ThereAndBackIsTheSame, ()) {
  const Kind kind = *rc::gen::elementOf(std::array{Kind::Length, Kind::Force, Kind::Pressure, Kind::ThreadPitch});
  const auto units = units_of(kind);
  const Unit& from = units[*rc::gen::inRange<std::size_t>(0, units.size())];
  const Unit& to = units[*rc::gen::inRange<std::size_t>(0, units.size())];
  const auto entered = parse(kind, std::to_string(*rc::gen::inRange(1, 100000)) + " " + std::string(from.symbol));
  const auto there = parse(kind, convert(*entered, to, 25));
  RC_ASSERT(there);
  RC_ASSERT(convert(*there, from, 3) == convert(*entered, from, 3));
}

RC_GTEST_PROP(Parse, NeverCrashesAndAlwaysGivesAReason, (const std::string& bytes)) {
  for (const Kind kind : all_kinds) {
    const auto entered = parse(kind, bytes);
    if (entered) {
      RC_ASSERT(std::isfinite(entered->base));
    } else {
      RC_ASSERT(!entered.error().reason.empty() && !entered.error().remedy.empty());
    }
  }
}

RC_GTEST_PROP(FormatTurnsFlats, ReadsBack, ()) {
  const int flats_per_turn = *rc::gen::inRange(1, 13);
  const long flats = *rc::gen::inRange(-1000, 1000);
  ParseOptions options;
  options.flats_per_turn = flats_per_turn;
  const auto entered = parse(Kind::Angle, format_turns_flats(flats, flats_per_turn), options);
  RC_ASSERT(entered);
  RC_ASSERT(convert(*entered, *find_unit(Kind::Angle, "flat"), 6) ==
            format_decimal(static_cast<double>(flats), 6) + " flat");
}

}  // namespace
}  // namespace camside
