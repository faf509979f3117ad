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

// base = (value · numerator / denominator) + offset; reciprocal units (tpi, diametral pitch) have
// base = numerator / (denominator · value). The factor is exact where both numbers are.
struct Unit {
  Kind kind = Kind::Number;
  std::string_view symbol;                    // as shown: "in", "mm", "°C"
  std::span<const std::string_view> aliases;  // further spellings accepted on entry
  double numerator = 1.0;
  double denominator = 1.0;
  double offset = 0.0;
  bool reciprocal = false;
  int display_decimals = 3;  // a resolution that suits the quantity; entry and storage keep what was typed

  double to_base(double value) const;
  double from_base(double base) const;
};

// All units of a kind; the first is the base unit.
std::span<const Unit> units_of(Kind kind);

// The unit with this spelling, or nullptr. Spelling is exact but for the aliases ("in", "inch", "\"").
const Unit* find_unit(Kind kind, std::string_view spelling);

// The unit in which a kind is shown to people in one of the two systems.
enum class System : std::uint8_t { Inch, Metric };
const Unit& preferred_unit(Kind kind, System system);

std::string_view name_of(Kind kind);  // "length", "angle"

}  // namespace camside
