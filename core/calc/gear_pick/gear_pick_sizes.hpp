// Inside of gear_pick.hpp: the sizes of one gear, between its own measure and tooth thickness.
#pragma once

#include <optional>
#include <string>
#include <tl/expected.hpp>

#include "calc/gear_pick/gear_pick_engine.hpp"

namespace camside::gear_pick {

class SizeReader {
 public:
  SizeReader(const Gear& gear, const GearModel& model) : gear_(gear), model_(model) {}

  // A size in tooth thickness, or what is wrong with it.
  tl::expected<double, Finding> thickness_mm(Length value, const std::string& field, const char* label) const;
  // Back from a change of thickness to the gear's own measure.
  std::optional<Length> value_for(double thicker_mm) const;
  double thickness_per_value() const;

 private:
  double tip_mm(double thickness_mm) const;
  double root_mm(double thickness_mm) const;
  tl::expected<double, Finding> over_pins(Length value, const std::string& field) const;

  const Gear& gear_;
  const GearModel& model_;
};

}  // namespace camside::gear_pick
