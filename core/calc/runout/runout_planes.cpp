#include "calc/runout/runout_planes.hpp"

#include <cmath>
#include <complex>
#include <numbers>
#include <string>

#include "calc/runout/runout_remarks.hpp"

namespace camside::runout {

namespace {

namespace say = remarks::runout;
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

std::string missing_answers(const Setup& first, const OtherSide& about) {
  std::string text;
  const auto miss = [&](bool missing, const char* what) {
    if (missing) text += (text.empty() ? "" : ", ") + std::string(what);
  };
  miss(!first.seen_from || !about.seen_from, "from which side the angles were seen");
  miss(!about.one_zero.value_or(false), "that both sides count from one zero");
  miss(!about.same_side, "whether the indicators stood on the same side of the engine");
  miss(!about.crankpin, "where the crankpin is");
  miss(!about.support, "how the crank was carried");
  miss(!about.read_at, "whether it was read inside or outside of the supports");
  return text;
}

Part opposed_part(Arrow a, double pin_rad) {
  return off_the_pin_line_rad(a, pin_rad) >= 0.5 * std::numbers::pi - about_rad ? Part::Scissored : Part::Unnamed;
}

Part common_part(Arrow a, double pin_rad, ReadAt read_at) {
  if (off_the_pin_line_rad(a, pin_rad) > about_rad) return Part::SetUp;
  const bool pinched = toward_the_pin(a, pin_rad) == (read_at == ReadAt::InboardOfSupports);
  return pinched ? Part::Pinched : Part::Spread;
}

void remark_parts(const TwoPlanes& t, Findings& remarks) {
  if (t.opposed_is == Part::Scissored) remarks.push_back(say::wheels_scissored(t.opposed));
  if (t.opposed_is == Part::Unnamed) remarks.push_back(say::opposed_part_elsewhere(t.opposed, t.opposed_high_spot));
  if (t.common_is == Part::Pinched) remarks.push_back(say::wheels_pinched_or_spread(true, t.common));
  if (t.common_is == Part::Spread) remarks.push_back(say::wheels_pinched_or_spread(false, t.common));
  if (t.common_is == Part::SetUp) remarks.push_back(say::common_part_is_setup(t.common, t.common_high_spot));
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
                                    const OtherSide& about, Length expanded_uncertainty, Findings& remarks) {
  if (!first.high_spot_rad || !other.high_spot_rad) {
    remarks.push_back(say::no_high_spot(first.high_spot_rad ? "other_side.swings" : "swings"));
    return std::nullopt;
  }
  if (first_setup.seen_from == SeenFrom::Left) remarks.push_back(say::angles_turned_round("setup.seen_from"));
  if (about.seen_from == SeenFrom::Left) remarks.push_back(say::angles_turned_round("other_side.seen_from"));
  const bool turned_signs = about.same_side.has_value() && !*about.same_side;
  if (turned_signs) remarks.push_back(say::signs_turned_round());

  const Arrow r = arrow_of(first, first_setup.seen_from);
  const Arrow l = arrow_of(other, about.seen_from) * (turned_signs ? -1.0 : 1.0);
  const Arrow opposed = 0.5 * (l - r);
  const Arrow common = 0.5 * (l + r);
  TwoPlanes t;
  t.opposed = Length::mm(2.0 * std::abs(opposed));
  t.opposed_high_spot = direction_of(opposed);
  t.common = Length::mm(2.0 * std::abs(common));
  t.common_high_spot = direction_of(common);

  const std::string missing = missing_answers(first_setup, about);
  if (!missing.empty()) {
    remarks.push_back(say::pattern_not_named(missing));
  } else if (*about.support == Support::VBlocks) {
    remarks.push_back(say::v_blocks_not_named());
  } else {
    const double pin_rad = in_common_direction(about.crankpin->in_rad(), first_setup.seen_from);
    name_parts(t, opposed, common, about, expanded_uncertainty, pin_rad);
    remark_parts(t, remarks);
  }
  return t;
}

}  // namespace camside::runout
