// Inside of wear.hpp: the figures and the working.
#pragma once

#include "calc/wear/wear.hpp"

namespace camside::wear {

// "no sooner proof than 47,300 mi (76,122 km)", with what the wording must not hide.
std::string forecast_text(const Result& r);
void add_figures(const Input& in, Result& r);
void add_working(const Input& in, double spread_mm, Result& r);

}  // namespace camside::wear
