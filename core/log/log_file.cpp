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

void add_entry(OpenedLog& opened, Json json, std::size_t index, const LogFormat& format) {
  LogFile& file = opened.file;
  if (!json.is_object())
    opened.findings.push_back(remarks::entry_not_an_object(path_of_entry(index), name_of_type(json)));
  else if (!file.newer)
    json = migrated_entry(std::move(json), file.version, format);
  Entry entry{Record{std::move(json)}};
  const std::string id = entry.id();
  if (entry.record.json->is_object() && id.empty())
    opened.findings.push_back(remarks::entry_without_id(path_of_entry(index) + ".id"));
  if (file.log.add(std::move(entry)) == Added::Differs)
    opened.findings.push_back(remarks::same_id_other_content(id, file.log.with_id(id).size()));
}

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

OpenedLog opened_whole(Json json, const LogFormat& format) {
  OpenedLog opened;
  Json entries = std::exchange(json["entries"], Json::array());  // keeps its place among the names of the head
  take_head(opened, std::move(json), format);
  for (std::size_t i = 0; i < entries.size(); ++i) add_entry(opened, std::move(entries[i]), i, format);
  note_missing(opened, entries.size());
  if (entries.empty()) opened.findings.push_back(remarks::no_entries());
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
  for (std::size_t i = 0; i < saved.entries.size(); ++i) add_entry(opened, std::move(saved.entries[i]), i, format);
  note_missing(opened, saved.entries.size());
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
  auto json = read_json(bytes, largest_log);
  if (json) {
    if (auto why = not_a_log(*json)) return tl::unexpected(Findings{*why});
    return opened_whole(std::move(*json), format);
  }
  if (bytes.size() > largest_log) return tl::unexpected(Findings{json.error()});
  return opened_damaged(bytes, json.error(), format);
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
