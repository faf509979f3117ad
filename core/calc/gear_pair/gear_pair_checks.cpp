// What is asked of teeth, pins and trains wherever they stand: by gear_pair.cpp and by the questions that build on it.
#include <cmath>
#include <numbers>
#include <utility>

#include "calc/gear_pair/gear_pair.hpp"
#include "calc/gear_pair/gear_pair_remarks.hpp"

namespace camside::gear_pair {

Finding wrong_ratio(Place place, std::string field, const std::string& found) {
  return place == Place::CrankToCam ? remarks::ratio_not_two_to_one(std::move(field), found)
                                    : remarks::ratio_not_one_to_one(std::move(field), found);
}

tl::expected<double, Finding> thickness_from_pins_mm(const involute::Form& form, Length over_pins, Length pin,
                                                     const std::string& field) {
  const auto thickness_mm = involute::thickness_from_pins_mm(form, over_pins.in_mm(), pin.in_mm());
  if (thickness_mm) return *thickness_mm;
  return tl::unexpected(remarks::pins_inside_base_circle(field, over_pins, Length::mm(2.0 * form.base_mm) + pin));
}

std::optional<Finding> thickness_fault(const involute::Form& form, double thickness_mm, const std::string& field) {
  const double pitch_mm = std::numbers::pi * form.module_t_mm;
  if (thickness_mm > 0.0 && thickness_mm < pitch_mm) return std::nullopt;
  return remarks::no_tooth_or_no_space(field, Length::mm(thickness_mm), Length::mm(pitch_mm));
}

std::optional<Finding> pin_fault(const PinInSpace& p, const std::string& field) {
  const auto seat = involute::pin_seat(p.form, p.thickness_mm, p.pin.in_mm());
  // Without a seat the centre stands on the base circle to the last bit, for the thickness came from this very pin.
  if (!seat || !seat->touches_involute) return remarks::pin_on_no_involute(field, p.pin);
  const Length contact = Length::mm(seat->contact_mm);
  const Length under = Length::mm(seat->centre_mm) - p.pin / 2.0 - p.root_radius;
  if (contact > p.tip_radius) return remarks::pin_rides_on_tips(field, contact, p.tip_radius);
  if (under < Length{}) return remarks::pin_on_the_bottom(field, under);
  if (p.over_pins <= 2.0 * p.tip_radius) return remarks::pin_does_not_stand_out(field, p.over_pins, p.tip_radius);
  return std::nullopt;
}

Findings unreal_figures(const Outcome& outcome) {
  for (const Figure& f : outcome.figures)
    if (!std::isfinite(f.base)) return {remarks::no_finite_result(f.label)};
  return {};
}

}  // namespace camside::gear_pair
