#include "log/log_file.hpp"

#include <algorithm>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "log/log_remarks.hpp"
#include "log/log_salvage.hpp"
#include "log/log_view.hpp"
#include "records/file_remarks.hpp"
#include "records/json_path.hpp"

namespace camside::records {

namespace {

std::string path_of_entry(std::size_t index) {
  return "entries[" + std::to_string(index) + "]";
}

std::optional<Finding> not_a_log(const Json& json) {
  if (!json.is_object()) return remarks::not_a_log_file("", "it holds " + std::string(name_of_type(json)));
  const auto version = json.find("camside");
  if (version == json.end()) return remarks::not_a_log_file("camside", "the version is missing");
  if (!version->is_number_unsigned() || *version < 1U)
    return remarks::not_a_log_file("camside", "its version is not a whole number from 1");
  const auto kind = json.find("kind");
  if (kind == json.end() || *kind != "log") return remarks::not_a_log_file("kind", "its kind is not “log”");
  const auto entries = json.find("entries");
  if (entries == json.end() || !entries->is_array())
    return remarks::not_a_log_file("entries", "it has no list of entries");
  return std::nullopt;
}

// Of a file's entries only so many are listed that somebody may read; the rest is counted.
class Listed {
 public:
  explicit Listed(Findings& findings) : findings_(findings) {}
  ~Listed() {
    if (unlisted_ > 0) findings_.push_back(remarks::more_findings(unlisted_));
  }
  Listed(const Listed&) = delete;
  Listed& operator=(const Listed&) = delete;

  template <class Made>
  void add(Made made) {
    if (listed_ < most_listed) findings_.push_back(made());
    ++(listed_ < most_listed ? listed_ : unlisted_);
  }

 private:
  static constexpr std::size_t most_listed = 50;
  Findings& findings_;
  std::size_t listed_ = 0;
  std::size_t unlisted_ = 0;
};

void add_entry(LogFile& file, Listed& findings, JsonValue json, std::size_t index, const LogFormat& format) {
  const bool steps = !file.newer && file.version < format.version;
  const bool object = json.is_packed() ? json.packed().front() == '{' : json->is_object();
  if (!object)
    findings.add([&] { return remarks::entry_not_an_object(path_of_entry(index), name_of_type(json)); });
  else if (steps)
    json = migrated_entry(std::move(*json), file.version, format);
  Entry entry{Record{std::move(json)}};
  const std::string id = entry.id();
  if (object && id.empty()) findings.add([&] { return remarks::entry_without_id(path_of_entry(index) + ".id"); });
  if (file.log.add(std::move(entry)) == Added::Differs)
    findings.add([&] { return remarks::same_id_other_content(id, file.log.with_id(id).size()); });
}

// Each is packed, or let go when it is the same as the one before, as soon as it is read.
class Reading {
 public:
  std::optional<Finding> take(Json&& json) {
    if (++count > most_entries) return remarks::too_many_entries(most_entries);
    JsonValue entry(std::move(json));
    entry.pack();
    if (entries.empty() || !(entry == entries.back())) entries.push_back(std::move(entry));
    return std::nullopt;
  }
  std::vector<JsonValue> entries;
  std::size_t count = 0;
};

void take_head(OpenedLog& opened, Json head, const LogFormat& format) {
  LogFile& file = opened.file;
  file.version = head["camside"].get<std::uint64_t>();
  file.newer = file.version > format.version;
  if (file.newer) opened.findings.push_back(remarks::from_a_newer_version(std::to_string(file.version)));
  file.head = file.newer ? std::move(head) : migrated_head(std::move(head), file.version, format);
}

void note_missing(OpenedLog& opened, std::size_t read) {
  const auto count = opened.file.head->find("count");
  if (count == opened.file.head->end() || !count->is_number_unsigned()) return;
  const std::uint64_t said = count->get<std::uint64_t>();
  if (said > read) opened.findings.push_back(remarks::entries_missing(said, read));
}

void add_entries(OpenedLog& opened, std::vector<JsonValue> entries, const LogFormat& format) {
  Listed listed(opened.findings);
  for (std::size_t i = 0; i < entries.size(); ++i) add_entry(opened.file, listed, std::move(entries[i]), i, format);
}

OpenedLog opened_whole(Json head, Reading read, const LogFormat& format) {
  OpenedLog opened;
  take_head(opened, std::move(head), format);
  add_entries(opened, std::move(read.entries), format);
  note_missing(opened, read.count);
  if (read.count == 0) opened.findings.push_back(remarks::no_entries());
  return opened;
}

tl::expected<OpenedLog, Findings> opened_damaged(std::string_view bytes, Finding why, const LogFormat& format) {
  Salvage saved = salvage(bytes);
  const bool head_good = !not_a_log(saved.head);
  if (saved.entries.empty() && !head_good) return tl::unexpected(Findings{std::move(why)});
  OpenedLog opened;
  opened.file.damaged = true;
  if (head_good) take_head(opened, std::move(saved.head), format);
  opened.findings.push_back(remarks::log_damaged(saved.entries.size()));
  why.severity = Severity::Caution;  // the rest opens
  opened.findings.push_back(std::move(why));
  for (Finding& damage : saved.damage) opened.findings.push_back(std::move(damage));
  const std::size_t count = saved.entries.size();
  add_entries(opened, std::move(saved.entries), format);
  note_missing(opened, count);
  return opened;
}

Json fresh_head() {
  Json head;
  head["camside"] = log_version;
  head["kind"] = "log";
  head["count"] = 0U;
  head["entries"] = Json::array();
  return head;
}

std::string entry_lines(const Log& log) {
  std::string lines;
  for (const std::size_t i : log.in_order()) {
    lines += lines.empty() ? "\n" : ",\n";
    lines += write_json_line(log.entries()[i].record.json);
  }
  return lines;
}

}  // namespace

tl::expected<OpenedLog, Findings> read_log_file(std::string_view bytes, const LogFormat& format) {
  Reading read;
  auto head = read_json_list(bytes, "entries", [&read](Json&& entry) { return read.take(std::move(entry)); });
  if (head) {
    if (auto why = not_a_log(*head)) return tl::unexpected(Findings{*why});
    return opened_whole(std::move(*head), std::move(read), format);
  }
  read = Reading{};
  const int why = head.error().number;
  const bool too_much = why == 100 || why == 125 || why == 334;
  if (too_much) return tl::unexpected(Findings{head.error()});
  return opened_damaged(bytes, head.error(), format);
}

std::string write_log_file(const LogFile& file) {
  Json head = file.head->empty() ? fresh_head() : *file.head;
  if (!file.read_only()) head["count"] = file.log.size();
  if (!head.contains("entries")) head["entries"] = Json::array();
  std::string out = "{\n";
  for (auto it = head.begin(); it != head.end(); ++it) {
    if (it != head.begin()) out += ",\n";
    out += write_json_line(Json(it.key())) + ": ";
    out += it.key() == "entries" ? "[" + entry_lines(file.log) + "\n]" : write_json_line(*it);
  }
  return out + "\n}\n";
}

Findings check_log_file(const OpenedLog& opened) {
  Findings findings = opened.findings;
  const auto& entries = opened.file.log.entries();
  for (std::size_t i = 0; i < entries.size(); ++i) {
    for (Finding& finding : check_entry(entries[i])) {
      const bool said = finding.number == 300 || finding.number == 302;  // by the reader
      finding.field = joined_path(path_of_entry(i), finding.field);
      if (!said) findings.push_back(std::move(finding));
    }
  }
  return findings;
}

std::string export_log(const Log& log) {
  LogFile file;
  file.log = log;
  return write_log_file(file);
}

Log log_of_bike(const Log& log, std::string_view bike) {
  Log part;
  const View all = view(log);
  const Bike* wanted = find_bike(all, bike);
  if (wanted == nullptr) return part;
  std::set<std::size_t> indexes;
  for (const Line& line : wanted->lines) {
    indexes.insert(line.current.begin(), line.current.end());
    indexes.insert(line.replaced.begin(), line.replaced.end());
  }
  for (const std::size_t i : indexes) part.add(log.entries()[i]);
  return part;
}

}  // namespace camside::records
