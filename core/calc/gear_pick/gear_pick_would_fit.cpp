// When nothing fits: which size of one gear would, the others as in the nearest combination.
#include <algorithm>
#include <limits>

#include "calc/gear_pick/gear_pick_sets.hpp"
#include "calc/gear_pick/gear_pick_sizes.hpp"

namespace camside::gear_pick {

namespace {

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
  const Cell cell =
      judged(joined, mesh, set.choice(c, joined.gear_a).thicker.in_mm(), set.choice(c, joined.gear_b).thicker.in_mm());
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

}  // namespace

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

}  // namespace camside::gear_pick
