// Question ("Gears to order"): which of the gear sizes on offer bring the lash of every mesh into its wanted window,
// hot and cold, and what becomes of it if the gears stay as they are?
//
// Method: the engine is shafts, gears on them and meshes between gears. Meshes that share a gear make one set; each set
// is solved by itself, every combination of sizes in it. A gear thicker by Δs at its reference circle takes
// (a/a_ref) Δs of lash from each of its meshes:
//   Δj = −(a/a_ref)(Δs1 + Δs2)
// lowest and highest lash over the turn move alike, so the swing that runout makes stays. Each temperature state
// follows from the measured lash exactly (lash_temperature.hpp). A size is brought to a tooth thickness by what it
// means:
//   thickness: itself · over pins: exact inversion of M · pitch radius: Δs = 2 tan α_t Δr · class: how much thicker
//   than class 0
// Source: ISO 21771 for the geometry.
//
// Ranking: combinations that fit first. Score = the smallest distance to a window's edge over all meshes and all states
// for which a window is given; greater is better. Fits: score ≥ 0 (to 1e-9 mm), lash above nothing in every state and
// mesh, and what must be bought is in stock. Scores within 1e-7 mm are a tie: the looser one first (greatest least
// lash; tight teeth never run in), then least effort, then price. "Leave it" is one of the combinations.
//
// Inputs: per mesh lowest and highest lash over the cycle as measured, its U, module, angle, centre distance, windows
// with their source and method; per gear teeth, fitted size and sizes on offer with what they mean (asked, never
// assumed). Ranges stand in describe(). At most 1,000,000 combinations in one set.
// Result: all combinations ranked with the reason each is out; lash of any of them in any state; when none fits, how
// far off the nearest is and which size would. Verdict of a combination: Within when it stays in every window by U,
// Outside when it misses one by more than U, else Not proven; without U, or measured by another method than the
// window's, Not proven. Accuracy: closed forms; as good as the sizes and readings. U of the prediction is the
// measurement's, carried along; the sizes on offer count as exact. Not covered: new gears' own runout (the fitted swing
// is kept), worn tooth form, a new gear of the fitted size (the same as leaving it). Findings: 1301-1309 the engine as
// entered · 1310-1316 sizes and train · 1320-1328 the answer · 1101-1118 from the pair. Example:
// examples/gear_pick.json
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "fields/field.hpp"
#include "calc/gear_pair/gear_pair.hpp"
#include "calc/lash_temperature/lash_temperature.hpp"
#include "findings/outcome.hpp"
#include "units/quantity.hpp"

namespace camside::gear_pick {

using lash_temperature::State;

enum class Role : std::uint8_t { Crank, Cam, Idler, Other };
struct Shaft {
  std::string name;
  Role role = Role::Other;
};

enum class SizeMeans : std::uint8_t { Thickness, OverPins, PitchRadius, Class };
// How a gear is fixed: settles its effort unless one is given (bolted 1, pressed 10; from memory).
enum class Joint : std::uint8_t { Bolted, Pressed };

struct Size {
  std::string name;
  std::optional<Length> value;
  std::optional<Money> price;
  std::optional<int> stock;  // 0: none to be had
};

struct Gear {
  std::string name;
  std::string shaft;
  int teeth = 0;
  std::optional<SizeMeans> size_means;  // needed when sizes are on offer
  std::optional<Length> fitted;         // what is in now, in the same measure
  std::optional<Length> pin_diameter;   // OverPins
  std::optional<Length> tip_diameter;   // OverPins; left out: assumed
  std::optional<Length> root_diameter;  // OverPins; left out: assumed
  std::optional<Expansion> expansion;   // left out: that of the temperatures
  Joint joint = Joint::Bolted;
  std::optional<double> effort;
  std::vector<Size> sizes;  // on offer; empty: this gear stays
};

// The wanted lash in one state. The sheet may give it for some states only; the others are shown, not judged.
struct Window {
  State state = State::AsMeasured;
  std::optional<Length> lowest;
  std::optional<Length> highest;
};

struct Mesh {
  std::string name;
  std::string gear_a;
  std::string gear_b;
  Module module;
  Angle pressure_angle = Angle::deg(20.0);
  Angle helix;
  Length centre_distance;
  bool sizes_confirmed = false;  // pitch, teeth and centre distance were looked at again after 1102
  Length lash_low;               // over the cycle, along the operating circles
  Length lash_high;
  std::optional<Length> uncertainty;  // expanded U of the two
  std::vector<Window> windows;
  std::optional<Source> window_source;
  std::string window_method;                      // as the sheet says: "in the case, plate torqued, cold, all round"
  std::optional<bool> measured_by_window_method;  // asked, never assumed
};

struct Input {
  std::vector<Shaft> shafts;
  std::vector<Gear> gears;
  std::vector<Mesh> meshes;
  lash_temperature::Conditions temperatures;
};
void describe(FieldVisitor& v, Shaft& s);
void describe(FieldVisitor& v, Size& s);
void describe(FieldVisitor& v, Gear& g);
void describe(FieldVisitor& v, Window& w);
void describe(FieldVisitor& v, Mesh& m);
void describe(FieldVisitor& v, Input& in);

// What may be done with one gear. Option 0 is always "as fitted".
struct Option {
  int size = -1;       // place in Gear::sizes; −1: as fitted
  Length value;        // in the gear's own measure
  Length thicker;      // Δs at the reference circle against the fitted gear
  Length lash_change;  // in the gear's first mesh, as measured: what this size really does
};

enum class Standing : std::uint8_t { Fits, NotInStock, TooTight, TooLoose, NoLash };

struct Candidate {
  std::uint32_t index = 0;  // which combination of the set; 0: leave it
  Standing standing = Standing::Fits;
  Verdict verdict = Verdict::NotProven;
  std::uint16_t tight_mesh = 0;  // place in Set::meshes where the score is decided
  State tight_state = State::AsMeasured;
  bool price_known = true;
  double score_mm = 0.0;  // distance to the nearest edge, − outside
  double least_mm = 0.0;  // least lash over all meshes and states
  double effort = 0.0;    // of the gears changed
  double price = 0.0;     // of the gears changed, as far as known
};

struct LashRange {
  Length low;
  Length high;
};

// A size that would do where none on offer does, the other gears as in the nearest combination.
struct WouldFit {
  int gear = 0;  // place in Input::gears
  Length value;  // the middle of what would do
  Length from;
  Length to;
};

// Meshes joined by shared gears.
struct Set {
  struct Joined {
    int mesh = 0;            // place in Input::meshes
    std::size_t gear_a = 0;  // places in Set::gears
    std::size_t gear_b = 0;
    std::array<double, 4> low_mm{};  // of the fitted gears, in each state
    std::array<double, 4> high_mm{};
    std::array<double, 4> per_a{};  // lash per thickness of gear a, in each state; negative
    std::array<double, 4> per_b{};
    std::array<double, 4> uncertainty_mm{};
  };
  std::vector<int> gears;  // places in Input::gears
  std::vector<Joined> meshes;
  std::vector<std::vector<Option>> options;  // of each gear
  std::vector<std::uint32_t> strides;
  std::vector<Candidate> ranked;    // best first
  std::size_t fitting = 0;          // the first so many fit
  std::size_t leave_it = 0;         // place of "leave it" in ranked
  std::vector<WouldFit> would_fit;  // when none fits

  const Candidate& best() const { return ranked.front(); }  // the nearest when none fits
  std::size_t option_of(const Candidate& c, std::size_t gear) const {
    return c.index / strides[gear] % options[gear].size();
  }
  const Option& choice(const Candidate& c, std::size_t gear) const { return options[gear][option_of(c, gear)]; }
  LashRange lash(const Candidate& c, std::size_t mesh, State state) const;
};

struct Result {
  std::vector<Set> sets;
  // Lash lost per length gained in each gear's own measure, in its first mesh; 0 for a gear without sizes.
  std::vector<double> lash_per_size;
  Outcome outcome;
};

inline constexpr std::size_t most_combinations = 1'000'000;
inline constexpr double tie_mm = 1e-7;

tl::expected<Result, Findings> solve(const Input& input);

// "pinion + 1, cam gear as fitted" and "too tight by 0.0004 in in outer mesh, warm-up".
std::string choice_text(const Input& input, const Set& set, const Candidate& c);
std::string standing_text(const Input& input, const Set& set, const Candidate& c);

// The pair of one mesh of the set (its place in Set::meshes) as the combination leaves it, at its tightest, as
// measured: radii and thicknesses for a drawing of the teeth. The first gear by its own measure where that is a
// thickness or a size over pins, the other by what the lash leaves; by radius or class both are thinned alike. Refused
// where gear_pair::solve refuses.
tl::expected<gear_pair::Result, Findings> teeth(const Input& input, const Set& set, const Candidate& c,
                                                std::size_t mesh);

}  // namespace camside::gear_pick
