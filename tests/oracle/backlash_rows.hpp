// Rows for the lash of a mesh over its cycle. No publication gives a worked case; each row says how it was derived.
#pragma once

#include <array>
#include <vector>

namespace camside::oracle {

// Lash over the cycle, DERIVED with scipy 1.10 from the formulas of core/calc/backlash.hpp alone: numpy.linalg.lstsq,
// scipy.optimize.minimize_scalar from the best of 7,201 angles, scipy.stats.t.ppf. Flat arm, no loads, 20° teeth of
// 20 per inch. Tolerance of the tests: 1e-11 mm; scipy's minimiser leaves the angle uncertain by 1e-6 degrees.
struct CycleRow {
  bool crank;
  int teeth1, teeth2;
  double centre_mm, radius_mm, indicator_deg, graduation_mm, play_thou;  // of each shaft
  std::vector<double> degrees, thou;
  std::array<double, 5> coefficients_mm;
  double low_mm, low_deg, low_u_mm;
  bool low_from_reading;
  double high_mm, high_deg, high_u_mm;
  bool high_from_reading;
};

inline const std::vector<CycleRow> cycle_rows{
    {true,
     20,
     40,
     38.15,
     31.75,
     10.0,
     0.0127,
     1.0,
     {0, 90, 180, 270, 360, 450, 540, 630},
     {1.9, 2.6, 1.4, 0.9, 1.1, 2.2, 1.7, 0.6},
     {0.031058210375997007, 0.004361728293167136, 0.0009767043072695237, -0.0005009388770322034, 0.016530982942062927},
     0.011967325346591,
     277.982362688,
     0.0246354840501613,
     false,
     0.0520976432113498,
     90.0,
     0.0262947893050753,
     true},
    {false,
     30,
     30,
     38.12,
     25.4,
     -5.0,
     0.00254,
     0.45,
     {0, 120, 240, 360, 480, 600},
     {1.25, 1.55, 1.9, 2.0, 1.7, 1.3},
     {0.03069641136209968, -0.007120301604610747, 0.0024665448288800074, 0.0, 0.0},
     0.02316099243987,
     681.786789675,
     0.00972292105703851,
     false,
     0.0382318302843294,
     321.786789375,
     0.00972292105703851,
     false},
    // Uneven, two positions read twice; the lowest is the mean of one of them.
    {true,
     20,
     40,
     38.15,
     31.75,
     0.0,
     0.0127,
     0.0,
     {10, 95, 200, 270, 365, 450, 530, 655, 10, 200},
     {1.0, 1.5, 2.0, 1.3, 1.25, 1.85, 2.3, 1.45, 1.02, 1.97},
     {0.032881444461728256, -0.0012295626131096074, -0.0038894420689318107, -0.01080399647743954, 0.001277912176497594},
     0.0205501333333333,
     10.0,
     0.00657306619500931,
     true,
     0.0477263020598924,
     530.843688159,
     0.00770915849474446,
     false},
    // A fine indicator and hardly any play: the scatter rules, with three degrees of freedom and k above 3.
    {true,
     20,
     40,
     38.15,
     31.75,
     0.0,
     0.00127,
     0.05,
     {0, 90, 180, 270, 360, 450, 540, 630},
     {1.9, 2.6, 1.4, 0.9, 1.1, 2.2, 1.7, 0.6},
     {0.031537333333333334, 0.004429014982696891, 0.0009917715455449055, -0.0005086666666666636, 0.016786000000000002},
     0.0121519406300233,
     277.982362949,
     0.016538465436433,
     false,
     0.0529013333333333,
     90.0,
     0.0209760764444657,
     true},
};

// A pinion swing of ±1.1 and a cam gear swing of ±0.8 thou about 2.5, both at their least at 540°: four readings in the
// first turn see nothing below 2.2, the truth is 0.6 thou. DERIVED by hand; a search with numpy over all phases and
// starts finds at most 1.86 thou read too high.
struct TwoPeriods {
  double mean_thou = 2.5;
  double pinion_thou = 1.1;
  double gear_thou = 0.8;
  double lowest_in_turn_1_thou = 2.2;
  double lowest_thou = 0.6;
};
inline constexpr TwoPeriods two_periods{};

// Reading on a flank as a share of the travel along the circle touched, DERIVED by moving an involute by 0.5 µm and
// cutting it with the indicator's line (numpy, scipy.optimize.brentq). Base radius 30 cos 20° mm. Tolerance 2e-5: the
// derivation moves the flank by a small but not a vanishing step.
struct FlankRow {
  double radius_mm, indicator_deg, reading_per_travel;
};
inline constexpr std::array<FlankRow, 4> flank_rows{{
    {30.0, 0.0, 1.0000030331899223},
    {30.0, 20.0, 0.9396926207875808},
    {31.0, 10.0, 0.9396410039482678},
    {30.0, -15.0, 1.1471657505849773},
}};
// 20° normal angle, 25° helix, square to the flank: cos α_n · cos β = cos α_t · cos β_b. DERIVED.
inline constexpr double helical_square = 0.8516507396391464;

// Lash against temperature. First row: published nowhere, DERIVED twice (exact and first-order), steel 11.7, aluminium
// 23.1 millionths per K, 2 mm, 30/30 teeth, 60.05 mm, all +80 K. The others DERIVED with numpy from tooth thicknesses:
// 2.0 in centres, 20/40 teeth, 20°, 1.5 thou as measured, gears 11.5, case 23.1. Tolerance 5e-11 mm.
struct WarmRow {
  int teeth1, teeth2;
  double module_mm, centre_mm, lash_mm, gears_ppm, gears_k, case_k, warm_mm;
};
inline constexpr std::array<WarmRow, 5> warm_rows{{
    {30, 30, 2.0, 60.05, 0.0365415938353, 11.7, 80.0, 80.0, 0.0769307398570},
    {20, 40, 50.8 / 30.0, 50.8, 0.0381, 11.5, 1.0, 1.0, 0.0385298646252},
    {20, 40, 50.8 / 30.0, 50.8, 0.0381, 11.5, 70.0, 70.0, 0.0683049885350},
    {20, 40, 50.8 / 30.0, 50.8, 0.0381, 11.5, -30.0, -30.0, 0.0252261772068},
    {20, 40, 50.8 / 30.0, 50.8, 0.0381, 11.5, 80.0, 30.0, 0.0297411782461},
}};

// Play of 0.0015 and 0.0010 in moves the lash of 20° gears by ±0.0009 in: (c1 + c2) tan α, recomputed.
inline constexpr double play_thou = 0.9099255856655057;

}  // namespace camside::oracle
