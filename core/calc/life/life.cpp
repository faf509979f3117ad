#include "calc/life/life.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "calc/life/life_report.hpp"
#include "calc/life/life_remarks.hpp"

namespace camside::life {

namespace {

namespace remark = remarks::life;

constexpr double usual_shape = 2.0;
constexpr double least_shape = 0.05;
constexpr double most_shape = 100.0;
constexpr double steep_shape = 10.0;
constexpr std::size_t enough_failures = 5;
constexpr double far_life = 3.0;  // times the longest distance
constexpr Distance rare_distance = Distance::miles(250'000.0);
constexpr int band_points = 61;

// What is being worked out.
struct Working {
  const Input& in;
  Result& r;
  std::vector<weibull::Time> times;  // km
  double longest_km = 0.0;
  std::size_t longest_entry = 0;

  void say(Finding f) { r.outcome.findings.push_back(std::move(f)); }
};

// ---- entries ----

bool in_order(const Input& in) {
  return *in.early->distance < *in.late->distance && *in.early->share < *in.late->share;
}

Findings entry_refusals(const Input& in) {
  if (in.parts.size() > most_parts) return {remark::too_many_parts(in.parts.size(), most_parts)};
  Findings found = check_fields(in);
  if (any_refusal(found)) return found;
  if (in.from == From::List && in.parts.empty()) found.push_back(remark::no_parts());
  if (in.from == From::TwoQuantiles && !in_order(in)) found.push_back(remark::quantiles_out_of_order());
  return found;
}

void take_list(Working& w) {
  w.times.reserve(w.in.parts.size());
  for (std::size_t i = 0; i < w.in.parts.size(); ++i) {
    const Part& p = w.in.parts[i];
    w.times.push_back({p.distance->in_km(), *p.failed});
    ++(*p.failed ? w.r.failures : w.r.survivors);
    if (w.times.back().at <= w.longest_km) continue;
    w.longest_km = w.times.back().at;
    w.longest_entry = i;
  }
  w.r.plot = weibull::plot_points(w.times);
}

// ---- from the curve ----

std::optional<double> on_an_odometer(double ln_km) {
  const double km = std::exp(ln_km);
  if (!(km <= beyond_any_odometer_km)) return {};
  return km;
}

Span life_at(const Result& r, double share) {
  Span s;
  s.value = std::exp(weibull::ln_time_at(*r.curve, share));
  if (!r.fit) return s;
  const weibull::Interval i = weibull::ln_time_interval(*r.fit, share);
  s.low = on_an_odometer(i.low);
  s.high = on_an_odometer(i.high);
  return s;
}

void take_lives(Result& r) {
  const double characteristic = -std::expm1(-1.0);
  r.shape.value = r.curve->shape;
  if (r.fit) {
    const weibull::Interval i = weibull::shape_interval(*r.fit);
    r.shape.low = i.low;
    r.shape.high = i.high;
  }
  r.characteristic_km = life_at(r, characteristic);
  r.tenth_km = life_at(r, 0.1);
  r.half_km = life_at(r, 0.5);
}

void take_ahead(Working& w) {
  if (!w.in.next) return;
  const double survived = w.in.survived.in_km();
  const double next = w.in.next->in_km();
  Span s;
  s.value = weibull::chance_between(*w.r.curve, survived, next);
  if (w.r.fit) {
    const weibull::Interval i = weibull::chance_between_interval(*w.r.fit, survived, next);
    s.low = i.low;
    s.high = i.high;
  }
  w.r.ahead = s;
}

// Evenly spaced on the plot's logarithmic axis, from half the shortest distance to one and a half times the longest.
void take_band(Working& w) {
  double shortest = w.longest_km;
  for (const weibull::Time& t : w.times) shortest = std::min(shortest, t.at);
  const double start = std::log(0.5 * shortest);
  const double step = (std::log(1.5 * w.longest_km) - start) / (band_points - 1);
  for (int i = 0; i < band_points; ++i) {
    const double km = std::exp(start + step * i);
    const weibull::Interval band = weibull::chance_interval(*w.r.fit, km);
    w.r.band.push_back({Distance::km(km), weibull::chance_by(w.r.fit->curve, km), band.low, band.high});
  }
}

// ---- what to say about it ----

void remark_failures(Working& w) {
  if (w.r.failures == 1) w.say(remark::one_failure());
  if (w.r.failures > 1 && w.r.failures < enough_failures) w.say(remark::few_failures(w.r.failures));
  if (w.r.survivors == 0) w.say(remark::no_survivors(w.r.failures));
  w.say(remark::one_kind_of_part());
}

void remark_shape(Working& w) {
  // below 1 only when the interval says so too: a shape of 0.9 from few parts proves nothing
  if (w.r.shape.high.value_or(w.r.shape.value) < 1.0) w.say(remark::early_failures(w.r.shape.value));
  if (w.r.shape.value > steep_shape) w.say(remark::very_steep(w.r.shape.value));
}

void remark_reach(Working& w) {
  const Distance longest = Distance::km(w.longest_km);
  if (longest > rare_distance)
    w.say(remark::unit_may_be_wrong("parts[" + std::to_string(w.longest_entry) + "].distance", longest));
  if (w.r.curve && w.r.characteristic_km.value > far_life * w.longest_km)
    w.say(remark::life_beyond_the_record(Distance::km(w.r.characteristic_km.value), longest));
  if (w.in.next && w.in.survived + *w.in.next > longest)
    w.say(remark::beyond_the_record(w.in.survived + *w.in.next, longest));
}

void remark_ahead(Working& w) {
  if (w.in.next && !(w.in.survived > Distance{})) w.say(remark::counted_from_new());
}

// ---- the bound, where there is no curve ----

remark::Bound bound_of(const Working& w) {
  const double shape = w.in.assumed_shape.value_or(usual_shape);
  const double ln_km = weibull::ln_eta_at_least(w.times, shape, bound_confidence);
  return {shape, Distance::km(std::exp(ln_km)), w.in.assumed_shape.has_value()};
}

void take_bound(Working& w, weibull::Fault fault) {
  const remark::Bound bound = bound_of(w);
  const bool none = fault == weibull::Fault::NoFailure;
  if (!bound.assumed)
    return w.say(none ? remark::no_failure(w.times.size(), bound)
                      : remark::failures_only_at_the_end(w.r.failures, bound));
  w.say(none ? remark::bound_without_failure(bound) : remark::bound_with_failures_at_the_end(bound));
  w.r.least_km = bound.least.in_km();
  w.r.shape.value = bound.shape;
  if (w.in.next) {
    const weibull::Curve worst{std::log(*w.r.least_km), bound.shape};
    Span s;
    s.high = weibull::chance_between(worst, w.in.survived.in_km(), w.in.next->in_km());
    w.r.ahead = s;
  }
  remark_reach(w);
  remark_ahead(w);
}

void work_out_list(Working& w) {
  take_list(w);
  const auto fit = weibull::fit(w.times);
  if (!fit) return take_bound(w, fit.error());
  w.r.fit = *fit;
  w.r.curve = fit->curve;
  take_lives(w.r);
  take_ahead(w);
  take_band(w);
  remark_failures(w);
  remark_shape(w);
  remark_reach(w);
  remark_ahead(w);
}

void work_out_quantiles(Working& w) {
  const Quantile& early = *w.in.early;
  const Quantile& late = *w.in.late;
  w.r.curve = weibull::from_quantiles(early.distance->in_km(), *early.share, late.distance->in_km(), *late.share);
  const double shape = w.r.curve->shape;
  if (!(shape >= least_shape && shape <= most_shape))
    return w.say(remark::shape_out_of_range(shape, least_shape, most_shape));
  take_lives(w.r);
  take_ahead(w);
  w.say(remark::no_band(w.in.source->text()));
  remark_shape(w);
  remark_ahead(w);
}

void work_out(Working& w) {
  const bool list = w.in.from == From::List;
  if (list ? w.in.early || w.in.late : !w.in.parts.empty()) w.say(remark::other_way_not_used());
  list ? work_out_list(w) : work_out_quantiles(w);
}

}  // namespace

tl::expected<Result, Findings> solve(const Input& input) {
  Findings refused = entry_refusals(input);
  if (any_refusal(refused)) return tl::make_unexpected(std::move(refused));
  Result result;
  Working w{input, result, {}};
  work_out(w);
  if (any_refusal(result.outcome.findings)) return tl::make_unexpected(only_refusals(result.outcome.findings));
  add_figures(input, result);
  add_working(input, result);
  return result;
}

}  // namespace camside::life
