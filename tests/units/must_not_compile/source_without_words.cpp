// A source cannot be built without saying what it is.
#include "findings/source.hpp"

using namespace camside;

int main() {
#ifdef WRONG
  const Source source = Source::standard();
#else
  const Source source = Source::standard("ISO 14253-1:2017");
#endif
  (void)source.text();
}
