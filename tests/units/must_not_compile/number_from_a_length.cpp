// A length is no bare number.
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const double lash_mm = Length::mm(0.1);
#else
  const double lash_mm = Length::mm(0.1).in_mm();
#endif
  (void)lash_mm;
}
