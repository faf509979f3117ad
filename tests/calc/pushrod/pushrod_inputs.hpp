// Rod settings that several test programs start from.
#pragma once

#include "calc/pushrod/pushrod.hpp"

namespace camside::pushrod {

// A pumped-up lifter with 0.200 in of travel, 32 tpi, hexagon, 0.100 in wanted.
inline Input wet() {
  Input in;
  in.lifter_state = LifterState::Wet;
  in.pitch = ThreadPitch::threads_per_inch(32.0);
  in.travel = Length::inches(0.2);
  in.preload = Length::inches(0.1);
  return in;
}

inline Input dry() {
  Input in = wet();
  in.lifter_state = LifterState::Dry;
  return in;
}

inline Piece piece(double length_in, double ppm, double hot_c) {
  return {"", Length::inches(length_in), Expansion::ppm_per_kelvin(ppm), Temperature::celsius(hot_c)};
}

// A 9 in stack 120 K up and a steel rod of 10.5 in 80 K up, set at 20 °C.
inline Heat heat_of_stack(double stack_ppm, double rod_ppm) {
  Heat h;
  h.setting_temperature = Temperature::celsius(20.0);
  h.rod = piece(10.5, rod_ppm, 100.0);
  h.stack = {piece(9.0, stack_ppm, 140.0)};
  return h;
}

}  // namespace camside::pushrod
