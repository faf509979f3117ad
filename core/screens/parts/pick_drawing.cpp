#include "screens/parts/pick_drawing.hpp"

#include <algorithm>

#include "screens/parts/chart.hpp"

namespace camside::screens {

namespace {

float bar_step(const Pen& pen) {
  return std::max(2.75f * pen.body, 48.0f);
}

Chart pick_chart(const Pen& pen, const Area& area, const PickPlot& plot) {
  double low = 0.0;
  double high = plot.window_high ? plot.window_high->in_mm() : 0.0;
  for (const auto& bar : plot.bars) {
    low = std::min(low, bar.lowest.in_mm());
    high = std::max(high, bar.highest.in_mm());
  }
  if (high - low < 1e-6) high = low + 0.05;
  Chart chart{area, low - 0.04 * (high - low), high + 0.06 * (high - low), 0, 1};
  chart.frame.max.y -= 1.6f * pen.body;
  return chart;
}

void draw_window(const Pen& pen, const Chart& chart, const PickPlot& plot) {
  if (plot.window_low && plot.window_high) {
    const float a = chart.x(plot.window_low->in_mm());
    const float b = chart.x(plot.window_high->in_mm());
    pen.list->AddRectFilled({a, chart.frame.min.y}, {b, chart.frame.max.y}, faded(pen.ink.within, 0.16f));
    for (const float x : {a, b}) pen.line({x, chart.frame.min.y}, {x, chart.frame.max.y}, pen.ink.within);
  }
  const float zero = chart.x(0.0);
  pen.line({zero, chart.frame.min.y}, {zero, chart.frame.max.y}, pen.ink.outside);
}

void draw_bar(const Pen& pen, const Chart& chart, const PickBar& bar, float top, bool chosen) {
  const ImU32 colour = chosen ? pen.ink.accent : bar.fits ? pen.ink.text : pen.ink.quiet;
  const float y = top + 1.55f * pen.body;
  const float a = chart.x(bar.lowest.in_mm());
  const float b = std::max(a + pen.stroke, chart.x(bar.highest.in_mm()));
  pen.label(chart.frame, {chart.frame.min.x, top}, {0, 0}, bar.name, chosen ? pen.ink.text : pen.ink.quiet,
            pen.body * 0.9f);
  pen.list->AddRectFilled({a, y}, {b, y + 0.5f * pen.body}, colour, 0.2f * pen.body);
  if (!bar.fits) pen.cross({b + 0.7f * pen.body, y + 0.25f * pen.body}, 0.22f * pen.body, pen.ink.outside);
}

}  // namespace

float pick_height(const Pen& pen, std::size_t bars) {
  return bar_step(pen) * static_cast<float>(bars) + 2.0f * pen.body;
}

Area pick_row(const Pen& pen, const Area& area, std::size_t bar) {
  const float top = area.min.y + 0.2f * pen.body + static_cast<float>(bar) * bar_step(pen);
  return {{area.min.x, top}, {area.max.x, top + bar_step(pen)}};
}

void draw_pick(const Pen& pen, const Area& area, const PickPlot& plot, FunctionView<std::string(Length)> show) {
  const Chart chart = pick_chart(pen, area, plot);
  draw_window(pen, chart, plot);
  for (std::size_t i = 0; i < plot.bars.size(); ++i)
    draw_bar(pen, chart, plot.bars[i], pick_row(pen, area, i).min.y, i == plot.chosen);
  draw_x_tick(pen, chart, 0.0, "0");
  if (plot.window_low) draw_x_tick(pen, chart, plot.window_low->in_mm(), show(*plot.window_low));
  if (plot.window_high) draw_x_tick(pen, chart, plot.window_high->in_mm(), show(*plot.window_high));
}

}  // namespace camside::screens
