// The train of a gear pick: speeds of the shafts as exact fractions of the first one's.
#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "calc/gear_pick/gear_pick_engine.hpp"
#include "findings/remark.hpp"
#include "calc/gear_pick/gear_pick_remarks.hpp"

namespace camside::gear_pick {

namespace {

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
    t.out->push_back(gear_pair::wrong_ratio(gear_pair::Place::CrankToCam, item("shafts", i, "role"), found));
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
    t.out->push_back(gear_pair::wrong_ratio(gear_pair::Place::CamToCam, item("shafts", i, "role"), found));
  }
  return checked;
}

bool check_cams_alike(Train& t) {
  bool checked = false;
  for (std::size_t i = 0; i < t.speeds.size(); ++i)
    if (is_cam(t.e.in.shafts[i]) && t.speeds[i].turns == 0) checked = check_cams_from(t, i) || checked;
  return checked;
}

}  // namespace

void check_train(Engine& e) {
  Train t{e, std::vector<Speed>(e.in.shafts.size()), &e.findings};
  const bool from_crank = check_from_crank(t);
  const bool alike = check_cams_alike(t);
  if (!from_crank && !alike) e.findings.push_back(remarks::train_not_checked());
}

}  // namespace camside::gear_pick
