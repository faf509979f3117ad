// Gears to order: every combination as a bar in the window, best on top, one block for each set of meshes;
// a tap on a bar shows the teeth it gives.
#include <algorithm>
#include <optional>
#include <utility>

#include "calc/gear_pick/gear_pick.hpp"
#include "screens/bench/extra_part.hpp"
#include "screens/bench/look_parts.hpp"
#include "screens/bench/question_screen.hpp"
#include "screens/drawings/pick_drawing.hpp"
#include "screens/words.hpp"

namespace camside::screens {

namespace {

constexpr std::size_t most_bars = 7;

// Lash of a candidate where it is tightest, and the window it is judged by there.
PickBar bar_of(const gear_pick::Input& in, const gear_pick::Set& set, const gear_pick::Candidate& c) {
  PickBar bar;
  bar.name = gear_pick::choice_text(in, set, c);
  if (c.tight_state != set.best().tight_state) bar.name += ", " + std::string(word_of(c.tight_state));
  bar.fits = c.standing == gear_pick::Standing::Fits;
  const std::size_t mesh = std::min<std::size_t>(c.tight_mesh, set.meshes.size() - 1);
  const gear_pick::LashRange lash = set.lash(c, mesh, c.tight_state);
  bar.lowest = lash.low;
  bar.highest = lash.high;
  for (const gear_pick::Window& w : in.meshes[static_cast<std::size_t>(set.meshes[mesh].mesh)].windows) {
    if (w.state != c.tight_state) continue;
    bar.window_low = w.lowest;
    bar.window_high = w.highest;
  }
  return bar;
}

PickPlot plot_of(const gear_pick::Input& in, const gear_pick::Set& set) {
  PickPlot plot;
  for (std::size_t i = 0; i < std::min(most_bars, set.ranked.size()); ++i)
    plot.bars.push_back(bar_of(in, set, set.ranked[i]));
  return plot;
}

// One set of meshes as it is drawn: its bars, and the teeth of the one that was tapped. Worked out once, not per frame.
struct DrawnSet {
  PickPlot plot;
  std::string standing;            // why the one that was tapped fits or doesn't
  std::string mesh;                // whose teeth are shown
  std::optional<TeethPlot> teeth;  // none: can't be drawn
  Zoom bars_zoom{}, teeth_zoom{};
};

void show_teeth(DrawnSet& drawn, const gear_pick::Input& in, const gear_pick::Set& set, std::size_t bar) {
  const gear_pick::Candidate& c = set.ranked[bar];
  const std::size_t mesh = std::min<std::size_t>(c.tight_mesh, set.meshes.size() - 1);
  drawn.plot.chosen = bar;
  drawn.standing = drawn.plot.bars[bar].name + ": " + gear_pick::standing_text(in, set, c);
  drawn.mesh = in.meshes[static_cast<std::size_t>(set.meshes[mesh].mesh)].name;
  const auto pair = gear_pick::teeth(in, set, c, mesh);
  drawn.teeth = pair ? std::optional(teeth_plot(*pair)) : std::nullopt;
}

class PickExtra final : public ExtraPart {
 public:
  void draw(Ui& ui, const Solved& solved, const std::vector<records::FormField>&, const Edits& edits) override {
    const auto* const r = solved.result_as<gear_pick::Result>();
    const auto* const in = solved.input_as<gear_pick::Input>();
    if (!r || !in) return;
    if (version_ != edits.version) look_again(*in, *r);
    version_ = edits.version;
    for (std::size_t i = 0; i < drawn_.size(); ++i) {
      const std::optional<std::size_t> tapped = draw_bars(ui, drawn_[i], i, edits.system);
      if (tapped) show_teeth(drawn_[i], *in, r->sets[i], *tapped);
      draw_pair(ui, drawn_[i], i, edits.system);
      ui.gap(12);
    }
  }

 private:
  // The bar that was tapped stays chosen by its place, and what was enlarged stays so.
  void look_again(const gear_pick::Input& in, const gear_pick::Result& r) {
    const std::vector<DrawnSet> before = std::exchange(drawn_, {});
    for (std::size_t i = 0; i < r.sets.size(); ++i) {
      DrawnSet& drawn = drawn_.emplace_back();
      if (i < before.size()) drawn = before[i];
      drawn.plot = plot_of(in, r.sets[i]);
      const std::size_t chosen = i < before.size() ? before[i].plot.chosen : 0;
      show_teeth(drawn, in, r.sets[i], std::min(chosen, drawn.plot.bars.size() - 1));
    }
  }

  static std::optional<std::size_t> draw_bars(Ui& ui, DrawnSet& drawn, std::size_t number, System system) {
    const Pen pen = ui.pen(ui.theme().ground);
    const std::string id = "bars " + std::to_string(number);
    const ImVec2 size{ui.width(), pick_height(pen, drawn.plot.bars.size())};
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const Area frame{at, {at.x + size.x, at.y + size.y}};
    std::optional<std::size_t> tapped;
    draw_enlargeable(ui, drawn.bars_zoom, id, "gear_pick drawing", size, [&](const Area& area) {
      draw_pick(ui.pen(ui.theme().ground), area, drawn.plot, shown_in(system));
      tapped = tapped_bar(ui, drawn.plot, area, frame, number);
    });
    return tapped;
  }

  // Of an enlarged drawing only what is seen of a bar can be tapped.
  static std::optional<std::size_t> tapped_bar(Ui& ui, const PickPlot& plot, const Area& area, const Area& frame,
                                               std::size_t number) {
    std::optional<std::size_t> tapped;
    for (std::size_t i = 0; i < plot.bars.size(); ++i) {
      const Area row = pick_row(ui.pen(ui.theme().ground), area, i, plot.bars.size()).within(frame);
      if (row.height() < 1) continue;
      ImGui::SetCursorScreenPos(row.min);
      const std::string id = "bar " + std::to_string(number) + " " + std::to_string(i);
      if (ui.tappable(id, plot.bars[i].name, row, i == plot.chosen)) tapped = i;
    }
    return tapped;
  }

  static void draw_pair(Ui& ui, DrawnSet& drawn, std::size_t number, System system) {
    ui.text(drawn.standing);
    if (!drawn.teeth) return ui.quiet(words::teeth_cannot_be_drawn(drawn.mesh));
    ui.quiet(words::teeth_as_chosen(drawn.mesh));
    const ImVec2 size{ui.width(), teeth_height(ui, ui.width())};
    draw_enlargeable(
        ui, drawn.teeth_zoom, "teeth " + std::to_string(number), "gear_pick teeth", size,
        [&](const Area& area) { draw_teeth(ui.pen(ui.theme().ground), area, *drawn.teeth, shown_in(system)); });
  }

  int version_ = -1;
  std::vector<DrawnSet> drawn_;
};

}  // namespace

QuestionLook gear_pick_look();  // for looks.cpp

QuestionLook gear_pick_look() {
  QuestionLook look;
  look.kind = "gear_pick";
  look.scales = false;
  look.plan.front = {"meshes", "gears", "shafts"};
  look.extra = [] { return std::make_unique<PickExtra>(); };
  return look;
}

}  // namespace camside::screens
