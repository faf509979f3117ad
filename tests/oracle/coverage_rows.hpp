// Rows for coverage factors.
#pragma once

#include <array>

namespace camside::oracle {

// Student's t for 95.45 % on both sides, JCGM 100:2008 table G.2 (from memory; agrees with two independent libraries to
// every printed digit). Tolerance: half of the last printed digit.
struct CoverageRow {
  double degrees_of_freedom;
  double t;
};
inline constexpr std::array<CoverageRow, 22> student_95_45{{
    {1, 13.97}, {2, 4.53},  {3, 3.31},  {4, 2.87},  {5, 2.65},  {6, 2.52},  {7, 2.43},  {8, 2.37},
    {9, 2.32},  {10, 2.28}, {11, 2.25}, {12, 2.23}, {13, 2.21}, {14, 2.20}, {15, 2.18}, {16, 2.17},
    {17, 2.16}, {18, 2.15}, {19, 2.14}, {20, 2.13}, {25, 2.11}, {30, 2.09},
}};

// JCGM 100:2008 annex H.1, end-gauge: contributions in nm and their degrees of freedom. Published: u_c = 32 nm,
// ν_eff = 16, t for 99 % = 2.92 and U99 = 93 nm. Recomputed with full digits: 31.663879, 16.7519, t(16) = 2.920782.
struct BudgetRow {
  double uncertainty;
  double degrees_of_freedom;
};
inline constexpr std::array<BudgetRow, 4> end_gauge{{
    {25.0, 18.0},
    {9.681942, 25.446955},
    {50.000623 * 0.1 * 0.577350269, 50.0},  // L · θ · u(δα): 2.88679
    {16.5988, 2.0},
}};

}  // namespace camside::oracle
