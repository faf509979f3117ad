// Text to JSON, refusing whatever a careful reader should refuse, and back to text.
//
// Refused, each with the line and column where it stands: more than 64 MiB or four million values; text that isn't
// UTF-8; a NUL byte anywhere, also behind the value; a byte order mark in front is skipped (some editors write one).
// Syntax errors, comments, trailing text, an end too early; a name used twice in one object; more than 64 levels; more
// than 256 names in one object; a number too large for a double. Standard: RFC 8259, and RFC 7493 (I-JSON) for
// duplicate names.
//
// Digits are kept: a number whose digits the shortest decimal of its double would not give back ("0.10", 25 digits) is
// held as its text inside the Json value (as a binary value, which JSON text cannot otherwise hold). Ask is_number()
// and number_of(), and write with write(); never with dump().
//
// Findings raised: 100 too large, 125 too many values, 101 not UTF-8, 102 NUL byte, 103 syntax, 104 ends too early, 105
// name used twice, 106 too deep, 107 too many names, 108 number too large, 109 empty.
#pragma once

#include <cstddef>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "base/function_view.hpp"
#include "findings/finding.hpp"
#include "records/json_value.hpp"

// Its code is made once, in strict_json.cpp, and not in each file that reads it.
extern template class nlohmann::basic_json<nlohmann::ordered_map>;

namespace camside::records {

constexpr std::size_t largest_file = std::size_t{64} << 20;  // bytes, whichever way it comes in; page/files.js too
constexpr std::size_t most_values = 4'000'000;               // texts, numbers, lists and objects held at once
constexpr std::size_t deepest_level = 64;
constexpr std::size_t most_names = 256;

// The part that looks at bytes alone (100-102, 109), for other texts than JSON. Takes a byte order mark off the front.
std::optional<Finding> refused_bytes(std::string_view& text, std::size_t most_bytes = largest_file);
tl::expected<Json, Finding> read_json(std::string_view text, std::size_t most_bytes = largest_file);
// A file that is mostly one list: each item of the list of this name in the outermost object is handed over as soon as
// it is read, or refused, which ends the reading; the list is empty in what comes back.
using TakeItem = FunctionView<std::optional<Finding>(Json&&)>;
tl::expected<Json, Finding> read_json_list(std::string_view text, std::string_view list, TakeItem take);

// Two spaces an indent, short lists and objects on one line, a line feed at the end. Reading it back gives the same.
std::string write_json(const Json& value);
// All of it on one line, without a line feed: what a line of the log holds.
std::string write_json_line(const Json& value);
// The same with the names of every object in order: equal texts mean the same content, however it was written.
std::string canonical_json(const Json& value);
// Of a box that is packed, which stays so.
std::string write_json_line(const JsonValue& value);
std::string canonical_json(const JsonValue& value);

bool is_number(const Json& value);
std::optional<double> number_of(const Json& value);
Json number_from(std::string_view digits);         // keeps the digits; a string when it isn't a JSON number
std::string text_of(const Json& value);            // a string as it is, a number by its digits, true, false; else empty
std::string_view name_of_type(const Json& value);  // "a text", "a number", "a list" … for messages

}  // namespace camside::records
