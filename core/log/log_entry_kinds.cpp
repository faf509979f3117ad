// The fields of each kind of entry. They are described like a calculator's input, so that reader, range check, schema
// and form need nothing of their own; there is nothing to solve in them.
#include "log/log_entry_kinds.hpp"

#include <array>
#include <memory>
#include <utility>

#include "fields/field.hpp"
#include "log/log_remarks.hpp"
#include "records/field_reader.hpp"

namespace camside::records {

namespace entered {

namespace {

constexpr Distance most_distance = Distance::miles(1'000'000.0);

Field distance(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(0.0).at_most(most_distance);
}

constexpr std::array<Choice, 2> clock_words{{{"mi", "Miles"}, {"km", "Kilometres"}}};

constexpr std::array<Choice, 5> proof_words{{
    {"none", "No proof"},
    {"hearsay", "Hearsay"},
    {"own entry", "Done and entered by yourself"},
    {"photo", "Photo"},
    {"paper", "Bill or other paper"},
}};

constexpr std::array<Choice, 5> grade_words{{
    {"good", "Good"},
    {"worn", "Worn, look again sooner"},
    {"at limit", "At its limit, replace soon"},
    {"failed", "Failed, replace now"},
    {"not seen", "Could not be seen"},
}};

}  // namespace

void describe(FieldVisitor& v, Facts& in) {
  v.value(Field{"nickname", "Nickname", "What you call the bike"}, in.nickname);
  v.choice(Field{"engine", "Engine", "Its years, which bring their usual items and risks"}, in.engine,
           inspection_due::engine_choices());
  v.value(Field{"own_engine", "Your own engine", "What it is, in your own words, when no years fit"}, in.own_engine);
  v.choice(Field{"drive", "Cam drive now", "Left out: as it was built; a converted bike has other work to do"},
           in.drive, inspection_due::drive_choices());
  v.value(Field{"model_year", "Model year", "As the papers say"}.at_least(1900.0).at_most(2200.0), in.model_year);
  v.choice(Field{"odometer_unit", "Odometer in", "The unit the odometer shows"}, in.odometer_unit, clock_words);
}

void describe(FieldVisitor& v, Odometer& in) {
  v.value(distance("reading", "Odometer", "All full miles or km, without the tenths; not the trip meter").must(),
          in.reading);
}

void describe(FieldVisitor& v, Clock& in) {
  v.value(distance("old_reading", "Old odometer ended at", "Its last reading").must(), in.old_reading);
  v.value(distance("new_reading", "New odometer starts at", "Its first reading").must(), in.new_reading);
}

void describe(FieldVisitor& v, Service& in) {
  v.list(Field{"items", "Done", "What was done, one for each item looked after"}.must(), in.items);
  v.value(distance("odometer", "Odometer", "As it read that day"), in.odometer);
  v.value(Field{"done_by", "Done by", "Who did the work"}, in.done_by);
  v.choice(Field{"proof", "Proof", "What shows that it was done; hearsay is none"}, in.proof, proof_words);
  v.value(Field{"undated", "Day not on the paper", "Only the reading is; the day is when you saw it"}, in.undated);
}

void describe(FieldVisitor& v, Wear& in) {
  v.value(Field{"what", "What", "Which dimension"}.must(), in.what);
  v.value(Field{"measured", "Measured", "What the instrument showed"}.must(), in.measured);
  v.limit(Field{"limit", "Limit", "Where the part must be replaced, and who says so"}, in.limit);
}

void describe(FieldVisitor& v, Inspected& in) {
  v.value(Field{"part", "Part", "What was looked at"}.must(), in.part);
  v.choice(Field{"grade", "Grade", "How it was found"}.must(), in.grade, grade_words);
  v.value(distance("odometer", "Odometer", "As it read that day"), in.odometer);
  v.list(Field{"wear", "Wear", "Each dimension that was measured"}, in.wear);
  v.choice(Field{"proof", "Proof", "What shows how it was found"}, in.proof, proof_words);
}

void describe(FieldVisitor& v, Rule& in) {
  v.value(Field{"item", "Item", "What is looked after, as the due list calls it"}.must(), in.item);
  v.value(Field{"every", "Every", "Distance"}.above(0.0).at_most(most_distance), in.every);
  v.value(Field{"months", "Or every", "Months, whichever comes first"}.at_least(1.0).at_most(1200.0), in.months);
  v.value(Field{"none", "This bike has none", "Nothing to look after: it was converted, or never had it"}, in.none);
  v.value(Field{"why", "Why", "What the interval rests on, or why there is none"}, in.why);
}

void describe(FieldVisitor& v, Snooze& in) {
  v.value(Field{"item", "Item", "As the due list calls it"}.must(), in.item);
  v.value(Field{"until", "Remind me on", "It stays on the due list until then, with the reason"}, in.until);
  v.value(distance("odometer", "Or at", "Odometer; whichever comes first"), in.odometer);
  v.value(Field{"reason", "Reason", "Why it can wait; it stands beside the item"}.must(), in.reason);
}

void describe(FieldVisitor& v, Note& in) {
  v.value(Field{"text", "Note", "Anything worth keeping"}.must(), in.text);
}

}  // namespace entered

namespace {

using namespace entered;

// What no field can tell alone.
template <class Input>
Findings faults_of(const Input& /*input*/) {
  return {};
}
Findings faults_of(const Rule& in) {
  const bool given = in.every || in.months;
  if (given == in.none) return {in.none ? remarks::rule_and_none("none") : remarks::rule_without_interval("every")};
  return {};
}
Findings faults_of(const Snooze& in) {
  if (in.until || in.odometer) return {};
  return {remarks::put_off_for_ever("until")};
}

struct NoResult {
  Outcome outcome;
};

// An entry is kept, not solved: its result is empty, and its findings are those of its fields.
template <class Input>
tl::expected<NoResult, Findings> nothing_to_solve(const Input& input) {
  Findings findings = check_fields(input);
  if (!any_refusal(findings)) findings = faults_of(input);
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
      entry_kind<Clock>("clock", "Odometer replaced", "Where did the old one end and the new one start?"),
      entry_kind<Service>("service", "Service", "What was done, by whom, and who can prove it?"),
      entry_kind<Inspected>("finding", "Finding", "How was it found, and how far is it worn?"),
      entry_kind<Rule>("rule", "Own interval", "How often is this bike's item looked after, and why?"),
      entry_kind<Snooze>("snooze", "Put off", "What can wait, how long, and why?"),
      entry_kind<Note>("note", "Note", "What is worth keeping?"),
  };
  return all;
}

Solved read_entered(const Entry& entry) {
  const RecordKind* const kind = find_kind(entry.kind(), entry_kinds());
  if (!kind) return {};
  const std::unique_ptr<AnyInput> input = kind->make();
  Findings read = read_fields(entry.record.entered(), *input);
  if (any_refusal(read)) return {false, {}, std::move(read), {}, {}};
  Solved solved = input->solve();
  read.insert(read.end(), solved.findings.begin(), solved.findings.end());
  solved.findings = std::move(read);
  return solved;
}

}  // namespace camside::records
