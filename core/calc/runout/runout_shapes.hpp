// The two ways of reading, each to its shape. Part of runout_readings.hpp.
#pragma once

#include <string>
#include <tl/expected.hpp>

#include "calc/runout/runout_readings.hpp"

namespace camside::runout {

tl::expected<Shape, Findings> shape_of_swings(const Readings& in, const Setup& setup, const std::string& path);
tl::expected<Shape, Findings> shape_of_stations(const Readings& in, const Setup& setup, const std::string& path);

}  // namespace camside::runout
