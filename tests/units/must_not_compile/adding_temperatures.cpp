// Two temperatures do not add.
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const auto sum = Temperature::celsius(20.0) + Temperature::celsius(30.0);
#else
  const auto sum = Temperature::celsius(20.0) + TemperatureDifference::kelvin(30.0);
#endif
  (void)sum;
}
