#include "screens/drawings/chart.hpp"

#include <algorithm>
#include <cmath>

namespace camside::screens {

namespace {
template <class Each>
void each_step(double low, double high, double unit, int parts, Each each) {
  const double step = unit * nice_step((high - low) / unit, parts);
  for (double k = std::ceil(low / step); k * step <= high + 1e-9 * step; k += 1.0) each(k * step);
}
}  // namespace

Chart make_chart(const Pen& pen, const Area& area, double x0, double x1, double y0, double y1,
                 FunctionView<std::string(double)> y_text, double y_unit) {
  float widest = 0;
  each_step(y0, y1, y_unit, 4,
            [&](double y) { widest = std::max(widest, pen.size_of(y_text(y), pen.body * 0.85f).x); });
  Chart chart{area, x0, x1, y0, y1, y_unit};
  chart.frame.min.x += widest + 0.6f * pen.body;
  chart.frame.min.y += 0.5f * pen.body;
  chart.frame.max.x -= 0.6f * pen.body;
  chart.frame.max.y -= 1.6f * pen.body;
  return chart;
}

void draw_y_grid(const Pen& pen, const Chart& chart, FunctionView<std::string(double)> y_text, int parts) {
  each_step(chart.y0, chart.y1, chart.y_unit, parts, [&](double y) {
    const float py = chart.y(y);
    pen.line({chart.frame.min.x, py}, {chart.frame.max.x, py}, pen.ink.faint, 1.0f);
    pen.write({chart.frame.min.x - 0.4f * pen.body, py}, {1.0f, 0.5f}, y_text(y), pen.ink.quiet, pen.body * 0.85f);
  });
}

void draw_x_tick(const Pen& pen, const Chart& chart, double x, const std::string& text, int beside) {
  const float room = chart.frame.width() / static_cast<float>(beside) - 0.4f * pen.body;
  const float px = chart.x(x);
  pen.line({px, chart.frame.max.y}, {px, chart.frame.max.y + 0.3f * pen.body}, pen.ink.line);
  pen.write({px, chart.frame.max.y + 0.45f * pen.body}, {0.5f, 0.0f}, text, pen.ink.quiet,
            pen.size_within(room, text, pen.body * 0.85f));
}

void draw_band(const Pen& pen, const Chart& chart, double low, double high, ImU32 colour) {
  const float top = std::max(chart.frame.min.y, chart.y(high));
  const float bottom = std::min(chart.frame.max.y, chart.y(low));
  if (bottom > top) pen.list->AddRectFilled({chart.frame.min.x, top}, {chart.frame.max.x, bottom}, colour);
}

void draw_level(const Pen& pen, const Chart& chart, double y, ImU32 colour, bool dashed) {
  if (y < chart.y0 || y > chart.y1) return;
  const ImVec2 a{chart.frame.min.x, chart.y(y)};
  const ImVec2 b{chart.frame.max.x, chart.y(y)};
  if (dashed)
    pen.dashed(a, b, colour);
  else
    pen.line(a, b, colour);
}

void draw_function(const Pen& pen, const Chart& chart, FunctionView<double(double)> f, ImU32 colour, float width) {
  constexpr int steps = 180;
  for (int i = 0; i <= steps; ++i) {
    const double x = chart.x0 + (chart.x1 - chart.x0) * i / steps;
    pen.list->PathLineTo(chart.at(x, std::clamp(f(x), chart.y0, chart.y1)));
  }
  pen.list->PathStroke(colour, 0, width);
}

}  // namespace camside::screens
