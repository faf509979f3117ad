#include "screens/drawings/pick_drawing.hpp"

#include <algorithm>

#include "screens/drawings/chart.hpp"

namespace camside::screens {

namespace {

float bar_step(const Pen& pen) {
  return std::max(2.75f * pen.body, 48.0f);
}

float axis_height(const Pen& pen) {
  return 1.6f * pen.body;
}

Chart pick_chart(const Pen& pen, const Area& area, const PickPlot& plot) {
  double low = 0.0;
  double high = 0.0;
  for (const auto& bar : plot.bars) {
    low = std::min(low, bar.lowest.in_mm());
    high = std::max({high, bar.highest.in_mm(), bar.window_high.value_or(Length{}).in_mm()});
  }
  if (high - low < 1e-6) high = low + 0.05;
  Chart chart{area, low - 0.04 * (high - low), high + 0.06 * (high - low), 0, 1};
  chart.frame.min.y += axis_height(pen);
  return chart;
}

Area track_of(const Pen& pen, const Chart& chart, const Area& row) {
  const float top = row.min.y + 1.35f * pen.body;
  return {{chart.frame.min.x, top}, {chart.frame.max.x, top + 0.95f * pen.body}};
}

// In each row anew and not behind the names, which stay on clear ground.
void draw_window(const Pen& pen, const Chart& chart, const PickBar& bar, const Area& track) {
  pen.line({track.min.x, track.centre().y}, {track.max.x, track.centre().y}, pen.ink.faint, 1.0f);
  if (bar.window_low && bar.window_high) {
    const float a = chart.x(bar.window_low->in_mm());
    const float b = chart.x(bar.window_high->in_mm());
    pen.list->AddRectFilled({a, track.min.y}, {b, track.max.y}, faded(pen.ink.within, 0.2f));
    for (const float x : {a, b}) pen.line({x, track.min.y}, {x, track.max.y}, pen.ink.within);
  }
  const float zero = chart.x(0.0);
  pen.line({zero, track.min.y}, {zero, track.max.y}, pen.ink.outside);
}

void draw_bar(const Pen& pen, const Chart& chart, const PickBar& bar, const Area& row, bool chosen) {
  const ImU32 colour = chosen ? pen.ink.accent : bar.fits ? pen.ink.text : pen.ink.quiet;
  const Area track = track_of(pen, chart, row);
  const float a = chart.x(bar.lowest.in_mm());
  const float b = std::max(a + pen.stroke, chart.x(bar.highest.in_mm()));
  ImFont* const font = chosen ? pen.bold : pen.words;
  pen.write({chart.frame.min.x, row.min.y}, {0, 0}, bar.name, bar.fits ? pen.ink.text : pen.ink.quiet,
            pen.size_within(chart.frame.width(), bar.name, 0, font), font);
  const float half = 0.25f * pen.body;
  pen.list->AddRectFilled({a, track.centre().y - half}, {b, track.centre().y + half}, colour, half);
  if (!bar.fits) pen.cross({b + 0.7f * pen.body, track.centre().y}, 0.22f * pen.body, pen.ink.outside);
}

// Above the bars, where it is read first: no lash, and from where to where it is wanted of the one chosen.
void draw_axis(const Pen& pen, const Chart& chart, const PickPlot& plot, FunctionView<std::string(Length)> show) {
  if (plot.bars.empty()) return;
  const PickBar& chosen = plot.bars[std::min(plot.chosen, plot.bars.size() - 1)];
  const float y = chart.frame.min.y - 0.4f * pen.body;
  const float size = 0.9f * pen.body;
  pen.write({chart.x(0.0), y}, {0.5f, 1}, "0", pen.ink.outside, size);
  if (!chosen.window_low || !chosen.window_high) return;
  const std::string wanted = show(*chosen.window_low) + " – " + show(*chosen.window_high);
  const float half = pen.size_of(wanted, size).x / 2;
  const float middle = (chart.x(chosen.window_low->in_mm()) + chart.x(chosen.window_high->in_mm())) / 2;
  const float most = chart.frame.max.x - half;
  const float x = std::min(std::max(middle, chart.x(0.0) + pen.body + half), most);
  pen.write({x, y}, {0.5f, 1}, wanted, pen.ink.within, size);
}

}  // namespace

float pick_height(const Pen& pen, std::size_t bars) {
  return axis_height(pen) + bar_step(pen) * static_cast<float>(bars);
}

Area pick_row(const Pen& pen, const Area& area, std::size_t bar, std::size_t bars) {
  const float step = (area.height() - axis_height(pen)) / static_cast<float>(bars);
  const float top = area.min.y + axis_height(pen) + static_cast<float>(bar) * step;
  return {{area.min.x, top}, {area.max.x, top + step}};
}

void draw_pick(const Pen& pen, const Area& area, const PickPlot& plot, FunctionView<std::string(Length)> show) {
  const Chart chart = pick_chart(pen, area, plot);
  draw_axis(pen, chart, plot, show);
  for (std::size_t i = 0; i < plot.bars.size(); ++i) {
    const Area row = pick_row(pen, area, i, plot.bars.size());
    draw_window(pen, chart, plot.bars[i], track_of(pen, chart, row));
    draw_bar(pen, chart, plot.bars[i], row, i == plot.chosen);
  }
}

}  // namespace camside::screens
