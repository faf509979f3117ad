// Kilometres on the clock are no millimetres at the bench.
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const Length travel = Distance::km(5.0);
#else
  const Length travel = Length::mm(5.0);
#endif
  (void)travel;
}
