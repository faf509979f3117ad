#include "calc/gear_pick/gear_pick_sets.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>

#include "findings/decision.hpp"
#include "findings/remark.hpp"

namespace camside::gear_pick {

namespace {

constexpr double pressed_effort = 10.0;

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
  if (!line) return out.push_back(lash_temperature::no_fit_in_state("temperatures", s));
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
    cell.verdict = verdict_of_numbers(Bound::Least, {proven_mm, failed_mm, 0.0}, 0.0);
    const bool comparable = mesh.uncertainty && mesh.measured_by_window_method == true;
    if (cell.verdict == Verdict::Within && !comparable) cell.verdict = Verdict::NotProven;
    if (cell.least_mm <= 0.0) cell.verdict = Verdict::Outside;
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
      t.cells.push_back(judged(joined, mesh, a.thicker.in_mm(), b.thicker.in_mm()));
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

}  // namespace

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

Cell judged(const Set::Joined& joined, const Mesh& mesh, double thicker_a_mm, double thicker_b_mm) {
  return Judge{joined, mesh}.judged(thicker_a_mm, thicker_b_mm);
}

LashRange Set::lash(const Candidate& c, std::size_t mesh, State state) const {
  const Joined& m = meshes[mesh];
  const std::size_t s = at(state);
  const double change_mm =
      m.per_a[s] * choice(c, m.gear_a).thicker.in_mm() + m.per_b[s] * choice(c, m.gear_b).thicker.in_mm();
  return {Length::mm(m.low_mm[s] + change_mm), Length::mm(m.high_mm[s] + change_mm)};
}

bool solve_set(const Engine& e, Set& set, bool doubtful) {
  const auto combinations = count(set);
  if (!combinations) return false;
  Enumeration(e.in, set, doubtful).run(*combinations);
  rank(set);
  if (set.fitting == 0) find_would_fit(e, set);
  return true;
}

}  // namespace camside::gear_pick
