#include "screens/drawings/runout_drawing.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace camside::screens {

namespace {

constexpr double pi = std::numbers::pi;

// How readings become radii: the mean lies on `middle`, and a reading above it stands further out.
struct Scale {
  ImVec2 centre;
  float middle = 0;  // radius of the mean reading
  double px_per_mm = 0;
  double mean_mm = 0;
  bool clockwise = false;

  float radius(double reading_mm) const { return middle + static_cast<float>((reading_mm - mean_mm) * px_per_mm); }
  // 0° at the top, as a mark on a shaft is looked at.
  ImVec2 at(double angle, float r) const {
    const double a = (clockwise ? angle : -angle) - pi / 2;
    return {centre.x + r * static_cast<float>(std::cos(a)), centre.y + r * static_cast<float>(std::sin(a))};
  }
};

double largest_departure_mm(const RunoutPlot& plot) {
  double most = 0.0;
  for (const auto& p : plot.points) most = std::max(most, std::abs(p.reading.in_mm() - plot.mean_mm));
  if (plot.swing) most = std::max(most, plot.swing->in_mm() / 2);
  if (plot.limit) most = std::max(most, plot.limit->in_mm() / 2);
  return most > 0 ? most : 0.01;
}

Scale scale_of(const Pen& pen, const Area& area, const RunoutPlot& plot) {
  const float outer = std::min(area.width(), area.height()) / 2 - 1.9f * pen.body;
  Scale s;
  s.centre = area.centre();
  s.middle = outer * 0.68f;
  s.px_per_mm = static_cast<double>(outer - s.middle) / (1.15 * largest_departure_mm(plot));
  s.mean_mm = plot.mean_mm;
  s.clockwise = plot.clockwise;
  return s;
}

void draw_limit_band(const Pen& pen, const Scale& s, const RunoutPlot& plot) {
  if (!plot.limit) return;
  const double half = plot.limit->in_mm() / 2;
  const float inner = std::max(4.0f, s.radius(s.mean_mm - half));
  const float outer = s.radius(s.mean_mm + half);
  pen.ring(s.centre, inner, outer, faded(pen.ink.within, 0.16f));
  pen.list->AddCircle(s.centre, inner, pen.ink.line, 96, pen.stroke * 0.75f);
  pen.list->AddCircle(s.centre, outer, pen.ink.line, 96, pen.stroke * 0.75f);
}

void draw_pass_line(const Pen& pen, const Scale& s, const RunoutPlot& plot) {
  if (!plot.pass_line || plot.pass_line->in_mm() <= 0) return;
  const double half = plot.pass_line->in_mm() / 2;
  pen.dashed_circle(s.centre, std::max(4.0f, s.radius(s.mean_mm - half)), pen.ink.within);
  pen.dashed_circle(s.centre, s.radius(s.mean_mm + half), pen.ink.within);
}

void draw_shaft(const Pen& pen, const Scale& s) {
  const float cross = s.middle * 0.08f;
  pen.line({s.centre.x - cross, s.centre.y}, {s.centre.x + cross, s.centre.y}, pen.ink.line);
  pen.line({s.centre.x, s.centre.y - cross}, {s.centre.x, s.centre.y + cross}, pen.ink.line);
}

void draw_clock(const Pen& pen, const Area& area, const Scale& s) {
  const float edge = std::min(area.width(), area.height()) / 2 - 0.8f * pen.body;
  for (int deg = 0; deg < 360; deg += 90) {
    const ImVec2 at = s.at(deg * pi / 180, edge);
    pen.write(at, {0.5f, 0.5f}, std::to_string(deg) + "°", pen.ink.quiet, pen.body * 0.85f);
  }
  for (int deg = 0; deg < 360; deg += 30)
    pen.line(s.at(deg * pi / 180, edge - 0.9f * pen.body), s.at(deg * pi / 180, edge - 1.2f * pen.body), pen.ink.line,
             pen.stroke * 0.5f);
}

void draw_curve(const Pen& pen, const Scale& s, const RunoutPlot& plot) {
  if (!plot.curve_mm) return;
  for (int i = 0; i <= 180; ++i) {
    const double a = 2 * pi * i / 180;
    pen.list->PathLineTo(s.at(a, std::max(2.0f, s.radius(plot.curve_mm(a)))));
  }
  pen.list->PathStroke(pen.ink.accent, 0, pen.stroke * 1.25f);
}

// In swing mode nothing is known between low and high: two circles, and an arrow from one to the other.
void draw_swing(const Pen& pen, const Scale& s, const RunoutPlot& plot) {
  if (plot.curve_mm || !plot.swing) return;
  const double half = plot.swing->in_mm() / 2;
  const float inner = std::max(2.0f, s.radius(s.mean_mm - half));
  const float outer = s.radius(s.mean_mm + half);
  pen.list->AddCircle(s.centre, inner, pen.ink.accent, 96, pen.stroke * 1.25f);
  pen.list->AddCircle(s.centre, outer, pen.ink.accent, 96, pen.stroke * 1.25f);
}

void draw_points(const Pen& pen, const Scale& s, const RunoutPlot& plot) {
  // Beyond a few hundred, single points say nothing that the curve does not.
  const std::size_t stride = std::max<std::size_t>(1, plot.points.size() / 360);
  for (std::size_t i = 0; i < plot.points.size(); i += stride) {
    const auto& p = plot.points[i];
    const ImVec2 at = s.at(p.at.in_rad(), std::max(2.0f, s.radius(p.reading.in_mm())));
    if (p.turn <= 1)
      pen.dot(at, pen.body * 0.3f, pen.ink.text);
    else
      pen.cross(at, pen.body * 0.28f, pen.ink.text);
  }
}

void draw_high_spot(const Pen& pen, const Area& area, const Scale& s, const RunoutPlot& plot) {
  if (!plot.high_spot) return;
  const double a = plot.high_spot->in_rad();
  const float tip = s.radius(plot.curve_mm ? plot.curve_mm(a) : s.mean_mm + (plot.swing ? plot.swing->in_mm() / 2 : 0));
  pen.arrow(s.at(a, s.middle * 0.2f), s.at(a, tip - 0.4f * pen.body), plot.verdict ? plot.verdict : pen.ink.accent);
  const float inside = std::min(area.width(), area.height()) / 2 - 1.9f * pen.body;  // of the degrees round the turn
  const Area free{{s.centre.x - inside, s.centre.y - inside}, {s.centre.x + inside, s.centre.y + inside}};
  const auto degrees = static_cast<int>(std::lround(plot.high_spot->in_deg())) % 360;
  const std::string text = "high spot " + std::to_string(degrees) + "°";
  pen.label(free, s.at(a, s.middle * 0.52f), {0.5f, 0.5f}, text, pen.ink.text,
            pen.size_within(free.width() - 0.5f * pen.body, text, pen.body * 0.9f));
}

// Legend and scale.
constexpr float legend_line = 1.35f;
float note_size(const Pen& pen) {
  return 0.85f * pen.body;
}

constexpr double css_px_per_mm = 96.0 / 25.4;

// A factor as people say it: 380, 2,300.
std::string two_digits(double factor) {
  const double step = std::pow(10.0, std::max(0.0, std::floor(std::log10(std::max(1.0, factor))) - 1.0));
  std::string digits = std::to_string(std::lround(factor / step) * std::lround(step));
  for (int at = static_cast<int>(digits.size()) - 3; at > 0; at -= 3) digits.insert(static_cast<std::size_t>(at), ",");
  return digits;
}

// A bar of known length beside the turn, so that the exaggeration is stated and can be checked.
void draw_scale_bar(const Pen& pen, const Area& area, const Scale& s, FunctionView<std::string(Length)> show) {
  const double step = nice_step(0.9 * static_cast<double>(s.middle) / s.px_per_mm, 2);
  const auto length = static_cast<float>(step * s.px_per_mm);
  const ImVec2 a{area.min.x + 2, area.max.y - 4};
  const ImVec2 b{a.x + length, a.y};
  pen.line(a, b, pen.ink.text);
  for (const ImVec2 end : {a, b}) pen.line({end.x, end.y - 4}, {end.x, end.y + 4}, pen.ink.text);
  const std::string bar = show(Length::mm(step));
  const std::string factor = "drawn " + two_digits(s.px_per_mm / css_px_per_mm) + " × life size";
  const float size = std::min(note_size(pen), pen.size_within(area.width() - pen.body, bar + factor));
  pen.write({a.x, a.y - 6}, {0, 1}, bar, pen.ink.text, size);
  pen.write({area.max.x, area.max.y}, {1, 1}, factor, pen.ink.quiet, size);
}

// Which ring is which, in the corner that the turn leaves free.
void draw_legend(const Pen& pen, const Area& area, const RunoutPlot& plot, FunctionView<std::string(Length)> show) {
  const float size = note_size(pen);
  float y = area.min.y + 0.5f * size;
  const auto entry = [&](const std::string& text, bool dashed, ImU32 ink) {
    const ImVec2 a{area.min.x, y};
    const ImVec2 b{area.min.x + 1.4f * size, y};
    dashed ? pen.dashed(a, b, ink, 5) : pen.line(a, b, ink);
    pen.write({b.x + 6, y}, {0, 0.5f}, text, pen.ink.quiet, size);
    y += legend_line * size;
  };
  if (plot.limit) entry("limit " + show(*plot.limit), false, pen.ink.line);
  if (plot.pass_line && plot.pass_line->in_mm() > 0) entry("passes " + show(*plot.pass_line), true, pen.ink.within);
}

// The corners hold the legend and the scale; where large words would reach the turn's own, the turn stands between
// them.
Area turn_of(const Pen& pen, const Area& area, const RunoutPlot& plot, FunctionView<std::string(Length)> show) {
  const float size = note_size(pen);
  const float free = area.width() / 2 - 1.2f * size;  // of a corner, beside the 0° and the 180°
  Area turn = area;
  const std::string longest = plot.limit ? "passes " + show(*plot.limit) : std::string();
  if (2 * size + pen.size_of(longest, size).x > free) turn.min.y += 2 * legend_line * size;
  if (pen.size_of("drawn 1,000 × life size", size).x > free) turn.max.y -= legend_line * size;
  return turn;
}

}  // namespace

void draw_runout(const Pen& pen, const Area& area, const RunoutPlot& plot, FunctionView<std::string(Length)> show) {
  const Area turn = turn_of(pen, area, plot, show);
  const Scale s = scale_of(pen, turn, plot);
  draw_limit_band(pen, s, plot);
  draw_pass_line(pen, s, plot);
  draw_shaft(pen, s);
  draw_clock(pen, turn, s);
  draw_curve(pen, s, plot);
  draw_swing(pen, s, plot);
  draw_points(pen, s, plot);
  draw_high_spot(pen, turn, s, plot);
  draw_scale_bar(pen, area, s, show);
  draw_legend(pen, area, plot, show);
}

}  // namespace camside::screens
