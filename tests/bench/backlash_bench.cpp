// Lash over two crank turns, with its temperature states, working and verdict.
#include <benchmark/benchmark.h>

#include "calc/backlash/backlash.hpp"
#include "calc/backlash/backlash_test_inputs.hpp"

namespace camside::backlash {
namespace {

void backlash_over_the_cycle(benchmark::State& state) {
  const Input in = crank_mesh();
  for (auto _ : state) {
    auto result = solve(in);
    if (!result) state.SkipWithError("refused");
    benchmark::DoNotOptimize(result);
  }
}
BENCHMARK(backlash_over_the_cycle);

}  // namespace
}  // namespace camside::backlash
