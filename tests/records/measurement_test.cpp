#include "records/measurement.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "records/tiny.hpp"

namespace camside::records {
namespace {

const char* const good_entered = R"({
  "way": "slow",
  "stations": [{"angle": "0°", "reading": "0.0010 in"}, {"angle": "90 deg", "reading": "0,0254 mm", "turn": 2}],
  "setup": {"graduation": "0.5 thou", "temperature": "68 °F"},
  "limit": {"value": "0.003 in", "basis": "makers sheet", "title": "Sheet 12"},
  "spares": ["1 mm", "2 mm"],
  "teeth": 17, "ratio": "1.5", "day": "2024-05-14", "plate_off": true, "who": "Ann"
})";

std::string file_with(const std::string& entered) {
  return R"({"camside": 1, "kind": "measurements", "records": [{"kind": "tiny", "entered": )" + entered + "}]}";
}

Json good() {
  return *read_json(good_entered);
}

Solved solved_from(const Json& entered) {
  Record record;
  record.json = Json{{"kind", "tiny"}};
  record.json["entered"] = entered;
  return solve(record, tiny::only);
}

Findings without_cautions(Findings findings) {
  std::erase_if(findings, [](const Finding& f) { return f.number == 1999; });
  return findings;
}

// The one finding a changed field gives.
Finding finding_of(const Json& entered) {
  const Findings findings = without_cautions(solved_from(entered).findings);
  EXPECT_EQ(findings.size(), 1U);
  return findings.empty() ? Finding{} : findings.front();
}

TEST(Measurement, ReadsEverySortOfField) {
  const Solved s = solved_from(good());
  ASSERT_TRUE(s.solved);
  const auto* in = s.input_as<tiny::Input>();
  ASSERT_NE(in, nullptr);
  EXPECT_EQ(in->way, tiny::Way::Slow);
  ASSERT_EQ(in->stations.size(), 2U);
  EXPECT_DOUBLE_EQ(in->stations[1].angle.in_deg(), 90);
  EXPECT_DOUBLE_EQ(in->stations[1].reading.in_thou(), 1);
  EXPECT_EQ(in->stations[0].turn, 1);
  EXPECT_EQ(in->stations[1].turn, 2);
  EXPECT_DOUBLE_EQ(in->setup.temperature->in_celsius(), 20);
  EXPECT_FALSE(in->second);
  EXPECT_EQ(in->limit->source.text(), "Sheet 12");
  EXPECT_EQ(in->limit->source.basis(), Basis::MakersSheet);
  EXPECT_EQ(in->spares[1], Length::mm(2));
  EXPECT_EQ(in->teeth, 17);
  EXPECT_EQ(in->ratio, 1.5);
  EXPECT_EQ(in->day, (Date{std::chrono::year{2024}, std::chrono::month{5}, std::chrono::day{14}}));
  EXPECT_EQ(in->plate_off, true);
  EXPECT_EQ(in->who, "Ann");
  EXPECT_DOUBLE_EQ(s.result_as<tiny::Result>()->sum.in_thou(), 2);
  EXPECT_EQ(s.outcome.judgement->verdict, Verdict::Within);
}

TEST(Measurement, KeepsDefaultsOfWhatIsNotEntered) {
  const Solved s =
      solved_from(*read_json(R"({"way": "quick", "teeth": 4, "stations": [{"angle": "0°", "reading": "4 thou"}]})"));
  ASSERT_TRUE(s.solved) << s.findings.front().text;
  const auto* in = s.input_as<tiny::Input>();
  EXPECT_EQ(in->setup.graduation, Length::thou(0.5));
  EXPECT_EQ(in->house_limit->value, Length::thou(3));  // a limit that stands by default isn't missing
  EXPECT_EQ(s.outcome.judgement->verdict, Verdict::Outside);
}

TEST(Measurement, NamesEachFieldThatCannotBeUsed) {
  struct Row {
    const char* path;
    Json value;
    int number;
    const char* words;
  };
  const Json wrong_group = Json::array();
  const Row rows[] = {
      {"teeth", "many", 115, "many"},
      {"teeth", 17.5, 203, "17.5"},
      {"teeth", 1e12, 203, "whole"},
      {"teeth", 3, 200, "at least 4"},
      {"ratio", Json::array(), 114, "a list"},
      {"ratio", "3", 200, "0.5 to 2"},
      {"who", 5, 114, "a text"},
      {"plate_off", "yes", 114, "true or false"},
      {"day", "14/5/2024", 115, "14/5/2024"},
      {"day", "2023-02-29", 115, ""},
      {"way", "fast", 116, "fast"},
      {"way", nullptr, 114, "null"},
      {"setup", "none", 114, "an object"},
      {"stations", Json::object(), 114, "a list"},
      {"stations", Json::array(), 201, "missing"},
      {"stations[1]", 4, 114, "a number"},
      {"stations[1].reading", "0.0031", 115, "no unit"},
      {"stations[1].reading", 0.0031, 119, "without a unit"},
      {"stations[1].reading", "3 °C", 115, "unit of temperature"},
      {"stations[1].reading", "1,234 mm", 115, "can be read as"},
      {"stations[1].reading", "9 mm", 200, "−5 mm to 5 mm"},
      {"stations[1].reading", "inf mm", 115, ""},
      {"spares[0]", "wide", 115, "wide"},
      {"limit.basis", "a friend", 116, "a friend"},
  };
  for (const Row& row : rows) {
    Json entered = good();
    Json* place = &entered;
    std::string path = row.path;
    const std::string pointer = "/" + std::string(path);
    std::string slashed;
    for (const char c : pointer) slashed += c == '.' || c == '[' ? '/' : c;
    std::erase(slashed, ']');
    (*place)[Json::json_pointer(slashed)] = row.value;
    const Finding f = finding_of(entered);
    EXPECT_EQ(f.number, row.number) << row.path << ": " << f.text;
    EXPECT_EQ(f.field, row.path) << f.text;
    EXPECT_EQ(f.severity, Severity::Refusal);
    EXPECT_NE((f.text + f.remedy).find(row.words), std::string::npos) << row.path << ": " << f.text << " " << f.remedy;
    EXPECT_FALSE(f.remedy.empty());
  }
}

TEST(Measurement, SaysWhatIsMissing) {
  for (const char* name : {"way", "stations", "teeth"}) {
    Json entered = good();
    entered.erase(name);
    const Finding f = finding_of(entered);
    EXPECT_EQ(f.number, 201);
    EXPECT_EQ(f.field, name);
  }
  Json entered = good();
  entered["stations"][0].erase("reading");
  EXPECT_EQ(finding_of(entered).field, "stations[0].reading");
  entered = good();
  entered["limit"].erase("value");
  EXPECT_EQ(finding_of(entered).field, "limit.value");
}

TEST(Measurement, NotesUnknownFieldsWithTheNearestName) {
  Json entered = good();
  entered["teeht"] = 18;
  entered["stations"][0]["raeding"] = "1 mm";
  entered["setup"]["zzzzzzzz"] = 1;
  const Solved s = solved_from(entered);
  EXPECT_TRUE(s.solved);
  const auto at = [&](std::string_view path) {
    const auto it =
        std::find_if(s.findings.begin(), s.findings.end(), [&](const Finding& f) { return f.field == path; });
    return it == s.findings.end() ? Finding{} : *it;
  };
  EXPECT_EQ(at("teeht").number, 113);
  EXPECT_EQ(at("teeht").severity, Severity::Note);
  EXPECT_NE(at("teeht").remedy.find("teeth"), std::string::npos);
  EXPECT_NE(at("stations[0].raeding").remedy.find("reading"), std::string::npos);
  EXPECT_EQ(at("setup.zzzzzzzz").number, 113);
  EXPECT_EQ(at("setup.zzzzzzzz").remedy, "");
}

TEST(Measurement, SaysAllThatIsWrongAtOnce) {
  Json entered = good();
  entered["teeth"] = "x";
  entered["ratio"] = 7;
  entered["stations"][0]["reading"] = "9 mm";
  EXPECT_EQ(solved_from(entered).findings.size(), 3U);
}

TEST(Measurement, GivesPathsFromTheRootOfTheFile) {
  auto opened = read_file(R"({"camside": 1, "kind": "measurements", "bkie": 1, "records": [
    {"kind": "tiny", "entered": {"way": "slow", "teeth": 3, "stations": [{"angle": "0°", "reading": "1 mm"}]}},
    {"kind": "tinny", "taken": "yesterday", "entered": {}}, 5]})");
  ASSERT_TRUE(opened);
  const Findings findings = check_file(*opened, tiny::only);
  const auto fields = [&] {
    std::vector<std::string> paths;
    for (const Finding& f : findings) paths.push_back(f.field + ":" + std::to_string(f.number));
    return paths;
  }();
  EXPECT_EQ(fields, (std::vector<std::string>{"bkie:113", "records[0].entered.teeth:200", "records[1].kind:112",
                                              "records[1].taken:118", "records[2]:114"}));
}

TEST(Measurement, RefusesWhatIsNoMeasurementFile) {
  const auto number_of_refusal = [](std::string_view text) {
    const auto opened = read_file(text);
    return opened ? 0 : opened.error().front().number;
  };
  EXPECT_EQ(number_of_refusal("[]"), 110);
  EXPECT_EQ(number_of_refusal("{}"), 110);
  EXPECT_EQ(number_of_refusal(R"({"camside": "1", "kind": "measurements", "records": []})"), 110);
  EXPECT_EQ(number_of_refusal(R"({"camside": 0, "kind": "measurements", "records": []})"), 110);
  EXPECT_EQ(number_of_refusal(R"({"camside": 1.5, "kind": "measurements", "records": []})"), 110);
  EXPECT_EQ(number_of_refusal(R"({"camside": 1, "kind": "report", "records": []})"), 110);
  EXPECT_EQ(number_of_refusal(R"({"camside": 1, "kind": "measurements"})"), 110);
  EXPECT_EQ(number_of_refusal(R"({"camside": 1, "kind": "measurements", "records": {}})"), 110);
  EXPECT_EQ(number_of_refusal("{"), 104);
}

TEST(Measurement, OpensANewerFileForReadingOnly) {
  const auto opened = read_file(R"({"camside": 2, "kind": "measurements", "records": []})");
  ASSERT_TRUE(opened);
  EXPECT_TRUE(opened->file.read_only);
  EXPECT_TRUE(has(opened->findings, 111));
}

TEST(Measurement, NotesAFileWithoutRecords) {
  const auto empty = read_file(R"({"camside": 1, "kind": "measurements", "records": []})");
  ASSERT_TRUE(empty);
  EXPECT_TRUE(has(empty->findings, 121));
  const auto one = read_file(R"({"camside": 1, "kind": "measurements", "records": [{"id": "a", "kind": "tiny"}]})");
  ASSERT_TRUE(one);
  EXPECT_FALSE(has(one->findings, 121));
}

TEST(Measurement, ComesBackByteForByte) {
  const std::string text = R"({
  "camside": 1,
  "new field": {"x": [1.50, "ä", null, 12345678901234567890123456789]},
  "kind": "measurements",
  "records": [
    {"kind": "tiny", "later": true, "entered": {"ratio": 1.10, "teeth": "17", "teeht": 3}, "name": "First"}
  ],
  "bike": "Brindle"
}
)";
  const auto opened = read_file(text);
  ASSERT_TRUE(opened);
  EXPECT_EQ(write_file(opened->file), text);
  EXPECT_EQ(opened->file.bike(), "Brindle");
  EXPECT_EQ(opened->file.records.front().name(), "First");
}

TEST(Measurement, NotesIdsThatAreTheSame) {
  const auto opened = read_file(
      R"({"camside": 1, "kind": "measurements", "records": [{"id": "a", "kind": "tiny"}, {"id": "b", "kind": "tiny"}, {"id": "a", "kind": "tiny"}]})");
  ASSERT_EQ(opened->findings.size(), 1U);
  EXPECT_EQ(opened->findings[0].number, 117);
  EXPECT_EQ(opened->findings[0].field, "records[2].id");
}

TEST(Measurement, SolvesTheSameFromAFileAsDirectly) {
  const auto opened = read_file(file_with(good_entered));
  ASSERT_TRUE(opened);
  const Solved s = solve(opened->file.records.front(), tiny::only);
  const auto direct = tiny::solve(*s.input_as<tiny::Input>());
  EXPECT_EQ(s.outcome.figures[0].base, direct->outcome.figures[0].base);
}

TEST(Measurement, SurvivesAnyShapeOfRecord) {
  for (const char* record : {"null", "5", "[]", "{}", R"({"kind": "tiny"})", R"({"kind": "tiny", "entered": []})",
                             R"({"kind": ["tiny"]})", R"({"kind": "tiny", "entered": {"stations": [[], {}, null]}})"}) {
    const auto opened =
        read_file(R"({"camside": 1, "kind": "measurements", "records": [)" + std::string(record) + "]}");
    ASSERT_TRUE(opened) << record;
    EXPECT_TRUE(any_refusal(check_file(*opened, tiny::only))) << record;
  }
}

}  // namespace
}  // namespace camside::records
