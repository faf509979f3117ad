// Question: how much lash have these two gears at this centre distance, and can the pair run at all?
//
// Method and source: ISO 21771, external spur and helical involute gears, in the transverse plane.
//   cos α_wt = a_ref cos α_t / a, a_ref = m_t (z1 + z2)/2
//   s_y = d_y (s/d + inv α_t − inv α_y)
//   circumferential lash j_wt = 2π a/(z1 + z2) − s_w1 − s_w2, measured along the operating circles
//   normal lash j_bn = j_wt cos α_wt cos β_b; radial lash j_r = j_wt/(2 tan α_wt), the standard's first-order form
//   turned by gear i with the other held: j_wt/r_wi; change with the centre distance dj_wt/da = 2 tan α_wt + j_wt/a
// Tooth thickness from shift, over pins or span: involute.hpp. Temperature: lash_temperature.hpp.
//
// Inputs: teeth (whole, 4 to 1,000), module or diametral pitch (normal, above 0 to 100 mm), normal pressure angle
// (0°, 45°], helix [0°, 60°), centre distance, and for each gear ONE of: profile shift (in normal modules), thickness
// (transverse arc at the reference circle), size over pins with the pin's diameter, span with its number of teeth, or
// "as fitted" together with the measured lash. Tip and root diameters are inputs; left out they are taken as
// d + 2 m (1 + x) and d − 2 m (1.25 − x), and every conclusion that leans on them says so.
// Result: lash in every form (negative lash is a result, judged Outside), both gears' radii and thicknesses, enough to
// draw the true teeth at the pitch point; contact ratio; optionally the lash in four temperature states.
// Accuracy: closed forms, 1e-12 mm for exact inputs; the result is as good as the sizes typed in.
// Not covered: internal gears, racks, crossed shafts, tip relief, undercut teeth, face overlap of helical gears,
// bearing play and runout (backlash.hpp), strength. Findings: 1101 centre distance too small · 1102, 1103 pitch and
// teeth miss it · 1105-1107 ratio · 1111-1118 pins · 1120-1122 span · 1125, 1126 thickness · 1130-1139 tips, roots,
// contact · 1140-1143 lash · 1150-1152 temperature. Example: examples/gear_pair.json
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <tl/expected.hpp>

#include "calc/lash_temperature/lash_temperature.hpp"
#include "fields/field.hpp"
#include "findings/outcome.hpp"
#include "maths/involute.hpp"
#include "units/quantity.hpp"

namespace camside::gear_pair {

enum class ThicknessFrom : std::uint8_t { ProfileShift, Thickness, OverPins, Span, AsFitted };

struct Gear {
  int teeth = 0;
  ThicknessFrom thickness_from = ThicknessFrom::ProfileShift;
  double profile_shift = 0.0;          // read for ProfileShift; for AsFitted only to assume tip and root
  std::optional<Length> thickness;     // Thickness
  std::optional<Length> over_pins;     // OverPins
  std::optional<Length> pin_diameter;  // OverPins
  std::optional<Length> span;          // Span
  std::optional<int> span_teeth;       // Span
  std::optional<Length> tip_diameter;
  std::optional<Length> root_diameter;
};
void describe(FieldVisitor& v, Gear& g);

// Where the pair sits in the train: settles the ratio it must have.
enum class Place : std::uint8_t { CrankToCam, CamToCam, Elsewhere };

struct Input {
  Gear gear1;  // for CrankToCam the one on the crank
  Gear gear2;
  Module module;
  Angle pressure_angle = Angle::deg(20.0);
  Angle helix;
  Length centre_distance;
  std::optional<Place> place;
  std::optional<Length> measured_lash;  // circumferential at the operating circle; needed when a gear is "as fitted"
  bool sizes_confirmed = false;         // pitch, teeth and centre distance were looked at again after 1102
  std::optional<lash_temperature::Conditions> temperatures;
};
void describe(FieldVisitor& v, Input& in);

struct GearResult {
  int teeth = 0;
  double profile_shift = 0.0;  // x that gives this thickness
  Length reference_radius;     // r
  Length base_radius;          // r_b
  Length operating_radius;     // r_w
  Length tip_radius;           // r_a
  Length root_radius;          // r_f
  Length form_radius;          // where a rack-cut flank begins
  Length thickness;            // s at r
  Length operating_thickness;  // s_w at r_w
  Length tip_thickness;        // at r_a
  Angle base_half_angle;       // ψ: half the tooth's angle at radius y is ψ − inv α_y, cos α_y = r_b/r_y
  Angle turn;                  // lash as an angle of this gear, the other held
  bool tip_assumed = false;
  bool root_assumed = false;
};

struct Result {
  GearResult gear1;
  GearResult gear2;
  Length centre_distance;            // a
  Length reference_centre_distance;  // a_ref
  Module transverse_module;          // m_t
  Angle transverse_angle;            // α_t
  Angle operating_angle;             // α_wt
  Angle base_helix;                  // β_b
  Length operating_pitch;            // p_wt
  Length lash;                       // j_wt
  Length lash_normal;                // j_bn
  Length lash_radial;                // j_r
  double lash_per_centre = 0.0;      // dj_wt/da
  double contact_ratio = 0.0;        // ε_α
  std::optional<lash_temperature::Forecast> forecast;
  Outcome outcome;
};

tl::expected<Result, Findings> solve(const Input& input);

// --- pieces that other questions about a mesh build on ---

// The pair before its tooth thicknesses are known; transverse plane.
struct Frame {
  involute::Form gear1;
  involute::Form gear2;
  double centre_mm = 0.0;
  double reference_centre_mm = 0.0;
  double operating_angle_rad = 0.0;  // α_wt
  double operating1_mm = 0.0;        // r_w1
  double operating2_mm = 0.0;        // r_w2
  double pitch_mm = 0.0;             // p_wt
};
// Refused (1101, with a hint when pitch and module look swapped) when a ≤ r_b1 + r_b2.
tl::expected<Frame, Finding> frame(int teeth1, int teeth2, Module module, Angle pressure_angle, Angle helix,
                                   Length centre_distance);

Length lash_of(const Frame& f, Length thickness1, Length thickness2);  // j_wt from the thicknesses s
Length lash_normal(const Frame& f, Length lash);
Length lash_radial(const Frame& f, Length lash);
double lash_per_centre(const Frame& f, Length lash);

// Pitch and teeth that miss the centre distance by more than 0.5 %, with what would fit (1102), against the centre
// distance `expected` (that of no lash, or a_ref when the thicknesses are unknown).
std::optional<Finding> centre_distance_question(const Frame& f, Length expected, bool confirmed);
inline constexpr double centre_distance_doubt = 0.005;

// A train that no camshaft can have: crank to cam is 2:1 (1105), cam to cam 1:1 (1106). `found` is the ratio in words.
Finding wrong_ratio(Place place, std::string field, const std::string& found);

// The thickness s at the reference circle that a dimension over pins tells of, and what is wrong with a thickness that
// leaves no tooth or no space. Refused: 1114, 1125.
tl::expected<double, Finding> thickness_from_pins_mm(const involute::Form& form, Length over_pins, Length pin,
                                                     const std::string& field);
std::optional<Finding> thickness_fault(const involute::Form& form, double thickness_mm, const std::string& field);

// Why a pin cannot measure this tooth space (1111-1113, 1118); none: it can.
struct PinInSpace {
  const involute::Form& form;
  double thickness_mm = 0.0;
  Length pin;
  Length over_pins;
  Length tip_radius;
  Length root_radius;
};
std::optional<Finding> pin_fault(const PinInSpace& p, const std::string& field);

// Sizes at the far ends of their ranges can overflow; nothing unreal may leave (1143).
Findings unreal_figures(const Outcome& outcome);

// What every question about gears asks alike.
Field teeth_field(std::string_view name = "teeth", std::string_view label = "Teeth",
                  std::string_view help = "Count them twice, marking the first");
void describe_tooth_form(FieldVisitor& v, Module& module, Angle& pressure_angle, Angle& helix);
Field sizes_confirmed_field();

// The mesh for lash_temperature.
lash_temperature::Mesh mesh_of(const Frame& f);
lash_temperature::Mesh mesh_of(const Result& r);

}  // namespace camside::gear_pair
