#include "calc/backlash/backlash_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "calc/backlash/backlash_remarks.hpp"
#include "calc/backlash/backlash_verdict.hpp"
#include "fields/path.hpp"
#include "findings/decision.hpp"
#include "findings/outcome_writer.hpp"
#include "findings/remark.hpp"

namespace camside::backlash {

namespace {

using figures::length;

using lash_temperature::State;
using remarks::inch_and_mm;

// A list of thousands of figures helps nobody; the drawing has them all.
constexpr std::size_t most_listed = 72;

std::string text(double mm) {
  return inch_and_mm(Length::mm(mm));
}

std::string degrees(double rad) {
  const std::string t = fmt::format("{:.1f}°", rad * 180.0 / 3.14159265358979323846);
  return t.front() == '-' ? "−" + t.substr(1) : t;
}

std::string spot_text(Angle crank) {
  const double deg = crank.in_deg();
  return deg < 360.0 ? fmt::format("turn 1, {:.0f}°", deg) : fmt::format("turn 2, {:.0f}°", deg - 360.0);
}

std::string tooth_text(const Input& in, const Result& r) {
  if (*in.mesh == Mesh::Crank) {
    return fmt::format("cam gear tooth {}, pinion tooth {}, the one at the mark being 1", r.tight_tooth2,
                       r.tight_tooth1);
  }
  return fmt::format("tooth {} of both gears, the one at the mark being 1", r.tight_tooth2);
}

constexpr std::array<const char*, 4> lowest_keys{"lowest", "cold_lowest", "warm_up_lowest", "hot_lowest"};
constexpr std::array<const char*, 4> highest_keys{"highest", "cold_highest", "warm_up_highest", "hot_highest"};

const char* lowest_key(State s) {
  return lowest_keys[static_cast<std::size_t>(s)];
}
const char* highest_key(State s) {
  return highest_keys[static_cast<std::size_t>(s)];
}
std::string key_of(const Gate& g) {
  return g.low ? lowest_key(g.state) : highest_key(g.state);
}

// ---- figures ----

void add_ends(const Working& w, const Result& r, Outcome& out) {
  out.figures.push_back(length("lowest", "Lowest lash", r.lowest.lash, r.lowest.uncertainty.in_mm()));
  out.figures.push_back(length("highest", "Highest lash", r.highest.lash, r.highest.uncertainty.in_mm()));
  out.figures.push_back(length("mean", "Mean lash", r.curve.mean, expanded_mm(w.cycle, w.cycle.mean_variance_factor)));
  out.figures.push_back(
      {"tight_spot", "Tight spot, crank at", Kind::Angle, r.lowest.crank.in_rad(), {}, {}, spot_text(r.lowest.crank)});
  out.figures.push_back(
      {"tight_tooth", "Tight tooth", Kind::Number, 1.0 * r.tight_tooth2, {}, {}, tooth_text(w.in, r)});
  out.figures.push_back({"loose_spot",
                         "Loose spot, crank at",
                         Kind::Angle,
                         r.highest.crank.in_rad(),
                         {},
                         {},
                         spot_text(r.highest.crank)});
}

double amplitude_mm(const Cycle& c, int harmonic) {
  return expanded_mm(c, c.fit->amplitude_variance_factor(harmonic), false);
}

void add_shares(const Working& w, const Result& r, Outcome& out) {
  if (!w.cycle.fit) {
    return;
  }
  out.figures.push_back(length("gear_share", "Cam gear's share, ± over 720°", r.gear_share, amplitude_mm(w.cycle, 1)));
  if (*w.in.mesh != Mesh::Crank) {
    return;
  }
  const double u = amplitude_mm(w.cycle, 2);
  const double tangent = std::tan(w.frame.operating_angle_rad);
  out.figures.push_back(length("pinion_share", "Pinion's share, ± over 360°", r.pinion_share, u));
  out.figures.push_back(length("pinion_runout", "Runout that explains it", r.pinion_share / tangent, u / tangent));
}

void add_other_forms(const Working& w, const Result& r, Outcome& out) {
  out.figures.push_back(
      length("lowest_normal", "Lowest lash, square to the flank", gear_pair::lash_normal(w.frame, r.lowest.lash)));
  const double turn = r.lowest.lash.in_mm() / w.frame.operating2_mm;
  out.figures.push_back({"lowest_turn", "Lowest lash as turn of gear 2", Kind::Angle, turn, {}, {}, {}});
}

void add_states(const Result& r, Outcome& out) {
  for (const StateLash& s : r.states) {
    if (s.state == State::AsMeasured) {
      continue;
    }
    const auto word = lash_temperature::word_of(s.state);
    out.figures.push_back(
        length(lowest_key(s.state), fmt::format("Lowest lash, {}", word), s.lowest, s.lowest_uncertainty.in_mm()));
    out.figures.push_back(
        length(highest_key(s.state), fmt::format("Highest lash, {}", word), s.highest, s.highest_uncertainty.in_mm()));
  }
}

void add_vanishing(const lash_temperature::Forecast& f, Outcome& out) {
  out.figures.push_back(figures::temperature_or_never(
      "no_lash_together", "No lash left at the tight spot, gears and case alike at", f.no_lash_together));
  out.figures.push_back(figures::temperature_or_never(
      "no_lash_gears_alone", "No lash left at the tight spot, case as measured, gears at", f.no_lash_gears_alone));
}

std::string point_label(const Point& p) {
  const double within = p.crank.in_deg() - (p.turn == 2 ? 360.0 : 0.0);
  return fmt::format("Lash at turn {}, {:.4g}°{}", p.turn, within, p.closing ? " (back to zero)" : "");
}

void add_points(const Result& r, Outcome& out) {
  if (r.points.size() > most_listed) {
    return;
  }
  for (const Point& p : r.points) {
    out.figures.push_back(length(item_path("true_lash", p.reading), point_label(p), p.lash));
  }
}

// ---- working ----

std::string contact_formula(Contact c) {
  switch (c) {
    case Contact::ToothFlank:
      return "true = reading · cos(α_y − τ) / cos α_y";
    case Contact::FlankSquare:
      return "true = reading / (cos α_y · cos β_b)";
    case Contact::ArmFace:
      break;
  }
  return "true = reading · cos τ";
}

std::string contact_numbers(const Working& w) {
  const double tau = w.in.indicator_angle.value_or(Angle{}).in_rad();
  switch (*w.in.contact) {
    case Contact::ToothFlank:
      return fmt::format("α_y = {}, τ = {}", degrees(w.conversion.flank_rad), degrees(tau));
    case Contact::FlankSquare:
      return fmt::format("α_y = {}, β_b = {}", degrees(w.conversion.flank_rad), degrees(w.frame.gear2.helix_b_rad));
    case Contact::ArmFace:
      break;
  }
  return fmt::format("τ = {}", degrees(tau));
}

void work_conversion(const Working& w, Outcome& out) {
  out.working.push_back({"Operating pressure angle", "cos α_wt = a_ref cos α_t / a",
                         fmt::format("a_ref {}, a {}", inch_and_mm(Length::mm(w.frame.reference_centre_mm)),
                                     inch_and_mm(w.in.centre_distance)),
                         degrees(w.frame.operating_angle_rad)});
  out.working.push_back({"What the indicator touches", contact_formula(*w.in.contact), contact_numbers(w),
                         fmt::format("× {:.6f}", w.conversion.contact)});
  const double r_w = w.in.rocked == Rocked::Gear2 ? w.frame.operating2_mm : w.frame.operating1_mm;
  out.working.push_back({"To the operating circle", "j = true · r_w / r_m",
                         fmt::format("r_w {}, r_m {}", text(r_w), inch_and_mm(*w.in.contact_radius)),
                         fmt::format("× {:.6f} in all", w.conversion.per_reading)});
  if (*w.in.access == Access::Subtraction) {
    out.working.push_back({"Outer lash taken off", "j_i = r_i (S/r_m − j_o/r_o)",
                           fmt::format("r_o {}", inch_and_mm(*w.in.outer->operating_radius)),
                           fmt::format("{:.6f} of the outer lash", w.conversion.per_outer)});
  }
}

void work_curve(const Working& w, Outcome& out) {
  if (!w.cycle.fit) {
    return;
  }
  const auto& k = w.cycle.fit->coefficient;
  const bool crank = *w.in.mesh == Mesh::Crank;
  out.working.push_back({"Curve over 720° of the crank",
                         crank ? "j = j0 + a½ cos(θ/2) + b½ sin(θ/2) + a1 cos θ + b1 sin θ, least squares"
                               : "j = j0 + a½ cos(θ/2) + b½ sin(θ/2), least squares",
                         fmt::format("{} readings", w.cycle.fit->readings),
                         crank ? fmt::format("{:.5f}, {:.5f}, {:.5f}, {:.5f}, {:.5f} mm", k[0], k[1], k[2], k[3], k[4])
                               : fmt::format("{:.5f}, {:.5f}, {:.5f} mm", k[0], k[1], k[2])});
}

std::string scatter_text(const Cycle& c) {
  if (c.scatter_declared) {
    return fmt::format("s = {} (a third of a graduation, not measured)", text(c.scatter_mm));
  }
  return fmt::format("s = {} with {:.0f} degrees of freedom", text(c.scatter_mm), c.scatter_degrees_of_freedom);
}

void work_end(const char* title, const Cycle& c, const CycleExtreme& e, Outcome& out) {
  out.working.push_back({title, e.from_reading ? "the position read" : "least or greatest of the curve",
                         fmt::format("crank at {}", degrees(e.crank_rad)), text(e.lash_mm)});
  out.working.push_back(
      {fmt::format("± of the {}", title[0] == 'L' ? "lowest" : "highest"), "U = k √((s² + u_B²) f + u_play²)",
       fmt::format("k = {:.3f}, {}, u_B = {}, f = {:.4f}, u_play = {}", coverage_of(c, e.variance_factor),
                   scatter_text(c), text(c.declared_mm), e.variance_factor, text(c.play_mm)),
       text(expanded_mm(c, e.variance_factor))});
}

void work_states(const Working& w, const Result& r, Outcome& out) {
  for (const StateLash& s : r.states) {
    if (s.state == State::AsMeasured) {
      continue;
    }
    const lash_temperature::Growth g = growth_in(w.conditions, s.state);
    out.working.push_back({fmt::format("Lash, {}", lash_temperature::word_of(s.state)),
                           "j' = k_g [j a'/a + 2a'(inv α_w' − inv α_w)], a' = a k_c/k_g",
                           fmt::format("gears {:.0f} °C, k_g {:.7f}; case {:.0f} °C, k_c {:.7f}", s.gears.in_celsius(),
                                       g.gear1, s.case_at.in_celsius(), g.centre),
                           fmt::format("{} to {}", inch_and_mm(s.lowest), inch_and_mm(s.highest))});
  }
}

// ---- verdict ----

std::string in_state(const Gate& g) {
  return g.state == State::AsMeasured ? "" : fmt::format(" ({})", lash_temperature::word_of(g.state));
}

std::string text_of(const Gate& g, const char* comparison) {
  return fmt::format("{} lash{} {} ± {} is {} {} {}", g.low ? "Lowest" : "Highest", in_state(g),
                     remarks::inch_and_mm(Length::mm(g.lash_mm)), remarks::inch_and_mm(Length::mm(g.guarded_mm)),
                     comparison, g.low ? "the least allowed," : "the most allowed,",
                     remarks::inch_and_mm(Length::mm(g.limit_mm)));
}

std::string reason_of(const Gate& g) {
  if (g.doubt) {
    return because(*g.doubt);
  }
  switch (g.verdict) {
    case Verdict::Within:
      return text_of(g, "proven inside");
    case Verdict::Outside:
      return text_of(g, "proven beyond");
    case Verdict::NotProven:
      break;
  }
  return text_of(g, "too near to tell from") + ". A finer indicator, more positions or less play narrows ±";
}

void mark_figure(Outcome& outcome, const Gate& g) {
  for (Figure& f : outcome.figures) {
    const bool worse = !f.verdict || weighs_more(g.verdict, *f.verdict);
    if (f.key == key_of(g) && worse) {
      f.verdict = g.verdict;
    }
  }
}

std::optional<double> mm_of(const std::optional<Length>& v) {
  if (!v) {
    return std::nullopt;
  }
  return v->in_mm();
}

void work_verdict(double guard, const Judgement& j, Outcome& out) {
  const auto limit = [](const std::optional<double>& mm) { return mm ? text(*mm) : std::string("none"); };
  out.working.push_back(
      {"Verdict (ISO 14253-1:2017)", "lowest − gU ≥ min and highest + gU ≤ max: Within",
       fmt::format("min {}, max {}, g = {:.3g}; {}", limit(j.lower), limit(j.upper), guard, j.source.text()),
       std::string(word_of(j.verdict))});
}

void tell_verdict(const Working& w, Outcome& out) {
  const Gate* const first = deciding(w.gates);
  if (!first) {
    return;
  }
  for (const Gate& g : w.gates) {
    mark_figure(out, g);
  }
  out.judgement =
      Judgement{first->verdict, key_of(*first), mm_of(first->min), mm_of(first->max), first->source, reason_of(*first)};
  work_verdict(w.in.guard, *out.judgement, out);
}

}  // namespace

void report(const Working& w, Result& r) {
  Outcome& out = r.outcome;
  add_ends(w, r, out);
  add_shares(w, r, out);
  add_other_forms(w, r, out);
  add_states(r, out);
  add_vanishing(w.forecast, out);
  add_points(r, out);
  work_conversion(w, out);
  work_curve(w, out);
  work_end("Lowest lash", w.cycle, w.cycle.low, out);
  work_end("Highest lash", w.cycle, w.cycle.high, out);
  work_states(w, r, out);
  tell_verdict(w, out);
}

void report_feel(const Input& in, Outcome& out) {
  constexpr const char* words[] = {"tight", "just felt", "loose"};
  const auto which = static_cast<std::size_t>(*in.feel);
  out.figures.push_back({"feel", "Felt", Kind::Number, 1.0 * static_cast<double>(which), {}, {}, words[which]});
  const Finding why = remarks::read_by_feel();
  if (in.window) {
    out.judgement = Judgement{Verdict::NotProven, "feel",      mm_of(in.window->min), mm_of(in.window->max),
                              *in.window->source, because(why)};
  }
  out.findings.push_back(why);
}

}  // namespace camside::backlash
