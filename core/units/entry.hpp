// What a typed text says exactly, before it is rounded to a double. For parse() and convert() only.
#pragma once

#include <string_view>
#include <tl/expected.hpp>

#include "units/exact.hpp"
#include "units/parse.hpp"

namespace camside::exact {

struct Entry {
  Ratio base;  // in the base unit of the kind; for angles typed in degrees, turns … still to be times π
  bool times_pi = false;
  const Unit* unit = nullptr;  // the first unit typed, or the default
  bool unit_typed = false;
};

tl::expected<Entry, ParseRefusal> read_entry(Kind kind, std::string_view text, const ParseOptions& options);

}  // namespace camside::exact
