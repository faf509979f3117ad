#include "calc/runout/runout.hpp"

#include <iterator>
#include <utility>

#include "calc/runout/runout_findings.hpp"
#include "calc/runout/runout_gear.hpp"
#include "calc/runout/runout_planes.hpp"
#include "calc/runout/runout_readings.hpp"
#include "calc/runout/runout_remarks.hpp"
#include "calc/runout/runout_report.hpp"
#include "calc/runout/runout_uncertainty.hpp"
#include "calc/runout/runout_verdict.hpp"

namespace camside::runout {

namespace {

namespace say = remarks::runout;

Findings refuse_input(const Input& in) {
  Findings refusals = check_fields(in);
  if (in.limit && in.limit->value.finite() && in.limit->value.in_mm() <= 0.0) {
    refusals.push_back(say::limit_not_positive());
  }
  if (in.budget && in.budget->lash_least >= in.budget->lash_most) {
    refusals.push_back(say::window_upside_down(in.budget->lash_least, in.budget->lash_most));
  }
  return refusals;
}

std::optional<Limit<Length>> limit_of(const Input& in) {
  if (in.no_limit) return std::nullopt;
  if (in.limit) return in.limit;
  if (in.subject == Subject::CrankPinionShaft) return usual_limit();
  return std::nullopt;
}

std::optional<Length> optional_mm(const std::optional<double>& mm) {
  return mm ? std::optional(Length::mm(*mm)) : std::nullopt;
}

void take_shape(const Shape& shape, Result& r) {
  r.method = shape.method;
  r.stations = shape.stations;
  r.fit = shape.fit;
  r.lowest = Length::mm(shape.lowest_mm);
  r.highest = Length::mm(shape.highest_mm);
  r.tir = Length::mm(shape.tir_mm);
  r.judged = Length::mm(shape.judged_mm);
  r.eccentricity = optional_mm(shape.eccentricity_mm);
  if (shape.high_spot_rad) r.high_spot = Angle::rad(*shape.high_spot_rad);
  r.ovality = optional_mm(shape.ovality_mm);
  r.scatter = optional_mm(shape.scatter_mm);
  r.closing_error = optional_mm(shape.closing_error_mm);
  r.judged_without_drift = optional_mm(shape.judged_without_drift_mm);
  r.proposed_tir = optional_mm(shape.proposed_tir_mm);
}

// Both sides' shapes; the other one only where it was read.
struct Shapes {
  Shape first;
  std::optional<Shape> other;
};

tl::expected<Shapes, Findings> shapes_of(const Input& in) {
  auto first = shape_of(in.readings, in.setup, "");
  if (!first) return tl::unexpected(std::move(first.error()));
  if (!in.other_side) return Shapes{std::move(*first), std::nullopt};
  auto other = shape_of(in.other_side->readings, in.setup, "other_side.");
  if (!other) return tl::unexpected(std::move(other.error()));
  return Shapes{std::move(*first), std::move(*other)};
}

// Everything that is a number, the verdict aside.
Result measure(const Input& in, const Shapes& shapes) {
  Result r;
  const Shape& shape = shapes.first;
  take_shape(shape, r);
  r.uncertainty = uncertainty_of(in.setup, shape.repeat_squares_mm2, shape.repeat_degrees_of_freedom);
  r.limit = limit_of(in);
  if (r.limit) r.pass_line = r.limit->value - in.guard_factor * r.uncertainty.expanded;
  if (shapes.other) r.two_planes = two_planes(shape, in.setup, *shapes.other, *in.other_side, r.uncertainty.expanded);
  r.at_gear = at_the_gear(in, r);
  return r;
}

void add(Findings more, Findings& all) {
  all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

// All that can cast doubt on the verdict.
Findings doubts_of(const Input& in, const Shape& shape, const Result& r) {
  Findings said = findings_of_setup(in);
  add(findings_of_readings(in.readings, in.setup, shape, in.readings_checked, ""), said);
  add(findings_of_uncertainty(in.setup, r.uncertainty), said);
  return said;
}

void judge(const Input& in, const Shape& shape, Result& r) {
  if (!r.limit) return;
  const ByNumbers by_numbers = verdict_by_numbers(shape, r.uncertainty, r.limit->value, in.guard_factor);
  if (by_numbers.drift_decides) r.outcome.findings.push_back(say::drift_changes_verdict());
  const Decision decision = decide(by_numbers.verdict, Bound::Most, r.outcome.findings);
  r.verdict = decision.verdict;
  r.outcome.judgement =
      Judgement{decision.verdict,       "judged",        {},
                r.limit->value.in_mm(), r.limit->source, reason_of(decision, shape, r.uncertainty, r.limit->value)};
}

}  // namespace

Limit<Length> usual_limit() {
  return {Length::inches(0.003), Source::common_practice()};
}

tl::expected<Result, Findings> solve(const Input& input) {
  Findings refusals = refuse_input(input);
  if (!refusals.empty()) return tl::unexpected(std::move(refusals));
  const auto shapes = shapes_of(input);
  if (!shapes) return tl::unexpected(shapes.error());

  Result r = measure(input, *shapes);
  r.outcome.findings = doubts_of(input, shapes->first, r);
  judge(input, shapes->first, r);
  add(findings_of_verdict(input, r), r.outcome.findings);
  if (shapes->other) add(findings_of_other_side(input, shapes->first, *shapes->other, r), r.outcome.findings);
  add(findings_of_gear(input, r), r.outcome.findings);
  report(input, shapes->first, r);
  return r;
}

}  // namespace camside::runout
