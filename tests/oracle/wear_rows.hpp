// Rows for the straight line and for the distance at which it meets a level.
#pragma once

#include <array>
#include <vector>

namespace camside::oracle {

// NIST Statistical Reference Datasets, linear regression, certified values (itl.nist.gov/div898/strd).
struct LineRow {
  const char* source;
  std::vector<double> x;
  std::vector<double> y;
  double slope;
  double intercept;
  double slope_deviation;     // standard error of the slope
  double residual_deviation;  // s
};
inline const LineRow norris{"NIST StRD Norris",
                            {0.2, 337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4,
                             0.6, 775.5, 666.9, 338.0, 447.5, 11.6,  556.0, 228.1, 995.8, 887.6, 120.2, 0.3,
                             0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, 0.5},
                            {0.1, 338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3,
                             0.1, 778.1, 668.8, 339.3, 448.9, 10.8,  557.7, 228.3, 998.0, 888.8, 119.6, 0.3,
                             0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, 0.2},
                            1.00211681802045,
                            -0.262323073774029,
                            0.429796848199937E-03,
                            0.884796396144373};

// JCGM 100:2008, H.3, calibration line of a thermometer (intercept at 20 °C). Printed: slope 0.00218(67), intercept
// −0.1712(29); more digits as recomputed by two public programs.
inline const LineRow thermometer{
    "JCGM 100:2008 H.3",
    {1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.010, 6.511},
    {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160},
    0.0021826977398872894,
    -0.17120379013135004,
    0.0006679387732278323,
    0.003497564};

// Where the mean response meets a level, by inversion. "Regression Analysis: Concepts and Applications" (1994), chapter
// 6, reaction chamber (p. 433) and crystal weights (p. 434); as printed there, and the first crystal row with the
// digits that a public program for inverse estimation prints for it.
struct CrossingRow {
  const char* what;
  std::vector<double> x;
  std::vector<double> y;
  double level;
  double probability;
  double estimate, low, high;
  double estimate_tolerance, tolerance;
};
inline const std::vector<double> crystal_hours{2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28};
inline const std::vector<double> crystal_grams{0.08, 1.12, 4.43,  4.98,  4.92,  7.18,  5.57,
                                               8.40, 8.81, 10.81, 11.16, 10.12, 13.12, 15.04};
inline const std::array<CrossingRow, 3> crossing_rows{{
    {"reaction chamber",
     {0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100},
     {206.36, 225.52, 252.18, 289.33, 318.11, 349.49, 383.03, 410.70, 444.40, 469.14, 501.16},
     400.0,
     0.99,
     66.5,
     65.07,
     68.03,
     0.05,
     0.005},
    {"crystal weights, 8 g", crystal_hours, crystal_grams, 8.0, 0.95, 15.88820, 14.65896, 17.15963, 5e-6, 5e-6},
    {"crystal weights, 5 g", crystal_hours, crystal_grams, 5.0, 0.90, 9.93, 8.65, 11.05, 0.005, 0.005},
}};

// A published regression example (Numerical Algorithms Group library manual, example of g02cb, the point of weight 2
// entered twice): the slope is not proven at 95 %, so no interval has an end. Its limits of the mean response, printed
// to two decimals, enclose the line.
struct MeanRow {
  double x;
  double fitted;
  double low;
  double high;
};
inline const std::vector<double> unproven_x{1, 2, 2, 4, 2, 2, 3, 7, 4, 2};
inline const std::vector<double> unproven_y{4, 4, 4, 5.1, 4, 6, 5.2, 9.1, 2, 4.1};
inline constexpr std::array<MeanRow, 5> unproven_means{{
    {1.0, 3.47, 1.76, 5.18},
    {2.0, 4.14, 2.87, 5.42},
    {4.0, 5.49, 4.15, 6.84},
    {3.0, 4.82, 3.70, 5.94},
    {7.0, 7.52, 4.51, 10.53},
}};

}  // namespace camside::oracle
