#include "records/form.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "records/tiny.hpp"

namespace camside::records {
namespace {

Record tiny_record(const std::string& entered = "{}") {
  Record record = make_record(tiny::kind, "a", "2024-05-14");
  record.json["entered"] = *read_json(entered);
  return record;
}

std::vector<FormField> form(const Record& record) {
  return form_of(record, tiny::only);
}

FormField field(const Record& record, std::string_view path) {
  for (FormField& f : form(record)) {
    if (f.path == path) return f;
  }
  ADD_FAILURE() << "no field " << path;
  return {};
}

std::optional<Finding> set(Record& record, std::string_view path, std::string_view text, const Unit* unit = nullptr) {
  return set_text(record, path, text, unit, tiny::only);
}

TEST(Form, ListsEveryFieldInOrderAlsoThoseOfAbsentGroups) {
  std::vector<std::string> paths;
  for (const FormField& f : form(tiny_record(R"({"stations": [{}]})"))) paths.push_back(f.path);
  EXPECT_EQ(paths, (std::vector<std::string>{"way",
                                             "stations",
                                             "stations[0].angle",
                                             "stations[0].reading",
                                             "stations[0].turn",
                                             "setup",
                                             "setup.graduation",
                                             "setup.temperature",
                                             "second",
                                             "second.graduation",
                                             "second.temperature",
                                             "limit",
                                             "limit.value",
                                             "limit.basis",
                                             "limit.title",
                                             "house_limit",
                                             "house_limit.value",
                                             "house_limit.basis",
                                             "house_limit.title",
                                             "spares",
                                             "teeth",
                                             "ratio",
                                             "day",
                                             "plate_off",
                                             "who"}));
}

TEST(Form, ShowsTextsAsTheyWereEntered) {
  const Record r =
      tiny_record(R"({"setup": {"graduation": "0.50 thou"}, "ratio": 1.50, "plate_off": true, "way": "slow"})");
  EXPECT_EQ(field(r, "setup.graduation").text, "0.50 thou");
  EXPECT_EQ(field(r, "ratio").text, "1.50");
  EXPECT_EQ(field(r, "plate_off").text, "true");
  EXPECT_EQ(field(r, "way").text, "slow");
  EXPECT_TRUE(field(r, "setup").entered);
  EXPECT_FALSE(field(r, "second").entered);
  EXPECT_TRUE(field(r, "second").optional_group);
  EXPECT_FALSE(field(r, "setup").optional_group);
}

TEST(Form, SaysWhatIsTakenWhileNothingIsEntered) {
  const Record r = tiny_record();
  EXPECT_EQ(field(r, "setup.graduation").preset, "0.0127 mm");
  EXPECT_EQ(field(r, "setup.graduation").preset_base, Length::thou(0.5).base());
  EXPECT_EQ(field(r, "ratio").preset, "1");
  EXPECT_EQ(field(r, "house_limit.basis").text, "");
  EXPECT_EQ(field(r, "teeth").preset, "");  // must be entered
  EXPECT_EQ(field(r, "way").preset, "");
  EXPECT_EQ(field(r, "setup.temperature").preset, "");
  EXPECT_EQ(field(tiny_record(R"({"ratio": 2})"), "ratio").preset, "");
}

TEST(Form, KnowsKindRangeChoicesAndDepth) {
  const Record r = tiny_record(R"({"stations": [{}, {}]})");
  EXPECT_EQ(field(r, "stations[1].reading").kind, Kind::Length);
  EXPECT_EQ(field(r, "stations[1].reading").range, "−5 mm to 5 mm");
  EXPECT_EQ(field(r, "stations[1].reading").depth, 1);
  EXPECT_EQ(field(r, "stations").count, 2U);
  EXPECT_TRUE(field(r, "stations").of_groups);
  EXPECT_EQ(field(r, "way").choices.size(), 2U);
  EXPECT_TRUE(field(r, "teeth").whole);
  EXPECT_TRUE(field(r, "teeth").field.required);
}

TEST(Form, SettingATextKeepsItsDigitsAndMakesTheGroupsAround) {
  Record r = tiny_record();
  EXPECT_FALSE(set(r, "second.graduation", "0.50 thou"));
  EXPECT_FALSE(set(r, "ratio", "1.10"));
  EXPECT_FALSE(set(r, "plate_off", "yes"));
  EXPECT_FALSE(set(r, "day", "2024-05-14"));
  EXPECT_EQ(
      write_json(r.entered()),
      "{\"second\": {\"graduation\": \"0.50 thou\"}, \"ratio\": 1.10, \"plate_off\": true, \"day\": \"2024-05-14\"}\n");
}

TEST(Form, SettingKeepsATextThatCannotBeReadAndSaysSo) {
  Record r = tiny_record();
  const auto finding = set(r, "setup.graduation", "half a thou");
  ASSERT_TRUE(finding);
  EXPECT_EQ(finding->number, 115);
  EXPECT_EQ(finding->field, "setup.graduation");
  EXPECT_EQ(field(r, "setup.graduation").text, "half a thou");
  EXPECT_EQ(set(r, "ratio", "9")->number, 200);
  EXPECT_EQ(set(r, "ratio", "0,75"), std::nullopt);
  EXPECT_EQ(field(r, "ratio").text, "0,75");
}

TEST(Form, SettingAddsTheUnitToABareNumber) {
  Record r = tiny_record();
  const Unit* thou = find_unit(Kind::Length, "thou");
  EXPECT_FALSE(set(r, "setup.graduation", "0.5", thou));
  EXPECT_EQ(field(r, "setup.graduation").text, "0.5 thou");
  EXPECT_FALSE(set(r, "setup.graduation", "0.01 mm", thou));
  EXPECT_EQ(field(r, "setup.graduation").text, "0.01 mm");
  EXPECT_EQ(set(r, "setup.graduation", "0.5")->number, 115);
}

TEST(Form, AnEmptyTextTakesTheFieldOut) {
  Record r = tiny_record(R"({"ratio": 1.5, "teeth": 5, "other": 1})");
  EXPECT_FALSE(set(r, "ratio", ""));
  EXPECT_EQ(set(r, "teeth", "")->number, 201);
  EXPECT_EQ(write_json(r.entered()), "{\"other\": 1}\n");
}

TEST(Form, RefusesAPathThatIsNoField) {
  Record r = tiny_record();
  const Json before = r.json;
  for (const char* path : {"teeht", "", "setup", "stations", "stations[0].reading", "setup.graduation.x", "a[", "a..b",
                           "[0]", "stations[99999999999999999999]"}) {
    const auto finding = set(r, path, "1");
    ASSERT_TRUE(finding) << path;
    EXPECT_EQ(finding->number, 120) << path;
  }
  EXPECT_NE(set(r, "teeht", "1")->remedy.find("teeth"), std::string::npos);
  EXPECT_EQ(*r.json, before);
}

TEST(Form, AddsAndRemovesItems) {
  Record r = tiny_record();
  EXPECT_EQ(add_item(r, "stations", tiny::only), "stations[0]");
  EXPECT_EQ(add_item(r, "stations", tiny::only), "stations[1]");
  set(r, "stations[0].angle", "0°");
  set(r, "stations[1].angle", "45°");
  EXPECT_EQ(add_item(r, "spares", tiny::only), "spares[0]");
  EXPECT_FALSE(set(r, "spares[0]", "1 mm"));
  EXPECT_EQ(add_item(r, "teeth", tiny::only), "");
  EXPECT_TRUE(remove_item(r, "stations", 0));
  EXPECT_FALSE(remove_item(r, "stations", 5));
  EXPECT_EQ(write_json(r.entered()), "{\"stations\": [{\"angle\": \"45°\"}], \"spares\": [\"1 mm\"]}\n");
  EXPECT_TRUE(remove_field(r, "stations"));
  EXPECT_FALSE(remove_field(r, "stations"));
}

TEST(Form, OfAnUnknownKindIsEmpty) {
  Record r;
  r.json = Json{{"kind", "unheard of"}};
  EXPECT_TRUE(form(r).empty());
  EXPECT_TRUE(set(r, "x", "1"));
}

}  // namespace
}  // namespace camside::records
