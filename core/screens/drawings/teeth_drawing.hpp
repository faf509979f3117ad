// The mesh at the pitch point: true involute flanks of both gears, drawn from their base circles and thicknesses, with
// the lash gap as it is. Real lash is too small to see, so a second drawing magnifies the gap; its factor is stated.
#pragma once

#include <string>

#include "base/function_view.hpp"
#include "screens/widgets/pen.hpp"
#include "units/quantity.hpp"

namespace camside::screens {

// One gear as the drawing needs it. Angles and radii in the transverse plane.
struct ToothedGear {
  int teeth = 0;
  double base_radius_mm = 0;
  double pitch_radius_mm = 0;  // operating
  double tip_radius_mm = 0;
  double root_radius_mm = 0;
  double thickness_mm = 0;  // of a tooth at the operating pitch circle
};

struct TeethPlot {
  ToothedGear gear1;
  ToothedGear gear2;
  double centre_distance_mm = 0;
  double lash_mm = 0;  // circumferential, at the operating circles; negative: the teeth would cut into one another
};

void draw_teeth(const Pen& pen, const Area& area, const TeethPlot& plot, FunctionView<std::string(Length)> show);

}  // namespace camside::screens
