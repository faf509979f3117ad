// One frame of each screen with its example open, without a window: what Dear ImGui and our screens cost the processor.
// Reach: 95 of 100 frames within 4 ms ("p95_ms").
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <vector>

#include "calc/questions.hpp"
#include "screens/harness.hpp"
#include "screens/words.hpp"

namespace camside::screens::test {
namespace {

double p95_of(std::vector<double>& times_ms) {
  const auto at = times_ms.begin() + static_cast<std::ptrdiff_t>(times_ms.size() * 95 / 100);
  std::nth_element(times_ms.begin(), at, times_ms.end());
  return *at;
}

void frames_of(benchmark::State& state, const std::string& kind) {
  Harness harness({});
  harness.shell->open(kind);
  harness.run();
  if (!kind.empty()) harness.tap(words::show_example());
  std::vector<double> times_ms;
  for (auto _ : state) {
    const auto start = std::chrono::steady_clock::now();
    harness.frame();
    times_ms.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
  }
  state.counters["p95_ms"] = p95_of(times_ms);
}

// A bike's page with a log of so many entries.
void frames_of_a_log(benchmark::State& state, int entries) {
  std::vector<records::Entry> log;
  records::Entry facts = records::make_entry("facts", "b1", {"f1", "2026-01-01T10:00:00.000+01:00", ""});
  facts.record.entered()["nickname"] = "Brindle";
  log.push_back(std::move(facts));
  for (int i = 0; i < entries; ++i) {
    records::Entry one = records::make_entry("odometer", "b1", {std::to_string(i), "2026-02-01T10:00:00+01:00", ""});
    one.record.entered()["reading"] = std::to_string(1000 + i) + " mi";
    log.push_back(std::move(one));
  }
  Harness harness({.bikes = true, .log = std::move(log)});
  harness.tap("Bikes");
  harness.tap("Brindle");
  std::vector<double> times_ms;
  for (auto _ : state) {
    const auto start = std::chrono::steady_clock::now();
    harness.frame();
    times_ms.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
  }
  state.counters["p95_ms"] = p95_of(times_ms);
}

const int registered = [] {
  for (const int entries : {100, 10'000})
    benchmark::RegisterBenchmark(("frame/bike_log/" + std::to_string(entries)).c_str(),
                                 [entries](benchmark::State& s) { frames_of_a_log(s, entries); });
  benchmark::RegisterBenchmark("frame/bench", [](benchmark::State& s) { frames_of(s, ""); });
  for (const Question& question : questions()) {
    if (question.where == Where::OwnPlace) continue;
    const std::string kind(question.kind.name);
    benchmark::RegisterBenchmark(("frame/" + kind).c_str(), [kind](benchmark::State& s) { frames_of(s, kind); });
  }
  return 0;
}();

}  // namespace
}  // namespace camside::screens::test
