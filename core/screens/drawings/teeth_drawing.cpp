#include "screens/drawings/teeth_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

namespace camside::screens {

namespace {

constexpr double pi = std::numbers::pi;

double inv_at(const ToothedGear& g, double radius) {
  const double c = std::min(1.0, g.base_radius_mm / radius);
  const double alpha = std::acos(c);
  return std::tan(alpha) - alpha;
}

// Half of the angle that a tooth takes up at a radius: s_y/d_y = s_w/d_w + inv α_w − inv α_y.
double half_tooth(const ToothedGear& g, double radius) {
  const double at = std::max(radius, g.base_radius_mm);
  const double half = g.thickness_mm / (2 * g.pitch_radius_mm) + inv_at(g, g.pitch_radius_mm) - inv_at(g, at);
  return std::max(half, 0.0);
}

struct Mm {
  double x = 0, y = 0;
};

// One tooth's outline about the gear's own centre, the tooth's middle along `direction`: foot, flank, tip, flank, foot.
std::vector<Mm> tooth_outline(const ToothedGear& g, double direction) {
  constexpr int steps = 12;
  std::vector<Mm> out;
  const auto add = [&](double r, double a) {
    out.push_back({r * std::cos(direction + a), r * std::sin(direction + a)});
  };
  const auto arc = [&](double r, double from, double to) {
    for (int i = 0; i <= 4; ++i) add(r, from + (to - from) * i / 4);
  };
  const double foot = std::max(g.root_radius_mm, 0.0);
  const double start = std::max(g.base_radius_mm, foot);
  const double gap_edge = pi / g.teeth;
  const auto radius = [&](int i) { return start + (g.tip_radius_mm - start) * i / steps; };
  const double tip = half_tooth(g, g.tip_radius_mm);
  arc(foot, -gap_edge, -half_tooth(g, start));
  for (int i = 0; i <= steps; ++i) add(radius(i), -half_tooth(g, radius(i)));
  arc(g.tip_radius_mm, -tip, tip);
  for (int i = steps; i >= 0; --i) add(radius(i), half_tooth(g, radius(i)));
  arc(foot, half_tooth(g, start), gap_edge);
  return out;
}

// World: gear 1's centre is below the pitch point, gear 2's above; the pitch point is the origin, y upwards.
struct View {
  ImVec2 origin;
  double px_per_mm = 1;
  ImVec2 at(Mm p) const {
    return {origin.x + static_cast<float>(p.x * px_per_mm), origin.y - static_cast<float>(p.y * px_per_mm)};
  }
};

// Points that fall together would make the outline's corners spike.
void add_apart(std::vector<ImVec2>& path, ImVec2 p) {
  constexpr float least = 0.4F;
  if (path.empty() || std::hypot(p.x - path.back().x, p.y - path.back().y) > least) path.push_back(p);
}

void draw_gear(const Pen& pen, const View& view, const ToothedGear& g, Mm centre, double middle_direction,
               ImU32 colour) {
  const double pitch = 2 * pi / g.teeth;
  const int reach = std::min(4, g.teeth / 2 - 1);
  std::vector<ImVec2> path;
  for (int k = -reach; k <= reach; ++k)
    for (const Mm p : tooth_outline(g, middle_direction + k * pitch))
      add_apart(path, view.at({centre.x + p.x, centre.y + p.y}));
  std::vector<ImVec2> body(path.rbegin(), path.rend());  // Dear ImGui fills what is given clockwise
  body.push_back(view.at(centre));
  pen.list->AddConcavePolyFilled(body.data(), static_cast<int>(body.size()), faded(colour, 0.14F));
  pen.list->AddPolyline(path.data(), static_cast<int>(path.size()), colour, 0, pen.stroke * 1.2F);
}

void draw_pitch_line(const Pen& pen, const View& view, const Area& area) {
  pen.dashed({area.min.x, view.origin.y}, {area.max.x, view.origin.y}, pen.ink.faint, 5);
}

// Both gears with gear 2 turned until its flank touches: the whole lash then stands on the other side, `widened` times.
void draw_mesh(const Pen& pen, const View& view, const TeethPlot& plot, double widened) {
  const ToothedGear& g1 = plot.gear1;
  ToothedGear g2 = plot.gear2;
  const double shown = plot.lash_mm * widened;
  g2.thickness_mm -= plot.lash_mm * (widened - 1);
  // Tooth 1 stands half its thickness left of the pitch point; gear 2's tooth on its right touches it there.
  const double d1 = pi / 2 + g1.thickness_mm / (2 * g1.pitch_radius_mm);
  const double d2 = -pi / 2 + (g2.thickness_mm / 2) / g2.pitch_radius_mm;
  draw_gear(pen, view, g1, {0, -g1.pitch_radius_mm}, d1, pen.ink.text);
  draw_gear(pen, view, g2, {0, plot.centre_distance_mm - g1.pitch_radius_mm}, d2, pen.ink.accent);
  const float far = static_cast<float>((g2.thickness_mm + shown / 2) * view.px_per_mm);
  if (shown * view.px_per_mm > 3)
    pen.list->AddCircle({view.origin.x + far, view.origin.y}, static_cast<float>(shown * view.px_per_mm),
                        pen.ink.not_proven, 0, pen.stroke);
}

// Enough magnification that the gap is a fifth of a tooth, in steps people can say: 5, 10, 20, 50 …
double widening(const TeethPlot& plot) {
  if (!(plot.lash_mm > 0)) return 1;
  const double wanted = 0.2 * plot.gear2.thickness_mm / plot.lash_mm;
  double best = 1;
  for (const double step : {2.0, 5.0, 10.0, 20.0, 50.0, 100.0})
    if (step <= wanted) best = step;
  return best;
}

}  // namespace

void draw_teeth(const Pen& pen, const Area& area, const TeethPlot& plot, FunctionView<std::string(Length)> show) {
  if (plot.gear1.teeth < 4 || plot.gear2.teeth < 4) return;
  const double depth = plot.gear1.tip_radius_mm - plot.gear1.root_radius_mm;
  View view;
  view.origin = {area.centre().x, area.centre().y - 0.4f * pen.body};
  view.px_per_mm = (static_cast<double>(area.height()) - 2.6 * static_cast<double>(pen.body)) / (depth * 2.1);
  const double widened = widening(plot);
  pen.list->PushClipRect(area.min, {area.max.x, area.max.y - 1.5f * pen.body}, true);
  draw_pitch_line(pen, view, area);
  draw_mesh(pen, view, plot, widened);
  pen.list->PopClipRect();
  const std::string factor = widened > 1.0 ? fmt::format(", gap drawn {:g} times wider", widened) : ", drawn true";
  const std::string caption = "lash " + show(Length::mm(plot.lash_mm)) + factor;
  pen.write({area.centre().x, area.max.y}, {0.5f, 1.0f}, caption, pen.ink.quiet,
            pen.size_within(area.width(), caption, pen.body * 0.85f));
}

}  // namespace camside::screens
