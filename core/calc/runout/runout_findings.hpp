// All that a runout gives to say, in the order in which it is told. Part of runout.hpp; the words themselves are in
// runout_remarks.hpp.
#pragma once

#include <string>

#include "calc/runout/runout.hpp"
#include "calc/runout/runout_readings.hpp"

namespace camside::runout {

Findings findings_of_setup(const Input& input);
// `path` stands before the fields: "" or "other_side.".
Findings findings_of_readings(const Readings& in, const Setup& setup, const Shape& shape, bool readings_checked,
                              const std::string& path);
Findings findings_of_uncertainty(const Setup& setup, const Uncertainty& u);
Findings findings_of_verdict(const Input& input, const Result& r);
Findings findings_of_other_side(const Input& input, const Shape& first, const Shape& other, const Result& r);
Findings findings_of_gear(const Input& input, const Result& r);

}  // namespace camside::runout
