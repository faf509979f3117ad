// When a measurement was taken, as text: "2024-05-14T10:20:00-05:00", "…Z", without seconds, or the day alone.
// Standard: RFC 3339 (a profile of ISO 8601).
#pragma once

#include <string_view>

namespace camside::records {

bool is_iso_time(std::string_view text);  // also: does the day exist, are the hours and the offset possible?

}  // namespace camside::records
