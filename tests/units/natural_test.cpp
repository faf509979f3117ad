#include "units/natural.hpp"

#include <gtest/gtest.h>

namespace camside {
namespace {

Natural n(const char* digits) {
  return Natural::from_digits(digits);
}

TEST(Natural, ReadsAndShowsDigits) {
  for (const char* digits : {"1", "9", "4294967295", "4294967296", "18446744073709551616", "1000000000000000000000000"})
    EXPECT_EQ(n(digits).to_digits(), digits);
  EXPECT_EQ(n("000").to_digits(), "0");
  EXPECT_TRUE(n("000").is_zero());
  EXPECT_EQ(Natural::power_of_ten(20).to_digits(), "100000000000000000000");
}

TEST(Natural, CountsBits) {
  EXPECT_EQ(Natural{}.bits(), 0);
  EXPECT_EQ(Natural{1}.bits(), 1);
  EXPECT_EQ(Natural{7}.bits(), 3);
  EXPECT_EQ(n("18446744073709551616").bits(), 65);
  EXPECT_EQ(n("18446744073709551617").low64(), 1U);
}

TEST(Natural, AddsSubtractsAndMultiplies) {
  EXPECT_EQ((n("18446744073709551615") + n("1")).to_digits(), "18446744073709551616");
  EXPECT_EQ((n("18446744073709551616") - n("1")).to_digits(), "18446744073709551615");
  EXPECT_EQ((n("340282366920938463463374607431768211455") * n("340282366920938463463374607431768211455")).to_digits(),
            "115792089237316195423570985008687907852589419931798687112530834793049593217025");
  EXPECT_TRUE((n("12") * Natural{}).is_zero());
  EXPECT_EQ((n("3") << 100).to_digits(), "3802951800684688204490109616128");
}

TEST(Natural, Orders) {
  EXPECT_LT(n("99"), n("100"));
  EXPECT_LT(n("4294967296"), n("18446744073709551616"));
  EXPECT_GT(n("8589934593"), n("4294967299"));
}

TEST(Natural, DividesWithRemainder) {
  const auto [q, r] = n("1000000000000000000000000000000000007").divided_by(n("33333333333333333333"));
  EXPECT_EQ(q.to_digits(), "30000000000000000");
  EXPECT_EQ(r.to_digits(), "10000000000000007");
  const auto small = n("7").divided_by(n("8"));
  EXPECT_TRUE(small.quotient.is_zero());
  EXPECT_EQ(small.remainder.to_digits(), "7");
}

// The estimated digit is one too large and has to be taken back: dividend and divisor made for that case.
TEST(Natural, TakesBackADigitEstimatedTooLarge) {
  const Natural divisor = (Natural{0x80000000U} << 64) + Natural{1};
  const Natural dividend = (Natural{0x80000000U} << 96) - Natural{1};
  const auto [q, r] = dividend.divided_by(divisor);
  EXPECT_EQ(q * divisor + r, dividend);
  EXPECT_LT(r, divisor);
}

}  // namespace
}  // namespace camside
