#include "records/json_value.hpp"

#include <algorithm>
#include <utility>
#include <vector>

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

// ---- is a text plain?

// Walks through a text as write_json_line() writes it, and gives up wherever reading it and writing it again could give
// anything else.
class Glance {
 public:
  explicit Glance(std::string_view text) : text_(text) {}
  bool plain_object() { return text_.substr(0, 1) == "{" && value(0) && at_ == text_.size(); }

 private:
  bool take(std::string_view wanted) {
    if (text_.substr(at_, wanted.size()) != wanted) return false;
    at_ += wanted.size();
    return true;
  }

  bool value(std::size_t depth) {
    if (at_ >= text_.size() || depth >= deepest) return false;
    switch (text_[at_]) {
      case '"':
        return string();
      case '{':
        return list_of(depth, '}', [this] { return name() && take(": "); });
      case '[':
        return list_of(depth, ']', [] { return true; });
      default:
        return take("true") || take("false") || take("null") || whole_number();
    }
  }

  template <class Before>
  bool list_of(std::size_t depth, char end, Before before) {
    ++at_;
    const std::size_t outer = names_.size();
    const std::size_t outer_begin = std::exchange(begin_, outer);
    for (bool first = true; !take(std::string_view(&end, 1)); first = false)
      if ((!first && !take(", ")) || !before() || !value(depth + 1)) return false;
    names_.resize(outer);
    begin_ = outer_begin;
    return true;
  }

  bool string() {
    const std::size_t quote = at_++;
    while (at_ < text_.size() && text_[at_] >= ' ' && text_[at_] < '\x7F' && text_[at_] != '"' && text_[at_] != '\\')
      ++at_;
    seen_ = text_.substr(quote + 1, at_ - quote - 1);
    return take("\"");
  }

  // Not twice in the same object, and not so many that looking through them takes long.
  bool name() {
    if (at_ >= text_.size() || text_[at_] != '"' || !string()) return false;
    const auto begin = names_.begin() + static_cast<std::ptrdiff_t>(begin_);
    if (names_.size() - begin_ >= most_names_here || std::find(begin, names_.end(), seen_) != names_.end())
      return false;
    names_.push_back(seen_);
    return true;
  }

  bool whole_number() {
    constexpr std::size_t most_digits = 15;
    const std::size_t begin = at_;
    while (at_ < text_.size() && text_[at_] >= '0' && text_[at_] <= '9') ++at_;
    const std::size_t digits = at_ - begin;
    return digits > 0 && digits <= most_digits && (digits == 1 || text_[begin] != '0');
  }

  static constexpr std::size_t deepest = 16;
  static constexpr std::size_t most_names_here = 32;
  std::string_view text_;
  std::size_t at_ = 0;
  std::string_view seen_;
  std::vector<std::string_view> names_;  // of the objects that are open
  std::size_t begin_ = 0;                // of those of the innermost one
};

}  // namespace

std::optional<JsonValue> JsonValue::packed_at_a_glance(std::string_view text) {
  if (!Glance(text).plain_object()) return std::nullopt;
  JsonValue value;
  value.value_.reset();
  value.packed_ = std::string(text);
  return value;
}

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
