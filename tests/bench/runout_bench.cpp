// The curve through 36 readings of a shaft. Reach: at most 20 µs.
#include <benchmark/benchmark.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "maths/turn_fit.hpp"

namespace camside {
namespace {

struct Readings {
  std::vector<double> angle_rad;
  std::vector<double> reading_mm;
};

Readings bent_and_oval(std::size_t n) {
  Readings r;
  for (std::size_t i = 0; i < n; ++i) {
    const double t = 2.0 * std::numbers::pi * static_cast<double>(i) / static_cast<double>(n);
    r.angle_rad.push_back(t);
    r.reading_mm.push_back(0.04 * std::cos(t - 1.0) + 0.006 * std::cos(2.0 * t) + 0.001 * std::sin(17.0 * t));
  }
  return r;
}

void runout_fit(benchmark::State& state) {
  const Readings r = bent_and_oval(static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(turn_fit::fit(r.angle_rad, r.reading_mm, {1.0, 2}));
}
BENCHMARK(runout_fit)->Arg(8)->Arg(36)->Arg(1'000'000);

void runout_fit_and_extremes(benchmark::State& state) {
  const Readings r = bent_and_oval(36);
  for (auto _ : state) {
    const auto fit = turn_fit::fit(r.angle_rad, r.reading_mm, {1.0, 2});
    benchmark::DoNotOptimize(turn_fit::extremes(*fit));
  }
}
BENCHMARK(runout_fit_and_extremes);

}  // namespace
}  // namespace camside
