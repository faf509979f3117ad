// A bike with its log in the address of the page, as its QR code carries it: what stands behind '#' never leaves the
// device in a request.
//
//   https://…/#bike=2…      2: this format; then digits, 17 for each 7 bytes
//
// The bytes are 4 of checksum and the bike's export (log_file.hpp), deflated with this format's primer. The format
// holds for ever: another primer is another number. (1 was tried before anybody used it.)
//
// Findings raised: 331 can't be read, 332 newer.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "findings/finding.hpp"

namespace camside::records {

constexpr std::string_view code_mark = "#bike=";
constexpr std::size_t most_code_text = std::size_t{64} << 10;  // bytes; far more than any QR code brings

// What stands behind the mark, for an export; none: it is longer than most_code_text, or memory ran out.
std::optional<std::string> code_of_bike(std::string_view exported);

bool is_bike_code(std::string_view bytes);  // an address with the mark, or what begins with it
tl::expected<std::string, Finding> text_of_bike_code(std::string_view bytes);

}  // namespace camside::records
