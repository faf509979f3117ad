// What an input may not hold beyond the range of each field; for pushrod.cpp.
#pragma once

#include "calc/pushrod/pushrod.hpp"

namespace camside::pushrod {

// Ranges and everything else that stops an answer; empty when the input can be solved.
Findings refusals(const Input& in);

}  // namespace camside::pushrod
