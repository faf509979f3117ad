// Probability plot: the share failed by a distance, on scales that make a Weibull curve a straight line, with the
// points of the parts that failed and the 95 % band.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/function_view.hpp"
#include "screens/widgets/pen.hpp"
#include "units/quantity.hpp"

namespace camside::screens {

struct LifePlot {
  struct Point {
    Distance distance;
    double share = 0;
  };
  struct Band {
    Distance distance;
    double share = 0;
    double low = 0;
    double high = 0;
  };
  std::vector<Point> points;
  std::vector<Band> band;               // from the shortest distance to the longest
  std::optional<Distance> come_so_far;  // of the part in question
};

void draw_life(const Pen& pen, const Area& area, const LifePlot& plot, FunctionView<std::string(Distance)> show);

}  // namespace camside::screens
