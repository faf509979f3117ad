// Rows for runout: published or derived readings with the answers they must give.
#pragma once

#include <array>
#include <vector>

#include "findings/outcome.hpp"

namespace camside::oracle {

// A first harmonic by hand, "Harmonic analysis (twelve-point)", a public lecture text on Fourier series, example 2.10:
// readings at 0°, 30° … 330°. Its printed sine sum 4.576 is a slip, the terms add to 4.568653; the rest agrees with a
// recomputation to nine places. Tolerance: half of the ninth place.
struct HarmonicRow {
  std::vector<double> reading;
  double mean, cosine, sine;
  double eccentricity, high_spot_deg;
  double tir, scatter, coefficient_uncertainty, residual_range;
  double cosine2, sine2;
};
inline const HarmonicRow twelve_point{{2.4, 3.5, 4.1, 3.7, 2.6, 1.9, 1.6, -0.4, 1.6, 1.8, 3.0, 4.1},
                                      2.491666667,
                                      1.255459161,
                                      0.761442225,
                                      1.468322841,
                                      31.23701988,
                                      4.5,
                                      0.800925498,
                                      0.326976465,
                                      2.325480947,
                                      0.0,
                                      0.0};

// A textbook classic of six readings at 0°, 60° … 300° (published to three places, from memory: 1.45 − 0.367 cos x +
// 0.173 sin x − 0.1 cos 2x − 0.0577 sin 2x; recomputed to nine). Zeros: not given.
inline const HarmonicRow six_point{{1.0, 1.4, 1.9, 1.7, 1.5, 1.2},
                                   1.45,
                                   -0.366666667,
                                   0.173205081,
                                   0.405517502,
                                   154.715003954,
                                   0.9,
                                   0.0,
                                   0.0,
                                   0.0,
                                   -0.1,
                                   -0.057735027};

// What those six readings give when the 360° repeat of the first is counted as a seventh station. Wrong, and published
// in two places; a closing reading must not lead there.
inline constexpr std::array<double, 3> six_point_with_the_repeat_counted{1.440740741, -0.385185185, 0.173205081};

// Offset and total indicator reading, a public design guide for turned parts: "±.004 in (0.10 mm) deviation is defined
// as .008 in (0.20 mm) TIR". Exact.
struct OffsetRow {
  double offset, tir;
};
inline constexpr std::array<OffsetRow, 2> offset_and_tir_in_and_mm{{{0.004, 0.008}, {0.10, 0.20}}};

// A true circle of 12.5 mm radius carried 0.05 mm off centre under a radial plunger; derived, r = e cos θ + √(R² − e²
// sin² θ). Its second harmonic is geometry and no ovality of the shaft.
inline constexpr double offset_circle_radius_mm = 12.5;
inline constexpr double offset_circle_offset_mm = 0.05;
inline constexpr double offset_circle_second_harmonic_mm = 5.00002e-5;

// Cosine of a lever's angle (shop tables, from memory; recomputed). Tolerance: half of the fourth place.
struct LeverRow {
  double angle_deg, factor;
};
inline constexpr std::array<LeverRow, 4> lever_factor{{{15, 0.9659}, {30, 0.8660}, {45, 0.7071}, {60, 0.5000}}};

// Repeated readings and assumed distributions, JCGM 100:2008 4.4.3 and 4.3.7 (from memory, recomputed): the divisors of
// a rectangular ±a and of a resolution. Tolerance: half of the last place.
inline constexpr double rectangular_of_4 = 2.309401;  // 4/√3
inline constexpr double resolution_of_1 = 0.288675;   // 1/√12
inline const std::vector<double> twenty_readings{96.90,  98.18,  98.25,  98.61,  99.03,  99.49,  99.56,
                                                 99.74,  99.89,  100.07, 100.33, 100.42, 100.68, 100.95,
                                                 101.11, 101.20, 101.57, 101.84, 102.36, 102.72};
inline constexpr double twenty_readings_deviation = 1.488844;

// Proving that a limit is met or not, ISO 14253-1 (worked example from a secondary page: upper limit 20.050 mm,
// U 0.015 mm; zone of no proof 20.035 … 20.065). 20.050 − 0.015 is not 20.035 in doubles: the edge itself is Within.
struct DecisionRow {
  double value;
  Verdict verdict;
};
inline constexpr double decision_limit_mm = 20.050;
inline constexpr double decision_uncertainty_mm = 0.015;
inline constexpr std::array<DecisionRow, 6> decisions{{{20.030, Verdict::Within},
                                                       {20.035, Verdict::Within},
                                                       {20.040, Verdict::NotProven},
                                                       {20.060, Verdict::NotProven},
                                                       {20.065, Verdict::NotProven},
                                                       {20.066, Verdict::Outside}}};

}  // namespace camside::oracle
