// Numbers 1930-1936: slips in lists of data that no range can tell, wherever such a list stands.
#pragma once

#include <string>
#include <string_view>

#include "findings/finding.hpp"

namespace camside::remarks {

Finding id_twice(std::string field, std::string_view id);                                // 1930
Finding names_nothing(std::string field, std::string_view what, std::string_view name);  // 1931
Finding costs_out_of_order(std::string field);                                           // 1932
Finding no_chances(std::string field);                                                   // 1933
Finding distances_not_rising(std::string field);                                         // 1934
Finding chances_falling(std::string field);                                              // 1935
Finding years_backwards(std::string field, int first, int last);                         // 1936

}  // namespace camside::remarks
