#include "base/stable_sort.hpp"

#include <algorithm>
#include <numeric>

namespace camside {

std::vector<std::size_t> sorted_indices(std::size_t count, FunctionView<bool(std::size_t, std::size_t)> before) {
  std::vector<std::size_t> places(count);
  std::iota(places.begin(), places.end(), std::size_t{0});
  std::stable_sort(places.begin(), places.end(), before);
  return places;
}

}  // namespace camside
