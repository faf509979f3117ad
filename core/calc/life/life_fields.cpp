// Names, words and ranges of everything a life record asks for.
#include <array>

#include "calc/life/life.hpp"

namespace camside::life {

namespace {

constexpr std::array<Choice, 2> from_words{{
    {"list", "Own list of failures and survivors"},
    {"two quantiles", "Two shares failed by two distances"},
}};

constexpr Distance least_distance = Distance::km(0.1);
constexpr Distance most_distance = Distance::miles(1'000'000.0);
constexpr double least_share = 1e-6;

Field distance(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(least_distance).at_most(most_distance);
}

Field needed(Field f, bool when) {
  f.required = when;
  return f;
}

}  // namespace

void describe(FieldVisitor& v, Part& p) {
  v.value(distance("distance", "Distance", "Since this part was fitted, not the bike's odometer").must(), p.distance);
  v.value(Field{"failed", "Failed", "Yes: it failed at this distance; no: still good, running or taken out"}.must(),
          p.failed);
}

void describe(FieldVisitor& v, Quantile& q) {
  v.value(distance("distance", "By", "Distance since fitted").must(), q.distance);
  v.value(Field{"share", "Share failed", "0.1: one in ten"}.at_least(least_share).at_most(1.0 - least_share).must(),
          q.share);
}

void describe(FieldVisitor& v, Input& in) {
  const bool quantiles = in.from == From::TwoQuantiles;
  v.value(Field{"part", "Part", "One kind of part that fails one way"}, in.part);
  v.choice(Field{"from", "Known from", "What the curve is made from"}, in.from, from_words);
  v.list(Field{"parts", "Parts", "Failures and survivors alike; those still running count"}, in.parts);
  v.group(needed({"early", "First share", "The shorter distance with its share failed"}, quantiles), in.early);
  v.group(needed({"late", "Second share", "The longer distance with its share failed"}, quantiles), in.late);
  v.source(needed({"source", "Who says so", "Where the two shares come from"}, quantiles), in.source);
  v.value(Field{"assumed_shape", "Assumed shape", "Only where the list gives no curve: 1 by chance, 2 to 4 by wear"}
              .at_least(0.2)
              .at_most(20.0),
          in.assumed_shape);
  v.value(Field{"survived", "Come so far", "Distance the part in question has on it, still good"}.at_least(0.0).at_most(
              most_distance),
          in.survived);
  v.value(distance("next", "The next", "Distance ahead to give the chance for"), in.next);
}

}  // namespace camside::life
