// Every combination of gears as a bar from its lowest to its highest lash, each in the window wanted where it is
// tightest, best on top.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/function_view.hpp"
#include "screens/widgets/pen.hpp"
#include "units/quantity.hpp"

namespace camside::screens {

struct PickBar {
  std::string name;  // "+0.002 in rear gear, standard pinion"
  Length lowest;
  Length highest;
  std::optional<Length> window_low;
  std::optional<Length> window_high;
  bool fits = false;
};

struct PickPlot {
  std::vector<PickBar> bars;  // best first
  std::size_t chosen = 0;     // drawn in the accent colour
};

float pick_height(const Pen& pen, std::size_t bars);
Area pick_row(const Pen& pen, const Area& area, std::size_t bar,
              std::size_t bars);  // a bar with its name: what a finger may tap
void draw_pick(const Pen& pen, const Area& area, const PickPlot& plot, FunctionView<std::string(Length)> show);

}  // namespace camside::screens
