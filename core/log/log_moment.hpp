// When an entry is made, where the clock shows whole seconds: two entries of one second stand in the order in which
// they were made.
#pragma once

#include <cstdint>
#include <string>

namespace camside::records {

// `now` to the millisecond; when `last` (UTC in milliseconds) falls in the same second, the millisecond after it. A
// text that is no time with its offset comes back as it is.
std::string moment_after(const std::string& now, std::int64_t last);

}  // namespace camside::records
