// A box that is packed gives what it gave before, and a text is packed at a glance only where reading it and writing it
// again gives that very text.
#include "records/json_value.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "records/strict_json.hpp"

namespace camside::records {
namespace {

const std::string plain =
    R"({"id": "e-1", "count": 12, "none": null, "yes": true, "list": ["a", {}, [], {"id": "b"}], "entered": {"wear": "0.012 in"}})";

JsonValue boxed(const std::string& text) {
  auto value = read_json(text);
  EXPECT_TRUE(value) << text;
  return value ? JsonValue(std::move(*value)) : JsonValue();
}

TEST(JsonValue, PackedItGivesWhatItGaveBefore) {
  const std::string texts[] = {plain,
                               "{}",
                               "[]",
                               "5",
                               R"({"a": "say \"so\"", "b": 0.10, "c": -3, "d": "µ\u2028", "e": {"a": 1}})",
                               R"({"entered": {"id": "inner"}, "id": "outer"})"};
  for (const std::string& text : texts) {
    const JsonValue open = boxed(text);
    JsonValue packed = open;
    packed.pack();
    ASSERT_TRUE(packed.is_packed());
    for (const char* name : {"id", "count", "none", "yes", "list", "entered", "a", "b", "c", "d", "e", "absent", ""}) {
      EXPECT_EQ(packed.text_at(name), open.text_at(name)) << text << " " << name;
      EXPECT_EQ(packed.has(name), open.has(name)) << text << " " << name;
    }
    EXPECT_EQ(write_json_line(packed), write_json_line(open));
    EXPECT_EQ(canonical_json(packed), canonical_json(open));
    EXPECT_TRUE(packed.is_packed()) << "looking unpacked it";
    const JsonValue copy = packed;
    EXPECT_TRUE(copy == packed && copy == open);
    EXPECT_EQ(write_json_line(*packed), write_json_line(open));
    EXPECT_FALSE(packed.is_packed());
  }
}

TEST(JsonValue, WhatNoReaderWouldTakeIsNotPacked) {
  JsonValue value;
  value["text"] = std::string("a\0b", 3);
  value.pack();
  EXPECT_EQ((*value)["text"], std::string("a\0b", 3));
}

TEST(JsonValue, APlainTextIsPackedAtAGlance) {
  for (const std::string& text :
       {plain, std::string("{}"), std::string(R"({"a": {"a": {"a": 0}}, "b": 999999999999999})")}) {
    const auto packed = JsonValue::packed_at_a_glance(text);
    ASSERT_TRUE(packed) << text;
    EXPECT_EQ(packed->packed(), text);
  }
}

// Each byte becomes another, is left out, or comes twice: whatever is still taken, the reader takes and writes the
// same.
TEST(JsonValue, AtAGlanceNothingIsTakenThatIsNotWrittenSo) {
  std::vector<std::string> changed = {R"({"a": 1, "a": 2})",
                                      R"({"a": 01})",
                                      R"({"a": -1})",
                                      R"({"a": 1.5})",
                                      R"({"a": "\u0041"})",
                                      R"({"a":1})",
                                      R"({"a" : 1})",
                                      R"({"a": 1,})",
                                      R"({"a": 1} )",
                                      R"(["a"])",
                                      R"({"a": 1e5})",
                                      R"({"a": tru})",
                                      R"({"a": "µ"})",
                                      R"({"a": ")",
                                      "",
                                      R"({"a": 12345678901234567890})",
                                      "{\"a\": \"\t\"}",
                                      "{\"a\": \"\x7f\"}"};
  for (const std::string& text : changed) EXPECT_FALSE(JsonValue::packed_at_a_glance(text)) << text;
  const std::string others = "\"{}[]:, \\09at\n\x1b\xc3";
  for (std::size_t at = 0; at < plain.size(); ++at) {
    changed.push_back(plain.substr(0, at) + plain.substr(at + 1));
    changed.push_back(plain.substr(0, at) + plain[at] + plain.substr(at));
    for (const char other : others) {
      changed.push_back(plain);
      changed.back()[at] = other;
    }
  }
  std::size_t taken = 0;
  for (const std::string& text : changed) {
    if (!JsonValue::packed_at_a_glance(text)) continue;
    ++taken;
    const auto read = read_json(text);
    ASSERT_TRUE(read) << text;
    EXPECT_EQ(write_json_line(*read), text);
  }
  EXPECT_GT(taken, 100U);
}

}  // namespace
}  // namespace camside::records
