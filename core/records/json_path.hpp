// Paths of fields, "stations[3].reading", and what stands at them in a JSON value.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "records/strict_json.hpp"

namespace camside::records {

using PathStep = std::variant<std::string, std::size_t>;  // a name, or an index into a list

std::optional<std::vector<PathStep>> steps_of(std::string_view path);  // nothing when it isn't a path
const Json* value_at(const Json& top, std::string_view path);          // nullptr when nothing stands there
Json* value_at(Json& top, std::string_view path);
// The same, making the objects around it. Lists are never made longer; nullptr when the path doesn't fit what is there.
Json* place_at(Json& top, std::string_view path);
bool take_out(Json& top, std::string_view path);  // false when nothing stood there

// "a.b" and "c" give "a.b.c"; an empty part adds nothing.
std::string joined_path(std::string_view outer, std::string_view inner);

}  // namespace camside::records
