// Inside of gear_pick.hpp: the engine with names turned into places, and its checks.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "calc/gear_pair/gear_pair.hpp"
#include "calc/gear_pick/gear_pick.hpp"
#include "findings/decision.hpp"
#include "maths/involute.hpp"

namespace camside::gear_pick {

constexpr double slack_mm = decision_slack;  // meeting an edge exactly is inside it

inline std::size_t at(State s) {
  return static_cast<std::size_t>(s);
}
inline std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

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

// Paths of fields: "gears[2].sizes".
std::string item(const char* list, std::size_t i, const char* field);
std::string item(const char* list, int i, const char* field);

std::string mesh_name(const Input& in, int mesh);
std::string_view word_of(SizeMeans means);

// A refusal of the pair's own names the field of this input.
Finding in_mesh(Finding f, std::size_t mesh);

// The stages, in this order; each leaves its findings in the engine.
void name_parts(Engine& e);
void frame_meshes(Engine& e);
void check_train(Engine& e);  // its ratios
void read_sizes(Engine& e);

// a / a_ref of the gear's first mesh: thickness at the operating circle per thickness at the reference circle.
double to_operating_circle(const Engine& e, const GearModel& g);

}  // namespace camside::gear_pick
