// The files of examples/ as they stand in the program.
#pragma once

#include <string_view>
#include <vector>

namespace camside::records {

std::string_view example_file(std::string_view name);  // "runout_swing"; empty when there is none
std::vector<std::string_view> example_names();

}  // namespace camside::records
