// Gears to order. Reach: at most 10 ms for 729 combinations in four temperature states.
#include <benchmark/benchmark.h>

#include "calc/gear_pick/gear_pick.hpp"
#include "calc/gear_pick/gear_pick_engines.hpp"

namespace camside::gear_pick {
namespace {

void run(benchmark::State& state, const Input& in) {
  std::size_t combinations = 0;
  for (auto _ : state) {
    auto result = solve(in);
    if (!result) {
      state.SkipWithError("refused");
      return;
    }
    combinations = 0;
    for (const Set& set : result->sets) combinations += set.ranked.size();
    benchmark::DoNotOptimize(result);
  }
  state.counters["combinations"] = static_cast<double>(combinations);
}

// Nine sizes for each gear, one of them the fitted one: 729 combinations.
void gear_pick_row_of_three(benchmark::State& state) {
  run(state, engines::row_of_three(9));
}
BENCHMARK(gear_pick_row_of_three)->Unit(benchmark::kMillisecond);

void gear_pick_two_meshes(benchmark::State& state) {
  run(state, engines::two_cam_engine(9));
}
BENCHMARK(gear_pick_two_meshes)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace camside::gear_pick
