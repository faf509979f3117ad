// Inside of life.hpp: the figures and the working.
#pragma once

#include "calc/life/life.hpp"

namespace camside::life {

inline constexpr double beyond_any_odometer_km = 1e7;

void add_figures(const Input& in, Result& r);
void add_working(const Input& in, Result& r);

}  // namespace camside::life
