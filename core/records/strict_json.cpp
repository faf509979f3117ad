#include "records/strict_json.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <iterator>
#include <limits>
#include <utility>
#include <vector>

#include "base/harmless.hpp"
#include "base/stable_sort.hpp"
#include "records/file_remarks.hpp"

template class nlohmann::basic_json<nlohmann::ordered_map>;

namespace camside::records {

namespace {

using remarks::Place;

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
constexpr std::size_t line_width = 110;

bool continues_character(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

Place place_of(std::string_view text, std::size_t offset) {
  Place place;
  for (std::size_t i = 0; i < offset && i < text.size(); ++i) {
    if (text[i] == '\n') {
      ++place.line;
      place.column = 1;
    } else if (!continues_character(text[i])) {
      ++place.column;
    }
  }
  return place;
}

// ---- UTF-8 (RFC 3629: no overlong forms, no surrogates, nothing above U+10FFFF)

std::size_t length_of_character(unsigned char first) {
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first < 0xE0) return 2;
  if (first >= 0xE0 && first < 0xF0) return 3;
  if (first >= 0xF0 && first < 0xF5) return 4;
  return 0;
}

bool second_byte_fits(unsigned char first, unsigned char second) {
  switch (first) {
    case 0xE0:
      return second >= 0xA0;  // overlong
    case 0xED:
      return second < 0xA0;  // surrogate
    case 0xF0:
      return second >= 0x90;  // overlong
    case 0xF4:
      return second < 0x90;  // above U+10FFFF
    default:
      return true;
  }
}

bool character_at(std::string_view text, std::size_t at, std::size_t length) {
  if (length == 0 || at + length > text.size()) return false;
  for (std::size_t k = 1; k < length; ++k) {
    if (!continues_character(text[at + k])) return false;
  }
  return length == 1 ||
         second_byte_fits(static_cast<unsigned char>(text[at]), static_cast<unsigned char>(text[at + 1]));
}

// Offset of the first byte that isn't UTF-8, or npos.
std::size_t first_not_utf8(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = length_of_character(static_cast<unsigned char>(text[i]));
    if (!character_at(text, i, length)) return i;
    i += length;
  }
  return std::string_view::npos;
}

// ---- reading

// Walks the text and remembers how far the parser has come, so that our own refusals know their place.
class Reading {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = char;

  Reading(const char* at, const char** seen) : at_(at), seen_(seen) {}
  char operator*() const {
    *seen_ = at_;
    return *at_;
  }
  Reading& operator++() {
    ++at_;
    return *this;
  }
  Reading operator++(int) {
    Reading before = *this;
    ++at_;
    return before;
  }
  friend bool operator==(const Reading& a, const Reading& b) { return a.at_ == b.at_; }

 private:
  const char* at_;
  const char** seen_;
};

std::string_view what_went_wrong(char stopped_at, bool value_was_complete) {
  if (stopped_at == '/') return "stands a comment, and a measurement file has none";
  if (value_was_complete) return "there is more text after the end";
  return "the text is not JSON: a comma, a colon, a quote or a bracket is missing or wrong";
}

class Builder final : public nlohmann::json_sax<Json> {
 public:
  explicit Builder(std::string_view text) : text_(text), seen_(text.data()) {}
  Builder(std::string_view text, std::string_view list, TakeItem take)
      : text_(text), seen_(text.data()), list_(list), take_(take) {}

  bool read() {
    return Json::sax_parse(Reading(text_.data(), &seen_), Reading(text_.data() + text_.size(), &seen_), this);
  }

  Json root;
  double last_float = 0.0;
  std::optional<Finding> refusal;

  bool null() override { return put(Json()); }
  bool boolean(bool v) override { return put(Json(v)); }
  bool number_integer(number_integer_t v) override { return put(Json(v)); }
  bool number_unsigned(number_unsigned_t v) override { return put(Json(v)); }
  bool number_float(number_float_t v, const string_t& digits) override {
    last_float = v;
    Json number(v);
    if (number.dump() == digits) return put(std::move(number));
    return put(Json::binary(std::vector<std::uint8_t>(digits.begin(), digits.end())));
  }
  bool string(string_t& v) override {
    if (v.find('\0') != string_t::npos) return refuse(remarks::nul_byte(here()));
    return put(Json(std::move(v)));
  }
  bool binary(binary_t&) override { return false; }  // not in JSON text

  bool start_object(std::size_t) override { return open(Json::object()); }
  bool start_array(std::size_t) override { return open(Json::array()); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& name) override {
    if (name.find('\0') != string_t::npos) return refuse(remarks::nul_byte(here()));
    auto& object = *open_.back()->get_ptr<Json::object_t*>();
    if (object.size() >= most_names) return refuse(remarks::too_many_names(here(), most_names));
    const auto [it, fresh] = object.emplace(name, Json());
    if (!fresh) return refuse(remarks::name_twice(here(), name));
    slot_ = &it->second;
    if (open_.size() == 1) in_list_ = name == list_;
    if (open_.size() == 1) held_before_ = held_ + 1;
    return true;
  }

  bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception& error) override {
    if (error.id == number_overflow) return refuse(remarks::number_too_large(here()));
    if (position > text_.size()) return refuse(remarks::ends_too_early(place_of(text_, text_.size())));
    const std::size_t at = position == 0 ? 0 : position - 1;
    return refuse(remarks::cannot_be_read(place_of(text_, at), what_went_wrong(text_[at], complete_)));
  }

 private:
  static constexpr int number_overflow = 406;

  Place here() const { return place_of(text_, static_cast<std::size_t>(seen_ - text_.data())); }

  bool refuse(Finding finding) {
    refusal = std::move(finding);
    return false;
  }
  // Nothing when there are too many.
  Json* place(Json value) {
    if (++held_ > most_values) {
      refuse(remarks::too_many_values(here(), most_values));
      return nullptr;
    }
    if (open_.empty()) {
      root = std::move(value);
      return &root;
    }
    if (open_.back()->is_array()) {
      open_.back()->push_back(std::move(value));
      return &open_.back()->back();
    }
    *slot_ = std::move(value);
    return slot_;
  }
  bool put(Json value) {
    if (place(std::move(value)) == nullptr) return false;
    return closed();
  }
  bool open(Json container) {
    if (open_.size() >= deepest_level) return refuse(remarks::too_deep(here(), deepest_level));
    Json* const placed = place(std::move(container));
    if (placed != nullptr) open_.push_back(placed);
    return placed != nullptr;
  }
  bool close() {
    open_.pop_back();
    return closed();
  }

  // A value is whole; those that were asked for one by one leave here.
  bool closed() {
    complete_ = open_.empty();
    if (!take_ || open_.size() != 2 || !open_.back()->is_array() || !in_list_) return true;
    Json item = std::move(open_.back()->back());
    open_.back()->clear();
    held_ = held_before_;
    if (auto why = (*take_)(std::move(item))) return refuse(std::move(*why));
    return true;
  }

  std::string_view text_;
  const char* seen_;
  std::string_view list_;
  std::optional<TakeItem> take_;
  bool in_list_ = false;         // the list asked for is open
  std::size_t held_ = 0;         // values
  std::size_t held_before_ = 0;  // the list asked for began
  std::vector<Json*> open_;      // the containers around the place being read; pointers stay good while they are open
  Json* slot_ = nullptr;         // value of the name just read
  bool complete_ = false;
};

bool only_blanks(std::string_view text) {
  return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

tl::expected<Json, Finding> built(std::string_view text, Builder builder) {
  if (text.substr(0, byte_order_mark.size()) == byte_order_mark)  // a second one, which the parser would skip
    return tl::unexpected(remarks::cannot_be_read({}, "stands a second byte order mark"));
  const bool good = builder.read();
  if (builder.refusal) return tl::unexpected(*builder.refusal);
  if (!good) return tl::unexpected(remarks::cannot_be_read({}, "the text is not JSON"));
  return std::move(builder.root);
}

// ---- writing

std::string digits_of(const Json& number) {
  const auto& bytes = number.get_binary();
  return {bytes.begin(), bytes.end()};
}

std::string scalar_text(const Json& value) {
  if (value.is_binary()) return digits_of(value);
  return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

// Somebody may print the file on a terminal.
std::string harmless_scalar(const Json& value) {
  return value.is_string() ? harmless_json(scalar_text(value)) : scalar_text(value);
}

bool is_container(const Json& value) {
  return value.is_object() || value.is_array();
}

// On one line, giving up as soon as it is longer than `most`.
bool write_flat(std::string& out, const Json& value, std::size_t most) {
  if (!is_container(value)) {
    out += harmless_scalar(value);
    return out.size() <= most;
  }
  out += value.is_object() ? '{' : '[';
  bool first = true;
  for (auto it = value.begin(); it != value.end(); ++it) {
    if (!first) out += ", ";
    first = false;
    if (value.is_object()) out += harmless_scalar(Json(it.key())) + ": ";
    if (!write_flat(out, *it, most)) return false;
  }
  out += value.is_object() ? '}' : ']';
  return out.size() <= most;
}

// Names in order of their bytes, all the way down, no blanks.
void write_canonical(std::string& out, const Json& value) {
  if (!is_container(value)) {
    out += scalar_text(value);
    return;
  }
  if (value.is_array()) {
    for (const Json& item : value) {
      out += &item == &value.front() ? '[' : ',';
      write_canonical(out, item);
    }
    out += value.empty() ? "[]" : "]";
    return;
  }
  const auto& object = *value.get_ptr<const Json::object_t*>();
  std::vector<const Json::object_t::value_type*> members;
  for (const auto& member : object) members.push_back(&member);
  sort_stably(members.begin(), members.end(), [](const auto* a, const auto* b) { return a->first < b->first; });
  for (const auto* member : members) {
    out += member == members.front() ? '{' : ',';
    out += scalar_text(Json(member->first)) + ':';
    write_canonical(out, member->second);
  }
  out += members.empty() ? "{}" : "}";
}

void write_value(std::string& out, const Json& value, std::size_t indent, std::size_t used) {
  std::string flat;
  if (!is_container(value) || write_flat(flat, value, line_width > used ? line_width - used : 0)) {
    out += is_container(value) ? flat : harmless_scalar(value);
    return;
  }
  out += value.is_object() ? "{\n" : "[\n";
  const std::string inner(indent + 2, ' ');
  for (auto it = value.begin(); it != value.end(); ++it) {
    if (it != value.begin()) out += ",\n";
    const std::string name = value.is_object() ? harmless_scalar(Json(it.key())) + ": " : "";
    out += inner + name;
    write_value(out, *it, indent + 2, inner.size() + name.size());
  }
  out += '\n' + std::string(indent, ' ') + (value.is_object() ? '}' : ']');
}

}  // namespace

std::optional<Finding> refused_bytes(std::string_view& text, std::size_t most_bytes) {
  if (text.size() > most_bytes) return remarks::file_too_large(most_bytes);
  if (text.substr(0, byte_order_mark.size()) == byte_order_mark) text.remove_prefix(byte_order_mark.size());
  if (only_blanks(text)) return remarks::empty_text();
  const std::size_t nul = text.find('\0');
  const std::size_t bad = first_not_utf8(text);
  if (bad < nul) return remarks::not_utf8(place_of(text, bad));
  if (nul != std::string_view::npos) return remarks::nul_byte(place_of(text, nul));
  return std::nullopt;
}

tl::expected<Json, Finding> read_json(std::string_view text, std::size_t most_bytes) {
  if (auto refusal = refused_bytes(text, most_bytes)) return tl::unexpected(*refusal);
  return built(text, Builder(text));
}

tl::expected<Json, Finding> read_json_list(std::string_view text, std::string_view list, TakeItem take) {
  if (auto refusal = refused_bytes(text)) return tl::unexpected(*refusal);
  return built(text, Builder(text, list, take));
}

std::string write_json(const Json& value) {
  std::string out;
  write_value(out, value, 0, 0);
  out += '\n';
  return out;
}

std::string write_json_line(const Json& value) {
  std::string out;
  write_flat(out, value, std::numeric_limits<std::size_t>::max());
  return out;
}

std::string canonical_json(const Json& value) {
  std::string out;
  write_canonical(out, value);
  return out;
}

std::string write_json_line(const JsonValue& value) {
  return value.is_packed() ? value.packed() : write_json_line(*value);
}

std::string canonical_json(const JsonValue& value) {
  if (!value.is_packed()) return canonical_json(*value);
  const JsonValue looked_at(value);
  return canonical_json(*looked_at);
}

bool is_number(const Json& value) {
  return value.is_number() || value.is_binary();
}

std::optional<double> number_of(const Json& value) {
  if (value.is_number()) return value.get<double>();
  if (!value.is_binary()) return std::nullopt;
  const std::string digits = digits_of(value);
  Builder builder(digits);  // (the library's own parse() would be a second parser in the page)
  if (!builder.read() || !builder.root.is_binary()) return std::nullopt;
  return builder.last_float;
}

Json number_from(std::string_view digits) {
  auto read = read_json(digits);
  const bool blank = digits.find_first_of(" \t\r\n") != std::string_view::npos;
  if (read && is_number(*read) && !blank && text_of(*read) == digits) return std::move(*read);
  return Json(std::string(digits));
}

std::string text_of(const Json& value) {
  if (value.is_string()) return value.get<std::string>();
  if (value.is_null() || is_container(value)) return "";
  return scalar_text(value);
}

std::string_view name_of_type(const Json& value) {
  if (value.is_string()) return "a text";
  if (is_number(value)) return "a number";
  if (value.is_boolean()) return "true or false";
  if (value.is_array()) return "a list";
  if (value.is_object()) return "an object";
  return "null";
}

}  // namespace camside::records
