#include "screens/drawings/wear_drawing.hpp"

#include <algorithm>

#include "screens/drawings/chart.hpp"

namespace camside::screens {

namespace {

struct Range {
  double low;
  double high;
  void take(double v) {
    low = std::min(low, v);
    high = std::max(high, v);
  }
  Range widened(double below, double above) const {
    const double span = std::max(high - low, 1e-6);
    return {low - below * span, high + above * span};
  }
};

Range distances_of(const WearPlot& plot) {
  Range r{plot.points.front().odometer.in_km(), plot.now.in_km()};
  for (const auto& p : plot.points) r.take(p.odometer.in_km());
  const double usual = std::max(r.high - r.low, 1000.0);
  // A far end of the interval would press everything else together: it then runs out of the picture.
  for (const auto& end : {plot.low, plot.crossing, plot.high})
    if (end) r.take(std::min(end->in_km(), r.high + 2 * usual));
  return r.widened(0.06, 0.08);
}

Range thicknesses_of(const WearPlot& plot) {
  const double first = plot.points.front().thickness.in_mm();
  Range r{first, first};
  for (const auto& p : plot.points) r.take(p.thickness.in_mm());
  if (plot.limit) r.take(plot.limit->in_mm());
  return r.widened(0.25, 0.15);
}

void draw_limit(const Pen& pen, const Chart& chart, const WearPlot& plot, const std::string& text) {
  if (!plot.limit) return;
  draw_band(pen, chart, chart.y0, plot.limit->in_mm(), faded(pen.ink.outside, 0.14f));
  draw_level(pen, chart, plot.limit->in_mm(), pen.ink.outside);
  pen.label(chart.frame, {chart.frame.min.x, chart.y(plot.limit->in_mm()) + 0.25f * pen.body}, {0, 0}, "least " + text,
            pen.ink.text, pen.body * 0.85f);
}

void draw_interval(const Pen& pen, const Chart& chart, const WearPlot& plot) {
  if (!plot.low || !plot.limit) return;
  const float y = chart.y(plot.limit->in_mm());
  const float a = std::max(chart.frame.min.x, chart.x(plot.low->in_km()));
  const float b = plot.high ? std::min(chart.frame.max.x, chart.x(plot.high->in_km())) : chart.frame.max.x;
  pen.line({a, y}, {b, y}, pen.ink.text, pen.stroke * 2.5f);
  pen.line({a, y - 0.5f * pen.body}, {a, y + 0.5f * pen.body}, pen.ink.text);
  if (plot.high && b < chart.frame.max.x) pen.line({b, y - 0.5f * pen.body}, {b, y + 0.5f * pen.body}, pen.ink.text);
}

void draw_now(const Pen& pen, const Chart& chart, const WearPlot& plot) {
  const float x = chart.x(plot.now.in_km());
  pen.dashed({x, chart.frame.min.y}, {x, chart.frame.max.y}, pen.ink.line, 4);
  pen.label(chart.frame, {x, chart.frame.min.y}, {0.5f, 0}, "now", pen.ink.quiet, pen.body * 0.85f);
}

}  // namespace

void draw_wear(const Pen& pen, const Area& area, const WearPlot& plot, FunctionView<std::string(Length)> show,
               FunctionView<std::string(Distance)> show_distance) {
  if (plot.points.empty()) return;
  const Range x = distances_of(plot);
  const Range y = thicknesses_of(plot);
  const auto y_text = [&](double mm) { return show(Length::mm(mm)); };
  const Chart chart = make_chart(pen, area, x.low, x.high, y.low, y.high, y_text, plot.unit_mm);
  draw_y_grid(pen, chart, y_text);
  draw_now(pen, chart, plot);
  draw_limit(pen, chart, plot, plot.limit ? show(*plot.limit) : std::string());
  if (plot.line_mm) draw_function(pen, chart, plot.line_mm, pen.ink.accent, pen.stroke * 1.4f);
  draw_interval(pen, chart, plot);
  for (const auto& p : plot.points)
    pen.dot(chart.at(p.odometer.in_km(), p.thickness.in_mm()), pen.body * 0.28f, pen.ink.text);
  draw_x_tick(pen, chart, plot.points.front().odometer.in_km(), show_distance(plot.points.front().odometer));
  const std::optional<Distance> end = plot.low ? plot.low : plot.crossing;
  if (end && chart.x(end->in_km()) <= chart.frame.max.x) draw_x_tick(pen, chart, end->in_km(), show_distance(*end));
}

}  // namespace camside::screens
