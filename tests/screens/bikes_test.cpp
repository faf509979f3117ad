// The place "Bikes" as a person handles it: by what stands on the screen.
#include "log/bike_code.hpp"
#include "log/log_file.hpp"
#include "records/new_id.hpp"
#include "screens/harness.hpp"
#include "screens/words.hpp"

namespace camside::screens::test {
namespace {

using records::Entry;

Entry entry_of(const char* kind, const char* id, const char* bike, const char* made, records::Json entered) {
  Entry entry = records::make_entry(kind, bike, {id, made, ""});
  entry.record.entered() = std::move(entered);
  return entry;
}

Entry bike_called(const char* name, const char* id) {
  return entry_of("facts", id, id, "2026-01-02T10:00:00.000+01:00", {{"nickname", name}, {"odometer_unit", "mi"}});
}

Entry reading(const char* id, const char* made, const char* text) {
  return entry_of("odometer", id, "b1", made, {{"reading", text}});
}

std::vector<Entry> one_bike() {
  return {bike_called("Brindle", "b1")};
}

Harness::Options with(std::vector<Entry> log) {
  return {.bikes = true, .log = std::move(log)};
}

struct Bikes : testing::Test {
  static void open(Harness& h) { h.tap("Bikes"); }
  static void open_brindle(Harness& h) {
    h.tap("Bikes");
    h.tap("Brindle");
  }
  static void log_odometer(Harness& h, const std::string& digits) {
    h.tap(words::log_odometer());
    h.type_on_keypad(digits);
    h.tap(words::done());
  }
  static std::size_t kept_of(const Harness& h, std::string_view kind) {
    return static_cast<std::size_t>(std::count_if(h.log_store.kept.begin(), h.log_store.kept.end(),
                                                  [&](const Entry& e) { return e.kind() == kind; }));
  }
};

TEST_F(Bikes, WithoutALogThePlaceSaysWhatIsComing) {
  Harness h({});
  open(h);
  EXPECT_NE(h.find_text(words::bikes_coming()), nullptr);
  EXPECT_EQ(h.find(words::add_bike()), nullptr);
}

TEST_F(Bikes, AnEmptyLogSaysWhatToDo) {
  Harness h(with({}));
  open(h);
  EXPECT_NE(h.find_text(words::no_bikes_help()), nullptr);
  EXPECT_NE(h.find(words::add_bike()), nullptr);
  EXPECT_NE(h.find(words::show_demo_bike()), nullptr);
}

TEST_F(Bikes, ABikeIsAddedByItsFieldsAndStandsInTheList) {
  Harness h(with({}));
  open(h);
  h.tap(words::add_bike());
  h.tap("Nickname");
  h.platform.asked.changed("Brindle");
  h.run();
  h.tap("Two cams, chains with spring-loaded tensioners");
  h.tap("Model year");
  h.type_on_keypad("2003");
  h.tap(words::done());
  h.tap("Miles");
  h.tap(words::save());
  ASSERT_EQ(h.log_store.kept.size(), 1U);
  EXPECT_EQ(h.log_store.kept[0].entered_text("nickname"), "Brindle");
  EXPECT_EQ(h.log_store.kept[0].entered_text("engine"), "two cams, sprung chains");
  EXPECT_EQ(h.log_store.kept[0].entered_text("odometer_unit"), "mi");
  h.tap(words::back());
  ASSERT_NE(h.find("Brindle"), nullptr);
  EXPECT_EQ(h.find("Brindle")->value, "2003\nNo proof: Outer tensioner shoe");
}

TEST_F(Bikes, ABikeWithoutANameIsNotTakenAndSaysWhy) {
  Harness h(with({}));
  open(h);
  h.tap(words::add_bike());
  ASSERT_NE(h.find("Nickname"), nullptr);
  const float calm = h.find("Nickname")->max.y - h.find("Nickname")->min.y;
  h.tap(words::save());
  EXPECT_GT(h.find("Nickname")->max.y - h.find("Nickname")->min.y, calm) << "what is missing is said when saving";
  EXPECT_TRUE(h.log_store.kept.empty());
  EXPECT_NE(h.find_text(words::no_nickname()), nullptr);
}

TEST_F(Bikes, TheOdometerIsLoggedInTwoTapsAndItsDigits) {
  Harness h(with(one_bike()));
  open_brindle(h);
  log_odometer(h, "41310");
  ASSERT_EQ(kept_of(h, "odometer"), 1U);
  EXPECT_EQ(h.log_store.kept.back().entered_text("reading"), "41310 mi");
  EXPECT_EQ(h.log_store.kept.back().bike(), "b1");
  EXPECT_NE(h.find("Odometer: 41310 mi"), nullptr);
  h.tap(words::back());
  EXPECT_EQ(h.find("Brindle")->value, "41310 mi");
}

TEST_F(Bikes, AnOdometerLeftEmptyLogsNothing) {
  Harness h(with(one_bike()));
  open_brindle(h);
  h.tap(words::log_odometer());
  h.tap(words::done());
  EXPECT_EQ(kept_of(h, "odometer"), 0U);
  EXPECT_NE(h.find(words::log_odometer()), nullptr);
}

TEST_F(Bikes, AReadingThatCannotBeTakenStaysWithWhatIsWrong) {
  Harness h(with(one_bike()));
  open_brindle(h);
  h.tap(words::log_odometer());
  h.type_on_keypad("9999999");
  h.tap(words::done());
  EXPECT_EQ(kept_of(h, "odometer"), 0U);
  ASSERT_NE(h.find("Odometer"), nullptr);
  EXPECT_EQ(h.find("Odometer")->value, "9999999 mi");
}

void write_half_a_note(Harness& h) {
  h.tap(words::add_an_entry());
  h.tap("Note");
  h.tap("Note");
  h.platform.asked.changed("Rattles when cold");
  h.run();
}

TEST_F(Bikes, WhatWasTypedWaitsWhenOneGoesBack) {
  Harness h(with(one_bike()));
  open_brindle(h);
  write_half_a_note(h);
  h.tap(words::back());
  h.tap(words::unfinished("Note"));
  ASSERT_NE(h.find("Note"), nullptr);
  EXPECT_EQ(h.find("Note")->value, "Rattles when cold");
  h.tap(words::save());
  EXPECT_EQ(kept_of(h, "note"), 1U);
  EXPECT_EQ(h.find(words::unfinished("Note")), nullptr);
}

TEST_F(Bikes, WhatWasTypedOutlivesTheProgram) {
  Harness::Options options = with(one_bike());
  {
    Harness h(options);
    open_brindle(h);
    write_half_a_note(h);
    options.kept = h.store.kept;  // and then the battery was empty
  }
  {
    Harness h(options);
    h.tap(words::bikes());
    h.tap(words::unfinished("Note"));
    ASSERT_NE(h.find("Note"), nullptr);
    EXPECT_EQ(h.find("Note")->value, "Rattles when cold");
    h.tap(words::save());
    EXPECT_EQ(kept_of(h, "note"), 1U);
    options.kept = h.store.kept;
  }
  Harness h(options);
  h.tap(words::bikes());
  EXPECT_EQ(h.find(words::unfinished("Note")), nullptr);
}

TEST_F(Bikes, TheNewestStandsOnTop) {
  Harness h(with({bike_called("Brindle", "b1"), reading("o1", "2026-02-01T10:00:00.000+01:00", "100 mi"),
                  reading("o2", "2026-03-01T10:00:00.000+01:00", "200 mi")}));
  open_brindle(h);
  ASSERT_NE(h.find("Odometer: 200 mi"), nullptr);
  EXPECT_LT(h.find("Odometer: 200 mi")->min.y, h.find("Odometer: 100 mi")->min.y);
}

TEST_F(Bikes, ACorrectionIsANewEntryAndTheOldOneIsStillThere) {
  Harness h(with({bike_called("Brindle", "b1"), reading("o1", "2026-02-01T10:00:00.000+01:00", "100 mi")}));
  open_brindle(h);
  h.tap("Odometer: 100 mi");
  h.tap(words::correct());
  h.tap("Odometer");
  h.type_on_keypad("110");
  h.tap(words::done());
  h.tap(words::save());
  ASSERT_EQ(kept_of(h, "odometer"), 2U);
  EXPECT_EQ(h.log_store.kept.back().replaces(), std::vector<std::string>{"o1"});
  EXPECT_NE(h.find_text("110 mi"), nullptr);
  EXPECT_NE(h.find_text(words::before()), nullptr);
  h.tap(words::back());
  EXPECT_NE(h.find("Odometer: 110 mi"), nullptr);
  EXPECT_EQ(h.find("Odometer: 100 mi"), nullptr);
}

TEST_F(Bikes, WhatIsDeletedIsUndoneInOneTap) {
  Harness h(with({bike_called("Brindle", "b1"), reading("o1", "2026-02-01T10:00:00.000+01:00", "100 mi")}));
  open_brindle(h);
  h.tap("Odometer: 100 mi");
  h.tap(words::delete_entry());
  h.tap(words::back());
  EXPECT_EQ(h.find("Odometer: 100 mi"), nullptr);
  h.tap("Saved: Odometer: 100 mi deleted");
  EXPECT_NE(h.find("Odometer: 100 mi"), nullptr);
  EXPECT_EQ(h.log_store.kept.size(), 4U) << "the log only grows";
}

TEST_F(Bikes, WhatWasDeletedLongAgoIsFoundAndBroughtBack) {
  Entry gone = records::make_entry("deletion", "b1", {"d1", "2026-03-01T10:00:00.000+01:00", ""});
  gone.record.json["replaces"] = "o1";
  Harness h(
      with({bike_called("Brindle", "b1"), reading("o1", "2026-02-01T10:00:00.000+01:00", "100 mi"), std::move(gone)}));
  open_brindle(h);
  EXPECT_EQ(h.find("Odometer: 100 mi"), nullptr);
  h.tap("Deleted");
  h.tap("Odometer: 100 mi");
  h.tap(words::bring_back());
  h.tap(words::back());
  EXPECT_NE(h.find("Odometer: 100 mi"), nullptr);
  EXPECT_EQ(h.find(words::all_kinds()), nullptr) << "nothing is deleted any more, and the log is seen at a glance";
}

TEST_F(Bikes, TheFilterShowsOneKind) {
  std::vector<Entry> log{bike_called("Brindle", "b1"), reading("o0", "2026-02-01T10:00:00.000+01:00", "100 mi")};
  for (const char* const more : {"o1", "o2", "o3", "o4", "o5", "o6", "o7"})
    log.push_back(reading(more, "2026-02-02T10:00:00.000+01:00", "110 mi"));
  Harness h(with(std::move(log)));
  open_brindle(h);
  h.tap("Odometer");
  EXPECT_NE(h.find("Odometer: 100 mi"), nullptr);
  EXPECT_EQ(h.find("The bike: Brindle"), nullptr);
  h.tap(words::all_kinds());
  EXPECT_NE(h.find("The bike: Brindle"), nullptr);
}

TEST_F(Bikes, TheDemoBikeSaysThatItIsInventedAndGoesInOneTap) {
  Harness h(with({}));
  open(h);
  h.tap(words::show_demo_bike());
  EXPECT_NE(h.find_text(words::invented_bike()), nullptr);
  const std::size_t demo = h.log_store.kept.size();
  EXPECT_GE(demo, 5U);
  h.tap(words::remove_demo());
  EXPECT_NE(h.find_text(words::no_bikes_yet()), nullptr);
  EXPECT_EQ(h.log_store.kept.size(), 2 * demo);
  EXPECT_EQ(kept_of(h, "deletion"), demo);
}

std::vector<Entry> bike_with_old_oil() {
  Entry facts = bike_called("Brindle", "b1");
  facts.record.entered()["engine"] = "two cams, sprung chains";
  Entry oil = entry_of("service", "s1", "b1", "2025-01-02T10:00:00.000+01:00",
                       {{"items", {"Fork oil"}}, {"odometer", "41,000 mi"}, {"proof", "paper"}});
  Entry rule = entry_of("rule", "r1", "b1", "2025-01-02T11:00:00.000+01:00", {{"item", "Fork oil"}, {"months", 12}});
  return {facts, oil, rule};
}

TEST_F(Bikes, TheListSaysWhatIsDueFirst) {
  Harness h(with(bike_with_old_oil()));
  open(h);
  ASSERT_NE(h.find("Brindle"), nullptr);
  EXPECT_NE(h.find("Brindle")->value.find("Overdue: "), std::string::npos) << h.find("Brindle")->value;
}

TEST_F(Bikes, WhatIsDueOpensWithItsReasonAndIsLoggedWithItsNameFilledIn) {
  Harness h(with(bike_with_old_oil()));
  open_brindle(h);
  h.tap("Fork oil");
  EXPECT_NE(h.find_text("Overdue by"), nullptr);
  EXPECT_NE(h.find_text("Why: every 12 months"), nullptr);
  h.tap(words::log_it_done());
  EXPECT_NE(std::find_if(h.items().begin(), h.items().end(), [](const Item& i) { return i.value == "Fork oil"; }),
            h.items().end());
}

// Fixes, parts, facts, limits and waits of the book are read here.
TEST_F(Bikes, WhatIsKnownOfItsEngineIsATapAway) {
  Entry facts = entry_of("facts", "f1", "b1", "2026-05-01T10:00:00.000+02:00",
                         {{"nickname", "Brindle"}, {"engine", "two cams, sprung chains"}});
  Harness h(with({facts}));
  open_brindle(h);
  EXPECT_EQ(h.find_text("Replace while in there"), nullptr);
  h.tap("What is known of this engine");
  for (const char* heading :
       {"Worth knowing", "Ways to put the cam side right", "Replace while in there", "Limits", "Waits"})
    EXPECT_NE(h.find_text(heading), nullptr) << heading;
  EXPECT_NE(h.find_text("Cures the runout and helps keep it from shifting"), nullptr);
}

TEST_F(Bikes, WhatWasPutOffStandsThereWithItsReason) {
  std::vector<Entry> log = bike_with_old_oil();
  log.push_back(entry_of("snooze", "z1", "b1", "2026-05-01T10:00:00.000+02:00",
                         {{"item", "Fork oil"}, {"until", "2026-07-01"}, {"reason", "parts on their way"}}));
  Harness h(with(log));
  open_brindle(h);
  for (const Item& item : h.items())
    if (item.label.starts_with("Show all ")) {
      h.tap(std::string(item.label));
      break;
    }
  h.tap("Fork oil");
  EXPECT_NE(h.find_text("Put off until 2026-07-01: parts on their way"), nullptr);
  EXPECT_NE(h.find_text("Overdue by"), nullptr) << "putting off changes no state";
}

TEST_F(Bikes, RemindersLeaveAsACalendarFileAndAreNoCopyOfTheLog) {
  Harness h(with(bike_with_old_oil()));
  h.platform.ways.save = true;
  open_brindle(h);
  h.tap(words::reminders());
  EXPECT_EQ(h.platform.gave_name, "camside-due-2026-05-03.ics");
  EXPECT_NE(h.platform.gave.find("SUMMARY:Brindle: Fork oil"), std::string::npos);
  EXPECT_NE(h.find_text(words::file_left()), nullptr);
  h.tap("Back");
  EXPECT_NE(h.find_text("No copy was made here yet"), nullptr);
}

TEST_F(Bikes, AMeasurementGoesToTheOnlyBikeInOneTapAndComesBackWithItsDrawing) {
  Harness h(with(one_bike()));
  h.tap("Runout");
  h.tap(words::show_example());
  h.tap(words::log_to("Brindle"));
  ASSERT_EQ(kept_of(h, "measurement"), 1U);
  EXPECT_NE(h.find_text(words::saved_in_log_of("Brindle")), nullptr);
  h.tap(words::new_measurement());
  EXPECT_EQ(h.find_text("runout drawing"), nullptr);
  open_brindle(h);
  const Item* const line = h.find_text("Runout: ");
  ASSERT_NE(line, nullptr);
  h.tap(std::string(line->label));
  h.tap(words::show_on_bench());
  EXPECT_EQ(h.shell->place(), PlaceId::Bench);
  EXPECT_NE(h.find_text("runout drawing"), nullptr);
  EXPECT_NE(h.find_text(words::saved_in_log_of("Brindle")), nullptr);
  EXPECT_EQ(h.shell->job().job().records.size(), 2U) << "it lay on the Bench still, no copy of it was made";
}

TEST_F(Bikes, AMeasurementThatIsNoLongerOnTheBenchIsPutThere) {
  Harness h(with({}));
  open(h);
  h.tap(words::show_demo_bike());
  h.tap("Runout: Pinion shaft, plate off");
  h.tap(words::show_on_bench());
  ASSERT_EQ(h.shell->job().job().records.size(), 1U);
  EXPECT_NE(h.find_text("runout drawing"), nullptr);
}

TEST_F(Bikes, OfSeveralBikesOneIsChosen) {
  Harness h(with({bike_called("Brindle", "b1"), bike_called("Second", "b2")}));
  h.tap("Runout");
  h.tap(words::show_example());
  h.tap(words::log_to_a_bike());
  EXPECT_EQ(kept_of(h, "measurement"), 0U);
  h.tap("Second");
  ASSERT_EQ(kept_of(h, "measurement"), 1U);
  EXPECT_EQ(h.log_store.kept.back().bike(), "b2");
}

TEST_F(Bikes, SavedIsSaidOnlyWhenTheStoreSaysSo) {
  Harness h(with(one_bike()));
  h.tap("Runout");
  h.tap(words::show_example());
  h.log_store.held = true;
  h.tap(words::log_to("Brindle"));
  EXPECT_EQ(h.find_text(words::saved_in_log_of("Brindle")), nullptr);
  EXPECT_NE(h.find_text(words::saving()), nullptr);
  h.log_store.held = false;
  h.run();
  EXPECT_NE(h.find_text(words::saved_in_log_of("Brindle")), nullptr);
}

TEST_F(Bikes, AFailedSaveIsShownAndGoesAgain) {
  Harness h(with(one_bike()));
  open_brindle(h);
  h.log_store.failing = true;
  log_odometer(h, "500");
  EXPECT_NE(h.find_text("The log's disk is full"), nullptr);
  EXPECT_NE(h.find("Odometer: 500 mi"), nullptr) << "it is in memory all the same";
  h.log_store.failing = false;
  h.tap(words::try_again());
  EXPECT_EQ(h.find_text("The log's disk is full"), nullptr);
  EXPECT_EQ(kept_of(h, "odometer"), 1U);
}

TEST_F(Bikes, ARestartKeepsAll) {
  std::vector<Entry> kept;
  {
    Harness h(with(one_bike()));
    open_brindle(h);
    log_odometer(h, "500");
    log_odometer(h, "600");
    kept = h.log_store.kept;
  }
  Harness again(with(kept));
  open(again);
  EXPECT_EQ(again.find("Brindle")->value, "600 mi");
  again.tap("Brindle");
  ASSERT_NE(again.find("Odometer: 500 mi"), nullptr);
  EXPECT_LT(again.find("Odometer: 600 mi")->min.y, again.find("Odometer: 500 mi")->min.y)
      << "entries of one second stand in the order in which they were made";
}

std::vector<Entry> changed_apart() {
  Entry here = reading("o2", "2026-03-01T10:00:00.000+01:00", "110 mi");
  Entry there = reading("o3", "2026-03-01T11:00:00.000+01:00", "101 mi");
  here.record.json["replaces"] = there.record.json["replaces"] = "o1";
  return {bike_called("Brindle", "b1"), reading("o1", "2026-02-01T10:00:00.000+01:00", "100 mi"), here, there};
}

TEST_F(Bikes, WhatWasChangedApartStandsSideBySideUntilOneIsKept) {
  Harness h(with(changed_apart()));
  open_brindle(h);
  h.tap("Odometer: 110 mi");
  EXPECT_NE(h.find_text(words::changed_apart_help()), nullptr);
  EXPECT_NE(h.find_text("110 mi"), nullptr);
  EXPECT_NE(h.find_text("101 mi"), nullptr);
  h.tap(words::keep_nth(2, 2));
  EXPECT_EQ(h.find_text(words::changed_apart_help()), nullptr);
  EXPECT_EQ(h.log_store.kept.back().entered_text("reading"), "101 mi");
  EXPECT_EQ(h.log_store.kept.back().replaces().size(), 2U);
}

TEST_F(Bikes, ALogThatIsReadOnlySaysSoAndOffersNoChange) {
  Harness h({.bikes = true,
             .log = one_bike(),
             .log_findings = {{350, Severity::Caution, "", "The log is open elsewhere", "Close it there"}},
             .log_read_only = true});
  open(h);
  EXPECT_NE(h.find_text(words::log_read_only()), nullptr);
  EXPECT_NE(h.find_text("The log is open elsewhere"), nullptr);
  EXPECT_EQ(h.find(words::add_bike()), nullptr);
  h.tap("Brindle");
  EXPECT_EQ(h.find(words::log_odometer()), nullptr);
  EXPECT_EQ(h.find(words::change_facts()), nullptr);
}

TEST_F(Bikes, ALongLogMakesOnlyTheRowsNearTheWindow) {
  std::vector<Entry> log = one_bike();
  for (int i = 0; i < 2000; ++i) {
    const std::string id = "o" + std::to_string(i);
    log.push_back(reading(id.c_str(), "2026-02-01T10:00:00.000+01:00", (std::to_string(1000 + i) + " mi").c_str()));
  }
  Harness h(with(std::move(log)));
  open_brindle(h);
  EXPECT_LT(h.items().size(), 120U);
  const Item* const row = h.find_text("Odometer: ");
  ASSERT_NE(row, nullptr);
}

TEST_F(Bikes, AnotherPlaceIsReachedFromAQuestionOnAWideScreen) {
  for (const ImVec2 size : {ImVec2{1440, 900}, ImVec2{844, 390}}) {
    Harness h({.size = size, .bikes = true, .log = one_bike()});
    h.tap("Runout");
    h.tap(words::show_example());
    h.tap("Settings");
    EXPECT_EQ(h.shell->place(), PlaceId::Setup);
    h.tap("Bikes");
    h.tap("Brindle");
    EXPECT_NE(h.find(words::log_odometer()), nullptr);
  }
}

TEST_F(Bikes, ComesBackToTheBikeThatWasOpen) {
  Harness h(with(one_bike()));
  open_brindle(h);
  Harness::Options options = with(one_bike());
  options.kept = h.store.kept;
  Harness again(options);
  EXPECT_EQ(again.shell->place(), PlaceId::Bikes);
  EXPECT_NE(again.find(words::log_odometer()), nullptr);
}

TEST_F(Bikes, ComesBackToTheList) {
  Harness h(with(one_bike()));
  open_brindle(h);
  Harness again({.kept = h.store.kept, .bikes = true});  // and the bike isn't in the log any more
  EXPECT_EQ(again.shell->place(), PlaceId::Bikes);
  EXPECT_EQ(again.find(words::log_odometer()), nullptr);
}

// ---- copies of the log

std::string copy_of(const std::vector<Entry>& entries) {
  records::Log log;
  for (const Entry& entry : entries) log.add(entry);
  return records::export_log(log);
}

TEST_F(Bikes, ACopyHoldsAllAndItsDayIsKept) {
  Harness h(with(one_bike()));
  h.platform.ways.save = true;
  open(h);
  EXPECT_NE(h.find_text(words::copy_age(std::nullopt)), nullptr);
  h.tap(words::save_copy());
  EXPECT_EQ(h.platform.gave, copy_of(one_bike()));
  EXPECT_EQ(h.platform.gave_name, "camside-log-2026-05-03.json");
  EXPECT_NE(h.find_text(words::copy_age(0)), nullptr);
  Harness later({.kept = h.store.kept, .bikes = true, .log = one_bike()});
  later.platform.ways.save = true;
  later.platform.today = "2026-05-13";
  open(later);
  EXPECT_NE(later.find_text(words::copy_age(10)), nullptr);
}

TEST_F(Bikes, ACopyLeavesThoughNothingCanBeSaved) {
  Harness h(with(one_bike()));
  h.platform.ways.save = true;
  h.log_store.failing = true;
  open_brindle(h);
  log_odometer(h, "41310");
  h.tap(words::save_copy());
  EXPECT_NE(h.platform.gave.find("41310 mi"), std::string::npos);
}

TEST_F(Bikes, WhatACopyBringsIsShownBeforeItIsTakenIn) {
  Harness h(with(one_bike()));
  std::vector<Entry> theirs = one_bike();
  theirs.push_back(reading("o1", "2026-01-03T10:00:00.000+01:00", "41,310 mi"));
  theirs.push_back(bike_called("Tern", "b2"));
  h.platform.come = FileCome{"phone.json", copy_of(theirs), ""};
  h.run();  // on the Bench
  EXPECT_EQ(h.shell->place(), PlaceId::Bikes);
  EXPECT_NE(h.find_text("2 entries new"), nullptr);
  EXPECT_NE(h.find_text("1 entry known"), nullptr);
  EXPECT_NE(h.find_text("New bike: Tern"), nullptr);
  EXPECT_EQ(h.log_store.kept.size(), 1U);
  h.platform.ways.save = true;
  h.tap(words::take_in(2));
  EXPECT_EQ(h.log_store.kept.size(), 3U);
  EXPECT_NE(h.find("Tern"), nullptr);
  EXPECT_NE(h.find_text(words::taken_in(2)), nullptr);
}

TEST_F(Bikes, ALargeCopyIsAnnouncedBeforeItIsRead) {
  Harness h(with(one_bike()));
  Entry wordy = reading("o1", "2026-01-03T10:00:00.000+01:00", "41,310 mi");
  wordy.record.json["note"] = std::string(1'200'000, 'x');
  h.platform.come = FileCome{"phone.json", copy_of({bike_called("Tern", "b2"), wordy}), ""};
  bool announced = false;
  for (int frame = 0; frame < 5; ++frame) {
    h.frame();
    announced = announced || h.find_text("Reading 1 MB …") != nullptr;
  }
  EXPECT_TRUE(announced);
  EXPECT_EQ(h.find_text("Reading 1 MB …"), nullptr);
  EXPECT_NE(h.find_text("2 entries new"), nullptr);
}

TEST_F(Bikes, AnImportIsTakenBackInOneTapAndBroughtAgainInOne) {
  std::vector<Entry> ours = one_bike();
  ours.push_back(reading("o1", "2026-01-03T10:00:00.000+01:00", "41,310 mi"));
  ours.push_back(reading("o2", "2026-01-04T10:00:00.000+01:00", "41,320 mi"));
  Harness h(with(ours));
  Entry corrected = reading("o3", "2026-01-05T10:00:00.000+01:00", "41,399 mi");
  corrected.record.json["replaces"] = "o2";
  h.platform.come = FileCome{"phone.json", copy_of({bike_called("Tern", "b2"), corrected, ours[1]}), ""};
  h.run();
  h.tap(words::take_in(2));
  ASSERT_EQ(h.log_store.kept.size(), 5U);
  ASSERT_NE(h.find("Tern"), nullptr);
  EXPECT_EQ(h.find("Brindle")->value, "41,399 mi");
  h.tap(words::change_and_state(words::saved(), words::taken_in(2)));
  EXPECT_EQ(h.log_store.kept.size(), 7U) << "the log only grows";
  EXPECT_EQ(h.find("Tern"), nullptr);
  EXPECT_EQ(h.find("Brindle")->value, "41,320 mi");
  h.tap("Brindle");
  EXPECT_NE(h.find("Odometer: 41,310 mi"), nullptr) << "what was here before the copy stays";
  h.tap(words::back());
  h.tap(words::change_and_state(words::saved(), words::taken_back(2)));
  EXPECT_NE(h.find("Tern"), nullptr);
  EXPECT_EQ(h.find("Brindle")->value, "41,399 mi");
}

TEST_F(Bikes, ABikeIsShownAsACodeThatBringsItsWholeLog) {
  Harness h(with({bike_called("Brindle", "b1"), reading("o1", "2026-01-03T10:00:00.000+01:00", "41,310 mi"),
                  bike_called("Tern", "b2")}));
  h.platform.address = "https://camside.example/";
  open_brindle(h);
  h.tap(words::show_as_code());
  const Item* const code = h.find_text(words::code_of("Brindle"));
  ASSERT_NE(code, nullptr);
  EXPECT_TRUE(std::any_of(h.items().begin(), h.items().end(), [](const Item& i) { return i.role == Role::Drawing; }));
  EXPECT_NE(h.find_text("Whole log: 2 entries"), nullptr) << "of this bike alone";
  EXPECT_TRUE(h.platform.awake);
  EXPECT_EQ(h.find(words::log_odometer()), nullptr);
  h.tap(words::back());
  EXPECT_NE(h.find(words::log_odometer()), nullptr);
  EXPECT_FALSE(h.platform.awake);
}

TEST_F(Bikes, ABikeTooBigForACodeSaysSoAndLeavesAsAFile) {
  std::vector<Entry> log = one_bike();
  for (int n = 0; n < 90; ++n)
    log.push_back(reading(records::new_id().c_str(), "2026-02-01T10:00:00.000+01:00", "41,310 mi"));
  log.push_back(bike_called("Tern", "b2"));
  Harness h(with(log));
  h.platform.address = "https://camside.example/";
  h.platform.ways = {.share = true, .save = true, .pick = true};
  open_brindle(h);
  h.tap(words::show_as_code());
  EXPECT_NE(h.find_text("Brindle is too big for a QR code: its log takes "), nullptr);
  h.tap(words::save_bike());
  EXPECT_EQ(h.platform.gave_name, "camside-bike-2026-05-03.json");
  log.pop_back();
  EXPECT_EQ(h.platform.gave, copy_of(log));
  EXPECT_NE(h.find_text(words::file_left()), nullptr);
  h.tap(words::back());
  h.tap(words::back());
  EXPECT_NE(h.find_text(words::copy_age(std::nullopt)), nullptr) << "one bike is no copy of the log";
}

TEST_F(Bikes, WithoutAPageACodeNeedsItsAddressOnce) {
  Harness h(with(one_bike()));
  open_brindle(h);
  h.tap(words::show_as_code());
  EXPECT_NE(h.find_text(words::needs_address()), nullptr);
  ImGui::SetClipboardText("no address");
  h.tap(words::take_address());
  EXPECT_NE(h.find_text(words::no_address_found()), nullptr);
  ImGui::SetClipboardText(" https://camside.example/app/?a=b#c \n");
  h.tap(words::take_address());
  EXPECT_NE(h.find_text(words::code_opens("https://camside.example/app/")), nullptr);
  Harness later({.kept = h.store.kept, .bikes = true, .log = one_bike()});
  later.tap(words::show_as_code());
  EXPECT_NE(later.find_text(words::code_opens("https://camside.example/app/")), nullptr);
}

TEST_F(Bikes, AnAddressOfThisDeviceAloneIsSaidToBe) {
  Harness h(with(one_bike()));
  h.platform.address = "http://localhost:8080/";
  open_brindle(h);
  h.tap(words::show_as_code());
  EXPECT_NE(h.find_text(words::only_this_device()), nullptr);
}

TEST_F(Bikes, ACodeIsLookedAtBeforeItIsTakenInAndADamagedOneSaysWhatToDo) {
  const std::string code = std::string(records::code_mark) + records::code_of_bike(copy_of(one_bike())).value_or("");
  Harness h(with({}));
  h.platform.come = FileCome{"", code, ""};
  h.run();
  EXPECT_NE(h.find_text(words::came_by_code()), nullptr);
  EXPECT_NE(h.find_text("New bike: Brindle"), nullptr);
  EXPECT_TRUE(h.log_store.kept.empty());
  h.tap(words::take_in(1));
  EXPECT_EQ(h.log_store.kept.size(), 1U);
  h.platform.come = FileCome{"", code.substr(0, code.size() - 20), ""};
  h.run();
  EXPECT_NE(h.find_text("The bike in the QR code can't be read"), nullptr);
  EXPECT_NE(h.find_text("Point the camera at the code once more"), nullptr);
  EXPECT_FALSE(h.find(words::take_in(0))->enabled);
}

TEST_F(Bikes, ACopyCanBeLeftAndOneThatCannotBeReadSaysWhy) {
  Harness h(with(one_bike()));
  h.platform.come = FileCome{"phone.json", copy_of({bike_called("Tern", "b2")}), ""};
  h.run();
  h.tap(words::back());
  EXPECT_EQ(h.log_store.kept.size(), 1U);
  EXPECT_EQ(h.find("Tern"), nullptr);
  h.platform.come = FileCome{"other.json", "no log at all", ""};
  h.run();
  ASSERT_NE(h.find(words::take_in(0)), nullptr);
  EXPECT_FALSE(h.find(words::take_in(0))->enabled);
  h.tap(words::back());
  h.platform.come = FileCome{"lost.json", "", "there is no such file"};
  h.run();
  EXPECT_NE(h.find_text("there is no such file"), nullptr);
}

TEST_F(Bikes, AnEntryBeingWrittenOutlivesACopyAndAnotherWindowThatTakesOver) {
  Harness h(with(one_bike()));
  h.log_store.shared = true;
  open_brindle(h);
  h.tap(words::log_odometer());
  h.type_on_keypad("41310");
  h.log_store.tell({reading("o7", "2026-01-03T10:00:00.000+01:00", "41,305 mi")}, true);
  h.run();
  h.tap(words::done());
  EXPECT_EQ(kept_of(h, "odometer"), 0U);
  EXPECT_NE(h.find("Odometer: 41,305 mi"), nullptr);
  h.tap(words::write_here());
  EXPECT_EQ(h.find(words::write_here()), nullptr);
  h.tap(words::unfinished("Odometer"));
  h.tap(words::save());
  EXPECT_EQ(kept_of(h, "odometer"), 1U);
}

}  // namespace
}  // namespace camside::screens::test
