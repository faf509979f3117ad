// A limit names where it comes from.
#include "findings/source.hpp"
#include "units/quantity.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const Limit<Length> most{Length::inches(0.003)};
#else
  const Limit<Length> most{Length::inches(0.003), Source::common_practice()};
#endif
  (void)most;
}
