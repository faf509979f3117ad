#include "records/commands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "records/csv.hpp"
#include "records/examples.hpp"
#include "records/file_remarks.hpp"
#include "records/form.hpp"
#include "records/nearest.hpp"
#include "records/schema.hpp"
#include "records/strict_json.hpp"

namespace camside::records {

namespace {

Said refused(const Findings& findings) {
  return {"", print_findings(findings), exit_bad_input};
}

Said unknown_kind(std::string_view name, std::span<const RecordKind> among) {
  std::vector<std::string_view> names;
  for (const RecordKind& kind : among) names.push_back(kind.name);
  return refused({remarks::unknown_kind("", name, joined_names(names))});
}

// The record the table goes into: the first of its kind in the file given, or a new one.
tl::expected<MeasurementFile, Findings> file_around(const RecordKind& kind, const CsvOptions& options) {
  MeasurementFile file = empty_file();
  if (options.around.empty()) {
    file.records.push_back(make_record(kind, "", ""));
    file.records.back().json->erase("id");
    file.records.back().json->erase("taken");
    return file;
  }
  auto opened = read_file(options.around);
  if (!opened) return tl::unexpected(opened.error());
  auto& records = opened->file.records;
  const auto it = std::find_if(records.begin(), records.end(), [&](const Record& r) { return r.kind() == kind.name; });
  if (it == records.end())
    return tl::unexpected(
        Findings{remarks::not_a_measurement_file("records", fmt::format("it has no record of kind {}", kind.name))});
  std::iter_swap(records.begin(), it);
  records.erase(records.begin() + 1, records.end());
  return std::move(opened->file);
}

Findings set_fields(Record& record, const CsvOptions& options, std::span<const RecordKind> among) {
  Findings refusals;
  for (const auto& [path, text] : options.fields) {
    const auto finding = set_text(record, path, text, nullptr, among);
    if (finding && finding->severity == Severity::Refusal) refusals.push_back(*finding);
  }
  return refusals;
}

}  // namespace

Said solve_bytes(std::string_view bytes, const SolveOptions& options, std::span<const RecordKind> among) {
  auto opened = read_file(bytes);
  if (!opened) return refused(opened.error());
  const SolvedFile file = solve_file(std::move(*opened), among);
  Said said;
  said.out = options.json ? print_for_programs(file) : print_for_people(file, options.printing, among);
  const Findings refusals = refusals_of(file);
  said.err = print_findings(refusals);
  if (!refusals.empty())
    said.exit = exit_bad_input;
  else if (options.strict && any_not_within(file))
    said.exit = exit_not_within;
  return said;
}

Said check_bytes(std::string_view bytes, std::span<const RecordKind> among) {
  const auto opened = read_file(bytes);
  const Findings findings = opened ? check_file(*opened, among) : opened.error();
  Said said{print_findings(findings), "", exit_good};
  if (findings.empty()) said.out = "Nothing to remark\n";
  if (any_refusal(findings)) said.exit = exit_bad_input;
  return said;
}

Said list_kinds(std::span<const RecordKind> among) {
  std::size_t width = 0;
  for (const RecordKind& kind : among) width = std::max(width, kind.name.size());
  Said said;
  for (const RecordKind& kind : among)
    said.out += fmt::format("{:<{}}  {}: {}\n", kind.name, width, kind.label, kind.question);
  return said;
}

Said print_schema(std::string_view name, std::span<const RecordKind> among) {
  if (name.empty()) return {schema_of_all(among), "", exit_good};
  const RecordKind* kind = find_kind(name, among);
  return kind == nullptr ? unknown_kind(name, among) : Said{schema_of(*kind), "", exit_good};
}

Said print_example(std::string_view name, std::span<const RecordKind> among) {
  const RecordKind* kind = find_kind(name, among);
  if (kind == nullptr || kind->examples.empty()) return unknown_kind(name, among);
  return {std::string(example_file(kind->examples.front())), "", exit_good};
}

Said import_csv(std::string_view csv, const CsvOptions& options, std::span<const RecordKind> among) {
  const RecordKind* kind = find_kind(options.kind, among);
  if (kind == nullptr) return unknown_kind(options.kind, among);
  auto file = file_around(*kind, options);
  if (!file) return refused(file.error());
  Record& record = file->records.front();
  const auto count = take_csv(record, csv, options.columns, among);
  if (!count) return refused({count.error()});
  const Findings refusals = set_fields(record, options, among);
  if (!refusals.empty()) return refused(refusals);
  return {write_file(*file), "", exit_good};
}

}  // namespace camside::records
