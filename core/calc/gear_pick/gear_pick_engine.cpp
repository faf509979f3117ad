#include "calc/gear_pick/gear_pick_engine.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "calc/gear_pick/gear_pick_remarks.hpp"
#include "fields/field_remarks.hpp"
#include "fields/path.hpp"

namespace camside::gear_pick {

namespace {

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

}  // namespace

std::string item(const char* list, std::size_t i, const char* field) {
  return item_path(list, i, field);
}
std::string item(const char* list, int i, const char* field) {
  return item(list, at(i), field);
}

std::string mesh_name(const Input& in, int mesh) {
  const Mesh& m = in.meshes[at(mesh)];
  return m.name.empty() ? fmt::format("{} to {}", m.gear_a, m.gear_b) : m.name;
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

Finding in_mesh(Finding f, std::size_t mesh) {
  f.field = item("meshes", mesh, f.field.c_str());
  return f;
}

void frame_meshes(Engine& e) {
  for (std::size_t i = 0; i < e.meshes.size(); ++i) frame_mesh(e, i);
}

double to_operating_circle(const Engine& e, const GearModel& g) {
  const gear_pair::Frame& f = e.meshes[at(g.first_mesh)].frame;
  return f.centre_mm / f.reference_centre_mm;
}

}  // namespace camside::gear_pick
