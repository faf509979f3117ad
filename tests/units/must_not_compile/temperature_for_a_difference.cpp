// A temperature is no difference.
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const TemperatureDifference rise = Temperature::celsius(90.0);
#else
  const TemperatureDifference rise = Temperature::celsius(90.0) - Temperature::celsius(20.0);
#endif
  (void)rise;
}
