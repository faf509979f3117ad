// The known name that was most likely meant by a mistyped one.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace camside::records {

// Fewest single-letter changes, at most a third of the letters (two for short names); empty when none is that near.
std::string_view nearest_name(std::string_view mistyped, std::span<const std::string_view> known);

std::string joined_names(std::span<const std::string_view> names);  // "runout, backlash, pushrod"

}  // namespace camside::records
