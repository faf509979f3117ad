// A JSON value in a box: who only hands it on, copies or compares it does not read the JSON library for that. Whoever
// looks inside includes records/strict_json.hpp.
//
// A box can be packed: then it holds the text of the value, a fifth of the memory, until somebody looks inside. A log
// of a hundred thousand entries is kept so. text_at() and value_at() look for one name without unpacking; all else
// unpacks by itself, also through a const box (which no two threads may do at once).
#pragma once

#include <memory>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
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

  Json& operator*() { return opened(); }
  const Json& operator*() const { return opened(); }
  Json* operator->() { return &opened(); }
  const Json* operator->() const { return &opened(); }
  operator Json&() { return opened(); }
  operator const Json&() const { return opened(); }
  Json& operator[](std::string_view name);

  // Of a text as write_json_line() writes it, without a look inside, where that can be told at a glance: plain ASCII,
  // no escapes, no fractions. Nothing: read it.
  static std::optional<JsonValue> packed_at_a_glance(std::string_view text);
  void pack();
  bool is_packed() const { return !value_; }
  const std::string& packed() const { return packed_; }  // what write_json_line() writes; empty unless it is packed
  bool has(std::string_view name) const;                 // of an object
  std::string text_at(std::string_view name) const;      // text_of() what stands there; "" when nothing does

  friend bool operator==(const JsonValue& a, const JsonValue& b);

 private:
  Json& opened() const;

  mutable std::unique_ptr<Json> value_;
  mutable std::string packed_;
};

}  // namespace camside::records
