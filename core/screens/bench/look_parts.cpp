#include "screens/bench/look_parts.hpp"

#include <algorithm>

namespace camside::screens {

std::string stands_in(const std::vector<records::FormField>& form, std::string_view path) {
  for (const records::FormField& f : form)
    if (f.path == path) return f.text.empty() ? f.preset : f.text;
  return {};
}

namespace {

ToothedGear toothed(const gear_pair::GearResult& g) {
  return {g.teeth,
          g.base_radius.in_mm(),
          g.operating_radius.in_mm(),
          g.tip_radius.in_mm(),
          g.root_radius.in_mm(),
          g.operating_thickness.in_mm()};
}

}  // namespace

TeethPlot teeth_plot(const gear_pair::Result& pair) {
  return {toothed(pair.gear1), toothed(pair.gear2), pair.centre_distance.in_mm(), pair.lash.in_mm()};
}

float teeth_height(const Ui& ui, float width) {
  return std::clamp(0.8f * width, ui.px(200), 460.0f);
}

}  // namespace camside::screens
