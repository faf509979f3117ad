// Figures and working of the setting of pushrods; for pushrod.cpp.
#pragma once

#include "calc/pushrod/pushrod.hpp"

namespace camside::pushrod {

void add_figures(const Input& in, const Result& r, Outcome& out);
void add_working(const Input& in, const Result& r, Outcome& out);

}  // namespace camside::pushrod
