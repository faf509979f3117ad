#include "records/json_value.hpp"

#include <algorithm>
#include <utility>

#include "records/strict_json.hpp"

namespace camside::records {

namespace {

// ---- looking into a packed object; its text is what write_json_line() wrote

std::size_t end_of_string(std::string_view text, std::size_t quote) {
  std::size_t i = quote + 1;
  while (text[i] != '"') i += text[i] == '\\' ? 2U : 1U;
  return i + 1;
}

std::size_t end_of_value(std::string_view text, std::size_t i) {
  std::size_t depth = 0;
  for (; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '"') i = end_of_string(text, i) - 1;
    if (c == '{' || c == '[') ++depth;
    if ((c == '}' || c == ']' || c == ',') && depth == 0) return i;
    if (c == '}' || c == ']') --depth;
  }
  return i;
}

// {"id": "…", "entered": {…}}
std::optional<std::string_view> piece_at(std::string_view object, std::string_view name) {
  if (object.size() < 2 || object.front() != '{') return std::nullopt;
  for (std::size_t at = 1; object[at] == '"';) {
    const std::size_t colon = end_of_string(object, at);
    const std::string_view found = object.substr(at + 1, colon - at - 2);
    const std::size_t begin = colon + 2;
    const std::size_t end = end_of_value(object, begin);
    if (found == name) return object.substr(begin, end - begin);
    if (object[end] != ',') return std::nullopt;
    at = end + 2;
  }
  return std::nullopt;
}

std::string text_of_piece(std::string_view piece) {
  const bool plain = piece.front() == '"' && piece.find('\\') == std::string_view::npos;
  if (plain) return std::string(piece.substr(1, piece.size() - 2));
  const auto value = read_json(piece, piece.size());
  return value ? text_of(*value) : "";
}

}  // namespace

JsonValue::JsonValue() : value_(std::make_unique<Json>(Json::object())) {}
JsonValue::JsonValue(const Json& value) : value_(std::make_unique<Json>(value)) {}
JsonValue::JsonValue(Json&& value) : value_(std::make_unique<Json>(std::move(value))) {}
JsonValue::JsonValue(const JsonValue& other)
    : value_(other.value_ ? std::make_unique<Json>(*other.value_) : nullptr), packed_(other.packed_) {}
// What was moved from is an empty box until it is filled anew.
JsonValue::JsonValue(JsonValue&& other) noexcept = default;
JsonValue::~JsonValue() = default;

JsonValue& JsonValue::operator=(const JsonValue& other) {
  if (this != &other) *this = JsonValue(other);
  return *this;
}
JsonValue& JsonValue::operator=(JsonValue&& other) noexcept = default;

Json& JsonValue::operator[](std::string_view name) {
  return opened()[std::string(name)];
}

// A text with a NUL stays as it is: no reader takes it, and it never came from one.
void JsonValue::pack() {
  if (is_packed()) return;
  const std::string text = write_json_line(*value_);
  if (text.find("\\u0000") != std::string::npos) return;
  packed_ = std::string(std::string_view(text));  // no larger than it needs to be
  value_.reset();
}

Json& JsonValue::opened() const {
  if (!value_) {
    auto value = read_json(packed_, packed_.size());
    value_ = std::make_unique<Json>(value ? std::move(*value) : Json::object());
    packed_ = std::string();
  }
  return *value_;
}

bool JsonValue::has(std::string_view name) const {
  return is_packed() ? piece_at(packed_, name).has_value() : value_->contains(std::string(name));
}

std::string JsonValue::text_at(std::string_view name) const {
  if (is_packed()) {
    const auto piece = piece_at(packed_, name);
    return piece ? text_of_piece(*piece) : "";
  }
  const auto it = value_->find(std::string(name));
  return it == value_->end() ? "" : text_of(*it);
}

bool operator==(const JsonValue& a, const JsonValue& b) {
  return a.is_packed() && b.is_packed() ? a.packed_ == b.packed_ : *a == *b;
}

}  // namespace camside::records
