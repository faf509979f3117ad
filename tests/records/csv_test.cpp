#include "records/csv.hpp"

#include <gtest/gtest.h>

#include <string>

#include "records/tiny.hpp"

namespace camside::records {
namespace {

struct Taken {
  Record record = make_record(tiny::kind, "a", "2024-05-14");
  tl::expected<std::size_t, Finding> answer;

  explicit Taken(std::string_view csv, std::string_view columns = "")
      : answer(take_csv(record, csv, columns, tiny::only)) {}
  std::string stations() const { return answer ? record.entered()["stations"].dump() : answer.error().text; }
};

TEST(Csv, TakesCommasWithAHeaderOfUnits) {
  const Taken t("angle (deg), reading (in), turn\n0, 0.0010, 1\n45,-0.0006,2\n");
  EXPECT_EQ(t.stations(),
            R"([{"angle":"0 deg","reading":"0.0010 in","turn":1},{"angle":"45 deg","reading":"-0.0006 in","turn":2}])");
  EXPECT_EQ(t.answer, 2U);
}

TEST(Csv, TakesSemicolonsTabsAndDecimalCommas) {
  const std::string wanted = R"([{"angle":"22,5 °","reading":"0,0254 mm"}])";
  EXPECT_EQ(Taken("angle [°];reading [mm]\r\n22,5;0,0254\r\n").stations(), wanted);
  EXPECT_EQ(Taken("angle [°]\treading [mm]\n22,5\t0,0254\n").stations(), wanted);
  EXPECT_EQ(Taken("angle [°],reading [mm]\n\"22,5\",\"0,0254\"").stations(), wanted);
}

TEST(Csv, TakesCommentsEmptyLinesMarksAndLabels) {
  EXPECT_EQ(Taken("\xEF\xBB\xBF# plate off\n\nREADING (thou), Angle (deg)\n\n# first turn\n3,90\n").stations(),
            R"([{"reading":"3 thou","angle":"90 deg"}])");
}

TEST(Csv, TakesUnitsInTheCells) {
  EXPECT_EQ(Taken("angle,reading (in)\n90°,0.003\n180°,76.2 µm\n").stations(),
            R"([{"angle":"90°","reading":"0.003 in"},{"angle":"180°","reading":"76.2 µm"}])");
  for (const char* inch : {"0.003\"", "\"0.003\"\"\""})  // as it is, and quoted with its mark doubled
    EXPECT_EQ(Taken("angle,reading\n90°," + std::string(inch) + "\n").stations(),
              R"([{"angle":"90°","reading":"0.003\""}])");
}

TEST(Csv, TakesTheColumnsFromTheCaller) {
  EXPECT_EQ(Taken("90,3\n180,4\n", "angle (deg), reading (thou)").stations(),
            R"([{"angle":"90 deg","reading":"3 thou"},{"angle":"180 deg","reading":"4 thou"}])");
}

TEST(Csv, TakesYesAndNo) {
  const auto life = [](std::string_view csv) {
    Record record = make_record(*find_kind("life"), "", "");
    const auto answer = take_csv(record, csv);
    return answer ? record.entered()["parts"].dump() : answer.error().text;
  };
  EXPECT_EQ(life("distance (mi),failed\n\"21,050\",yes\n24300,No\n1,1\n2,FALSE\n"),
            R"([{"distance":"21,050 mi","failed":true},{"distance":"24300 mi","failed":false},)"
            R"({"distance":"1 mi","failed":true},{"distance":"2 mi","failed":false}])");
  EXPECT_NE(life("distance (mi),failed\n100,yes\n200,perhaps\n").find("Line 3: failed is “perhaps”"),
            std::string::npos);
  EXPECT_NE(life("distance (mi),failed\n100,\n").find("failed is missing"), std::string::npos);
  EXPECT_NE(life("distance (mi)\n100\n").find("no column “failed”"), std::string::npos);
}

TEST(Csv, NamesTheLineThatIsWrong) {
  struct Row {
    const char* csv;
    int number;
    const char* words;
  };
  const Row rows[] = {
      {"", 109, "nothing"},
      {"# only a comment\n", 132, "no readings"},
      {"angle (deg),reading (in)\n", 132, "no readings"},
      {"0,0.001\n45,0.002\n", 131, "Line 1: There is no header"},
      {"angle (deg),height (in)\n0,1\n", 131, "height"},
      {"angle (deg),angle (deg)\n0,1\n", 131, "twice"},
      {"angle (deg),turn\n0,1\n", 131, "no column “reading”"},
      {"angle (deg),reading (°C)\n0,1\n", 131, "no unit of length"},
      {"angle (deg),reading (in)\n0,0.001\n\n45,x\n", 130, "Line 4: reading is “x”"},
      {"angle (deg),reading\n0,0.001\n", 130, "Line 2: reading"},
      {"angle (deg),reading (in)\n0,0.001\n45,\n", 130, "Line 3: reading is missing"},
      {"angle (deg),reading (mm)\n0,0,001\n", 131, "Line 2: 3 columns"},
      {"angle (deg);reading (mm)\n0;1,234\n", 130, "can be read as"},
      {"angle (deg),reading (in)\n0,inf\n", 130, "Line 2"},
  };
  for (const Row& row : rows) {
    const Taken t(row.csv);
    ASSERT_FALSE(t.answer) << row.csv;
    EXPECT_EQ(t.answer.error().number, row.number) << row.csv << t.answer.error().text;
    EXPECT_NE(t.answer.error().text.find(row.words), std::string::npos) << t.answer.error().text;
    EXPECT_FALSE(t.answer.error().remedy.empty());
    EXPECT_TRUE(t.record.entered().empty());  // nothing half taken
  }
}

TEST(Csv, RefusesOtherBytesThanText) {
  EXPECT_EQ(Taken(std::string_view("angle\0", 6)).answer.error().number, 102);
  EXPECT_EQ(Taken("angle,\xFF").answer.error().number, 101);
}

TEST(Csv, RefusesKindsWithoutAList) {
  RecordKind other = tiny::kind;
  other.csv_list = "";
  Record record = make_record(other, "", "");
  EXPECT_EQ(take_csv(record, "angle\n1\n", "", std::span(&other, 1)).error().number, 133);
}

TEST(Csv, ReplacesTheReadingsAndKeepsTheRest) {
  Record record = make_record(tiny::kind, "", "");
  record.entered()["teeth"] = 17;
  record.entered()["stations"] = Json::array({1, 2, 3});
  ASSERT_TRUE(take_csv(record, "angle (deg),reading (in)\n0,1\n", "", tiny::only));
  EXPECT_EQ(record.entered().dump(), R"({"teeth":17,"stations":[{"angle":"0 deg","reading":"1 in"}],"way":"slow"})");
}

}  // namespace
}  // namespace camside::records
