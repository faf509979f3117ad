// Question: how far does this shaft run out (crank pinion shaft with the cam plate off, or any shaft or gear), does
// that stand within its limit, and what does it mean for the gear drive?
//
// Method
//   1 Needle to shaft. A lever or a leaning plunger shows too much: true = reading · cos τ, τ from the radial line.
//     Everything the needle shows is scaled so, its graduation, stated error, repeatability and play swing included.
//   2 Swing: lowest and highest needle over one slow turn, at least twice; TIR = mean highest − mean lowest. The needle
//     was watched all round, so nothing is missed between stations and T* = TIR.
//   3 Stations: readings at angles, any spacing and order. Least squares by QR (turn_fit.hpp) of
//       r = a0 + a1 cos θ + b1 sin θ (+ a2 cos 2θ + b2 sin 2θ from 8 readings at 5 or more directions) + ε
//       eccentricity e = √(a1² + b1²), high spot φ = atan2(b1, a1), runout from the bend 2e, ovality 2√(a2² + b2²)
//       TIR = greatest − least of the stations (their means when a station was read more than once)
//     Stations can miss the peaks, for a pure bend by up to 2e(1 − cos(g/2)), g the largest gap (half as much for an
//     odd number of even steps). So the judged value is T* = max(TIR, greatest − least of the fitted curve over the
//     whole turn). A return to the start is a closing reading, never a station: 360° is 0°.
//   4 Uncertainty (JCGM 100:2008): s_r pooled from repeat turns or declared, the larger of the two when both are known,
//     one third of a graduation when neither is;
//       u_reading² = s_r² + (graduation/√12)² + (stated error/√3)²
//       u(TIR)² = 2 u_reading² + (play/(2√3))²,  U = k u, k from coverage.hpp
//       u(2e) = 2 u_reading √f, f from the covariance of the fit (2/N for equal spacing)
//     The residual of the fit holds the shaft's shape: it is reported as scatter and not put into U.
//   5 Verdict (ISO 14253-1:2017, guard factor g): T* + gU ≤ L: Within. TIR − gU > L: Outside. Else Not proven, with
//   what
//     would settle it. Meeting the limit exactly is Within; comparisons carry a slack of 1e-9 mm. Pass line = L − gU.
//     Closing reading off by more than a graduation: judged again with the drift taken out in proportion to the order
//     of reading; two unlike verdicts are Not proven.
//   6 Two planes (geometry, no published source), both shafts, one zero, one direction (angles seen from the left are
//     turned round): opposed part (L − R)/2 square to the crankpin = wheels scissored; common part (L + R)/2 at or
//     opposite the pin = wheels pinched or spread; a common part elsewhere = set-up. Pinched: the rims stand closer
//     together on the side away from the pin; read outboard of the supports its high spot is opposite the pin, read
//     inboard (on centres) at the pin.
//   7 At the gear: a tilted shaft runs out in proportion to the distance from its bearing, e_gear = e · x_gear/x_read.
//   8 Budget: the centre distance swings by ±e, so lash swings by 2 tan α_wt · TIR peak to peak; a window of width w
//     stands TIR = w/(2 tan α_wt).
//
// Inputs, units and ranges: describe() is the list. Angles are those of the marks on the shaft under the indicator.
// Limit by default, for a crank pinion shaft: 0.003 in total reading, common practice, no published source; an own
// limit replaces it, no_limit takes it away.
// Result: TIR, T*, 2e, ovality, scatter, pass line in mm; the high spot in [0°, 360°) on the marks of the shaft.
// Accuracy: closed forms and QR, 1e-12 mm for exact readings; the answer is as good as the readings, which U says. Time
// grows as n log n with the number of readings.
// Not covered: striking a crank (needs truing, by whom), shafts carried in V-blocks (parts shown, not named), drift
// that is not steady. Findings: 1001-1009 refusals · 1020-1032 doubts · 1040-1050 cautions · 1060-1070 notes ·
// 1080-1089 two planes · 200-204 fields. Example: examples/runout_swing.json.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <tl/expected.hpp>
#include <vector>

#include "fields/field.hpp"
#include "findings/outcome.hpp"
#include "findings/source.hpp"
#include "maths/turn_fit.hpp"
#include "units/quantity.hpp"

namespace camside::runout {

enum class Subject : std::uint8_t { CrankPinionShaft, OtherShaft, Gear };
enum class Method : std::uint8_t { Swing, Stations };
enum class Contact : std::uint8_t { BushingBand, Gear, Splines, ThreadOrBolt, FlatOrAdapter };
enum class Plate : std::uint8_t { Off, On };
enum class Stand : std::uint8_t { Crankcase, FrameOrLift, TruingStand };
enum class Indicator : std::uint8_t { Plunger, Lever };
enum class Dial : std::uint8_t { Continuous, Balanced };  // 0-100, or 0-50-0 counted both ways
enum class SeenFrom : std::uint8_t { Right, Left };       // of the engine; the way the angle runs
enum class SwingMeans : std::uint8_t { NeedleEnds, OffsetOnly };

// Lowest and highest needle over one slow turn.
struct Swing {
  Length low;
  Length high;
  std::optional<Angle> high_spot;  // mark under the indicator when the needle was highest
};
void describe(FieldVisitor& v, Swing& s);

struct Station {
  Angle angle;     // mark under the indicator
  Length reading;  // as the needle showed it
  int turn = 1;
};
void describe(FieldVisitor& v, Station& s);

struct Readings {
  Method method = Method::Swing;
  std::vector<Swing> swings;
  std::vector<Station> stations;
  std::optional<Length> closing;  // needle back at the start, after the last station
};

// Asked once and kept with the result.
struct Setup {
  std::optional<Contact> contact;
  std::optional<Plate> plate;
  std::optional<Stand> stand;
  Indicator indicator = Indicator::Plunger;
  Angle indicator_angle;  // τ
  std::optional<Length> graduation;
  std::optional<Length> stated_error;   // ± of the indicator
  std::optional<Length> repeatability;  // declared standard deviation; none: from repeat turns, or graduation/3
  std::optional<Length> play;           // needle swing when the shaft is pushed and pulled by hand
  std::optional<Length> range;          // travel of the indicator; none: 1 in
  std::optional<Length> needle_turn;    // travel for one turn of the needle; none: 100 graduations
  Dial dial = Dial::Continuous;
  std::optional<bool> passed_zero;  // answer to "did the needle pass the top of its dial?"
  std::optional<SeenFrom> seen_from;
  std::optional<SwingMeans> swing_means;
};
void describe(FieldVisitor& v, Setup& s);

enum class Support : std::uint8_t { OwnMains, Centres, VBlocks };
enum class ReadAt : std::uint8_t { OutboardOfSupports, InboardOfSupports };

// The shaft on the other side of the crank, read with the same indicator.
struct OtherSide {
  Readings readings;
  std::optional<SeenFrom> seen_from;
  std::optional<bool> one_zero;   // both sides counted from the same mark of the crank
  std::optional<bool> same_side;  // both indicators on the same side of the engine
  std::optional<Angle> crankpin;  // in the first side's marks
  std::optional<Support> support;
  std::optional<ReadAt> read_at;
};
void describe(FieldVisitor& v, OtherSide& o);

// Distances from the main bearing along the shaft.
struct AtGear {
  Length to_contact;
  Length to_gear;
};
void describe(FieldVisitor& v, AtGear& g);

// The gear's own runout, measured over a pin in its tooth spaces.
struct GearRunout {
  Length tir;
  std::optional<Angle> high_spot;  // on the same marks as the shaft's
};
void describe(FieldVisitor& v, GearRunout& g);

// The lash window that is wanted.
struct Budget {
  Length lash_least;
  Length lash_most;
  Angle pressure_angle = Angle::deg(20.0);  // operating, α_wt
};
void describe(FieldVisitor& v, Budget& b);

struct Input {
  Subject subject = Subject::CrankPinionShaft;
  Readings readings;
  Setup setup;
  std::optional<Limit<Length>> limit;  // none: usual_limit() for a crank pinion shaft, no limit for the rest
  bool no_limit = false;
  double guard_factor = 1.0;      // share of U kept off the limit
  bool readings_checked = false;  // the readings are right although they look odd
  std::optional<OtherSide> other_side;
  std::optional<AtGear> at_gear;
  std::optional<GearRunout> gear;
  std::optional<Budget> budget;
};
void describe(FieldVisitor& v, Input& in);

Limit<Length> usual_limit();  // 0.003 in total reading, common practice

// A station as it was judged: angle in [0°, 360°), true reading, mean of `count` readings.
struct CleanStation {
  Angle angle;
  Length reading;
  std::size_t count = 1;
};

struct Uncertainty {
  Length repeatability;                    // s_r, true
  bool from_repeats = false;               // s_r was pooled from repeat turns
  double repeat_degrees_of_freedom = 0.0;  // its degrees of freedom, infinite when declared
  Length reading;                          // u_reading
  Length tir;                              // u(TIR)
  double degrees_of_freedom = 0.0;         // effective degrees of freedom, infinite when all was declared
  double coverage_factor = 0;              // k
  Length expanded;                         // U
  double resolution_share = 0;             // shares of u(TIR)²: graduation and stated error, repeatability, play
  double repeat_share = 0;
  double play_share = 0;
};

struct TwoPlanes {
  enum class Part : std::uint8_t { Scissored, Pinched, Spread, SetUp, Unnamed, TooSmall };
  Length opposed;  // as TIR at one side
  Angle opposed_high_spot;
  Part opposed_is = Part::Unnamed;
  Length common;
  Angle common_high_spot;
  Part common_is = Part::Unnamed;
};

struct Spot {
  Length tir;
  Angle high_spot;
};

// Where the gear sits, and what it does to the lash.
struct AtTheGear {
  double carried = 1.0;             // x_gear/x_read; 1 when the distances are not known
  std::optional<Length> shaft_tir;  // the shaft's, of its bend
  std::optional<Spot> total;        // shaft and gear together
  double swing_per_tir = 0.0;       // 2 tan α_wt
  std::optional<Length> window;     // of the wanted lash
  std::optional<Length> budget;     // the most runout that window stands
  std::optional<Length> lash_swing;
};

struct Result {
  Method method = Method::Swing;
  std::vector<CleanStation> stations;  // by angle; empty for swings
  std::optional<turn_fit::Fit> fit;    // of the true readings in mm
  Length lowest;                       // true: means over the turns, or of the stations
  Length highest;
  Length tir;
  Length judged;  // T*
  Uncertainty uncertainty;
  std::optional<Length> eccentricity;
  std::optional<Angle> high_spot;
  std::optional<Length> ovality;
  std::optional<Length> scatter;
  std::optional<Length> closing_error;
  std::optional<Length> judged_without_drift;  // when the closing error is above a graduation
  std::optional<Limit<Length>> limit;
  std::optional<Length> pass_line;  // greatest T* that would still be Within; may be below zero
  std::optional<Verdict> verdict;
  std::optional<TwoPlanes> two_planes;
  AtTheGear at_gear;
  std::optional<Length>
      proposed_tir;  // when the needle seems to have passed the top of its dial: what it would be then
  Outcome outcome;
};

tl::expected<Result, Findings> solve(const Input& input);

// What can pass with this dial and play, said before the first reading.
struct PassLine {
  Length needle;          // the most the needle may swing (needle, not shaft, where the indicator leans)
  Length uncertainty;     // U to be expected
  bool provable = false;  // false: nothing this set-up shows can prove Within
};
// The repeatability expected is the declared one or a third of a graduation. One swing alone proves nothing; more turns
// move the line only through the scatter they then show. None when the set-up lacks a usable graduation.
std::optional<PassLine> pass_line(const Setup& setup, Length limit, Method method = Method::Swing, int turns = 2,
                                  double guard_factor = 1.0);

}  // namespace camside::runout
