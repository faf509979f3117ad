// A stranger's text may not steer a terminal, turn the line round or break it.
#include "base/harmless.hpp"

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

namespace camside {
namespace {

TEST(Harmless, WhatSteersBecomesAQuestionMark) {
  const std::vector<std::pair<std::string, std::string>> cases{
      {"\x1b[31mred", "?[31mred"},
      {"bell\a", "bell?"},
      {"over\rwritten", "over?written"},
      {"\x7f", "?"},
      {"\xc2\x9b"
       "31m",
       "?31m"},
      {"\xe2\x80\xae"
       "cba",
       "?cba"},
      {"\xe2\x81\xa6"
       "x\xe2\x81\xa9",
       "?x?"},
      {"\xe2\x80\xa8=1", "?=1"},
      {"\xef\xbb\xbf"
       "first",
       "?first"},
      {"a\nb", "a?b"},
      {"\xc0\xaf", "??"},
      {"\xed\xa0\x80", "???"},
      {"\xf4\x90\x80\x80", "????"},
      {"cut \xe2\x80", "cut ??"},
  };
  for (const auto& [text, shown] : cases) EXPECT_EQ(harmless(text), shown);
}

TEST(Harmless, WhatPeopleWriteStays) {
  for (const std::string text :
       {"Brindle", "größer − 1 °C", "0.0031 in (78.7 µm)", "二輪車", "🏍 at last", "“quoted…”", ""})
    EXPECT_EQ(harmless(text), text);
}

TEST(Harmless, LinesStayWhereTheyAreMeant) {
  EXPECT_EQ(harmless_lines("one\ntwo\r\nthree\x1b\rfour"), "one\ntwo\r\nthree??four");
}

TEST(Harmless, InJsonItIsTheSameTextWrittenOtherwise) {
  EXPECT_EQ(harmless_json("\"a\xe2\x80\xae"
                          "b\xc2\x9b"
                          "c\x7f µ\""),
            "\"a\\u202eb\\u009bc\\u007f µ\"");
}

TEST(Harmless, AStartIsCutBetweenCharacters) {
  EXPECT_EQ(harmless_start("Brindle", 7), "Brindle");
  EXPECT_EQ(harmless_start("Brindle", 6), "Brindl…");
  EXPECT_EQ(harmless_start("aµµ", 4), "aµ…");
  EXPECT_EQ(harmless_start("\x1b\x1b\x1b", 2), "??…");
}

}  // namespace
}  // namespace camside
