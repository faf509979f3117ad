#include "screens/drawings/life_drawing.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "screens/drawings/chart.hpp"

namespace camside::screens {

namespace {

// ln(−ln(1 − share)), against which ln distance is a straight line.
double scale_of(double share) {
  return std::log(-std::log1p(-std::clamp(share, 1e-6, 1.0 - 1e-9)));
}

constexpr std::array shares{0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 0.9, 0.99};

std::string percent(double share) {
  return std::to_string(std::lround(share * 100)) + " %";
}

struct Ends {
  double low;
  double high;
};

Ends shares_of(const LifePlot& plot) {
  Ends e{0.02, 0.98};
  for (const auto& p : plot.points) e.low = std::min(e.low, 0.7 * p.share);
  return {scale_of(std::max(0.005, e.low)), scale_of(e.high)};
}

Ends distances_of(const LifePlot& plot) {
  Ends e{plot.band.front().distance.in_km(), plot.band.back().distance.in_km()};
  for (const auto& p : plot.points) {
    e.low = std::min(e.low, p.distance.in_km());
    e.high = std::max(e.high, p.distance.in_km());
  }
  return {std::log(e.low), std::log(e.high)};
}

Chart life_chart(const Pen& pen, const Area& area, const LifePlot& plot) {
  const Ends x = distances_of(plot);
  const Ends y = shares_of(plot);
  Chart chart{area, x.low, x.high, y.low, y.high};
  chart.frame.min.x += pen.size_of(percent(0.99), pen.body * 0.85f).x + 0.6f * pen.body;
  chart.frame.min.y += 0.5f * pen.body;
  chart.frame.max.x -= 1.2f * pen.body;
  chart.frame.max.y -= 1.6f * pen.body;
  return chart;
}

void draw_shares(const Pen& pen, const Chart& chart) {
  float last = chart.frame.max.y + 2 * pen.body;
  for (const double share : shares) {
    const double y = scale_of(share);
    const float at = chart.y(y);
    if (y < chart.y0 || y > chart.y1 || last - at < pen.body) continue;
    last = at;
    draw_level(pen, chart, y, pen.ink.faint);
    pen.write({chart.frame.min.x - 0.4f * pen.body, at}, {1.0f, 0.5f}, percent(share), pen.ink.quiet, pen.body * 0.85f);
  }
}

void draw_distances(const Pen& pen, const Chart& chart, FunctionView<std::string(Distance)> show) {
  for (const double part : {0.1, 0.5, 0.9}) {
    const double ln_km = chart.x0 + part * (chart.x1 - chart.x0);
    const double km = std::exp(ln_km);
    const double step = std::pow(10.0, std::floor(std::log10(km) - 1));
    const Distance round = Distance::miles(std::round(Distance::km(km).in_miles() / step) * step);
    draw_x_tick(pen, chart, std::log(round.in_km()), show(round));
  }
}

ImVec2 place(const Chart& chart, Distance distance, double share) {
  return chart.at(std::log(distance.in_km()), scale_of(share));
}

// What runs out of the frame is cut off, not laid along its edge.
void draw_curve(const Pen& pen, const Chart& chart, const LifePlot& plot) {
  std::vector<ImVec2> outline;
  for (const auto& b : plot.band) outline.push_back(place(chart, b.distance, b.high));
  for (auto b = plot.band.rbegin(); b != plot.band.rend(); ++b) outline.push_back(place(chart, b->distance, b->low));
  pen.list->PushClipRect(chart.frame.min, chart.frame.max, true);
  pen.list->AddConcavePolyFilled(outline.data(), static_cast<int>(outline.size()), faded(pen.ink.accent, 0.18f));
  for (const auto& b : plot.band) pen.list->PathLineTo(place(chart, b.distance, b.share));
  pen.list->PathStroke(pen.ink.accent, 0, pen.stroke * 1.4f);
  pen.list->PopClipRect();
}

}  // namespace

void draw_life(const Pen& pen, const Area& area, const LifePlot& plot, FunctionView<std::string(Distance)> show) {
  if (plot.band.size() < 2) return;
  const Chart chart = life_chart(pen, area, plot);
  draw_shares(pen, chart);
  draw_curve(pen, chart, plot);
  for (const auto& p : plot.points) pen.dot(place(chart, p.distance, p.share), pen.body * 0.28f, pen.ink.text);
  if (plot.come_so_far && plot.come_so_far->in_km() > std::exp(chart.x0)) {
    const float x = std::min(chart.frame.max.x, chart.x(std::log(plot.come_so_far->in_km())));
    pen.dashed({x, chart.frame.min.y}, {x, chart.frame.max.y}, pen.ink.line, 4);
    pen.label(chart.frame, {x, chart.frame.min.y}, {0.5f, 0}, "this part", pen.ink.quiet, pen.body * 0.85f);
  }
  draw_distances(pen, chart, show);
}

}  // namespace camside::screens
