// The road line of one item: from the last proof over now to the next look, in distance, with the part overdue in the
// colour of its state.
#pragma once

#include <optional>
#include <string>

#include "base/function_view.hpp"
#include "screens/widgets/pen.hpp"
#include "units/quantity.hpp"

namespace camside::screens {

struct RoadPlot {
  Distance from;  // odometer at the last proof, or 0
  bool proven = false;
  Distance now;
  std::optional<Distance> due;  // odometer at the next look
  ImU32 state = 0;              // colour of the state
};

float road_height(const Pen& pen);
void draw_road(const Pen& pen, const Area& area, const RoadPlot& plot, FunctionView<std::string(Distance)> show);

}  // namespace camside::screens
