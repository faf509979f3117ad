#include "records/json_path.hpp"

#include <algorithm>
#include <utility>

namespace camside::records {

namespace {

constexpr std::size_t longest_index = 9;  // digits

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// "[12]" at the front of `rest`, which loses it.
std::optional<std::size_t> take_index(std::string_view& rest) {
  const std::size_t close = rest.find(']');
  if (close == std::string_view::npos || close < 2 || close > longest_index) return std::nullopt;
  std::size_t index = 0;
  for (const char c : rest.substr(1, close - 1)) {
    if (!is_digit(c)) return std::nullopt;
    index = index * 10 + static_cast<std::size_t>(c - '0');
  }
  rest.remove_prefix(close + 1);
  return index;
}

std::string take_name(std::string_view& rest) {
  const std::size_t end = std::min(rest.find_first_of(".["), rest.size());
  std::string name(rest.substr(0, end));
  rest.remove_prefix(end);
  return name;
}

Json* step_into(Json& json, const PathStep& step, bool make) {
  if (const auto* index = std::get_if<std::size_t>(&step))
    return json.is_array() && *index < json.size() ? &json[*index] : nullptr;
  const std::string& name = std::get<std::string>(step);
  if (make && json.is_null()) json = Json::object();
  if (!json.is_object()) return nullptr;
  const auto it = json.find(name);
  if (it != json.end()) return &*it;
  return make ? &json[name] : nullptr;
}

Json* walk(Json& top, const std::vector<PathStep>& steps, bool make) {
  Json* at = &top;
  for (const PathStep& step : steps) {
    at = step_into(*at, step, make);
    if (at == nullptr) return nullptr;
  }
  return at;
}

}  // namespace

std::optional<std::vector<PathStep>> steps_of(std::string_view path) {
  std::vector<PathStep> steps;
  while (!path.empty()) {
    if (path.front() == '[') {
      const auto index = take_index(path);
      if (!index) return std::nullopt;
      steps.emplace_back(*index);
      continue;
    }
    if (path.front() == '.') path.remove_prefix(1);
    std::string name = take_name(path);
    if (name.empty()) return std::nullopt;
    steps.emplace_back(std::move(name));
  }
  return steps;
}

Json* value_at(Json& top, std::string_view path) {
  const auto steps = steps_of(path);
  return steps ? walk(top, *steps, false) : nullptr;
}

const Json* value_at(const Json& top, std::string_view path) {
  const auto steps = steps_of(path);
  const Json* at = &top;
  for (std::size_t i = 0; steps && at != nullptr && i < steps->size(); ++i) {
    const PathStep& step = (*steps)[i];
    if (const auto* index = std::get_if<std::size_t>(&step)) {
      at = at->is_array() && *index < at->size() ? &(*at)[*index] : nullptr;
    } else {
      const auto it = at->find(std::get<std::string>(step));  // end() when it isn't an object
      at = it == at->end() ? nullptr : &*it;
    }
  }
  return steps ? at : nullptr;
}

Json* place_at(Json& top, std::string_view path) {
  const auto steps = steps_of(path);
  return steps ? walk(top, *steps, true) : nullptr;
}

bool take_out(Json& top, std::string_view path) {
  auto steps = steps_of(path);
  if (!steps || steps->empty()) return false;
  const PathStep last = steps->back();
  steps->pop_back();
  Json* around = walk(top, *steps, false);
  if (around == nullptr || step_into(*around, last, false) == nullptr) return false;
  if (const auto* index = std::get_if<std::size_t>(&last))
    around->erase(*index);
  else
    around->erase(std::get<std::string>(last));
  return true;
}

std::string joined_path(std::string_view outer, std::string_view inner) {
  std::string out(outer);
  if (!outer.empty() && !inner.empty() && inner.front() != '[') out += '.';
  return out += inner;
}

}  // namespace camside::records
