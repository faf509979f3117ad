// A text as JSON writes it, in its quotes; bytes that are no UTF-8 become the replacement character. For who writes
// JSON line by line and has no need of the library.
#pragma once

#include <string>
#include <string_view>

namespace camside::records {

std::string text_in_json(std::string_view text);

}  // namespace camside::records
