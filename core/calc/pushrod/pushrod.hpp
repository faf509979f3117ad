// Question: how far is the adjuster of each pushrod turned, in turns and flats, where must the crank stand for it, when
// may the engine be turned again, and does the lifter's plunger keep its room cold and hot?
//
// Method
//   1 Which way is settled by the lifter's state, asked first. Wet (pumped up): zero is up-and-down play just gone, the
//     rod still turns; lengthen by turns = preload / pitch, wait. Dry, or not sure: lengthen until the plunger bottoms,
//     back off turns = (travel − preload) / pitch; nothing to bleed, no wait. A solid lifter has no plunger: preload 0.
//   2 pitch = 25.4/tpi or in mm, or a tenth of ten threads measured; a two-threaded adjuster moves by the sum of its
//     two pitches a turn. Exact answer: whole turns + whole flats + degrees. The setting is that one of the two flats
//     beside the exact answer whose preload lies nearer to the middle of the travel (the shallower on a tie), with the
//     preload it really gives. Travel not known: the nearest flat. The inverse: preload from the turns made.
//   3 Margins: preload to the top end of the plunger's travel, travel − preload to the bottom. Judged: the smaller one
//     against 0.030 in (common practice, no published source) or the maker's sheet. Preload not given: half of the
//     travel; no default without travel.
//   4 Hot = set + rod growth − Σ growth of the pieces of the stack + (stem growth − growth of the head between seat and
//     rocker shaft) / rocker ratio; growth = α L (T_hot − T_set). Below 0 the lash opens, above the travel the plunger
//     bottoms; either is Outside. Solid lifters: an open lash is expected and only said.
//   5 Order: both rods of one cylinder at its compression TDC, then on by the firing interval of the 45° single pin,
//     turning with the wheels: front to rear 315°, rear to front 405°; swapped against the wheels. Geometry.
//   6 Release: pushrod_release.hpp.
//   7 New length: ΔL = gasket change − deck removed − head removed − heel radius change − cup rise − valve tip rise /
//     rocker ratio. Fixed rods keep their length, so their preload becomes preload − ΔL.
//   8 Adjuster: thread engaged ≥ 1 diameter (from memory) or the maker's mark; the collapsed
//     rod must pass between cup and rocker on the heel, the longest must reach, preload included.
//   9 Save or cut the fixed rods: from the rocker-box gaskets, the lift and whether they are to be used again.
// Seen from above, a right-hand thread with the adjuster at the lower end lengthens clockwise, at the upper end
// counter- clockwise; a left-hand thread the other way. Valid while the body of the rod is held and the adjuster
// turned.
//
// Inputs, units and ranges: describe() is the list. Pitch 0.2 to 3 mm (8.5 to 127 tpi), travel above 0 to 10 mm,
// preload 0 to travel, 2 to 24 flats.
// Result: turns (exact, double), flats (whole), preload and margins (mm), crank angles (0-720°), states of the lock.
// Accuracy: closed forms in double precision; 1e-9 flats are taken as nothing when rounding. As good as the zero that
// was found: a dry lifter taken for a wet one puts it 0.02-0.05 in late.
// Not covered: base circles of any engine in general, bending of rods, stiffness of the valve train.
// Findings: 1401-1409 entries refused · 1410-1419 margins and count · 1420-1429 way and direction · 1430-1439 release ·
// 1440-1441 crank · 1450-1459 heat · 1460-1461 length · 1470-1471 engagement · 1480-1483 collapsed · 1490-1496 save or
// cut · 1911-1915 safety. Example: examples/pushrod.json
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "calc/pushrod/pushrod_release.hpp"
#include "fields/field.hpp"
#include "findings/outcome.hpp"
#include "units/quantity.hpp"

namespace camside::pushrod {

enum class Rods : std::uint8_t { Adjustable, Fixed };
enum class Lifter : std::uint8_t { Hydraulic, Solid };
enum class LifterState : std::uint8_t { Wet, Dry, NotSure };
enum class Hand : std::uint8_t { Right, Left };
enum class AdjusterEnd : std::uint8_t { Lower, Upper };
enum class Turning : std::uint8_t { WithWheels, AgainstWheels };

struct Turned {
  double turns = 0.0;
  double flats = 0.0;
};
void describe(FieldVisitor& v, Turned& t);

struct PicturePlace {
  std::optional<Rod> rod;
};
void describe(FieldVisitor& v, PicturePlace& p);

// A part that grows. Expansion left out: steel for rods and stems, aluminium for the stack and the head.
struct Piece {
  std::string name;
  std::optional<Length> length;
  std::optional<Expansion> expansion;
  std::optional<Temperature> hot;
};
void describe(FieldVisitor& v, Piece& p);

struct ValveGrowth {
  Piece stem;
  Piece head;  // between valve seat and rocker shaft
  std::optional<double> rocker_ratio;
};
void describe(FieldVisitor& v, ValveGrowth& g);

struct Heat {
  std::optional<Temperature> setting_temperature;  // of the engine while setting
  Temperature cold = Temperature::celsius(20.0);   // at which the cold preload is wanted
  Piece rod;
  std::vector<Piece> stack;  // case deck, barrel, head, rocker box: what carries the rocker away from the case
  std::optional<ValveGrowth> valve;
  bool temperatures_confirmed = false;  // looked at again after 1451
};
void describe(FieldVisitor& v, Heat& h);

struct NewLength {
  Length gasket_change;  // thicker: positive
  Length deck_removed;
  Length head_removed;
  Length heel_radius_change;  // larger heel: positive
  Length cup_rise;            // pushrod cup of the lifter higher: positive
  Length tip_rise;            // valve tip higher: positive
  std::optional<double> rocker_ratio;
  std::optional<Length> old_length;
};
void describe(FieldVisitor& v, NewLength& n);

struct Engagement {
  std::optional<Length> engaged;   // thread engaged at the setting
  std::optional<Length> diameter;  // nominal, of the thread
  std::optional<Limit<Length>> least;
};
void describe(FieldVisitor& v, Engagement& e);

enum class MeasuredOn : std::uint8_t { Heel, Lift };
struct Collapsed {
  std::optional<Length> shortest;  // collapsed rod
  std::optional<Length> longest;
  std::optional<Length> room;  // between cup, plunger up, and rocker
  MeasuredOn measured_on = MeasuredOn::Heel;
};
void describe(FieldVisitor& v, Collapsed& c);

struct SaveOrCut {
  std::optional<bool> boxes_leak;
  std::optional<Length> valve_lift;
  std::optional<Limit<Length>> fixed_range;  // most lift the fixed rods serve; none: 0.510 in, common practice
  std::optional<bool> use_again;             // the fixed rods are wanted whole
};
void describe(FieldVisitor& v, SaveOrCut& s);

struct Input {
  Rods rods = Rods::Adjustable;
  Lifter lifter = Lifter::Hydraulic;
  std::optional<LifterState> lifter_state;
  std::optional<ThreadPitch> pitch;
  std::optional<Length> ten_threads;
  std::optional<ThreadPitch> second_pitch;
  std::optional<Length> second_ten_threads;
  int flats_per_turn = 6;
  std::optional<Hand> thread_hand;
  std::optional<AdjusterEnd> adjuster_end;
  std::optional<Length> travel;   // of the plunger, from its stop to the bottom
  std::optional<Length> preload;  // wanted; of fixed rods: what they give
  std::optional<Limit<Length>> least_margin;
  std::optional<Turned> turned;  // what was really turned, to see what it gives
  Turning turning = Turning::WithWheels;
  Cylinder first = Cylinder::Front;
  std::vector<PicturePlace> left_to_right;  // as this engine shows its rods; empty: order of all_rods
  Duration least_wait = Duration::minutes(10.0);
  std::vector<RodCheck> checks;
  std::optional<Heat> heat;
  std::optional<NewLength> new_length;
  std::optional<Engagement> engagement;
  std::optional<Collapsed> collapsed;
  std::optional<SaveOrCut> save_or_cut;
};
void describe(FieldVisitor& v, Input& in);

enum class Way : std::uint8_t { LengthenFromZero, BottomAndBackOff, JustFree };
enum class Sense : std::uint8_t { Clockwise, CounterClockwise };  // seen from above
std::string_view word_of(Sense sense);

struct TurnsAndFlats {
  long turns = 0;
  long flats = 0;        // beside the turns
  double degrees = 0.0;  // beside the flats; 0 for a setting
};

// How far the adjuster goes from zero (wet) or back from the bottom (dry).
struct Setting {
  Way way = Way::LengthenFromZero;
  Length per_turn;
  Length per_flat;
  Length wanted;  // preload
  double exact_turns = 0.0;
  TurnsAndFlats exact;
  long set_flats = 0;  // all of them: 19 for 3 turns 1 flat
  TurnsAndFlats set;
  Length given;  // preload of the setting
  std::optional<Sense> lengthens;
  std::optional<Sense> turn;  // the way the counted turns go
};

struct Counted {
  double turns = 0.0;
  Length preload;
};

struct Margins {
  Length preload;  // to the top end
  std::optional<Length> to_bottom;
  std::optional<Length> least;
};

struct HotPreload {
  Length hot;
  Length change;  // hot − set
  Length cold;    // everything at the cold temperature
  Length rod_growth;
  std::vector<Length> stack_growth;
  Length valve_growth;  // at the rod's end of the rocker
};

// One standing of the crank, at which both rods of a cylinder are set.
struct Standing {
  Cylinder cylinder = Cylinder::Front;
  std::array<Rod, 2> rods{};
  Angle crank;    // from the first standing
  Angle to_next;  // forward, to the other cylinder's compression TDC
};

enum class RodsOut : std::uint8_t { LookFirst, SaveAndRefit, SaveAndFitAdjustable, CutAndFitAdjustable };
std::string_view word_of(RodsOut way);

struct Result {
  std::optional<Setting> setting;  // none for fixed rods
  std::optional<Counted> counted;  // when the turns made were given
  std::optional<Margins> margins;  // of the counted preload, else of the setting
  std::array<Standing, 2> standings;
  std::array<Rod, 4> picture = all_rods;  // left to right
  std::array<RodState, 4> rod_states{};   // in the order of all_rods
  EngineLock lock = EngineLock::Clear;
  std::optional<HotPreload> heat;
  std::optional<Length> length_change;
  std::optional<Length> collapsed_spare;
  std::optional<Length> longest_spare;
  std::optional<RodsOut> rods_out;
  Outcome outcome;
};

tl::expected<Result, Findings> solve(const Input& input);

// Which way lengthens, seen from above, the body of the rod held.
Sense lengthening_sense(Hand hand, AdjusterEnd end);

// Forward from one cylinder's compression TDC to the other's: 45° single pin, alternate firing.
Angle forward_from(Cylinder cylinder, Turning turning);

}  // namespace camside::pushrod
