// The log: what a save costs in a log of 10 to 100,000 entries (on the disk the program runs from), and loading,
// viewing, exporting and merging 200 bikes of 500 entries, with the memory they take.
#include <benchmark/benchmark.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "disk_log.hpp"
#include "log/log_file.hpp"
#include "log/log_merge.hpp"
#include "log/log_samples.hpp"
#include "log/log_view.hpp"

namespace camside {
namespace {

namespace fs = std::filesystem;
using records::Entry;
using records::Log;

Entry reading(int bike, int n) {
  const std::string id = "00000000-0000-4000-8000-" + std::to_string(100'000'000'000 + bike * 100'000 + n);
  return records::samples::odometer(id, n, std::to_string(n * 37) + " mi", "bike " + std::to_string(bike));
}

Log bikes(int count, int entries) {
  Log log;
  for (int bike = 0; bike < count; ++bike)
    for (int n = 0; n < entries; ++n) log.add(reading(bike, n));
  return log;
}

std::string stored(const Log& log) {
  std::string bytes = storage::log_header();
  std::uint64_t number = 0;
  for (const Entry& entry : log.entries()) bytes += storage::log_line(++number, entry);
  return bytes;
}

// Resident memory in MB, as Linux tells it.
double memory_mb() {
  std::ifstream status("/proc/self/statm");
  double pages = 0;
  double resident = 0;
  status >> pages >> resident;
  return resident * static_cast<double>(::sysconf(_SC_PAGESIZE)) / 1e6;
}

struct Folder {
  Folder() : path(fs::current_path() / ("log-bench-" + std::to_string(::getpid()))) { fs::create_directories(path); }
  ~Folder() { fs::remove_all(path); }
  fs::path path;
};

void log_save(benchmark::State& state) {
  const Folder folder;
  const int already = static_cast<int>(state.range(0));
  std::ofstream(folder.path / "log.camside", std::ios::binary) << stored(bikes(1, already));
  DiskFiles files(folder.path);
  storage::LogEngine engine(files);
  if (!engine.open()) return state.SkipWithError("cannot open");
  int n = already;
  for (auto _ : state) {
    const Entry entry = reading(1, ++n);
    if (!engine.append({&entry, 1})) return state.SkipWithError("cannot save");
  }
}
BENCHMARK(log_save)
    ->RangeMultiplier(10)
    ->Range(10, 100'000)
    ->Iterations(300)
    ->Unit(benchmark::kMicrosecond)
    ->UseRealTime();

void log_open_200_bikes(benchmark::State& state) {
  const Folder folder;
  std::ofstream(folder.path / "log.camside", std::ios::binary) << stored(bikes(200, 500));
  double grown = 0;
  for (auto _ : state) {
    const double before = memory_mb();
    DiskFiles files(folder.path);
    storage::LogEngine engine(files);
    const auto opened = engine.open();
    if (!opened || opened->log.size() != 100'000) return state.SkipWithError("not all there");
    grown = std::max(grown, memory_mb() - before);
  }
  state.counters["memory_MB"] = grown;
}
BENCHMARK(log_open_200_bikes)->Unit(benchmark::kMillisecond)->UseRealTime();

void log_view_200_bikes(benchmark::State& state) {
  const Log log = bikes(200, 500);
  for (auto _ : state) benchmark::DoNotOptimize(records::view(log));
}
BENCHMARK(log_view_200_bikes)->Unit(benchmark::kMillisecond);

void log_view_one_bike_of_10000(benchmark::State& state) {
  const Log log = bikes(1, 10'000);
  for (auto _ : state) benchmark::DoNotOptimize(records::view(log));
}
BENCHMARK(log_view_one_bike_of_10000)->Unit(benchmark::kMillisecond);

void log_import_200_bikes(benchmark::State& state) {
  const std::string bytes = records::export_log(bikes(200, 500));
  for (auto _ : state) benchmark::DoNotOptimize(records::read_log_file(bytes));
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(bytes.size()));
}
BENCHMARK(log_import_200_bikes)->Unit(benchmark::kMillisecond);

void log_export_200_bikes(benchmark::State& state) {
  const Log log = bikes(200, 500);
  for (auto _ : state) benchmark::DoNotOptimize(records::export_log(log));
}
BENCHMARK(log_export_200_bikes)->Unit(benchmark::kMillisecond);

void log_merge_same_200_bikes(benchmark::State& state) {
  const Log log = bikes(200, 500);
  for (auto _ : state) benchmark::DoNotOptimize(records::to_take_over(log, log));
}
BENCHMARK(log_merge_same_200_bikes)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace camside
