// The exported log: byte for byte there and back, newer and damaged files, migrations, the table.
#include "log/log_file.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <set>
#include <sstream>

#include "log/log_csv.hpp"
#include "log/log_samples.hpp"
#include "log/log_view.hpp"

namespace camside::records {
namespace {

using namespace samples;

std::string fixture(const std::string& name) {
  std::ostringstream out;
  out << std::ifstream(std::string(CAMSIDE_SOURCE_DIR) + "/tests/files/" + name, std::ios::binary).rdbuf();
  return out.str();
}

OpenedLog opened(std::string_view bytes) {
  auto read = read_log_file(bytes);
  EXPECT_TRUE(read) << (read ? "" : read.error().front().text);
  return read ? std::move(*read) : OpenedLog{};
}

int refusal_of(std::string_view bytes) {
  const auto read = read_log_file(bytes);
  return read ? 0 : read.error().front().number;
}

std::set<std::string> contents(const Log& log) {
  std::set<std::string> all;
  for (const Entry& e : log.entries()) all.insert(content_of(e));
  return all;
}

std::string file_of(std::size_t count, const std::string& entry) {
  std::string bytes = R"({"camside": 1, "kind": "log", "entries": [)" + entry;
  for (std::size_t n = 1; n < count; ++n) bytes += "," + entry;
  return bytes + "]}";
}

TEST(LogFile, OneEntryStandsOnceHoweverOftenItCame) {
  const OpenedLog log = opened(file_of(1'000, R"({"id": "a", "kind": "note"})"));
  EXPECT_EQ(log.file.log.size(), 1U);
  EXPECT_TRUE(log.findings.empty());
}

TEST(LogFile, MoreEntriesThanAnyLogHasAreRefused) {
  EXPECT_EQ(refusal_of(file_of(most_entries, "{}")), 0);
  const auto read = read_log_file(file_of(most_entries + 1, "{}"));
  ASSERT_FALSE(read);
  EXPECT_TRUE(has(read.error(), 334));
  EXPECT_EQ(refusal_of(file_of(most_entries + 1, "{}") + "cut"), 334);  // and not looked through for what is whole
}

TEST(LogFile, RemarksAboutEntriesAreCountedBehindTheFirstFifty) {
  std::string bytes = R"({"camside": 1, "kind": "log", "entries": [0)";
  for (int n = 1; n < 200; ++n) bytes += "," + std::to_string(n);
  const OpenedLog log = opened(bytes + "]}");
  EXPECT_EQ(log.findings.size(), 51U);
  ASSERT_TRUE(has(log.findings, 335));
  EXPECT_EQ(log.findings.back().text, "150 more such remarks are not listed");
}

// Every released version stays here for ever.
TEST(LogFile, EveryReleasedVersionOpensAndThePresentOneIsWrittenTheSame) {
  for (std::uint64_t version = 1; version <= log_version; ++version) {
    const std::string bytes = fixture("log_version_" + std::to_string(version) + ".json");
    ASSERT_FALSE(bytes.empty());
    const OpenedLog log = opened(bytes);
    EXPECT_FALSE(log.file.read_only());
    EXPECT_EQ(log.file.log.size(), 9U);
    EXPECT_FALSE(any_refusal(check_log_file(log)));
    if (version == log_version) {
      EXPECT_EQ(write_log_file(log.file), bytes);
    }
  }
}

TEST(LogFile, UnknownFieldsAndKindsSurviveWithTheirDigits) {
  const OpenedLog log = opened(fixture("log_version_1.json"));
  const std::string written = export_log(log.file.log);
  EXPECT_NE(written.find(R"("of": {"unheard of": [1, 2.50, null]})"), std::string::npos);
  EXPECT_NE(written.find(R"("measured": "0.0120 in")"), std::string::npos);
  EXPECT_TRUE(has(check_log_file(log), 301));
}

TEST(LogFile, EqualLogsGiveEqualBytes) {
  const Log log = brindle_log();
  Log turned;
  for (auto it = log.entries().rbegin(); it != log.entries().rend(); ++it) turned.add(*it);
  EXPECT_EQ(export_log(turned), export_log(log));
  EXPECT_EQ(export_log(opened(export_log(log)).file.log), export_log(log));
  EXPECT_EQ(export_log(Log()), "{\n\"camside\": 1,\n\"kind\": \"log\",\n\"count\": 0,\n\"entries\": [\n]\n}\n");
}

TEST(LogFile, OneBikeGoesAlone) {
  Log log = brindle_log();
  log.add(odometer("z", 9, "7 km", "another bike"));
  const Log part = log_of_bike(log, brindle);
  EXPECT_EQ(part.size(), 5U);
  EXPECT_EQ(log_of_bike(log, "another bike").size(), 1U);
  EXPECT_EQ(log_of_bike(log, "nobody").size(), 0U);
}

TEST(LogFile, WhatIsNoLogIsRefused) {
  EXPECT_EQ(refusal_of(""), 109);
  EXPECT_EQ(refusal_of("[]"), 320);
  EXPECT_EQ(refusal_of(R"({"camside": 1, "kind": "measurements", "records": []})"), 320);
  EXPECT_EQ(refusal_of(R"({"camside": 0, "kind": "log", "entries": []})"), 320);
  EXPECT_EQ(refusal_of(R"({"camside": 1, "kind": "log"})"), 320);
  EXPECT_EQ(refusal_of("no JSON at all"), 103);
  EXPECT_TRUE(has(opened(R"({"camside": 1, "kind": "log", "entries": []})").findings, 328));
}

TEST(LogFile, WhatIsNoEntryIsKeptAndSaid) {
  const std::string bytes =
      R"({"camside": 1, "kind": "log", "entries": [7, {"kind": "note"}, {"id": "a"}, {"id": "a", "b": 1}]})";
  const OpenedLog log = opened(bytes);
  EXPECT_TRUE(has(log.findings, 302));
  EXPECT_TRUE(has(log.findings, 300));
  EXPECT_TRUE(has(log.findings, 307));
  EXPECT_EQ(log.file.log.size(), 4U);
  EXPECT_EQ(contents(opened(write_log_file(log.file)).file.log), contents(log.file.log));
}

TEST(LogFile, ANewerFileOpensForReadingOnlyAndKeepsEverything) {
  std::string bytes = fixture("log_version_1.json");
  bytes.replace(bytes.find("\"camside\": 1"), 12, "\"camside\": 9");
  const OpenedLog log = opened(bytes);
  EXPECT_TRUE(log.file.newer);
  EXPECT_TRUE(log.file.read_only());
  EXPECT_TRUE(has(log.findings, 111));
  EXPECT_EQ(write_log_file(log.file), bytes);
}

// ---- damage

TEST(LogFile, CutAtEveryByteItGivesEveryWholeEntry) {
  const std::string bytes = fixture("log_version_1.json");
  const std::set<std::string> all = contents(opened(bytes).file.log);
  const std::size_t start = bytes.find("[\n{") + 2;
  for (std::size_t cut = 0; cut < bytes.size() - 2; ++cut) {
    const auto read = read_log_file(std::string_view(bytes).substr(0, cut));
    if (!read) {
      EXPECT_LT(cut, bytes.find('\n', start)) << "nothing opened, cut at " << cut;
      continue;
    }
    std::size_t whole = 0;
    for (std::size_t at = start; at < cut; at = bytes.find('\n', at) + 1) {
      const std::size_t end = bytes.find('\n', at);
      const std::size_t closes = bytes[end - 1] == ',' ? end - 1 : end;  // behind the closing bracket
      if (bytes[at] == '{' && closes <= cut) ++whole;
      if (end == std::string::npos || end >= cut) break;
    }
    EXPECT_EQ(read->file.log.size(), whole) << cut;
    EXPECT_TRUE(read->file.damaged) << cut;
    EXPECT_TRUE(has(read->findings, 321)) << cut;
    EXPECT_EQ(has(read->findings, 323), whole < all.size()) << cut;
    for (const std::string& one : contents(read->file.log)) EXPECT_EQ(all.count(one), 1U) << cut;
  }
}

TEST(LogFile, ADamagedLineCostsOneEntryAndHasItsNumber) {
  const std::string bytes = fixture("log_version_1.json");
  std::vector<std::string> lines;
  std::istringstream in(bytes);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  for (std::size_t i = 6; i < 15; ++i) {
    for (const std::string& damage :
         {std::string("\""), std::string("{"), std::string("\0", 1), std::string("\xFF"), std::string("]}")}) {
      std::string damaged;
      for (std::size_t k = 0; k < lines.size(); ++k) {
        std::string line = lines[k];
        if (k == i) line.insert(line.find("\"made\""), damage);
        damaged += line + "\n";
      }
      const OpenedLog log = opened(damaged);
      EXPECT_EQ(log.file.log.size(), 8U) << i << damage;
      EXPECT_TRUE(has(log.findings, 322));
      bool listed = false;
      for (const Finding& finding : log.findings)
        listed = listed || (finding.number == 322 && finding.text.find("Line " + std::to_string(i + 1) + " is") == 0);
      EXPECT_TRUE(listed) << i << damage;
      EXPECT_TRUE(has(log.findings, 323));
      EXPECT_TRUE(log.file.read_only());
    }
  }
}

TEST(LogFile, ADamagedHeadOrEndCostsNoEntry) {
  std::string bytes = fixture("log_version_1.json");
  EXPECT_EQ(opened("garbage " + bytes).file.log.size(), 9U);
  EXPECT_EQ(opened(bytes + std::string("\0\0", 2)).file.log.size(), 9U);
  EXPECT_EQ(opened(bytes + "x").file.log.size(), 9U);
  bytes[bytes.find("\"kind\"")] = '?';
  EXPECT_EQ(opened(bytes).file.log.size(), 9U);
}

TEST(LogFile, ALongRunOfDamageIsListedShortly) {
  std::string bytes = "{\n\"camside\": 1,\n\"kind\": \"log\",\n\"entries\": [\n";
  for (int n = 0; n < 500; ++n)
    bytes += write_json_line(odometer("o" + std::to_string(n), n, "1 mi").record.json) + ",\n{\"broken\": \n";
  const OpenedLog log = opened(bytes);
  EXPECT_EQ(log.file.log.size(), 500U);
  EXPECT_TRUE(has(log.findings, 324));
  EXPECT_LT(log.findings.size(), 60U);
}

// ---- migrations: there is one version so far, so the frame is tried with invented steps

Json head_one_to_two(Json head) {
  head["title"] = "from one";
  return head;
}
Json entry_one_to_two(Json entry) {
  entry["step"] = "1";
  return entry;
}
Json entry_two_to_three(Json entry) {
  entry["step"] = entry["step"].get<std::string>() + "2";
  return entry;
}
Json same(Json json) {
  return json;
}
const MigrationStep steps[]{{1, head_one_to_two, entry_one_to_two}, {2, same, entry_two_to_three}};

TEST(LogMigration, GoesStepByStepFromWhereTheFileStands) {
  const LogFormat third{3, steps};
  const auto one = read_log_file(R"({"camside": 1, "kind": "log", "entries": [{"id": "a"}]})", third);
  ASSERT_TRUE(one);
  EXPECT_EQ(one->file.log.entries()[0].record.json->at("step"), "12");
  EXPECT_EQ(one->file.head->at("camside"), 3U);
  EXPECT_EQ(one->file.head->at("title"), "from one");
  EXPECT_EQ(one->file.version, 1U);
  const auto two = read_log_file(R"({"camside": 2, "kind": "log", "entries": [{"id": "a", "step": "-"}]})", third);
  EXPECT_EQ(two->file.log.entries()[0].record.json->at("step"), "-2");
  const auto three = read_log_file(R"({"camside": 3, "kind": "log", "entries": [{"id": "a"}]})", third);
  EXPECT_FALSE(three->file.log.entries()[0].record.json->contains("step"));
  EXPECT_TRUE(read_log_file(R"({"camside": 4, "kind": "log", "entries": [{"id": "a"}]})", third)->file.newer);
}

TEST(LogMigration, HasAStepForEveryVersionBeforeThisOne) {
  const LogFormat format = log_format();
  ASSERT_EQ(format.steps.size(), format.version - 1);
  for (std::size_t i = 0; i < format.steps.size(); ++i) EXPECT_EQ(format.steps[i].from, i + 1);
}

// ---- the table

TEST(LogCsv, IsOneRowForEachEntryWithUnitsInTheHeader) {
  const Log log = opened(fixture("log_version_1.json")).file.log;
  const View seen = view(log);
  const std::string id = "2f0f9d52-7a2b-4a50-9f6e-0b8f1f6f1a0";
  EXPECT_EQ(csv_of(log, seen.bikes[0]),
            "day,kind,what,odometer (mi),wear (in),grade,proof,by,note,state,made,id\r\n"
            "2023-06-18,Service,Engine oil and filter,38900,,,photo,the owner,,,2024-05-14T10:22:00.000-05:00," +
                id +
                "3\r\n"
                "2024-05-14,The bike,Brindle,,,,,The Lantern Shed,,,2024-05-14T10:20:00.000-05:00," +
                id +
                "1\r\n"
                "2024-05-14,Finding,Tensioner shoes: Groove of the rear "
                "shoe,41300,0.012,worn,,,,,2024-05-14T11:05:00.000-05:00," +
                id +
                "4\r\n"
                "2024-05-14,Finding,Tensioner shoes: Groove of the front "
                "shoe,41300,0.00787,worn,,,,,2024-05-14T11:05:00.000-05:00," +
                id +
                "4\r\n"
                "2024-05-14,Measurement,\"runout: Pinion shaft, plate off\",,,,,,,,2024-05-14T11:20:00.000-05:00," +
                id +
                "5\r\n"
                "2024-05-14,Odometer,\"41,303 mi\",41303,,,,,,,2024-05-14T11:30:00.000-05:00," +
                id +
                "6\r\n"
                "2024-05-14,Note,\"'=No papers for the tensioners, said \"\"the last "
                "owner\"\"\",,,,,,,,2024-05-14T11:40:00.000-05:00," +
                id +
                "7\r\n"
                "2024-05-15,Odometer replaced,0 mi,0,,,,,,,2024-05-15T09:00:00.000-05:00," +
                id +
                "8\r\n"
                "2024-05-15,photograph,,,,,,,,,2024-05-15T09:10:00.000-05:00," +
                id + "9\r\n");
  EXPECT_NE(csv_of(log, seen.bikes[0], {System::Metric, true}).find("wear (mm)"), std::string::npos);
  EXPECT_NE(csv_of(log, seen.bikes[0], {System::Metric, true}).find(",0.2,worn"), std::string::npos);
  EXPECT_NE(csv_of(log, seen.bikes[0], {System::Metric, true}).find("replaced"), std::string::npos);
}

}  // namespace
}  // namespace camside::records
