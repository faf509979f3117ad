#include "units/natural.hpp"

#include <algorithm>
#include <bit>

namespace camside {

namespace {

using Limbs = std::vector<std::uint32_t>;
constexpr std::uint64_t base = std::uint64_t{1} << 32;

std::uint32_t low(std::uint64_t v) {
  return static_cast<std::uint32_t>(v & 0xffffffffU);
}
std::uint64_t limb(const Limbs& v, std::size_t i) {
  return i < v.size() ? v[i] : 0;
}

// a[at..] -= q · b; returns what had to be borrowed from above.
std::uint64_t subtract_multiple(Limbs& a, std::size_t at, const Limbs& b, std::uint64_t q) {
  std::uint64_t borrow = 0;
  for (std::size_t i = 0; i < b.size(); ++i) {
    const std::uint64_t take = q * b[i] + borrow;
    borrow = (take >> 32) + (low(take) > a[at + i] ? 1 : 0);
    a[at + i] -= low(take);
  }
  return borrow;
}

void add_back(Limbs& a, std::size_t at, const Limbs& b) {
  std::uint64_t carry = 0;
  for (std::size_t i = 0; i < b.size(); ++i) {
    carry += std::uint64_t{a[at + i]} + b[i];
    a[at + i] = low(carry);
    carry >>= 32;
  }
  a[at + b.size()] += low(carry);
}

// One digit of long division (base 2³²) from the two leading digits; at most one too large after the correction.
std::uint64_t estimate_digit(const Limbs& a, std::size_t at, const Limbs& b) {
  const std::size_t n = b.size();
  const std::uint64_t head = std::uint64_t{a[at + n]} * base + a[at + n - 1];
  std::uint64_t q = head / b[n - 1];
  std::uint64_t rest = head % b[n - 1];
  while (q >= base || q * b[n - 2] > rest * base + a[at + n - 2]) {
    --q;
    rest += b[n - 1];
    if (rest >= base) break;
  }
  return q;
}

}  // namespace

Natural::Natural(std::uint64_t v) : limbs_{low(v), low(v >> 32)} {
  trim();
}

void Natural::trim() {
  while (!limbs_.empty() && limbs_.back() == 0) limbs_.pop_back();
}

Natural Natural::from_digits(std::string_view digits) {
  Natural n;
  for (const char c : digits) {
    std::uint64_t carry = static_cast<std::uint64_t>(c - '0');
    for (std::uint32_t& part : n.limbs_) {
      carry += std::uint64_t{part} * 10;
      part = low(carry);
      carry >>= 32;
    }
    if (carry != 0) n.limbs_.push_back(low(carry));
  }
  return n;
}

Natural Natural::power_of_ten(int n) {
  return from_digits("1" + std::string(static_cast<std::size_t>(n), '0'));
}

int Natural::bits() const {
  if (limbs_.empty()) return 0;
  return static_cast<int>(limbs_.size()) * 32 - std::countl_zero(limbs_.back());
}

std::uint64_t Natural::low64() const {
  return limb(limbs_, 1) * base + limb(limbs_, 0);
}

std::uint32_t Natural::divide_in_place(std::uint32_t divisor) {
  std::uint64_t rest = 0;
  for (auto part = limbs_.rbegin(); part != limbs_.rend(); ++part) {
    rest = rest * base + *part;
    *part = low(rest / divisor);
    rest %= divisor;
  }
  trim();
  return low(rest);
}

std::string Natural::to_digits() const {
  if (is_zero()) return "0";
  std::string reversed;
  for (Natural rest = *this; !rest.is_zero();) {
    std::uint32_t nine = rest.divide_in_place(1'000'000'000);
    for (int i = 0; i < 9 && (nine != 0 || !rest.is_zero()); ++i, nine /= 10)
      reversed.push_back(static_cast<char>('0' + nine % 10));
  }
  std::reverse(reversed.begin(), reversed.end());
  return reversed;
}

Natural operator+(const Natural& a, const Natural& b) {
  Natural sum;
  std::uint64_t carry = 0;
  for (std::size_t i = 0; i < std::max(a.limbs_.size(), b.limbs_.size()); ++i) {
    carry += limb(a.limbs_, i) + limb(b.limbs_, i);
    sum.limbs_.push_back(low(carry));
    carry >>= 32;
  }
  if (carry != 0) sum.limbs_.push_back(low(carry));
  return sum;
}

Natural operator-(const Natural& a, const Natural& b) {
  Natural difference = a;
  std::uint64_t borrow = 0;
  for (std::size_t i = 0; i < a.limbs_.size(); ++i) {
    const std::uint64_t take = limb(b.limbs_, i) + borrow;
    borrow = take > a.limbs_[i] ? 1 : 0;
    difference.limbs_[i] = low(std::uint64_t{a.limbs_[i]} + base - take);
  }
  difference.trim();
  return difference;
}

Natural operator*(const Natural& a, const Natural& b) {
  Natural product;
  product.limbs_.assign(a.limbs_.size() + b.limbs_.size(), 0);
  for (std::size_t i = 0; i < a.limbs_.size(); ++i) {
    std::uint64_t carry = 0;
    for (std::size_t j = 0; j < b.limbs_.size(); ++j) {
      carry += std::uint64_t{a.limbs_[i]} * b.limbs_[j] + product.limbs_[i + j];
      product.limbs_[i + j] = low(carry);
      carry >>= 32;
    }
    product.limbs_[i + b.limbs_.size()] = low(carry);
  }
  product.trim();
  return product;
}

Natural operator<<(const Natural& a, int bits) {
  Natural shifted;
  shifted.limbs_.assign(static_cast<std::size_t>(bits / 32), 0);
  std::uint64_t carry = 0;
  for (const std::uint32_t part : a.limbs_) {
    carry |= std::uint64_t{part} << (bits % 32);
    shifted.limbs_.push_back(low(carry));
    carry >>= 32;
  }
  shifted.limbs_.push_back(low(carry));
  shifted.trim();
  return shifted;
}

std::strong_ordering operator<=>(const Natural& a, const Natural& b) {
  if (a.limbs_.size() != b.limbs_.size()) return a.limbs_.size() <=> b.limbs_.size();
  // By hand: the browser's libc++ 14 has no std::lexicographical_compare_three_way.
  for (std::size_t i = a.limbs_.size(); i-- > 0;) {
    if (a.limbs_[i] != b.limbs_[i]) return a.limbs_[i] <=> b.limbs_[i];
  }
  return std::strong_ordering::equal;
}

// Long division as on paper, in base 2³²: both numbers are first shifted so that the divisor's leading digit is at
// least half the base, which keeps each estimated digit within two of the true one.
Natural::Division Natural::divided_by(const Natural& divisor) const {
  if (*this < divisor) return {Natural{}, *this};
  Division result;
  if (divisor.limbs_.size() == 1) {
    result.quotient = *this;
    result.remainder = Natural(result.quotient.divide_in_place(divisor.limbs_.front()));
    return result;
  }
  const int shift = std::countl_zero(divisor.limbs_.back());
  const Limbs b = (divisor << shift).limbs_;
  Limbs a = (*this << shift).limbs_;
  a.resize(std::max(a.size(), limbs_.size()) + 1, 0);
  result.quotient.limbs_.assign(a.size() - b.size(), 0);
  for (std::size_t at = a.size() - b.size(); at-- > 0;) {
    std::uint64_t q = estimate_digit(a, at, b);
    const std::uint64_t borrow = subtract_multiple(a, at, b, q);
    const bool too_large = borrow > a[at + b.size()];
    a[at + b.size()] -= low(borrow);
    if (too_large) {
      add_back(a, at, b);
      --q;
    }
    result.quotient.limbs_[at] = low(q);
  }
  result.quotient.trim();
  // The remainder is still shifted; shift it back down.
  for (std::size_t i = 0; shift != 0 && i < a.size(); ++i)
    a[i] = low((a[i] >> shift) | (limb(a, i + 1) << (32 - shift)));
  result.remainder.limbs_ = std::move(a);
  result.remainder.trim();
  return result;
}

}  // namespace camside
