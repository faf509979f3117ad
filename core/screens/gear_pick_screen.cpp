// Gears to order: every combination as a bar in the window, best on top, one block for each set of meshes.
#include <algorithm>

#include "calc/gear_pick.hpp"
#include "screens/look_parts.hpp"
#include "screens/parts/pick_drawing.hpp"
#include "screens/question_screen.hpp"

namespace camside::screens {

namespace {

constexpr std::size_t most_bars = 7;

// Lash of a candidate in the first mesh of its set, as measured: the state the sheet's window is for.
PickBar bar_of(const gear_pick::Input& in, const gear_pick::Set& set, const gear_pick::Candidate& c) {
  PickBar bar;
  bar.name = gear_pick::choice_text(in, set, c);
  bar.fits = c.standing == gear_pick::Standing::Fits;
  const std::size_t mesh = std::min<std::size_t>(c.tight_mesh, set.meshes.size() - 1);
  const gear_pick::LashRange lash = set.lash(c, mesh, c.tight_state);
  bar.lowest = lash.low;
  bar.highest = lash.high;
  return bar;
}

PickPlot plot_of(const gear_pick::Input& in, const gear_pick::Set& set) {
  PickPlot plot;
  for (std::size_t i = 0; i < std::min(most_bars, set.ranked.size()); ++i)
    plot.bars.push_back(bar_of(in, set, set.ranked[i]));
  const auto& best = set.best();
  const auto mesh =
      static_cast<std::size_t>(set.meshes[std::min<std::size_t>(best.tight_mesh, set.meshes.size() - 1)].mesh);
  for (const gear_pick::Window& w : in.meshes[mesh].windows) {
    if (w.state != best.tight_state) continue;
    plot.window_low = w.lowest;
    plot.window_high = w.highest;
  }
  return plot;
}

}  // namespace

QuestionLook gear_pick_look() {
  QuestionLook look;
  look.kind = "gear_pick";
  look.scales = false;
  look.plan.front = {"meshes", "gears", "shafts"};
  look.drawing_height = [](const Ui& ui, const records::Solved& solved, float) {
    const auto* const r = solved.result_as<gear_pick::Result>();
    if (!r) return 0.0f;
    float height = 0;
    for (const auto& set : r->sets)
      height += pick_height(ui.pen(ui.theme().ground), std::min(most_bars, set.ranked.size())) + ui.px(20);
    return height;
  };
  look.drawing = [](const Ui& ui, const records::Solved& solved, System system, const Area& area) {
    const auto* const r = solved.result_as<gear_pick::Result>();
    const auto* const in = solved.input_as<gear_pick::Input>();
    if (!r || !in) return;
    const Pen pen = ui.pen(ui.theme().ground);
    float top = area.min.y;
    for (const auto& set : r->sets) {
      const float height = pick_height(pen, std::min(most_bars, set.ranked.size()));
      draw_pick(pen, {{area.min.x, top}, {area.max.x, top + height}}, plot_of(*in, set), shown_in(system));
      top += height + ui.px(20);
    }
  };
  return look;
}

}  // namespace camside::screens
