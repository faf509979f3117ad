#include "records/examples.hpp"

#include <algorithm>
#include <utility>

namespace camside::records {

namespace {

using Example = std::pair<std::string_view, std::string_view>;
constexpr Example all[] = {
#include "example_files.inc"
    {"", ""},  // a list may not be empty
};

}  // namespace

std::string_view example_file(std::string_view name) {
  const auto* const it =
      std::find_if(std::begin(all), std::end(all), [&](const Example& e) { return e.first == name; });
  return it == std::end(all) ? std::string_view{} : it->second;
}

std::vector<std::string_view> example_names() {
  std::vector<std::string_view> names;
  for (const auto& [name, text] : all) {
    if (!name.empty()) names.push_back(name);
  }
  return names;
}

}  // namespace camside::records
