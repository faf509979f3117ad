// The turn as it was read: readings as points round the shaft, the fitted curve through them, the band that the limit
// allows, the highest needle that would still pass with this dial, and the high spot with where to find it. Drawn from
// the same numbers that are judged; the radial scale is stated, the shaft's own size is not to scale.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/function_view.hpp"
#include "screens/widgets/pen.hpp"
#include "units/quantity.hpp"

namespace camside::screens {

struct RunoutPlot {
  struct Point {
    Angle at;
    Length reading;
    int turn = 1;
  };
  std::vector<Point> points;
  std::function<double(double)> curve_mm;  // fitted reading at an angle in rad; empty in swing mode
  double mean_mm = 0.0;                    // the circle's own level: a0, or half way between low and high
  std::optional<Length> limit;             // TIR
  std::optional<Length> pass_line;         // TIR
  std::optional<Length> swing;             // judged TIR when there are no stations
  std::optional<Angle> high_spot;
  ImU32 verdict = 0;       // colour of the verdict
  bool clockwise = false;  // the angle runs with the clock, as seen
};

// `show` writes a length in the user's unit; `step_text` the ring distance.
void draw_runout(const Pen& pen, const Area& area, const RunoutPlot& plot, FunctionView<std::string(Length)> show);

}  // namespace camside::screens
