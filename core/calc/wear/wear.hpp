// Question: is this shoe (or another part that wears thinner) still thick enough, and at which distance does its wear
// reach the limit?
//
// Method
//   1 Verdict on the last reading, the thinnest of those at the greatest distance (ISO 14253-1:2017):
//       y − U ≥ L Within, y + U < L Outside, else Not proven;  U = 2 √(s_r² + (graduation/√12)² + (stated error/√3)²),
//     s_r the repeatability, one graduation when it isn't entered (from memory). Any crack, step, missing piece or bare
//     metal is Outside at any thickness (common practice, no published source). Every doubt here is of the sort that
//     makes a shoe look better than it is, so a doubt stops Within and lets Outside stand.
//   2 Line: least squares of thickness over the odometer (maths/lines.hpp).
//       readings at one distance only: the entered usual wear, no interval; nothing when none is entered
//       two readings                 : the line through them, no interval
//       three readings and more      : the line, and the 95 % interval of the distance at which it meets the limit,
//                                      by inverse prediction (Fieller); its spread is the larger of the scatter shown
//                                      and u of one reading, lest three readings that happen to lie on a line prove
//                                      more than they can
//   3 No forecast when the slope isn't proven to differ from nothing (g ≥ 1), when the line doesn't fall ("never"),
//     when the limit is reached, the shoe is damaged, or a reading is thicker than the one before it by more than three
//     standard uncertainties of their difference (a new part or the other shoe stands among the readings).
//   4 A forecast is worded "no sooner proof than": the early end of the interval, or the crossing where there is none.
//     It says when the wear seen so far would first be proof of a worn shoe. It never says how long a shoe is good, and
//     it never reaches beyond the next look: last reading + look interval, which stands there then.
// Sources: as said at each step; for the line and the interval in lines.hpp.
//
// Inputs: readings (odometer 0 to 1,000,000 mi, thickness 0 to 1 in) of one part since it was fitted, any order; what
// was seen; how it was measured; limit with its source; usual wear with its source; today's odometer. describe() is the
// list. Odometer readings are of one clock: over a swap, enter them summed up (the Due question shows the sum).
// Result: thickness and U (mm), wear rate, crossing, 95 % interval (km), outlook, verdict. Accuracy: closed forms,
// 1e-10 relative; the answer is as good as the readings and the straight line, which wear only follows roughly. Not
// covered: wear that speeds up or slows down, grooves read at several spots, several parts in one list. Findings:
// 1601-1602 refusals · 1620-1625 doubts · 1640-1645 cautions · 1650-1663 forecast and notes · 200-204 fields. Example:
// examples/wear.json
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "fields/field.hpp"
#include "findings/outcome.hpp"
#include "maths/lines.hpp"
#include "units/quantity.hpp"

namespace camside::wear {

enum class Anvil : std::uint8_t { BallOrPin, FlatJaws };

struct Reading {
  std::optional<Distance> odometer;
  std::optional<Length> thickness;
};
void describe(FieldVisitor& v, Reading& r);

// What was seen at the last reading; left out: nobody looked.
struct Seen {
  std::optional<bool> cracked;
  std::optional<bool> stepped;
  std::optional<bool> piece_missing;
  std::optional<bool> bare_metal;
};
void describe(FieldVisitor& v, Seen& s);

// What such a part usually wears, for a single reading.
struct UsualWear {
  std::optional<Length> wear;
  std::optional<Distance> over;
  std::optional<Source> source;
};
void describe(FieldVisitor& v, UsualWear& u);

// How long nobody may go without looking, whatever the readings say.
struct LookAgain {
  std::optional<Distance> every;
  std::optional<Source> source;
};
void describe(FieldVisitor& v, LookAgain& l);

struct Input {
  std::string part;
  std::vector<Reading> readings;
  Seen seen;
  std::optional<Anvil> anvil;
  std::optional<Length> graduation;
  std::optional<Length> stated_error;
  std::optional<Length> repeatability;  // standard deviation of one reading
  std::optional<Limit<Length>> limit;   // least thickness
  std::optional<UsualWear> usual_wear;
  std::optional<LookAgain> look_again;  // left out: the usual one of a spring-loaded shoe
  std::optional<Distance> odometer_now;
};
void describe(FieldVisitor& v, Input& in);

enum class RestsOn : std::uint8_t { Nothing, UsualWear, TwoReadings, FittedLine };

enum class Outlook : std::uint8_t {
  Forecast,   // there is one
  NoLimit,    // nothing to reach
  NoRate,     // one distance and no usual wear
  Damaged,    // thickness doesn't matter any more
  Reached,    // the last reading is below the limit
  MixedUp,    // thicker than before
  Never,      // the line doesn't fall, or reaches the limit beyond any odometer
  Unbounded,  // g ≥ 1
};

struct Forecast {
  Distance crossing;             // where the line meets the limit
  std::optional<Distance> low;   // 95 % interval; none with less than three readings
  std::optional<Distance> high;  // none too when it lies beyond any odometer
  Distance look_by;              // the last reading + the look interval
  bool capped = false;           // no_sooner is look_by: the line alone would put it later
  Distance no_sooner;            // low, or the crossing where there is no interval; never beyond look_by
  Distance left;                 // no_sooner − odometer now; negative: may be reached already
};

struct Result {
  Distance odometer;   // of the last reading
  Distance now;        // entered, or that of the last reading
  Length thickness;    // the last reading
  Length uncertainty;  // expanded, U
  RestsOn rests_on = RestsOn::Nothing;
  std::optional<lines::Line> line;        // none with readings at one distance
  std::optional<double> mm_per_km;        // rate of wear taken, positive: thinner
  std::optional<double> rate_plus_minus;  // half of its 95 % interval
  double g = 0.0;
  Outlook outlook = Outlook::NoRate;
  std::optional<Forecast> forecast;
  Outcome outcome;
};

tl::expected<Result, Findings> solve(const Input& input);

LookAgain look_again_of(const Input& in);  // as entered, or the usual one

// What was seen of damage, in words; empty: none.
std::vector<std::string> damage_of(const Seen& seen);
// What nobody looked for, in words.
std::vector<std::string> not_looked_for(const Seen& seen);

inline constexpr double interval_probability = 0.95;

}  // namespace camside::wear
