// What we add to the library: the two segments, the room there is, and where a module lies. That phones read what comes
// out of it is tried by another program on the screen itself (tests/browser/code.mjs).
#include "exchange/qr_code.hpp"

#include <gtest/gtest.h>

#include <array>
#include <string>

namespace camside::records {
namespace {

const std::string address = "https://camside.example/#bike=";

std::string some_digits(std::size_t count) {
  std::string digits;
  for (std::size_t i = 0; i < count; ++i) digits += static_cast<char>('0' + i * i % 10);
  return digits;
}

int version_for(std::size_t digits) {
  const auto code = exchange::qr_code(address, some_digits(digits));
  return code ? code->version() : 0;
}

// Data bytes of versions 1 to 25 with error correction L: ISO/IEC 18004, table 7.
constexpr std::array<std::size_t, 25> data_bytes{19,  34,  55,  80,  108, 136, 156, 194, 232,  274,  324,  370, 428,
                                                 461, 523, 589, 647, 721, 795, 861, 932, 1006, 1094, 1174, 1276};

// Digits that a version holds behind the address: each segment has 4 bits of mode and its length (table 3), three
// digits take 10 bits, two 7, one 4.
std::size_t capacity(std::size_t version) {
  const std::size_t lengths = version < 10 ? 8 + 10 : 16 + 12;
  const std::size_t bits = 8 * data_bytes[version - 1] - 4 - 4 - lengths - 8 * address.size();
  return bits / 10 * 3 + (bits % 10 >= 7 ? 2 : bits % 10 >= 4 ? 1 : 0);
}

TEST(QrCode, IsTheSmallestVersionThatTheStandardHasRoomIn) {
  for (int version = 3; version <= exchange::most_version; ++version) {  // the address alone needs the third
    const std::size_t most = capacity(static_cast<std::size_t>(version));
    EXPECT_EQ(version_for(most), version);
    EXPECT_EQ(version_for(most + 1), version == exchange::most_version ? 0 : version + 1);
  }
}

TEST(QrCode, SaysHowMuchThereIsRoomFor) {
  EXPECT_EQ(exchange::most_digits(address.size()), capacity(exchange::most_version));
  EXPECT_EQ(exchange::most_digits(0), 3051U) << "the 3057 of the standard less what an empty address takes";
  EXPECT_EQ(exchange::most_digits(10000), 0U);
}

TEST(QrCode, WhatIsFarTooLongIsNone) {
  EXPECT_FALSE(exchange::qr_code(std::string(20000, 'a'), "1"));
  EXPECT_FALSE(exchange::qr_code(std::string(1275, 'a'), "1"));
  EXPECT_FALSE(exchange::qr_code("", some_digits(100000)));
}

TEST(QrCode, TheSideGrowsByFourModulesAVersion) {
  EXPECT_EQ(exchange::qr_code("", "0123456789")->side(), 21);
  EXPECT_EQ(exchange::qr_code("", "")->version(), 1);
  EXPECT_EQ(exchange::qr_code(address, some_digits(capacity(exchange::most_version)))->side(), 117);
}

// Three corners with a finder, timing between them, and the one module that is always dark (figure 25).
TEST(QrCode, ModulesLieWhereTheStandardPutsThem) {
  const auto code = exchange::qr_code(address, some_digits(1000));
  ASSERT_TRUE(code);
  const int end = code->side() - 1;
  for (int i = 0; i < 7; ++i) {
    EXPECT_TRUE(code->dark(i, 0) && code->dark(end - i, 0) && code->dark(0, end - i)) << i;
    EXPECT_FALSE(code->dark(i, 7) || code->dark(end - i, 7) || code->dark(7, end - i)) << i;
  }
  for (int i = 8; i < end - 8; ++i) EXPECT_EQ(code->dark(i, 6), i % 2 == 0) << i;
  EXPECT_TRUE(code->dark(8, end - 7));
}

}  // namespace
}  // namespace camside::records
