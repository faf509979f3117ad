// A calculator for tests only: small, but with every sort of field an input can have.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "fields/field.hpp"
#include "findings/outcome.hpp"
#include "records/kinds.hpp"

namespace camside::tiny {

enum class Way : std::uint8_t { Quick, Slow };
constexpr std::array<Choice, 2> ways{{{"quick", "Once round"}, {"slow", "Twice round"}}};

struct Reading {
  Angle angle;
  Length reading;
  int turn = 1;
};

struct Setup {
  Length graduation = Length::thou(0.5);
  std::optional<Temperature> temperature;
};

struct Input {
  Way way = Way::Quick;
  std::vector<Reading> stations;
  Setup setup;
  std::optional<Setup> second;
  std::optional<Limit<Length>> limit;
  std::optional<Limit<Length>> house_limit = Limit<Length>{Length::thou(3), Source::common_practice()};
  std::vector<Length> spares;
  int teeth = 0;
  double ratio = 1.0;
  std::optional<Date> day;
  std::optional<bool> plate_off;
  std::string who;
};

struct Result {
  Outcome outcome;
  Length sum;
};

inline void describe(FieldVisitor& v, Reading& in) {
  v.value(Field{"angle", "Angle", "Where the mark stood"}.must().at_least(Angle::deg(-720)).at_most(Angle::deg(720)),
          in.angle);
  v.value(Field{"reading", "Reading", "What the needle showed"}.must().at_least(Length::mm(-5)).at_most(Length::mm(5)),
          in.reading);
  v.value(Field{"turn", "Turn", "Which turn"}.at_least(1), in.turn);
}

inline void describe(FieldVisitor& v, Setup& in) {
  v.value(Field{"graduation", "Graduation", "One division of the dial"}.above(0), in.graduation);
  v.value(Field{"temperature", "Temperature", "Of the part"}, in.temperature);
}

inline void describe(FieldVisitor& v, Input& in) {
  v.choice(Field{"way", "Way", "How it was read"}.must(), in.way, ways);
  v.list(Field{"stations", "Stations", "One reading at each angle"}.must(), in.stations);
  v.group(Field{"setup", "Set-up", "Of the dial"}, in.setup);
  v.group(Field{"second", "Second set-up", "When there is one"}, in.second);
  v.limit(Field{"limit", "Limit", "Most that may be"}, in.limit);
  v.limit(Field{"house_limit", "Usual limit", "Taken when there is no other"}, in.house_limit);
  v.list(Field{"spares", "Spares", "Sizes on the shelf"}, in.spares);
  v.value(Field{"teeth", "Teeth", "Number of teeth"}.must().at_least(4), in.teeth);
  v.value(Field{"ratio", "Ratio", "A plain number"}.at_least(0.5).at_most(2), in.ratio);
  v.value(Field{"day", "Day", "When"}, in.day);
  v.value(Field{"plate_off", "Plate off", "Was it off"}, in.plate_off);
  v.value(Field{"who", "Who", "Name"}, in.who);
}

// The sum of the readings against the limit.
inline tl::expected<Result, Findings> solve(const Input& in) {
  Findings refusals = check_fields(in);
  if (any_refusal(refusals)) return tl::unexpected(refusals);
  Result r;
  for (const Reading& reading : in.stations) r.sum = r.sum + reading.reading;
  r.outcome.figures.push_back({"sum", "Sum", Kind::Length, r.sum.base(), Length::thou(0.2).base(), {}, ""});
  const auto& limit = in.limit ? in.limit : in.house_limit;
  const bool within = r.sum <= limit->value;
  r.outcome.judgement = Judgement{within ? Verdict::Within : Verdict::Outside,
                                  "sum",
                                  {},
                                  limit->value.base(),
                                  limit->source,
                                  within ? "The sum is below the limit" : "The sum is above the limit"};
  r.outcome.working.push_back({"Sum", "S = Σ r", "all readings", "S"});
  r.outcome.findings.push_back({1999, Severity::Caution, "stations", "Mind your fingers", ""});
  return r;
}

inline RecordKind make_kind() {
  RecordKind made;
  made.name = "tiny";
  made.label = "Tiny";
  made.question = "How much is it?";
  made.make = maker<Input, Result>(&solve);
  made.csv_list = "stations";
  made.csv_also = {{"way", "slow"}};
  return made;
}
inline const RecordKind kind = make_kind();
inline const std::array<RecordKind, 1> only{kind};

}  // namespace camside::tiny
