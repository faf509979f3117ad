// Thickness over the distance: readings, the line they wear along, the least thickness, and the 95 % interval in which
// the line reaches it.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/function_view.hpp"
#include "screens/widgets/pen.hpp"
#include "units/quantity.hpp"

namespace camside::screens {

struct WearPlot {
  double unit_mm = 1;  // what the figures at the side count in: 25.4 for inches
  struct Point {
    Distance odometer;
    Length thickness;
  };
  std::vector<Point> points;
  Distance now;
  std::optional<Length> limit;
  std::function<double(double km)> line_mm;  // empty: no line
  std::optional<Distance> low;               // of the interval
  std::optional<Distance> crossing;
  std::optional<Distance> high;  // none beside a low: it has no end
};

void draw_wear(const Pen& pen, const Area& area, const WearPlot& plot, FunctionView<std::string(Length)> show,
               FunctionView<std::string(Distance)> show_distance);

}  // namespace camside::screens
