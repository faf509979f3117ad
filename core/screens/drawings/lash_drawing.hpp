// Lash over two crank turns against its window: readings, the fitted curve, the window, the other temperatures as
// further lines, and the tight spot named by tooth and crank angle.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/function_view.hpp"
#include "screens/widgets/pen.hpp"
#include "units/quantity.hpp"

namespace camside::screens {

struct LashPlot {
  double unit_mm = 1;  // what the figures at the side count in: 25.4 for inches
  struct Point {
    Angle crank;  // 0 to 720°
    Length lash;
  };
  struct State {
    std::string name;  // "warm-up"
    Length lowest;
    Length highest;
  };
  std::vector<Point> points;
  std::function<double(double)> curve_mm;  // lash at a crank angle in rad
  std::optional<Length> window_low;
  std::optional<Length> window_high;
  std::vector<State> states;
  std::optional<Angle> tight_at;
  std::string tight_text;  // "tight: tooth 17, 290° of turn 2"
  ImU32 verdict = 0;
};

void draw_lash(const Pen& pen, const Area& area, const LashPlot& plot, FunctionView<std::string(Length)> show);

}  // namespace camside::screens
