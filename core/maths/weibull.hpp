// Question: which Weibull curve do these failures and survivors follow, and how sure is it?
//
// Method: F(t) = 1 − exp(−(t/η)^β). Maximum likelihood with right-censored times,
//   ln L = Σ_failed [ln β + β ln(t/η) − ln t] − Σ_all (t/η)^β.
// β is the one root of  Σ t^β ln t/Σ t^β − 1/β − mean of ln t over the failures = 0  (left side rises with β; solved by
// Newton's steps kept inside a bracket, times scaled by the longest), then η = (Σ t^β/r)^(1/β), r failures. A root
// exists when a failure is shorter than the longest time; with all failures at the longest time L grows without end as
// β does.
// Covariance: inverse of the observed information in (ln η, ln β); with z = β ln(t/η)
//   I11 = β² Σ e^z,  I12 = −β Σ z e^z,  I22 = Σ e^z (z + z²) − Σ_failed z.
// Intervals: normal on the scale of ln η, ln β, ln t_p and ln(−ln(1 − F)), so none leaves what is possible.
// Chance of failing in the next d, having come as far as a: 1 − exp(−ΔH), ΔH = (a/η)^β expm1(β ln(1 + d/a)), by expm1.
// Two quantiles: β = ln[ln(1 − p2)/ln(1 − p1)]/ln(t2/t1), η = t1/(−ln(1 − p1))^(1/β).
// No failures (or none but at the end) and an assumed β: η ≥ (Σ t^β/x)^(1/β), x the number whose Poisson chance of r or
// fewer events is 1 − confidence (3.00 for none at 95 %); with failures on the safe side.
// Plot: adjusted ranks (Johnson), i = i_before + (n + 1 − i_before)/(1 + n − units before), median rank
// (i − 0.3)/(n + 0.4) (Bernard); of equal times the failures come first.
// Source: "Statistical Methods for Reliability Data" (1998), chapters 6 to 8 (from memory; its shock absorber data are
// among the tests).
//
// Inputs: times > 0 in any one unit; probabilities between 0 and 1. Result in the same unit. Accuracy: β and η to 1e-12
// of themselves. Time grows as n log n. Not covered: interval-censored times, three parameters, mixtures of causes.
// Findings: none here.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <tl/expected.hpp>
#include <vector>

namespace camside::weibull {

struct Time {
  double at = 0.0;
  bool failed = false;
};

struct Curve {
  double ln_eta = 0.0;  // of the characteristic life, by which 63.2 % have failed
  double shape = 1.0;   // β
};

// Of (ln η, ln β).
struct Covariance {
  double eta = 0.0;
  double both = 0.0;
  double shape = 0.0;
};

struct Fit {
  Curve curve;
  Covariance covariance;
  double log_likelihood = 0.0;
};

struct Interval {
  double low = 0.0;
  double high = 0.0;
};

enum class Fault : std::uint8_t { NoFailure, FailuresOnlyAtTheEnd };

tl::expected<Fit, Fault> fit(std::span<const Time> times);
Curve from_quantiles(double t1, double p1, double t2, double p2);  // t1 ≠ t2, p1 ≠ p2

double chance_by(const Curve& c, double t);                              // F(t)
double chance_between(const Curve& c, double survived, double further);  // given survival
double ln_time_at(const Curve& c, double p);                             // ln of the time by which a share p has failed

// 95 %, both sides.
Interval shape_interval(const Fit& f);
Interval ln_time_interval(const Fit& f, double p);
Interval chance_interval(const Fit& f, double t);
Interval chance_between_interval(const Fit& f, double survived, double further);

// Greatest lower bound of ln η for an assumed shape.
double ln_eta_at_least(std::span<const Time> times, double shape, double confidence);

struct PlotPoint {
  std::size_t entry = 0;  // index in the input
  double at = 0.0;
  double rank = 0.0;
  double share = 0.0;  // median rank
};
std::vector<PlotPoint> plot_points(std::span<const Time> times);

}  // namespace camside::weibull
