// What `camside log`, `camside take-in` and `camside export` do, from a log to text and to new entries; the app reads and
// writes the store.
#pragma once

#include <functional>
#include <string>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

#include "records/commands.hpp"
#include "log/log_csv.hpp"
#include "log/log_file.hpp"
#include "log/log_merge.hpp"

namespace camside::records {

// The id of the bike meant by a nickname or an id: 326 none, 327 several.
tl::expected<std::string, Finding> bike_meant(const Log& log, const std::string& name);

struct LogListing {
  std::string bike;         // a nickname or an id; empty: the list of bikes
  bool everything = false;  // what was replaced and deleted too
};
Said print_log(const Log& log, const LogListing& listing);

struct ExportOptions {
  std::string bike;  // empty: all
  bool csv = false;  // needs a bike
  LogTable table;
};
Said print_export(const Log& log, const ExportOptions& options);

// One change of a log, as it is written on the command line; exactly one of new_bike, kind, measurements, remove, undo.
struct Change {
  std::string bike;
  std::string new_bike;      // nickname of a bike that begins with this
  std::string kind;          // of a new entry, or of a correction
  std::string replaces;      // id of the entry it corrects
  std::string measurements;  // bytes of a measurement file: each of its records becomes an entry
  std::string remove;        // id of the entry to delete
  std::string undo;          // id of the entry to undo
  std::vector<std::pair<std::string, std::string>> fields;  // entered: path, text; a list's name adds an item
  std::string day;
  std::string note;
};
using NextStamp = std::function<Stamp()>;
tl::expected<std::vector<Entry>, Findings> entries_of(const Log& log, const Change& change,
                                                      const NextStamp& next_stamp);

// A file to merge, or the address out of a bike's QR code: its log, or why not. Findings that don't keep it out are in
// `findings`.
tl::expected<Log, Findings> log_to_merge(std::string_view bytes, Findings& findings);

}  // namespace camside::records
