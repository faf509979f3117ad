// Axes for the drawings that are curves: world to pixels, a few grid lines with their figures, bands and lines clipped
// to the frame.
#pragma once

#include <string>

#include "base/function_view.hpp"
#include "screens/widgets/pen.hpp"

namespace camside::screens {

struct Chart {
  Area frame;  // where the curves are, in pixels
  double x0 = 0, x1 = 1, y0 = 0, y1 = 1;
  double y_unit = 1;  // the grid's lines are round numbers of this: 25.4 for mm shown in inches

  float x(double v) const { return frame.min.x + static_cast<float>((v - x0) / (x1 - x0)) * frame.width(); }
  float y(double v) const { return frame.max.y - static_cast<float>((v - y0) / (y1 - y0)) * frame.height(); }
  ImVec2 at(double vx, double vy) const { return {x(vx), y(vy)}; }
};

// A frame inside `area` with room for the y figures (as wide as they are) at the left and the x figures below.
Chart make_chart(const Pen& pen, const Area& area, double x0, double x1, double y0, double y1,
                 FunctionView<std::string(double)> y_text, double y_unit = 1);

void draw_y_grid(const Pen& pen, const Chart& chart, FunctionView<std::string(double)> y_text, int parts = 4);
// `beside`: the share of the axis that the words may take is one of so many.
void draw_x_tick(const Pen& pen, const Chart& chart, double x, const std::string& text, int beside = 3);
void draw_band(const Pen& pen, const Chart& chart, double low, double high, ImU32 colour);
void draw_level(const Pen& pen, const Chart& chart, double y, ImU32 colour, bool dashed = false);
void draw_function(const Pen& pen, const Chart& chart, FunctionView<double(double)> f, ImU32 colour, float width);

}  // namespace camside::screens
