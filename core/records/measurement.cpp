#include "records/measurement.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "base/stable_sort.hpp"
#include "fields/field.hpp"
#include "records/examples.hpp"
#include "records/field_reader.hpp"
#include "records/file_remarks.hpp"
#include "records/iso_time.hpp"
#include "records/json_path.hpp"
#include "records/json_visitor.hpp"
#include "records/nearest.hpp"

namespace camside::records {

namespace {

constexpr std::array<std::string_view, 5> head_names{"camside", "kind", "bike", "note", "records"};
constexpr std::array<std::string_view, 7> record_names{"id", "kind", "name", "taken", "by", "note", "entered"};

std::string text_at(const Json& object, std::string_view key) {
  const auto it = object.find(std::string(key));
  return it == object.end() ? "" : text_of(*it);
}

std::string path_of_record(std::size_t index) {
  return "records[" + std::to_string(index) + "]";
}

// ---- the file as a whole

std::optional<Finding> not_a_file(const Json& json) {
  if (!json.is_object()) return remarks::not_a_measurement_file("", "it holds " + std::string(name_of_type(json)));
  const auto version = json.find("camside");
  if (version == json.end()) return remarks::not_a_measurement_file("camside", "the version is missing");
  if (!version->is_number_unsigned() || *version < 1U)
    return remarks::not_a_measurement_file("camside", "its version is not a whole number from 1");
  if (text_at(json, "kind") != "measurements")
    return remarks::not_a_measurement_file("kind", "its kind is not “measurements”");
  const auto records = json.find("records");
  if (records == json.end() || !records->is_array())
    return remarks::not_a_measurement_file("records", "it has no list of records");
  return std::nullopt;
}

void note_unknown(Findings& findings, const Json& object, std::span<const std::string_view> known,
                  const std::string& where) {
  for (auto it = object.begin(); it != object.end(); ++it) {
    if (std::find(known.begin(), known.end(), it.key()) == known.end())
      findings.push_back(remarks::unknown_field(joined_path(where, it.key()), nearest_name(it.key(), known)));
  }
}

void want_texts(Findings& findings, const Json& object, std::span<const std::string_view> names,
                const std::string& where) {
  for (const std::string_view name : names) {
    const auto it = object.find(std::string(name));
    if (it != object.end() && !it->is_string())
      findings.push_back(remarks::wrong_type(joined_path(where, name), name, name_of_type(*it), "a text"));
  }
}

Findings findings_of_head(const Json& head) {
  Findings findings;
  constexpr std::array<std::string_view, 2> texts{"bike", "note"};
  const std::uint64_t version = head["camside"].get<std::uint64_t>();
  if (version > file_version) findings.push_back(remarks::from_a_newer_version(std::to_string(version)));
  want_texts(findings, head, texts, "");
  note_unknown(findings, head, head_names, "");
  if (head["records"].empty()) findings.push_back(remarks::no_records());
  return findings;
}

void note_same_ids(Findings& findings, const std::vector<Record>& records) {
  std::vector<std::pair<std::string, std::size_t>> ids;
  for (std::size_t i = 0; i < records.size(); ++i) {
    if (!records[i].id().empty()) ids.emplace_back(records[i].id(), i);
  }
  sort_stably(ids.begin(), ids.end(), [](const auto& a, const auto& b) { return a < b; });
  for (std::size_t i = 1; i < ids.size(); ++i) {
    if (ids[i].first == ids[i - 1].first)
      findings.push_back(remarks::same_id(path_of_record(ids[i].second) + ".id", path_of_record(ids[i - 1].second)));
  }
}

// ---- one record

std::string names_of(std::span<const RecordKind> among) {
  std::vector<std::string_view> names;
  for (const RecordKind& kind : among) names.push_back(kind.name);
  return joined_names(names);
}

// Everything of a record but what was entered; paths from the record.
Findings findings_around(const Record& record, std::span<const RecordKind> among) {
  Findings findings;
  if (!record.json->is_object()) {
    findings.push_back(remarks::wrong_type("", "A record", name_of_type(record.json), "an object"));
    return findings;
  }
  constexpr std::array<std::string_view, 5> texts{"id", "name", "taken", "by", "note"};
  want_texts(findings, record.json, texts, "");
  note_unknown(findings, record.json, record_names, "");
  if (find_kind(record.kind(), among) == nullptr)
    findings.push_back(remarks::unknown_kind("kind", record.kind(), names_of(among)));
  if (!record.taken().empty() && !is_iso_time(record.taken()))
    findings.push_back(remarks::not_a_time("taken", record.taken()));
  const auto entered = record.json->find("entered");
  if (entered != record.json->end() && !entered->is_object())
    findings.push_back(remarks::wrong_type("entered", "What was entered", name_of_type(*entered), "an object"));
  return findings;
}

bool about_same_field(const Findings& findings, const Finding& wanted) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) { return f.field == wanted.field; });
}

void add_new(Findings& to, Findings more) {
  const Findings before = to;
  for (Finding& finding : more) {
    if (!about_same_field(before, finding)) to.push_back(std::move(finding));
  }
}

void put_before(Findings& findings, Findings first) {
  findings.insert(findings.begin(), std::make_move_iterator(first.begin()), std::make_move_iterator(first.end()));
}

void move_below(Findings& findings, const std::string& where) {
  for (Finding& finding : findings) finding.field = joined_path(where, finding.field);
}

}  // namespace

std::string Record::id() const {
  return json.text_at("id");
}
std::string Record::kind() const {
  return json.text_at("kind");
}
std::string Record::name() const {
  return json.text_at("name");
}
std::string Record::taken() const {
  return json.text_at("taken");
}
std::string Record::by() const {
  return json.text_at("by");
}
std::string Record::note() const {
  return json.text_at("note");
}

const Json& Record::entered() const {
  const auto it = json->find("entered");
  return it != json->end() && it->is_object() ? *it : nothing();
}

Json& Record::entered() {
  if (!json->is_object()) json = Json::object();
  Json& entered = json["entered"];
  if (!entered.is_object()) entered = Json::object();
  return entered;
}

bool Record::has_entered(std::string_view name) const {
  return entered().contains(std::string(name));
}

std::string Record::entered_text(std::string_view name) const {
  const Json& all = entered();
  const auto at = all.find(std::string(name));
  if (at == all.end()) return {};
  return text_of(*at);
}

void Record::enter(std::string_view name, const std::string& text) {
  entered()[std::string(name)] = text;
}

void Record::enter_first(std::string_view list, const std::string& text) {
  entered()[std::string(list)] = Json::array({text});
}

void Record::take_entered(const JsonValue& all) {
  entered() = *all;
}

void Record::set(std::string_view key, const std::string& text) {
  if (!json->is_object()) json = Json::object();
  if (text.empty())
    json->erase(std::string(key));
  else
    json[std::string(key)] = text;
}

std::string MeasurementFile::bike() const {
  return head.text_at("bike");
}
std::string MeasurementFile::note() const {
  return head.text_at("note");
}
Record* MeasurementFile::find(std::string_view id) {
  const auto it = std::find_if(records.begin(), records.end(), [&](const Record& r) { return r.id() == id; });
  return it == records.end() ? nullptr : &*it;
}

tl::expected<Opened, Findings> read_file(std::string_view bytes) {
  auto json = read_json(bytes);
  if (!json) return tl::unexpected(Findings{json.error()});
  if (auto why = not_a_file(*json)) return tl::unexpected(Findings{*why});
  Opened opened;
  opened.findings = findings_of_head(*json);
  opened.file.read_only = (*json)["camside"].get<std::uint64_t>() > file_version;
  Json& records = (*json)["records"];
  opened.file.records.reserve(records.size());
  for (Json& record : records) opened.file.records.push_back({std::move(record)});
  records = Json::array();  // keeps its place among the names of the head
  opened.file.head = std::move(*json);
  note_same_ids(opened.findings, opened.file.records);
  return opened;
}

std::string write_file(const MeasurementFile& file) {
  Json json = file.head;
  Json records = Json::array();
  for (const Record& record : file.records) records.push_back(record.json);
  json["records"] = std::move(records);
  return write_json(json);
}

MeasurementFile empty_file() {
  MeasurementFile file;
  file.head["camside"] = static_cast<unsigned>(file_version);
  file.head["kind"] = "measurements";
  file.head["records"] = Json::array();
  return file;
}

Record make_record(const RecordKind& kind, std::string id, std::string taken) {
  Record record;
  record.json["id"] = std::move(id);
  record.json["kind"] = std::string(kind.name);
  record.json["taken"] = std::move(taken);
  record.json["entered"] = Json::object();
  return record;
}

std::vector<Record> demo_records(const RecordKind& kind) {
  std::vector<Record> records;
  for (const std::string_view example : kind.examples) {
    auto opened = read_file(example_file(example));
    if (!opened) continue;
    for (Record& record : opened->file.records) records.push_back(std::move(record));
  }
  return records;
}

Findings check_record(const Record& record, std::span<const RecordKind> among) {
  return findings_around(record, among);
}

Solved solve(const Record& record, std::span<const RecordKind> among) {
  const RecordKind* kind = find_kind(record.kind(), among);
  Solved solved;
  if (kind == nullptr) {
    solved.findings.push_back(remarks::unknown_kind("kind", record.kind(), names_of(among)));
    return solved;
  }
  const std::unique_ptr<AnyInput> input = kind->make();
  Findings of_reading = read_fields(record.entered(), *input);
  if (any_refusal(of_reading)) {
    solved.findings = std::move(of_reading);
    const auto fields = [&](FieldVisitor& v) { input->describe_fields(v); };
    add_new(solved.findings, check_fields(fields));
    return solved;
  }
  solved = input->solve();
  put_before(solved.findings, std::move(of_reading));
  return solved;
}

Findings check_file(const Opened& opened, std::span<const RecordKind> among) {
  Findings findings = opened.findings;
  for (std::size_t i = 0; i < opened.file.records.size(); ++i) {
    const Record& record = opened.file.records[i];
    Findings around = check_record(record, among);
    move_below(around, path_of_record(i));
    findings.insert(findings.end(), around.begin(), around.end());
    if (find_kind(record.kind(), among) == nullptr) continue;
    Findings inside = solve(record, among).findings;
    move_below(inside, path_of_record(i) + ".entered");
    findings.insert(findings.end(), inside.begin(), inside.end());
  }
  return findings;
}

}  // namespace camside::records
