// Rows for gears to order. No published worked table was found; these are worked out by hand or by script as said.
#pragma once

#include <array>

namespace camside::oracle {

// Both gears on offer with the tooth thicker by −0.02 … +0.02 mm, lash now 0.060 mm, wanted 0.020 to 0.040, gears on
// their reference centre distance: by hand, the pairs that add up to +0.02 … +0.04 qualify, 6 of 25 ordered pairs.
inline constexpr std::array<double, 5> pick_offsets_mm{-0.02, -0.01, 0.0, 0.01, 0.02};
inline constexpr double pick_lash_mm = 0.060;
inline constexpr double pick_lowest_mm = 0.020;
inline constexpr double pick_highest_mm = 0.040;
inline constexpr std::array<std::array<double, 2>, 6> pick_pairs{
    {{0.0, 0.02}, {0.02, 0.0}, {0.01, 0.01}, {0.01, 0.02}, {0.02, 0.01}, {0.02, 0.02}}};

// What 0.001 in over pins really is of lash (wire 1.728/P, normal teeth), in thou: least and most over 17 to 52 teeth,
// by numeric differentiation in 30 digits (Python mpmath). Trade practice says 0.41-0.46 and 0.31-0.35.
struct StepRow {
  double degrees;
  double least;
  double most;
};
inline constexpr std::array<StepRow, 2> pin_step_rows{
    {{20.0, 0.398686797754787, 0.454756788594218}, {14.5, 0.308553547452040, 0.376859045490107}}};
// 0.001 in on the pitch radius at 20°: 2 tan 20°.
inline constexpr double radius_step = 0.7279404685;

}  // namespace camside::oracle
