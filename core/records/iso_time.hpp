// When a measurement was taken, as text: "2024-05-14T10:20:00-05:00", "…Z", without seconds, or the day alone.
// Standard: RFC 3339 (a profile of ISO 8601).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace camside::records {

bool is_iso_time(std::string_view text);  // also: does the day exist, are the hours and the offset possible?

// Milliseconds since 1970-01-01T00:00Z. A day alone counts from its first moment in UTC, a leap second as the second
// after it. Nothing when it isn't a time.
std::optional<std::int64_t> utc_milliseconds(std::string_view text);

// "2024-05-14T10:20:00.250-05:00": a moment with the local offset from UTC, which keeps both.
std::string iso_time(std::int64_t utc_milliseconds, int offset_minutes);

}  // namespace camside::records
