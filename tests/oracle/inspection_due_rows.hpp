// Rows for distances, dates and the rate of riding.
#pragma once

#include <array>
#include <vector>

namespace camside::oracle {

// Exact by 1 mi = 1609.344 m.
struct MilesRow {
  double miles;
  double km;
};
inline constexpr std::array<MilesRow, 3> miles_rows{{{2500.0, 4023.36}, {5000.0, 8046.72}, {10000.0, 16093.44}}};

// Days between two dates of the proleptic Gregorian calendar (ISO 8601). 36524 and 10957 are the published Modified
// Julian Day differences 15020 → 51544 and 40587 → 51544.
struct DaysRow {
  int y1, m1, d1, y2, m2, d2;
  long days;
};
inline constexpr std::array<DaysRow, 6> days_rows{{
    {1900, 1, 1, 2000, 1, 1, 36524},
    {1970, 1, 1, 2000, 1, 1, 10957},
    {2024, 2, 28, 2024, 3, 1, 2},
    {1900, 2, 28, 1900, 3, 1, 1},
    {2000, 2, 28, 2000, 3, 1, 2},
    {2023, 12, 31, 2024, 12, 31, 366},
}};

// Months after a date, the day clamped to the end of its month: the service book's answer, worked out by hand. (GNU
// date says 2024-03-02 for the first; that is the other convention.)
struct MonthsRow {
  int y, m, d, months, y2, m2, d2;
};
inline constexpr std::array<MonthsRow, 8> months_rows{{
    {2024, 1, 31, 1, 2024, 2, 29},
    {2023, 1, 31, 1, 2023, 2, 28},
    {2024, 1, 31, 2, 2024, 3, 31},  // not chained over February
    {2024, 2, 29, 12, 2025, 2, 28},
    {2024, 2, 29, 48, 2028, 2, 29},
    {2023, 8, 31, 6, 2024, 2, 29},
    {2023, 5, 14, 60, 2028, 5, 14},
    {2023, 12, 15, 1, 2024, 1, 15},
}};

// Theil–Sen slope and Sen's 95 % interval, made with Python 3.11 and SciPy 1.10.1: scipy.stats.theilslopes(y, x, 0.95).
// To the last bits of the slopes: relative 1e-14.
struct RateRow {
  std::vector<double> day;
  std::vector<double> km;
  double slope, low, high;
};
inline const std::array<RateRow, 6> rate_rows{{
    {{0, 31, 59, 90, 120, 151, 181, 212, 243, 273},
     {66000.0, 66210.5, 66300.0, 66795.25, 67420.0, 68105.5, 68900.0, 69420.75, 69800.0, 70010.5},
     16.931372549019606,
     13.943708609271523,
     19.63888888888889},
    {{0, 10, 20, 30, 40}, {0, 95, 210, 290, 415}, 10.3125, 8.0, 12.5},
    {{0, 7, 7, 20, 33, 33, 50, 61},  // ties in both
     {100.0, 180.0, 180.0, 300.0, 420.0, 425.0, 425.0, 610.0},
     9.23076923076923,
     5.6976744186046515,
     9.848484848484848},
    {{0, 10, 30}, {0.0, 100.0, 250.0}, 8.333333333333334, 7.5, 10.0},
    {{0, 10, 30, 35}, {0.0, 100.0, 250.0, 400.0}, 10.714285714285715, 7.5, 30.0},
    {{3,   38,  83,  92,  157, 178, 194, 199, 210, 212, 239, 311, 327, 334, 349,
      353, 404, 437, 478, 503, 542, 557, 571, 574, 583, 611, 628, 638, 661, 693},
     {66541.6, 66814.7, 67376.4, 67391.5, 68162.7, 68366.9, 68638.7, 68644.1, 68855.3, 68871.0,
      69155.5, 69829.3, 70128.8, 70237.3, 70363.1, 70416.5, 71002.5, 71345.4, 71818.9, 72213.6,
      72542.1, 72758.1, 72917.2, 72971.4, 73047.2, 73376.9, 73566.2, 73601.9, 73939.9, 74378.4},
     11.409646302250833,
     11.32278911564624,
     11.486827956989224},
}};

}  // namespace camside::oracle
