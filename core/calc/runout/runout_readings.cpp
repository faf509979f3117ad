#include "calc/runout/runout_readings.hpp"

#include <cmath>
#include <numbers>

#include "calc/runout/runout_needle.hpp"
#include "calc/runout/runout_remarks.hpp"
#include "calc/runout/runout_shapes.hpp"

namespace camside::runout {

namespace {

constexpr Length usual_range = Length::inches(1.0);

}  // namespace

double needle_turn_mm(const Setup& setup) {
  return setup.needle_turn ? setup.needle_turn->in_mm() : 100.0 * setup.graduation->in_mm();
}

double direction_of(double angle_rad) {
  constexpr double two_pi = 2.0 * std::numbers::pi;
  const double rest = std::fmod(angle_rad, two_pi);
  const double up = rest < 0.0 ? rest + two_pi : rest;
  return two_pi - up < same_direction_rad ? 0.0 : up;
}

RangeGuard::RangeGuard(const Setup& setup)
    : range_(setup.range.value_or(usual_range)), given_(setup.range.has_value()) {}

void RangeGuard::tell(Findings& refusals) const {
  if (count_ == 0) return;
  refusals.push_back(remarks::runout::beyond_indicator(field_, first_, range_, given_, count_ - 1));
}

double indicator_cosine(const Setup& setup) {
  return std::cos(setup.indicator_angle.in_rad());
}

tl::expected<Shape, Findings> shape_of(const Readings& readings, const Setup& setup, const std::string& path) {
  const auto shape = readings.method == Method::Swing ? shape_of_swings : shape_of_stations;
  return shape(readings, setup, path);
}

}  // namespace camside::runout
