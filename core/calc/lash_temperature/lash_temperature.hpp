// Question: what becomes of the lash of a mesh when the gears and the case around them are colder or hotter?
//
// Method: each gear keeps its shape and grows by 1 + α ΔT, the centre distance by 1 + α_case ΔT; the operating pressure
// angle and the lash are then worked out anew, exactly. With base circles r_b and half tooth angles at the base circle
// ψ (which growth leaves alone)
//   cos α_w' = (r_b1' + r_b2') / a'
//   j_wt' = [2 (r_b1' + r_b2')(inv α_w' + π/(z1+z2)) − 2 r_b1' ψ1 − 2 r_b2' ψ2] / cos α_w'
// From a measured lash alone, with both gears growing by k_g and the centre distance by k_c, this is
//   a' = a k_c/k_g, j' = k_g [j a'/a + 2 a'(inv α_w' − inv α_w)].
// Source: ISO 21771 for the geometry; growth in proportion to temperature. Default coefficients 11.5 (steel) and
// 23.1 (aluminium) 1e-6/K: Journal of Research of the National Institute of Standards and Technology 99 (1994).
//
// Inputs: temperatures −60 to 250 °C, coefficients 0 to 40e-6/K. "As measured" is one temperature for gears and case.
// Result: lash, circumferential at the operating circle, in each of four named states; the tightest and loosest of
// them; the temperature at which no lash is left, for gears and case together and for the gears alone (case as
// measured). Accuracy: closed form; the vanishing temperatures to 1e-9 K. Gears of unlike coefficient no longer have
// quite the same base pitch: the mean of the two is used, and the split of the tooth thickness between the gears
// (known, or taken as equal) matters by less than 0.1 µm. Not covered: uneven heating, growth of the shafts' bearings,
// a case that bends. Findings: 1150 a state has no lash left · 1151 teeth no longer fit · 1152 gears of unlike growth.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "fields/field.hpp"
#include "findings/outcome.hpp"
#include "units/quantity.hpp"

namespace camside::lash_temperature {

enum class State : std::uint8_t { AsMeasured, ColdestStart, WarmUp, FullyHot };
inline constexpr std::array<State, 4> all_states{State::AsMeasured, State::ColdestStart, State::WarmUp,
                                                 State::FullyHot};
std::string_view word_of(State state);  // "as measured", "coldest start", "warm-up", "fully hot"
extern const Choices state_choices;

// Temperatures of the four states and how the parts grow. The defaults are typical figures from memory, for an
// air-cooled engine with steel gears in an aluminium case.
struct Conditions {
  Temperature measured_at = Temperature::celsius(20.0);
  Temperature coldest_start = Temperature::celsius(-10.0);
  Temperature warm_up_gears = Temperature::celsius(100.0);
  Temperature warm_up_case = Temperature::celsius(50.0);
  Temperature hot_gears = Temperature::celsius(100.0);
  Temperature hot_case = Temperature::celsius(100.0);
  Expansion gear1 = Expansion::ppm_per_kelvin(11.5);
  Expansion gear2 = Expansion::ppm_per_kelvin(11.5);
  Expansion centre = Expansion::ppm_per_kelvin(23.1);  // of the case or plate that holds both shafts
};
void describe(FieldVisitor& v, Conditions& c);

Temperature gears_in(const Conditions& c, State state);
Temperature case_in(const Conditions& c, State state);

// A mesh as far as heat and lash are concerned; transverse plane, at the temperature of "as measured".
struct Mesh {
  int teeth1 = 0;
  int teeth2 = 0;
  Length base_radius1;
  Length base_radius2;
  Length centre;
  double thickness_share1 = 0.5;  // gear 1's part of the summed tooth thickness at the operating circles
};

// Factors by which lengths have grown since "as measured".
struct Growth {
  double gear1 = 1.0;
  double gear2 = 1.0;
  double centre = 1.0;
};
Growth growth_in(const Conditions& c, State state);

// Lash after growing, from the lash before. A straight line in the lash: after = offset + slope · before. None when the
// base circles would overlap (a' ≤ r_b1' + r_b2').
struct Line {
  Length offset;
  double slope = 1.0;
  Length at(Length lash) const { return offset + slope * lash; }
};
std::optional<Line> lash_line(const Mesh& mesh, const Growth& growth);
std::optional<Length> lash_after(const Mesh& mesh, Length lash, const Growth& growth);

struct StateLash {
  State state = State::AsMeasured;
  Temperature gears;
  Temperature centre;
  Length lash;
};
struct Forecast {
  std::array<StateLash, 4> states;  // in the order of State
  State tightest = State::AsMeasured;
  State loosest = State::AsMeasured;
  // Where the lash passes through nothing within −200 to +400 K of "as measured"; none: never.
  std::optional<Temperature> no_lash_together;
  std::optional<Temperature> no_lash_gears_alone;
  const StateLash& in(State state) const { return states[static_cast<std::size_t>(state)]; }
};

// `conditions` must have passed check_fields. Refused (1151) when the gears of a state no longer fit between the
// shafts.
tl::expected<Forecast, Findings> forecast(const Mesh& mesh, Length lash, const Conditions& conditions);

// Figures ("lash_as_measured", "lash_coldest_start", "lash_warm_up", "lash_fully_hot", "no_lash_together",
// "no_lash_gears_alone"), the working, and cautions 1150 and 1152, for the outcome of whoever asked.
void report(const Forecast& forecast, const Conditions& conditions, Outcome& outcome);

// Numbers 1150-1199, raised here and by the questions that take a mesh through the states.
Finding no_lash_in_state(State state, Length lash);          // 1150
Finding no_fit_in_state(std::string field, State state);     // 1151
Finding unlike_growth();                                     // 1152

}  // namespace camside::lash_temperature
