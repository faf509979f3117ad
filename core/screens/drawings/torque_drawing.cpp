#include "screens/drawings/torque_drawing.hpp"

#include <algorithm>
#include <cmath>

namespace camside::screens {

namespace {

struct Points {
  ImVec2 fastener;
  ImVec2 drive;
  ImVec2 grip;
};

// In the unit of the plot, the drive at the origin and the grip to the right; then fitted into the area.
Points fitted(const Area& area, const TorquePlot& plot) {
  const auto x = static_cast<float>(-plot.extension * std::cos(plot.angle_rad));
  const auto y = static_cast<float>(-plot.extension * std::sin(plot.angle_rad));
  const auto grip = static_cast<float>(plot.wrench);
  const float left = std::min(x, 0.0f);
  const float wide = std::max(grip, x) - left;
  const float scale = std::min(area.width() / wide, area.height() / std::max(std::abs(y), 0.01f));
  const float x0 = area.centre().x - scale * (left + 0.5f * wide);
  const float y0 = area.centre().y - 0.5f * scale * y;
  return {{x0 + scale * x, y0 + scale * y}, {x0, y0}, {x0 + scale * grip, y0}};
}

void draw_hexagon(const Pen& pen, ImVec2 at, float radius) {
  for (int i = 0; i < 6; ++i) {
    const auto corner = [&](int k) {
      const float t = 1.0471976f * static_cast<float>(k);
      return ImVec2{at.x + radius * std::cos(t), at.y + radius * std::sin(t)};
    };
    pen.line(corner(i), corner(i + 1), pen.ink.text);
  }
}

}  // namespace

void draw_torque(const Pen& pen, const Area& area, const TorquePlot& plot) {
  const float body = pen.body;
  const Area room{{area.min.x + 2.0f * body, area.min.y + 4.0f * body},
                  {area.max.x - 2.0f * body, area.max.y - 3.0f * body}};
  const Points p = fitted(room, plot);
  pen.line(p.drive, p.grip, pen.ink.line, 0.6f * body);
  pen.line({p.grip.x - 1.6f * body, p.grip.y}, p.grip, pen.ink.text, 0.9f * body);
  if (plot.extension > 0.0) pen.line(p.fastener, p.drive, pen.ink.accent, 0.6f * body);
  pen.dot(p.drive, 0.45f * body, pen.ink.text);
  draw_hexagon(pen, p.fastener, 0.7f * body);
  pen.arrow({p.grip.x, p.grip.y - 0.8f * body}, {p.grip.x, p.grip.y - 2.8f * body}, pen.ink.text);
  const ImVec2 middle{0.5f * (p.drive.x + p.grip.x), p.drive.y + 0.8f * body};
  pen.label(area, middle, {0.5f, 0}, plot.wrench_words, pen.ink.text);
  if (plot.extension > 0.0) {
    const ImVec2 between{0.5f * (p.fastener.x + p.drive.x), std::min(p.fastener.y, p.drive.y) - 1.0f * body};
    pen.label(area, between, {0.5f, 1}, plot.extension_words, pen.ink.accent);
  }
  const float size = pen.size_within(area.width() - body, plot.setting_words, 1.2f * body, pen.bold);
  pen.write({area.centre().x, area.min.y + 0.2f * body}, {0.5f, 0}, plot.setting_words, pen.ink.text, size, pen.bold);
}

}  // namespace camside::screens
