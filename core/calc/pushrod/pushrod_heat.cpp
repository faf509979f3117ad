#include "calc/pushrod/pushrod_heat.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "calc/pushrod/pushrod_remarks.hpp"
#include "fields/path.hpp"

namespace camside::pushrod {

namespace {

struct Part {
  std::string field;
  std::string label;
  const Piece& piece;
};

std::vector<Part> parts_of(const Heat& h) {
  std::vector<Part> parts{{"heat.rod", "The rod", h.rod}};
  for (std::size_t i = 0; i < h.stack.size(); ++i)
    parts.push_back({item_path("heat.stack", i), h.stack[i].name.empty() ? "A piece" : h.stack[i].name, h.stack[i]});
  if (h.valve) {
    parts.push_back({"heat.valve.stem", "The stem", h.valve->stem});
    parts.push_back({"heat.valve.head", "The head", h.valve->head});
  }
  return parts;
}

// A part that was not filled in does not grow; check_fields has refused that before.
Length growth(const Piece& p, Expansion usual, TemperatureDifference rise) {
  const double alpha = p.expansion.value_or(usual).in_per_kelvin();
  return alpha * rise.in_kelvin() * p.length.value_or(Length{});
}

Length growth_hot(const Piece& p, Expansion usual, const Heat& h) {
  return growth(p, usual, p.hot.value_or(*h.setting_temperature) - *h.setting_temperature);
}

Length valve_side(const ValveGrowth& v, Length stem, Length head) {
  return (stem - head) / v.rocker_ratio.value_or(1.0);
}

Length change_at_one_temperature(const Heat& h, TemperatureDifference rise) {
  Length change = growth(h.rod, usual_steel, rise);
  for (const Piece& p : h.stack) change = change - growth(p, usual_aluminium, rise);
  if (!h.valve) return change;
  return change +
         valve_side(*h.valve, growth(h.valve->stem, usual_steel, rise), growth(h.valve->head, usual_aluminium, rise));
}

bool any_expansion_assumed(const Heat& h) {
  const std::vector<Part> parts = parts_of(h);
  return std::any_of(parts.begin(), parts.end(), [](const Part& p) { return !p.piece.expansion; });
}

bool rod_as_hot_as_all(const Heat& h) {
  return std::all_of(h.stack.begin(), h.stack.end(), [&](const Piece& p) { return p.hot == h.rod.hot; });
}

}  // namespace

HotPreload hot_preload(const Heat& h, Length set) {
  HotPreload r;
  r.rod_growth = growth_hot(h.rod, usual_steel, h);
  r.change = r.rod_growth;
  for (const Piece& p : h.stack) {
    r.stack_growth.push_back(growth_hot(p, usual_aluminium, h));
    r.change = r.change - r.stack_growth.back();
  }
  if (h.valve)
    r.valve_growth =
        valve_side(*h.valve, growth_hot(h.valve->stem, usual_steel, h), growth_hot(h.valve->head, usual_aluminium, h));
  r.change = r.change + r.valve_growth;
  r.hot = set + r.change;
  r.cold = set + change_at_one_temperature(h, h.cold - *h.setting_temperature);
  return r;
}

Findings heat_remarks(const Heat& h) {
  Findings found;
  for (const Part& p : parts_of(h)) {
    const TemperatureDifference rise = *p.piece.hot - *h.setting_temperature;
    if (rise > most_rise)
      found.push_back(remarks::rise_unlikely(p.field + ".hot", p.label, *p.piece.hot, rise, h.temperatures_confirmed));
  }
  if (rod_as_hot_as_all(h)) found.push_back(remarks::rod_as_hot_as_stack());
  if (any_expansion_assumed(h)) found.push_back(remarks::expansions_assumed());
  if (!h.valve) found.push_back(remarks::valve_side_not_counted());
  return found;
}

}  // namespace camside::pushrod
