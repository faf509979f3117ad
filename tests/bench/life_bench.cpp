// Lives of parts. Reach: 10,000 failures and survivors in at most 50 ms.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdint>

#include "calc/life/life.hpp"

namespace camside::life {
namespace {

// A fixed list: shares spread evenly over the curve, every third part still running at half its life.
Input many_parts(std::int64_t count) {
  Input in;
  for (std::int64_t i = 0; i < count; ++i) {
    const double share = (static_cast<double>((i * 7919) % count) + 0.5) / static_cast<double>(count);
    const double km = 50'000.0 * std::pow(-std::log1p(-share), 0.4);
    const bool failed = i % 3 != 0;
    in.parts.push_back({Distance::km(failed ? km : 0.5 * km), failed});
  }
  in.survived = Distance::km(20'000.0);
  in.next = Distance::km(5'000.0);
  return in;
}

void life_list(benchmark::State& state) {
  const Input in = many_parts(state.range(0));
  for (auto _ : state) {
    auto result = solve(in);
    if (!result) {
      state.SkipWithError("refused");
      return;
    }
    benchmark::DoNotOptimize(result);
  }
}
BENCHMARK(life_list)->Arg(100)->Arg(10'000)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace camside::life
