// One entry of a bike's log: something that was read, done, found or corrected, as it was entered. An entry is never
// changed; a correction, a deletion and an undo are new entries that replace old ones by id.
//
//   {"id": "…", "bike": "…", "kind": "odometer", "made": "2024-05-14T10:20:00.250-05:00", "day": "2024-05-12",
//    "by": "…", "note": "…", "replaces": "…", "entered": {"reading": "41,300 mi"}}
//
//   id        random UUID, for good and on every device (new_id.hpp)
//   bike      id of the bike; a bike is nothing but the entries that name it
//   made      when the entry was made: a moment with the local offset from UTC, to the millisecond
//   day       which day it is about, when that isn't the day it was made
//   replaces  the entry or the list of entries this one takes the place of (see log.hpp, reference)
//   entered   what was typed, digits and unit, by the fields of its kind
//   record    of a measurement: the whole record of measurement.hpp as it was entered
//
// Kinds: facts, odometer, clock, service, finding, rule, snooze, measurement, note, deletion. The fields of each come
// from entry_kinds(), so form.hpp makes the form on screen: form_of(entry.record, entry_kinds()). A kind this Camside
// does not know and fields it does not know stay in the entry untouched.
//
// Findings raised: 300 no id (note), 301 unknown kind (note), 302 not an object (note), 303 no time or not a time, 309
// a measurement without its record; those of field_reader and check_fields for what was entered.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "findings/finding.hpp"
#include "records/kinds.hpp"
#include "records/measurement.hpp"

namespace camside::records {

struct Entry {
  Record record;  // the entry's whole JSON; its id(), kind(), by(), note(), entered() are those of the entry

  std::string id() const { return record.id(); }
  std::string kind() const { return record.kind(); }
  std::string by() const { return record.by(); }
  std::string note() const { return record.note(); }
  std::string bike() const;
  std::string made() const;
  std::string day() const;                    // as entered, else the local day on which it was made; empty: neither
  std::vector<std::string> replaces() const;  // empty: it is the first of its line
  bool is_deletion() const;
  std::string entered_text(std::string_view field) const;  // "" when nothing was entered there
  std::optional<Record> measurement() const;               // of kind measurement
  std::int64_t made_at() const;                            // UTC in milliseconds; 0 when made isn't a time
};

// Who makes an entry, where and when: the core has neither clock nor chance.
struct Stamp {
  std::string id;    // new_id()
  std::string made;  // iso_time()
  std::string by;
};

// The kinds that have entered fields: all but measurement and deletion.
std::span<const RecordKind> entry_kinds();
bool is_entry_kind(std::string_view kind);
std::string label_of_entry(std::string_view kind);  // "Odometer", "Service"; an unknown kind as it stands

Entry make_entry(std::string_view kind, const std::string& bike, const Stamp& stamp);
// The item that a new service, finding, rule or put-off is about, in the field that its kind has for it.
void begin_about(Entry& entry, const std::string& item);
Entry make_measurement_entry(const Record& measured, const std::string& bike, const Stamp& stamp);

// What is wrong with an entry, paths from the entry: "made", "entered.reading".
Findings check_entry(const Entry& entry);

}  // namespace camside::records
