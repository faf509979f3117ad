#include "calc/backlash/backlash_findings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <numeric>
#include <optional>
#include <string>
#include <vector>

#include "calc/backlash/backlash_cycle.hpp"
#include "calc/backlash/backlash_remarks.hpp"
#include "fields/field_remarks.hpp"
#include "fields/path.hpp"
#include "findings/decision.hpp"
#include "findings/remark.hpp"
#include "findings/safety.hpp"

namespace camside::backlash {

namespace {

// ---- the mesh ----

void check_mesh_ratio(const Input& in, Findings& out) {
  const std::string found = fmt::format("{} to {}, {:.6g}:1", in.teeth2, in.teeth1, 1.0 * in.teeth2 / in.teeth1);
  if (*in.mesh == Mesh::Crank && in.teeth2 != 2 * in.teeth1) {
    out.push_back(gear_pair::wrong_ratio(gear_pair::Place::CrankToCam, "teeth2", found));
  }
  if (*in.mesh == Mesh::BehindPlate && in.teeth2 != in.teeth1) {
    out.push_back(gear_pair::wrong_ratio(gear_pair::Place::CamToCam, "teeth2", found));
  }
}

// Turns of the crank for one of the cam, as a fraction in lowest terms; six steps of a thousand teeth cannot overflow.
constexpr std::size_t most_steps = 6;
struct Fraction {
  std::int64_t driven = 1;
  std::int64_t driver = 1;
};
Fraction through(const std::vector<TrainStep>& train) {
  Fraction all;
  for (const TrainStep& s : train) {
    all.driven *= s.driven;
    all.driver *= s.driver;
    const std::int64_t common = std::gcd(all.driven, all.driver);
    all.driven /= common;
    all.driver /= common;
  }
  return all;
}

void check_train(const Input& in, Findings& out) {
  if (in.train.empty()) {
    return;
  }
  if (in.train.size() > most_steps) {
    return out.push_back(remarks::out_of_range("train", "Whole train", fmt::format("{} meshes", in.train.size()),
                                               "up to 6 meshes", false));
  }
  const Fraction all = through(in.train);
  if (all.driven != 2 * all.driver) {
    out.push_back(gear_pair::wrong_ratio(gear_pair::Place::CrankToCam, "train",
                                         fmt::format("{} to {} over the whole train", all.driven, all.driver)));
  }
  const bool has_mesh = std::any_of(in.train.begin(), in.train.end(),
                                    [&](const TrainStep& s) { return s.driver == in.teeth1 && s.driven == in.teeth2; });
  if (!has_mesh) {
    out.push_back(remarks::mesh_not_in_train(in.teeth1, in.teeth2));
  }
}

// ---- readings ----

double median_mm(const Input& in) {
  std::vector<double> all;
  for (const Reading& r : in.readings) {
    all.push_back(std::abs(r.reading->in_mm()));
  }
  const auto middle = all.begin() + static_cast<std::ptrdiff_t>(all.size() / 2);
  std::nth_element(all.begin(), middle, all.end());
  return *middle;
}

// First reading that `wrong` picks out.
template <class Wrong>
std::optional<std::size_t> first_reading(const Input& in, const Wrong& wrong) {
  const auto it =
      std::find_if(in.readings.begin(), in.readings.end(), [&](const Reading& r) { return wrong(*r.reading); });
  if (it == in.readings.end()) {
    return std::nullopt;
  }
  return static_cast<std::size_t>(it - in.readings.begin());
}

// 98 beside 2: close to one turn of the needle, while the others are a small part of it. A needle zeroed at one end of
// the rock reads turn − swing when it ran the other way.
void check_wrap(const Input& in, Findings& out) {
  const Length turn = in.needle_turn.value_or(100.0 * *in.graduation);
  const double usual = median_mm(in);
  if (usual > 0.25 * turn.in_mm()) {
    return;
  }
  const auto wrapped = first_reading(in, [&](Length r) {
    return r > 0.75 * turn && r < 1.25 * turn && abs(turn - r).in_mm() < 5.0 * usual + in.graduation->in_mm();
  });
  if (!wrapped) {
    return;
  }
  const Length r = *in.readings[*wrapped].reading;
  out.push_back(remarks::needle_wrapped(reading_path(*wrapped, "reading"), r, abs(turn - r)));
}

void check_sizes_of_readings(const Input& in, Findings& out) {
  constexpr Length reach = Length::mm(5.08);
  if (const auto i = first_reading(in, [&](Length r) { return abs(r) > reach; })) {
    out.push_back(remarks::reading_beyond_indicator(reading_path(*i, "reading"), *in.readings[*i].reading));
  }
  const auto tiny = [&](Length r) { return r > Length{} && r < 0.05 * *in.graduation; };
  if (const auto i = first_reading(in, tiny)) {
    out.push_back(
        remarks::reading_below_resolution(reading_path(*i, "reading"), *in.readings[*i].reading, *in.graduation));
  }
}

void check_signs(const Input& in, Findings& out) {
  const auto nothing = [](const Reading& r) { return *r.reading == Length{}; };
  if (std::all_of(in.readings.begin(), in.readings.end(), nothing)) {
    out.push_back(remarks::all_readings_nothing(in.loads_off));
  }
  const auto below = [](Length r) { return r < Length{}; };
  if (const auto i = first_reading(in, below)) {
    const auto count =
        std::count_if(in.readings.begin(), in.readings.end(), [&](const Reading& r) { return below(*r.reading); });
    out.push_back(remarks::negative_reading(reading_path(*i, "reading"), *in.readings[*i].reading,
                                            static_cast<std::size_t>(count)));
  }
}

void check_closing(const Input& in, const Round& round, Findings& out) {
  const auto start = start_reading(in);
  for (const Point& p : round.points) {
    if (!p.closing) {
      continue;
    }
    const std::string path = reading_path(p.reading, "angle");
    out.push_back(remarks::closing_reading(path));
    const Length by = abs(*in.readings[p.reading].reading - *in.readings[*start].reading);
    if (by.in_mm() > in.graduation->in_mm() + 1e-9) {
      out.push_back(remarks::closing_reading_differs(path, by));
    }
    return;
  }
}

void check_outer_lash(const Input& in, Findings& out) {
  const auto missing =
      std::find_if(in.readings.begin(), in.readings.end(), [](const Reading& r) { return !r.outer_lash.has_value(); });
  if (missing == in.readings.end()) {
    return;
  }
  const auto i = static_cast<std::size_t>(missing - in.readings.begin());
  out.push_back(remarks::outer_lash_missing(reading_path(i, "outer_lash")));
}

void check_subtraction(const Input& in, Findings& out) {
  if (*in.mesh == Mesh::Crank) {
    out.push_back(remarks::subtraction_behind_plate_only());
  }
  if (in.rocked == Rocked::Gear1) {
    out.push_back(remarks::subtraction_rocks_front_cam());
  }
  check_outer_lash(in, out);
}

// ---- cover and play ----

void check_one_play(const char* field, const std::optional<Length>& play, bool crank, Findings& out) {
  if (!play) {
    return out.push_back(remarks::play_not_given(field));
  }
  if (crank && *play > Length::thou(2.0)) {
    out.push_back(remarks::much_play(field, *play));
  }
}

bool one_spot_is_meant(const Input& in, const Round& round) {
  return round.positions.size() == 1 && in.window && in.window->method.spots == Spots::OneSpot;
}

// ---- the window ----

void check_limits(const std::string& path, const std::optional<Length>& min, const std::optional<Length>& max,
                  Findings& out) {
  if (!min && !max) {
    out.push_back(remarks::window_empty(path));
  }
  if (min && max && *min > *max) {
    out.push_back(remarks::window_upside_down(path, *min, *max));
  }
}

// ---- its method ----

// One item on which sheet and reading can differ: its words for both sides, empty when not said.
struct Item {
  std::string what;
  std::string sheet;
  std::string own;
};

std::string word(const std::optional<Place>& p) {
  if (!p) {
    return "";
  }
  return *p == Place::InCase ? "in the engine" : "on the bench";
}
std::string word(const std::optional<bool>& torqued) {
  if (!torqued) {
    return "";
  }
  return *torqued ? "plate torqued" : "plate not torqued";
}
std::string word(const std::optional<Engine>& e) {
  if (!e) {
    return "";
  }
  return *e == Engine::Cold ? "cold" : "hot";
}
std::string word(const std::optional<Spots>& s) {
  if (!s) {
    return "";
  }
  return *s == Spots::OneSpot ? "at one spot" : "round the turn";
}
std::string word(const std::optional<Line>& l) {
  if (!l) {
    return "";
  }
  return *l == Line::PitchLine ? "along the pitch line" : "square to the flank";
}

std::vector<Item> items(const Input& in, bool one_spot) {
  const WindowMethod& sheet = in.window->method;
  const auto place = in.access == Access::Bench ? std::optional(Place::OnBench) : in.method.place;
  const auto spots = std::optional(one_spot ? Spots::OneSpot : Spots::RoundTheTurn);
  return {{"where", word(sheet.place), word(place)},
          {"plate", word(sheet.plate_torqued), word(in.method.plate_torqued)},
          {"engine cold or hot", word(sheet.engine), word(in.method.engine)},
          {"spots", word(sheet.spots), word(spots)},
          {"line", word(sheet.line), word(std::optional(Line::PitchLine))}};
}

std::string in_words(const std::optional<Length>& v, double factor) {
  return v ? remarks::inch_and_mm(factor * *v) : "any";
}

// ---- temperatures ----

std::string conditions_text(const lash_temperature::Conditions& c) {
  return fmt::format(
      "read at {:.0f} °C; coldest start {:.0f} °C; warm-up, gears at {:.0f} and case at {:.0f} °C; hot, gears at "
      "{:.0f} "
      "and case at {:.0f} °C; growth of gears {:.1f} and case {:.1f} millionths per K",
      c.measured_at.in_celsius(), c.coldest_start.in_celsius(), c.warm_up_gears.in_celsius(),
      c.warm_up_case.in_celsius(), c.hot_gears.in_celsius(), c.hot_case.in_celsius(), c.gear1.in_ppm_per_kelvin(),
      c.centre.in_ppm_per_kelvin());
}

bool has_window(const Input& in, lash_temperature::State state) {
  return std::any_of(in.state_windows.begin(), in.state_windows.end(),
                     [&](const StateWindow& w) { return *w.state == state; });
}

bool leaves(const Window& w, const StateLash& s) {
  return (w.min && s.lowest < *w.min) || (w.max && s.highest > *w.max);
}

std::string in_sentence(lash_temperature::State state) {
  switch (state) {
    case lash_temperature::State::ColdestStart:
      return "at the coldest start";
    case lash_temperature::State::WarmUp:
      return "in warm-up";
    case lash_temperature::State::FullyHot:
      return "fully hot";
    case lash_temperature::State::AsMeasured:
      break;
  }
  return "as measured";
}

// A lash of another state than the window's stands beside it: it must not look as if it had been judged.
void check_not_judged(const Input& in, const Result& r, Findings& out) {
  std::string states;
  for (const StateLash& s : r.states) {
    const bool other = s.state != lash_temperature::State::AsMeasured && !has_window(in, s.state);
    if (in.window && other && leaves(*in.window, s)) {
      states += (states.empty() ? "" : ", ") + in_sentence(s.state);
    }
  }
  if (states.empty()) {
    return;
  }
  const auto& engine = in.window->method.engine;
  out.push_back(remarks::lash_not_judged(states, engine ? "a " + word(engine) + " engine" : "the lash as it was read"));
}

void check_windows(const Input& in, Findings& out) {
  if (in.window) {
    check_limits("window", in.window->min, in.window->max, out);
  }
  for (std::size_t i = 0; i < in.state_windows.size(); ++i) {
    check_limits(item_path("state_windows", i), in.state_windows[i].min, in.state_windows[i].max, out);
  }
}

}  // namespace

// Everything that can be said of the mesh and its window before any reading.
Findings check_mesh(const Input& in, const gear_pair::Frame& f) {
  Findings out;
  check_mesh_ratio(in, out);
  check_train(in, out);
  if (auto question = gear_pair::centre_distance_question(f, Length::mm(f.reference_centre_mm), in.sizes_confirmed)) {
    out.push_back(std::move(*question));
  }
  check_windows(in, out);
  if (!in.loads_off) {
    out.push_back(remarks::loads_not_off());
  }
  if (*in.access != Access::Bench) {
    out.push_back(safety::turn_by_hand());
  }
  return out;
}

void check_access(const Input& in, Findings& out) {
  if (*in.access == Access::Subtraction) {
    check_subtraction(in, out);
  }
  const bool behind = *in.mesh == Mesh::BehindPlate && *in.access != Access::Bench;
  if (behind && *in.contact != Contact::ArmFace) {
    out.push_back(remarks::no_flank_behind_plate("contact"));
  }
  if (*in.access == Access::Bench) {
    out.push_back(remarks::read_on_bench());
  }
}

void check_indicator_lean(const Input& in, const Conversion& c, Findings& out) {
  if (*in.contact == Contact::FlankSquare) {
    return;
  }
  constexpr double caution_rad = std::numbers::pi / 12.0;  // 15°, our own choice
  const double tau = in.indicator_angle->in_rad();
  // On a flank both the tangent and the flank's normal are good places to stand.
  const double lean = std::min(std::abs(tau), c.flank_rad > 0.0 ? std::abs(c.flank_rad - tau) : std::abs(tau));
  if (lean > caution_rad + 1e-12) {
    out.push_back(remarks::indicator_leans("indicator_angle", Angle::rad(lean)));
  }
}

void check_radius(const Input& in, const gear_pair::Frame& f, Findings& out) {
  if (*in.contact != Contact::ArmFace) {
    return;
  }
  const Length operating = Length::mm(touched(in, f).operating_mm);
  constexpr Length usual_most = Length::inches(2.5);  // realistic arms: 0.8 to 2.5 in, from memory
  const double diameters = *in.contact_radius / (2.0 * operating);
  const bool pitch_or_outside_diameter = diameters > 0.97 && diameters < 1.06;
  if (*in.contact_radius <= usual_most && !pitch_or_outside_diameter) {
    return;
  }
  out.push_back(in.sizes_confirmed
                    ? remarks::radius_confirmed("contact_radius", *in.contact_radius)
                    : remarks::radius_looks_like_diameter("contact_radius", *in.contact_radius, operating));
}

void check_readings(const Input& in, Findings& out) {
  if (in.readings.empty()) {
    return;
  }
  check_sizes_of_readings(in, out);
  check_signs(in, out);
  check_wrap(in, out);
}

void check_lash(const Input& in, const Round& round, Findings& out) {
  check_closing(in, round, out);
  constexpr Length usual_most = Length::mm(0.5);
  const auto large =
      std::find_if(round.points.begin(), round.points.end(), [&](const Point& p) { return p.lash > usual_most; });
  if (large != round.points.end()) {
    out.push_back(remarks::reading_large(reading_path(large->reading, "reading"), large->lash));
  }
  if (*in.access != Access::Subtraction) {
    return;
  }
  const auto below =
      std::find_if(round.points.begin(), round.points.end(), [](const Point& p) { return p.lash < Length{}; });
  if (below != round.points.end()) {
    out.push_back(remarks::subtraction_below_nothing(reading_path(below->reading, "outer_lash"), below->lash));
  }
}

void check_cover(const Input& in, const Round& round, Findings& out) {
  if (one_spot_is_meant(in, round)) {
    return;
  }
  const bool turns_given = in.readings.front().turn.has_value();
  if (round.positions.size() > 2 && one_turn(round)) {
    return out.push_back(remarks::one_turn_only(turns_given));
  }
  if (!enough(in, round)) {
    return out.push_back(
        remarks::too_few_positions(round.positions.size(), least_positions(*in.mesh), usual_positions(*in.mesh)));
  }
  constexpr double most_gap_rad = 0.25 * cycle_rad;
  if (round.largest_gap_rad > most_gap_rad + 1e-9) {
    out.push_back(remarks::gap_between_positions(Angle::rad(round.largest_gap_rad), Angle::rad(round.gap_from_rad)));
  }
}

void check_play(const Input& in, Findings& out) {
  check_one_play("play1", in.play1, *in.mesh == Mesh::Crank, out);
  check_one_play("play2", in.play2, false, out);
  const Length play = in.play1.value_or(Length{}) + in.play2.value_or(Length{});
  if (in.force == Force::Hard && play > Length{}) {
    out.push_back(remarks::rocked_hard(play));
  }
}

void check_method(const Input& in, bool one_spot, Findings& out) {
  if (!in.window) {
    return;
  }
  std::vector<std::string> differences;
  std::vector<std::string> not_said;
  bool sheet_says_something = false;
  for (const Item& i : items(in, one_spot)) {
    if (i.sheet.empty()) {
      continue;
    }
    sheet_says_something = true;
    if (i.own.empty()) {
      not_said.push_back(i.what + " (the sheet: " + i.sheet + ")");
    }
    if (!i.own.empty() && i.own != i.sheet) {
      differences.push_back("read " + i.own + ", meant " + i.sheet);
    }
  }
  if (!sheet_says_something) {
    out.push_back(remarks::window_method_unknown());
  }
  if (!differences.empty()) {
    out.push_back(remarks::window_for_another_method(differences));
  }
  if (!not_said.empty()) {
    out.push_back(remarks::own_method_not_said(not_said));
  }
}

void check_line(const Input& in, const gear_pair::Frame& f, Findings& out) {
  if (!in.window || in.window->method.line != Line::SquareToFlank) {
    return;
  }
  const double per_normal = 1.0 / (std::cos(f.operating_angle_rad) * std::cos(f.gear1.helix_b_rad));
  out.push_back(remarks::window_along_the_flank(
      fmt::format("{} to {}", in_words(in.window->min, per_normal), in_words(in.window->max, per_normal))));
}

void check_width(const Input& in, const Result& r, Findings& out) {
  if (!in.window || !in.window->min || !in.window->max) {
    return;
  }
  const Length width = *in.window->max - *in.window->min;
  const Length taken = in.guard * (r.lowest.uncertainty + r.highest.uncertainty);
  if (taken.in_mm() > width.in_mm() + decision_slack) {
    out.push_back(remarks::window_narrower_than_proof(width, taken));
  }
}

void check_states(const Input& in, const lash_temperature::Conditions& conditions, const Result& r, Findings& out) {
  for (const StateLash& s : r.states) {
    if (s.state != lash_temperature::State::AsMeasured && s.lowest <= Length{}) {
      out.push_back(lash_temperature::no_lash_in_state(s.state, s.lowest));
    }
  }
  if (!in.temperatures) {
    out.push_back(remarks::temperatures_assumed(conditions_text(conditions)));
  }
  if (conditions.gear1 != conditions.gear2) {
    out.push_back(lash_temperature::unlike_growth());
  }
  check_not_judged(in, r, out);
}

void caution_outside(const std::vector<Gate>& gates, Findings& out) {
  const auto outside = [&](bool low) {
    return std::any_of(gates.begin(), gates.end(),
                       [&](const Gate& g) { return g.low == low && g.verdict == Verdict::Outside; });
  };
  if (outside(true)) {
    out.push_back(remarks::too_tight());
  }
  if (outside(false)) {
    out.push_back(remarks::too_loose());
  }
}

}  // namespace camside::backlash
