// From what people write to a quantity, without guessing.
//
// Accepts: .003 · 0,076 mm · 3 thou · 1/16 in · 1-3/8" · 1 3/8 in · 2 turns 3 flats · 2 t 3 f · 41,300 mi · −0.0031 in
// · 32 tpi · 16 DP · 90 °F A decimal comma and a decimal point both work. Refused with the reason: empty or non-numeric
// text, a number without a unit where no default is given, an unknown unit or a unit of another kind, a zero
// denominator, NaN or infinity, trailing text, more than 40 significant digits, and ambiguous grouping: one comma, 1-3
// digits before it without a leading 0, exactly 3 digits after and no point ("1,234 mm": 1.234 or 1234?). For an
// odometer (Kind::Distance) that comma is a group mark.
#pragma once

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

// A value as it was typed. `text` is kept unchanged, with its unit; `base` is the nearest double of the exact value in
// the kind's base unit. from_text(to_text(x)) returns the same text.
struct Entered {
  Kind kind = Kind::Number;
  double base = 0.0;
  const Unit* unit = nullptr;  // the unit typed, or the default that was taken
  std::string text;
};

struct ParseOptions {
  const Unit* default_unit =
      nullptr;             // taken for a bare number; nullptr: a bare number is refused (Kind::Number needs none)
  int flats_per_turn = 6;  // a property of the part, for "2 turns 3 flats"
};

tl::expected<Entered, ParseRefusal> parse(Kind kind, std::string_view text, const ParseOptions& options = {});

// "2003-05-14" (ISO 8601); other orders are refused with the reason, since 4/5/2003 has two readings.
tl::expected<Date, ParseRefusal> parse_date(std::string_view text);

}  // namespace camside
