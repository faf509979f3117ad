#include "calc/gear_pick/gear_pick.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "calc/gear_pick/gear_pick_engine.hpp"
#include "calc/gear_pick/gear_pick_report.hpp"
#include "calc/gear_pick/gear_pick_sets.hpp"
#include "findings/remark.hpp"
#include "calc/gear_pick/gear_pick_remarks.hpp"

namespace camside::gear_pick {

namespace {

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

// Everything up to the sets; stops at the first stage that refuses.
std::vector<Set> prepare(Engine& e) {
  name_parts(e);
  if (any_refusal(e.findings)) return {};
  frame_meshes(e);
  if (any_refusal(e.findings)) return {};
  check_train(e);
  read_sizes(e);
  if (any_refusal(e.findings)) return {};
  remark_readings(e);
  return sets_of(e);
}

}  // namespace

tl::expected<Result, Findings> solve(const Input& input) {
  if (Findings bad = check_fields(input); !bad.empty()) return tl::unexpected(std::move(bad));
  Engine e{input, {}, {}, {}};
  Result r;
  r.sets = prepare(e);
  if (any_refusal(e.findings)) return tl::unexpected(std::move(e.findings));
  for (Set& set : r.sets)
    if (!solve_set(e, set, centre_doubtful(e, set)))
      return tl::unexpected(Findings{remarks::too_many_combinations(most_combinations)});
  r.outcome.findings = e.findings;
  report(e, r);
  if (Findings unreal = gear_pair::unreal_figures(r.outcome); !unreal.empty()) return tl::unexpected(std::move(unreal));
  return r;
}

}  // namespace camside::gear_pick
