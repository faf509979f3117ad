// Figures and working of a torque. Part of torque.hpp.
#pragma once

#include "calc/torque/torque.hpp"

namespace camside::torque {

void report(const Input& in, Result& r);

}  // namespace camside::torque
