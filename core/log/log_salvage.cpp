#include "log/log_salvage.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "log/log_remarks.hpp"

namespace camside::records {

namespace {

constexpr std::size_t most_listed = 50;
constexpr std::size_t most_tried = 1'000'000;  // objects; no log has so many, and what isn't one shall not take minutes

// ---- where an object ends

// The object that begins at `at`, as far as its brackets tell; nothing when they don't close. Gives up where no JSON
// goes on: at a line feed within a string, or too deep. So no byte is looked at more than once for each level.
std::optional<std::string_view> object_at(std::string_view text, std::size_t at) {
  std::size_t depth = 0;
  bool in_string = false;
  for (std::size_t i = at; i < text.size(); ++i) {
    const char c = text[i];
    if (in_string) {
      if (c == '\n') return std::nullopt;
      if (c == '\\') ++i;
      if (c == '"') in_string = false;
    } else if (c == '"') {
      in_string = true;
    } else if (c == '{' || c == '[') {
      if (++depth > deepest_level) return std::nullopt;
    } else if (c == '}' || c == ']') {
      if (--depth == 0) return text.substr(at, i + 1 - at);
    }
  }
  return std::nullopt;
}

bool has_text(const Json& object, const char* name) {
  const auto it = object.find(name);
  return it != object.end() && it->is_string() && !it->get_ref<const std::string&>().empty();
}

bool is_entry(const Json& json) {
  return json.is_object() && has_text(json, "id") && has_text(json, "kind") && has_text(json, "made");
}

bool is_whole_file(const Json& json) {
  return json.is_object() && json.contains("camside") && json.contains("entries") && json["entries"].is_array();
}

// ---- lines

class LineCounter {
 public:
  explicit LineCounter(std::string_view text) : text_(text) {}
  std::size_t line_at(std::size_t offset) {  // offsets in rising order
    line_ += static_cast<std::size_t>(std::count(text_.begin() + static_cast<std::ptrdiff_t>(at_),
                                                 text_.begin() + static_cast<std::ptrdiff_t>(offset), '\n'));
    at_ = offset;
    return line_;
  }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
  std::size_t line_ = 1;
};

class Salvager {
 public:
  explicit Salvager(std::string_view text) : text_(text), lines_(text) {}

  Salvage done() {
    std::size_t tried = 0;
    for (std::size_t at = text_.find('{'); at != std::string_view::npos; at = text_.find('{', at)) {
      if (++tried > most_tried) break;  // the rest counts as damaged
      const std::size_t size = take_object(at);
      at += size == 0 ? 1 : size;
    }
    if (!head_seen_) read_head(text_.size());
    note_gap(text_.size(), "it holds no whole entry");
    if (unlisted_ > 0) result_.damage.push_back(remarks::more_lines_damaged(unlisted_));
    return std::move(result_);
  }

 private:
  // The bytes of what was taken; none when nothing could be.
  std::size_t take_object(std::size_t at) {
    const auto object = object_at(text_, at);
    if (!object) return 0;
    auto json = read_json(*object, text_.size());
    if (!json || !take(std::move(*json), at)) return 0;
    taken_to_ = at + object->size();
    return object->size();
  }

  bool take(Json json, std::size_t at) {
    if (is_whole_file(json)) {
      for (Json& entry : json["entries"]) keep(std::move(entry));
      json["entries"] = Json::array();
      result_.head = std::move(json);
      head_seen_ = true;
      return true;
    }
    if (!is_entry(json)) return false;
    if (result_.entries.empty() && !head_seen_) read_head(at);
    note_gap(at, "it holds no whole entry");
    keep(std::move(json));
    return true;
  }

  void keep(Json entry) {
    result_.entries.emplace_back(std::move(entry));
    result_.entries.back().pack();
  }

  // What stands before the list of entries is the head, if closing its brackets makes it whole.
  void read_head(std::size_t before) {
    head_seen_ = true;
    const std::size_t name = text_.find("\"entries\"");
    const std::size_t list = text_.find('[', std::min(name, text_.size()));
    if (list >= before) return;
    auto head = read_json(std::string(text_.substr(0, list + 1)) + "]}", text_.size() + 2);
    if (!head || !is_whole_file(*head)) return;
    result_.head = std::move(*head);
    taken_to_ = list + 1;
  }

  // Between what was taken may stand commas, brackets and blanks; anything else is damage.
  void note_gap(std::size_t to, std::string_view why) {
    const std::string_view gap = text_.substr(taken_to_, to - taken_to_);
    const std::size_t first = gap.find_first_not_of(" \t\r\n,]}");
    if (first == std::string_view::npos) return;
    const std::size_t last = gap.find_last_not_of(" \t\r\n,]}");
    const std::size_t first_line = lines_.line_at(taken_to_ + first);
    const std::size_t last_line = lines_.line_at(taken_to_ + last);
    if (result_.damage.size() < most_listed)
      result_.damage.push_back(remarks::lines_damaged({first_line, last_line}, why));
    else
      ++unlisted_;
  }

  std::string_view text_;
  LineCounter lines_;
  Salvage result_;
  std::size_t taken_to_ = 0;
  std::size_t unlisted_ = 0;
  bool head_seen_ = false;
};

}  // namespace

Salvage salvage(std::string_view bytes) {
  return Salvager(bytes).done();
}

}  // namespace camside::records
