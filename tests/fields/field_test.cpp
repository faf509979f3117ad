// The description of fields: range check, paths, lists, groups, limits with their source.
#include "fields/field.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>

namespace camside {
namespace made_up {

constexpr double inf = std::numeric_limits<double>::infinity();

enum class Way : std::uint8_t { Wet, Dry };
constexpr std::array<Choice, 2> way_words{{{"wet", "Pumped up"}, {"dry", "Dry"}}};

struct Station {
  Angle angle;
  Length reading;
};
void describe(FieldVisitor& v, Station& s) {
  v.value(Field{"angle", "Angle", "Where"}.at_least(Angle::deg(0.0)).below(Angle::deg(360.0)), s.angle);
  v.value(Field{"reading", "Reading", "Needle"}.at_least(Length::mm(-5.0)).at_most(Length::mm(5.0)), s.reading);
}

struct SetUp {
  std::optional<Temperature> engine;
};
void describe(FieldVisitor& v, SetUp& s) {
  v.value(Field{"engine", "Engine", "How warm"}.at_least(Temperature::celsius(-40.0)), s.engine);
}

struct Input {
  Length travel = Length::mm(5.0);
  std::optional<Length> preload;
  int flats = 6;
  ThreadPitch pitch = ThreadPitch::mm(0.8);
  double share = 0.5;
  std::string who = "The Lantern Shed";
  std::optional<bool> plate_off = true;
  std::optional<Date> when = Date{std::chrono::year{2003}, std::chrono::May, std::chrono::day{14}};
  std::optional<Way> way = Way::Wet;
  std::vector<Station> stations;
  std::vector<Length> thicknesses;
  std::optional<SetUp> setup = SetUp{};
  std::optional<Limit<Length>> most;
  std::optional<Source> source;
};
void describe(FieldVisitor& v, Input& in) {
  v.value(Field{"travel", "Travel", "Of the plunger"}.above(Length::mm(0.0)).must(), in.travel);
  v.value(Field{"preload", "Preload", "Wanted"}.at_least(Length::mm(0.0)), in.preload);
  v.value(Field{"flats", "Flats", "To a turn"}.at_least(1.0).at_most(12.0), in.flats);
  v.value(Field{"pitch", "Pitch", "Of the thread"}.above(0.0).at_most(3.0), in.pitch);
  v.value(Field{"share", "Share", "A part"}.above(0.0).below(1.0), in.share);
  v.value(Field{"who", "Who", "Measured it"}.must(), in.who);
  v.value(Field{"plate_off", "Plate off", "Was it"}.must(), in.plate_off);
  v.value(Field{"when", "When", "The day"}.must(), in.when);
  v.choice(Field{"way", "Way", "Which"}.must(), in.way, way_words);
  v.list(Field{"stations", "Stations", "Round the turn"}, in.stations);
  v.list(Field{"thicknesses", "Thickness", "Of the shoes"}.above(0.0), in.thicknesses);
  v.group(Field{"setup", "Set-up", "How"}.must(), in.setup);
  v.limit(Field{"most", "Most", "The limit"}.above(Length::mm(0.0)).at_most(Length::mm(2.0)), in.most);
  v.source(Field{"source", "Source", "Of the window"}, in.source);
}

}  // namespace made_up

namespace {

using made_up::Input;

Finding only_finding(const Input& in) {
  const Findings findings = check_fields(in);
  EXPECT_EQ(findings.size(), 1U);
  return findings.empty() ? Finding{} : findings.front();
}

TEST(CheckFields, FindsNothingWhenAllIsWell) {
  EXPECT_TRUE(check_fields(Input{}).empty());
}

TEST(CheckFields, NamesFieldValueAndRange) {
  Input in;
  in.preload = Length::inches(-0.1);
  const Finding f = only_finding(in);
  EXPECT_EQ(f.number, 200);
  EXPECT_EQ(f.severity, Severity::Refusal);
  EXPECT_EQ(f.field, "preload");
  EXPECT_EQ(f.text, "Preload is \u22122.54 mm (\u22120.1 in); allowed is at least 0 mm (at least 0 in)");
  EXPECT_FALSE(f.remedy.empty());
}

TEST(CheckFields, CountsTheBoundsThemselvesAsTheFieldSays) {
  Input in;
  in.preload = Length::mm(0.0);
  in.flats = 12;
  EXPECT_TRUE(check_fields(in).empty());
  in.flats = 13;
  EXPECT_EQ(only_finding(in).text, "Flats is 13; allowed is 1 to 12");
  in.flats = 6;
  in.travel = Length::mm(0.0);
  EXPECT_EQ(only_finding(in).field, "travel");
  in.travel = Length::mm(5.0);
  for (const double edge : {0.0, 1.0}) {
    in.share = edge;
    EXPECT_EQ(only_finding(in).field, "share") << edge;
  }
}

// Typed texts and the code's own arithmetic may differ in the last bit; a bound must not hang on it.
TEST(CheckFields, TakesABoundForItselfWhicheverWayItWasComputed) {
  Input in;
  in.stations.resize(1);
  for (const double ulps : {-2.0, -1.0, 0.0, 1.0, 2.0}) {
    const double nearly = 1.0 + ulps * std::numeric_limits<double>::epsilon();
    in.stations[0].angle = Angle::deg(360.0) * nearly;
    EXPECT_EQ(only_finding(in).field, "stations[0].angle") << ulps;
    in.stations[0].angle = Angle{};
    in.stations[0].reading = Length::mm(5.0) * nearly;
    EXPECT_TRUE(check_fields(in).empty()) << ulps;
  }
  in.stations[0].reading = Length::mm(5.0 + 1e-9);
  EXPECT_EQ(only_finding(in).field, "stations[0].reading");
}

TEST(CheckFields, FindsNumbersThatAreNone) {
  for (const double none : {std::nan(""), made_up::inf, -made_up::inf}) {
    Input in;
    in.preload = Length::mm(none);
    EXPECT_EQ(only_finding(in).number, 202) << none;
  }
}

TEST(CheckFields, FindsWhatIsMissing) {
  Input in;
  in.who.clear();
  EXPECT_EQ(only_finding(in).field, "who");
  in = Input{};
  in.plate_off.reset();
  EXPECT_EQ(only_finding(in).field, "plate_off");
  in = Input{};
  in.when.reset();
  EXPECT_EQ(only_finding(in).field, "when");
  in = Input{};
  in.way.reset();
  EXPECT_EQ(only_finding(in).field, "way");
  in = Input{};
  in.setup.reset();
  const Finding f = only_finding(in);
  EXPECT_EQ(f.number, 201);
  EXPECT_EQ(f.field, "setup");
  EXPECT_EQ(f.text, "Set-up is missing");
}

TEST(CheckFields, FindsADayThatIsNotInTheCalendar) {
  Input in;
  in.when = Date{std::chrono::year{2003}, std::chrono::February, std::chrono::day{29}};
  const Finding f = only_finding(in);
  EXPECT_EQ(f.number, 204);
  EXPECT_EQ(f.field, "when");
}

TEST(CheckFields, NamesPlacesInListsAndGroups) {
  Input in;
  in.stations.resize(5);
  in.stations[4].reading = Length::inches(3.2);
  EXPECT_EQ(only_finding(in).field, "stations[4].reading");
  EXPECT_EQ(only_finding(in).text,
            "Reading is 81.28 mm (3.2 in); allowed is \u22125 mm to 5 mm (\u22120.19685 in to 0.19685 in)");
  in.stations[4] = {Angle::deg(360.0), Length::mm(0.0)};
  EXPECT_EQ(only_finding(in).text, "Angle is 360 °; allowed is 0 ° to below 360 °");
  in.stations.clear();
  in.thicknesses = {Length::mm(1.0), Length::mm(0.0)};
  EXPECT_EQ(only_finding(in).field, "thicknesses[1]");
  in.thicknesses.clear();
  in.setup->engine = Temperature::celsius(-273.0);
  EXPECT_EQ(only_finding(in).field, "setup.engine");
}

TEST(CheckFields, LeavesThreadsInMillimetresWhereTheyHaveNoInchForm) {
  Input in;
  in.pitch = ThreadPitch::mm(0.0);
  EXPECT_EQ(only_finding(in).text, "Pitch is 0 mm; allowed is above 0 mm to 3 mm");
}

TEST(CheckFields, GivesALimitTheRangeOfItsField) {
  Input in;
  in.most = Limit<Length>{Length::mm(2.5), Source::common_practice()};
  EXPECT_EQ(only_finding(in).field, "most.value");
  in.most = Limit<Length>{Length::mm(2.0), Source::common_practice()};
  EXPECT_TRUE(check_fields(in).empty());
}

TEST(CheckFields, WantsAStandardOrAHandbookNamed) {
  Input in;
  for (const Source& unnamed : {Source::standard(""), Source::handbook("")}) {
    in.most.emplace(Limit<Length>{Length::mm(1.0), unnamed});
    in.source.reset();
    EXPECT_EQ(only_finding(in).field, "most.title");
    in.most.reset();
    in.source = unnamed;
    EXPECT_EQ(only_finding(in).field, "source.title");
  }
  in.source = Source::memory();
  EXPECT_TRUE(check_fields(in).empty());
}

TEST(CheckFields, StopsListingAfterFifty) {
  Input in;
  in.thicknesses.assign(100'000, Length::mm(-1.0));
  const Findings findings = check_fields(in);
  ASSERT_EQ(findings.size(), 51U);
  EXPECT_EQ(findings[49].field, "thicknesses[49]");
  EXPECT_EQ(findings.back().number, 205);
  in.thicknesses.resize(50);
  EXPECT_EQ(check_fields(in).size(), 50U);
}

TEST(CheckFields, ChangesNothing) {
  Input in;
  in.most = Limit<Length>{Length::mm(1.0), Source::makers_sheet("sheet 4")};
  in.source = Source::handbook("Machinery's Handbook, gear tables");
  const Input before = in;
  check_fields(in);
  EXPECT_EQ(in.most->value, before.most->value);
  EXPECT_EQ(in.most->source, before.most->source);
  EXPECT_EQ(in.source, before.source);
}

// Writes each number it meets, as a reader of files does.
class Doubler final : public FieldVisitor {
 public:
  std::vector<std::string> seen;

 private:
  void on_number(const Field& f, const NumberRef& n) override {
    seen.push_back(path_of(f));
    if (n.has()) n.set(2.0 * n.get());
  }
  void on_text(const Field& f, const TextRef& t) override {
    seen.push_back(path_of(f));
    t.set(t.get() + "!");
  }
  void on_flag(const Field& f, const FlagRef& r) override {
    seen.push_back(path_of(f));
    r.set(!r.get());
  }
  void on_date(const Field& f, const DateRef&) override { seen.push_back(path_of(f)); }
  void on_choice(const Field& f, const ChoiceRef& c) override {
    seen.push_back(path_of(f));
    c.set(1);
  }
};

TEST(FieldVisitor, WritesThroughToTheInput) {
  Input in;
  in.stations.resize(1);
  in.most = Limit<Length>{Length::mm(1.0), Source::memory()};
  Doubler doubler;
  describe(doubler, in);
  EXPECT_EQ(in.travel, Length::mm(10.0));
  EXPECT_FALSE(in.preload.has_value());
  EXPECT_EQ(in.flats, 12);
  EXPECT_EQ(in.who, "The Lantern Shed!");
  EXPECT_EQ(in.plate_off, false);
  EXPECT_EQ(in.way, made_up::Way::Dry);
  EXPECT_EQ(in.most->value, Length::mm(2.0));
  EXPECT_EQ(in.most->source.basis(), Basis::Handbook);  // choice 1
  const std::vector<std::string> expected{"travel",
                                          "preload",
                                          "flats",
                                          "pitch",
                                          "share",
                                          "who",
                                          "plate_off",
                                          "when",
                                          "way",
                                          "stations[0].angle",
                                          "stations[0].reading",
                                          "setup.engine",
                                          "most.value",
                                          "most.basis",
                                          "most.title"};
  EXPECT_EQ(doubler.seen, expected);
}

TEST(FieldVisitor, ANumberTooLargeForAnIntIsNotAllowedAnywhere) {
  EXPECT_EQ(from_base<int>(7.0), 7);
  EXPECT_EQ(from_base<int>(1e300), std::numeric_limits<int>::max());
  EXPECT_EQ(from_base<int>(-1e300), std::numeric_limits<int>::min());
  EXPECT_EQ(from_base<int>(std::nan("")), std::numeric_limits<int>::min());
}

TEST(RangeText, SaysTheRangeInWords) {
  const Field any{"x", "X", ""};
  EXPECT_EQ(range_text(any, Kind::Length), "any value");
  EXPECT_EQ(range_text(any.at_least(0.0), Kind::Length), "at least 0 mm");
  EXPECT_EQ(range_text(any.above(0.0), Kind::Length), "above 0 mm");
  EXPECT_EQ(range_text(any.at_most(2.0), Kind::Length), "at most 2 mm");
  EXPECT_EQ(range_text(any.below(2.0), Kind::Length), "below 2 mm");
  EXPECT_EQ(range_text(any.above(0.0).at_most(45.0), Kind::Number), "above 0 to 45");
  EXPECT_EQ(range_text(any.at_least(0.0).at_most(Angle::deg(60.0)), Kind::Angle), "0 ° to 60 °");
  EXPECT_EQ(range_text(any.at_least(0.0).at_most(5.08), Kind::Length, System::Inch), "0 in to 0.2 in");
  EXPECT_EQ(range_text(any.at_least(0.0).at_most(2e6), Kind::Distance), "0 km to 2,000,000 km");
}

TEST(SourceOfALimit, IsBuiltFromItsPartsAndBack) {
  EXPECT_EQ(build_source(Basis::Standard, "ISO 14253-1:2017"), Source::standard("ISO 14253-1:2017"));
  EXPECT_EQ(build_source(Basis::Handbook, "Machinery's Handbook"), Source::handbook("Machinery's Handbook"));
  EXPECT_EQ(build_source(Basis::MakersSheet, "").text(), "the part maker's sheet");
  EXPECT_EQ(build_source(Basis::Owner, "").text(), "the owner");
  EXPECT_EQ(build_source(Basis::CommonPractice, "ignored"), Source::common_practice());
  EXPECT_EQ(build_source(Basis::Memory, ""), Source::memory());
}

}  // namespace
}  // namespace camside
