// Names, words and ranges of the due list; and the usual items of each engine's years.
#include <array>

#include "calc/inspection_due/inspection_due.hpp"

namespace camside::inspection_due {

namespace {

constexpr std::array<Choice, 6> engine_words{{
    {"single cam", "Single cam, gear driven"},
    {"two cams, sprung chains", "Two cams, chains with spring-loaded tensioners"},
    {"two cams, hydraulic chains", "Two cams, chains with hydraulic tensioners"},
    {"own", "Your own engine"},
    {"single cam, one chain", "Single cam, one chain with hydraulic tensioner"},
    {"four cams, gears", "Smaller twin, four cams on gears"},
}};
constexpr std::array<Choice, 6> drive_words{{
    {"sprung chains", "Chains with spring-loaded tensioners"},
    {"hydraulic chains", "Chains with hydraulic tensioners"},
    {"gears", "Gears in place of chains"},
    {"works gears", "Gears from the works"},
    {"another drive", "Another drive"},
    {"not known", "Not known"},
}};

constexpr Distance most_distance = Distance::miles(1'000'000.0);

Field distance(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(0.0).at_most(most_distance);
}

Item usual(const char* name, double miles, double due_from_miles, Source source) {
  Item item;
  item.name = name;
  item.every = Distance::miles(miles);
  item.due_from = Distance::miles(due_from_miles);
  item.source = std::move(source);
  return item;
}

}  // namespace

void describe(FieldVisitor& v, LogEntry& e) {
  v.value(Field{"date", "Date", "Of the reading"}.must(), e.date);
  v.value(distance("odometer", "Odometer", "All full miles or km, without the tenths; not the trip meter").must(),
          e.odometer);
  v.value(
      distance("new_clock", "New odometer starts at", "Only when the odometer was replaced here: its first reading"),
      e.new_clock);
}

void describe(FieldVisitor& v, Service& s) {
  v.value(Field{"date", "Date", "On the paper"}, s.date);
  v.value(distance("odometer", "Odometer", "As it read that day"), s.odometer);
  v.value(Field{"proof", "Proof", "Paper, photo or your own entry; hearsay is none"}, s.proof);
  v.value(Field{"note", "Note", "Who did it, what was fitted"}, s.note);
}

void describe(FieldVisitor& v, Item& i) {
  v.value(Field{"name", "Item", "What is looked at or replaced"}.must(), i.name);
  v.value(Field{"every", "Every", "Distance"}.above(0.0).at_most(most_distance), i.every);
  v.value(Field{"months", "Or every", "Months, whichever comes first"}.at_least(1.0).at_most(1200.0), i.months);
  v.source(Field{"source", "Who says so", "Where the interval comes from"}, i.source);
  v.value(Field{"due_from", "Due from", "With no proof it is due from this odometer on; left out: the interval"}
              .at_least(0.0)
              .at_most(most_distance),
          i.due_from);
  v.list(Field{"services", "Done", "Each time it was done, proven or not"}, i.services);
}

void describe(FieldVisitor& v, Input& in) {
  v.value(Field{"today", "Today", "The day the list is made for"}.must(), in.today);
  v.choice(Field{"engine", "Engine", "Brings in the usual items of its years"}, in.engine, engine_words);
  v.list(Field{"log", "Odometer log", "Readings with their dates, and every new odometer"}, in.log);
  v.list(Field{"items", "Items", "What is looked after, with interval and services"}, in.items);
  v.value(
      Field{"soon_share", "Due soon within", "Share of the distance left; 0.1: the last tenth"}.at_least(0.0).at_most(
          1.0),
      in.soon_share);
  v.value(Field{"soon_days", "Due soon within days", "Before a due date"}.at_least(0.0).at_most(3660.0), in.soon_days);
}

Choices drive_choices() {
  return drive_words;
}

Choices engine_choices() {
  return engine_words;
}

std::vector<Item> usual_items(EngineYears engine) {
  switch (engine) {
    case EngineYears::SprungChain:
      return {usual("Outer tensioner shoe", 30'000.0, 0.0, Source::common_practice()),
              usual("Inner tensioner shoe", 30'000.0, 0.0, Source::common_practice()),
              usual("Inner cam bearings", 50'000.0, 50'000.0, Source::common_practice())};
    case EngineYears::HydraulicChain:
      return {usual("Outer tensioner shoe", 50'000.0, 50'000.0, Source::memory()),
              usual("Inner tensioner shoe", 50'000.0, 50'000.0, Source::memory()),
              usual("Inner cam bearings", 50'000.0, 50'000.0, Source::memory())};
    case EngineYears::SingleCam:
      return {usual("Inner cam bearing", 50'000.0, 50'000.0, Source::memory()),
              usual("Cam end float and breather gear", 50'000.0, 50'000.0, Source::memory())};
    case EngineYears::SingleChain:
      return {usual("Cam chain tensioner shoe", 50'000.0, 50'000.0, Source::memory())};
    case EngineYears::FourCam:
    case EngineYears::Own:
      break;
  }
  return {};
}

}  // namespace camside::inspection_due
