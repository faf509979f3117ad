#include "maths/weibull.hpp"

#include <algorithm>
#include <cmath>

#include "base/stable_sort.hpp"

namespace camside::weibull {

namespace {

constexpr double z_975 = 1.959963984540054;

double longest_of(std::span<const Time> times) {
  double longest = 0.0;
  for (const Time& t : times) longest = std::max(longest, t.at);
  return longest;
}

// The times as far as β is concerned: logarithms of their share of the longest, so that no power overflows.
struct Logs {
  std::vector<double> all;
  double mean_failed = 0.0;
  double sum_failed = 0.0;
  double failures = 0.0;
  double ln_longest = 0.0;
};

Logs logs_of(std::span<const Time> times) {
  Logs logs;
  const double longest = longest_of(times);
  logs.ln_longest = std::log(longest);
  logs.all.reserve(times.size());
  for (const Time& t : times) {
    logs.all.push_back(std::log1p((t.at - longest) / longest));
    if (!t.failed) continue;
    logs.sum_failed += logs.all.back();
    logs.failures += 1.0;
  }
  if (logs.failures > 0.0) logs.mean_failed = logs.sum_failed / logs.failures;
  return logs;
}

// Σ u^β, Σ u^β ln u, Σ u^β (ln u)²; u ≤ 1 with the longest 1, so the first is never below 1.
struct Powers {
  double zero = 0.0;
  double one = 0.0;
  double two = 0.0;
};

Powers powers_of(const Logs& logs, double shape) {
  Powers p;
  for (const double l : logs.all) {
    const double power = std::exp(shape * l);
    p.zero += power;
    p.one += power * l;
    p.two += power * l * l;
  }
  return p;
}

// The derivative of the likelihood along β, over r; and its own derivative. It rises from below to above nothing.
struct Score {
  double value = 0.0;
  double slope = 0.0;
};

Score score_at(const Logs& logs, double shape) {
  const Powers p = powers_of(logs, shape);
  const double mean = p.one / p.zero;
  return {mean - 1.0 / shape - logs.mean_failed, p.two / p.zero - mean * mean + 1.0 / (shape * shape)};
}

// 1/β ≤ −mean of ln u over the failures, so the root is not below `low`; from there on `high` is searched.
double solve_shape(const Logs& logs) {
  double low = -1.0 / logs.mean_failed;
  double high = 2.0 * low;
  while (score_at(logs, high).value < 0.0) {
    low = high;
    high *= 2.0;
  }
  double shape = 0.5 * (low + high);
  for (int i = 0; i < 100; ++i) {
    const Score s = score_at(logs, shape);
    (s.value < 0.0 ? low : high) = shape;
    double next = shape - s.value / s.slope;
    if (!(next >= low && next <= high)) next = 0.5 * (low + high);
    const double step = std::abs(next - shape);
    shape = next;
    if (step <= 1e-14 * shape) break;
  }
  return shape;
}

// Sums over z = β ln(t/η) and e^z.
struct Sums {
  double hazard = 0.0;  // Σ e^z
  double one = 0.0;     // Σ z e^z
  double two = 0.0;     // Σ z² e^z
  double failed = 0.0;  // Σ_failed z
};

Sums sums_of(std::span<const Time> times, const Logs& logs, const Curve& c) {
  Sums s;
  const double shift = logs.ln_longest - c.ln_eta;
  for (std::size_t i = 0; i < times.size(); ++i) {
    const double z = c.shape * (logs.all[i] + shift);
    const double power = std::exp(z);
    s.hazard += power;
    s.one += power * z;
    s.two += power * z * z;
    if (times[i].failed) s.failed += z;
  }
  return s;
}

Covariance covariance_of(const Sums& s, double shape) {
  const double i11 = shape * shape * s.hazard;
  const double i12 = -shape * s.one;
  const double i22 = s.one + s.two - s.failed;
  const double determinant = i11 * i22 - i12 * i12;
  return {i22 / determinant, -i12 / determinant, i11 / determinant};
}

double deviation(const Covariance& v, double by_eta, double by_shape) {
  return std::sqrt(
      std::max(0.0, by_eta * by_eta * v.eta + 2.0 * by_eta * by_shape * v.both + by_shape * by_shape * v.shape));
}

double chance_of_hazard(double hazard) {
  return -std::expm1(-hazard);
}

// ln of ΔH; for a new part it is ln H.
double ln_hazard_between(const Curve& c, double survived, double further) {
  if (survived <= 0.0) return c.shape * (std::log(further) - c.ln_eta);
  const double grown = c.shape * std::log1p(further / survived);
  return c.shape * (std::log(survived) - c.ln_eta) + grown + std::log(-std::expm1(-grown));
}

// P(Poisson(x) ≤ r)
double poisson_up_to(double x, std::size_t r) {
  double ln_term = -x;
  double sum = std::exp(ln_term);
  for (std::size_t k = 1; k <= r; ++k) {
    ln_term += std::log(x / static_cast<double>(k));
    sum += std::exp(ln_term);
  }
  return sum;
}

double poisson_mean_with(std::size_t r, double chance) {
  double low = 0.0;
  double high = 1.0;
  while (poisson_up_to(high, r) > chance) high *= 2.0;
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    (poisson_up_to(middle, r) > chance ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace

tl::expected<Fit, Fault> fit(std::span<const Time> times) {
  const Logs logs = logs_of(times);
  if (logs.failures == 0.0) return tl::make_unexpected(Fault::NoFailure);
  if (!(logs.mean_failed < 0.0)) return tl::make_unexpected(Fault::FailuresOnlyAtTheEnd);
  Fit f;
  f.curve.shape = solve_shape(logs);
  f.curve.ln_eta = logs.ln_longest + std::log(powers_of(logs, f.curve.shape).zero / logs.failures) / f.curve.shape;
  const Sums s = sums_of(times, logs, f.curve);
  f.covariance = covariance_of(s, f.curve.shape);
  const double ln_failed = logs.sum_failed + logs.failures * logs.ln_longest;
  f.log_likelihood = logs.failures * std::log(f.curve.shape) + s.failed - ln_failed - s.hazard;
  return f;
}

Curve from_quantiles(double t1, double p1, double t2, double p2) {
  const double h1 = -std::log1p(-p1);
  const double h2 = -std::log1p(-p2);
  Curve c;
  c.shape = std::log(h2 / h1) / std::log(t2 / t1);
  c.ln_eta = std::log(t1) - std::log(h1) / c.shape;
  return c;
}

double chance_by(const Curve& c, double t) {
  return t > 0.0 ? chance_of_hazard(std::exp(c.shape * (std::log(t) - c.ln_eta))) : 0.0;
}

double chance_between(const Curve& c, double survived, double further) {
  return further > 0.0 ? chance_of_hazard(std::exp(ln_hazard_between(c, survived, further))) : 0.0;
}

double ln_time_at(const Curve& c, double p) {
  return c.ln_eta + std::log(-std::log1p(-p)) / c.shape;
}

Interval shape_interval(const Fit& f) {
  const double factor = std::exp(z_975 * std::sqrt(f.covariance.shape));
  return {f.curve.shape / factor, f.curve.shape * factor};
}

Interval ln_time_interval(const Fit& f, double p) {
  const double by_shape = -std::log(-std::log1p(-p)) / f.curve.shape;
  const double reach = z_975 * deviation(f.covariance, 1.0, by_shape);
  const double middle = ln_time_at(f.curve, p);
  return {middle - reach, middle + reach};
}

Interval chance_interval(const Fit& f, double t) {
  if (!(t > 0.0)) return {};
  const double z = f.curve.shape * (std::log(t) - f.curve.ln_eta);
  const double reach = z_975 * deviation(f.covariance, -f.curve.shape, z);
  return {chance_of_hazard(std::exp(z - reach)), chance_of_hazard(std::exp(z + reach))};
}

// With d = β ln(1 + further/survived): ∂ ln ΔH/∂ ln η = −β, ∂ ln ΔH/∂ ln β = z(end) + d/expm1(d).
Interval chance_between_interval(const Fit& f, double survived, double further) {
  if (!(further > 0.0)) return {};
  const double middle = ln_hazard_between(f.curve, survived, further);
  double by_shape = f.curve.shape * (std::log(survived + further) - f.curve.ln_eta);
  if (survived > 0.0) {
    const double grown = f.curve.shape * std::log1p(further / survived);
    by_shape += grown > 0.0 ? grown / std::expm1(grown) : 1.0;
  }
  const double reach = z_975 * deviation(f.covariance, -f.curve.shape, by_shape);
  return {chance_of_hazard(std::exp(middle - reach)), chance_of_hazard(std::exp(middle + reach))};
}

double ln_eta_at_least(std::span<const Time> times, double shape, double confidence) {
  const Logs logs = logs_of(times);
  const double events = poisson_mean_with(static_cast<std::size_t>(logs.failures), 1.0 - confidence);
  return logs.ln_longest + std::log(powers_of(logs, shape).zero / events) / shape;
}

std::vector<PlotPoint> plot_points(std::span<const Time> times) {
  const std::vector<std::size_t> order = sorted_indices(times.size(), [&](std::size_t a, std::size_t b) {
    return times[a].at != times[b].at ? times[a].at < times[b].at : times[a].failed && !times[b].failed;
  });
  const double count = static_cast<double>(times.size());
  std::vector<PlotPoint> points;
  double rank = 0.0;
  for (std::size_t before = 0; before < order.size(); ++before) {
    const Time& t = times[order[before]];
    if (!t.failed) continue;
    rank += (count + 1.0 - rank) / (1.0 + count - static_cast<double>(before));
    points.push_back({order[before], t.at, rank, (rank - 0.3) / (count + 0.4)});
  }
  return points;
}

}  // namespace camside::weibull
