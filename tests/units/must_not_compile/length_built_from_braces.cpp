// A bare number in braces is no length either.
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const Length lash{0.1};
#else
  const Length lash{Length::mm(0.1)};
#endif
  (void)lash;
}
