// Rows for turns, flats and growth. Each carries where it comes from; the tolerance is half a unit of the last digit
// given.
#pragma once

#include <array>

namespace camside::oracle {

// Common practice, a text without a citable source: turns for 0.100 in of preload, and how far a turn and a flat of a
// hexagon move. The text prints .04165 for 24 tpi and .0052/.00555/.00595 for the flats: cut short, not to be matched;
// these are 1/tpi and 1/(6 tpi).
struct ThreadRow {
  double tpi;
  double turns_for_100_thou;
  double per_turn_in;
  double per_flat_in;
};
inline constexpr std::array<ThreadRow, 4> thread_rows{{
    {32.0, 3.2, 0.031250, 0.0052083},
    {30.0, 3.0, 0.033333, 0.0055556},
    {28.0, 2.8, 0.035714, 0.0059524},
    {24.0, 2.4, 0.041667, 0.0069444},
}};
inline constexpr double cut_short_24_tpi = 0.04165;  // printed, wrong
// 3.6 turns at 24 tpi: exactly 0.15 in, printed .1499.
inline constexpr double turns_24_tpi = 3.6;
inline constexpr double preload_24_tpi_in = 0.15;

// Thermal growth ΔL = α L ΔT.
struct GrowthRow {
  double length_mm;
  double ppm_per_kelvin;
  double rise_kelvin;
  double growth_mm;
  double tolerance_mm;
  const char* source;
};
inline constexpr std::array<GrowthRow, 4> growth_rows{{
    {1.275e6, 12.0, 55.0, 841.5, 0.05, "a public college physics text, example 13.3: 1275 m of steel, −15 to 40 °C"},
    {150.0, 23.1, 100.0, 0.3465, 5e-8, "GNU units 2.22: 150mm * 23.1e-6 * 100"},
    {266.7, 11.5, 60.0, 0.184023, 5e-8, "GNU units 2.22: 266.7 mm * 11.5e-6 * 60"},
    {150.0, 11.5, 100.0, 0.1725, 5e-8, "by hand"},
}};
// 150 mm of aluminium barrel beside 150 mm of steel rod, both 100 K up: 0.174 mm (0.00685 in) less preload.
inline constexpr double barrel_loss_mm = 0.174;

}  // namespace camside::oracle
