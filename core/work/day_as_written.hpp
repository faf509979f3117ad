// A day as people write it on a bill: 14.6.2019, 2019-06-14, 6/2019, 2019-06. The month will do: its first day is
// taken.
#pragma once

#include <string>
#include <string_view>

namespace camside::work {

// As 2019-06-14; the text as it was typed where it is no day, or 5/6/2019, which can be two.
std::string day_as_written(std::string_view text);

}  // namespace camside::work
