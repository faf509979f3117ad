#include "records/json_value.hpp"

#include <string>
#include <utility>

#include "records/strict_json.hpp"

namespace camside::records {

JsonValue::JsonValue() : value_(std::make_unique<Json>(Json::object())) {}
JsonValue::JsonValue(const Json& value) : value_(std::make_unique<Json>(value)) {}
JsonValue::JsonValue(Json&& value) : value_(std::make_unique<Json>(std::move(value))) {}
JsonValue::JsonValue(const JsonValue& other) : JsonValue(*other) {}
// What was moved from is an empty box until it is filled anew.
JsonValue::JsonValue(JsonValue&& other) noexcept = default;
JsonValue::~JsonValue() = default;

JsonValue& JsonValue::operator=(const JsonValue& other) {
  if (this != &other) value_ = std::make_unique<Json>(*other);
  return *this;
}
JsonValue& JsonValue::operator=(JsonValue&& other) noexcept = default;

Json& JsonValue::operator[](std::string_view name) {
  return (*value_)[std::string(name)];
}

bool operator==(const JsonValue& a, const JsonValue& b) {
  return *a == *b;
}

}  // namespace camside::records
