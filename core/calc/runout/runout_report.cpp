#include "calc/runout/runout_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "base/stable_sort.hpp"
#include "calc/runout/runout_remarks.hpp"
#include "calc/runout/runout_uncertainty.hpp"
#include "findings/outcome_writer.hpp"
#include "findings/remark.hpp"

namespace camside::runout {

namespace {

using figures::angle;
using figures::length;

namespace say = remarks::runout;

std::string text(Length v) {
  return remarks::short_inch_and_mm(v);
}
std::string text_mm(double mm) {
  return text(Length::mm(mm));
}

struct Writer {
  const Input& in;
  const Shape& shape;
  Result& r;
  Outcome& out;

  void figure(Figure f) { out.figures.push_back(std::move(f)); }
  void step(std::string title, std::string formula, std::string numbers, std::string result) {
    figures::add_step(out, std::move(title), std::move(formula), std::move(numbers), std::move(result));
  }
  bool swing() const { return shape.method == Method::Swing; }
  // U of 2e: of the fit, or of the whole swing when the bend can't be told apart.
  double bend_uncertainty_mm() const {
    return shape.fit ? expanded_of_amplitude_mm(r.uncertainty, *shape.fit, 1) : r.uncertainty.expanded.in_mm();
  }
};

// ---- figures ----

void add_runout(Writer& w) {
  const double u = w.r.uncertainty.expanded.in_mm();
  Figure judged = length("judged", "Runout (TIR)", w.r.judged, u);
  judged.verdict = w.r.verdict;
  w.figure(std::move(judged));
  w.figure(length("tir", w.swing() ? "TIR of the turns" : "TIR at the stations", w.r.tir, u));
  if (w.r.pass_line) w.figure(length("pass_line", "Pass line, the most that would still be Within", *w.r.pass_line));
}

void add_shape(Writer& w) {
  if (w.r.eccentricity) {
    const double u = w.bend_uncertainty_mm();
    const char* bend = w.swing() ? "Runout from the bend, if there is nothing else" : "Runout from the bend";
    w.figure(length("bend", bend, 2.0 * *w.r.eccentricity, u));
    w.figure(length("eccentricity", "Eccentricity, half of that", *w.r.eccentricity, 0.5 * u));
  }
  if (w.r.high_spot) w.figure(angle("high_spot", "High spot at", *w.r.high_spot));
  if (w.r.ovality) {
    w.figure(length("ovality", "Ovality", *w.r.ovality, expanded_of_amplitude_mm(w.r.uncertainty, *w.shape.fit, 2)));
  }
  if (w.r.scatter) w.figure(length("scatter", "Scatter about the curve", *w.r.scatter));
}

void add_drift(Writer& w) {
  if (w.r.closing_error) w.figure(length("closing_error", "Back to zero, off by", *w.r.closing_error));
  if (w.r.judged_without_drift) {
    w.figure(length("without_drift", "Runout (TIR) with the drift taken out", *w.r.judged_without_drift,
                    w.r.uncertainty.expanded.in_mm()));
  }
  if (w.r.proposed_tir) {
    w.figure(length("proposed_tir", "Runout (TIR) if the needle passed zero", *w.r.proposed_tir));
  }
}

void add_planes(Writer& w) {
  if (!w.r.two_planes) return;
  const TwoPlanes& t = *w.r.two_planes;
  w.figure(length("opposed", "Shafts opposite ways (TIR)", t.opposed));
  w.figure(angle("opposed_high_spot", "High spot of that, on the other side, at", t.opposed_high_spot));
  w.figure(length("common", "Shafts together (TIR)", t.common));
  w.figure(angle("common_high_spot", "High spot of that at", t.common_high_spot));
}

void add_at_gear(Writer& w) {
  if (!w.r.eccentricity || !w.in.at_gear) return;
  const Length tir = *w.r.at_gear.shaft_tir;
  const double u = w.bend_uncertainty_mm() * w.r.at_gear.carried;
  w.figure(length("at_gear", "Eccentricity at the gear", 0.5 * tir, 0.5 * u));
  w.figure(length("at_gear_tir", "Runout (TIR) at the gear", tir, u));
  w.step(
      "At the gear", "e_gear = e · x_gear / x_read",
      fmt::format("{} · {} / {}", text(*w.r.eccentricity), text(w.in.at_gear->to_gear), text(w.in.at_gear->to_contact)),
      text(0.5 * tir));
}

void add_gear(Writer& w) {
  if (!w.in.gear || !w.r.eccentricity) return;
  w.figure(length("gear_own", "Gear's own runout (TIR)", w.in.gear->tir));
  if (!w.r.at_gear.total) return;
  const Spot& total = *w.r.at_gear.total;
  w.figure(length("gear_total", "Shaft and gear together (TIR)", total.tir));
  w.figure(angle("gear_total_high_spot", "High spot of both together at", total.high_spot));
  w.step("Shaft and gear", "arrows added",
         fmt::format("{} at {} + {} at {}", text(*w.r.at_gear.shaft_tir), say::degrees(*w.r.high_spot),
                     text(w.in.gear->tir), say::degrees(*w.in.gear->high_spot)),
         fmt::format("{} at {}", text(total.tir), say::degrees(total.high_spot)));
}

void add_budget(Writer& w) {
  if (!w.in.budget) return;
  const AtTheGear& g = w.r.at_gear;
  w.figure(length("budget", "The most runout (TIR) the wanted lash can stand", *g.budget));
  w.figure(length("lash_swing", "Swing of the lash from this runout", *g.lash_swing,
                  g.swing_per_tir * w.r.uncertainty.expanded.in_mm()));
  w.step("Runout budget", "TIR = window / (2 tan α_wt)",
         fmt::format("{} / (2 tan {})", text(*g.window), say::degrees(w.in.budget->pressure_angle)), text(*g.budget));
}

// ---- working ----

void work_readings(Writer& w) {
  if (w.in.setup.indicator_angle.in_rad() != 0.0) {
    w.step("Indicator angle", "true = reading · cos τ", fmt::format("cos {}", say::degrees(w.in.setup.indicator_angle)),
           fmt::format("{:.6f}", indicator_cosine(w.in.setup)));
  }
  w.step("TIR", w.swing() ? "mean highest − mean lowest, true" : "greatest − least of the stations, true",
         fmt::format("{} − {}", text(w.r.highest), text(w.r.lowest)), text(w.r.tir));
}

void work_curve(Writer& w) {
  if (!w.shape.fit) return;
  const turn_fit::Fit& f = *w.shape.fit;
  w.step("Curve",
         f.model.harmonics == 2 ? "r = a0 + a1 cos θ + b1 sin θ + a2 cos 2θ + b2 sin 2θ, least squares"
                                : "r = a0 + a1 cos θ + b1 sin θ, least squares",
         fmt::format("{} readings at {} directions", f.readings, w.shape.places),
         fmt::format("a1 = {}, b1 = {}", text_mm(f.coefficient[1]), text_mm(f.coefficient[2])));
  w.step("Bend", "e = √(a1² + b1²), high spot atan2(b1, a1)", "",
         fmt::format("2e = {}, high spot at {}", text(2.0 * *w.r.eccentricity), say::degrees(*w.r.high_spot)));
  const turn_fit::Extremes e = turn_fit::extremes(f);
  w.step("Judged value", "T* = max(TIR, greatest − least of the curve)",
         fmt::format("max({}, {})", text(w.r.tir), text_mm(e.greatest - e.least)), text(w.r.judged));
}

bool evenly_spaced(const Shape& s) {
  return s.largest_gap_rad * static_cast<double>(s.places) < 2.0 * std::numbers::pi + 1e-6;
}

// What the stations alone could have missed of a pure bend.
void work_shortfall(Writer& w) {
  if (w.swing() || !w.r.eccentricity) return;
  const bool half = evenly_spaced(w.shape) && w.shape.places % 2 == 1;
  const double missed =
      (half ? 1.0 : 2.0) * w.r.eccentricity->in_mm() * (1.0 - std::cos(0.5 * w.shape.largest_gap_rad));
  w.step("Peaks between stations", half ? "at most e (1 − cos(gap/2)), odd even steps" : "at most 2e (1 − cos(gap/2))",
         fmt::format("gap {}", say::degrees(Angle::rad(w.shape.largest_gap_rad))), text_mm(missed));
}

std::string where_from(const Writer& w) {
  if (w.r.uncertainty.from_repeats) {
    return fmt::format("pooled from repeat turns, {} degrees of freedom", w.shape.repeat_degrees_of_freedom);
  }
  return w.in.setup.repeatability ? "declared" : "one third of a graduation";
}

void work_uncertainty(Writer& w) {
  const Uncertainty& u = w.r.uncertainty;
  const Setup& s = w.in.setup;
  w.step("Repeatability", "s_r", where_from(w), text(u.repeatability));
  w.step("One reading", "u_reading² = s_r² + (graduation/√12)² + (stated error/√3)²",
         fmt::format("graduation {}, stated error {}", text(*s.graduation),
                     s.stated_error ? text(*s.stated_error) : "not given"),
         text(u.reading));
  w.step("Total reading", "u(TIR)² = 2 u_reading² + (play/(2√3))²",
         fmt::format("play {}", s.play ? text(*s.play) : "not given"), text(u.tir));
  const bool declared = std::isinf(u.degrees_of_freedom);
  w.step("Expanded uncertainty", "U = k u",
         fmt::format("{:.3f} · {} ({})", u.coverage_factor, text(u.tir),
                     declared ? "nothing but declared values" : fmt::format("ν_eff {:.1f}", u.degrees_of_freedom)),
         text(u.expanded));
}

void work_verdict(Writer& w) {
  if (!w.r.limit) return;
  const double g = w.in.guard_factor;
  w.step("Pass line", "L − g U",
         fmt::format("{} − {:.3g} · {}", text(w.r.limit->value), g, text(w.r.uncertainty.expanded)),
         text(*w.r.pass_line));
  w.step("Verdict", "T* + gU ≤ L Within, TIR − gU > L Outside",
         fmt::format("{} and {} against {}", text(w.r.judged + g * w.r.uncertainty.expanded),
                     text(w.r.tir - g * w.r.uncertainty.expanded), text(w.r.limit->value)),
         std::string(word_of(*w.r.verdict)));
}

// Those of one weight as they came.
void weightiest_first(Findings& findings) {
  sort_stably(findings.begin(), findings.end(),
              [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
}

}  // namespace

void report(const Input& input, const Shape& shape, Result& result) {
  Writer w{input, shape, result, result.outcome};
  work_readings(w);
  work_curve(w);
  work_shortfall(w);
  work_uncertainty(w);
  work_verdict(w);
  add_runout(w);
  add_shape(w);
  add_drift(w);
  add_at_gear(w);
  add_gear(w);
  add_budget(w);
  add_planes(w);
  weightiest_first(result.outcome.findings);
}

}  // namespace camside::runout
