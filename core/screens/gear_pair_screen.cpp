// Gear pair: what lash two gears make, with their true involute teeth at the pitch point.
#include <algorithm>

#include "calc/gear_pair.hpp"
#include "screens/look_parts.hpp"
#include "screens/parts/teeth_drawing.hpp"
#include "screens/question_screen.hpp"

namespace camside::screens {

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

QuestionLook gear_pair_look() {
  QuestionLook look;
  look.kind = "gear_pair";
  look.plan.front = {"module", "pressure_angle", "centre_distance", "gear1", "gear2"};
  look.drawing_height = [](const Ui& ui, const records::Solved& solved, float width) {
    return solved.result_as<gear_pair::Result>() ? std::clamp(0.8f * width, ui.px(200), 460.0f) : 0.0f;
  };
  look.drawing = [](const Ui& ui, const records::Solved& solved, System system, const Area& area) {
    const auto* const r = solved.result_as<gear_pair::Result>();
    if (!r) return;
    const TeethPlot plot{toothed(r->gear1), toothed(r->gear2), r->centre_distance.in_mm(), r->lash.in_mm()};
    draw_teeth(ui.pen(ui.theme().ground), area, plot, shown_in(system));
  };
  return look;
}

}  // namespace camside::screens
