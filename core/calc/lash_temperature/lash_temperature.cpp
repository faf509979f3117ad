#include "calc/lash_temperature/lash_temperature.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "findings/outcome_writer.hpp"
#include "findings/remark.hpp"
#include "maths/involute.hpp"

namespace camside::lash_temperature {

namespace {

constexpr std::array<Choice, 4> state_words{{
    {"as measured", "As measured"},
    {"coldest start", "Coldest start"},
    {"warm-up", "Warm-up: hot gears, cool case"},
    {"fully hot", "Fully hot"},
}};

constexpr std::array<const char*, 4> lash_keys{"lash_as_measured", "lash_coldest_start", "lash_warm_up",
                                               "lash_fully_hot"};

std::size_t index_of(State s) {
  return static_cast<std::size_t>(s);
}

double factor(Expansion alpha, TemperatureDifference by) {
  return 1.0 + alpha.in_per_kelvin() * by.in_kelvin();
}

Growth growth_between(const Conditions& c, TemperatureDifference gears, TemperatureDifference centre) {
  return {factor(c.gear1, gears), factor(c.gear2, gears), factor(c.centre, centre)};
}

// cos and tan of the operating angle; the base circles' sum never exceeds the centre distance here.
struct Action {
  double cosine = 1.0;
  double inv = 0.0;
};
Action action(double base_sum_mm, double centre_mm) {
  const double tangent_length = std::sqrt(std::max((centre_mm - base_sum_mm) * (centre_mm + base_sum_mm), 0.0));
  const double angle = std::atan2(tangent_length, base_sum_mm);
  return {std::cos(angle), involute::inv(angle)};
}

// The sums that the formula of the header needs, after growing.
struct Grown {
  double base1_mm = 0.0;
  double base2_mm = 0.0;
  double centre_mm = 0.0;
  double base_sum_mm() const { return base1_mm + base2_mm; }
};
Grown grown(const Mesh& m, const Growth& g) {
  return {m.base_radius1.in_mm() * g.gear1, m.base_radius2.in_mm() * g.gear2, m.centre.in_mm() * g.centre};
}

// With Σ 2 r_b ψ = cos α_w (p_wt − j) + 2 Σ r_b inv α_w put into the header's formula: the part along the operating
// circles grows with the gears by their share of the thickness, the part below by their radii.
Line line_through(const Mesh& m, const Growth& growth) {
  const Grown before = grown(m, {});
  const Grown after = grown(m, growth);
  const Action cold = action(before.base_sum_mm(), before.centre_mm);
  const Action warm = action(after.base_sum_mm(), after.centre_mm);
  const double thicker = m.thickness_share1 * growth.gear1 + (1.0 - m.thickness_share1) * growth.gear2;
  const double pitch_grown = after.base_sum_mm() - thicker * before.base_sum_mm();
  const double offset_mm =
      2.0 * after.base_sum_mm() * (warm.inv - cold.inv) + 2.0 * std::numbers::pi / (m.teeth1 + m.teeth2) * pitch_grown;
  return {Length::mm(offset_mm / warm.cosine), thicker * cold.cosine / warm.cosine};
}

// Also past the point where the base circles meet (the angle stays at 0 there), so that a root can be bracketed.
double lash_mm_at(const Mesh& m, Length lash, const Growth& g) {
  return line_through(m, g).at(lash).in_mm();
}

constexpr double coldest_k = -200.0;
constexpr double hottest_k = 400.0;

// Root of a lash that only rises or only falls between the two differences of temperature.
template <class LashAt>
std::optional<double> root_k(double low_k, double high_k, const LashAt& lash_mm) {
  const bool low_positive = lash_mm(low_k) > 0.0;
  if (low_positive == (lash_mm(high_k) > 0.0)) return std::nullopt;
  for (int i = 0; i < 80; ++i) {
    const double middle = (low_k + high_k) / 2.0;
    ((lash_mm(middle) > 0.0) == low_positive ? low_k : high_k) = middle;
  }
  return (low_k + high_k) / 2.0;
}

std::optional<Temperature> no_lash(const Mesh& m, Length lash, const Conditions& c, bool case_too) {
  const auto at = [&](double k) {
    const auto by = TemperatureDifference::kelvin(k);
    return lash_mm_at(m, lash, growth_between(c, by, case_too ? by : TemperatureDifference{}));
  };
  const auto k = root_k(coldest_k, hottest_k, at);
  if (!k) return std::nullopt;
  return c.measured_at + TemperatureDifference::kelvin(*k);
}

Field temperature_field(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(Temperature::celsius(-60.0)).at_most(Temperature::celsius(250.0));
}
Field expansion_field(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(0.0).at_most(Expansion::ppm_per_kelvin(40.0));
}

std::string degrees(Temperature t) {
  const std::string text = fmt::format("{:.1f} °C", t.in_celsius());
  return text.front() == '-' ? "−" + text.substr(1) : text;
}

std::string label_of(State s) {
  return fmt::format("Lash, {}", word_of(s));
}

}  // namespace

const Choices state_choices{state_words};

std::string_view word_of(State state) {
  return state_words[index_of(state)].name;
}

void describe(FieldVisitor& v, Conditions& c) {
  v.value(temperature_field("measured_at", "Measured at", "Temperature of gears and case when the lash was read"),
          c.measured_at);
  v.value(temperature_field("coldest_start", "Coldest start", "The coldest morning on which the engine is started"),
          c.coldest_start);
  v.value(temperature_field("warm_up_gears", "Warm-up, gears", "Gears some minutes after a start"), c.warm_up_gears);
  v.value(temperature_field("warm_up_case", "Warm-up, case", "Case at that moment, still cooler than the gears"),
          c.warm_up_case);
  v.value(temperature_field("hot_gears", "Fully hot, gears", "Gears after a long ride"), c.hot_gears);
  v.value(temperature_field("hot_case", "Fully hot, case", "Case after a long ride"), c.hot_case);
  v.value(expansion_field("gear1", "Gear 1 grows", "Expansion coefficient of its metal; steel 11 to 12 per million"),
          c.gear1);
  v.value(expansion_field("gear2", "Gear 2 grows", "Expansion coefficient of its metal; steel 11 to 12 per million"),
          c.gear2);
  v.value(expansion_field("case", "Case grows", "Expansion coefficient of what holds both shafts; aluminium 23"),
          c.centre);
}

Temperature gears_in(const Conditions& c, State state) {
  const std::array<Temperature, 4> of{c.measured_at, c.coldest_start, c.warm_up_gears, c.hot_gears};
  return of[index_of(state)];
}

Temperature case_in(const Conditions& c, State state) {
  const std::array<Temperature, 4> of{c.measured_at, c.coldest_start, c.warm_up_case, c.hot_case};
  return of[index_of(state)];
}

Growth growth_in(const Conditions& c, State state) {
  return growth_between(c, gears_in(c, state) - c.measured_at, case_in(c, state) - c.measured_at);
}

std::optional<Line> lash_line(const Mesh& mesh, const Growth& growth) {
  const Grown after = grown(mesh, growth);
  if (!(after.centre_mm > after.base_sum_mm())) return std::nullopt;
  return line_through(mesh, growth);
}

std::optional<Length> lash_after(const Mesh& mesh, Length lash, const Growth& growth) {
  const auto line = lash_line(mesh, growth);
  if (!line) return std::nullopt;
  return line->at(lash);
}

tl::expected<Forecast, Findings> forecast(const Mesh& mesh, Length lash, const Conditions& c) {
  Forecast out;
  Findings refused;
  for (const State s : all_states) {
    const auto after = lash_after(mesh, lash, growth_in(c, s));
    if (!after) refused.push_back(no_fit_in_state("temperatures", s));
    out.states[index_of(s)] = {s, gears_in(c, s), case_in(c, s), after.value_or(Length{})};
  }
  if (!refused.empty()) return tl::unexpected(refused);
  const auto [least, most] = std::minmax_element(out.states.begin(), out.states.end(),
                                                 [](const auto& a, const auto& b) { return a.lash < b.lash; });
  out.tightest = least->state;
  out.loosest = most->state;
  out.no_lash_together = no_lash(mesh, lash, c, true);
  out.no_lash_gears_alone = no_lash(mesh, lash, c, false);
  return out;
}

void report(const Forecast& f, const Conditions& c, Outcome& outcome) {
  for (const StateLash& s : f.states) {
    outcome.figures.push_back(
        {lash_keys[index_of(s.state)], label_of(s.state), Kind::Length, s.lash.in_mm(), {}, {}, {}});
    const Growth g = growth_in(c, s.state);
    outcome.working.push_back({label_of(s.state), "gears and centre distance × (1 + α ΔT), then α_wt and j_wt anew",
                               fmt::format("gears {}: × {:.7f} and {:.7f}; case {}: × {:.7f}", degrees(s.gears),
                                           g.gear1, g.gear2, degrees(s.centre), g.centre),
                               remarks::inch_and_mm(s.lash)});
    if (s.lash <= Length{} && s.state != State::AsMeasured)
      outcome.findings.push_back(no_lash_in_state(s.state, s.lash));
  }
  outcome.figures.push_back(
      figures::temperature_or_never("no_lash_together", "No lash left, gears and case alike at", f.no_lash_together));
  outcome.figures.push_back(figures::temperature_or_never(
      "no_lash_gears_alone", "No lash left, case as measured, gears at", f.no_lash_gears_alone));
  if (c.gear1 != c.gear2) outcome.findings.push_back(unlike_growth());
}

}  // namespace camside::lash_temperature
