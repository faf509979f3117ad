// A JSON value in a box: who only hands it on, copies or compares it does not read the JSON library for that. Whoever
// looks inside includes records/strict_json.hpp.
#pragma once

#include <memory>
#include <nlohmann/json_fwd.hpp>
#include <string_view>

namespace camside::records {

using Json = nlohmann::ordered_json;

class JsonValue {
 public:
  JsonValue();  // an empty object
  JsonValue(const Json& value);
  JsonValue(Json&& value);
  JsonValue(const JsonValue& other);
  JsonValue(JsonValue&& other) noexcept;
  JsonValue& operator=(const JsonValue& other);
  JsonValue& operator=(JsonValue&& other) noexcept;
  ~JsonValue();

  Json& operator*() { return *value_; }
  const Json& operator*() const { return *value_; }
  Json* operator->() { return value_.get(); }
  const Json* operator->() const { return value_.get(); }
  operator Json&() { return *value_; }
  operator const Json&() const { return *value_; }
  Json& operator[](std::string_view name);

  friend bool operator==(const JsonValue& a, const JsonValue& b);

 private:
  std::unique_ptr<Json> value_;
};

}  // namespace camside::records
