// A length times a length is no length.
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const Length twice = Length::mm(2.0) * Length::mm(2.0);
#else
  const Length twice = Length::mm(2.0) * 2.0;
#endif
  (void)twice;
}
