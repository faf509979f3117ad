#include "calc/gear_pick.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numbers>
#include <numeric>
#include <string_view>
#include <utility>

#include "calc/gear_pair.hpp"
#include "calc/involute.hpp"
#include "findings/field_remarks.hpp"
#include "findings/gear_pair_remarks.hpp"
#include "findings/gear_pick_remarks.hpp"
#include "units/format.hpp"

namespace camside::gear_pick {

namespace {

constexpr double slack_mm = 1e-9;  // meeting an edge exactly is inside it
constexpr double pressed_effort = 10.0;

constexpr std::array<Choice, 4> role_words{{
    {"crank", "Crank"},
    {"cam", "Cam"},
    {"idler", "Idler"},
    {"other", "Other"},
}};
constexpr std::array<Choice, 4> meaning_words{{
    {"thickness", "Tooth thickness"},
    {"over pins", "Size over pins"},
    {"pitch radius", "Pitch radius"},
    {"class", "Class: how much thicker than class 0"},
}};
constexpr std::array<Choice, 2> joint_words{{
    {"bolted", "Bolted"},
    {"pressed", "Pressed on"},
}};

std::size_t at(State s) {
  return static_cast<std::size_t>(s);
}
std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

// --- the engine, with names turned into places ---

struct GearModel {
  std::optional<involute::Form> form;  // from its first mesh
  int first_mesh = -1;
  int shaft = -1;
  double fitted_mm = 0.0;  // tooth thickness; for radius and class only a nominal one to count from
  std::vector<Option> options;
};
struct MeshModel {
  int a = -1;
  int b = -1;
  gear_pair::Frame frame;
};
struct Engine {
  const Input& in;
  std::vector<GearModel> gears;
  std::vector<MeshModel> meshes;
  Findings findings;

  const Gear& gear(int i) const { return in.gears[at(i)]; }
};

std::string item(const char* list, std::size_t i, const char* field) {
  return fmt::format("{}[{}].{}", list, i, field);
}
std::string item(const char* list, int i, const char* field) {
  return item(list, at(i), field);
}

std::string mesh_name(const Input& in, int mesh) {
  const Mesh& m = in.meshes[at(mesh)];
  return m.name.empty() ? fmt::format("{} to {}", m.gear_a, m.gear_b) : m.name;
}

template <class T>
void check_names(const std::vector<T>& items, const char* list, std::string_view kind, Findings& out) {
  for (std::size_t i = 0; i < items.size(); ++i)
    for (std::size_t k = 0; k < i; ++k)
      if (items[i].name == items[k].name)
        out.push_back(remarks::same_name_twice(item(list, i, "name"), kind, items[i].name));
}

template <class T>
int place_of(const std::vector<T>& items, const std::string& name, std::string field, std::string_view kind,
             Findings& out) {
  const auto it = std::find_if(items.begin(), items.end(), [&](const T& t) { return t.name == name; });
  if (it != items.end()) return static_cast<int>(it - items.begin());
  out.push_back(remarks::no_such_name(std::move(field), kind, name));
  return -1;
}

void check_window(const Mesh& m, std::size_t i, Findings& out) {
  const auto says_something = [](const Window& w) { return w.lowest || w.highest; };
  if (!std::any_of(m.windows.begin(), m.windows.end(), says_something))
    return out.push_back(remarks::no_window(item("meshes", i, "windows"), m.name));
  if (!m.window_source) out.push_back(remarks::missing(item("meshes", i, "window_source"), "Who says so"));
  for (std::size_t k = 0; k < m.windows.size(); ++k) {
    const Window& w = m.windows[k];
    if (w.lowest && w.highest && *w.lowest > *w.highest)
      out.push_back(
          remarks::wanted_lash_upside_down(fmt::format("meshes[{}].windows[{}].lowest", i, k), *w.lowest, *w.highest));
  }
}

void check_reading(const Mesh& m, std::size_t i, Findings& out) {
  if (m.lash_low > m.lash_high)
    out.push_back(remarks::lash_upside_down(item("meshes", i, "lash_low"), m.lash_low, m.lash_high));
}

void name_parts(Engine& e) {
  check_names(e.in.shafts, "shafts", "shaft", e.findings);
  check_names(e.in.gears, "gears", "gear", e.findings);
  if (e.in.meshes.empty()) e.findings.push_back(remarks::nothing_to_solve());
  e.gears.resize(e.in.gears.size());
  e.meshes.resize(e.in.meshes.size());
  for (std::size_t i = 0; i < e.gears.size(); ++i)
    e.gears[i].shaft = place_of(e.in.shafts, e.in.gears[i].shaft, item("gears", i, "shaft"), "shaft", e.findings);
  for (std::size_t i = 0; i < e.meshes.size(); ++i) {
    const Mesh& m = e.in.meshes[i];
    e.meshes[i].a = place_of(e.in.gears, m.gear_a, item("meshes", i, "gear_a"), "gear", e.findings);
    e.meshes[i].b = place_of(e.in.gears, m.gear_b, item("meshes", i, "gear_b"), "gear", e.findings);
    check_window(m, i, e.findings);
    check_reading(m, i, e.findings);
  }
}

// A refusal of the pair's own names the field of this input.
Finding in_mesh(Finding f, std::size_t mesh) {
  f.field = item("meshes", mesh, f.field.c_str());
  return f;
}

bool same_teeth(const involute::Form& a, const involute::Form& b) {
  return a.module_mm == b.module_mm && a.angle_rad == b.angle_rad && a.helix_rad == b.helix_rad;
}

void give_form(Engine& e, int gear, const involute::Form& form, std::size_t mesh, const char* field) {
  GearModel& g = e.gears[at(gear)];
  if (!g.form) {
    g.form = form;
    g.first_mesh = static_cast<int>(mesh);
  } else if (!same_teeth(*g.form, form)) {
    e.findings.push_back(remarks::shared_gear_unlike(item("meshes", mesh, field), e.gear(gear).name));
  }
}

void frame_mesh(Engine& e, std::size_t i) {
  MeshModel& model = e.meshes[i];
  const Mesh& m = e.in.meshes[i];
  if (e.gears[at(model.a)].shaft == e.gears[at(model.b)].shaft)
    return e.findings.push_back(remarks::mesh_with_itself(item("meshes", i, "gear_b"), e.gear(model.a).shaft));
  auto frame = gear_pair::frame(e.gear(model.a).teeth, e.gear(model.b).teeth, m.module, m.pressure_angle, m.helix,
                                m.centre_distance);
  if (!frame) return e.findings.push_back(in_mesh(std::move(frame.error()), i));
  model.frame = *frame;
  give_form(e, model.a, frame->gear1, i, "gear_a");
  give_form(e, model.b, frame->gear2, i, "gear_b");
}

// --- the train: speeds of the shafts as exact fractions of the first one's ---

struct Speed {
  long turns = 0;  // 0: not reached
  long per = 1;
  friend bool operator==(const Speed&, const Speed&) = default;
};
Speed reduced(long turns, long per) {
  const long common = std::gcd(turns, per);
  return {turns / common, per / common};
}
constexpr long most_turns = 1'000'000'000;

// Speed across a mesh from a gear with `from` teeth to one with `to`; not reached when the fraction outgrows a long.
Speed across(Speed s, int from, int to) {
  if (s.turns > most_turns || s.per > most_turns) return {};
  return reduced(s.turns * from, s.per * to);
}

struct Train {
  const Engine& e;
  std::vector<Speed> speeds;
  Findings* out;

  void step(std::size_t mesh, int from, int to) {
    const int a = e.gears[at(from)].shaft;
    const int b = e.gears[at(to)].shaft;
    if (speeds[at(a)].turns == 0) return;
    const Speed reached = across(speeds[at(a)], e.gear(from).teeth, e.gear(to).teeth);
    if (speeds[at(b)].turns == 0)
      speeds[at(b)] = reached;
    else if (!(speeds[at(b)] == reached))
      contradiction(mesh, b);
  }
  void contradiction(std::size_t mesh, int shaft) {
    const std::string field = item("meshes", mesh, "gear_b");
    if (!has(*out, 1316)) out->push_back(remarks::train_contradicts(field, e.in.shafts[at(shaft)].name));
  }
  void spread_from(std::size_t shaft) {
    speeds[shaft] = {1, 1};
    for (std::size_t round = 0; round < e.meshes.size(); ++round)
      for (std::size_t i = 0; i < e.meshes.size(); ++i) {
        step(i, e.meshes[i].a, e.meshes[i].b);
        step(i, e.meshes[i].b, e.meshes[i].a);
      }
  }
};

bool is_cam(const Shaft& s) {
  return s.role == Role::Cam;
}

// Crank to cam is 2:1 over the whole train.
bool check_from_crank(Train& t) {
  const auto& shafts = t.e.in.shafts;
  const auto crank = std::find_if(shafts.begin(), shafts.end(), [](const Shaft& s) { return s.role == Role::Crank; });
  if (crank == shafts.end()) return false;
  t.spread_from(at(static_cast<int>(crank - shafts.begin())));
  bool checked = false;
  for (std::size_t i = 0; i < shafts.size(); ++i) {
    if (!is_cam(shafts[i]) || t.speeds[i].turns == 0) continue;
    checked = true;
    if (t.speeds[i] == Speed{1, 2}) continue;
    const auto found = fmt::format("{:.6g}:1 from crank to “{}”",
                                   1.0 * static_cast<double>(t.speeds[i].per) / static_cast<double>(t.speeds[i].turns),
                                   shafts[i].name);
    t.out->push_back(remarks::ratio_not_two_to_one(item("shafts", i, "role"), found));
  }
  return checked;
}

// Cams of one train that the crank's gears do not reach: they turn alike.
bool check_cams_from(Train& t, std::size_t first) {
  const auto& shafts = t.e.in.shafts;
  const std::vector<Speed> before = t.speeds;
  t.spread_from(first);
  bool checked = false;
  for (std::size_t i = 0; i < shafts.size(); ++i) {
    if (i == first || !is_cam(shafts[i]) || before[i].turns != 0 || t.speeds[i].turns == 0) continue;
    checked = true;
    if (t.speeds[i] == Speed{1, 1}) continue;
    const auto found =
        fmt::format("{}:{} from “{}” to “{}”", t.speeds[i].per, t.speeds[i].turns, shafts[first].name, shafts[i].name);
    t.out->push_back(remarks::ratio_not_one_to_one(item("shafts", i, "role"), found));
  }
  return checked;
}

bool check_cams_alike(Train& t) {
  bool checked = false;
  for (std::size_t i = 0; i < t.speeds.size(); ++i)
    if (is_cam(t.e.in.shafts[i]) && t.speeds[i].turns == 0) checked = check_cams_from(t, i) || checked;
  return checked;
}

void check_train(Engine& e) {
  Train t{e, std::vector<Speed>(e.in.shafts.size()), &e.findings};
  const bool from_crank = check_from_crank(t);
  const bool alike = check_cams_alike(t);
  if (!from_crank && !alike) e.findings.push_back(remarks::train_not_checked());
}

// --- sizes ---

bool positive_measure(SizeMeans means) {
  return means != SizeMeans::Class;
}

// A size of one gear in tooth thickness, or what is wrong with it.
struct SizeReader {
  const Gear& gear;
  const GearModel& model;

  double tip_mm(double thickness_mm) const {
    if (gear.tip_diameter) return gear.tip_diameter->in_mm() / 2.0;
    return model.form->reference_mm +
           model.form->module_mm * (1.0 + involute::shift_from_thickness(*model.form, thickness_mm));
  }
  double root_mm(double thickness_mm) const {
    if (gear.root_diameter) return gear.root_diameter->in_mm() / 2.0;
    return model.form->reference_mm -
           model.form->module_mm * (1.25 - involute::shift_from_thickness(*model.form, thickness_mm));
  }

  tl::expected<double, Finding> over_pins(Length value, const std::string& field) const {
    const Length pin = *gear.pin_diameter;
    const auto s = involute::thickness_from_pins_mm(*model.form, value.in_mm(), pin.in_mm());
    if (!s)
      return tl::unexpected(
          remarks::pins_inside_base_circle(field, value, Length::mm(2.0 * model.form->base_mm) + pin));
    const Length pitch = Length::mm(std::numbers::pi * model.form->module_t_mm);
    if (*s <= 0.0 || *s >= pitch.in_mm())
      return tl::unexpected(remarks::no_tooth_or_no_space(field, Length::mm(*s), pitch));
    const auto seat = involute::pin_seat(*model.form, *s, pin.in_mm());
    if (!seat) return tl::unexpected(remarks::pin_drops_through(field, pin));
    if (auto bad = badly_seated(*seat, *s, value, field)) return tl::unexpected(std::move(*bad));
    return *s;
  }
  std::optional<Finding> badly_seated(const involute::PinSeat& seat, double s_mm, Length value,
                                      const std::string& field) const {
    const Length tip = Length::mm(tip_mm(s_mm));
    const double under_mm = seat.centre_mm - gear.pin_diameter->in_mm() / 2.0 - root_mm(s_mm);
    if (!seat.touches_involute) return remarks::pin_on_no_involute(field, *gear.pin_diameter);
    if (Length::mm(seat.contact_mm) > tip) return remarks::pin_rides_on_tips(field, Length::mm(seat.contact_mm), tip);
    if (under_mm < 0.0) return remarks::pin_on_the_bottom(field, Length::mm(under_mm));
    if (value <= 2.0 * tip) return remarks::pin_does_not_stand_out(field, value, tip);
    return std::nullopt;
  }

  tl::expected<double, Finding> thickness_mm(Length value, const std::string& field, const char* label) const {
    if (positive_measure(*gear.size_means) && value <= Length{})
      return tl::unexpected(remarks::out_of_range(field, label, remarks::mm_only(value), "above 0 mm"));
    switch (*gear.size_means) {
      case SizeMeans::OverPins:
        return over_pins(value, field);
      case SizeMeans::PitchRadius:
        return 2.0 * std::tan(model.form->angle_t_rad) * value.in_mm();
      case SizeMeans::Thickness:
      case SizeMeans::Class:
        break;
    }
    return value.in_mm();
  }

  // Back from a change of thickness to the gear's own measure.
  std::optional<Length> value_for(double thicker_mm) const {
    switch (*gear.size_means) {
      case SizeMeans::OverPins: {
        const auto seat = involute::pin_seat(*model.form, model.fitted_mm + thicker_mm, gear.pin_diameter->in_mm());
        return seat ? std::optional(Length::mm(seat->over_pins_mm)) : std::nullopt;
      }
      case SizeMeans::PitchRadius:
        return *gear.fitted + Length::mm(thicker_mm / (2.0 * std::tan(model.form->angle_t_rad)));
      case SizeMeans::Thickness:
      case SizeMeans::Class:
        break;
    }
    return *gear.fitted + Length::mm(thicker_mm);
  }

  double thickness_per_value() const {
    switch (*gear.size_means) {
      case SizeMeans::OverPins:
        return 1.0 / involute::pins_per_thickness(
                         *model.form, *involute::pin_seat(*model.form, model.fitted_mm, gear.pin_diameter->in_mm()));
      case SizeMeans::PitchRadius:
        return 2.0 * std::tan(model.form->angle_t_rad);
      case SizeMeans::Thickness:
      case SizeMeans::Class:
        break;
    }
    return 1.0;
  }
};

bool size_entries_present(const Gear& g, std::size_t i, Findings& out) {
  const std::size_t before = out.size();
  if (!g.size_means) out.push_back(remarks::size_meaning_not_said(item("gears", i, "size_means"), g.name));
  if (!g.fitted) out.push_back(remarks::missing(item("gears", i, "fitted"), "Fitted size"));
  if (g.size_means == SizeMeans::OverPins && !g.pin_diameter)
    out.push_back(remarks::missing(item("gears", i, "pin_diameter"), "Pin diameter"));
  return out.size() == before;
}

// a / a_ref of the gear's first mesh: thickness at the operating circle per thickness at the reference circle.
double to_operating_circle(const Engine& e, const GearModel& g) {
  const gear_pair::Frame& f = e.meshes[at(g.first_mesh)].frame;
  return f.centre_mm / f.reference_centre_mm;
}

void read_size(Engine& e, std::size_t gear, std::size_t k, const SizeReader& reader) {
  GearModel& model = e.gears[gear];
  const Size& size = e.in.gears[gear].sizes[k];
  const std::string field = fmt::format("gears[{}].sizes[{}].value", gear, k);
  const auto s = reader.thickness_mm(*size.value, field, "Size");
  if (!s) return e.findings.push_back(s.error());
  const double thicker_mm = *s - model.fitted_mm;
  if (std::abs(thicker_mm) <= tie_mm) return;  // the fitted size again: the same as leaving it
  if (std::abs(thicker_mm) > 0.05 * model.form->module_mm)
    e.findings.push_back(remarks::size_far_from_fitted(field, size.name, Length::mm(thicker_mm)));
  model.options.push_back({static_cast<int>(k), *size.value, Length::mm(thicker_mm),
                           Length::mm(-to_operating_circle(e, model) * thicker_mm)});
}

void read_sizes(Engine& e, std::size_t i) {
  const Gear& gear = e.in.gears[i];
  GearModel& model = e.gears[i];
  model.options.push_back({-1, gear.fitted.value_or(Length{}), Length{}, Length{}});
  if (gear.sizes.empty() || !model.form || !size_entries_present(gear, i, e.findings)) return;
  const SizeReader reader{gear, model};
  const auto fitted = reader.thickness_mm(*gear.fitted, item("gears", i, "fitted"), "Fitted size");
  if (!fitted) return e.findings.push_back(fitted.error());
  model.fitted_mm = *fitted;
  for (std::size_t k = 0; k < gear.sizes.size(); ++k) read_size(e, i, k, reader);
}

// --- sets ---

struct Groups {
  std::vector<int> parent;
  int root(int i) {
    while (parent[at(i)] != i) i = parent[at(i)];
    return i;
  }
  void join(int a, int b) { parent[at(root(a))] = root(b); }
};

lash_temperature::Conditions conditions_of(const Engine& e, const MeshModel& m) {
  lash_temperature::Conditions c = e.in.temperatures;
  c.gear1 = e.gear(m.a).expansion.value_or(c.gear1);
  c.gear2 = e.gear(m.b).expansion.value_or(c.gear2);
  return c;
}

// Lash lost per thickness gained at the reference circle: (r_b k / r) / cos α_w', which is a/a_ref as measured.
double lash_per_thickness(const involute::Form& f, double growth, double cosine) {
  return -f.base_mm * growth / (f.reference_mm * cosine);
}

void fill_state(const Engine& e, State s, Set::Joined& joined, Findings& out) {
  const MeshModel& m = e.meshes[at(joined.mesh)];
  const Mesh& mesh = e.in.meshes[at(joined.mesh)];
  const auto growth = lash_temperature::growth_in(conditions_of(e, m), s);
  const auto line = lash_temperature::lash_line(gear_pair::mesh_of(m.frame), growth);
  if (!line) return out.push_back(remarks::no_fit_in_state("temperatures", lash_temperature::word_of(s)));
  const double cosine = (m.frame.gear1.base_mm * growth.gear1 + m.frame.gear2.base_mm * growth.gear2) /
                        (m.frame.centre_mm * growth.centre);
  joined.low_mm[at(s)] = line->at(mesh.lash_low).in_mm();
  joined.high_mm[at(s)] = line->at(mesh.lash_high).in_mm();
  joined.uncertainty_mm[at(s)] = line->slope * mesh.uncertainty.value_or(Length{}).in_mm();
  joined.per_a[at(s)] = lash_per_thickness(m.frame.gear1, growth.gear1, cosine);
  joined.per_b[at(s)] = lash_per_thickness(m.frame.gear2, growth.gear2, cosine);
}

std::size_t place_in(const std::vector<int>& gears, int gear) {
  return at(static_cast<int>(std::find(gears.begin(), gears.end(), gear) - gears.begin()));
}

void add_mesh(const Engine& e, std::size_t mesh, Set& set, Findings& out) {
  for (const int gear : {e.meshes[mesh].a, e.meshes[mesh].b})
    if (place_in(set.gears, gear) == set.gears.size()) set.gears.push_back(gear);
  Set::Joined joined;
  joined.mesh = static_cast<int>(mesh);
  joined.gear_a = place_in(set.gears, e.meshes[mesh].a);
  joined.gear_b = place_in(set.gears, e.meshes[mesh].b);
  for (const State s : lash_temperature::all_states) fill_state(e, s, joined, out);
  set.meshes.push_back(joined);
}

std::vector<Set> sets_of(Engine& e) {
  Groups groups{std::vector<int>(e.gears.size())};
  std::iota(groups.parent.begin(), groups.parent.end(), 0);
  for (const MeshModel& m : e.meshes) groups.join(m.a, m.b);
  std::vector<Set> sets;
  std::map<int, std::size_t> place;  // of a group in sets
  for (std::size_t i = 0; i < e.meshes.size(); ++i) {
    const auto [it, fresh] = place.try_emplace(groups.root(e.meshes[i].a), sets.size());
    if (fresh) sets.emplace_back();
    add_mesh(e, i, sets[it->second], e.findings);
  }
  for (Set& set : sets)
    for (const int gear : set.gears) set.options.push_back(e.gears[at(gear)].options);
  return sets;
}

// --- every pair of options of one mesh, judged once ---

struct Cell {
  double score_mm = 0.0;
  double least_mm = 0.0;
  State state = State::AsMeasured;
  bool tight = false;  // the edge that decides is the lower one
  Verdict verdict = Verdict::NotProven;
};

struct Judge {
  const Set::Joined& joined;
  const Mesh& mesh;
  Cell cell{std::numeric_limits<double>::max(), std::numeric_limits<double>::max(), State::AsMeasured, false,
            Verdict::NotProven};
  double proven_mm = std::numeric_limits<double>::max();  // least distance to an edge after taking U off
  double failed_mm = std::numeric_limits<double>::max();  // and after adding it

  void edge(double distance_mm, State state, bool lower) {
    const double u = joined.uncertainty_mm[at(state)];
    proven_mm = std::min(proven_mm, distance_mm - u);
    failed_mm = std::min(failed_mm, distance_mm + u);
    if (distance_mm >= cell.score_mm) return;
    cell.score_mm = distance_mm;
    cell.state = state;
    cell.tight = lower;
  }
  void windows(const std::array<double, 4>& change_mm) {
    for (const Window& w : mesh.windows) {
      const std::size_t s = at(w.state);
      if (w.lowest) edge(joined.low_mm[s] + change_mm[s] - w.lowest->in_mm(), w.state, true);
      if (w.highest) edge(w.highest->in_mm() - joined.high_mm[s] - change_mm[s], w.state, false);
    }
  }
  void some_lash_left(const std::array<double, 4>& change_mm) {
    for (const State s : lash_temperature::all_states) {
      const double low = joined.low_mm[at(s)] + change_mm[at(s)];
      cell.least_mm = std::min(cell.least_mm, low);
      proven_mm = std::min(proven_mm, low - joined.uncertainty_mm[at(s)]);
      failed_mm = std::min(failed_mm, low + joined.uncertainty_mm[at(s)]);
    }
  }
  Cell judged(double thicker_a_mm, double thicker_b_mm) {
    std::array<double, 4> change_mm{};
    for (std::size_t s = 0; s < change_mm.size(); ++s)
      change_mm[s] = joined.per_a[s] * thicker_a_mm + joined.per_b[s] * thicker_b_mm;
    windows(change_mm);
    some_lash_left(change_mm);
    if (failed_mm < -slack_mm || cell.least_mm <= 0.0)
      cell.verdict = Verdict::Outside;
    else if (proven_mm >= -slack_mm && mesh.uncertainty && mesh.measured_by_window_method == true)
      cell.verdict = Verdict::Within;
    return cell;
  }
};

struct Table {
  std::vector<Cell> cells;  // option of gear a first
  std::size_t columns = 0;
  const Cell& of(std::size_t a, std::size_t b) const { return cells[a * columns + b]; }
};

Table table_of(const Set& set, const Set::Joined& joined, const Mesh& mesh) {
  Table t;
  t.columns = set.options[joined.gear_b].size();
  for (const Option& a : set.options[joined.gear_a])
    for (const Option& b : set.options[joined.gear_b])
      t.cells.push_back(Judge{joined, mesh}.judged(a.thicker.in_mm(), b.thicker.in_mm()));
  return t;
}

// What one option of one gear costs.
struct Cost {
  double effort = 0.0;
  double price = 0.0;
  bool price_known = true;
  bool in_stock = true;
};

Cost cost_of(const Gear& gear, const Option& option) {
  if (option.size < 0) return {};
  const Size& size = gear.sizes[at(option.size)];
  return {gear.effort.value_or(gear.joint == Joint::Pressed ? pressed_effort : 1.0),
          size.price.value_or(Money{}).in_amount(), size.price.has_value(), size.stock.value_or(1) > 0};
}

class Enumeration {
 public:
  Enumeration(const Input& in, Set& set, bool doubtful) : set_(set), doubtful_(doubtful) {
    for (const Set::Joined& m : set.meshes) tables_.push_back(table_of(set, m, in.meshes[at(m.mesh)]));
    for (std::size_t g = 0; g < set.gears.size(); ++g) {
      costs_.emplace_back();
      for (const Option& o : set.options[g]) costs_[g].push_back(cost_of(in.gears[at(set.gears[g])], o));
    }
  }

  void run(std::uint32_t combinations) {
    set_.ranked.reserve(combinations);
    for (std::uint32_t i = 0; i < combinations; ++i) set_.ranked.push_back(candidate(i));
  }

 private:
  Candidate candidate(std::uint32_t index) const {
    Candidate c;
    c.index = index;
    c.score_mm = c.least_mm = std::numeric_limits<double>::max();
    const bool in_stock = add_costs(c);
    bool tight = false;
    judge_meshes(c, tight);
    c.standing = standing(c, tight, in_stock);
    if (c.standing == Standing::NoLash) c.score_mm = std::min(c.score_mm, c.least_mm);
    return c;
  }
  bool add_costs(Candidate& c) const {
    bool in_stock = true;
    for (std::size_t g = 0; g < costs_.size(); ++g) {
      const Cost& cost = costs_[g][set_.option_of(c, g)];
      c.effort += cost.effort;
      c.price += cost.price;
      c.price_known = c.price_known && cost.price_known;
      in_stock = in_stock && cost.in_stock;
    }
    return in_stock;
  }
  void judge_meshes(Candidate& c, bool& tight) const {
    bool within = !doubtful_;
    bool outside = false;
    for (std::size_t m = 0; m < tables_.size(); ++m) {
      const Set::Joined& joined = set_.meshes[m];
      const Cell& cell = tables_[m].of(set_.option_of(c, joined.gear_a), set_.option_of(c, joined.gear_b));
      c.least_mm = std::min(c.least_mm, cell.least_mm);
      within = within && cell.verdict == Verdict::Within;
      outside = outside || cell.verdict == Verdict::Outside;
      if (cell.score_mm >= c.score_mm) continue;
      c.score_mm = cell.score_mm;
      c.tight_mesh = static_cast<std::uint16_t>(m);
      c.tight_state = cell.state;
      tight = cell.tight;
    }
    c.verdict = outside ? Verdict::Outside : within ? Verdict::Within : Verdict::NotProven;
  }
  static Standing standing(const Candidate& c, bool tight, bool in_stock) {
    if (c.least_mm <= 0.0) return Standing::NoLash;
    if (c.score_mm < -slack_mm) return tight ? Standing::TooTight : Standing::TooLoose;
    return in_stock ? Standing::Fits : Standing::NotInStock;
  }

  Set& set_;
  bool doubtful_;
  std::vector<Table> tables_;
  std::vector<std::vector<Cost>> costs_;
};

// --- ranking ---

using Place = std::vector<Candidate>::iterator;

int group_of(const Candidate& c) {
  return c.standing == Standing::Fits ? 0 : c.standing == Standing::NotInStock ? 1 : 2;
}

bool cheaper(const Candidate& a, const Candidate& b) {
  if (a.effort != b.effort) return a.effort < b.effort;
  if (a.price_known != b.price_known) return a.price_known;
  if (a.price != b.price) return a.price < b.price;
  return a.index < b.index;
}

// Runs `within` on every stretch whose key lies within the tie of the stretch's first.
template <class Key, class Within>
void each_tie(Place begin, Place end, const Key& key, const Within& within) {
  while (begin != end) {
    const double first = key(*begin);
    const auto stop = std::find_if(begin, end, [&](const Candidate& c) { return first - key(c) > tie_mm; });
    within(begin, stop);
    begin = stop;
  }
}

void rank_group(Place begin, Place end) {
  const auto score = [](const Candidate& c) { return c.score_mm; };
  const auto least = [](const Candidate& c) { return c.least_mm; };
  each_tie(begin, end, score, [&](Place from, Place to) {
    std::sort(from, to, [](const Candidate& a, const Candidate& b) {
      return a.least_mm != b.least_mm ? a.least_mm > b.least_mm : a.index < b.index;
    });
    each_tie(from, to, least, [](Place f, Place t) { std::sort(f, t, cheaper); });
  });
}

void rank(Set& set) {
  auto& all = set.ranked;
  std::sort(all.begin(), all.end(), [](const Candidate& a, const Candidate& b) {
    if (group_of(a) != group_of(b)) return group_of(a) < group_of(b);
    return a.score_mm != b.score_mm ? a.score_mm > b.score_mm : a.index < b.index;
  });
  for (auto begin = all.begin(); begin != all.end();) {
    const int group = group_of(*begin);
    const auto end = std::find_if(begin, all.end(), [&](const Candidate& c) { return group_of(c) != group; });
    rank_group(begin, end);
    begin = end;
  }
  const auto fits = [](const Candidate& c) { return c.standing == Standing::Fits; };
  set.fitting = at(static_cast<int>(std::count_if(all.begin(), all.end(), fits)));
  const auto left = std::find_if(all.begin(), all.end(), [](const Candidate& c) { return c.index == 0; });
  set.leave_it = at(static_cast<int>(left - all.begin()));
}

// --- when nothing fits ---

// The thicknesses of one gear at which its meshes fit, the others as chosen.
struct Reach {
  double from_mm = -std::numeric_limits<double>::max();
  double to_mm = std::numeric_limits<double>::max();
  bool never = false;

  // base + per · Δs ≥ least, where per < 0
  void at_least(double base_mm, double per, double least_mm) { to_mm = std::min(to_mm, (least_mm - base_mm) / per); }
  void at_most(double base_mm, double per, double most_mm) { from_mm = std::max(from_mm, (most_mm - base_mm) / per); }
};

void limit_by_mesh(const Set& set, const Candidate& c, std::size_t m, const Mesh& mesh, std::size_t gear,
                   Reach& reach) {
  const Set::Joined& joined = set.meshes[m];
  const double own_mm = set.choice(c, gear).thicker.in_mm();
  for (const State s : lash_temperature::all_states) {
    const double per = joined.gear_a == gear ? joined.per_a[at(s)] : joined.per_b[at(s)];
    const LashRange now = set.lash(c, m, s);
    const double low = now.low.in_mm() - per * own_mm;
    const double high = now.high.in_mm() - per * own_mm;
    reach.at_least(low, per, 2.0 * slack_mm);  // some lash left
    for (const Window& w : mesh.windows) {
      if (w.state != s) continue;
      if (w.lowest) reach.at_least(low, per, w.lowest->in_mm());
      if (w.highest) reach.at_most(high, per, w.highest->in_mm());
    }
  }
}

// A mesh that this gear can't change must already fit.
bool mesh_fits(const Set& set, const Candidate& c, std::size_t m, const Mesh& mesh) {
  const Set::Joined& joined = set.meshes[m];
  const Cell cell = Judge{joined, mesh}.judged(set.choice(c, joined.gear_a).thicker.in_mm(),
                                               set.choice(c, joined.gear_b).thicker.in_mm());
  return cell.score_mm >= -slack_mm && cell.least_mm > 0.0;
}

Reach reach_of(const Input& in, const Set& set, const Candidate& c, std::size_t gear) {
  Reach reach;
  for (std::size_t m = 0; m < set.meshes.size(); ++m) {
    const Mesh& mesh = in.meshes[at(set.meshes[m].mesh)];
    if (set.meshes[m].gear_a == gear || set.meshes[m].gear_b == gear)
      limit_by_mesh(set, c, m, mesh, gear, reach);
    else if (!mesh_fits(set, c, m, mesh))
      reach.never = true;
  }
  return reach;
}

// With only a lower limit any thinner gear would do: name the size at the limit.
void close_open_end(Reach& reach) {
  if (reach.from_mm == -std::numeric_limits<double>::max()) reach.from_mm = reach.to_mm;
}

void find_would_fit(const Engine& e, Set& set) {
  for (std::size_t g = 0; g < set.gears.size(); ++g) {
    const int place = set.gears[g];
    if (e.gear(place).sizes.empty()) continue;
    Reach reach = reach_of(e.in, set, set.best(), g);
    if (reach.never || reach.from_mm > reach.to_mm) continue;
    close_open_end(reach);
    const SizeReader reader{e.gear(place), e.gears[at(place)]};
    const auto from = reader.value_for(reach.from_mm);
    const auto to = reader.value_for(reach.to_mm);
    const auto middle = reader.value_for((reach.from_mm + reach.to_mm) / 2.0);
    if (from && to && middle) set.would_fit.push_back({place, *middle, *from, *to});
  }
}

void remark_swing(const Input& in, const Set& set, Findings& out) {
  for (const Set::Joined& joined : set.meshes) {
    const Mesh& mesh = in.meshes[at(joined.mesh)];
    for (const Window& w : mesh.windows) {
      if (!w.lowest || !w.highest) continue;
      const Length swing = Length::mm(joined.high_mm[at(w.state)] - joined.low_mm[at(w.state)]);
      const Length room = *w.highest - *w.lowest;
      if (swing.in_mm() > room.in_mm() + slack_mm)
        out.push_back(
            remarks::swing_too_wide(item("meshes", joined.mesh, "windows"), mesh_name(in, joined.mesh), swing, room));
    }
  }
}

std::string meshes_text(const Input& in, const Set& set) {
  std::string text;
  for (const Set::Joined& m : set.meshes) text += (text.empty() ? "" : " and ") + mesh_name(in, m.mesh);
  return text;
}

void remark_nothing_fits(const Engine& e, const Set& set, Findings& out) {
  const std::string meshes = meshes_text(e.in, set);
  const Candidate& nearest = set.best();
  if (nearest.standing == Standing::NotInStock)
    return out.push_back(remarks::not_in_stock(choice_text(e.in, set, nearest)));
  out.push_back(remarks::nothing_fits(meshes, choice_text(e.in, set, nearest), Length::mm(-nearest.score_mm)));
  remark_swing(e.in, set, out);
  for (const WouldFit& w : set.would_fit)
    out.push_back(remarks::would_fit(
        e.gear(w.gear).name,
        fmt::format("{} ({} to {})", remarks::inch_and_mm(w.value), remarks::mm_only(w.from), remarks::mm_only(w.to))));
  if (set.would_fit.empty()) out.push_back(remarks::no_one_gear_would_do(meshes));
}

// --- the outcome ---

constexpr std::array<const char*, 4> state_keys{"as_measured", "coldest_start", "warm_up", "fully_hot"};

void add_lash_figures(const Input& in, const Set& set, const Candidate& c, const char* which, const char* words,
                      Outcome& out) {
  for (std::size_t m = 0; m < set.meshes.size(); ++m) {
    const Set::Joined& joined = set.meshes[m];
    for (const State s : lash_temperature::all_states) {
      const LashRange lash = set.lash(c, m, s);
      const auto add = [&](const char* end, const char* end_words, Length v) {
        Figure f{fmt::format("meshes[{}].{}.{}.{}", joined.mesh, which, state_keys[at(s)], end),
                 fmt::format("{}, {}, {}: {} lash", mesh_name(in, joined.mesh), words, lash_temperature::word_of(s),
                             end_words),
                 Kind::Length,
                 v.in_mm(),
                 {},
                 {},
                 {}};
        if (in.meshes[at(joined.mesh)].uncertainty) f.uncertainty = joined.uncertainty_mm[at(s)];
        out.figures.push_back(std::move(f));
      };
      add("low", "lowest", lash.low);
      add("high", "highest", lash.high);
    }
  }
}

void add_set_figures(const Input& in, const Set& set, std::size_t i, Outcome& out) {
  const auto key = [&](const char* what) { return fmt::format("sets[{}].{}", i, what); };
  const std::string meshes = meshes_text(in, set);
  const double changed = set.best().index == 0 ? 0.0 : 1.0;
  out.figures.push_back(
      {key("pick"), meshes + ": order", Kind::Number, changed, {}, {}, choice_text(in, set, set.best())});
  out.figures.push_back({key("score"),
                         meshes + ": distance to the nearest edge",
                         Kind::Length,
                         set.best().score_mm,
                         {},
                         set.best().verdict,
                         {}});
  const Candidate& left = set.ranked[set.leave_it];
  out.figures.push_back({key("leave_it.score"),
                         meshes + ": the same if left as it is",
                         Kind::Length,
                         left.score_mm,
                         {},
                         left.verdict,
                         {}});
  out.figures.push_back({key("combinations"),
                         meshes + ": combinations",
                         Kind::Number,
                         static_cast<double>(set.ranked.size()),
                         {},
                         {},
                         {}});
  out.figures.push_back(
      {key("fitting"), meshes + ": of these fit", Kind::Number, static_cast<double>(set.fitting), {}, {}, {}});
  add_lash_figures(in, set, set.best(), "pick", "with the pick", out);
  add_lash_figures(in, set, left, "leave_it", "left as it is", out);
}

void add_size_steps(const Engine& e, std::size_t i, double per_value, Outcome& out) {
  const Gear& gear = e.in.gears[i];
  const GearModel& model = e.gears[i];
  out.figures.push_back({item("gears", i, "lash_per_size"),
                         gear.name + ": lash lost per size gained",
                         Kind::Number,
                         per_value,
                         {},
                         {},
                         {}});
  const auto text = fmt::format("{}: one thou of {} is {:.2f} thou of lash here, not one", gear.name,
                                meaning_words[static_cast<std::size_t>(*gear.size_means)].name, per_value);
  if (std::abs(per_value - 1.0) > 0.05)
    out.findings.push_back(remarks::step_is_not_lash(item("gears", i, "sizes"), text));
  for (std::size_t k = 1; k < model.options.size(); ++k) {
    const Option& o = model.options[k];
    out.working.push_back({fmt::format("{}, size {}", gear.name, gear.sizes[at(o.size)].name),
                           "Δj = −(a/a_ref) Δs; + = thicker = tighter",
                           fmt::format("Δs {} against the fitted gear", remarks::inch_and_mm(o.thicker)),
                           "lash " + remarks::inch_and_mm(o.lash_change)});
  }
}

void add_prediction_steps(const Input& in, const Set& set, Outcome& out) {
  const Candidate& best = set.best();
  for (std::size_t m = 0; m < set.meshes.size(); ++m)
    for (const State s : lash_temperature::all_states) {
      const LashRange lash = set.lash(best, m, s);
      const Set::Joined& joined = set.meshes[m];
      out.working.push_back({fmt::format("{}, {}", mesh_name(in, joined.mesh), lash_temperature::word_of(s)),
                             "j = j(fitted) − Σ (∂j/∂s) Δs",
                             fmt::format("{} to {}, Δs {} and {}", remarks::mm_only(Length::mm(joined.low_mm[at(s)])),
                                         remarks::mm_only(Length::mm(joined.high_mm[at(s)])),
                                         remarks::mm_only(set.choice(best, joined.gear_a).thicker),
                                         remarks::mm_only(set.choice(best, joined.gear_b).thicker)),
                             fmt::format("{} to {}", remarks::inch_and_mm(lash.low), remarks::inch_and_mm(lash.high))});
    }
}

void add_ranking_steps(const Input& in, const Set& set, Outcome& out) {
  for (std::size_t i = 0; i < std::min<std::size_t>(set.ranked.size(), 5); ++i)
    out.working.push_back({fmt::format("Place {}", i + 1), "smallest distance to a window's edge",
                           choice_text(in, set, set.ranked[i]), standing_text(in, set, set.ranked[i])});
  if (set.leave_it >= 5)
    out.working.push_back({fmt::format("Place {}: leave it", set.leave_it + 1), "smallest distance to a window's edge",
                           choice_text(in, set, set.ranked[set.leave_it]),
                           standing_text(in, set, set.ranked[set.leave_it])});
}

void remark_pressed(const Input& in, const Set& set, Findings& out) {
  for (std::size_t g = 0; g < set.gears.size(); ++g) {
    const Gear& gear = in.gears[at(set.gears[g])];
    if (gear.joint == Joint::Pressed && set.choice(set.best(), g).size >= 0)
      out.push_back(remarks::pressed_gear_changes(gear.name));
  }
}

void report_set(const Engine& e, const Set& set, std::size_t i, Outcome& out) {
  add_set_figures(e.in, set, i, out);
  add_prediction_steps(e.in, set, out);
  add_ranking_steps(e.in, set, out);
  if (set.fitting == 0)
    remark_nothing_fits(e, set, out.findings);
  else
    remark_pressed(e.in, set, out.findings);
}

// The set that stands worst decides: Outside before Not proven before Within.
int badness(Verdict v) {
  return v == Verdict::Outside ? 2 : v == Verdict::NotProven ? 1 : 0;
}

std::string judgement_reason(const Engine& e, const Set& set) {
  std::string standing = standing_text(e.in, set, set.best());
  if (set.best().verdict != Verdict::NotProven) return standing;
  return standing + "; the ± of the readings, their method or a doubt keeps it from being proven";
}

void judge(const Engine& e, Result& r) {
  const auto worse = [](const Set& a, const Set& b) { return badness(a.best().verdict) < badness(b.best().verdict); };
  const auto worst = std::max_element(r.sets.begin(), r.sets.end(), worse);
  const Candidate& c = worst->best();
  const Mesh& mesh = e.in.meshes[at(worst->meshes[c.tight_mesh].mesh)];
  r.outcome.judgement = Judgement{c.verdict,
                                  fmt::format("sets[{}].score", worst - r.sets.begin()),
                                  0.0,
                                  {},
                                  *mesh.window_source,
                                  judgement_reason(e, *worst)};
}

// --- doubts, and the whole ---

void remark_readings(Engine& e) {
  for (std::size_t i = 0; i < e.in.meshes.size(); ++i) {
    const Mesh& m = e.in.meshes[i];
    const std::string name = mesh_name(e.in, static_cast<int>(i));
    if (!m.uncertainty) e.findings.push_back(remarks::no_uncertainty(item("meshes", i, "uncertainty"), name));
    if (m.measured_by_window_method != true)
      e.findings.push_back(
          remarks::other_method(item("meshes", i, "measured_by_window_method"), name, m.window_method));
    const auto& f = e.meshes[i].frame;
    if (auto q = gear_pair::centre_distance_question(f, Length::mm(f.reference_centre_mm), m.sizes_confirmed))
      e.findings.push_back(in_mesh(std::move(*q), i));
  }
}

bool centre_doubtful(const Engine& e, const Set& set) {
  return std::any_of(set.meshes.begin(), set.meshes.end(), [&](const Set::Joined& m) {
    const std::string field = item("meshes", m.mesh, "centre_distance");
    return std::any_of(e.findings.begin(), e.findings.end(),
                       [&](const Finding& f) { return f.number == 1102 && f.field == field; });
  });
}

// Strides of the mixed counting, and how many combinations there are; none when too many.
std::optional<std::uint32_t> count(Set& set) {
  std::size_t total = 1;
  for (const auto& options : set.options) {
    set.strides.push_back(static_cast<std::uint32_t>(total));
    total *= options.size();
    if (total > most_combinations) return std::nullopt;
  }
  return static_cast<std::uint32_t>(total);
}

bool solve_set(const Engine& e, Set& set) {
  const auto combinations = count(set);
  if (!combinations) return false;
  Enumeration(e.in, set, centre_doubtful(e, set)).run(*combinations);
  rank(set);
  if (set.fitting == 0) find_would_fit(e, set);
  return true;
}

// Everything up to the sets; stops at the first stage that refuses.
std::vector<Set> prepare(Engine& e) {
  name_parts(e);
  if (any_refusal(e.findings)) return {};
  for (std::size_t i = 0; i < e.meshes.size(); ++i) frame_mesh(e, i);
  if (any_refusal(e.findings)) return {};
  check_train(e);
  for (std::size_t i = 0; i < e.gears.size(); ++i) read_sizes(e, i);
  if (any_refusal(e.findings)) return {};
  remark_readings(e);
  return sets_of(e);
}

void report(const Engine& e, Result& r) {
  r.lash_per_size.resize(e.gears.size());
  for (std::size_t i = 0; i < r.sets.size(); ++i) report_set(e, r.sets[i], i, r.outcome);
  for (std::size_t i = 0; i < e.gears.size(); ++i) {
    if (e.in.gears[i].sizes.empty() || !e.gears[i].form) continue;
    r.lash_per_size[i] =
        to_operating_circle(e, e.gears[i]) * SizeReader{e.in.gears[i], e.gears[i]}.thickness_per_value();
    add_size_steps(e, i, r.lash_per_size[i], r.outcome);
  }
  judge(e, r);
}

Findings check_figures(const Outcome& outcome) {
  for (const Figure& f : outcome.figures)
    if (!std::isfinite(f.base)) return {remarks::no_finite_result(f.label)};
  return {};
}

Field name_field(const char* label, const char* help) {
  return Field{"name", label, help};
}
Field size_field(const char* name, const char* label, const char* help) {
  return Field{name, label, help}.above(0.0).at_most(Length::mm(10000.0));
}
Field lash_field(const char* name, const char* label, const char* help) {
  return Field{name, label, help}.at_least(Length::mm(-100.0)).at_most(Length::mm(100.0));
}
Field measure_field(const char* name, const char* label, const char* help) {
  return Field{name, label, help}.at_least(Length::mm(-10000.0)).at_most(Length::mm(10000.0));
}

std::string changed_text(const Gear& gear, const Option& option) {
  if (option.size < 0) return gear.name + " as fitted";
  const std::string& size = gear.sizes[at(option.size)].name;
  return gear.name + " " + (size.empty() ? remarks::inch_and_mm(option.value) : size);
}

}  // namespace

LashRange Set::lash(const Candidate& c, std::size_t mesh, State state) const {
  const Joined& m = meshes[mesh];
  const std::size_t s = at(state);
  const double change_mm =
      m.per_a[s] * choice(c, m.gear_a).thicker.in_mm() + m.per_b[s] * choice(c, m.gear_b).thicker.in_mm();
  return {Length::mm(m.low_mm[s] + change_mm), Length::mm(m.high_mm[s] + change_mm)};
}

std::string choice_text(const Input& input, const Set& set, const Candidate& c) {
  if (c.index == 0) return "leave it";
  std::string text;
  for (std::size_t g = 0; g < set.gears.size(); ++g)
    text += (text.empty() ? "" : ", ") + changed_text(input.gears[at(set.gears[g])], set.choice(c, g));
  return text;
}

std::string standing_text(const Input& input, const Set& set, const Candidate& c) {
  const std::string where = fmt::format("in {}, {}", mesh_name(input, set.meshes[c.tight_mesh].mesh),
                                        lash_temperature::word_of(c.tight_state));
  const std::string by = remarks::inch_and_mm(Length::mm(std::abs(c.score_mm)));
  switch (c.standing) {
    case Standing::Fits:
      return fmt::format("fits, {} from the edge {}", by, where);
    case Standing::NotInStock:
      return fmt::format("would fit, {} from the edge {}, but is not in stock", by, where);
    case Standing::TooTight:
      return fmt::format("too tight by {} {}", by, where);
    case Standing::TooLoose:
      return fmt::format("too loose by {} {}", by, where);
    case Standing::NoLash:
      break;
  }
  return fmt::format("no lash left in some state, least {}", remarks::inch_and_mm(Length::mm(c.least_mm)));
}

void describe(FieldVisitor& v, Shaft& s) {
  v.value(name_field("Shaft", "Such as crank, rear cam, front cam").must(), s.name);
  v.choice(Field{"role", "What it is", "Crank and cam settle the ratio of the train"}, s.role, role_words);
}

void describe(FieldVisitor& v, Size& s) {
  v.value(name_field("Size", "As the seller names it"), s.name);
  v.value(measure_field("value", "Value", "In the measure said for this gear").must(), s.value);
  v.value(Field{"price", "Price", "Of one gear of this size"}.at_least(0.0), s.price);
  v.value(Field{"stock", "In stock", "How many are to be had; 0 = none"}.at_least(0.0), s.stock);
}

void describe(FieldVisitor& v, Gear& g) {
  v.value(name_field("Gear", "Such as pinion, rear outer, rear inner, front inner").must(), g.name);
  v.value(Field{"shaft", "On shaft", "Name of the shaft it sits on"}.must(), g.shaft);
  v.value(Field{"teeth", "Teeth", "Count them twice, marking the first"}.at_least(4.0).at_most(1000.0).must(), g.teeth);
  v.choice(Field{"size_means", "A size means", "What the sizes of this gear count; one step differs up to threefold"},
           g.size_means, meaning_words);
  v.value(measure_field("fitted", "Fitted size", "What is in now, in the same measure"), g.fitted);
  v.value(size_field("pin_diameter", "Pin diameter", "Of one pin, for sizes over pins"), g.pin_diameter);
  v.value(size_field("tip_diameter", "Tip diameter", "Outside diameter; left out: assumed from the pitch"),
          g.tip_diameter);
  v.value(size_field("root_diameter", "Root diameter", "At the bottom of the spaces; left out: assumed"),
          g.root_diameter);
  v.value(Field{"expansion", "Grows", "Expansion coefficient of its metal, if unlike the others"}.at_least(0.0).at_most(
              Expansion::ppm_per_kelvin(40.0)),
          g.expansion);
  v.choice(Field{"joint", "How it is fixed", "A pressed gear weighs ten bolted ones unless its effort is given"},
           g.joint, joint_words);
  v.value(Field{"effort", "Effort to change", "1 for a bolted gear"}.at_least(0.0).at_most(1000.0), g.effort);
  v.list(Field{"sizes", "Sizes on offer", "Empty: this gear stays"}, g.sizes);
}

void describe(FieldVisitor& v, Window& w) {
  v.choice(Field{"state", "State", "The temperatures for which the sheet gives the lash"}, w.state,
           lash_temperature::state_choices);
  v.value(lash_field("lowest", "Lowest wanted", "Least lash the sheet allows"), w.lowest);
  v.value(lash_field("highest", "Highest wanted", "Most lash the sheet allows"), w.highest);
}

void describe(FieldVisitor& v, Mesh& m) {
  v.value(name_field("Mesh", "Such as outer mesh, inner mesh"), m.name);
  v.value(Field{"gear_a", "First gear", "Name of a gear"}.must(), m.gear_a);
  v.value(Field{"gear_b", "Second gear", "Name of a gear on another shaft"}.must(), m.gear_b);
  v.value(Field{"module", "Size of the teeth", "Module in mm, or diametral pitch per inch; square to the tooth"}
              .above(0.0)
              .at_most(100.0)
              .must(),
          m.module);
  v.value(Field{"pressure_angle", "Pressure angle", "Of the cutter: 14.5°, 20° or 25° as a rule"}.above(0.0).at_most(
              Angle::deg(45.0)),
          m.pressure_angle);
  v.value(Field{"helix", "Helix angle", "0 for straight teeth"}.at_least(0.0).below(Angle::deg(60.0)), m.helix);
  v.value(size_field("centre_distance", "Centre distance", "Between the axes of the two shafts").must(),
          m.centre_distance);
  v.value(Field{"sizes_confirmed", "Sizes looked at again", "Pitch, teeth and centre distance are right as entered"},
          m.sizes_confirmed);
  v.value(lash_field("lash_low", "Lowest lash", "Over the whole cycle as measured, along the operating circle").must(),
          m.lash_low);
  v.value(
      lash_field("lash_high", "Highest lash", "Over the whole cycle as measured, along the operating circle").must(),
      m.lash_high);
  v.value(Field{"uncertainty", "± of the lash", "Expanded uncertainty U of the measurement"}.at_least(0.0).at_most(
              Length::mm(100.0)),
          m.uncertainty);
  v.list(Field{"windows", "Wanted lash", "Of the part maker's sheet, for each state it names"}, m.windows);
  v.source(Field{"window_source", "Who says so", "Where the wanted lash comes from"}, m.window_source);
  v.value(Field{"window_method", "The sheet's way of measuring",
                "Where, plate torqued or not, cold, all round or one spot"},
          m.window_method);
  v.value(Field{"measured_by_window_method", "Measured that way", "Whether the lash was read the way the sheet means"},
          m.measured_by_window_method);
}

void describe(FieldVisitor& v, Input& in) {
  v.list(Field{"shafts", "Shafts", "That carry the gears"}.must(), in.shafts);
  v.list(Field{"gears", "Gears", "On the shafts, with the sizes on offer"}.must(), in.gears);
  v.list(Field{"meshes", "Meshes", "Between two gears, with the lash as measured"}.must(), in.meshes);
  v.group(Field{"temperatures", "Temperatures", "For the lash cold, warming up and hot"}, in.temperatures);
}

tl::expected<Result, Findings> solve(const Input& input) {
  if (Findings bad = check_fields(input); !bad.empty()) return tl::unexpected(std::move(bad));
  Engine e{input, {}, {}, {}};
  Result r;
  r.sets = prepare(e);
  if (any_refusal(e.findings)) return tl::unexpected(std::move(e.findings));
  for (Set& set : r.sets)
    if (!solve_set(e, set)) return tl::unexpected(Findings{remarks::too_many_combinations(most_combinations)});
  r.outcome.findings = e.findings;
  report(e, r);
  if (Findings unreal = check_figures(r.outcome); !unreal.empty()) return tl::unexpected(std::move(unreal));
  return r;
}

}  // namespace camside::gear_pick
