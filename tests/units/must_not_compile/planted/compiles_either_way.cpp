// A fault planted for the check itself: WRONG changes nothing that the compiler minds.
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  return Length::mm(1.0) > Length::inches(1.0) ? 1 : 0;
#else
  return 0;
#endif
}
