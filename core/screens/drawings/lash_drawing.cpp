#include "screens/drawings/lash_drawing.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "screens/drawings/chart.hpp"

namespace camside::screens {

namespace {

constexpr double two_turns = 4 * std::numbers::pi;

struct Span {
  double low = 0.0;  // 0 is always shown: no lash is what everything is measured against
  double high = 0.0;
  void take(double v) {
    low = std::min(low, v);
    high = std::max(high, v);
  }
};

Span lash_span(const LashPlot& plot) {
  Span s;
  for (const auto& p : plot.points) s.take(p.lash.in_mm());
  for (const auto& state : plot.states) {
    s.take(state.lowest.in_mm());
    s.take(state.highest.in_mm());
  }
  if (plot.window_high) s.take(plot.window_high->in_mm());
  if (s.high - s.low < 1e-6) s.high = s.low + 0.05;
  const double room = 0.12 * (s.high - s.low);
  return {s.low < 0 ? s.low - room : s.low, s.high + room};
}

void draw_window(const Pen& pen, const Chart& chart, const LashPlot& plot) {
  if (!plot.window_low || !plot.window_high) return;
  const double low = plot.window_low->in_mm();
  const double high = plot.window_high->in_mm();
  draw_band(pen, chart, low, high, faded(pen.ink.within, 0.16f));
  draw_level(pen, chart, low, pen.ink.within);
  draw_level(pen, chart, high, pen.ink.within);
}

void draw_no_lash(const Pen& pen, const Chart& chart) {
  if (chart.y0 < 0) draw_band(pen, chart, chart.y0, 0.0, faded(pen.ink.outside, 0.18f));
  draw_level(pen, chart, 0.0, pen.ink.outside);
}

void draw_turns(const Pen& pen, const Chart& chart) {
  for (int deg = 0; deg <= 720; deg += 180)
    draw_x_tick(pen, chart, deg * std::numbers::pi / 180, std::to_string(deg) + "°", 4);
  pen.dashed({chart.x(two_turns / 2), chart.frame.min.y}, {chart.x(two_turns / 2), chart.frame.max.y}, pen.ink.line, 4);
  for (const int turn : {1, 2}) {
    const float middle = chart.x(two_turns * (turn == 1 ? 0.25 : 0.75));
    pen.write({middle, chart.frame.max.y - 0.3f * pen.body}, {0.5f, 1.0f}, "turn " + std::to_string(turn),
              pen.ink.quiet, pen.body * 0.85f);
  }
}

// All names of the states are as large as lets them stand beside each other.
float state_size(const Pen& pen, const Chart& chart, const LashPlot& plot) {
  std::string all;
  for (const auto& state : plot.states) all += state.name + "    ";
  return pen.size_within(chart.frame.width(), all, pen.body * 0.8f);
}

// A temperature state moves the whole curve; its lowest is drawn as a dashed level with its name. All levels come
// before the first name, so that none is struck through. What the names cover is returned.
std::vector<Area> draw_states(const Pen& pen, const Chart& chart, const LashPlot& plot) {
  for (const auto& state : plot.states) draw_level(pen, chart, state.lowest.in_mm(), pen.ink.quiet, true);
  const float size = state_size(pen, chart, plot);
  std::vector<Area> covered;
  float x = chart.frame.min.x + 0.3f * size;
  for (const auto& state : plot.states) {
    const float width = pen.size_of(state.name, size).x;
    const float y = chart.y(state.lowest.in_mm());
    pen.label(chart.frame, {x, y}, {0.0f, 0.5f}, state.name, pen.ink.quiet, size);
    covered.push_back({{x, y - 0.7f * size}, {x + width, y + 0.7f * size}});
    x += width + size;
  }
  return covered;
}

void draw_readings(const Pen& pen, const Chart& chart, const LashPlot& plot) {
  if (plot.curve_mm) draw_function(pen, chart, plot.curve_mm, pen.ink.accent, pen.stroke * 1.4f);
  for (const auto& p : plot.points) pen.dot(chart.at(p.crank.in_rad(), p.lash.in_mm()), pen.body * 0.28f, pen.ink.text);
}

// How much further from the curve a label stands clear of what is covered; at most the height of the frame.
float clear_of(const std::vector<Area>& covered, const Area& label, float step, float most) {
  const auto hits = [&](float by) {
    return std::any_of(covered.begin(), covered.end(), [&](const Area& a) {
      return a.min.x < label.max.x && label.min.x < a.max.x && a.min.y < label.max.y + by && label.min.y + by < a.max.y;
    });
  };
  float by = 0;
  while (hits(by) && std::abs(by) < most) by += step;
  return by;
}

void draw_tight_spot(const Pen& pen, const Chart& chart, const LashPlot& plot, const std::vector<Area>& covered) {
  if (!plot.tight_at || !plot.curve_mm) return;
  const double at = plot.tight_at->in_rad();
  const ImVec2 tip = chart.at(at, plot.curve_mm(at));
  const bool low_in_frame = tip.y > chart.frame.centre().y;
  const float away = (low_in_frame ? -2.6f : 2.6f) * pen.body;
  const ImU32 colour = plot.verdict ? plot.verdict : pen.ink.accent;
  const float size = pen.size_within(chart.frame.width() - pen.body, plot.tight_text, pen.body * 0.9f);
  const ImVec2 box = pen.size_of(plot.tight_text, size);
  const float from =
      std::clamp(tip.x - box.x / 2, chart.frame.min.x, std::max(chart.frame.min.x, chart.frame.max.x - box.x));
  const float top = tip.y + away - (low_in_frame ? box.y : 0.0f);
  const float step = (low_in_frame ? -0.25f : 0.25f) * pen.body;
  const float y =
      tip.y + away + clear_of(covered, {{from, top}, {from + box.x, top + box.y}}, step, chart.frame.height());
  pen.arrow({tip.x, y}, {tip.x, tip.y + (low_in_frame ? -0.4f : 0.4f) * pen.body}, colour);
  pen.label(chart.frame, {tip.x, y}, {0.5f, low_in_frame ? 1.0f : 0.0f}, plot.tight_text, pen.ink.text, size);
}

}  // namespace

void draw_lash(const Pen& pen, const Area& area, const LashPlot& plot, FunctionView<std::string(Length)> show) {
  const Span span = lash_span(plot);
  const auto y_text = [&](double mm) { return show(Length::mm(mm)); };
  const Chart chart = make_chart(pen, area, 0.0, two_turns, span.low, span.high, y_text, plot.unit_mm);
  draw_window(pen, chart, plot);
  draw_y_grid(pen, chart, y_text);
  draw_no_lash(pen, chart);
  draw_turns(pen, chart);
  const std::vector<Area> covered = draw_states(pen, chart, plot);
  draw_readings(pen, chart, plot);
  draw_tight_spot(pen, chart, plot, covered);
}

}  // namespace camside::screens
