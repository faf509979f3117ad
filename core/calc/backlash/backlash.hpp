// Question: how much lash does this mesh have over its whole cycle, where is it tightest, and does that stand in the
// window of the part maker's sheet?
//
// Method
//   1 Needle to lash. What the indicator touches settles how far the rim really moved:
//       flat face of an arm            true = reading · cos τ
//       tooth flank, in the plane of   true = reading · cos(α_y − τ) / cos α_y, α_y the (transverse) pressure angle at
//       the gear                       the radius touched, τ from the tangent toward the flank's normal
//       tooth flank, square to it      true = reading / (cos α_y · cos β_b): spiral teeth too, as cos α_n · cos β
//     and j_wt = true · r_w / r_m brings it to the operating circle. Geometry, no published source; ISO 21771 for α_y,
//     r_w and β_b.
//     Behind the plate by subtraction (crank held, total read on the front cam): j_i = r_i (S/r_m − j_o/r_o).
//   2 Over the cycle. A cam gear turns once in two crank turns, so the mesh with the crank repeats after 720° and holds
//     two periods:  j(θ) = j0 + a½ cos(θ/2) + b½ sin(θ/2) + a1 cos θ + b1 sin θ,  θ the crank angle; a 1:1 mesh behind
//     the plate holds the first alone. Least squares by QR (turn_fit.hpp).
//       lowest = min(least of the curve, lowest position), highest likewise; a position read more than once counts with
//       its mean.
//   3 Uncertainty of one lash: the scatter about the curve, with N − p degrees of freedom, and what was declared,
//       u_B = g'/√6 (g' the graduation brought to the operating circle; it enters twice, a lash being the difference of
//       two readings), e'/√3 for a stated error of the indicator.
//       U(lowest) = k √( (s² + u_B²) · f + u_play² ),  f = cᵀ(XᵀX)⁻¹c where the curve governs, 1/n where a position
//       does; u_play = (c1 + c2) tan α_wt / √3: the play of both shafts does not shrink with more positions.
//       k from coverage.hpp (JCGM 100:2008, annex G).
//   4 Verdict (ISO 14253-1:2017): lowest − gU ≥ min and highest + gU ≤ max: Within. lowest + gU < min or highest − gU >
//     max: Outside. Else Not proven. A window belongs to a method of reading; read another way the verdict is Not
//     proven. Any doubt stops Within; only doubts that cannot make a lash look worse than it is leave Outside standing.
//   5 Temperature: lash_temperature.hpp, from the measured lash alone. A window may be given for each state.
//
// Inputs, units and ranges: describe() below is the list. 8 positions every 90° over two crank turns are the default,
// 6 the least; 6 every 120° and 4 the least for the 1:1 mesh. A reading at 720° is the one at 0° again (closing
// reading) and never a position. One position alone is judged only against a window meant for one spot.
// Result: lowest, highest and mean lash along the operating circle (mm), each with expanded uncertainty U; where the
// tight spot is (crank angle, tooth counted from the mark); the cam gear's and the pinion's share as amplitudes; four
// temperature states. A negative lash is a result.
// Accuracy: closed forms and QR, 1e-12 mm for exact inputs; the answer is as good as the readings, which U says.
// Not covered: tooth-to-tooth errors finer than the two periods (they stand in the scatter), bent arms, an outer
// bearing in a cover that is off, trains whose gear 2 does not turn at cam speed (refused). Findings: 1201-1208
// positions · 1210-1219 readings · 1220-1228 contact, access and train · 1230-1232 play · 1240-1242 way of reading ·
// 1250-1257 window · 1258-1259 tight or loose · 1260 temperatures; and 1101-1106, 1150-1152 of the gear pair. Example:
// examples/backlash.json
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <tl/expected.hpp>
#include <vector>

#include "calc/lash_temperature/lash_temperature.hpp"
#include "fields/field.hpp"
#include "findings/outcome.hpp"
#include "units/quantity.hpp"

namespace camside::backlash {

enum class Mesh : std::uint8_t {
  Crank,        // pinion on the crank with the rear cam's outer gear, 2:1
  BehindPlate,  // rear cam's inner gear with the front cam's, 1:1
};

enum class Access : std::uint8_t {
  Direct,       // at the gear, or on an arm on its shaft, the other shaft held
  Subtraction,  // behind the plate: crank held, total read on the front cam, outer lash taken off
  ByFeel,       // tight, just felt or loose: logged, never Within
  Bench,        // cams in the plate on the bench, inner ends unsupported: doubtful
};

enum class Contact : std::uint8_t { ArmFace, ToothFlank, FlankSquare };
enum class Rocked : std::uint8_t { Gear2, Gear1 };  // the gear that is moved and touched; the other is held
enum class Force : std::uint8_t { Light, Hard };
enum class Feel : std::uint8_t { Tight, JustFelt, Loose };
enum class Turned : std::uint8_t { Forward, Backward };

// How a lash is read. Of a window: what its sheet asks for; an item it doesn't name is left out.
enum class Place : std::uint8_t { InCase, OnBench };
enum class Engine : std::uint8_t { Cold, Hot };
enum class Spots : std::uint8_t { OneSpot, RoundTheTurn };
enum class Line : std::uint8_t { PitchLine, SquareToFlank };

struct Method {
  std::optional<Place> place;
  std::optional<bool> plate_torqued;
  std::optional<Engine> engine;
};
void describe(FieldVisitor& v, Method& m);

struct WindowMethod {
  std::optional<Place> place;
  std::optional<bool> plate_torqued;
  std::optional<Engine> engine;
  std::optional<Spots> spots;
  std::optional<Line> line;
};
void describe(FieldVisitor& v, WindowMethod& m);

struct Window {
  std::optional<Length> min;
  std::optional<Length> max;
  std::optional<Source> source;
  WindowMethod method;
};
void describe(FieldVisitor& v, Window& w);

// What the sheet asks of the lash in another state than that of the reading.
struct StateWindow {
  std::optional<lash_temperature::State> state;
  std::optional<Length> min;
  std::optional<Length> max;
  std::optional<Source> source;
};
void describe(FieldVisitor& v, StateWindow& w);

struct Reading {
  std::optional<Angle> angle;        // of the crank from its mark: 0-720°, or within the turn when that is given
  std::optional<int> turn;           // 1 or 2
  std::optional<Length> reading;     // needle swing from one end of the rock to the other
  std::optional<Length> outer_lash;  // by subtraction: lash of the crank mesh here, along its operating circle
};
void describe(FieldVisitor& v, Reading& r);

// By subtraction: the mesh between crank and rear cam.
struct Outer {
  std::optional<Length> operating_radius;  // r_o of the gear on the rear cam
  std::optional<Length> uncertainty;       // expanded uncertainty (k = 2) of its lash
};
void describe(FieldVisitor& v, Outer& o);

struct TrainStep {
  int driver = 0;
  int driven = 0;
};
void describe(FieldVisitor& v, TrainStep& s);

struct Input {
  std::optional<Mesh> mesh;
  int teeth1 = 0;  // pinion, or inner gear of the rear cam
  int teeth2 = 0;  // outer gear of the rear cam, or inner gear of the front cam
  Module module;   // normal
  Angle pressure_angle = Angle::deg(20.0);
  Angle helix;
  Length centre_distance;
  std::vector<TrainStep> train;  // from the crank to the last cam; empty: this mesh alone is checked
  bool sizes_confirmed = false;  // sizes and contact radius were looked at again after a question

  std::optional<Access> access;
  bool loads_off = false;
  std::optional<Contact> contact;
  std::optional<Length> contact_radius;  // r_m
  std::optional<Angle> indicator_angle;  // τ
  Rocked rocked = Rocked::Gear2;
  Force force = Force::Light;
  std::optional<Length> graduation;
  Length stated_error;
  std::optional<Length> needle_turn;  // travel of one turn of the needle; none: 100 graduations
  std::optional<Length> play1;        // radial play of gear 1's shaft: push-pull swing of a needle on it
  std::optional<Length> play2;
  Turned turned = Turned::Forward;
  std::vector<Reading> readings;
  std::optional<Outer> outer;
  std::optional<Feel> feel;

  Method method;
  std::optional<Window> window;  // at the temperature of the reading
  std::vector<StateWindow> state_windows;
  std::optional<lash_temperature::Conditions> temperatures;  // none: the defaults, said to be so
  double guard = 1.0;                                        // g: share of U kept off the limits
};
void describe(FieldVisitor& v, Input& in);

// One reading on the drawing.
struct Point {
  std::size_t reading = 0;  // index in the input
  Angle crank;              // [0°, 720°)
  int turn = 1;
  Length lash;           // true, along the operating circle
  bool closing = false;  // 720° again: shown, not used
};

// The fitted curve; all but `mean` are 0 where none could be fitted.
struct Curve {
  bool fitted = false;
  Length mean;
  Length cos_half;
  Length sin_half;
  Length cos_one;
  Length sin_one;
  Length at(Angle crank) const;
};

struct Extreme {
  Length lash;
  Length uncertainty;         // expanded, U
  Angle crank;                // where it is
  bool from_reading = false;  // a position governs, not the curve
};

struct StateLash {
  lash_temperature::State state = lash_temperature::State::AsMeasured;
  Temperature gears;
  Temperature case_at;
  Length lowest;
  Length lowest_uncertainty;
  Length highest;
  Length highest_uncertainty;
};

struct Result {
  bool by_feel = false;  // nothing below has a value then
  double lash_per_reading = 0.0;
  Angle operating_angle;  // α_wt
  Length operating_radius1;
  Length operating_radius2;
  std::vector<Point> points;
  std::size_t positions = 0;  // different ones, closing readings left out
  Curve curve;
  Extreme lowest;
  Extreme highest;
  int tight_tooth1 = 0;  // counted from 1, the tooth at the mark
  int tight_tooth2 = 0;
  Length gear_share;    // amplitude of the 720° period
  Length pinion_share;  // amplitude of the 360° period; crank mesh only
  std::array<StateLash, 4> states;
  lash_temperature::State tightest = lash_temperature::State::AsMeasured;
  lash_temperature::State loosest = lash_temperature::State::AsMeasured;
  std::optional<Window> window;
  Outcome outcome;
};

tl::expected<Result, Findings> solve(const Input& input);

}  // namespace camside::backlash
