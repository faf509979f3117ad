#include "units/exact.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>

namespace camside::exact {

namespace {

// Leading zeros go; what stands before "e" and after it in "1.25e-07" is taken apart.
Decimal taken_apart(std::string_view text) {
  Decimal d;
  const std::size_t e = text.find('e');
  if (e != std::string_view::npos) d.exponent = std::atoi(std::string(text.substr(e + 1)).c_str());
  bool after_point = false;
  for (const char c : text.substr(0, e)) {
    if (c == '-') d.negative = true;
    if (c == '.') after_point = true;
    if (c < '0' || c > '9') continue;
    if (after_point) --d.exponent;
    if (c != '0' || !d.digits.empty()) d.digits.push_back(c);
  }
  return d;
}

Ratio signed_sum(const Ratio& a, const Natural& left, const Ratio& b, const Natural& right, Natural denominator) {
  if (a.negative == b.negative) return {a.negative, left + right, std::move(denominator)};
  if (left >= right) return {a.negative, left - right, std::move(denominator)};
  return {b.negative, right - left, std::move(denominator)};
}

Ratio factor_of(const Unit& unit) {
  const Ratio plain = ratio_of(unit.numerator, unit.denominator);
  return unit.times_pi ? plain * pi() : plain;
}

// Every bit of it.
Ratio binary_value(double finite) {
  int exponent = 0;
  const auto mantissa = static_cast<std::int64_t>(std::ldexp(std::frexp(finite, &exponent), 53));
  const Natural power = Natural{1} << std::abs(exponent - 53);
  const Ratio whole = ratio_of(mantissa);
  return exponent >= 53 ? whole * Ratio{false, power, Natural{1}} : whole * Ratio{false, Natural{1}, power};
}

bool is_base(const Unit& unit) {
  return unit.numerator == 1 && unit.denominator == 1 && unit.zero_hundredths == 0 && !unit.reciprocal &&
         !unit.times_pi;
}

}  // namespace

Ratio ratio_of(const Decimal& d) {
  const Natural whole = Natural::from_digits(d.digits);
  if (d.exponent >= 0) return {d.negative, whole * Natural::power_of_ten(d.exponent), Natural{1}};
  return {d.negative, whole, Natural::power_of_ten(-d.exponent)};
}

Ratio ratio_of(std::int64_t numerator, std::int64_t denominator) {
  return {numerator < 0, Natural(static_cast<std::uint64_t>(std::llabs(numerator))),
          Natural(static_cast<std::uint64_t>(denominator))};
}

Ratio operator+(const Ratio& a, const Ratio& b) {
  return signed_sum(a, a.numerator * b.denominator, b, b.numerator * a.denominator, a.denominator * b.denominator);
}

Ratio operator-(const Ratio& a, const Ratio& b) {
  Ratio opposite = b;
  opposite.negative = !b.negative;
  return a + opposite;
}

Ratio operator*(const Ratio& a, const Ratio& b) {
  return {a.negative != b.negative, a.numerator * b.numerator, a.denominator * b.denominator};
}

Ratio operator/(const Ratio& a, const Ratio& b) {
  return {a.negative != b.negative, a.numerator * b.denominator, a.denominator * b.numerator};
}

const Ratio& pi() {
  static const Ratio value = ratio_of(taken_apart(
      "3.141592653589793238462643383279502884197169399375105820974944592307816406286208998628034825342117068"));
  return value;
}

Ratio to_base(const Ratio& value, const Unit& unit) {
  if (unit.reciprocal) return factor_of(unit) / value;
  return (value - ratio_of(unit.zero_hundredths, 100)) * factor_of(unit);
}

Ratio from_base(const Ratio& base, const Unit& unit) {
  if (unit.reciprocal) return factor_of(unit) / base;
  return base / factor_of(unit) + ratio_of(unit.zero_hundredths, 100);
}

// The quotient is taken to 63 or 64 bits, with the last bit set when anything is left over, so that the one rounding
// from there to the 53 bits of a double sees on which side of a tie the exact value lies.
double nearest_double(const Ratio& r) {
  if (r.is_zero()) return 0.0;
  const int shift = 63 - (r.numerator.bits() - r.denominator.bits());
  const Natural top = shift > 0 ? r.numerator << shift : r.numerator;
  const Natural bottom = shift < 0 ? r.denominator << -shift : r.denominator;
  const auto [quotient, remainder] = top.divided_by(bottom);
  const double magnitude = std::ldexp(static_cast<double>(quotient.low64() | (remainder.is_zero() ? 0U : 1U)), -shift);
  return r.negative ? -magnitude : magnitude;
}

Decimal shortest_decimal(double finite) {
  return without_trailing_zeros(taken_apart(fmt::format("{}", finite)));
}

Decimal round_half_even(const Ratio& r, int decimals) {
  const Natural top = decimals > 0 ? r.numerator * Natural::power_of_ten(decimals) : r.numerator;
  const Natural bottom = decimals < 0 ? r.denominator * Natural::power_of_ten(-decimals) : r.denominator;
  auto [quotient, remainder] = top.divided_by(bottom);
  const auto against_half = (remainder << 1) <=> bottom;
  if (against_half > 0 || (against_half == 0 && quotient.is_odd())) quotient = quotient + Natural{1};
  if (quotient.is_zero()) return {false, "", -decimals};
  return {r.negative, quotient.to_digits(), -decimals};
}

Decimal without_trailing_zeros(Decimal d) {
  while (!d.digits.empty() && d.digits.back() == '0') {
    d.digits.pop_back();
    ++d.exponent;
  }
  if (d.digits.empty()) d = Decimal{};
  return d;
}

// Where few digits were typed, 15 digits of the shortest decimal bring exactly those back. Else 16 or 17 digits of the
// double's own binary value: 17 are always enough to come back, but for temperatures close to the zero of their scale.
Decimal shortest_in_unit(double finite_base, const Unit& unit) {
  Decimal base = shortest_decimal(finite_base);
  if (is_base(unit)) return base;
  const Ratio as_shown = from_base(ratio_of(base), unit);
  if (as_shown.is_zero()) return {};
  const int before_point = static_cast<int>(std::floor(std::log10(std::fabs(nearest_double(as_shown))))) + 1;
  const auto reads_back = [&](const Decimal& d) { return nearest_double(to_base(ratio_of(d), unit)) == finite_base; };
  Decimal found = round_half_even(as_shown, 15 - before_point);
  if (!reads_back(found)) {
    const Ratio as_held = from_base(binary_value(finite_base), unit);
    found = round_half_even(as_held, 16 - before_point);
    if (!reads_back(found)) found = round_half_even(as_held, 17 - before_point);
  }
  return without_trailing_zeros(std::move(found));
}

std::string plain_text(const Decimal& d, int decimals) {
  std::string digits = d.digits;
  if (d.exponent > 0 && !digits.empty()) digits.append(static_cast<std::size_t>(d.exponent), '0');
  std::size_t places = d.exponent < 0 ? static_cast<std::size_t>(-d.exponent) : 0;
  if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
  for (; places < static_cast<std::size_t>(decimals); ++places) digits.push_back('0');
  if (places > 0) digits.insert(digits.size() - places, ".");
  return (d.negative ? "\u2212" : "") + digits;
}

}  // namespace camside::exact
