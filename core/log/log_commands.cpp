#include "log/log_commands.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/harmless.hpp"
#include "log/bike_code.hpp"
#include "log/log_remarks.hpp"
#include "records/form.hpp"
#include "records/json_path.hpp"
#include "records/new_id.hpp"

namespace camside::records {

namespace {

Said refused(const Findings& findings) {
  return {"", print_findings(findings), exit_bad_input};
}

std::string counted(std::size_t count, std::string_view one, std::string_view more) {
  return fmt::format("{} {}", count, count == 1 ? one : more);
}

// ---- printing

std::string bike_line(const Log& log, const Bike& bike) {
  const auto shown = std::count_if(bike.lines.begin(), bike.lines.end(), [](const Line& l) { return !l.deleted; });
  std::string line = harmless(bike.name());
  if (!bike.model_year.empty()) line += " (" + harmless(bike.model_year) + ")";
  if (const auto reading = latest_odometer(log, bike))
    line += " · " + harmless(log.entries()[*reading].entered_text("reading"));
  line += " · " + counted(static_cast<std::size_t>(shown), "entry", "entries");
  if (bike.removed) line += " · removed";
  return line + " · id " + harmless(bike.id) + "\n";
}

std::string entry_line(const Log& log, std::size_t index, std::string_view state) {
  const Entry& entry = log.entries()[index];
  std::string line = fmt::format("{}  {}: {}", harmless(entry.day()), harmless(label_of_entry(entry.kind())),
                                 harmless(what_of(entry)));
  for (const char* field : {"odometer", "old_reading", "grade", "proof"}) {
    const std::string text = entry.entered_text(field);
    if (!text.empty()) line += " · " + harmless(text);
  }
  if (!entry.note().empty()) line += " · " + harmless(entry.note());
  if (!state.empty()) line += fmt::format(" · {}", state);
  return line + " · id " + harmless(log.reference(entry)) + "\n";
}

std::string bike_lines(const Log& log, const Bike& bike, bool everything) {
  std::string out;
  for (const Line& line : bike.lines) {
    if (line.deleted && !everything) continue;
    for (const std::size_t i : line.current) out += entry_line(log, i, line.apart ? "in two versions" : "");
    if (!everything) continue;
    for (const std::size_t i : line.replaced) out += "  " + entry_line(log, i, "replaced");
  }
  return out;
}

// ---- making entries

// A list's name adds an item to it; "wear[0].what" makes the item first when it isn't there yet.
std::string place_for(Record& record, const std::string& path) {
  std::string added = add_item(record, path, entry_kinds());
  if (!added.empty()) return added;
  const std::size_t open = path.find('[');
  const std::size_t close = path.find(']');
  if (open == std::string::npos || close == std::string::npos) return path;
  if (value_at(record.entered(), path.substr(0, close + 1)) == nullptr)
    add_item(record, path.substr(0, open), entry_kinds());
  return path;
}

Findings set_fields(Entry& entry, const Change& change) {
  Findings refusals;
  for (const auto& [path, text] : change.fields) {
    const std::string place = place_for(entry.record, path);
    const auto finding = set_text(entry.record, place, text, nullptr, entry_kinds());
    if (finding && finding->severity == Severity::Refusal) refusals.push_back(*finding);
  }
  return refusals;
}

using Made = tl::expected<std::vector<Entry>, Findings>;

Made checked(Entry entry, const Change& change) {
  if (!change.day.empty()) entry.record.set("day", change.day);
  if (!change.note.empty()) entry.record.set("note", change.note);
  Findings refusals = set_fields(entry, change);
  for (Finding& finding : check_entry(entry)) {
    if (finding.severity == Severity::Refusal) refusals.push_back(std::move(finding));
  }
  if (!refusals.empty()) return tl::unexpected(std::move(refusals));
  return std::vector<Entry>{std::move(entry)};
}

tl::expected<std::vector<Entry>, Findings> found(const Log& log, const std::string& id) {
  const std::vector<std::size_t> indexes = log.meant_by(id);
  if (indexes.empty()) return tl::unexpected(Findings{remarks::no_such_entry(id)});
  return std::vector<Entry>{log.entries()[indexes.front()]};
}

Made new_bike(const Change& change, const NextStamp& next_stamp) {
  Entry entry = make_entry("facts", new_id(), next_stamp());
  entry.record.entered()["nickname"] = change.new_bike;
  return checked(std::move(entry), change);
}

Made corrected(const Log& log, const Change& change, const NextStamp& next_stamp) {
  const auto old = found(log, change.replaces);
  if (!old) return tl::unexpected(old.error());
  return checked(correction(log, *old, next_stamp()), change);
}

Made measured(const std::string& bike, const Change& change, const NextStamp& next_stamp) {
  const auto opened = read_file(change.measurements);
  if (!opened) return tl::unexpected(opened.error());
  std::vector<Entry> entries;
  for (const Record& record : opened->file.records)
    entries.push_back(make_measurement_entry(record, bike, next_stamp()));
  return entries;
}

}  // namespace

tl::expected<std::string, Finding> bike_meant(const Log& log, const std::string& name) {
  const std::vector<std::string> ids = bikes_called(view(log), name);
  if (ids.empty()) return tl::unexpected(remarks::no_such_bike(name));
  if (ids.size() > 1) return tl::unexpected(remarks::bike_not_clear(name, ids.size()));
  return ids.front();
}

Said print_log(const Log& log, const LogListing& listing) {
  const View seen = view(log);
  Said said;
  if (listing.bike.empty()) {
    for (const Bike& bike : seen.bikes) {
      if (!bike.removed || listing.everything) said.out += bike_line(log, bike);
    }
    if (said.out.empty()) said.out = "No bikes yet; begin with `camside log --new-bike NAME`\n";
  } else {
    const auto id = bike_meant(log, listing.bike);
    if (!id) return refused({id.error()});
    said.out = bike_lines(log, *find_bike(seen, *id), listing.everything);
  }
  said.err = print_findings(seen.findings);
  return said;
}

Said print_export(const Log& log, const ExportOptions& options) {
  if (options.bike.empty() && !options.csv) return {export_log(log), "", exit_good};
  const auto id = bike_meant(log, options.bike);
  if (!id) return refused({id.error()});
  if (!options.csv) return {export_log(log_of_bike(log, *id)), "", exit_good};
  const View seen = view(log);
  return {csv_of(log, *find_bike(seen, *id), options.table), "", exit_good};
}

Made entries_of(const Log& log, const Change& change, const NextStamp& next_stamp) {
  if (!change.new_bike.empty()) return new_bike(change, next_stamp);
  if (!change.replaces.empty()) return corrected(log, change, next_stamp);
  if (!change.remove.empty() || !change.undo.empty()) {
    const auto old = found(log, change.remove.empty() ? change.undo : change.remove);
    if (!old) return tl::unexpected(old.error());
    if (!change.undo.empty()) return undo(log, old->front(), next_stamp);
    return std::vector<Entry>{deletion(log, *old, next_stamp())};
  }
  const auto bike = bike_meant(log, change.bike);
  if (!bike) return tl::unexpected(Findings{bike.error()});
  if (!change.measurements.empty()) return measured(*bike, change, next_stamp);
  if (find_kind(change.kind, entry_kinds()) == nullptr)
    return tl::unexpected(Findings{remarks::entry_refused("kind", "“" + change.kind + "” is no kind of entry",
                                                          "Kinds are facts, odometer, clock, service, finding, note")});
  return checked(make_entry(change.kind, *bike, next_stamp()), change);
}

tl::expected<Log, Findings> log_to_merge(std::string_view bytes, Findings& findings) {
  std::string unpacked;
  if (is_bike_code(bytes)) {
    auto text = text_of_bike_code(bytes);
    if (!text) return tl::unexpected(Findings{text.error()});
    unpacked = std::move(*text);
    bytes = unpacked;
  }
  auto opened = read_log_file(bytes);
  if (!opened) return tl::unexpected(opened.error());
  if (opened->file.newer)
    return tl::unexpected(Findings{remarks::newer_log_not_merged(std::to_string(opened->file.version))});
  findings = std::move(opened->findings);
  return std::move(opened->file.log);
}

}  // namespace camside::records
