// What a JSON reader must accept and must reject, class by class, each written out here: RFC 8259's grammar, and what
// we refuse beyond it (RFC 7493: names twice; lone surrogates; NUL; comments; too deep; numbers too large for a
// double).
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "records/strict_json.hpp"

namespace camside::records {
namespace {

using namespace std::string_literals;

struct Class {
  const char* name;
  std::vector<std::string> texts;
};

const std::vector<Class> must_accept{
    {"empty containers", {"[]", "{}", "[[]]", "[{}]", "{\"a\":{}}", "[[[[]]]]"}},
    {"a scalar alone", {"0", "-0", "1.5", "\"\"", "\"a\"", "true", "false", "null", " 1 ", "\n\"x\"\t"}},
    {"blanks anywhere", {" [ 1 , 2 ] ", "\t{\r\n\"a\" : 1 }\n", "[\n\n]", "[1 ]", "[ 1]", "{\"a\":\t1}"}},
    {"whole numbers", {"[0]", "[-0]", "[10]", "[-123]", "[123456789012345678901234567890]", "[-9223372036854775809]"}},
    {"fractions", {"[0.0]", "[-0.0]", "[0.10]", "[123.456]", "[-0.000000000000000000000000001]"}},
    {"powers of ten", {"[1e1]", "[1E1]", "[1e+1]", "[1e-1]", "[0e0]", "[0E+00]", "[1.5e10]", "[1e-400]", "[123e45]"}},
    {"escapes",
     {R"(["\"\\\/\b\f\n\r\t"])", R"(["\u0041"])", R"(["\u00e9"])", R"(["\uABCD\uabcd"])", R"(["\\u0000"])",
      R"(["\u0001"])", R"(["\u007f"])", R"(["\u2028\u2029"])", R"(["\ufffe\uffff"])", R"(["a\/b"])"}},
    {"surrogate pairs", {R"(["\ud834\udd1e"])", R"(["\uD83D\uDE00"])", R"(["\udbff\udfff"])"}},
    {"raw UTF-8",
     {"[\"ä\"]", "[\"€\"]", "[\"\xF0\x9F\x94\xA7\"]", "[\"\x7f\"]", "[\"\xEF\xBF\xBF\"]", "[\"\xE2\x80\xA8\"]",
      "[\"\xF4\x8F\xBF\xBF\"]", "{\"ключ\": 1}"}},
    {"names",
     {"{\"\":0}", "{\"a\":1,\"b\":2}", "{\"a\":{\"a\":1}}", "[{\"a\":1},{\"a\":1}]", "{\"a b\":1}",
      R"({"\u0061":1,"b":2})", R"({"\n":1})"}},
    {"a mark in front", {"\xEF\xBB\xBF[]", "\xEF\xBB\xBF {}"}},
    {"many items",
     {"[" + std::string(1000, ' ') + "1]", "[1" +
                                               [] {
                                                 std::string s;
                                                 for (int i = 0; i < 2000; ++i) s += ",1";
                                                 return s;
                                               }() +
                                               "]"}},
};

const std::vector<Class> must_reject{
    {"nothing", {"", " ", "\n", "\xEF\xBB\xBF"}},
    {"unclosed",
     {"[", "{", "[1", "[1,", "{\"a\"", "{\"a\":", "{\"a\":1", "{\"a\":1,", "\"abc", "[\"a", "[[]", "{\"a\":[}",
      "[\"\\\"]"}},
    {"closed twice or wrongly", {"[]]", "{}}", "]", "}", "[}", "{]", "[1}", "{\"a\":1]", "[][]", "{}{}"}},
    {"commas",
     {"[1,]", "[,1]", "[1,,2]", "[,]", "{\"a\":1,}", "{,}", "{,\"a\":1}", "{\"a\":1,,\"b\":2}", "[1 2]", "[1;2]", "1,",
      "[\"a\" \"b\"]", "[3[4]]", "{\"a\":1 \"b\":2}"}},
    {"colons",
     {"{\"a\" 1}", "{\"a\"::1}", "{:1}", "{\"a\":}", "{\"a\",1}", "[\"a\":1]", "{\"a\"=1}", "{\"a\":1:2}",
      "{\"a\":\"b\":\"c\"}"}},
    {"names that are no strings", {"{a:1}", "{1:1}", "{null:1}", "{true:1}", "{[]:1}", "{'a':1}", "{\"a\":1,b:2}"}},
    {"numbers", {"[01]",  "[-01]",   "[00]",   "[+1]",    "[.5]",    "[-.5]",   "[1.]",     "[-1.]", "[1.e1]",
                 "[1e]",  "[1e+]",   "[1E-]",  "[1e1.5]", "[1e1e1]", "[1.2.3]", "[--1]",    "[-]",   "[1-]",
                 "[1+2]", "[0x1F]",  "[0b1]",  "[0o7]",   "[1_000]", "[1 000]", "[1,000.]", "[-a]",  "[1a]",
                 "[1/2]", "[0.1.2]", "[2.e3]", "[9.e+]",  "[0e]",    "[0e+]",   "[ⅷ]",      "[１]",  "[½]"}},
    {"numbers without an end",
     {"[NaN]", "[nan]", "[Infinity]", "[-Infinity]", "[inf]", "[1e400]", "[-1e400]", "[1e99999999999]"}},
    {"words",
     {"[True]", "[TRUE]", "[False]", "[Null]", "[nul]", "[tru]", "[truth]", "[fals]", "[undefined]", "[nulll]", "[a]",
      "a"}},
    {"quotes", {"['a']", "[`a`]", "[“a”]", "[\"a]", "[a\"]", "'a'", "[\"a\"b]", "[\"\"\"]"}},
    {"escapes",
     {R"(["\x41"])", R"(["\a"])", R"(["\v"])", R"(["\0"])", R"(["\'"])", R"(["\u"])", R"(["\u0"])", R"(["\u00"])",
      R"(["\u004"])", R"(["\u00G0"])", R"(["\U0041"])", R"(["\u{41}"])", R"(["\ "])", R"(["\)", R"(["\u 041"])",
      R"([\n])", R"(["\ä"])"}},
    {"lone surrogates",
     {R"(["\ud800"])", R"(["\udc00"])", R"(["\ud800\ud800"])", R"(["\udd1e\ud834"])", R"(["\ud834x"])",
      R"(["\ud834\n"])", R"(["\ud834\u0041"])", R"({"\ud800":1})"}},
    {"control characters in strings",
     {"[\"\t\"]", "[\"\n\"]", "[\"\r\"]", "[\"\x1f\"]", "[\"\x01\"]", "{\"a\tb\":1}", "[\"a\nb\"]"}},
    {"other blanks", {"[\v1]", "[\f1]", "[\xC2\xA0]", "[\xE2\x80\xA9]", "[1\x0c]", "\xE3\x80\x80[]", "[\xE2\x81\xA0]"}},
    {"comments",
     {"// a\n[]", "/* a */[]", "[]//", "[]/**/", "[1/*,*/]", "# a\n[]", "{\"a\":1/**/}", "<!-- -->[]", "[]#"}},
    {"text behind the end",
     {"[]x", "{}1", "1 2", "\"a\"\"b\"", "null null", "[]\xEF\xBB\xBF", "[1],", "{\"a\":1}#", "true,", "[]\x1a",
      "[] \\n"}},
    {"NUL anywhere",
     {"\0"s, "[]\0"s, "\0[]"s, "[\0]"s, "{}\0{}"s, "[1\0,2]"s, "[\"a\0b\"]"s, "0\0"s, "123\0"s, "[1]\0x"s, "\"a\"\0"s,
      "null\0"s, "[\"a\"]\0\0\0"s, "{\"a\":1}\0garbage"s, "[\"\\u0000\"]", "{\"\\u0000\":1}"}},
    {"not UTF-8",
     {"[\"\x80\"]", "[\"\xFF\"]", "[\"\xC0\x80\"]", "[\"\xC1\xBF\"]", "[\"\xE0\x80\x80\"]", "[\"\xED\xA0\x80\"]",
      "[\"\xED\xBF\xBF\"]", "[\"\xF0\x80\x80\x80\"]", "[\"\xF4\x90\x80\x80\"]", "[\"\xF8\x88\x80\x80\x80\"]",
      "[\"\xE2\x82\"]", "[\"\xC3\"]", "[\"\xF0\x9F\x94\"]", "\xFF\xFE[\0]\0"s, "\xFE\xFF\0[\0]"s, "[\xE4]",
      "{\"\xE4\":1}", "\xC3"}},
    {"other marks in front", {"\xEF\xBB[]", "\xEF[]", "\xEF\xBB\xBF\xEF\xBB\xBF[]", "\xFF\xFE"}},
    {"names twice",
     {"{\"a\":1,\"a\":1}", "{\"a\":1,\"b\":2,\"a\":3}", R"({"a":1,"\u0061":2})", "[{\"x\":{\"b\":1,\"b\":1}}]",
      "{\"\":1,\"\":2}"}},
    {"too deep",
     {std::string(65, '[') + std::string(65, ']'), std::string(100'000, '['),
      [] {
        std::string s;
        for (int i = 0; i < 65; ++i) s += "{\"a\":";
        return s + "1" + std::string(65, '}');
      }()}},
    {"other notations",
     {"a: 1", "- 1\n- 2", "<a/>", "(1)", "[1..2]", "{\"a\"=>1}", "[...]", "[*]", "*", "@", "[$]", "{\"a\":$1}", "[%]",
      "{{\"a\":1}}", "[[1]"}},
};

TEST(JsonConformance, AcceptsEveryClassItMust) {
  for (const Class& one : must_accept) {
    for (const std::string& text : one.texts) {
      const auto read = read_json(text);
      ASSERT_TRUE(read) << one.name << ": " << text << ": " << read.error().text;
      const std::string written = write_json(*read);
      const auto again = read_json(written);
      ASSERT_TRUE(again) << one.name << ": " << written;
      EXPECT_EQ(*again, *read) << one.name;
      EXPECT_EQ(canonical_json(*again), canonical_json(*read));
      EXPECT_EQ(canonical_json(*read_json(write_json_line(*read))), canonical_json(*read));
      EXPECT_EQ(canonical_json(*read_json(canonical_json(*read))), canonical_json(*read));
    }
  }
}

TEST(JsonConformance, RejectsEveryClassItMustWithAReason) {
  for (const Class& one : must_reject) {
    for (const std::string& text : one.texts) {
      const auto read = read_json(text);
      ASSERT_FALSE(read) << one.name << ": " << text;
      EXPECT_FALSE(read.error().text.empty());
      EXPECT_FALSE(read.error().remedy.empty());
    }
  }
}

TEST(JsonConformance, CanonicalTextsAreEqualForEqualContentOnly) {
  const auto canonical = [](std::string_view text) { return canonical_json(*read_json(text)); };
  EXPECT_EQ(canonical(R"({"b": [1, {"d": 1, "c": 2}], "a": "ä"})"),
            canonical(R"({"a":"\u00e4","b":[1,{"c":2,"d":1}]})"));
  for (const char* other : {R"([1, 2])", R"([2, 1])", R"(["1", 2])", R"([1.0, 2])", R"([1, 2, null])", R"({"1": 2})",
                            R"([[1, 2]])", R"(["1, 2"])", "[]", "{}", R"([1.00, 2])"})
    for (const char* one : {R"([1, 2])", R"([1.0, 2])"})
      EXPECT_EQ(canonical(one) == canonical(other), std::string(one) == other) << one << other;
}

TEST(JsonConformance, TheTableIsLargeEnoughToMeanSomething) {
  std::size_t accepted = 0;
  std::size_t rejected = 0;
  for (const Class& one : must_accept) accepted += one.texts.size();
  for (const Class& one : must_reject) rejected += one.texts.size();
  EXPECT_GE(accepted, 70U);
  EXPECT_GE(rejected, 200U);
}

}  // namespace
}  // namespace camside::records
