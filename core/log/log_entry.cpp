#include "log/log_entry.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "log/log_entry_kinds.hpp"
#include "log/log_remarks.hpp"
#include "records/file_remarks.hpp"
#include "records/iso_time.hpp"
#include "records/json_path.hpp"

namespace camside::records {

namespace {

constexpr std::string_view measurement_kind = "measurement";
constexpr std::string_view deletion_kind = "deletion";

void move_below(Findings& findings, std::string_view where) {
  for (Finding& finding : findings) finding.field = joined_path(where, finding.field);
}

Findings findings_of_entered(const Entry& entry) {
  const auto it = entry.record.json->find("entered");
  if (it != entry.record.json->end() && !it->is_object())
    return {remarks::wrong_type("", "What was entered", name_of_type(*it), "an object")};
  return read_entered(entry).findings;
}

void check_texts(Findings& findings, const Entry& entry) {
  for (const char* name : {"id", "bike", "kind", "made", "day", "by", "note"}) {
    const auto it = entry.record.json->find(name);
    if (it != entry.record.json->end() && !it->is_string())
      findings.push_back(remarks::wrong_type(name, name, name_of_type(*it), "a text"));
  }
}

void check_frame(Findings& findings, const Entry& entry) {
  check_texts(findings, entry);
  if (entry.id().empty()) findings.push_back(remarks::entry_without_id("id"));
  // A day alone is no moment: entries made on two devices could not be put in order.
  if (!is_iso_time(entry.made()) || entry.made().find('T') == std::string::npos)
    findings.push_back(remarks::entry_time_needed("made", entry.made()));
  const std::string day = entry.record.json.text_at("day");
  if (!day.empty() && !is_iso_time(day)) findings.push_back(remarks::not_a_time("day", day));
}

}  // namespace

std::string Entry::bike() const {
  return record.json.text_at("bike");
}
std::string Entry::made() const {
  return record.json.text_at("made");
}
std::string Entry::day() const {
  std::string own = record.json.text_at("day");
  constexpr std::size_t length_of_day = 10;
  if (!own.empty()) return own;
  return is_iso_time(made()) ? made().substr(0, length_of_day) : "";
}

std::vector<std::string> Entry::replaces() const {
  if (!record.json.has("replaces")) return {};
  const auto it = record.json->find("replaces");
  if (it == record.json->end()) return {};
  if (it->is_string()) return {it->get<std::string>()};
  std::vector<std::string> ids;
  if (!it->is_array()) return ids;
  for (const Json& id : *it) {
    if (id.is_string()) ids.push_back(id.get<std::string>());
  }
  return ids;
}

bool Entry::is_deletion() const {
  return kind() == deletion_kind;
}

std::string Entry::entered_text(std::string_view field) const {
  return record.entered_text(field);
}

std::optional<Record> Entry::measurement() const {
  if (kind() != measurement_kind) return std::nullopt;
  const auto it = record.json->find("record");
  if (it == record.json->end() || !it->is_object()) return std::nullopt;
  return Record{*it};
}

std::int64_t Entry::made_at() const {
  return utc_milliseconds(made()).value_or(0);
}

bool is_entry_kind(std::string_view kind) {
  return kind == measurement_kind || kind == deletion_kind || find_kind(kind, entry_kinds()) != nullptr;
}

std::string label_of_entry(std::string_view kind) {
  if (kind == measurement_kind) return "Measurement";
  if (kind == deletion_kind) return "Deleted";
  const RecordKind* known = find_kind(kind, entry_kinds());
  return std::string(known == nullptr ? kind : known->label);
}

Entry make_entry(std::string_view kind, const std::string& bike, const Stamp& stamp) {
  Entry entry;
  Json& json = entry.record.json;
  json["id"] = stamp.id;
  json["bike"] = bike;
  json["kind"] = std::string(kind);
  json["made"] = stamp.made;
  if (!stamp.by.empty()) json["by"] = stamp.by;
  if (find_kind(kind, entry_kinds()) != nullptr) json["entered"] = Json::object();
  return entry;
}

void begin_about(Entry& entry, const std::string& item) {
  if (entry.kind() == "service") return entry.record.enter_first("items", item);
  entry.record.enter(entry.kind() == "finding" ? "part" : "item", item);
}

Entry make_measurement_entry(const Record& measured, const std::string& bike, const Stamp& stamp) {
  Entry entry = make_entry(measurement_kind, bike, stamp);
  entry.record.json["record"] = measured.json;
  return entry;
}

Findings check_entry(const Entry& entry) {
  if (!entry.record.json->is_object()) return {remarks::entry_not_an_object("", name_of_type(entry.record.json))};
  Findings findings;
  check_frame(findings, entry);
  if (!is_entry_kind(entry.kind())) findings.push_back(remarks::unknown_entry_kind("kind", entry.kind()));
  Findings inside;
  if (find_kind(entry.kind(), entry_kinds()) != nullptr) {
    inside = findings_of_entered(entry);
    move_below(inside, "entered");
  } else if (entry.kind() == measurement_kind) {
    const auto measured = entry.measurement();
    inside = measured ? check_record(*measured) : Findings{remarks::measurement_needed("")};
    move_below(inside, "record");
  }
  findings.insert(findings.end(), std::make_move_iterator(inside.begin()), std::make_move_iterator(inside.end()));
  return findings;
}

}  // namespace camside::records
