#include "calc/runout/runout.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "base/stable_sort.hpp"
#include "calc/runout/runout_planes.hpp"
#include "calc/runout/runout_readings.hpp"
#include "calc/runout/runout_remarks.hpp"
#include "calc/runout/runout_report.hpp"
#include "calc/runout/runout_verdict.hpp"

namespace camside::runout {

namespace {

namespace say = remarks::runout;

constexpr Length main_bearing_play = Length::inches(0.002);  // common practice, no published source
constexpr Angle leaning = Angle::deg(15.0);
constexpr double slack_mm = 1e-9;

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

const char* place_name(Contact contact) {
  switch (contact) {
    case Contact::BushingBand:
      return "ground band";
    case Contact::Gear:
      return "gear or sprocket";
    case Contact::Splines:
      return "splines";
    case Contact::ThreadOrBolt:
      return "thread or bolt head";
    case Contact::FlatOrAdapter:
      return "flat, keyway or adapter";
  }
  return "";
}

// Only a crank's pinion shaft has a plate that holds it and a band that is its own.
void remark_proof(const Setup& s, Findings& remarks) {
  const bool crank_out = s.stand == Stand::TruingStand;
  if (s.plate == Plate::On) remarks.push_back(say::plate_on());
  if (s.contact && *s.contact != Contact::BushingBand) remarks.push_back(say::wrong_contact(place_name(*s.contact)));
  const bool plate_open = !s.plate && !crank_out;
  if (!s.contact || plate_open) remarks.push_back(say::setup_not_said(!s.contact, plate_open));
}

void remark_setup(const Input& in, Findings& remarks) {
  const Setup& s = in.setup;
  if (in.subject == Subject::CrankPinionShaft) remark_proof(s, remarks);
  if (s.stand == Stand::FrameOrLift) remarks.push_back(say::stands_on_frame());
  if (!s.play && in.subject != Subject::Gear) remarks.push_back(say::no_play_given());
  const Length play = indicator_cosine(s) * s.play.value_or(Length{});
  if (play.in_mm() > main_bearing_play.in_mm() + slack_mm) remarks.push_back(say::main_bearing_first(play));
  if (s.indicator_angle > leaning) remarks.push_back(say::indicator_leans(s.indicator_angle));
  if (!s.stated_error) remarks.push_back(say::no_stated_error());
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

void take_uncertainty(const Input& in, const Shape& shape, Result& r) {
  r.uncertainty = uncertainty_of(in.setup, shape.repeat_squares_mm2, shape.repeat_degrees_of_freedom);
  if (!in.setup.repeatability) return;
  const Length declared = indicator_cosine(in.setup) * *in.setup.repeatability;
  if (r.uncertainty.from_repeats && r.uncertainty.repeatability > 1.5 * declared) {
    r.outcome.findings.push_back(say::declared_too_good(declared, r.uncertainty.repeatability));
  }
}

void remark_verdict(const Input& in, Result& r) {
  Findings& remarks = r.outcome.findings;
  if (r.pass_line->in_mm() < 0.0) remarks.push_back(say::nothing_can_pass(r.uncertainty.expanded, r.limit->value));
  const bool crank = in.subject == Subject::CrankPinionShaft;
  if (!in.limit && crank) remarks.push_back(say::ceiling_not_welcome(r.limit->value));
  if (crank && *r.verdict == Verdict::Outside) remarks.push_back(say::needs_truing());
  if (crank) remarks.push_back(say::cranks_shift());
}

void judge(const Input& in, const Shape& shape, Result& r) {
  r.limit = limit_of(in);
  if (!r.limit) {
    r.outcome.findings.push_back(say::no_limit());
    return;
  }
  r.pass_line = r.limit->value - in.guard_factor * r.uncertainty.expanded;
  Ruling ruling = rule(shape, r.uncertainty, *r.limit, in.guard_factor, r.outcome.findings);
  r.verdict = ruling.verdict;
  r.outcome.judgement =
      Judgement{ruling.verdict, "judged", {}, r.limit->value.in_mm(), r.limit->source, std::move(ruling.reason)};
  remark_verdict(in, r);
}

// What is doubtful about the other side doesn't touch the verdict on this one.
void take_over(Findings from, Findings& to) {
  for (Finding& f : from) {
    if (f.severity == Severity::Doubt) f.severity = Severity::Caution;
    to.push_back(std::move(f));
  }
}

Findings take_other_side(const Input& in, const Shape& shape, Result& r) {
  if (!in.other_side) return {};
  Findings remarks;
  const auto other = shape_of(in.other_side->readings, in.setup, in.readings_checked, "other_side.", remarks);
  if (!other) return other.error();
  r.two_planes = two_planes(shape, in.setup, *other, *in.other_side, r.uncertainty.expanded, remarks);
  take_over(std::move(remarks), r.outcome.findings);
  return {};
}

// The weightiest first; those of one weight as they came.
void weightiest_first(Findings& findings) {
  sort_stably(findings.begin(), findings.end(),
              [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
}

}  // namespace

Limit<Length> usual_limit() {
  return {Length::inches(0.003), Source::common_practice()};
}

tl::expected<Result, Findings> solve(const Input& input) {
  Findings refusals = refuse_input(input);
  if (!refusals.empty()) return tl::unexpected(std::move(refusals));
  Result r;
  remark_setup(input, r.outcome.findings);
  const auto shape = shape_of(input.readings, input.setup, input.readings_checked, "", r.outcome.findings);
  if (!shape) return tl::unexpected(shape.error());

  take_shape(*shape, r);
  take_uncertainty(input, *shape, r);
  judge(input, *shape, r);
  refusals = take_other_side(input, *shape, r);
  if (!refusals.empty()) return tl::unexpected(std::move(refusals));
  report(input, *shape, r);
  weightiest_first(r.outcome.findings);
  return r;
}

}  // namespace camside::runout
