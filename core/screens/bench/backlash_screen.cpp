// Gear lash (backlash): the curve over two crank turns against its window.
#include <algorithm>

#include "calc/backlash/backlash.hpp"
#include "screens/bench/look_parts.hpp"
#include "screens/bench/question_screen.hpp"
#include "screens/drawings/lash_drawing.hpp"
#include "units/format.hpp"

namespace camside::screens {

namespace {

std::string tight_text(const backlash::Result& r) {
  const double deg = r.lowest.crank.in_deg();
  const int turn = deg < 360.0 ? 1 : 2;
  return "tight: tooth " + std::to_string(r.tight_tooth2) + ", " + format_decimal(deg - 360.0 * (turn - 1), 0) +
         "° of turn " + std::to_string(turn);
}

LashPlot plot_of(const backlash::Result& r) {
  LashPlot plot;
  for (const backlash::Point& p : r.points) plot.points.push_back({p.crank, p.lash});
  if (r.curve.fitted) plot.curve_mm = [c = r.curve](double crank) { return c.at(Angle::rad(crank)).in_mm(); };
  if (r.window) {
    plot.window_low = r.window->min;
    plot.window_high = r.window->max;
  }
  for (const backlash::StateLash& s : r.states)
    if (s.state != lash_temperature::State::AsMeasured)
      plot.states.push_back({std::string(lash_temperature::word_of(s.state)), s.lowest, s.highest});
  plot.tight_at = r.lowest.crank;
  plot.tight_text = tight_text(r);
  return plot;
}

bool hidden(std::string_view top, const std::vector<records::FormField>& form) {
  const std::string access = stands_in(form, "access");
  if (top == "outer" || top == "readings.outer_lash") return access != "subtraction";
  if (top == "feel") return access != "by feel";
  if (access == "by feel")
    return top == "readings" || top == "contact" || top == "contact_radius" || top == "indicator_angle";
  return false;
}

}  // namespace

QuestionLook backlash_look();  // for looks.cpp

QuestionLook backlash_look() {
  QuestionLook look;
  look.kind = "backlash";
  look.plan.front = {"mesh",       "access",   "feel",  "loads_off", "contact", "contact_radius", "indicator_angle",
                     "graduation", "readings", "outer", "window"};
  look.plan.hidden = hidden;
  look.plan.marked = {{"readings", "angle", {"angle", "reading", "outer_lash"}, {8, 12}, 720}};
  look.drawing_height = [](const Ui& ui, const Solved& solved, float width) {
    const auto* const r = solved.result_as<backlash::Result>();
    return !r || r->by_feel ? 0.0f : std::clamp(0.66f * width, ui.px(200), 420.0f);
  };
  look.drawing = [](const Ui& ui, const Solved& solved, System system, const Area& area) {
    const auto* const r = solved.result_as<backlash::Result>();
    if (!r) return;
    LashPlot plot = plot_of(*r);
    plot.unit_mm = grid_unit_mm(system);
    if (solved.outcome.judgement) plot.verdict = colour_of(ui.theme(), solved.outcome.judgement->verdict);
    draw_lash(ui.pen(ui.theme().ground), area, plot, shown_in(system));
  };
  return look;
}

}  // namespace camside::screens
