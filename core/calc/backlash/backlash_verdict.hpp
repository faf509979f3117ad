// Inside of backlash.hpp: the window, the method it belongs to, and the verdict.
#pragma once

#include <optional>

#include "calc/backlash/backlash.hpp"
#include "calc/gear_pair/gear_pair.hpp"

namespace camside::backlash {

// Keys of the figures for a state: "lowest", "cold_lowest", "warm_up_highest" …
const char* lowest_key(lash_temperature::State s);
const char* highest_key(lash_temperature::State s);

void check_windows(const Input& in, Findings& out);                          // refusals
void check_method(const Input& in, bool one_spot, Findings& out);            // doubts
void check_line(const Input& in, const gear_pair::Frame& f, Findings& out);  // what a flank's figure would be
void check_width(const Input& in, const Result& r, Findings& out);

// Judges what a window is given for; writes the judgement and the verdict of each figure judged, and cautions for a
// lash that is Outside. Call when all other findings and figures stand in the outcome.
void judge(const Input& in, Result& r);
void judge_by_feel(const Input& in, Result& r);

}  // namespace camside::backlash
