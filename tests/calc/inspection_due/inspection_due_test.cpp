#include "calc/inspection_due/inspection_due.hpp"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <limits>

#include "calc/answers.hpp"
#include "calc/inspection_due/inspection_due_inputs.hpp"
#include "oracle/inspection_due_rows.hpp"
#include "units/format.hpp"

namespace camside::inspection_due {
namespace {

std::string field_of(const Findings& findings, int number) {
  for (const Finding& f : findings)
    if (f.number == number) return f.field;
  return "not found";
}

std::string remedy_of(const Findings& findings, int number) {
  for (const Finding& f : findings)
    if (f.number == number) return f.remedy;
  return "";
}

// One item, last done with proof, the clock at `miles` today.
Input one_item(Item i, Date today, double miles) {
  Input in;
  in.today = today;
  in.log = {reading(today, miles)};
  in.items = {std::move(i)};
  return in;
}

Item shoes(std::vector<Service> services) {
  Item i = item("Tensioner shoes", 30'000.0, 60);
  i.services = std::move(services);
  return i;
}

// ---- calendar ----

TEST(DueCalendar, DaysBetweenMeetThePublishedCounts) {
  for (const auto& r : oracle::days_rows) EXPECT_EQ(days_between(day(r.y1, r.m1, r.d1), day(r.y2, r.m2, r.d2)), r.days);
}

TEST(DueCalendar, MonthsClampToTheEndOfTheMonth) {
  for (const auto& r : oracle::months_rows)
    EXPECT_EQ(months_after(day(r.y, r.m, r.d), r.months), day(r.y2, r.m2, r.d2)) << r.y << "-" << r.m << "-" << r.d;
}

TEST(DueCalendar, MilesAreExact) {
  for (const auto& r : oracle::miles_rows) EXPECT_DOUBLE_EQ(Distance::miles(r.miles).in_km(), r.km);
}

// ---- states ----

TEST(Due, BrindleIsOverdueWithoutProofAndHasNoDate) {
  const Result r = solved(brindle());
  ASSERT_EQ(r.items.size(), 3U);
  const ItemResult& i = r.items[0];
  EXPECT_EQ(i.name, "Outer tensioner shoe");
  EXPECT_EQ(r.items[1].name, "Inner tensioner shoe");
  EXPECT_EQ(i.state, State::Overdue);
  EXPECT_FALSE(i.proof);
  EXPECT_TRUE(i.due_for_want_of_proof);
  EXPECT_EQ(r.outcome.figure("most_pressing")->text, "Outer tensioner shoe: Due now, No proof");
  EXPECT_FALSE(i.date.has_value());
  EXPECT_FALSE(i.forecast.has_value());
  EXPECT_FALSE(i.next.has_value());
  EXPECT_TRUE(has(r.outcome.findings, 1522));
  EXPECT_NE(i.why.find("common practice"), std::string::npos);
  EXPECT_EQ(r.items[2].state, State::Good);  // inner bearings at 50,000 mi
  EXPECT_EQ(field_of(r.outcome.findings, 1525), "engine");
  EXPECT_FALSE(says(r, 1520)) << "by how much, nobody can say";
  EXPECT_FALSE(says(r, 1521));
  EXPECT_TRUE(says(r, 1530)) << "one reading is no rate";
}

// Sprung shoes of 9,000 mi: nobody can show that they were ever looked at, so they are due and not good for 21,000 mi.
TEST(Due, WithoutProofItIsDueFromWhereItsRuleSays) {
  const auto state = [](double miles, double due_from, std::vector<Service> services) {
    Item i = item("Inner tensioner shoe", 30'000.0, {});
    i.due_from = Distance::miles(due_from);
    i.services = std::move(services);
    return solved(one_item(i, day(2024, 5, 14), miles)).items[0].state;
  };
  EXPECT_EQ(state(9'000.0, 0.0, {}), State::Overdue);
  EXPECT_EQ(state(49'999.0, 50'000.0, {}), State::DueSoon);
  EXPECT_EQ(state(50'000.0, 50'000.0, {}), State::Overdue);
  EXPECT_EQ(state(9'000.0, 0.0, {proven(day(2023, 1, 1), 5'000.0)}), State::Good);
  const Service no_reading{day(2023, 1, 1), {}, true, ""};
  EXPECT_EQ(state(9'000.0, 0.0, {no_reading}), State::Overdue) << "a bill without a reading does not clear";
}

TEST(Due, EachStateIsSpokenOf) {
  const auto at = [](double miles) {
    return solved(one_item(shoes({proven(day(2021, 1, 31), 10'000.0)}), day(2023, 1, 1), miles));
  };
  EXPECT_EQ(field_of(at(37'000.0).outcome.findings, 1521), "items[0]");
  EXPECT_FALSE(says(at(37'000.0), 1520));
  EXPECT_EQ(field_of(at(40'001.0).outcome.findings, 1520), "items[0]");
  EXPECT_FALSE(says(at(40'001.0), 1521));
  EXPECT_FALSE(says(at(36'999.0), 1520));
  EXPECT_FALSE(says(at(36'999.0), 1521));
}

TEST(Due, WithoutAnyReadingNothingCountsByDistance) {
  Input in = brindle();
  EXPECT_FALSE(says(solved(in), 1501));
  in.log.clear();
  EXPECT_TRUE(says(solved(in), 1501));
}

TEST(Due, OnTheDueReadingAndDayStillInTime) {
  const Date done = day(2021, 1, 31);
  const auto state = [&](Date today, double miles) {
    return solved(one_item(shoes({proven(done, 11'300.0)}), today, miles)).items[0].state;
  };
  EXPECT_EQ(state(day(2023, 1, 1), 41'300.0), State::DueSoon);
  EXPECT_EQ(state(day(2023, 1, 1), 41'301.0), State::Overdue);
  EXPECT_EQ(state(day(2026, 1, 31), 20'000.0), State::DueSoon);
  EXPECT_EQ(state(day(2026, 2, 1), 20'000.0), State::Overdue);
}

TEST(Due, SoonIsTheLastTenthOrThirtyDays) {
  const auto state = [](Date today, double miles) {
    return solved(one_item(shoes({proven(day(2021, 1, 31), 10'000.0)}), today, miles)).items[0].state;
  };
  EXPECT_EQ(state(day(2023, 1, 1), 36'999.0), State::Good);
  EXPECT_EQ(state(day(2023, 1, 1), 37'000.0), State::DueSoon);
  EXPECT_EQ(state(day(2026, 1, 1), 12'000.0), State::DueSoon);  // 30 days before 2026-01-31
  EXPECT_EQ(state(day(2025, 12, 31), 12'000.0), State::Good);
}

TEST(Due, SoonCanBeSet) {
  Input in = one_item(shoes({proven(day(2021, 1, 31), 10'000.0)}), day(2023, 1, 1), 30'000.0);
  EXPECT_EQ(solved(in).items[0].state, State::Good);
  in.soon_share = 0.5;
  EXPECT_EQ(solved(in).items[0].state, State::DueSoon);
  in.soon_share = 0.1;
  in.soon_days = 2000;
  EXPECT_EQ(solved(in).items[0].state, State::DueSoon);
}

TEST(Due, UnprovenWorkCountsAsNotDone) {
  Service hearsay = proven(day(2023, 1, 1), 38'000.0);
  hearsay.proof = false;
  const Result r = solved(one_item(shoes({proven(day(2015, 6, 1), 15'000.0), hearsay}), day(2024, 5, 14), 41'300.0));
  EXPECT_TRUE(r.items[0].proof);
  EXPECT_NEAR(r.items[0].distance->left.in_miles(), 15'000.0 + 30'000.0 - 41'300.0, 1e-9);
  EXPECT_EQ(r.items[0].date->due, day(2020, 6, 1));
  EXPECT_EQ(r.items[0].first, First::Date);
  EXPECT_EQ(r.items[0].state, State::Overdue);
}

TEST(Due, MonthsAloneWithoutProofHaveNothingToCountFrom) {
  const Result r = solved(one_item(item("Oil", {}, 12), day(2024, 5, 14), 41'300.0));
  EXPECT_EQ(r.items[0].state, State::NotKnown);
  EXPECT_EQ(word_of(r.items[0].state), "No proof");
  EXPECT_TRUE(has(r.outcome.findings, 1524));
}

TEST(Due, ADueListHasStatesAndNoVerdict) {
  EXPECT_FALSE(solved(brindle()).outcome.judgement.has_value());
}

// ---- rules ----

TEST(DueRules, TheBikesOwnRuleWinsOverTheUsualOne) {
  Input in = brindle();
  in.items = {item("Tensioner shoes", 20'000.0, {})};
  in.items[0].source = Source::owner("the owner");
  const Result r = solved(in);
  ASSERT_EQ(r.items.size(), 2U) << "the name of old files stands for both shoes";
  EXPECT_NEAR(r.items[0].every.in_miles(), 20'000.0, 1e-9);
  EXPECT_TRUE(r.items[0].due_for_want_of_proof) << "an interval is no proof";
  EXPECT_NE(r.items[0].why.find("the owner"), std::string::npos);
}

TEST(DueRules, AServiceAloneKeepsTheUsualRule) {
  Input in = brindle();
  Item shoes_done;
  shoes_done.name = "Tensioner shoes";
  shoes_done.services = {proven(day(2022, 3, 1), 31'000.0)};
  in.items = {shoes_done};
  const Result r = solved(in);
  EXPECT_EQ(r.items.size(), 2U);
  EXPECT_NEAR(r.items[0].distance->due.in_miles(), 61'000.0, 1e-9);
}

TEST(DueRules, NoRuleAndNothingListedAreRefused) {
  Input in = brindle();
  in.engine.reset();
  EXPECT_TRUE(has(refused(in), 1519));
  in.items = {item("Something", {}, {})};
  EXPECT_TRUE(has(refused(in), 1510));
}

TEST(DueRules, AnIntervalOfNoSourceIsTakenAsTheOwners) {
  Input in = one_item(shoes({}), day(2024, 5, 14), 41'300.0);
  EXPECT_FALSE(says(solved(in), 1511));
  in.items[0].source.reset();
  EXPECT_EQ(field_of(solved(in).outcome.findings, 1511), "items[0].source");
}

TEST(DueRules, DefaultsSayWhatTheyRestOn) {
  EXPECT_EQ(usual_items(EngineYears::SprungChain)[0].source->basis(), Basis::CommonPractice);
  EXPECT_NEAR(usual_items(EngineYears::SprungChain)[0].every->in_miles(), 30'000.0, 1e-9);
  EXPECT_EQ(usual_items(EngineYears::HydraulicChain)[0].source->basis(), Basis::Memory);
}

// ---- forecast ----

Input steady() {
  Input in = one_item(shoes({proven(day(2023, 1, 1), 30'000.0)}), day(2024, 1, 1), 0.0);
  in.log.clear();
  for (int i = 0; i <= 12; ++i) {
    const Date d = Date(std::chrono::sys_days(day(2023, 1, 1)) + std::chrono::days(30 * i));
    in.log.push_back(reading(d, 30'000.0 + 300.0 * i));
  }
  return in;
}

TEST(DueForecast, TodayPlusTheFloorOfLeftOverRate) {
  const Result r = solved(steady());  // 10 mi a day, 33,600 of 60,000 mi
  EXPECT_NEAR(Distance::km(r.rate->km_per_day).in_miles(), 10.0, 1e-9);
  const ItemResult& i = r.items[0];
  EXPECT_EQ(i.forecast->expected, Date(std::chrono::sys_days(day(2024, 1, 1)) + std::chrono::days(2640)));
  EXPECT_EQ(i.date->due, day(2028, 1, 1));
  EXPECT_EQ(i.first, First::Date);
  EXPECT_EQ(*i.next, day(2028, 1, 1));
}

TEST(DueForecast, WhicheverComesFirst) {
  Input in = steady();
  in.items[0].every = Distance::miles(10'000.0);
  const ItemResult i = solved(in).items[0];
  EXPECT_EQ(i.first, First::Distance);
  EXPECT_EQ(*i.next, Date(std::chrono::sys_days(day(2024, 1, 1)) + std::chrono::days(640)));
}

TEST(DueForecast, RangeFollowsTheRatesRange) {
  Input in = steady();
  const std::vector<double> wobble{0, 50, -30, 80, -60, 20, -45, 70, 10, -25, 35, -15, 5};
  for (std::size_t k = 0; k < wobble.size(); ++k)
    in.log[k].odometer = *in.log[k].odometer + Distance::miles(wobble[k] + 100.0);
  const Result r = solved(in);
  const ItemResult& i = r.items[0];
  const double left = i.distance->left.in_km();
  const auto days = [&](double rate) {
    return Date(std::chrono::sys_days(day(2024, 1, 1)) + std::chrono::days(static_cast<int>(std::floor(left / rate))));
  };
  EXPECT_LT(*i.forecast->earliest, i.forecast->expected);
  EXPECT_LT(i.forecast->expected, *i.forecast->latest);
  EXPECT_EQ(*i.forecast->earliest, days(*r.rate->high_km_per_day));
  EXPECT_EQ(*i.forecast->latest, days(*r.rate->low_km_per_day));
}

TEST(DueForecast, FewReadingsGiveARateAndNoRange) {
  Input in = steady();
  EXPECT_FALSE(says(solved(in), 1531));
  EXPECT_FALSE(says(solved(in), 1530));
  in.log.erase(in.log.begin() + 1, in.log.end() - 3);  // the first and the last three
  EXPECT_TRUE(says(solved(in), 1531));
}

TEST(DueForecast, HardlyRiddenLeavesTheLatestDayOpen) {
  Input in = steady();
  EXPECT_FALSE(says(solved(in), 1533));
  in.log.resize(6);
  in.log[1].odometer = in.log[2].odometer = in.log[0].odometer;  // it stood for half of the time
  const Result r = solved(in);
  EXPECT_LE(r.rate->low_km_per_day.value_or(1.0), 0.0);
  EXPECT_TRUE(says(r, 1533));
}

TEST(DueForecast, AParkedBikeHasNoForecastByDistance) {
  Input in = steady();
  for (LogEntry& e : in.log) e.odometer = Distance::miles(31'000.0);
  const Result r = solved(in);
  EXPECT_FALSE(r.items[0].forecast.has_value());
  EXPECT_TRUE(has(r.outcome.findings, 1532));
}

// ---- the clock ----

TEST(DueLog, ASwapIsSummedOver) {
  Input in = one_item(shoes({proven(day(2020, 1, 1), 10'000.0)}), day(2024, 5, 14), 0.0);
  in.log = {reading(day(2021, 1, 1), 20'000.0), swap(day(2022, 1, 1), 25'000.0, 12.0),
            reading(day(2024, 5, 1), 8'012.0)};
  const Result r = solved(in);
  EXPECT_NEAR(r.ridden->in_miles(), 33'000.0, 1e-9);
  EXPECT_NEAR(r.odometer->in_miles(), 8'012.0, 1e-9);
  EXPECT_NEAR(r.items[0].distance->left.in_miles(), 7'000.0, 1e-9);
  EXPECT_NEAR(r.items[0].distance->on_clock.in_miles(), 15'012.0, 1e-9);
  EXPECT_FALSE(r.log_in_doubt);
}

TEST(DueLog, ANewClockInKilometresIsNoMatter) {
  Input in = one_item(shoes({proven(day(2020, 1, 1), 10'000.0)}), day(2024, 5, 14), 0.0);
  in.log = {swap(day(2022, 1, 1), 25'000.0, 0.0), {day(2024, 5, 1), Distance::km(1609.344), {}}};
  EXPECT_NEAR(solved(in).ridden->in_miles(), 26'000.0, 1e-9);
}

TEST(DueLog, AServiceIsReadOnTheClockOfItsDay) {
  Input in = one_item(shoes({proven(day(2023, 1, 1), 3'000.0)}), day(2024, 5, 14), 0.0);
  in.log = {swap(day(2022, 1, 1), 25'000.0, 0.0), reading(day(2024, 5, 1), 8'000.0)};
  EXPECT_NEAR(solved(in).items[0].distance->start.in_miles(), 28'000.0, 1e-9);
  in.items[0].services[0] = proven(day(2022, 1, 1), 24'990.0);  // on the very day, old clock
  EXPECT_NEAR(solved(in).items[0].distance->start.in_miles(), 24'990.0, 1e-9);
  in.items[0].services[0] = proven(day(2022, 1, 1), 2.0);  // on the very day, new clock
  EXPECT_NEAR(solved(in).items[0].distance->start.in_miles(), 25'002.0, 1e-9);
  in.items[0].services[0].date.reset();
  EXPECT_TRUE(has(refused(in), 1517));
}

TEST(DueLog, GoingBackWithoutASwapIsAnEventAndADoubt) {
  Input in = one_item(shoes({proven(day(2020, 1, 1), 10'000.0)}), day(2024, 5, 14), 0.0);
  in.log = {reading(day(2021, 1, 1), 20'000.0), reading(day(2022, 1, 1), 15'000.0), reading(day(2024, 5, 1), 16'000.0)};
  const Result r = solved(in);
  EXPECT_TRUE(r.log_in_doubt);
  EXPECT_EQ(field_of(r.outcome.findings, 1503), "log[1].odometer");
  EXPECT_TRUE(says(r, 1523));
  EXPECT_NEAR(r.ridden->in_miles(), 21'000.0, 1e-9);  // nothing in between
}

TEST(DueLog, FiveDigitWrapIsProposed) {
  Input in = brindle();
  in.log = {reading(day(2022, 1, 1), 99'400.0), reading(day(2024, 5, 1), 3'000.0)};
  EXPECT_NE(remedy_of(solved(in).outcome.findings, 1503).find("99,999"), std::string::npos);
}

TEST(DueLog, TripMeterIsProposed) {
  Input in = brindle();
  in.log = {reading(day(2024, 5, 1), 41'200.0), reading(day(2024, 5, 14), 113.0)};
  EXPECT_NE(remedy_of(solved(in).outcome.findings, 1503).find("Trip meter"), std::string::npos);
}

TEST(DueLog, TenthsDigitTypedIsRefusedOnEitherSide) {
  Input in = brindle();
  in.log = {reading(day(2024, 4, 14), 41'100.0), reading(day(2024, 5, 14), 413'000.0)};
  EXPECT_EQ(field_of(refused(in), 1504), "log[1].odometer");
  in.log = {reading(day(2024, 4, 14), 411'000.0), reading(day(2024, 5, 14), 41'300.0)};
  EXPECT_EQ(field_of(refused(in), 1504), "log[0].odometer");
  in.log = {reading(day(2024, 5, 14), 413'000.0)};  // alone: in doubt
  EXPECT_TRUE(has(solved(in).outcome.findings, 1506));
}

TEST(DueLog, AKmClockTypedInMilesIsAskedAbout) {
  Input in = brindle();
  in.log = {reading(day(2024, 5, 10), 41'200.0), reading(day(2024, 5, 14), 66'466.0)};
  const Findings f = refused(in);
  EXPECT_EQ(field_of(f, 1505), "log[1].odometer");
  EXPECT_NE(remedy_of(f, 1505).find("km"), std::string::npos);
}

TEST(DueLog, OrderOfEntriesDoesNotMatter) {
  Input in = steady();
  const Result sorted = solved(in);
  std::reverse(in.log.begin(), in.log.end());
  const Result reversed = solved(in);
  EXPECT_EQ(sorted.ridden, reversed.ridden);
  EXPECT_EQ(sorted.rate->km_per_day, reversed.rate->km_per_day);
}

TEST(DueLog, OneDaysReadingsMayComeInAnyOrder) {
  Input in = brindle();
  in.log = {reading(day(2024, 5, 14), 41'310.0), reading(day(2024, 5, 14), 41'300.0)};
  const Result r = solved(in);
  EXPECT_FALSE(r.log_in_doubt);
  EXPECT_FALSE(says(r, 1523));
  EXPECT_NEAR(r.ridden->in_miles(), 41'310.0, 1e-9);
}

TEST(DueLog, AnOldReadingIsSaid) {
  Input in = brindle();
  in.log = {reading(day(2023, 1, 1), 40'000.0)};
  EXPECT_TRUE(has(solved(in).outcome.findings, 1507));
}

// ---- entries refused ----

TEST(DueEntries, TodayIsNeverTakenFromAClock) {
  Input in = brindle();
  in.today.reset();
  EXPECT_EQ(field_of(refused(in), 201), "today");
}

TEST(DueEntries, DaysAfterTodayAndUnlikelyYears) {
  Input in = brindle();
  in.log[0].date = day(2024, 5, 15);
  EXPECT_EQ(field_of(refused(in), 1502), "log[0].date");
  in = one_item(shoes({proven(day(2025, 1, 1), 10'000.0)}), day(2024, 5, 14), 41'300.0);
  EXPECT_EQ(field_of(refused(in), 1502), "items[0].services[0].date");
  in = brindle();
  in.log[0].date = day(202, 5, 14);
  EXPECT_TRUE(has(refused(in), 1509));
  in.log[0].date = day(2024, 2, 30);
  EXPECT_TRUE(has(refused(in), 204));
}

TEST(DueEntries, PaperBeyondTheClockIsRefused) {
  const Input in = one_item(shoes({proven(day(2023, 1, 1), 45'000.0)}), day(2024, 5, 14), 41'300.0);
  EXPECT_EQ(field_of(refused(in), 1513), "items[0].services[0].odometer");
}

TEST(DueEntries, ProofThatSaysNothingIsRefusedAndHalfAProofSaid) {
  Service empty;
  empty.proof = true;
  EXPECT_TRUE(has(refused(one_item(shoes({empty}), day(2024, 5, 14), 41'300.0)), 1516));
  Service dated = empty;
  dated.date = day(2023, 1, 1);
  const Result r = solved(one_item(shoes({dated}), day(2024, 5, 14), 41'300.0));
  EXPECT_TRUE(has(r.outcome.findings, 1514));
  EXPECT_FALSE(r.items[0].distance.has_value());
  EXPECT_EQ(r.items[0].date->due, day(2028, 1, 1));
  EXPECT_FALSE(says(r, 1515));
  Service read = empty;
  read.odometer = Distance::miles(38'000.0);
  const Result no_day = solved(one_item(shoes({read}), day(2024, 5, 14), 41'300.0));
  EXPECT_EQ(field_of(no_day.outcome.findings, 1515), "items[0].services");
  EXPECT_FALSE(says(no_day, 1514));
  EXPECT_FALSE(no_day.items[0].date.has_value());
}

TEST(DueEntries, TooLongALogIsRefusedAtOnce) {
  Input in = brindle();
  in.log.assign(100'000, reading(day(2024, 5, 14), 41'300.0));
  EXPECT_TRUE(has(refused(in), 1508));
}

TEST(DueEntries, NothingThatIsNotANumberGetsThrough) {
  for (const double bad : {std::nan(""), std::numeric_limits<double>::infinity(), -1.0}) {
    Input in = brindle();
    in.log[0].odometer = Distance::miles(bad);
    EXPECT_TRUE(any_refusal(refused(in)));
  }
}

TEST(DueEntries, EveryFigureIsFinite) {
  const Result r = solved(steady());
  for (const Figure& f : r.outcome.figures) EXPECT_TRUE(std::isfinite(f.base)) << f.key;
}

// Between the readings of the days before and after; on a day with a reading there may have been riding either way.
TEST(DueEntries, AServiceIsHeldAgainstTheReadingsBeforeAndAfterIt) {
  struct Case {
    Date date;
    double miles;
    bool fits;
  };
  for (const Case& c :
       {Case{day(2020, 1, 1), 900, true}, Case{day(2020, 1, 1), 1'100, false}, Case{day(2021, 6, 1), 2'500, true},
        Case{day(2021, 6, 1), 1'900, false}, Case{day(2021, 6, 1), 3'100, false}, Case{day(2021, 1, 1), 1'000, true},
        Case{day(2021, 1, 1), 3'000, true}, Case{day(2021, 1, 1), 999, false}, Case{day(2023, 1, 1), 3'900, false},
        Case{day(2023, 1, 1), 4'100, true}}) {
    Input in = one_item(shoes({proven(c.date, c.miles)}), day(2024, 1, 1), 5'000.0);
    in.log = {reading(day(2020, 6, 1), 1'000), reading(day(2021, 1, 1), 2'000), reading(day(2021, 12, 1), 3'000),
              reading(day(2022, 6, 1), 4'000)};
    EXPECT_EQ(has(solved(in).outcome.findings, 1518), !c.fits) << format_date(c.date) << " at " << c.miles;
  }
}

}  // namespace
}  // namespace camside::inspection_due
