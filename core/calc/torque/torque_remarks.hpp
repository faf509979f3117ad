// Numbers 2000-2099: setting a torque wrench. What each one is about stands beside it.
#pragma once

#include "findings/finding.hpp"
#include "units/quantity.hpp"

namespace camside::remarks::torque {

Finding no_lever_left(Angle angle);                     // 2001
Finding pitch_without_thread(Length left);              // 2002
Finding beyond_the_wrench(Torque setting, Torque end);  // 2003

// Doubts
Finding inch_pounds_meant(double stress_mpa);  // 2020
Finding foot_pounds_meant(double stress_mpa);  // 2021

// Cautions
Finding low_on_the_scale(double share);  // 2040
Finding extension_folded_back();         // 2041
Finding no_source();                     // 2042

// Notes
Finding square_on_no_change();       // 2060
Finding nut_factor_taken(double k);  // 2061
Finding pull_at_the_mark();          // 2062

}  // namespace camside::remarks::torque
