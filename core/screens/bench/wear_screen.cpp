// Wear: readings of one part over the distance, the line and where it reaches the least thickness.
#include <algorithm>

#include "base/stable_sort.hpp"
#include "calc/wear/wear.hpp"
#include "screens/bench/look_parts.hpp"
#include "screens/bench/question_screen.hpp"
#include "screens/drawings/wear_drawing.hpp"
#include "screens/widgets/shown.hpp"

namespace camside::screens {

namespace {

WearPlot plot_of(const wear::Input& in, const wear::Result& r, System system) {
  WearPlot plot;
  plot.unit_mm = grid_unit_mm(system);
  for (const wear::Reading& reading : in.readings)
    if (reading.odometer && reading.thickness) plot.points.push_back({*reading.odometer, *reading.thickness});
  sort_stably(plot.points.begin(), plot.points.end(),
              [](const WearPlot::Point& a, const WearPlot::Point& b) { return a.odometer < b.odometer; });
  plot.now = r.now;
  if (in.limit) plot.limit = in.limit->value;
  if (r.line) plot.line_mm = [line = *r.line](double km) { return line.at(km); };
  if (r.forecast) {
    plot.low = r.forecast->low;
    plot.crossing = r.forecast->crossing;
    plot.high = r.forecast->high;
  }
  return plot;
}

}  // namespace

QuestionLook wear_look();  // for looks.cpp

QuestionLook wear_look() {
  QuestionLook look;
  look.kind = "wear";
  look.plan.front = {"part", "readings", "seen", "anvil", "graduation", "limit", "odometer_now"};
  look.drawing_height = [](const Ui& ui, const Solved& solved, float width) {
    return solved.result_as<wear::Result>() ? std::clamp(0.62f * width, ui.px(200), 420.0f) : 0.0f;
  };
  look.drawing = [](const Ui& ui, const Solved& solved, System system, const Area& area) {
    const auto* const r = solved.result_as<wear::Result>();
    const auto* const in = solved.input_as<wear::Input>();
    if (!r || !in) return;
    draw_wear(ui.pen(ui.theme().ground), area, plot_of(*in, *r, system), shown_in(system),
              [system](Distance d) { return shown(Kind::Distance, d.base(), system); });
  };
  return look;
}

}  // namespace camside::screens
