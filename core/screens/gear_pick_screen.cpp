// Gears to order: every combination as a bar in the window, best on top, one block for each set of meshes;
// a tap on a bar shows the teeth it gives.
#include <algorithm>

#include "calc/gear_pick.hpp"
#include "screens/extra_part.hpp"
#include "screens/look_parts.hpp"
#include "screens/parts/pick_drawing.hpp"
#include "screens/question_screen.hpp"
#include "screens/words.hpp"

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

// The bars, and the teeth of the one that was tapped.
class PickExtra final : public ExtraPart {
 public:
  void draw(Ui& ui, const records::Solved& solved, const std::vector<records::FormField>&,
            const Edits& edits) override {
    const auto* const r = solved.result_as<gear_pick::Result>();
    const auto* const in = solved.input_as<gear_pick::Input>();
    if (!r || !in) return;
    chosen_.resize(r->sets.size(), 0);
    for (std::size_t i = 0; i < r->sets.size(); ++i) {
      draw_bars(ui, *in, r->sets[i], i, edits.system);
      draw_pair(ui, *in, r->sets[i], chosen_[i], edits.system);
      ui.gap(12);
    }
  }

 private:
  void draw_bars(Ui& ui, const gear_pick::Input& in, const gear_pick::Set& set, std::size_t number, System system) {
    PickPlot plot = plot_of(in, set);
    plot.chosen = chosen_[number] = std::min(chosen_[number], plot.bars.size() - 1);
    const Pen pen = ui.pen(ui.theme().ground);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const Area area{at, {at.x + ui.width(), at.y + pick_height(pen, plot.bars.size())}};
    draw_pick(pen, area, plot, shown_in(system));
    ui.publish(Role::Drawing, "gear_pick drawing", area.min, area.max);
    for (std::size_t i = 0; i < plot.bars.size(); ++i) {
      const Area row = pick_row(pen, area, i);
      ImGui::SetCursorScreenPos(row.min);
      const std::string id = "bar " + std::to_string(number) + " " + std::to_string(i);
      if (ui.tappable(id, plot.bars[i].name, row, i == plot.chosen)) chosen_[number] = i;
    }
    ImGui::SetCursorScreenPos({at.x, area.max.y});
    ImGui::Dummy({area.width(), 0});
  }

  static void draw_pair(Ui& ui, const gear_pick::Input& in, const gear_pick::Set& set, std::size_t bar, System system) {
    const gear_pick::Candidate& c = set.ranked[bar];
    const std::size_t mesh = std::min<std::size_t>(c.tight_mesh, set.meshes.size() - 1);
    const auto pair = gear_pick::teeth(in, set, c, mesh);
    const std::string& name = in.meshes[static_cast<std::size_t>(set.meshes[mesh].mesh)].name;
    if (!pair) return ui.quiet(words::teeth_cannot_be_drawn(name));
    ui.quiet(words::teeth_as_chosen(name));
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImVec2 size{ui.width(), teeth_height(ui, ui.width())};
    const Area area{at, {at.x + size.x, at.y + size.y}};
    draw_teeth(ui.pen(ui.theme().ground), area, teeth_plot(*pair), shown_in(system));
    ui.publish(Role::Drawing, "gear_pick teeth", area.min, area.max);
    ImGui::Dummy(size);
  }

  std::vector<std::size_t> chosen_;  // bar of each set
};

}  // namespace

QuestionLook gear_pick_look() {
  QuestionLook look;
  look.kind = "gear_pick";
  look.scales = false;
  look.plan.front = {"meshes", "gears", "shafts"};
  look.extra = [] { return std::make_unique<PickExtra>(); };
  return look;
}

}  // namespace camside::screens
