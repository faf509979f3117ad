// Reading and writing quantities. A file of a megabyte holds some 40,000 of them, a frame shows some hundred.
#include <benchmark/benchmark.h>

#include "units/format.hpp"

namespace camside {
namespace {

void units_parse_decimal(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(parse(Kind::Length, "0.0031 in"));
}
BENCHMARK(units_parse_decimal);

void units_parse_fraction(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(parse(Kind::Length, "1-3/8\""));
}
BENCHMARK(units_parse_fraction);

void units_parse_degrees(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(parse(Kind::Angle, "67.5 °"));
}
BENCHMARK(units_parse_degrees);

void units_parse_forty_digits(benchmark::State& state) {
  for (auto _ : state)
    benchmark::DoNotOptimize(parse(Kind::Pressure, "0.1234567890123456789012345678901234567891 psi"));
}
BENCHMARK(units_parse_forty_digits);

void units_parse_refused(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(parse(Kind::Length, "1,234 mm"));
}
BENCHMARK(units_parse_refused);

void units_format(benchmark::State& state) {
  const Length reading = Length::thou(3.1);
  for (auto _ : state) benchmark::DoNotOptimize(format(reading, System::Inch));
}
BENCHMARK(units_format);

void units_convert_entered(benchmark::State& state) {
  const Entered entered = *parse(Kind::Length, "0.0031 in");
  const Unit& mm = units_of(Kind::Length).front();
  for (auto _ : state) benchmark::DoNotOptimize(convert(entered, mm));
}
BENCHMARK(units_convert_entered);

}  // namespace
}  // namespace camside
