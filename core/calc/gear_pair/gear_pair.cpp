#include "calc/gear_pair/gear_pair.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "calc/gear_pair/gear_pair_remarks.hpp"
#include "fields/field_remarks.hpp"
#include "findings/outcome_writer.hpp"

namespace camside::gear_pair {

namespace {

constexpr double pi = std::numbers::pi;

constexpr std::array<Choice, 5> thickness_words{{
    {"profile shift", "Profile shift"},
    {"thickness", "Thickness at the reference circle"},
    {"over pins", "Size over pins"},
    {"span", "Span over teeth"},
    {"as fitted", "As fitted (only the lash is known)"},
}};
constexpr std::array<Choice, 3> place_words{{
    {"crank to cam", "Crank to cam, 2:1"},
    {"cam to cam", "Cam to cam, 1:1"},
    {"elsewhere", "Elsewhere"},
}};

Field size_field(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.above(0.0).at_most(Length::mm(10000.0));
}

// --- the pair before its thicknesses are known ---

double base_sum_mm(const Frame& f) {
  return f.gear1.base_mm + f.gear2.base_mm;
}

double degrees(double rad) {
  return Angle::rad(rad).in_deg();
}

// How far a is from what a module asks for, as a part of it.
double miss(double module_mm, const Frame& f) {
  const double asked = f.reference_centre_mm * module_mm / f.gear1.module_mm;
  return std::abs(f.centre_mm / asked - 1.0);
}

// The usual slip: a diametral pitch typed as a module or the other way round. Both swaps are 25.4/m.
std::string swapped_pitch(const Frame& f) {
  const double swapped_mm = 25.4 / f.gear1.module_mm;
  if (miss(swapped_mm, f) > centre_distance_doubt || miss(f.gear1.module_mm, f) <= centre_distance_doubt) return "";
  return fmt::format("Diametral pitch {:.4g} (module {:.4g} mm) would fit the centre distance", 25.4 / swapped_mm,
                     swapped_mm);
}

// Another sum of teeth with the same pitch that would fit: a miscount.
std::string other_teeth(const Frame& f, double expected_mm) {
  const int teeth = f.gear1.teeth + f.gear2.teeth;
  const double wanted = teeth * f.centre_mm / expected_mm;
  const long nearest = std::lround(wanted);
  if (nearest == teeth || std::abs(wanted / static_cast<double>(nearest) - 1.0) > centre_distance_doubt) return "";
  return fmt::format("{} teeth in all, where {} were entered, would fit the centre distance", nearest, teeth);
}

void set_operation(Frame& f) {
  const double a = f.centre_mm;
  const double b = base_sum_mm(f);
  f.operating_angle_rad = std::atan2(std::sqrt((a - b) * (a + b)), b);
  f.operating1_mm = a * f.gear1.teeth / (f.gear1.teeth + f.gear2.teeth);
  f.operating2_mm = a - f.operating1_mm;
  f.pitch_mm = 2.0 * pi * a / (f.gear1.teeth + f.gear2.teeth);
}

// --- thickness of one gear ---

// One gear on its way through the solver: entry, form, where it stands in the file, and what is found out.
struct Wheel {
  const Gear* gear = nullptr;
  const involute::Form* form = nullptr;
  std::string path;  // "gear1"
  std::optional<double> thickness_mm;
  GearResult result;

  std::string field(const char* name) const { return path + "." + name; }
};

template <class T>
bool present(const Wheel& w, const std::optional<T>& value, const char* name, std::string_view label, Findings& out) {
  if (!value) out.push_back(remarks::missing(w.field(name), label));
  return value.has_value();
}

void thickness_over_pins(Wheel& w, Findings& out) {
  const bool size = present(w, w.gear->over_pins, "over_pins", "Over pins", out);
  const bool pin = present(w, w.gear->pin_diameter, "pin_diameter", "Pin diameter", out);
  if (!size || !pin) return;
  const auto found = thickness_from_pins_mm(*w.form, *w.gear->over_pins, *w.gear->pin_diameter, w.field("over_pins"));
  if (!found) return out.push_back(found.error());
  w.thickness_mm = *found;
}

void thickness_from_span(Wheel& w, Findings& out) {
  const bool size = present(w, w.gear->span, "span", "Span", out);
  const bool count = present(w, w.gear->span_teeth, "span_teeth", "Teeth spanned", out);
  if (!size || !count) return;
  if (*w.gear->span_teeth >= w.gear->teeth)
    return out.push_back(remarks::span_too_many_teeth(w.field("span_teeth"), *w.gear->span_teeth, w.gear->teeth));
  w.thickness_mm = involute::thickness_from_span_mm(*w.form, w.gear->span->in_mm(), *w.gear->span_teeth);
}

void find_thickness(Wheel& w, Findings& out) {
  switch (w.gear->thickness_from) {
    case ThicknessFrom::ProfileShift:
      w.thickness_mm = involute::thickness_from_shift_mm(*w.form, w.gear->profile_shift);
      break;
    case ThicknessFrom::Thickness:
      if (present(w, w.gear->thickness, "thickness", "Thickness", out)) w.thickness_mm = w.gear->thickness->in_mm();
      break;
    case ThicknessFrom::OverPins:
      return thickness_over_pins(w, out);
    case ThicknessFrom::Span:
      return thickness_from_span(w, out);
    case ThicknessFrom::AsFitted:
      break;
  }
}

double at_operating_circle_mm(const involute::Form& f, double thickness_mm, double operating_mm, double angle_rad) {
  return 2.0 * operating_mm * (involute::base_half_angle_rad(f, thickness_mm) - involute::inv(angle_rad));
}

double at_reference_circle_mm(const involute::Form& f, double operating_thickness_mm, double operating_mm,
                              double angle_rad) {
  const double half_angle = operating_thickness_mm / (2.0 * operating_mm) + involute::inv(angle_rad);
  return 2.0 * f.reference_mm * (half_angle - involute::inv(f.angle_t_rad));
}

double operating_thickness_mm(const Frame& f, const Wheel& w, double operating_mm) {
  return at_operating_circle_mm(*w.form, *w.thickness_mm, operating_mm, f.operating_angle_rad);
}

// What the measured lash leaves for the gears that are "as fitted".
void thickness_as_fitted(const Frame& f, double lash_mm, Wheel& w1, Wheel& w2) {
  const double filled_mm = f.pitch_mm - lash_mm;
  const auto back = [&](Wheel& w, double operating_mm, double s_w_mm) {
    w.thickness_mm = at_reference_circle_mm(*w.form, s_w_mm, operating_mm, f.operating_angle_rad);
  };
  if (w2.thickness_mm) return back(w1, f.operating1_mm, filled_mm - operating_thickness_mm(f, w2, f.operating2_mm));
  if (w1.thickness_mm) return back(w2, f.operating2_mm, filled_mm - operating_thickness_mm(f, w1, f.operating1_mm));
  const double nominal1 =
      at_operating_circle_mm(*w1.form, involute::thickness_from_shift_mm(*w1.form, w1.gear->profile_shift),
                             f.operating1_mm, f.operating_angle_rad);
  const double nominal2 =
      at_operating_circle_mm(*w2.form, involute::thickness_from_shift_mm(*w2.form, w2.gear->profile_shift),
                             f.operating2_mm, f.operating_angle_rad);
  const double thinning = (nominal1 + nominal2 - filled_mm) / 2.0;
  back(w1, f.operating1_mm, nominal1 - thinning);
  back(w2, f.operating2_mm, nominal2 - thinning);
}

// --- one gear's circles and what can be wrong with them ---

void set_diameters(Wheel& w) {
  const involute::Form& f = *w.form;
  GearResult& r = w.result;
  const bool fitted = w.gear->thickness_from == ThicknessFrom::AsFitted;
  const double shift = fitted ? w.gear->profile_shift : r.profile_shift;
  r.tip_assumed = !w.gear->tip_diameter;
  r.root_assumed = !w.gear->root_diameter;
  r.tip_radius = r.tip_assumed ? Length::mm(f.reference_mm + f.module_mm * (1.0 + shift)) : *w.gear->tip_diameter / 2.0;
  r.root_radius =
      r.root_assumed ? Length::mm(f.reference_mm - f.module_mm * (1.25 - shift)) : *w.gear->root_diameter / 2.0;
  r.form_radius = Length::mm(std::max(involute::form_radius_mm(f, shift), r.root_radius.in_mm()));
}

void fill_result(const Frame& f, Wheel& w, double operating_mm) {
  GearResult& r = w.result;
  const double s_mm = *w.thickness_mm;
  r.teeth = w.gear->teeth;
  r.profile_shift = involute::shift_from_thickness(*w.form, s_mm);
  r.reference_radius = Length::mm(w.form->reference_mm);
  r.base_radius = Length::mm(w.form->base_mm);
  r.operating_radius = Length::mm(operating_mm);
  r.thickness = Length::mm(s_mm);
  r.operating_thickness = Length::mm(operating_thickness_mm(f, w, operating_mm));
  r.base_half_angle = Angle::rad(involute::base_half_angle_rad(*w.form, s_mm));
  set_diameters(w);
  r.tip_thickness = Length::mm(involute::thickness_at_mm(*w.form, s_mm, r.tip_radius.in_mm()));
}

// Field to name for a thickness that can't be.
const char* thickness_field(ThicknessFrom from) {
  switch (from) {
    case ThicknessFrom::ProfileShift:
      return "profile_shift";
    case ThicknessFrom::Thickness:
      return "thickness";
    case ThicknessFrom::OverPins:
      return "over_pins";
    case ThicknessFrom::Span:
      return "span";
    case ThicknessFrom::AsFitted:
      break;
  }
  return "thickness_from";
}

void check_thickness(const Wheel& w, Findings& out) {
  const std::string field = w.field(thickness_field(w.gear->thickness_from));
  if (auto fault = thickness_fault(*w.form, *w.thickness_mm, field)) return out.push_back(std::move(*fault));
  if (w.gear->thickness_from != ThicknessFrom::ProfileShift && std::abs(w.result.profile_shift) > 1.0)
    out.push_back(remarks::unusual_shift(field, w.result.profile_shift));
}

void check_tips(const Wheel& w, Findings& out) {
  const GearResult& r = w.result;
  const std::string field = w.field("tip_diameter");
  if (r.tip_radius <= r.root_radius) return out.push_back(remarks::tip_below_root(field, r.tip_radius, r.root_radius));
  if (r.tip_thickness <= Length{}) return out.push_back(remarks::pointed_tip(field, r.tip_assumed));
  if (r.tip_thickness.in_mm() < 0.2 * w.form->module_mm) out.push_back(remarks::thin_tip(field, r.tip_thickness));
  if (r.tip_assumed || r.root_assumed)
    out.push_back(remarks::diameters_assumed(w.path, r.tip_radius, r.root_radius, r.tip_assumed, r.root_assumed));
}

void check_pins(const Wheel& w, Findings& out) {
  const PinInSpace pin{
      *w.form, *w.thickness_mm, *w.gear->pin_diameter, *w.gear->over_pins, w.result.tip_radius, w.result.root_radius};
  if (auto fault = pin_fault(pin, w.field("pin_diameter"))) out.push_back(std::move(*fault));
  if (w.gear->teeth % 2 == 0) return;
  out.push_back(w.form->helix_rad > 0.0 ? remarks::odd_helical_needs_balls(w.field("pin_diameter"))
                                        : remarks::odd_teeth_over_pins(w.field("over_pins"), w.gear->teeth));
}

void check_span(const Wheel& w, Findings& out) {
  const Length contact = Length::mm(involute::span_contact_mm(*w.form, w.gear->span->in_mm()));
  if (contact > w.result.tip_radius)
    out.push_back(remarks::span_touches_above_tips(w.field("span_teeth"), contact, w.result.tip_radius));
  else if (contact < w.result.form_radius)
    out.push_back(remarks::span_touches_below_flank(w.field("span_teeth"), contact, w.result.form_radius));
}

void check_wheel(const Wheel& w, Findings& out) {
  const std::size_t before = out.size();
  check_thickness(w, out);
  if (out.size() > before && out.back().severity == Severity::Refusal) return;
  check_tips(w, out);
  if (w.gear->thickness_from == ThicknessFrom::OverPins) check_pins(w, out);
  if (w.gear->thickness_from == ThicknessFrom::Span) check_span(w, out);
}

// --- the pair ---

// Length of the flank's normal from the base circle to the tip: √(r_a² − r_b²).
double tip_reach_mm(const GearResult& g) {
  const double a = g.tip_radius.in_mm();
  const double b = g.base_radius.in_mm();
  return std::sqrt(std::max((a - b) * (a + b), 0.0));
}

double action_length_mm(const Frame& f) {
  return f.centre_mm * std::sin(f.operating_angle_rad);
}

double contact_ratio_of(const Frame& f, const GearResult& g1, const GearResult& g2) {
  const double base_pitch_mm = 2.0 * pi * f.gear1.base_mm / f.gear1.teeth;
  return (tip_reach_mm(g1) + tip_reach_mm(g2) - action_length_mm(f)) / base_pitch_mm;
}

void check_clearance(const Frame& f, const Wheel& tip, const Wheel& root, Findings& out) {
  const Length clearance = Length::mm(f.centre_mm) - tip.result.tip_radius - root.result.root_radius;
  const bool assumed = tip.result.tip_assumed || root.result.root_assumed;
  if (clearance <= Length{})
    out.push_back(remarks::tip_on_root(tip.field("tip_diameter"), -clearance, assumed));
  else if (clearance.in_mm() < 0.1 * f.gear1.module_mm)
    out.push_back(remarks::little_tip_clearance(tip.field("tip_diameter"), clearance, assumed));
}

void check_reach(const Frame& f, const Wheel& w, Findings& out) {
  const double reach = tip_reach_mm(w.result);
  if (reach > action_length_mm(f))
    out.push_back(remarks::tip_interference(w.field("tip_diameter"), Length::mm(reach), Length::mm(action_length_mm(f)),
                                            w.result.tip_assumed));
}

void check_contact(const Frame& f, double ratio, bool assumed, Findings& out) {
  if (ratio < 1.0)
    out.push_back(f.gear1.helix_rad > 0.0 ? remarks::helical_contact_unknown(ratio)
                                          : remarks::contact_ratio_below_one(ratio, assumed));
  else if (ratio < 1.2)
    out.push_back(remarks::contact_ratio_low(ratio));
}

void check_pair(const Frame& f, const Wheel& w1, const Wheel& w2, double ratio, Findings& out) {
  check_clearance(f, w1, w2, out);
  check_clearance(f, w2, w1, out);
  check_reach(f, w1, out);
  check_reach(f, w2, out);
  check_contact(f, ratio, w1.result.tip_assumed || w2.result.tip_assumed, out);
}

void check_ratio(const Input& in, Findings& out) {
  if (!in.place) return out.push_back(remarks::ratio_not_checked());
  const std::string found =
      fmt::format("{} to {}, {:.4g}:1", in.gear2.teeth, in.gear1.teeth, 1.0 * in.gear2.teeth / in.gear1.teeth);
  if (*in.place == Place::CrankToCam && in.gear2.teeth != 2 * in.gear1.teeth)
    out.push_back(wrong_ratio(*in.place, "gear2.teeth", found));
  if (*in.place == Place::CamToCam && in.gear2.teeth != in.gear1.teeth)
    out.push_back(wrong_ratio(*in.place, "gear2.teeth", found));
}

// The centre distance at which these thicknesses would leave no lash; a_ref when a thickness is known only from the
// lash, or when there is no such distance.
Length expected_centre(const Frame& f, const Wheel& w1, const Wheel& w2) {
  const auto fitted = [](const Wheel& w) { return w.gear->thickness_from == ThicknessFrom::AsFitted; };
  const Length reference = Length::mm(f.reference_centre_mm);
  if (fitted(w1) || fitted(w2)) return reference;
  const double filled =
      f.gear1.base_mm * w1.result.base_half_angle.in_rad() + f.gear2.base_mm * w2.result.base_half_angle.in_rad();
  const auto angle = involute::inverse(filled / base_sum_mm(f) - pi / (f.gear1.teeth + f.gear2.teeth));
  return angle ? Length::mm(base_sum_mm(f) / std::cos(*angle)) : reference;
}

// --- the outcome ---

void add_figures(Result& r) {
  r.outcome.figures = {
      figures::length("lash", "Lash along the operating circles", r.lash),
      figures::length("lash_normal", "Lash square to the flanks", r.lash_normal),
      figures::length("lash_radial", "Lash as a change of centre distance (first order)", r.lash_radial),
      figures::angle("turn1", "Gear 1 turns, gear 2 held", r.gear1.turn),
      figures::angle("turn2", "Gear 2 turns, gear 1 held", r.gear2.turn),
      figures::number("lash_per_centre", "Lash gained per centre distance gained", r.lash_per_centre),
      figures::angle("operating_angle", "Operating pressure angle", r.operating_angle),
      figures::number("contact_ratio", "Contact ratio", r.contact_ratio),
      figures::length("thickness1", "Tooth thickness of gear 1 at its reference circle", r.gear1.thickness),
      figures::length("thickness2", "Tooth thickness of gear 2 at its reference circle", r.gear2.thickness),
      figures::number("shift1", "Profile shift of gear 1", r.gear1.profile_shift),
      figures::number("shift2", "Profile shift of gear 2", r.gear2.profile_shift),
  };
}

Step thickness_step(const Wheel& w, int number) {
  const Gear& g = *w.gear;
  Step s{fmt::format("Tooth thickness of gear {}", number), "", "", remarks::inch_and_mm(w.result.thickness)};
  const auto mm = [](Length v) { return remarks::mm_only(v); };
  switch (g.thickness_from) {
    case ThicknessFrom::ProfileShift:
      s.formula = "s = m (π/2 + 2 x tan α) / cos β";
      s.numbers = fmt::format("m {:.5g} mm, x {:.4f}", w.form->module_mm, g.profile_shift);
      break;
    case ThicknessFrom::Thickness:
      s.formula = "s as entered";
      s.numbers = mm(*g.thickness);
      break;
    case ThicknessFrom::OverPins:
      s.formula = "cos α_M = d_b/(M − D) (odd teeth: × cos(90°/z)), s = d (inv α_M − inv α − D/(d_b cos β_b) + π/z)";
      s.numbers = fmt::format("M {}, D {}, d_b {}, z {}", mm(*g.over_pins), mm(*g.pin_diameter),
                              mm(2.0 * w.result.base_radius), g.teeth);
      break;
    case ThicknessFrom::Span:
      s.formula = "s = (W/cos α − m [π (k − 1) + z inv α]) / cos β";
      s.numbers = fmt::format("W {}, k {}, z {}", mm(*g.span), *g.span_teeth, g.teeth);
      break;
    case ThicknessFrom::AsFitted:
      s.formula = "what the measured lash leaves of the pitch";
      break;
  }
  return s;
}

Step operating_thickness_step(const Wheel& w, int number) {
  return {fmt::format("Its thickness at the operating circle, gear {}", number), "s_w = 2 r_w (s/d + inv α − inv α_w)",
          fmt::format("r_w {}, s/d {:.8f}", remarks::mm_only(w.result.operating_radius),
                      w.result.thickness / (2.0 * w.result.reference_radius)),
          remarks::inch_and_mm(w.result.operating_thickness)};
}

void add_working(const Frame& f, const Wheel& w1, const Wheel& w2, Result& r) {
  auto& steps = r.outcome.working;
  const auto mm = [](double v) { return remarks::mm_only(Length::mm(v)); };
  steps.push_back({"Reference centre distance", "a_ref = m_t (z1 + z2)/2",
                   fmt::format("{:.6g} mm · ({} + {})/2", f.gear1.module_t_mm, f.gear1.teeth, f.gear2.teeth),
                   remarks::inch_and_mm(Length::mm(f.reference_centre_mm))});
  steps.push_back(
      {"Operating pressure angle", "cos α_w = a_ref cos α_t / a",
       fmt::format("{} · cos {:.5f}° / {}", mm(f.reference_centre_mm), degrees(f.gear1.angle_t_rad), mm(f.centre_mm)),
       fmt::format("{:.5f}°", degrees(f.operating_angle_rad))});
  steps.push_back(thickness_step(w1, 1));
  steps.push_back(thickness_step(w2, 2));
  steps.push_back(operating_thickness_step(w1, 1));
  steps.push_back(operating_thickness_step(w2, 2));
  steps.push_back({"Lash", "j = 2π a/(z1 + z2) − s_w1 − s_w2",
                   fmt::format("{} − {} − {}", mm(f.pitch_mm), remarks::mm_only(r.gear1.operating_thickness),
                               remarks::mm_only(r.gear2.operating_thickness)),
                   remarks::inch_and_mm(r.lash)});
  steps.push_back(
      {"Square to the flanks", "j_n = j cos α_w cos β_b",
       fmt::format("cos {:.5f}° · cos {:.5f}°", degrees(f.operating_angle_rad), degrees(f.gear1.helix_b_rad)),
       remarks::inch_and_mm(r.lash_normal)});
  steps.push_back({"As a change of centre distance", "j_r = j/(2 tan α_w)",
                   fmt::format("2 tan {:.5f}°", degrees(f.operating_angle_rad)), remarks::inch_and_mm(r.lash_radial)});
  steps.push_back(
      {"Contact ratio", "(√(r_a1² − r_b1²) + √(r_a2² − r_b2²) − a sin α_w) / p_b",
       fmt::format("r_a {} and {}", remarks::mm_only(r.gear1.tip_radius), remarks::mm_only(r.gear2.tip_radius)),
       fmt::format("{:.4f}", r.contact_ratio)});
}

// Tight teeth need no window to be wrong.
void judge(Result& r) {
  if (r.lash > Length{}) return;
  r.outcome.findings.push_back(remarks::lash_below_nothing(r.lash));
  r.outcome.figures.front().verdict = Verdict::Outside;
  r.outcome.judgement = Judgement{
      Verdict::Outside, "lash", 0.0, {}, Source::common_practice(), "No lash is left: tight teeth never run in"};
}

bool any_fitted(const Input& in) {
  return in.gear1.thickness_from == ThicknessFrom::AsFitted || in.gear2.thickness_from == ThicknessFrom::AsFitted;
}

void remark_measured_lash(const Input& in, const Result& r, Findings& out) {
  const bool both =
      in.gear1.thickness_from == ThicknessFrom::AsFitted && in.gear2.thickness_from == ThicknessFrom::AsFitted;
  if (both) out.push_back(remarks::thinning_shared());
  if (in.measured_lash && !any_fitted(in)) out.push_back(remarks::measured_lash_unused(*in.measured_lash, r.lash));
}

void fill_pair(const Frame& f, const Wheel& w1, const Wheel& w2, Result& r) {
  r.gear1 = w1.result;
  r.gear2 = w2.result;
  r.centre_distance = Length::mm(f.centre_mm);
  r.reference_centre_distance = Length::mm(f.reference_centre_mm);
  r.transverse_module = Module::mm(f.gear1.module_t_mm);
  r.transverse_angle = Angle::rad(f.gear1.angle_t_rad);
  r.operating_angle = Angle::rad(f.operating_angle_rad);
  r.base_helix = Angle::rad(f.gear1.helix_b_rad);
  r.operating_pitch = Length::mm(f.pitch_mm);
  r.lash = Length::mm(f.pitch_mm) - w1.result.operating_thickness - w2.result.operating_thickness;
  r.lash_normal = lash_normal(f, r.lash);
  r.lash_radial = lash_radial(f, r.lash);
  r.lash_per_centre = lash_per_centre(f, r.lash);
  r.gear1.turn = Angle::rad(r.lash / r.gear1.operating_radius);
  r.gear2.turn = Angle::rad(r.lash / r.gear2.operating_radius);
  r.contact_ratio = contact_ratio_of(f, r.gear1, r.gear2);
}

// Both wheels with their thicknesses, or what keeps them from being known.
Findings find_both(const Input& in, const Frame& f, Wheel& w1, Wheel& w2) {
  Findings refused;
  find_thickness(w1, refused);
  find_thickness(w2, refused);
  if (any_fitted(in) && !in.measured_lash) refused.push_back(remarks::missing("measured_lash", "Measured lash"));
  if (refused.empty() && any_fitted(in)) thickness_as_fitted(f, in.measured_lash->in_mm(), w1, w2);
  return refused;
}

Findings check_all(const Input& in, const Frame& f, const Wheel& w1, const Wheel& w2, double ratio) {
  Findings found;
  check_ratio(in, found);
  if (auto question = centre_distance_question(f, expected_centre(f, w1, w2), in.sizes_confirmed))
    found.push_back(std::move(*question));
  check_wheel(w1, found);
  check_wheel(w2, found);
  if (!any_refusal(found)) check_pair(f, w1, w2, ratio, found);
  return found;
}

Findings add_forecast(const Input& in, Result& r) {
  if (!in.temperatures) return {};
  auto forecast = lash_temperature::forecast(mesh_of(r), r.lash, *in.temperatures);
  if (!forecast) return forecast.error();
  r.forecast = *forecast;
  lash_temperature::report(*forecast, *in.temperatures, r.outcome);
  return {};
}

}  // namespace

Field teeth_field(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(4.0).at_most(1000.0).must();
}

void describe_tooth_form(FieldVisitor& v, Module& module, Angle& pressure_angle, Angle& helix) {
  v.value(Field{"module", "Size of the teeth", "Module in mm, or diametral pitch per inch; square to the tooth"}
              .above(0.0)
              .at_most(100.0)
              .must(),
          module);
  v.value(Field{"pressure_angle", "Pressure angle", "Of the cutter: 14.5°, 20° or 25° as a rule"}.above(0.0).at_most(
              Angle::deg(45.0)),
          pressure_angle);
  v.value(
      Field{"helix", "Helix angle", "Of the teeth at the reference circle; 0 for straight teeth"}.at_least(0.0).below(
          Angle::deg(60.0)),
      helix);
}

Field sizes_confirmed_field() {
  return {"sizes_confirmed", "Sizes looked at again", "Pitch, teeth and centre distance are right as entered"};
}

void describe(FieldVisitor& v, Gear& g) {
  v.value(teeth_field(), g.teeth);
  v.choice(Field{"thickness_from", "Thickness known from", "How the tooth thickness of this gear is known"},
           g.thickness_from, thickness_words);
  v.value(Field{"profile_shift", "Profile shift", "In modules; + makes the tooth thicker"}.at_least(-2.0).at_most(2.0),
          g.profile_shift);
  v.value(size_field("thickness", "Thickness", "Arc at the reference circle, in the plane square to the axis"),
          g.thickness);
  v.value(size_field("over_pins", "Over pins", "Over two pins in opposite spaces; odd teeth: nearest to opposite"),
          g.over_pins);
  v.value(size_field("pin_diameter", "Pin diameter", "Of one pin, measured; about 1.7 modules (1.728/P)"),
          g.pin_diameter);
  v.value(size_field("span", "Span", "Between flat jaws over several teeth"), g.span);
  v.value(Field{"span_teeth", "Teeth spanned", "Number of teeth between the jaws"}.at_least(1.0).at_most(1000.0),
          g.span_teeth);
  v.value(size_field("tip_diameter", "Tip diameter", "Outside diameter; left out: assumed from the pitch"),
          g.tip_diameter);
  v.value(size_field("root_diameter", "Root diameter", "At the bottom of the spaces; left out: assumed from the pitch"),
          g.root_diameter);
}

void describe(FieldVisitor& v, Input& in) {
  v.group(Field{"gear1", "Gear 1", "For a crank to cam pair the one on the crank"}.must(), in.gear1);
  v.group(Field{"gear2", "Gear 2", "The other gear"}.must(), in.gear2);
  describe_tooth_form(v, in.module, in.pressure_angle, in.helix);
  v.value(size_field("centre_distance", "Centre distance", "Between the axes of the two shafts, measured").must(),
          in.centre_distance);
  v.choice(Field{"place", "Where it sits", "Settles the ratio the pair must have"}, in.place, place_words);
  v.value(Field{"measured_lash", "Measured lash", "Along the operating circle; needed when a gear is “as fitted”"}
              .at_least(Length::mm(-100.0))
              .at_most(Length::mm(100.0)),
          in.measured_lash);
  v.value(sizes_confirmed_field(), in.sizes_confirmed);
  v.group(Field{"temperatures", "Temperatures", "For the lash cold, warming up and hot"}, in.temperatures);
}

tl::expected<Frame, Finding> frame(int teeth1, int teeth2, Module module, Angle pressure_angle, Angle helix,
                                   Length centre_distance) {
  Frame f;
  f.gear1 = involute::form(teeth1, module, pressure_angle, helix);
  f.gear2 = involute::form(teeth2, module, pressure_angle, helix);
  f.centre_mm = centre_distance.in_mm();
  f.reference_centre_mm = f.gear1.reference_mm + f.gear2.reference_mm;
  if (!(f.centre_mm > base_sum_mm(f)))
    return tl::unexpected(remarks::centres_too_close(centre_distance, Length::mm(base_sum_mm(f)), swapped_pitch(f)));
  set_operation(f);
  return f;
}

Length lash_of(const Frame& f, Length thickness1, Length thickness2) {
  return Length::mm(f.pitch_mm -
                    at_operating_circle_mm(f.gear1, thickness1.in_mm(), f.operating1_mm, f.operating_angle_rad) -
                    at_operating_circle_mm(f.gear2, thickness2.in_mm(), f.operating2_mm, f.operating_angle_rad));
}

Length lash_normal(const Frame& f, Length lash) {
  return lash * std::cos(f.operating_angle_rad) * std::cos(f.gear1.helix_b_rad);
}

Length lash_radial(const Frame& f, Length lash) {
  return lash / (2.0 * std::tan(f.operating_angle_rad));
}

double lash_per_centre(const Frame& f, Length lash) {
  return 2.0 * std::tan(f.operating_angle_rad) + lash.in_mm() / f.centre_mm;
}

std::optional<Finding> centre_distance_question(const Frame& f, Length expected, bool confirmed) {
  const double off = std::abs(f.centre_mm / expected.in_mm() - 1.0);
  if (off <= centre_distance_doubt) return std::nullopt;
  std::string fits = swapped_pitch(f);
  if (fits.empty()) fits = other_teeth(f, expected.in_mm());
  const remarks::CentreMiss miss_found{Length::mm(f.centre_mm), expected, fits};
  return confirmed ? remarks::centre_distance_confirmed(miss_found) : remarks::centre_distance_missed(miss_found);
}

lash_temperature::Mesh mesh_of(const Frame& f) {
  return {f.gear1.teeth,
          f.gear2.teeth,
          Length::mm(f.gear1.base_mm),
          Length::mm(f.gear2.base_mm),
          Length::mm(f.centre_mm),
          0.5};
}

lash_temperature::Mesh mesh_of(const Result& r) {
  const Length filled = r.gear1.operating_thickness + r.gear2.operating_thickness;
  return {r.gear1.teeth,       r.gear2.teeth,     r.gear1.base_radius,
          r.gear2.base_radius, r.centre_distance, r.gear1.operating_thickness / filled};
}

tl::expected<Result, Findings> solve(const Input& input) {
  if (Findings bad = check_fields(input); !bad.empty()) return tl::unexpected(std::move(bad));
  const auto f = frame(input.gear1.teeth, input.gear2.teeth, input.module, input.pressure_angle, input.helix,
                       input.centre_distance);
  if (!f) return tl::unexpected(Findings{f.error()});
  Wheel w1{&input.gear1, &f->gear1, "gear1", {}, {}};
  Wheel w2{&input.gear2, &f->gear2, "gear2", {}, {}};
  if (Findings unknown = find_both(input, *f, w1, w2); !unknown.empty()) return tl::unexpected(std::move(unknown));
  fill_result(*f, w1, f->operating1_mm);
  fill_result(*f, w2, f->operating2_mm);
  Result r;
  fill_pair(*f, w1, w2, r);
  r.outcome.findings = check_all(input, *f, w1, w2, r.contact_ratio);
  if (any_refusal(r.outcome.findings)) return tl::unexpected(std::move(r.outcome.findings));
  add_figures(r);
  add_working(*f, w1, w2, r);
  remark_measured_lash(input, r, r.outcome.findings);
  judge(r);
  if (Findings refused = add_forecast(input, r); !refused.empty()) return tl::unexpected(std::move(refused));
  if (Findings unreal = unreal_figures(r.outcome); !unreal.empty()) return tl::unexpected(std::move(unreal));
  return r;
}

}  // namespace camside::gear_pair
