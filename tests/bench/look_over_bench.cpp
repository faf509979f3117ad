// The buyer's look-over on the program's own book. Reach: a full look-over in at most 5 ms.
#include <benchmark/benchmark.h>

#include <string>

#include "calc/look_over/look_over.hpp"
#include "knowledge/knowledge.hpp"

namespace camside::look_over {
namespace {

// Year not known, so that every engine is counted, and nothing seen, so that every look is enumerated.
Input widest() {
  Input in;
  in.odometer = Distance::miles(41'300.0);
  in.asking = Money::amount(7'500.0);
  in.touched = Touched::Cold;
  in.money_confirmed = true;
  in.known = knowledge::read_knowledge(knowledge::knowledge_file("air_cooled_v_twin"))->book;
  return in;
}

void look_over_full(benchmark::State& state) {
  const Input in = widest();
  for (auto _ : state) {
    auto result = solve(in);
    if (!result) {
      state.SkipWithError("refused");
      return;
    }
    benchmark::DoNotOptimize(result);
  }
}
BENCHMARK(look_over_full)->Unit(benchmark::kMillisecond);

void knowledge_read(benchmark::State& state) {
  const std::string text(knowledge::knowledge_file("air_cooled_v_twin"));
  for (auto _ : state) benchmark::DoNotOptimize(knowledge::read_knowledge(text));
}
BENCHMARK(knowledge_read)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace camside::look_over
