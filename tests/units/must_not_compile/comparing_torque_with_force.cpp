// Comparing a torque with a force.
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const bool more = Torque::lbf_ft(1.0) > Force::newtons(1.0);
#else
  const bool more = Torque::lbf_ft(1.0) > Torque::newton_metres(1.0);
#endif
  (void)more;
}
