// Life: the shop's own failures and survivors on a probability plot.
#include <algorithm>

#include "calc/life/life.hpp"
#include "screens/bench/question_screen.hpp"
#include "screens/drawings/life_drawing.hpp"
#include "screens/widgets/shown.hpp"

namespace camside::screens {

namespace {

LifePlot plot_of(const life::Input& in, const life::Result& r) {
  LifePlot plot;
  for (const weibull::PlotPoint& p : r.plot) plot.points.push_back({Distance::km(p.at), p.share});
  for (const life::BandPoint& b : r.band) plot.band.push_back({b.distance, b.share, b.low, b.high});
  if (in.survived.in_km() > 0) plot.come_so_far = in.survived;
  return plot;
}

}  // namespace

QuestionLook life_look();  // for looks.cpp

QuestionLook life_look() {
  QuestionLook look;
  look.kind = "life";
  look.plan.front = {"part", "from", "parts", "survived", "next"};
  look.drawing_height = [](const Ui& ui, const Solved& solved, float width) {
    const auto* const r = solved.result_as<life::Result>();
    return r && r->band.size() > 1 ? std::clamp(0.75f * width, ui.px(220), 460.0f) : 0.0f;
  };
  look.drawing = [](const Ui& ui, const Solved& solved, System system, const Area& area) {
    const auto* const r = solved.result_as<life::Result>();
    const auto* const in = solved.input_as<life::Input>();
    if (!r || !in) return;
    draw_life(ui.pen(ui.theme().ground), area, plot_of(*in, *r),
              [system](Distance d) { return shown(Kind::Distance, d.base(), system); });
  };
  return look;
}

}  // namespace camside::screens
