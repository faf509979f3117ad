#include "screens/drawings/pushrod_drawing.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace camside::screens {

namespace {

constexpr double pi = std::numbers::pi;

float adjuster_height(const Pen& pen) {
  return 10.5f * pen.body;
}
float rods_height(const Pen& pen) {
  return 8.5f * pen.body;
}
float lock_height(const Pen& pen) {
  return 3.0f * pen.body;
}

// Flat 1 faces up; the others follow clockwise.
ImVec2 on_circle(ImVec2 c, float r, double turns_clockwise) {
  const double a = 2 * pi * turns_clockwise - pi / 2;
  return {c.x + r * static_cast<float>(std::cos(a)), c.y + r * static_cast<float>(std::sin(a))};
}

void draw_flats(const Pen& pen, ImVec2 c, float r, const PushrodPlot& plot) {
  const int n = std::max(2, plot.flats_per_turn);
  std::vector<ImVec2> corners;
  corners.reserve(static_cast<std::size_t>(n));
  for (int i = 0; i < n; ++i) corners.push_back(on_circle(c, r, (i - 0.5) / n));
  pen.list->AddConvexPolyFilled(corners.data(), n, pen.ink.faint);
  pen.list->AddPolyline(corners.data(), n, pen.ink.line, ImDrawFlags_Closed, pen.stroke);
  pen.list->AddCircle(c, 0.34f * r, pen.ink.line, 0, pen.stroke);
  if (n > 12) return;
  for (int i = 0; i < n; ++i)
    pen.write(on_circle(c, 0.68f * r, static_cast<double>(i) / n), {0.5f, 0.5f}, std::to_string(i + 1),
              i == 0 ? pen.ink.text : pen.ink.quiet, pen.body, i == 0 ? pen.bold : pen.words);
}

// From flat 1 the way it is turned, to where its mark stands after the flats beyond whole turns.
void draw_way(const Pen& pen, ImVec2 c, float r, const PushrodPlot& plot) {
  if (!plot.clockwise) return;
  const double sign = *plot.clockwise ? 1 : -1;
  const double turned = plot.end_flat == 0 ? 0.9 : static_cast<double>(plot.end_flat) / plot.flats_per_turn;
  const double last = turned - 0.03;
  constexpr int pieces = 48;
  for (int i = 0; i <= pieces; ++i) pen.list->PathLineTo(on_circle(c, r, sign * last * i / pieces));
  pen.list->PathStroke(pen.ink.accent, 0, pen.stroke * 1.6f);
  pen.arrow(on_circle(c, r, sign * (last - 0.02)), on_circle(c, r, sign * turned), pen.ink.accent, 0.7f * pen.body);
  if (plot.end_flat > 0) pen.dot(on_circle(c, r, sign * turned), 0.22f * pen.body, pen.ink.accent);
}

void draw_adjuster(const Pen& pen, const Area& area, const PushrodPlot& plot) {
  const float r = 3.3f * pen.body;
  const ImVec2 c{area.centre().x, area.min.y + r + 1.4f * pen.body};
  draw_flats(pen, c, r, plot);
  draw_way(pen, c, r + 0.8f * pen.body, plot);
  pen.write({area.centre().x, area.max.y - 0.2f * pen.body}, {0.5f, 1.0f}, plot.turn_words, pen.ink.text,
            pen.size_within(area.width(), plot.turn_words));
}

ImU32 colour_of(const Pen& pen, RodMark mark) {
  switch (mark) {
    case RodMark::Waiting:
    case RodMark::CheckNow:
      return pen.ink.not_proven;
    case RodMark::Trouble:
      return pen.ink.outside;
    case RodMark::Free:
      return pen.ink.within;
    case RodMark::Idle:
      break;
  }
  return pen.ink.line;
}

// A shape for each state, so that the colour is never alone: ring, ring half filled, diamond, cross, tick.
void draw_mark(const Pen& pen, ImVec2 c, float r, RodMark mark) {
  const ImU32 ink = colour_of(pen, mark);
  const float w = pen.stroke * 1.3f;
  if (mark == RodMark::CheckNow) {
    pen.list->AddQuad({c.x, c.y - r}, {c.x + r, c.y}, {c.x, c.y + r}, {c.x - r, c.y}, ink, w);
    return;
  }
  if (mark == RodMark::Trouble) {
    pen.list->AddRect({c.x - r, c.y - r}, {c.x + r, c.y + r}, ink, 2, 0, w);
    return pen.cross(c, 0.5f * r, ink);
  }
  pen.list->AddCircle(c, r, ink, 0, w);
  if (mark == RodMark::Waiting) {
    pen.list->PathArcTo(c, 0.7f * r, 0, static_cast<float>(pi));
    pen.list->PathFillConvex(ink);
  } else if (mark == RodMark::Free) {
    const ImVec2 tick[3] = {
        {c.x - 0.45f * r, c.y}, {c.x - 0.1f * r, c.y + 0.4f * r}, {c.x + 0.5f * r, c.y - 0.35f * r}};
    pen.list->AddPolyline(tick, 3, ink, 0, w);
  }
}

void draw_rod(const Pen& pen, const Area& area, const PushrodPlot::Rod& rod) {
  const float x = area.centre().x;
  const float low = area.min.y + 4.2f * pen.body;
  const float half = 0.55f * pen.body;
  pen.line({x, area.min.y + 0.2f * pen.body}, {x, low - 1.6f * pen.body}, pen.ink.line, pen.stroke * 1.6f);
  pen.list->AddRect({x - half, low - 1.6f * pen.body}, {x + half, low}, pen.ink.line, 3, 0, pen.stroke);
  draw_mark(pen, {x, low + 0.9f * pen.body}, 0.62f * pen.body, rod.mark);
  const auto write = [&](float y, const std::string& text, ImU32 ink) {
    pen.write({x, y}, {0.5f, 0.0f}, text, ink, pen.size_within(area.width() - 6, text, 0.85f * pen.body));
  };
  write(low + 1.9f * pen.body, rod.name, pen.ink.text);
  write(low + 3.0f * pen.body, rod.word, rod.mark == RodMark::Idle ? pen.ink.quiet : colour_of(pen, rod.mark));
}

void draw_lock(const Pen& pen, const Area& area, const PushrodPlot& plot) {
  if (!plot.locked) return;
  pen.list->AddRectFilled(area.min, area.max, faded(pen.ink.outside, 0.18f), 10);
  pen.list->AddRect(area.min, area.max, pen.ink.outside, 10, 0, pen.stroke);
  const float r = 0.55f * pen.body;
  const ImVec2 c{area.min.x + 1.5f * pen.body, area.centre().y + 0.2f * pen.body};
  pen.list->AddRectFilled({c.x - r, c.y - 0.5f * r}, {c.x + r, c.y + r}, pen.ink.outside, 2);
  pen.list->PathArcTo({c.x, c.y - 0.5f * r}, 0.6f * r, static_cast<float>(pi), static_cast<float>(2 * pi));
  pen.list->PathStroke(pen.ink.outside, 0, pen.stroke);
  float size = 1.1f * pen.body;
  const float room = area.width() - 3.4f * pen.body;
  while (pen.size_of(plot.lock_words, size, pen.bold).x > room && size > 11) size *= 0.95f;
  pen.write({area.min.x + 2.8f * pen.body, area.centre().y}, {0.0f, 0.5f}, plot.lock_words, pen.ink.text, size,
            pen.bold);
}

}  // namespace

float pushrod_height(const Pen& pen, const PushrodPlot& plot, float /*width*/) {
  return (plot.adjustable ? adjuster_height(pen) : 0) + (plot.locked ? lock_height(pen) : 0) + rods_height(pen);
}

void draw_pushrods(const Pen& pen, const Area& area, const PushrodPlot& plot) {
  float top = area.min.y;
  if (plot.locked) {
    draw_lock(pen, {{area.min.x, top}, {area.max.x, top + lock_height(pen) - 0.5f * pen.body}}, plot);
    top += lock_height(pen);
  }
  if (plot.adjustable) {
    draw_adjuster(pen, {{area.min.x, top}, {area.max.x, top + adjuster_height(pen)}}, plot);
    top += adjuster_height(pen);
  }
  const float each = area.width() / 4;
  for (std::size_t i = 0; i < plot.rods.size(); ++i) {
    const float left = area.min.x + each * static_cast<float>(i);
    draw_rod(pen, {{left, top + 0.5f * pen.body}, {left + each, area.max.y}}, plot.rods[i]);
  }
}

}  // namespace camside::screens
