// Question: how thick is the tooth of one involute gear, whichever way it was measured?
//
// Method and source: ISO 21771 for the geometry of external spur and helical gears; "Elements of Metric Gear
// Technology", section 10, for span and over-pins measurement. Helical gears are worked in the transverse plane: the
// profile shift counts in normal modules, the tooth thickness s is the transverse arc at the reference circle, and a
// pin in a helical space is laid along the base helix.
//
// Key to the short symbols, which match the standard's:
//   z teeth · m_n, m_t normal and transverse module · α_n, α_t pressure angle · β, β_b helix at reference and base
//   circle d, d_b reference and base diameter · s thickness at the reference circle · x profile shift · D pin diameter
//   M size over pins · α_M pressure angle at the pin's centre · W_k span over k teeth · ψ half the tooth's angle at the
//   base circle, so that half the angle at any circle is ψ − inv α_y
//
// Range: α_n in (0°, 45°], β in [0°, 60°), z ≥ 4; the callers check it.
// Accuracy: inv and inverse to 1e-14 relative over (0°, 60°]; thickness -> pins -> thickness and thickness -> span ->
// thickness to 1e-12 mm at the sizes of an engine.
// Not covered: internal gears, racks, teeth with tip or root relief, flank form errors.
#pragma once

#include <optional>

#include "units/quantity.hpp"

namespace camside::involute {

// inv α = tan α − α, for |α| < 90°.
double inv(double angle_rad);

// The angle in [0°, 90°) with this inv; none below 0 or when the value is not finite.
std::optional<double> inverse(double value);

// The involute gear before its thickness is known: what the cutter's pitch, angle and helix settle.
struct Form {
  int teeth = 0;
  double module_mm = 0.0;     // normal
  double angle_rad = 0.0;     // α_n, normal
  double helix_rad = 0.0;     // β
  double module_t_mm = 0.0;   // m_t = m_n / cos β
  double angle_t_rad = 0.0;   // tan α_t = tan α_n / cos β
  double helix_b_rad = 0.0;   // sin β_b = sin β cos α_n
  double reference_mm = 0.0;  // r = z m_t / 2
  double base_mm = 0.0;       // r_b = r cos α_t
};
Form form(int teeth, Module module, Angle pressure_angle, Angle helix);

// Profile shift and thickness: s = m_n (π/2 + 2 x tan α_n) / cos β.
double thickness_from_shift_mm(const Form& f, double shift);
double shift_from_thickness(const Form& f, double thickness_mm);

// ψ = s/d + inv α_t, and the thickness 2 r_y (ψ − inv α_y) at a circle of radius r_y (below the base circle: that of
// the base circle's angle).
double base_half_angle_rad(const Form& f, double thickness_mm);
double thickness_at_mm(const Form& f, double thickness_mm, double radius_mm);

// Pressure angle α_y at a circle: cos α_y = r_b / r_y; none below the base circle.
std::optional<double> angle_at_rad(double base_radius_mm, double radius_mm);

// How a pin (a ball in helical gears with odd teeth) lies in a tooth space.
struct PinSeat {
  double over_pins_mm = 0.0;      // M over two pins; odd teeth: over the two spaces nearest to opposite
  double angle_rad = 0.0;         // α_M
  double centre_mm = 0.0;         // radius of the pin's centre
  double contact_mm = 0.0;        // radius at which it touches the flanks
  bool touches_involute = false;  // false: the point of contact would lie below the base circle
};
// None: the space is so wide that the pin drops through.
std::optional<PinSeat> pin_seat(const Form& f, double thickness_mm, double pin_mm);

// Thickness from a size over pins; none when the pins' centres would lie inside the base circle.
std::optional<double> thickness_from_pins_mm(const Form& f, double over_pins_mm, double pin_mm);

// dM/ds = cos α_t / sin α_M (times cos(90°/z) for odd teeth).
double pins_per_thickness(const Form& f, const PinSeat& seat);

// Span over k teeth, W_k = m_n cos α_n [π(k − ½) + z inv α_t] + 2 x m_n sin α_n, and the radius at which its jaws
// touch.
double span_mm(const Form& f, double thickness_mm, int span_teeth);
double thickness_from_span_mm(const Form& f, double span_mm, int span_teeth);
double span_contact_mm(const Form& f, double span_mm);

// Where a flank cut by a rack of the standard depth (straight to one module below its middle) begins; never below the
// base circle.
double form_radius_mm(const Form& f, double shift);

}  // namespace camside::involute
