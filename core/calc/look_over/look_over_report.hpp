// Inside of look_over.hpp: the figures and the working.
#pragma once

#include <string>

#include "calc/look_over/look_over.hpp"
#include "calc/look_over/look_over_model.hpp"

namespace camside::look_over {

// "30 % at 41,300 mi (66,466 km) (from memory), raised by: …, lowered by: …"
std::string chance_from(const Model& m, const Counted& c, const Input& in, const Evidence& evidence);

void add_figures(Result& r);
void add_working(const Input& in, Result& r);

}  // namespace camside::look_over
