// Runout: the turn as it was read, against the limit and this dial's pass line.
#include <algorithm>

#include "calc/runout/runout.hpp"
#include "screens/bench/look_parts.hpp"
#include "screens/bench/question_screen.hpp"
#include "screens/drawings/runout_drawing.hpp"

namespace camside::screens {

namespace {

RunoutPlot plot_of(const runout::Input& in, const runout::Result& r) {
  RunoutPlot plot;
  for (const runout::CleanStation& s : r.stations) plot.points.push_back({s.angle, s.reading, 1});
  if (r.fit) {
    plot.curve_mm = [fit = *r.fit](double angle) { return fit.value_at(angle); };
    plot.mean_mm = r.fit->coefficient[0];
  } else {
    plot.mean_mm = (r.lowest.in_mm() + r.highest.in_mm()) / 2;
    plot.swing = r.judged;
  }
  if (r.limit) plot.limit = r.limit->value;
  plot.pass_line = r.pass_line;
  plot.high_spot = r.high_spot;
  plot.clockwise = in.setup.seen_from == runout::SeenFrom::Right;
  return plot;
}

bool hidden(std::string_view top, const std::vector<records::FormField>& form) {
  const bool stations = stands_in(form, "method") == "stations";
  if (top == "swings") return stations;
  if (top == "stations" || top == "closing") return !stations;
  return false;
}

}  // namespace

QuestionLook runout_look();  // for looks.cpp

QuestionLook runout_look() {
  QuestionLook look;
  look.kind = "runout";
  look.free_corner = true;
  look.plan.front = {"method", "swings", "stations", "closing", "setup"};
  look.plan.hidden = hidden;
  look.plan.marked = {{"stations", "angle", {"angle", "reading"}, {6, 8, 12}, 360},
                      {"swings", "", {"low", "high"}, {}, 360}};
  look.drawing_height = [](const Ui&, const Solved& solved, float width) {
    return solved.result_as<runout::Result>() ? std::min(width, 460.0f) : 0.0f;
  };
  look.drawing = [](const Ui& ui, const Solved& solved, System system, const Area& area) {
    const auto* const r = solved.result_as<runout::Result>();
    const auto* const in = solved.input_as<runout::Input>();
    if (!r || !in) return;
    RunoutPlot plot = plot_of(*in, *r);
    if (r->verdict) plot.verdict = colour_of(ui.theme(), *r->verdict);
    draw_runout(ui.pen(ui.theme().ground), area, plot, shown_in(system));
  };
  return look;
}

}  // namespace camside::screens
