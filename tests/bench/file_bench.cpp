// A measurement file of a megabyte: reading it, writing it, and finding all that is wrong with it.
#include <benchmark/benchmark.h>

#include <string>

#include "records/measurement.hpp"

namespace camside::records {
namespace {

std::string megabyte() {
  MeasurementFile file = empty_file();
  for (int i = 0; write_file(file).size() < 1'000'000; ++i)
    for (int n = 0; n < 100; ++n)
      for (const RecordKind& kind : kinds())
        for (Record record : demo_records(kind)) {
          record.json["id"] = std::string(kind.name) + "-" + std::to_string(i * 100 + n);
          file.records.push_back(std::move(record));
        }
  return write_file(file);
}

void file_read(benchmark::State& state) {
  const std::string bytes = megabyte();
  for (auto _ : state) benchmark::DoNotOptimize(read_file(bytes));
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(bytes.size()));
}
BENCHMARK(file_read)->Unit(benchmark::kMillisecond);

void file_write(benchmark::State& state) {
  const auto opened = read_file(megabyte());
  for (auto _ : state) benchmark::DoNotOptimize(write_file(opened->file));
}
BENCHMARK(file_write)->Unit(benchmark::kMillisecond);

// Reads every quantity of every record and solves it.
void file_read_and_check(benchmark::State& state) {
  const std::string bytes = megabyte();
  for (auto _ : state) benchmark::DoNotOptimize(check_file(*read_file(bytes)));
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(bytes.size()));
}
BENCHMARK(file_read_and_check)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace camside::records
