// From what people write to a quantity, without guessing.
//
// Accepts: .003 · 0,076 mm · 3 thou · 1/16 in · 1-3/8" · 1 3/8 in · 1½ turns · 2 turns 3 flats · 2 t 3 f · 3° 30′ ·
// 41,300 mi · −0.0031 in · 1e-3 mm · 32 tpi · 16 DP · 90 °F · 1 h 30 min
//
// Marks in a number: a point or a comma is the decimal mark. Group marks (comma, point, any blank) must cut the digits
// before the decimal mark into threes: 1,234,567 · 1.234.567 · 1 234 567. Where both marks stand, the last one is the
// decimal mark, which leaves one reading: 1,234.5 and 1.234,5 are the same number. A point alone is always decimal.
// A comma alone with 1-3 digits before it, no leading 0 and exactly 3 digits after is ambiguous ("1,234 mm": 1.234 or
// 1234?) and refused; for an odometer and for money (Kind::Distance, Money) that comma is a group mark.
//
// Several parts ("2 turns 3 flats", "1 h 30 min") are for angles and durations: from large unit to small, all but the
// last whole, one sign in front for the sum. A fraction behind a whole number must be less than one.
//
// Refused with the reason: empty or non-numeric text, a number without a unit where no default is given, an unknown
// unit or a unit of another kind, a zero denominator, NaN or infinity, a magnitude outside 1e-300 to 1e300, trailing
// text, more than 40 digits in one number or 200 bytes in all, and ambiguous grouping.
//
// Exact: the decimal typed times the unit's exact factor is rounded once, to the nearest double. No locale takes part.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "units/quantity.hpp"
#include "units/unit.hpp"

namespace camside {

enum class ParseFault : std::uint8_t {
  Empty,
  NotANumber,
  UnknownUnit,
  WrongKind,   // a unit, but of something else: "3 °C" for a length
  NeedsUnit,   // bare number where no default unit applies
  Ambiguous,   // "1,234 mm"
  OutOfRange,  // overflow, infinity, NaN, zero threads per inch
  TooLong,
  TrailingText,
};

// Why a text was refused: what is wrong, and what to write instead. Both are plain words for the person who typed it.
struct ParseRefusal {
  ParseFault fault = ParseFault::NotANumber;
  std::string reason;
  std::string remedy;
};

// A value as it was typed. `text` is kept unchanged but for blanks around it; when the unit was taken from the default,
// its symbol is added, so that the text alone means the same. `base` is the nearest double of the exact value in the
// kind's base unit. Parsing `text` again gives the same text and the same double.
struct Entered {
  Kind kind = Kind::Number;
  double base = 0.0;
  const Unit* unit = nullptr;  // the unit typed (the first, of several), or the default that was taken
  std::string text;
  int flats_per_turn = 6;
};

struct ParseOptions {
  const Unit* default_unit =
      nullptr;             // taken for a bare number; nullptr: a bare number is refused (Kind::Number needs none)
  int flats_per_turn = 6;  // a property of the part, for "2 turns 3 flats"
};

tl::expected<Entered, ParseRefusal> parse(Kind kind, std::string_view text, const ParseOptions& options = {});

// "2003-05-14" (ISO 8601, single digits for month and day also); other orders are refused with the reason, since
// 4/5/2003 has two readings.
tl::expected<Date, ParseRefusal> parse_date(std::string_view text);

}  // namespace camside
