// A bare number is no length.
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const Length lash = 0.003;
#else
  const Length lash = Length::inches(0.003);
#endif
  (void)lash;
}
