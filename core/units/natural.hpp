// Whole numbers without an upper limit, as many digits as somebody typed. Only what exact conversion needs: a typed
// decimal times a unit's exact factor, divided once, rounded once.
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace camside {

class Natural {
 public:
  Natural() = default;
  explicit Natural(std::uint64_t v);
  static Natural from_digits(std::string_view digits);  // decimal digits only
  static Natural power_of_ten(int n);                   // n ≥ 0

  bool is_zero() const { return limbs_.empty(); }
  bool is_odd() const { return !limbs_.empty() && (limbs_.front() & 1U) != 0; }
  int bits() const;               // 0 for zero, 3 for 4..7
  std::uint64_t low64() const;    // the lowest 64 bits
  std::string to_digits() const;  // "0" for zero

  friend Natural operator+(const Natural& a, const Natural& b);
  friend Natural operator-(const Natural& a, const Natural& b);  // a ≥ b
  friend Natural operator*(const Natural& a, const Natural& b);
  friend Natural operator<<(const Natural& a, int bits);
  friend bool operator==(const Natural&, const Natural&) = default;
  friend std::strong_ordering operator<=>(const Natural& a, const Natural& b);

  struct Division;
  Division divided_by(const Natural& divisor) const;  // divisor > 0

 private:
  using Limbs = std::vector<std::uint32_t>;
  void trim();
  std::uint32_t divide_in_place(std::uint32_t divisor);  // returns the remainder
  Limbs limbs_;                                          // lowest first, no leading zeros
};

struct Natural::Division {
  Natural quotient;
  Natural remainder;
};

}  // namespace camside
