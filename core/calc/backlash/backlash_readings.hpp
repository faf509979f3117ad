// Inside of backlash.hpp: from needle swings at crank angles to lash at positions. Raw numbers in mm and rad; what
// there is to say of them stands in backlash_findings.hpp.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "calc/backlash/backlash.hpp"
#include "calc/gear_pair/gear_pair.hpp"

namespace camside::backlash {

// The gear that is rocked and touched.
struct Touched {
  const involute::Form& form;
  double operating_mm;
};
Touched touched(const Input& in, const gear_pair::Frame& f);

// How a needle swing becomes lash along the operating circle: lash = swing · per_reading − outer lash · per_outer.
struct Conversion {
  double contact = 1.0;      // true travel of the surface touched per unit of reading
  double per_reading = 1.0;  // contact · r_w / r_m
  double per_outer = 0.0;    // r_i / r_o, by subtraction only
  double flank_rad = 0.0;    // α_y at the radius touched; 0 on an arm
};
tl::expected<Conversion, Finding> conversion(const Input& in, const gear_pair::Frame& f);

// Readings of one position of the crank, put together.
struct Position {
  double crank_rad = 0.0;
  double lash_mm = 0.0;  // mean
  std::size_t count = 1;
};

struct Round {
  std::vector<Point> points;        // one for each reading
  std::vector<Position> positions;  // by angle; closing readings left out
  double repeat_squares_mm2 = 0.0;  // about the means of the positions read more than once
  std::size_t repeat_degrees_of_freedom = 0;
  double largest_gap_rad = 0.0;  // between neighbouring positions, over the end of the 720° too
  double gap_from_rad = 0.0;
};

// Refused when turns and angles contradict each other or nothing was read.
tl::expected<Round, Findings> round_of(const Input& in, const Conversion& c);

inline constexpr double cycle_rad = 4.0 * 3.14159265358979323846;
// The first reading at the start of the turn; a later one a full turn (or two) on is that position again.
std::optional<std::size_t> start_reading(const Input& in);
std::string reading_path(std::size_t i, const char* field);

}  // namespace camside::backlash
