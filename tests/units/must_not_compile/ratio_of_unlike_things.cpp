// The ratio of two unlike quantities is no plain number.
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const double turns = Length::mm(2.0) / ThreadPitch::mm(0.8);
#else
  const double turns = Length::mm(2.0) / Length::mm(0.8);
#endif
  (void)turns;
}
