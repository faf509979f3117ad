// Inside of inspection_due.hpp: figures and working of the due list.
#pragma once

#include "calc/inspection_due/inspection_due.hpp"

namespace camside::inspection_due {

void add_report(const Input& in, const Result& r, Outcome& outcome);  // figures and working

}  // namespace camside::inspection_due
