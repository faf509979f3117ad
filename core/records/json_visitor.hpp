// A field visitor that walks a record's JSON beside the calculator's fields.
#pragma once

#include <string_view>
#include <vector>

#include "fields/field.hpp"
#include "records/strict_json.hpp"

namespace camside::records {

class JsonVisitor : public FieldVisitor {
 protected:
  explicit JsonVisitor(const Json& top) { enter(&top); }

  // What stands for this field, or nullptr. The items of a list of plain values have no name: they are the value
  // itself.
  const Json* find(const Field& f);

  void enter(const Json* json) { levels_.push_back({json, {}}); }
  void leave() { levels_.pop_back(); }
  const Json* here() const { return levels_.back().json; }
  // Names of the present object that no field asked for, and the names that were asked for.
  std::vector<std::string_view> unasked() const;
  const std::vector<std::string_view>& asked() const { return levels_.back().asked; }

 private:
  struct Level {
    const Json* json;
    std::vector<std::string_view> asked;
  };
  std::vector<Level> levels_;
};

// Stands in for an object or a list that isn't there.
const Json& nothing();

}  // namespace camside::records
