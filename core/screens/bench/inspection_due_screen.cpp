// Due: the road line of each item from its last proof over now to the next look.
#include <algorithm>

#include "base/stable_sort.hpp"
#include "calc/inspection_due/inspection_due.hpp"
#include "screens/bench/look_parts.hpp"
#include "screens/bench/question_screen.hpp"
#include "screens/drawings/road_drawing.hpp"
#include "screens/widgets/due_mark.hpp"
#include "screens/widgets/shown.hpp"
#include "screens/words.hpp"
#include "units/format.hpp"

namespace camside::screens {

namespace {

using inspection_due::ItemResult;
using inspection_due::State;

std::string state_words(const ItemResult& item) {
  std::string text(inspection_due::word_of(item.state));
  if (!item.proof && item.state != State::NotKnown) text += words::no_proof_beside();
  if (item.next) text += " · " + format_date(*item.next);
  return text;
}

std::vector<const ItemResult*> by_urgency(const inspection_due::Result& r) {
  std::vector<const ItemResult*> items;
  for (const ItemResult& item : r.items) items.push_back(&item);
  sort_stably(items.begin(), items.end(), [](const ItemResult* a, const ItemResult* b) {
    return static_cast<int>(a->state) < static_cast<int>(b->state);
  });
  return items;
}

RoadPlot road_of(const Theme& theme, const inspection_due::Result& r, const ItemResult& item) {
  RoadPlot plot;
  plot.proven = item.proof;
  plot.state = colour_of(theme, item.state);
  if (item.distance) {
    plot.from = item.distance->start;
    plot.due = item.distance->due;
  }
  plot.now = r.ridden.value_or(plot.from);
  return plot;
}

float item_height(const Pen& pen, const ItemResult& item) {
  return 3.4f * pen.body + (item.distance ? road_height(pen) : 0.0f) + pen.body;
}

void draw_item(const Ui& ui, const Area& area, const inspection_due::Result& r, const ItemResult& item, System system) {
  const Pen pen = ui.pen(ui.theme().ground);
  const ImU32 colour = colour_of(ui.theme(), item.state);
  const float radius = 0.6f * pen.body;
  draw_verdict_mark(pen, {area.min.x + radius + 2, area.min.y + 1.5f * pen.body}, radius, shape_of(item.state), colour);
  const float left = area.min.x + 2 * radius + 14;
  const float room = area.max.x - left;
  const std::string state = state_words(item);
  pen.write({left, area.min.y + 0.2f * pen.body}, {0, 0}, item.name, pen.ink.text,
            pen.size_within(room, item.name, 1.1f * pen.body, pen.bold), pen.bold);
  pen.write({left, area.min.y + 1.6f * pen.body}, {0, 0}, state, colour, pen.size_within(room, state));
  if (!item.distance) return;
  const Area road{{area.min.x, area.min.y + 3.4f * pen.body}, area.max};
  draw_road(pen, road, road_of(ui.theme(), r, item),
            [system](Distance d) { return shown(Kind::Distance, d.base(), system); });
}

}  // namespace

QuestionLook inspection_due_look();  // for looks.cpp

QuestionLook inspection_due_look() {
  QuestionLook look;
  look.kind = "inspection_due";
  look.scales = false;
  look.plan.front = {"today", "engine", "log", "items"};
  look.drawing_height = [](const Ui& ui, const Solved& solved, float) {
    const auto* const r = solved.result_as<inspection_due::Result>();
    float height = 0;
    if (r)
      for (const ItemResult& item : r->items) height += item_height(ui.pen(ui.theme().ground), item);
    return height;
  };
  look.drawing = [](const Ui& ui, const Solved& solved, System system, const Area& area) {
    const auto* const r = solved.result_as<inspection_due::Result>();
    if (!r) return;
    float top = area.min.y;
    for (const ItemResult* item : by_urgency(*r)) {
      const float height = item_height(ui.pen(ui.theme().ground), *item);
      draw_item(ui, {{area.min.x, top}, {area.max.x, top + height}}, *r, *item, system);
      top += height;
    }
  };
  return look;
}

}  // namespace camside::screens
