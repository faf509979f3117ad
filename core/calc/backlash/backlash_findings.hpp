// Inside of backlash.hpp: all that a lash measurement gives to say, asked in this order. The words are in
// backlash_remarks.hpp.
#pragma once

#include <vector>

#include "calc/backlash/backlash.hpp"
#include "calc/backlash/backlash_readings.hpp"
#include "calc/backlash/backlash_verdict.hpp"
#include "calc/gear_pair/gear_pair.hpp"
#include "calc/lash_temperature/lash_temperature.hpp"

namespace camside::backlash {

// Before any reading is used; refusals are among them.
Findings check_mesh(const Input& in, const gear_pair::Frame& f);
void check_access(const Input& in, Findings& out);
void check_readings(const Input& in, Findings& out);

// Of the measurement.
void check_radius(const Input& in, const gear_pair::Frame& f, Findings& out);
void check_indicator_lean(const Input& in, const Conversion& c, Findings& out);
void check_lash(const Input& in, const Round& round, Findings& out);
void check_cover(const Input& in, const Round& round, Findings& out);  // one turn only, too few positions, a gap
void check_play(const Input& in, Findings& out);

// Of the window: its method, the line it is meant along, its width; then what temperature does to the lash.
void check_method(const Input& in, bool one_spot, Findings& out);
void check_line(const Input& in, const gear_pair::Frame& f, Findings& out);
void check_width(const Input& in, const Result& r, Findings& out);
void check_states(const Input& in, const lash_temperature::Conditions& conditions, const Result& r, Findings& out);

// Of the verdict.
void caution_outside(const std::vector<Gate>& gates, Findings& out);

}  // namespace camside::backlash
