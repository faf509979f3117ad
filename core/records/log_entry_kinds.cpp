// The fields of each kind of entry. They are described like a calculator's input, so that reader, range check, schema
// and form need nothing of their own; there is nothing to solve in them.
#include <array>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "calc/field.hpp"
#include "records/log_entry.hpp"

namespace camside::records {

namespace {

constexpr Distance most_distance = Distance::miles(1'000'000.0);

Field distance(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(0.0).at_most(most_distance);
}

enum class Engine : std::uint8_t { SingleCam, SprungChain, HydraulicChain, Own };
constexpr std::array<Choice, 4> engine_words{{
    {"single cam", "Single cam, gear driven"},
    {"two cams, sprung chains", "Two cams, chains with spring-loaded tensioners"},
    {"two cams, hydraulic chains", "Two cams, chains with hydraulic tensioners"},
    {"own", "Your own engine"},
}};

enum class ClockUnit : std::uint8_t { Miles, Kilometres };
constexpr std::array<Choice, 2> clock_words{{{"mi", "Miles"}, {"km", "Kilometres"}}};

enum class Proof : std::uint8_t { None, Hearsay, OwnEntry, Photo, Paper };
constexpr std::array<Choice, 5> proof_words{{
    {"none", "No proof"},
    {"hearsay", "Hearsay"},
    {"own entry", "Done and entered by yourself"},
    {"photo", "Photo"},
    {"paper", "Invoice or other paper"},
}};

enum class Grade : std::uint8_t { Good, Worn, AtLimit, Failed, NotSeen };
constexpr std::array<Choice, 5> grade_words{{
    {"good", "Good"},
    {"worn", "Worn, can stay"},
    {"at limit", "At its limit, replace soon"},
    {"failed", "Failed, replace now"},
    {"not seen", "Could not be seen"},
}};

struct Facts {
  std::string nickname;
  std::optional<Engine> engine;
  std::string own_engine;
  std::optional<int> model_year;
  std::optional<ClockUnit> odometer_unit;
};
void describe(FieldVisitor& v, Facts& in) {
  v.value(Field{"nickname", "Nickname", "What you call the bike"}, in.nickname);
  v.choice(Field{"engine", "Engine", "Its years, which bring their usual items and risks"}, in.engine, engine_words);
  v.value(Field{"own_engine", "Your own engine", "What it is, in your own words, when no years fit"}, in.own_engine);
  v.value(Field{"model_year", "Model year", "As the papers say"}.at_least(1900.0).at_most(2200.0), in.model_year);
  v.choice(Field{"odometer_unit", "Odometer in", "The unit the clock shows"}, in.odometer_unit, clock_words);
}

struct Odometer {
  std::optional<Distance> reading;
};
void describe(FieldVisitor& v, Odometer& in) {
  v.value(distance("reading", "Odometer", "All full miles or km, without the tenths; not the trip meter").must(),
          in.reading);
}

struct Clock {
  std::optional<Distance> old_reading;
  std::optional<Distance> new_reading;
};
void describe(FieldVisitor& v, Clock& in) {
  v.value(distance("old_reading", "Old clock ended at", "Its last reading").must(), in.old_reading);
  v.value(distance("new_reading", "New clock starts at", "Its first reading").must(), in.new_reading);
}

struct Service {
  std::vector<std::string> items;
  std::optional<Distance> odometer;
  std::string done_by;
  Proof proof = Proof::None;
};
void describe(FieldVisitor& v, Service& in) {
  v.list(Field{"items", "Done", "What was done, one for each item looked after"}.must(), in.items);
  v.value(distance("odometer", "Odometer", "As it read that day"), in.odometer);
  v.value(Field{"done_by", "Done by", "Who did the work"}, in.done_by);
  v.choice(Field{"proof", "Proof", "What shows that it was done; hearsay is none"}, in.proof, proof_words);
}

struct Wear {
  std::string what;
  std::optional<Length> measured;
  std::optional<Limit<Length>> limit;
};
void describe(FieldVisitor& v, Wear& in) {
  v.value(Field{"what", "What", "Which dimension"}.must(), in.what);
  v.value(Field{"measured", "Measured", "What the instrument showed"}.must(), in.measured);
  v.limit(Field{"limit", "Limit", "Where the part must be replaced, and who says so"}, in.limit);
}

struct Inspected {
  std::string part;
  std::optional<Grade> grade;
  std::optional<Distance> odometer;
  std::vector<Wear> wear;
  Proof proof = Proof::None;
};
void describe(FieldVisitor& v, Inspected& in) {
  v.value(Field{"part", "Part", "What was looked at"}.must(), in.part);
  v.choice(Field{"grade", "Grade", "How it was found"}.must(), in.grade, grade_words);
  v.value(distance("odometer", "Odometer", "As it read that day"), in.odometer);
  v.list(Field{"wear", "Wear", "Each dimension that was measured"}, in.wear);
  v.choice(Field{"proof", "Proof", "What shows how it was found"}, in.proof, proof_words);
}

struct Note {
  std::string text;
};
void describe(FieldVisitor& v, Note& in) {
  v.value(Field{"text", "Note", "Anything worth keeping"}.must(), in.text);
}

struct NoResult {
  Outcome outcome;
};

// An entry is kept, not solved: its result is empty, and its findings are those of its fields.
template <class Input>
tl::expected<NoResult, Findings> nothing_to_solve(const Input& input) {
  Findings findings = check_fields(input);
  if (any_refusal(findings)) return tl::unexpected(std::move(findings));
  NoResult result;
  result.outcome.findings = std::move(findings);
  return result;
}

template <class Input>
RecordKind entry_kind(std::string_view name, std::string_view label, std::string_view question) {
  RecordKind kind;
  kind.name = name;
  kind.label = label;
  kind.question = question;
  kind.make = maker<Input, NoResult>(&nothing_to_solve<Input>);
  return kind;
}

}  // namespace

std::span<const RecordKind> entry_kinds() {
  static const std::vector<RecordKind> all{
      entry_kind<Facts>("facts", "The bike", "Which bike is this?"),
      entry_kind<Odometer>("odometer", "Odometer", "How far has it come?"),
      entry_kind<Clock>("clock", "Clock swapped", "Where did the old clock end and the new one start?"),
      entry_kind<Service>("service", "Service", "What was done, by whom, and who can prove it?"),
      entry_kind<Inspected>("finding", "Finding", "How was it found, and how far is it worn?"),
      entry_kind<Note>("note", "Note", "What is worth keeping?"),
  };
  return all;
}

}  // namespace camside::records
