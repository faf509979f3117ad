// How a field inside of a list is named, everywhere alike: "stations[3].reading".
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace camside {

inline std::string item_path(std::string_view list, std::size_t index, std::string_view field = {}) {
  std::string path = std::string(list) + "[" + std::to_string(index) + "]";
  if (!field.empty()) (path += '.') += field;
  return path;
}

}  // namespace camside
