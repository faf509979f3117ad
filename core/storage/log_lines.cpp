#include "storage/log_lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>

#include "log/log_migration.hpp"

namespace camside::storage {

namespace {

using records::Entry;

constexpr std::size_t sum_length = 16;

std::string sum_of(std::string_view number, std::string_view entry) {
  return fmt::format("{:016x}", records::fingerprint(entry, records::fingerprint(" ", records::fingerprint(number))));
}

// The form of the entries in lines of this version, as records::migrated_entry() counts.
std::uint64_t entries_in(std::uint64_t version) {
  return version == unsealed_version ? 1 : version - 1;
}

std::optional<std::uint64_t> whole_number(std::string_view text) {
  std::uint64_t value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || text.empty()) return std::nullopt;
  return value;
}

std::optional<NumberedRecord> record_of(std::string_view line) {
  const std::size_t first = line.find(' ');
  if (first == std::string_view::npos || line.size() < first + sum_length + 2) return std::nullopt;
  const std::string_view number = line.substr(0, first);
  const std::string_view sum = line.substr(first + 1, sum_length);
  const std::string_view text = line.substr(first + sum_length + 2);
  const auto value = whole_number(number);
  if (!value || line[first + sum_length + 1] != ' ' || sum != sum_of(number, text)) return std::nullopt;
  if (auto packed = records::JsonValue::packed_at_a_glance(text))
    return NumberedRecord{*value, Entry{records::Record{std::move(*packed)}}};
  auto json = records::read_json(text);
  if (!json) return std::nullopt;
  return NumberedRecord{*value, Entry{records::Record{std::move(*json)}}};
}

std::uint64_t version_of(std::string_view line) {
  if (line.substr(0, log_mark.size()) != log_mark || line.size() < log_mark.size() + 2) return 0;
  if (line[log_mark.size()] != ' ') return 0;
  const std::string_view rest = line.substr(log_mark.size() + 1);
  const std::size_t blank = rest.find(' ');
  const std::uint64_t version = whole_number(rest.substr(0, blank)).value_or(0);
  if (blank == std::string_view::npos) return version == unsealed_version ? version : 0;
  return rest.substr(blank + 1) == sum_of(log_mark, rest.substr(0, blank)) ? version : 0;
}

class LineReader {
 public:
  LineReader(std::string_view bytes, std::uint64_t last_number) : bytes_(bytes) { read_.last_number = last_number; }

  ReadLines done() {
    while (at_ < bytes_.size()) take_line();
    read_.ours = read_.version > 0 || !read_.entries.empty();
    return std::move(read_);
  }

 private:
  void take_line() {
    ++line_;
    const std::size_t end = bytes_.find('\n', at_);
    const bool open = end == std::string_view::npos;
    const std::string_view line = bytes_.substr(at_, open ? std::string_view::npos : end - at_);
    if (const std::uint64_t version = open ? 0 : version_of(line); version > 0) {  // a header, which holds no entry
      version_ = version;
      read_.version = std::max(read_.version, version);
    } else if (auto record = record_of(line)) {
      take(std::move(*record));
    } else if (open) {
      read_.torn = {at_, line.size(), line_, line_};
    } else if (!line.empty()) {  // an empty line closes one that was cut off
      note_damage(line.size() + 1);
    }
    read_.ends_open = open;
    at_ = open ? bytes_.size() : end + 1;
  }

  void take(NumberedRecord record) {
    if (record.number > read_.last_number + 1) read_.gaps.emplace_back(read_.last_number + 1, record.number - 1);
    read_.last_number = std::max(read_.last_number, record.number);
    records::JsonValue& json = record.entry.record.json;
    if (version_ > 0 && entries_in(version_) < records::log_version)
      json = records::migrated_entry(std::move(*json), entries_in(version_));
    json.pack();
    read_.entries.push_back(std::move(record.entry));
  }

  void note_damage(std::size_t size) {
    Piece* last = read_.damaged.empty() ? nullptr : &read_.damaged.back();
    if (last != nullptr && last->offset + last->size == at_) {
      last->size += size;
      last->last_line = line_;
    } else {
      read_.damaged.push_back({at_, size, line_, line_});
    }
  }

  std::string_view bytes_;
  ReadLines read_;
  std::size_t at_ = 0;
  std::size_t line_ = 0;
  std::uint64_t version_ = 0;  // of the lines that follow
};

}  // namespace

std::string log_header(std::uint64_t version) {
  if (version == unsealed_version) return fmt::format("{} {}\n", log_mark, version);
  const std::string number = std::to_string(version);
  return fmt::format("{} {} {}\n", log_mark, number, sum_of(log_mark, number));
}

std::string log_line(std::uint64_t number, const Entry& entry) {
  const std::string text = records::write_json_line(entry.record.json);
  const std::string digits = std::to_string(number);
  return digits + " " + sum_of(digits, text) + " " + text + "\n";
}

ReadLines read_lines(std::string_view bytes, std::uint64_t last_number) {
  return LineReader(bytes, last_number).done();
}

std::optional<NumberedRecord> last_record_in(std::string_view bytes) {
  while (!bytes.empty()) {
    if (bytes.back() == '\n') bytes.remove_suffix(1);
    const std::size_t before = bytes.rfind('\n');
    const std::size_t start = before == std::string_view::npos ? 0 : before + 1;
    if (const auto record = record_of(bytes.substr(start))) return record;
    bytes = bytes.substr(0, start);
  }
  return std::nullopt;
}

}  // namespace camside::storage
