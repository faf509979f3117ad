#include "maths/involute.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace camside::involute {

namespace {

constexpr double pi = std::numbers::pi;

// tan x = x / (1 − t) with t = x²/(3 − x²/(5 − x²/(7 − …))). So tan x − x = x t / (1 − t) without the loss of digits
// that the subtraction brings at small angles.
double inv_by_fraction(double x) {
  const double xx = x * x;
  double tail = 0.0;
  for (int odd = 23; odd >= 3; odd -= 2) tail = xx / (odd - tail);
  return x * tail / (1.0 - tail);
}

// Pins of a gear with odd teeth do not stand opposite each other.
double opposite_factor(int teeth) {
  return teeth % 2 == 0 ? 1.0 : std::cos(pi / 2.0 / teeth);
}

double angle_of_pin_centre(double base_mm, double centre_mm) {
  return std::atan2(std::sqrt((centre_mm - base_mm) * (centre_mm + base_mm)), base_mm);
}

// What the pin adds to the half angle of the space: D / (d_b cos β_b).
double pin_angle_rad(const Form& f, double pin_mm) {
  return pin_mm / (2.0 * f.base_mm * std::cos(f.helix_b_rad));
}

}  // namespace

double inv(double angle_rad) {
  return std::abs(angle_rad) < 0.6 ? inv_by_fraction(angle_rad) : std::tan(angle_rad) - angle_rad;
}

std::optional<double> inverse(double value) {
  if (!std::isfinite(value) || value < 0.0) return std::nullopt;
  if (value == 0.0) return 0.0;
  // Both bounds lie above the root (inv α ≥ α³/3, α < 90°) and inv is convex, so Newton's steps come down to it.
  double angle = std::min(std::cbrt(3.0 * value), std::atan(value + pi / 2.0));
  for (int i = 0; i < 100; ++i) {
    const double slope = std::tan(angle) * std::tan(angle);
    const double step = (inv(angle) - value) / slope;
    angle -= step;
    if (std::abs(step) <= 2e-16 * angle) break;
  }
  return angle;
}

Form form(int teeth, Module module, Angle pressure_angle, Angle helix) {
  Form f;
  f.teeth = teeth;
  f.module_mm = module.in_mm();
  f.angle_rad = pressure_angle.in_rad();
  f.helix_rad = helix.in_rad();
  f.module_t_mm = f.module_mm / std::cos(f.helix_rad);
  f.angle_t_rad = std::atan(std::tan(f.angle_rad) / std::cos(f.helix_rad));
  f.helix_b_rad = std::asin(std::sin(f.helix_rad) * std::cos(f.angle_rad));
  f.reference_mm = f.module_t_mm * teeth / 2.0;
  f.base_mm = f.reference_mm * std::cos(f.angle_t_rad);
  return f;
}

double thickness_from_shift_mm(const Form& f, double shift) {
  return f.module_t_mm * (pi / 2.0 + 2.0 * shift * std::tan(f.angle_rad));
}

double shift_from_thickness(const Form& f, double thickness_mm) {
  return (thickness_mm / f.module_t_mm - pi / 2.0) / (2.0 * std::tan(f.angle_rad));
}

double base_half_angle_rad(const Form& f, double thickness_mm) {
  return thickness_mm / (2.0 * f.reference_mm) + inv(f.angle_t_rad);
}

std::optional<double> angle_at_rad(double base_radius_mm, double radius_mm) {
  if (!(radius_mm >= base_radius_mm)) return std::nullopt;
  return angle_of_pin_centre(base_radius_mm, radius_mm);
}

double thickness_at_mm(const Form& f, double thickness_mm, double radius_mm) {
  const double angle = angle_at_rad(f.base_mm, radius_mm).value_or(0.0);
  return 2.0 * radius_mm * (base_half_angle_rad(f, thickness_mm) - inv(angle));
}

std::optional<PinSeat> pin_seat(const Form& f, double thickness_mm, double pin_mm) {
  const double half_space = pi / f.teeth - base_half_angle_rad(f, thickness_mm);
  const auto angle = inverse(pin_angle_rad(f, pin_mm) - half_space);
  if (!angle) return std::nullopt;
  PinSeat seat;
  seat.angle_rad = *angle;
  seat.centre_mm = f.base_mm / std::cos(*angle);
  seat.over_pins_mm = 2.0 * seat.centre_mm * opposite_factor(f.teeth) + pin_mm;
  const double along_flank = f.base_mm * std::tan(*angle) - pin_mm / 2.0 * std::cos(f.helix_b_rad);
  seat.contact_mm = std::hypot(f.base_mm, along_flank);
  seat.touches_involute = along_flank > 0.0;
  return seat;
}

std::optional<double> thickness_from_pins_mm(const Form& f, double over_pins_mm, double pin_mm) {
  const double centre_mm = (over_pins_mm - pin_mm) / (2.0 * opposite_factor(f.teeth));
  if (!(centre_mm > f.base_mm)) return std::nullopt;
  const double inv_m = inv(angle_of_pin_centre(f.base_mm, centre_mm));
  return 2.0 * f.reference_mm * (inv_m - inv(f.angle_t_rad) - pin_angle_rad(f, pin_mm) + pi / f.teeth);
}

double pins_per_thickness(const Form& f, const PinSeat& seat) {
  return std::cos(f.angle_t_rad) / std::sin(seat.angle_rad) * opposite_factor(f.teeth);
}

// Written with s in place of x: 2 x m_n sin α_n = (s cos β − m_n π/2) cos α_n.
double span_mm(const Form& f, double thickness_mm, int span_teeth) {
  return std::cos(f.angle_rad) *
         (f.module_mm * (pi * (span_teeth - 1) + f.teeth * inv(f.angle_t_rad)) + thickness_mm * std::cos(f.helix_rad));
}

double thickness_from_span_mm(const Form& f, double span_mm, int span_teeth) {
  const double teeth_between = f.module_mm * (pi * (span_teeth - 1) + f.teeth * inv(f.angle_t_rad));
  return (span_mm / std::cos(f.angle_rad) - teeth_between) / std::cos(f.helix_rad);
}

double span_contact_mm(const Form& f, double span_mm) {
  return std::hypot(f.base_mm, span_mm * std::cos(f.helix_b_rad) / 2.0);
}

double form_radius_mm(const Form& f, double shift) {
  const double sine = std::sin(f.angle_t_rad);
  const double along_action = f.reference_mm * sine - (1.0 - shift) * f.module_mm / sine;
  return std::hypot(f.base_mm, std::max(along_action, 0.0));
}

}  // namespace camside::involute
