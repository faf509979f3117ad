#include "calc/life/life_report.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

#include "findings/outcome_writer.hpp"
#include "findings/remark.hpp"

namespace camside::life {

namespace {

using figures::number;

using remarks::miles_and_km;

Figure life(std::string key, std::string label, double km) {
  Figure f{std::move(key), std::move(label), Kind::Distance, km, {}, {}, {}};
  if (!(km <= beyond_any_odometer_km)) f.text = "far beyond any odometer";
  return f;
}

// "4.2 %"; small chances keep two digits, and none is called nothing.
std::string percent(double share) {
  const double p = 100.0 * share;
  if (p >= 10.0) return fmt::format("{:.1f} %", p);
  return p >= 0.001 ? fmt::format("{:.2g} %", p) : std::string("under 0.001 %");
}

std::string life_text(double km) {
  return km <= beyond_any_odometer_km ? miles_and_km(Distance::km(km)) : std::string("far beyond any odometer");
}

void add_life(const std::string& key, const std::string& label, const Span& s, Outcome& out) {
  out.figures.push_back(life(key, label, s.value));
  if (s.low) out.figures.push_back(life(key + "_low", label + ", 95 % low", *s.low));
  if (s.high) out.figures.push_back(life(key + "_high", label + ", 95 % high", *s.high));
}

std::string ahead_label(const Input& in) {
  return "Chance to fail in the next " + miles_and_km(*in.next);
}

void add_ahead(const Input& in, const Result& r, Outcome& out) {
  if (!r.ahead) return;
  const Span& s = *r.ahead;
  if (r.least_km) {
    out.figures.push_back(number("ahead_high", ahead_label(in) + ", at most", *s.high, percent(*s.high)));
    return;
  }
  out.figures.push_back(number("ahead", ahead_label(in), s.value, percent(s.value)));
  if (s.low) out.figures.push_back(number("ahead_low", "That chance, 95 % low", *s.low, percent(*s.low)));
  if (s.high) out.figures.push_back(number("ahead_high", "That chance, 95 % high", *s.high, percent(*s.high)));
}

void add_shape(const Result& r, Outcome& out) {
  out.figures.push_back(number("shape", r.least_km ? "Shape, assumed" : "Shape β", r.shape.value));
  if (r.shape.low) out.figures.push_back(number("shape_low", "Shape, 95 % low", *r.shape.low));
  if (r.shape.high) out.figures.push_back(number("shape_high", "Shape, 95 % high", *r.shape.high));
}

// ---- working ----

// With the true minus sign.
std::string signed_text(double v, int decimals) {
  return (v < 0.0 ? "−" : "") + fmt::format("{:.{}f}", std::abs(v), decimals);
}

void add_list_steps(const Result& r, Outcome& out) {
  const weibull::Fit& f = *r.fit;
  out.working.push_back({"Shape", "Σ t^β ln t/Σ t^β − 1/β = mean of ln t over the failures",
                         fmt::format("{} failures, {} survivors", r.failures, r.survivors),
                         fmt::format("β = {:.4f}", f.curve.shape)});
  out.working.push_back({"Characteristic life", "η = (Σ t^β/r)^(1/β)", fmt::format("r = {}", r.failures),
                         life_text(r.characteristic_km.value)});
  out.working.push_back({"Band", "inverse of the observed information in (ln η, ln β)",
                         "ln L = " + signed_text(f.log_likelihood, 5),
                         fmt::format("standard errors {:.4f} and {:.4f}, covariance {}", std::sqrt(f.covariance.eta),
                                     std::sqrt(f.covariance.shape), signed_text(f.covariance.both, 5))});
}

void add_quantile_steps(const Input& in, const Result& r, Outcome& out) {
  out.working.push_back({"Shape", "β = ln[ln(1 − p2)/ln(1 − p1)]/ln(t2/t1)",
                         fmt::format("{} by {}, {} by {}", percent(*in.early->share), miles_and_km(*in.early->distance),
                                     percent(*in.late->share), miles_and_km(*in.late->distance)),
                         fmt::format("β = {:.4f}", r.curve->shape)});
  out.working.push_back(
      {"Characteristic life", "η = t1/(−ln(1 − p1))^(1/β)", "", life_text(r.characteristic_km.value)});
}

void add_bound_step(const Result& r, Outcome& out) {
  out.working.push_back(
      {"Bound", "η ≥ (Σ t^β/x)^(1/β), x: Poisson chance of r or fewer events 5 %",
       fmt::format("r = {}, {} survivors, β = {:.3g} assumed", r.failures, r.survivors, r.shape.value),
       life_text(*r.least_km)});
}

void add_ahead_step(const Input& in, const Result& r, Outcome& out) {
  const double chance = r.least_km ? *r.ahead->high : r.ahead->value;
  out.working.push_back({"Chance ahead, given survival", "1 − exp(−[((a + d)/η)^β − (a/η)^β])",
                         fmt::format("a = {}, d = {}", miles_and_km(in.survived), miles_and_km(*in.next)),
                         (r.least_km ? "at most " : "") + percent(chance)});
}

}  // namespace

void add_figures(const Input& in, Result& r) {
  Outcome& out = r.outcome;
  add_ahead(in, r, out);
  if (r.least_km) out.figures.push_back(life("life_least", "63.2 % failed (η), 95 % sure not before", *r.least_km));
  if (r.curve) {
    add_life("tenth", "1 in 10 failed by", r.tenth_km, out);
    add_life("half", "Half failed by", r.half_km, out);
    add_life("characteristic", "63.2 % failed by (η)", r.characteristic_km, out);
  }
  add_shape(r, out);
  if (in.from != From::List) return;
  out.figures.push_back(number("failures", "Failures", static_cast<double>(r.failures)));
  out.figures.push_back(number("survivors", "Survivors", static_cast<double>(r.survivors)));
}

void add_working(const Input& in, Result& r) {
  if (r.fit) add_list_steps(r, r.outcome);
  if (r.curve && !r.fit) add_quantile_steps(in, r, r.outcome);
  if (r.least_km) add_bound_step(r, r.outcome);
  if (r.ahead) add_ahead_step(in, r, r.outcome);
}

}  // namespace camside::life
