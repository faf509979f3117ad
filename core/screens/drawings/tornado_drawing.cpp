#include "screens/drawings/tornado_drawing.hpp"

#include <algorithm>

#include "screens/widgets/ui.hpp"

namespace camside::screens {

namespace {

float bar_height(const Pen& pen) {
  return 0.9f * pen.body;
}
float figures_height(const Pen& pen) {
  return 1.2f * pen.body;
}

std::string name_lines(const Pen& pen, const TornadoBar& bar, float width) {
  return broken(pen.words, pen.body, bar.name, width);
}

float step(const Pen& pen, const TornadoBar& bar, float width) {
  return size_of(pen.words, pen.body, name_lines(pen, bar, width)).y + bar_height(pen) + figures_height(pen) +
         0.9f * pen.body;
}

// One scale for all bars.
struct Scale {
  double low;
  double high;
  Area area;

  float x(double v) const {
    return area.min.x + static_cast<float>((v - low) / std::max(1e-9, high - low)) * area.width();
  }
};

Scale scale_of(const TornadoPlot& plot, const Area& area) {
  Scale s{plot.now, plot.now, area};
  for (const TornadoBar& bar : plot.bars) {
    s.low = std::min(s.low, bar.low);
    s.high = std::max(s.high, bar.high);
  }
  return s;
}

// Its figures at the ends of the bar; where they would meet, the lower one at the left edge and the higher at the
// right.
void draw_ends(const Pen& pen, const Scale& s, const TornadoBar& bar, float y, FunctionView<std::string(double)> show) {
  const std::string low = show(bar.low);
  const std::string high = show(bar.high);
  const float size = 0.9f * pen.body;
  const float low_width = pen.size_of(low, size).x;
  const float high_width = pen.size_of(high, size).x;
  const float gap = 0.8f * pen.body;
  float left = std::min(s.x(bar.low), s.area.max.x - high_width - gap - low_width);
  left = std::max(left, s.area.min.x);
  const float right = std::clamp(s.x(bar.high), left + low_width + gap + high_width, s.area.max.x);
  pen.write({left, y}, {0, 0}, low, pen.ink.text, size);
  pen.write({right, y}, {1, 0}, high, pen.ink.text, size);
}

}  // namespace

float tornado_height(const Pen& pen, const TornadoPlot& plot, float width) {
  float height = 0.5f * pen.body;
  for (const TornadoBar& bar : plot.bars) height += step(pen, bar, width);
  return height;
}

void draw_tornado(const Pen& pen, const Area& area, const TornadoPlot& plot, FunctionView<std::string(double)> show) {
  const Scale s = scale_of(plot, area);
  float y = area.min.y;
  for (const TornadoBar& bar : plot.bars) {
    const std::string name = name_lines(pen, bar, area.width());
    write(*pen.list, pen.words, pen.body, {area.min.x, y}, pen.ink.quiet, name);
    const float top = y + size_of(pen.words, pen.body, name).y + 0.2f * pen.body;
    const float bottom = top + bar_height(pen);
    const float low = s.x(bar.low);
    const float now = s.x(plot.now);
    const float high = std::max(low + pen.stroke, s.x(bar.high));
    pen.list->AddRectFilled({low, top}, {std::max(low, now), bottom}, pen.ink.within, 2);
    pen.list->AddRectFilled({std::min(now, high), top}, {high, bottom}, pen.ink.outside, 2);
    pen.line({now, top - 0.15f * pen.body}, {now, bottom + 0.15f * pen.body}, pen.ink.text, pen.stroke * 1.5f);
    draw_ends(pen, s, bar, bottom + 0.1f * pen.body, show);
    y += step(pen, bar, area.width());
  }
}

}  // namespace camside::screens
