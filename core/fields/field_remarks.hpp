// Numbers 200-299: fields common to all measurements.
#pragma once

#include <string>
#include <string_view>

#include "findings/finding.hpp"

namespace camside::remarks {

Finding out_of_range(std::string field, std::string_view label, const std::string& value, const std::string& range,
                     bool has_unit);                                                     // 200
Finding missing(std::string field, std::string_view label);                              // 201
Finding not_finite(std::string field, std::string_view label);                           // 202
Finding not_whole(std::string field, std::string_view label, const std::string& value);  // 203
Finding no_such_date(std::string field, std::string_view label);                         // 204
Finding more_not_listed();                                                               // 205

}  // namespace camside::remarks
