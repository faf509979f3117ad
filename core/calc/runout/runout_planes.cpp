#include "calc/runout/runout_planes.hpp"

#include <cmath>
#include <complex>
#include <numbers>

namespace camside::runout {

namespace {

using Part = TwoPlanes::Part;
using Arrow = std::complex<double>;  // eccentricity as an arrow across the shaft, in mm

constexpr double about_rad = 30.0 * std::numbers::pi / 180.0;  // how far "about square" and "about in line" reach

double in_common_direction(double angle_rad, std::optional<SeenFrom> seen_from) {
  return seen_from == SeenFrom::Left ? -angle_rad : angle_rad;
}

Arrow arrow_of(const Shape& shape, std::optional<SeenFrom> seen_from) {
  return std::polar(*shape.eccentricity_mm, in_common_direction(*shape.high_spot_rad, seen_from));
}

Angle direction_of(Arrow a) {
  const double rad = std::arg(a);
  return Angle::rad(rad < 0.0 ? rad + 2.0 * std::numbers::pi : rad);
}

// Angle between an arrow and the line through the crankpin, 0 to 90°.
double off_the_pin_line_rad(Arrow a, double pin_rad) {
  return std::atan2(std::abs(std::imag(a * std::polar(1.0, -pin_rad))),
                    std::abs(std::real(a * std::polar(1.0, -pin_rad))));
}
bool toward_the_pin(Arrow a, double pin_rad) {
  return std::real(a * std::polar(1.0, -pin_rad)) > 0.0;
}

// Whether everything is known that the wheels' part must be told from.
bool can_be_named(const Setup& first, const OtherSide& about) {
  return first.seen_from && about.seen_from && about.one_zero.value_or(false) && about.same_side && about.crankpin &&
         about.support && *about.support != Support::VBlocks && about.read_at;
}

Part opposed_part(Arrow a, double pin_rad) {
  return off_the_pin_line_rad(a, pin_rad) >= 0.5 * std::numbers::pi - about_rad ? Part::Scissored : Part::Unnamed;
}

Part common_part(Arrow a, double pin_rad, ReadAt read_at) {
  if (off_the_pin_line_rad(a, pin_rad) > about_rad) return Part::SetUp;
  const bool pinched = toward_the_pin(a, pin_rad) == (read_at == ReadAt::InboardOfSupports);
  return pinched ? Part::Pinched : Part::Spread;
}

// Half the sum or difference of two arrows is known a factor √2 better than each.
bool too_small(Length part, Length expanded_uncertainty) {
  return part.in_mm() <= expanded_uncertainty.in_mm() * std::numbers::sqrt2 * 0.5;
}

void name_parts(TwoPlanes& t, Arrow opposed, Arrow common, const OtherSide& about, Length u, double pin_rad) {
  t.opposed_is = too_small(t.opposed, u) ? Part::TooSmall : opposed_part(opposed, pin_rad);
  t.common_is = too_small(t.common, u) ? Part::TooSmall : common_part(common, pin_rad, *about.read_at);
}

}  // namespace

std::optional<TwoPlanes> two_planes(const Shape& first, const Setup& first_setup, const Shape& other,
                                    const OtherSide& about, Length expanded_uncertainty) {
  if (!first.high_spot_rad || !other.high_spot_rad) return std::nullopt;
  const Arrow r = arrow_of(first, first_setup.seen_from);
  const Arrow l = arrow_of(other, about.seen_from) * (about.same_side.value_or(true) ? 1.0 : -1.0);
  const Arrow opposed = 0.5 * (l - r);
  const Arrow common = 0.5 * (l + r);
  TwoPlanes t;
  t.opposed = Length::mm(2.0 * std::abs(opposed));
  t.opposed_high_spot = direction_of(opposed);
  t.common = Length::mm(2.0 * std::abs(common));
  t.common_high_spot = direction_of(common);
  if (!can_be_named(first_setup, about)) return t;
  const double pin_rad = in_common_direction(about.crankpin->in_rad(), first_setup.seen_from);
  name_parts(t, opposed, common, about, expanded_uncertainty, pin_rad);
  return t;
}

}  // namespace camside::runout
