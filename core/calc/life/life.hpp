// Question: how long does this part live in this shop's own experience, and what is the chance that one that has come
// so far fails in the next miles?
//
// Method
//   1 A list of parts: each with its distance since it was fitted, and whether it failed there or was still good
//     (running, or taken out for another reason). Weibull curve by maximum likelihood with the survivors counted in,
//     95 % band from the observed information in (ln η, ln β); weibull.hpp has the formulas.
//   2 Or two quantiles, "1 in 10 by 30,000, half by 60,000", from a source that is named: a curve without a band.
//   3 Chance in the next miles given survival: 1 − exp(−[((a + d)/η)^β − (a/η)^β]), a come so far, d ahead, by expm1.
//   4 Probability plot: adjusted ranks (Johnson), median ranks (Bernard).
//   5 Refused, with the reason and the bound that can be given:
//       no failure at all, or failures only at the longest distance of the record (the likelihood has no maximum).
//     With an assumed shape entered the bound becomes the result: 95 % sure that the characteristic life is above it
//     (from the Poisson chance of the failures there are; exact for none). Without one, the refusal names the bound for
//     a shape of 2, ordinary wear (from memory).
//     One failure gives a curve: its lives can be wrong by a factor of ten and more, and it says so. Under five
//     failures the band is narrower than the truth: of simulated shops with two to four, the 95 % interval of the shape
//     holds in 86 to 94 % (own simulation; part of it is among the tests).
// Sources: weibull.hpp. No verdict: a life has no limit of its own.
//
// Inputs: distances 0.1 km to 1,000,000 mi from the part's renewal, at most 200,000 parts; shares 1e-6 to 1 − 1e-6;
// assumed shape 0.2 to 20. describe() is the list; a table of distance and failed (yes or no) can be read from a file.
// Result: shape and characteristic life with 95 % intervals, lives at 10 and 50 %, chance ahead with interval, plot
// points, band. Accuracy: 1e-12 of the likelihood's maximum; intervals are those of large samples. 10,000 parts: under
// 2 ms (tests/bench).
// Not covered: parts of several kinds or causes in one list, failures known only between two looks, a life that begins
// with a lead-in (three parameters).
// Findings: 1701-1706 refusals · 1720-1730 cautions · 1740-1742 notes · 200-204 fields. Example: examples/life.json
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "fields/field.hpp"
#include "maths/weibull.hpp"
#include "findings/outcome.hpp"
#include "units/quantity.hpp"

namespace camside::life {

enum class From : std::uint8_t { List, TwoQuantiles };

struct Part {
  std::optional<Distance> distance;  // since it was fitted
  std::optional<bool> failed;
};
void describe(FieldVisitor& v, Part& p);

// "1 in 10 has failed by 30,000 mi"
struct Quantile {
  std::optional<Distance> distance;
  std::optional<double> share;
};
void describe(FieldVisitor& v, Quantile& q);

struct Input {
  std::string part;
  From from = From::List;
  std::vector<Part> parts;
  std::optional<Quantile> early;
  std::optional<Quantile> late;
  std::optional<Source> source;  // of the two quantiles
  std::optional<double> assumed_shape;
  Distance survived;             // how far the part in question has come
  std::optional<Distance> next;  // the miles ahead
};
void describe(FieldVisitor& v, Input& in);

// A figure with its 95 % interval; an end beyond any odometer, or without a meaning, is left out.
struct Span {
  double value = 0.0;
  std::optional<double> low;
  std::optional<double> high;
};

struct BandPoint {
  Distance distance;
  double share = 0.0;
  double low = 0.0;
  double high = 0.0;
};

struct Result {
  std::size_t failures = 0;
  std::size_t survivors = 0;
  std::optional<weibull::Curve> curve;  // distances in km
  std::optional<weibull::Fit> fit;      // only from a list
  std::optional<double> least_km;       // no curve: the characteristic life is above this
  Span shape;
  Span characteristic_km;
  Span tenth_km;  // by which 10 % have failed
  Span half_km;
  std::optional<Span> ahead;  // chance of failing in the next miles, given survival; with least_km: `high` alone
  std::vector<weibull::PlotPoint> plot;
  std::vector<BandPoint> band;  // for drawing; from a list only
  Outcome outcome;
};

tl::expected<Result, Findings> solve(const Input& input);

inline constexpr std::size_t most_parts = 200'000;
inline constexpr double bound_confidence = 0.95;

}  // namespace camside::life
