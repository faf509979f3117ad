// The measurement file: what was read at the bike, as it was written down.
//
//   {
//     "camside": 1,
//     "kind": "measurements",
//     "bike": "Brindle",
//     "note": "Invented data …",
//     "records": [
//       {"id": "…", "kind": "runout", "name": "Pinion shaft, plate off", "taken": "2024-05-14T10:20:00-05:00",
//        "by": "…", "note": "…", "entered": {"low": "0.0008 in", "high": "0.0031 in", …}}
//     ]
//   }
//
// Quantities are texts with their unit ("0.0031 in"), plain numbers JSON numbers (or texts), choices their names, dates
// "2003-05-14", yes and no true and false. The fields of "entered" are those of the calculator's describe(), and
// assets/schema/KIND.schema.json says the same for other programs.
//
// In memory the file stays the JSON that was read: digits, units and unknown fields survive a round trip untouched.
// Screens edit texts in it (form.hpp) and solve from it. An answer is never stored.
//
// Findings raised: 110 not a measurement file, 111 written by a newer Camside (note: opens read-only), 112 unknown
// kind, 113 unknown field (note, with the nearest known name), 114 wrong type, 115 not a quantity that can be read, 116
// not one of the choices, 117 two records with the same id (note), 118 not a date and time, 119 a number without its
// unit, 121 no records (note); 200-204 as in field_remarks.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "findings/finding.hpp"
#include "records/json_value.hpp"
#include "records/kinds.hpp"

namespace camside::records {

constexpr int file_version = 1;

// One measurement: its JSON object as it stands in the file.
struct Record {
  JsonValue json;

  std::string id() const;
  std::string kind() const;
  std::string name() const;
  std::string taken() const;  // ISO 8601 with offset, as entered
  std::string by() const;
  std::string note() const;
  const Json& entered() const;  // an empty object when there is none
  Json& entered();
  bool has_entered(std::string_view name) const;
  std::string entered_text(std::string_view name) const;             // as it stands there; empty: nothing does
  void enter(std::string_view name, const std::string& text);        // a field that is a text
  void enter_first(std::string_view list, const std::string& text);  // a list of this one text
  void take_entered(const JsonValue& all);                           // in place of all that is entered
  void set(std::string_view key, const std::string& text);  // "name", "by", "note", "taken"; empty takes it out
};

struct MeasurementFile {
  JsonValue head;  // all but the records: version, bike, note, unknown fields
  std::vector<Record> records;
  bool read_only = false;  // written by a newer Camside: shown, never saved over

  std::string bike() const;
  std::string note() const;
  Record* find(std::string_view id);
};

struct Opened {
  MeasurementFile file;
  Findings findings;  // of the file as a whole; those of a record come from solve()
};

// Bytes to file: refuses only what is no measurement file at all. One bad record doesn't shut out the others.
tl::expected<Opened, Findings> read_file(std::string_view bytes);
std::string write_file(const MeasurementFile& file);
MeasurementFile empty_file();

// Who writes down a new record brings its id (new_id.hpp) and the time (the platform knows it).
Record make_record(const RecordKind& kind, std::string id, std::string taken);
// Records of this kind with the invented readings of the demo scenario; at least one.
std::vector<Record> demo_records(const RecordKind& kind);

// Reads the fields, checks them and runs the calculator. Paths of findings begin inside "entered":
// "stations[3].reading". Never throws, whatever the record holds.
Solved solve(const Record& record, std::span<const RecordKind> among = kinds());

// What stands around the entered fields: id, kind, name, time. Paths begin at the record.
Findings check_record(const Record& record, std::span<const RecordKind> among = kinds());

// Every finding of a file, the path from the file's root: "records[2].entered.stations[3].reading".
Findings check_file(const Opened& opened, std::span<const RecordKind> among = kinds());

}  // namespace camside::records
