// What a log says after corrections, deletions and undo; and what two people make of one entry.
#include "log/log_view.hpp"

#include <gtest/gtest.h>

#include "log/log_samples.hpp"
#include "records/measurement.hpp"

namespace camside::records {
namespace {

using namespace samples;

const Line* line_with(const Log& log, const Bike& bike, const std::string& id) {
  for (const Line& line : bike.lines) {
    for (const auto* part : {&line.current, &line.replaced}) {
      for (const std::size_t i : *part)
        if (log.entries()[i].id() == id) return &line;
    }
  }
  return nullptr;
}

std::vector<std::string> ids(const Log& log, const std::vector<std::size_t>& indexes) {
  std::vector<std::string> out;
  for (const std::size_t i : indexes) out.push_back(log.entries()[i].id());
  return out;
}

using Ids = std::vector<std::string>;

struct NextStamp {
  int n = 0;
  Stamp operator()() {
    ++n;
    return stamp("undo" + std::to_string(n), 100 + n);
  }
};

TEST(LogEntry, KeepsTheMomentTheOffsetAndWhatWasTyped) {
  const Entry e = odometer("o", 0, "41,300 mi");
  EXPECT_EQ(e.made(), "2024-05-14T10:20:00.000-05:00");
  EXPECT_EQ(e.made_at(), 1'715'700'000'000);
  EXPECT_EQ(e.day(), "2024-05-14");
  EXPECT_EQ(e.entered_text("reading"), "41,300 mi");
  EXPECT_TRUE(check_entry(e).empty());
}

TEST(LogEntry, SaysWhatIsWrongWithIt) {
  EXPECT_TRUE(has(check_entry(odometer("o", 0, "41,300")), 115));
  EXPECT_TRUE(has(check_entry(odometer("o", 0, "-3 mi")), 200));
  EXPECT_TRUE(has(check_entry(entry("odometer", "o", 0, {})), 201));
  EXPECT_TRUE(has(check_entry(entry("finding", "f", 0, {{"part", "Shoe"}, {"grade", "so so"}})), 116));
  EXPECT_TRUE(has(check_entry(entry("gizmo", "g", 0, {})), 301));
  EXPECT_TRUE(has(check_entry(make_entry("measurement", brindle, stamp("m"))), 309));
  EXPECT_TRUE(has(check_entry(Entry{Record{Json(7)}}), 302));
  Entry no_time = odometer("o", 0, "1 mi");
  no_time.record.json["made"] = "2024-05-14";  // a day is no moment
  EXPECT_TRUE(has(check_entry(no_time), 303));
  no_time.record.json["made"] = 7;
  EXPECT_TRUE(has(check_entry(no_time), 114));
  Entry no_id = odometer("", 0, "1 mi");
  EXPECT_TRUE(has(check_entry(no_id), 300));
}

TEST(LogEntry, EveryEntryOfTheSampleIsGood) {
  const Log log = brindle_log();
  for (const Entry& e : log.entries()) EXPECT_TRUE(check_entry(e).empty()) << e.id();
}

TEST(LogEntry, HoldsAMeasurementOfEveryKindAsItWasEntered) {
  for (const RecordKind& kind : kinds()) {
    const Record measured = demo_records(kind).front();
    const Entry e = make_measurement_entry(measured, brindle, stamp("m"));
    EXPECT_FALSE(any_refusal(check_entry(e))) << kind.name;
    ASSERT_TRUE(e.measurement());
    EXPECT_EQ(write_json(e.measurement()->json), write_json(measured.json));
    EXPECT_EQ(solve(*e.measurement()).solved, solve(measured).solved);
  }
}

TEST(LogView, ABikeIsWhatItsFactsSayTheLaterFirst) {
  Log log = brindle_log();
  log.add(entry("facts", "facts2", 50, {{"model_year", 2004U}, {"own_engine", "Rebuilt bottom end"}}));
  log.add(entry("clock", "c1", 51, {{"old_reading", "41,300 mi"}, {"new_reading", "0 mi"}}));
  const View seen = view(log);
  ASSERT_EQ(seen.bikes.size(), 1U);
  const Bike& bike = seen.bikes[0];
  EXPECT_EQ(bike.nickname, "Brindle");
  EXPECT_EQ(bike.engine, "two cams, sprung chains");
  EXPECT_EQ(bike.model_year, "2004");
  EXPECT_EQ(bike.own_engine, "Rebuilt bottom end");
  EXPECT_EQ(bike.odometer_unit, "mi");
  EXPECT_EQ(ids(log, bike.clock_swaps), Ids{"c1"});
  EXPECT_EQ(log.entries()[*latest_odometer(log, bike)].id(), "o1");
  EXPECT_TRUE(seen.findings.empty());
}

TEST(LogView, ACorrectionTakesThePlaceOfTheOldEntryAndKeepsItsDay) {
  Log log = brindle_log();
  const Entry old = log.entries()[log.with_id("o1").front()];
  Entry better = correction(log, std::span(&old, 1), stamp("o2", 3 * 24 * 60));
  better.record.entered()["reading"] = "41,030 mi";
  log.add(better);
  const View seen = view(log);
  const Line* line = line_with(log, seen.bikes[0], "o1");
  EXPECT_EQ(ids(log, line->current), Ids{"o2"});
  EXPECT_EQ(ids(log, line->replaced), Ids{"o1"});
  EXPECT_FALSE(line->apart);
  EXPECT_EQ(line->day, "2024-05-14");
  EXPECT_EQ(seen.bikes[0].lines.size(), 5U);
}

TEST(LogView, ADeletionIsAnEntryAndUndoBringsTheOldContentBack) {
  Log log = brindle_log();
  NextStamp next;
  const Entry gone = deleting("d1", 60, "o1");
  log.add(gone);
  EXPECT_TRUE(line_with(log, view(log).bikes[0], "o1")->deleted);
  EXPECT_FALSE(latest_odometer(log, view(log).bikes[0]));
  for (Entry& back : undo(log, gone, std::ref(next))) log.add(std::move(back));
  const View seen = view(log);
  const Line* line = line_with(log, seen.bikes[0], "o1");
  EXPECT_FALSE(line->deleted);
  ASSERT_EQ(ids(log, line->current), Ids{"undo1"});
  EXPECT_EQ(log.entries()[line->current[0]].entered_text("reading"), "41,300 mi");
  EXPECT_EQ(line->day, "2024-05-14");
}

TEST(LogView, UndoOfACorrectionAndOfAFirstEntry) {
  Log log = brindle_log();
  NextStamp next;
  const Entry better = replacing(odometer("o2", 60, "41,030 mi"), "o1");
  log.add(better);
  for (Entry& back : undo(log, better, std::ref(next))) log.add(std::move(back));
  const View seen = view(log);
  EXPECT_EQ(log.entries()[line_with(log, seen.bikes[0], "o2")->current[0]].entered_text("reading"), "41,300 mi");
  const Entry first = log.entries()[log.with_id("n1").front()];
  for (Entry& back : undo(log, first, std::ref(next))) log.add(std::move(back));
  EXPECT_TRUE(line_with(log, view(log).bikes[0], "n1")->deleted);
}

TEST(LogView, TwoPeopleCorrectingOneEntryStandSideBySideUntilSomeonePicks) {
  Log log = brindle_log();
  log.add(replacing(odometer("mine", 60, "41,030 mi"), "o1"));
  log.add(replacing(odometer("yours", 61, "41,003 mi"), "o1"));
  View seen = view(log);
  const Line* line = line_with(log, seen.bikes[0], "o1");
  EXPECT_TRUE(line->apart);
  EXPECT_EQ(ids(log, line->current), (Ids{"mine", "yours"}));
  EXPECT_TRUE(has(seen.findings, 308));

  std::vector<Entry> both;
  for (const std::size_t i : line->current) both.push_back(log.entries()[i]);
  log.add(correction(log, both, stamp("picked", 70)));
  seen = view(log);
  line = line_with(log, seen.bikes[0], "o1");
  EXPECT_FALSE(line->apart);
  EXPECT_EQ(ids(log, line->current), Ids{"picked"});
  EXPECT_TRUE(seen.findings.empty());
}

TEST(LogView, UndoOfAPickBringsBothBack) {
  Log log = brindle_log();
  NextStamp next;
  log.add(replacing(odometer("mine", 60, "41,030 mi"), "o1"));
  log.add(replacing(odometer("yours", 61, "41,003 mi"), "o1"));
  const Entry pick = replacing(odometer("picked", 70, "41,030 mi"), Json::array({"mine", "yours"}));
  log.add(pick);
  for (Entry& back : undo(log, pick, std::ref(next))) log.add(std::move(back));
  const View seen = view(log);
  const Line* line = line_with(log, seen.bikes[0], "o1");
  EXPECT_TRUE(line->apart);
  EXPECT_EQ(line->current.size(), 2U);
}

TEST(LogView, DeletedHereAndCorrectedThereIsNotHidden) {
  Log log = brindle_log();
  log.add(replacing(odometer("mine", 60, "41,030 mi"), "o1"));
  log.add(deleting("d1", 61, "o1"));
  const View seen = view(log);
  const Line* line = line_with(log, seen.bikes[0], "o1");
  EXPECT_TRUE(line->apart);
  EXPECT_FALSE(line->deleted);
  EXPECT_EQ(line->current.size(), 2U);
}

TEST(LogView, TheSameCorrectionTwiceIsNoConflict) {
  Log log = brindle_log();
  log.add(replacing(odometer("mine", 60, "41,030 mi"), "o1"));
  log.add(replacing(odometer("yours", 61, "41,030 mi"), "o1"));
  const View seen = view(log);
  const Line* line = line_with(log, seen.bikes[0], "o1");
  EXPECT_EQ(line->current.size(), 2U);
  EXPECT_EQ(line->apart, false);
}

TEST(LogView, OneIdWithTwoContentsShowsBothAlsoBelowAnOldCorrection) {
  Log log = brindle_log();
  EXPECT_EQ(log.add(odometer("o1", 1, "14,300 mi")), Added::Differs);
  View seen = view(log);
  EXPECT_TRUE(has(seen.findings, 307));
  EXPECT_EQ(line_with(log, seen.bikes[0], "o1")->current.size(), 2U);

  // A correction that knew only one of them hides neither …
  log.add(replacing(odometer("o2", 60, "41,030 mi"), "o1"));
  seen = view(log);
  const Line line = *line_with(log, seen.bikes[0], "o1");
  EXPECT_EQ(line.current.size(), 3U);
  EXPECT_TRUE(line.apart);

  // … and one that says which it saw settles them.
  std::vector<Entry> all;
  for (const std::size_t i : line.current) all.push_back(log.entries()[i]);
  log.add(correction(log, all, stamp("picked", 70)));
  seen = view(log);
  EXPECT_EQ(ids(log, line_with(log, seen.bikes[0], "o1")->current), Ids{"picked"});
}

TEST(LogView, AMissingOriginalKeepsItsCorrectionsTogether) {
  Log log;
  log.add(replacing(odometer("mine", 60, "41,030 mi"), "elsewhere"));
  log.add(replacing(odometer("yours", 61, "41,003 mi"), "elsewhere"));
  View seen = view(log);
  ASSERT_EQ(seen.bikes[0].lines.size(), 1U);
  EXPECT_TRUE(seen.bikes[0].lines[0].apart);
  EXPECT_TRUE(has(seen.findings, 306));
  log.add(odometer("elsewhere", 1, "41,300 mi"));
  seen = view(log);
  ASSERT_EQ(seen.bikes[0].lines.size(), 1U);
  EXPECT_EQ(ids(log, seen.bikes[0].lines[0].replaced), Ids{"elsewhere"});
  EXPECT_FALSE(has(seen.findings, 306));
}

TEST(LogView, CirclesAndSelvesHideNothing) {
  Log log;
  log.add(replacing(odometer("a", 1, "1 mi"), "b"));
  log.add(replacing(odometer("b", 2, "2 mi"), "a"));
  log.add(replacing(odometer("c", 3, "3 mi"), "c"));
  log.add(replacing(odometer("d", 4, "4 mi"), Json::array({"e", "x"})));
  log.add(replacing(odometer("e", 5, "5 mi"), "d"));
  log.add(replacing(odometer("f", 6, "6 mi"), "d"));  // settles the circle of d and e
  const View seen = view(log);
  EXPECT_EQ(ids(log, line_with(log, seen.bikes[0], "a")->current), (Ids{"a", "b"}));
  EXPECT_EQ(ids(log, line_with(log, seen.bikes[0], "c")->current), Ids{"c"});
  EXPECT_EQ(ids(log, line_with(log, seen.bikes[0], "d")->current), Ids{"f"});
  EXPECT_TRUE(has(seen.findings, 304));
  EXPECT_TRUE(has(seen.findings, 305));
}

TEST(LogView, ABikeWhoseLinesAreAllDeletedIsRemoved) {
  Log log;
  log.add(facts());
  log.add(odometer("o1", 1, "41,300 mi"));
  log.add(odometer("other", 1, "7 mi", "another bike"));
  log.add(replacing(make_entry("deletion", brindle, stamp("d", 9)), Json::array({"facts", "o1"})));
  const View seen = view(log);
  EXPECT_TRUE(find_bike(seen, brindle)->removed);
  EXPECT_FALSE(find_bike(seen, "another bike")->removed);
  EXPECT_TRUE(bikes_called(seen, "Brindle").empty());
}

TEST(LogView, AnEntryOfTheWrongBikeMovesByACorrection) {
  Log log = brindle_log();
  log.add(replacing(odometer("o2", 60, "41,300 mi", "another bike"), "o1"));
  const View seen = view(log);
  EXPECT_EQ(line_with(log, *find_bike(seen, brindle), "o1"), nullptr);
  EXPECT_NE(line_with(log, *find_bike(seen, "another bike"), "o1"), nullptr);
}

TEST(LogView, UnknownKindsAndWhatIsNoEntryAreStillThere) {
  Log log = brindle_log();
  log.add(entry("gizmo", "g1", 9, {{"new", true}}));
  log.add(Entry{Record{Json::array({1, 2})}});
  log.add(Entry{Record{Json::array({1, 2})}});
  log.add(odometer("", 9, "5 mi"));
  EXPECT_EQ(log.size(), 8U);
  const View seen = view(log);
  EXPECT_NE(line_with(log, *find_bike(seen, brindle), "g1"), nullptr);
  EXPECT_EQ(find_bike(seen, "")->lines.size(), 1U);
}

TEST(IsoTime, GoesToUtcAndBack) {
  EXPECT_EQ(utc_milliseconds("1970-01-01T00:00:00Z"), 0);
  EXPECT_EQ(utc_milliseconds("2024-05-14T10:20:00.250-05:00"), 1'715'700'000'250);
  EXPECT_EQ(utc_milliseconds("2024-05-14T20:50:00+05:30"), 1'715'700'000'000);
  EXPECT_EQ(utc_milliseconds("1969-12-31T23:59:59.999Z"), -1);
  EXPECT_EQ(utc_milliseconds("2024-05-14"), 1'715'644'800'000);
  EXPECT_FALSE(utc_milliseconds("2024-02-30"));
  EXPECT_FALSE(utc_milliseconds("2024-05-14T10:20:00"));
  EXPECT_EQ(iso_time(-1, 0), "1969-12-31T23:59:59.999+00:00");
  EXPECT_EQ(iso_time(0, 330), "1970-01-01T05:30:00.000+05:30");
  for (const std::int64_t ms : {-62'135'596'800'000, 951'782'400'001, 4'102'444'799'999})
    for (const int offset : {-720, -1, 0, 345, 840}) EXPECT_EQ(utc_milliseconds(iso_time(ms, offset)), ms);
}

}  // namespace
}  // namespace camside::records
