// Swapped arguments of a function.
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const auto arm = [](Length radius, Angle tilt) { return radius * tilt.in_rad(); };
  const Length swing = arm(Angle::deg(5.0), Length::mm(10.0));
#else
  const auto arm = [](Length radius, Angle tilt) { return radius * tilt.in_rad(); };
  const Length swing = arm(Length::mm(10.0), Angle::deg(5.0));
#endif
  (void)swing;
}
