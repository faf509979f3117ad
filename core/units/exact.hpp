// Exact arithmetic behind parse and format: decimals as typed, fractions of whole numbers, and the one rounding to a
// double or to a number of decimals at the end. Nothing here depends on the locale.
#pragma once

#include <string>

#include "units/natural.hpp"
#include "units/unit.hpp"

namespace camside::exact {

// ± digits · 10^exponent. No leading zeros; "" is zero.
struct Decimal {
  bool negative = false;
  std::string digits;
  int exponent = 0;
};

struct Ratio {
  bool negative = false;
  Natural numerator;
  Natural denominator{1};
  bool is_zero() const { return numerator.is_zero(); }
};

Ratio ratio_of(const Decimal& d);
Ratio ratio_of(std::int64_t numerator, std::int64_t denominator = 1);  // denominator > 0
Ratio operator+(const Ratio& a, const Ratio& b);
Ratio operator-(const Ratio& a, const Ratio& b);
Ratio operator*(const Ratio& a, const Ratio& b);
Ratio operator/(const Ratio& a, const Ratio& b);  // b not zero

// π to 100 digits: enough for the nearest double of any typed angle.
const Ratio& pi();

// In the base unit of the unit's kind, and back. A reciprocal unit needs a value other than zero.
Ratio to_base(const Ratio& value, const Unit& unit);
Ratio from_base(const Ratio& base, const Unit& unit);

// The nearest double, ties to even; infinite when too large for one.
double nearest_double(const Ratio& r);

Decimal shortest_decimal(double finite);                // that reads back as the same double
Decimal round_half_even(const Ratio& r, int decimals);  // decimals may be negative: −2 rounds to hundreds
Decimal without_trailing_zeros(Decimal d);

// The shortest decimal in the unit that reads back as the same double in the base unit.
Decimal shortest_in_unit(double finite_base, const Unit& unit);

// "−0.0031", no exponent, with the true minus. At least `decimals` places after the point.
std::string plain_text(const Decimal& d, int decimals = 0);

}  // namespace camside::exact
