#include "findings/outcome.hpp"

#include <algorithm>

namespace camside {

std::string_view word_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::Within:
      return "Within";
    case Verdict::Outside:
      return "Outside";
    case Verdict::NotProven:
      return "Not proven";
  }
  return "";
}

const Figure* Outcome::figure(std::string_view key) const {
  const auto it = std::find_if(figures.begin(), figures.end(), [&](const Figure& f) { return f.key == key; });
  return it == figures.end() ? nullptr : &*it;
}

}  // namespace camside
