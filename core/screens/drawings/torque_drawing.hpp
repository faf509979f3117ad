// A torque wrench from above with its extension: the lever that the torque is made with.
#pragma once

#include <string>

#include "screens/widgets/pen.hpp"

namespace camside::screens {

struct TorquePlot {
  double wrench = 1.0;     // drive to grip mark, in any unit
  double extension = 0.0;  // drive to fastener, in the same; 0: none
  double angle_rad = 0.0;  // between them; 0: straight out
  std::string wrench_words;
  std::string extension_words;
  std::string setting_words;
};

void draw_torque(const Pen& pen, const Area& area, const TorquePlot& plot);

}  // namespace camside::screens
