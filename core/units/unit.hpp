// The units people write, and what each is exactly worth in the base unit of its kind.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace camside {

// What sort of thing a number is. One kind for each type of quantity.hpp, and plain numbers.
enum class Kind : std::uint8_t {
  Number,  // dimensionless: ratio, profile shift, coefficient
  Length,
  Angle,
  Distance,
  Temperature,
  TemperatureDifference,
  Expansion,
  Force,
  Torque,
  Pressure,
  ThreadPitch,
  Module,
  Duration,
  Money,
};

// base = (value − zero) · numerator / denominator, where `zero` is the reading at which the base unit reads nothing
// (32 °F). Reciprocal units (tpi, diametral pitch) have base = numerator / (denominator · value). With `times_pi` the
// factor is multiplied by π. Numerator and denominator are whole, so every factor is exact by definition.
struct Unit {
  Kind kind = Kind::Number;
  std::string_view symbol;                    // as shown: "in", "mm", "°C"
  std::span<const std::string_view> aliases;  // further spellings accepted on entry
  std::int64_t numerator = 1;
  std::int64_t denominator = 1;
  std::int64_t zero_hundredths = 0;
  bool reciprocal = false;
  bool times_pi = false;
  int display_decimals = 3;  // a resolution that suits the quantity; entry and storage keep what was typed

  // For drawing and for calculators' raw numbers: within one unit in the last place. Text goes by parse() and format(),
  // which are exact.
  double to_base(double value) const;
  double from_base(double base) const;
};

// All units of a kind; the first is the base unit.
std::span<const Unit> units_of(Kind kind);

// The unit with this spelling, or nullptr: the symbol, an alias ("in", "inch", "\""), or either in other capitals.
// Blanks and product signs between letters are passed over: "N·m", "N m", "Nm".
const Unit* find_unit(Kind kind, std::string_view spelling);

// The unit in which a kind is shown to people in one of the two systems.
enum class System : std::uint8_t { Inch, Metric };
const Unit& preferred_unit(Kind kind, System system);

std::string_view name_of(Kind kind);  // "length", "angle"

}  // namespace camside
