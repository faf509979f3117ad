// What the needle can have shown, for swings and stations alike: its travel, its turns, the names of its fields. Part
// of runout_readings.hpp.
#pragma once

#include <cmath>
#include <cstddef>
#include <optional>
#include <string>

#include "calc/runout/runout.hpp"

namespace camside::runout {

constexpr double slack_mm = 1e-9;
constexpr double same_direction_rad = 1e-9;
constexpr double nearly_a_dial_turn = 0.7;

// Travel of the needle for one turn of it.
double needle_turn_mm(const Setup& setup);

double direction_of(double angle_rad);  // in [0, 2π)

// Looks whether a reading lies within the indicator's travel; one refusal names the first that doesn't.
class RangeGuard {
 public:
  explicit RangeGuard(const Setup& setup);

  void look(Length reading, const auto& field) {
    if (std::abs(reading.in_mm()) <= range_.in_mm() + slack_mm) return;
    if (count_++ == 0) {
      first_ = reading;
      field_ = field();
    }
  }
  void tell(Findings& refusals) const;

 private:
  Length range_;
  bool given_;
  std::size_t count_ = 0;
  Length first_;
  std::string field_;
};

}  // namespace camside::runout
