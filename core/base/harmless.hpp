// Text from somebody else's file, made harmless to show on a terminal, in a table or a message. What could move a
// cursor, ring, recolour, hide or turn the rest of the line round becomes "?": control characters (C0, DEL, C1), marks
// of direction, separators of lines and paragraphs, and bytes that are no UTF-8. Everything else stays as it is.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace camside {

std::string harmless(std::string_view text);        // in one line: a line break becomes "?" too
std::string harmless_lines(std::string_view text);  // '\n' and "\r\n" stay

// A string as it stands in JSON, in UTF-8: the same characters, written as "\u202e". Reading it gives the same text.
std::string harmless_json(std::string_view text);

// The first `most` bytes, cut between characters; "…" behind them when there was more.
std::string harmless_start(std::string_view text, std::size_t most);

}  // namespace camside
