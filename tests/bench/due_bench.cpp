// The due list of 200 bikes of 500 entries: judging the histories, which is what a new day or a drawn list costs, and
// reading one history from its log, which is what a new entry costs.
#include <benchmark/benchmark.h>

#include <string>

#include "due/due_board.hpp"
#include "due/due_words.hpp"
#include "log/log_samples.hpp"
#include "units/format.hpp"

namespace camside {
namespace {

using records::Entry;
using records::Json;

Date day_of(int n) {
  return Date(std::chrono::sys_days(std::chrono::year{2020} / 1 / 1) + std::chrono::days(n));
}

// 400 readings, 60 services, 36 findings, two own intervals, one put off.
Json entered_of(int n, std::string& kind) {
  const std::string odometer = std::to_string(1'000 + n * 97 + n % 7) + " mi";
  if (n == 1) return kind = "facts", Json{{"nickname", "Brindle"}, {"engine", "two cams, sprung chains"}};
  if (n == 2) return kind = "rule", Json{{"item", "Engine oil and filter"}, {"every", "2500 mi"}, {"months", 6}};
  if (n == 3) return kind = "rule", Json{{"item", "Primary oil"}, {"every", "5000 mi"}, {"months", 12}};
  if (n == 490) return kind = "snooze", Json{{"item", "Tensioner shoes"}, {"until", "2030-01-01"}, {"reason", "Parts"}};
  if (n % 8 == 0)
    return kind = "service",
           Json{{"items", Json::array({"Engine oil and filter"})}, {"odometer", odometer}, {"proof", "paper"}};
  if (n % 14 == 5)
    return kind = "finding",
           Json{{"part", "Tensioner shoes"}, {"grade", "worn"}, {"odometer", odometer}, {"proof", "photo"}};
  return kind = "odometer", Json{{"reading", odometer}};
}

records::Log bikes(int count) {
  records::Log log;
  for (int bike = 0; bike < count; ++bike) {
    for (int n = 1; n <= 500; ++n) {
      std::string kind;
      Json entered = entered_of(n, kind);
      Entry entry = records::make_entry(kind, "bike " + std::to_string(bike),
                                        records::samples::stamp(std::to_string(bike) + "-" + std::to_string(n), n));
      entry.record.set("day", format_date(day_of(3 * n)));
      entry.record.entered() = std::move(entered);
      log.add(std::move(entry));
    }
  }
  return log;
}

const knowledge::Knowledge& known() {
  static const knowledge::Knowledge k = *knowledge::read_knowledge(knowledge::knowledge_file("air_cooled_v_twin"));
  return k;
}

std::vector<due_board::History> histories(const records::Log& log) {
  std::vector<due_board::History> all;
  for (const records::Bike& bike : records::view(log).bikes)
    all.push_back(due_board::history_of(log, bike, known(), day_of(1'510)));
  return all;
}

void due_board_200_bikes(benchmark::State& state) {
  const auto all = histories(bikes(200));
  if (all.size() != 200 || all[0].riding.log.points.size() < 400) return state.SkipWithError("not all there");
  for (auto _ : state)
    for (const due_board::History& h : all) benchmark::DoNotOptimize(due_board::board_of(h));
}
BENCHMARK(due_board_200_bikes)->Unit(benchmark::kMillisecond);

void due_history_one_bike(benchmark::State& state) {
  const records::Log log = bikes(1);
  const records::View view = records::view(log);
  for (auto _ : state) benchmark::DoNotOptimize(due_board::history_of(log, view.bikes[0], known(), day_of(1'510)));
}
BENCHMARK(due_history_one_bike)->Unit(benchmark::kMillisecond);

void due_words_one_bike(benchmark::State& state) {
  const auto all = histories(bikes(1));
  const due_board::Board board = due_board::board_of(all[0]);
  for (auto _ : state)
    for (const due_board::Row& row : board.rows)
      benchmark::DoNotOptimize(due_board::words_of(all[0], row, System::Inch));
}
BENCHMARK(due_words_one_bike)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace camside
