#include "records/strict_json.hpp"

#include <gtest/gtest.h>

#include <string>

namespace camside::records {
namespace {

using namespace std::string_literals;

int refusal_of(std::string_view text) {
  const auto read = read_json(text);
  return read ? 0 : read.error().number;
}

std::string words_of(std::string_view text) {
  const auto read = read_json(text);
  return read ? "" : read.error().text;
}

std::string nested(std::size_t levels) {
  return std::string(levels, '[') + std::string(levels, ']');
}

TEST(StrictJson, TakesEveryTypeOfValue) {
  const auto read = read_json(R"({"a": [1, -2, 0.5, 1e3], "b": {"c": true, "d": null}, "e": "ü\n\u00e4"})");
  ASSERT_TRUE(read) << read.error().text;
  EXPECT_EQ((*read)["a"][1], -2);
  EXPECT_EQ((*read)["b"]["c"], true);
  EXPECT_EQ((*read)["e"], "ü\nä");
}

TEST(StrictJson, KeepsTheOrderOfNames) {
  EXPECT_EQ(write_json(*read_json(R"({"z": 1, "a": 2})")), "{\"z\": 1, \"a\": 2}\n");
}

TEST(StrictJson, KeepsTheDigitsOfNumbers) {
  for (const std::string digits :
       {"0.10", "1.0000", "12345678901234567890123", "1E5", "3.14159265358979323846", "7", "0.1"}) {
    const auto read = read_json("[" + digits + "]");
    ASSERT_TRUE(read) << digits;
    EXPECT_TRUE(is_number((*read)[0])) << digits;
    EXPECT_EQ(text_of((*read)[0]), digits);
    EXPECT_EQ(write_json(*read), "[" + digits + "]\n");
    EXPECT_EQ(number_of((*read)[0]), std::stod(digits));
    EXPECT_EQ(text_of(number_from(digits)), digits);
    EXPECT_TRUE(is_number(number_from(digits)));
  }
  EXPECT_TRUE(number_from("0,25").is_string());
  EXPECT_TRUE(number_from(" 1").is_string());
  EXPECT_TRUE(number_from("1e999").is_string());
}

TEST(StrictJson, SkipsAByteOrderMarkInFront) {
  EXPECT_EQ(refusal_of("\xEF\xBB\xBF{}"), 0);
  EXPECT_EQ(refusal_of("{\xEF\xBB\xBF}"), 103);
}

TEST(StrictJson, RefusesWhatIsTooLarge) {
  std::string text = "[" + std::string(largest_file - 2, ' ') + "]";
  EXPECT_EQ(refusal_of(text), 0);
  EXPECT_EQ(refusal_of(text + " "), 100);
}

TEST(StrictJson, RefusesMoreValuesThanItCanHold) {
  std::string text = "[0";
  for (std::size_t n = 2; n < most_values; ++n) text += ",0";
  EXPECT_EQ(refusal_of(text + "]"), 0);
  EXPECT_EQ(refusal_of(text + ",0]"), 125);
}

TEST(StrictJson, HandsOverTheItemsOfOneListAsTheyCome) {
  std::vector<std::string> items;
  const auto take = [&items](Json&& item) {
    items.push_back(write_json_line(item));
    return std::optional<Finding>();
  };
  const auto head =
      read_json_list(R"({"a": [1, [2]], "list": [{"list": [3]}, 4, [5, 6], "7"], "b": {"list": [8]}})", "list", take);
  ASSERT_TRUE(head);
  EXPECT_EQ(items, (std::vector<std::string>{R"({"list": [3]})", "4", "[5, 6]", R"("7")"}));
  EXPECT_EQ(write_json_line(*head), R"({"a": [1, [2]], "list": [], "b": {"list": [8]}})");
}

TEST(StrictJson, RefusesWhatIsNotUtf8) {
  EXPECT_EQ(refusal_of("[\"\xFF\"]"), 101);
  EXPECT_EQ(refusal_of("[\"\xC0\xAF\"]"), 101);          // overlong
  EXPECT_EQ(refusal_of("[\"\xED\xA0\x80\"]"), 101);      // surrogate
  EXPECT_EQ(refusal_of("[\"\xF4\x90\x80\x80\"]"), 101);  // above U+10FFFF
  EXPECT_EQ(refusal_of("[\"\xE2\x82"), 101);             // cut in the middle
  EXPECT_EQ(refusal_of("[\"\xE2\x82\xAC \xF0\x9F\x94\xA7\"]"), 0);
  EXPECT_NE(words_of("[\n \"\xFF\"]").find("line 2, column 3"), std::string::npos);
}

TEST(StrictJson, RefusesNulBytesEverywhere) {
  EXPECT_EQ(refusal_of("{}\0"s), 102);
  EXPECT_EQ(refusal_of("{}\0{}"s), 102);
  EXPECT_EQ(refusal_of("[\"a\0b\"]"s), 102);
  EXPECT_EQ(refusal_of("[\"a\\u0000b\"]"), 102);
}

TEST(StrictJson, RefusesANameThatStandsTwice) {
  EXPECT_EQ(refusal_of(R"({"a": 1, "a": 1})"), 105);
  EXPECT_EQ(refusal_of(R"([{"b": {"a": 1, "c": 2, "a": 3}}])"), 105);
  EXPECT_EQ(refusal_of("{\"a\": 1, \"\\u0061\": 1}"), 105);
  EXPECT_EQ(refusal_of(R"({"a": {"a": 1}})"), 0);
  EXPECT_NE(words_of("{\"a\": 1,\n\"a\": 1}").find("line 2"), std::string::npos);
}

TEST(StrictJson, RefusesWhatIsTooDeepOrTooWide) {
  EXPECT_EQ(refusal_of(nested(deepest_level)), 0);
  EXPECT_EQ(refusal_of(nested(deepest_level + 1)), 106);
  EXPECT_EQ(refusal_of(std::string(1'000'000, '[')), 106);
  EXPECT_EQ(refusal_of(std::string(100'000, '{')), 103);
  std::string wide = "{\"n0\": 0";
  for (std::size_t i = 1; i < most_names; ++i) wide += ", \"n" + std::to_string(i) + "\": 0";
  EXPECT_EQ(refusal_of(wide + "}"), 0);
  EXPECT_EQ(refusal_of(wide + ", \"more\": 0}"), 107);
}

TEST(StrictJson, RefusesWhatEndsTooEarly) {
  for (const char* text : {"{", "[1, 2", "{\"a\": ", "{\"a", "[\"text", "tru", "[1,", "-"})
    EXPECT_EQ(refusal_of(text), 104) << text;
}

TEST(StrictJson, RefusesNumbersThatOverflow) {
  EXPECT_EQ(refusal_of("[1e400]"), 108);
  EXPECT_EQ(refusal_of("[-1e400]"), 108);
  EXPECT_EQ(refusal_of("[1e-400]"), 0);
  EXPECT_EQ(refusal_of("[NaN]"), 103);
  EXPECT_EQ(refusal_of("[Infinity]"), 103);
}

TEST(StrictJson, RefusesCommentsAndTrailingText) {
  EXPECT_EQ(refusal_of("{} x"), 103);
  EXPECT_NE(words_of("{} x").find("more text after the end"), std::string::npos);
  EXPECT_NE(words_of("{}\n{}").find("line 2, column 1 there is more text"), std::string::npos);
  EXPECT_NE(words_of("[1, // one\n2]").find("comment"), std::string::npos);
  EXPECT_NE(words_of("/* a */ {}").find("comment"), std::string::npos);
}

TEST(StrictJson, RefusesLooseSyntax) {
  for (const char* text : {"[1,]", "{\"a\": 1,}", "{a: 1}", "{'a': 1}", "[01]", "[+1]", "[.5]", "[1.]", "[0x1F]",
                           "[\"\t\"]", "[\"\\x\"]", "[\"\\ud800\"]", "[1 2]", "[,1]", "True", "{1: 2}", "]"})
    EXPECT_EQ(refusal_of(text), 103) << text;
  EXPECT_EQ(refusal_of(""), 109);
  EXPECT_EQ(refusal_of(" \n\t"), 109);
  EXPECT_EQ(refusal_of("\xEF\xBB\xBF"), 109);
}

TEST(StrictJson, WritesLongListsOnSeveralLinesAndReadsThemBack) {
  Json list = Json::array();
  for (int i = 0; i < 40; ++i) list.push_back({{"angle", "45°"}, {"reading", "0.0031 in"}});
  const std::string text = write_json(Json{{"entered", list}});
  EXPECT_NE(text.find("\n    {\"angle\": \"45°\", \"reading\": \"0.0031 in\"},\n"), std::string::npos) << text;
  EXPECT_EQ(write_json(*read_json(text)), text);
}

}  // namespace
}  // namespace camside::records
