// Gear pair: what lash two gears make, with their true involute teeth at the pitch point.
#include "calc/gear_pair/gear_pair.hpp"
#include "screens/bench/look_parts.hpp"
#include "screens/bench/question_screen.hpp"
#include "screens/drawings/teeth_drawing.hpp"

namespace camside::screens {

QuestionLook gear_pair_look();  // for looks.cpp

QuestionLook gear_pair_look() {
  QuestionLook look;
  look.kind = "gear_pair";
  look.plan.front = {"module", "pressure_angle", "centre_distance", "gear1", "gear2"};
  look.drawing_height = [](const Ui& ui, const Solved& solved, float width) {
    return solved.result_as<gear_pair::Result>() ? teeth_height(ui, width) : 0.0f;
  };
  look.drawing = [](const Ui& ui, const Solved& solved, System system, const Area& area) {
    const auto* const r = solved.result_as<gear_pair::Result>();
    if (!r) return;
    draw_teeth(ui.pen(ui.theme().ground), area, teeth_plot(*r), shown_in(system));
  };
  return look;
}

}  // namespace camside::screens
