// Adding a length and an angle.
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const auto sum = Length::mm(1.0) + Angle::deg(2.0);
#else
  const auto sum = Length::mm(1.0) + Length::mm(2.0);
#endif
  (void)sum;
}
