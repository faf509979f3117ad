// From a quantity to text. Rounds half to even on the decimal digits: those entered, or for a computed value those of
// the shortest decimal that reads back as the same double. Never "−0". Uses the true minus sign (U+2212) in texts for
// people.
#pragma once

#include <string>

#include "units/parse.hpp"
#include "units/quantity.hpp"
#include "units/unit.hpp"

namespace camside {

// Round a double to `decimals` places, half to even on its shortest decimal: 0.00125 -> "0.0012" at 4.
std::string format_decimal(double value, int decimals);

// All digits of the shortest decimal that reads back as the same double: "0.0031 in"; for error texts and the working.
std::string format_full(double base, const Unit& unit);

// "0.0031 in", "78.7 µm", "−3.5 °": value in the unit, at the unit's display resolution or the one given (−1: the
// unit's).
std::string format(double base, const Unit& unit, int decimals = -1);

// The same in the preferred unit of a system.
std::string format(Kind kind, double base, System system);
std::string format(Length v, System system);
std::string format(Angle v);
std::string format(Distance v, System system);
std::string format(Temperature v, System system);

// An entered value in another unit, exactly converted on its decimal digits and rounded half to even at the unit's
// resolution.
std::string convert(const Entered& entered, const Unit& unit, int decimals = -1);

// "2 turns 3 flats" (whole flats; the caller rounds), "1 flat", "−2 flats"; "0 flats" for nothing.
std::string format_turns_flats(long whole_flats, int flats_per_turn);

std::string format_date(Date date);  // "2003-05-14"

}  // namespace camside
