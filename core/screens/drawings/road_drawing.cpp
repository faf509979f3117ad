#include "screens/drawings/road_drawing.hpp"

#include <algorithm>

namespace camside::screens {

namespace {

// Distances along the line; the further of now and due is the right end.
struct Road {
  float left = 0, right = 0, y = 0;
  double from = 0, to = 1;
  float x(double km) const {
    const double part = std::clamp((km - from) / (to - from), 0.0, 1.0);
    return left + static_cast<float>(part) * (right - left);
  }
};

Road road_of(const Pen& pen, const Area& area, const RoadPlot& plot) {
  const double end = std::max(plot.now.in_km(), plot.due ? plot.due->in_km() : 0.0);
  Road road{area.min.x + 0.5f * pen.body, area.max.x - 0.5f * pen.body, area.min.y + 2.0f * pen.body, plot.from.in_km(),
            std::max(end, plot.from.in_km() + 1.0)};
  return road;
}

void write_at(const Pen& pen, const Area& area, float x, float y, float anchor_y, const std::string& text,
              ImU32 colour) {
  const float anchor_x = std::clamp((x - area.min.x) / std::max(1.0f, area.width()), 0.0f, 1.0f);
  pen.write({x, y}, {anchor_x, anchor_y}, text, colour, pen.body * 0.85f);
}

}  // namespace

float road_height(const Pen& pen) {
  return 4.2f * pen.body;
}

void draw_road(const Pen& pen, const Area& area, const RoadPlot& plot, FunctionView<std::string(Distance)> show) {
  const Road road = road_of(pen, area, plot);
  const float thick = 0.5f * pen.body;
  const float now = road.x(plot.now.in_km());
  pen.line({road.left, road.y}, {road.right, road.y}, pen.ink.line, thick);
  pen.line({road.left, road.y}, {now, road.y}, pen.ink.text, thick);
  if (plot.due) {
    const float due = road.x(plot.due->in_km());
    if (now > due) pen.line({due, road.y}, {now, road.y}, plot.state, thick);
    pen.line({due, road.y - pen.body}, {due, road.y + pen.body}, plot.state, pen.stroke * 1.5f);
    write_at(pen, area, due, road.y + 1.1f * pen.body, 0.0f, "look " + show(*plot.due), pen.ink.text);
  }
  if (plot.proven)
    pen.dot({road.left, road.y}, 0.4f * pen.body, pen.ink.text);
  else
    pen.cross({road.left, road.y}, 0.35f * pen.body, pen.ink.not_proven);
  pen.dot({now, road.y}, 0.45f * pen.body, pen.ink.accent);
  write_at(pen, area, now, road.y - 0.8f * pen.body, 1.0f, "now " + show(plot.now), pen.ink.text);
}

}  // namespace camside::screens
