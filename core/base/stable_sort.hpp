// Sorting that leaves equals as they came. All of the program shares one sort, of indices instead of things, because a
// sort of its own for each type and order is a few thousand bytes of the page every time.
#pragma once

#include <cstddef>
#include <iterator>
#include <utility>
#include <vector>

#include "base/function_view.hpp"

namespace camside {

// The indices 0 … count − 1, the first in order first.
std::vector<std::size_t> sorted_indices(std::size_t count, FunctionView<bool(std::size_t, std::size_t)> before);

template <class Iterator, class Before>
void sort_stably(Iterator begin, Iterator end, const Before& before) {
  const auto count = static_cast<std::size_t>(end - begin);
  const auto thing = [&](std::size_t index) -> auto& {
    return begin[static_cast<std::ptrdiff_t>(index)];
  };
  std::vector<typename std::iterator_traits<Iterator>::value_type> ordered;
  ordered.reserve(count);
  for (const std::size_t index :
       sorted_indices(count, [&](std::size_t a, std::size_t b) { return before(thing(a), thing(b)); }))
    ordered.push_back(std::move(thing(index)));
  std::move(ordered.begin(), ordered.end(), begin);
}

}  // namespace camside
