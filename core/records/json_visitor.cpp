#include "records/json_visitor.hpp"

#include <algorithm>

namespace camside::records {

const Json* JsonVisitor::find(const Field& f) {
  Level& level = levels_.back();
  if (f.name.empty()) return level.json;
  level.asked.push_back(f.name);
  if (!level.json->is_object()) return nullptr;
  const auto it = level.json->find(std::string(f.name));
  return it == level.json->end() ? nullptr : &*it;
}

std::vector<std::string_view> JsonVisitor::unasked() const {
  const Level& level = levels_.back();
  std::vector<std::string_view> names;
  const auto* object = level.json->get_ptr<const Json::object_t*>();
  if (object == nullptr) return names;
  for (const auto& [name, value] : *object) {
    if (std::find(level.asked.begin(), level.asked.end(), name) == level.asked.end()) names.emplace_back(name);
  }
  return names;
}

const Json& nothing() {
  static const Json none = Json::object();
  return none;
}

}  // namespace camside::records
