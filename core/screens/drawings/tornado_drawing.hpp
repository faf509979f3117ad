// What moves a sum: one bar for each answer or assumption from the least to the most it makes of the sum, widest on
// top, about the line of the sum as it is.
#pragma once

#include <string>
#include <vector>

#include "base/function_view.hpp"
#include "screens/widgets/pen.hpp"

namespace camside::screens {

struct TornadoBar {
  std::string name;  // "Answer: Is there metal glitter or plastic in the oil?"
  double low = 0;
  double high = 0;
};

struct TornadoPlot {
  std::vector<TornadoBar> bars;  // widest first
  double now = 0;
};

float tornado_height(const Pen& pen, const TornadoPlot& plot, float width);
void draw_tornado(const Pen& pen, const Area& area, const TornadoPlot& plot, FunctionView<std::string(double)> show);

}  // namespace camside::screens
