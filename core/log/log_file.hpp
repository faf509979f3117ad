// The file in which a log leaves and comes back: of one bike or of all.
//
//   {
//   "camside": 1,
//   "kind": "log",
//   "count": 2,
//   "entries": [
//   {"id": "…", "bike": "…", "kind": "facts", "made": "…", "entered": {"nickname": "Brindle"}},
//   {"id": "…", "bike": "…", "kind": "odometer", "made": "…", "entered": {"reading": "41,300 mi"}}
//   ]
//   }
//
// One line for each entry, by the time it was made, so that a damaged line costs one entry and has a number, and equal
// logs give equal bytes: export, import and export is the same byte for byte. Schema: assets/schema/log.schema.json.
//
// A damaged file (cut off, a line changed, bytes that are no text) opens as far as it is good: every entry that can be
// read by itself is taken, the lines that can't are listed, and so is how many entries are missing. It opens for
// reading only, as does the file of a newer Camside, whose entries are kept as they are.
//
// Findings raised: 100-109 when nothing can be read at all, 111 newer (note), 320 not a log's file; 300 and 302
// (notes), 307 same id with other content; 321 damaged, 322 which lines, 323 how many are missing, 324 more such lines;
// 328 no entries, 334 too many, 335 further findings of this sort. check_log_file adds those of check_entry.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "log/log.hpp"
#include "log/log_migration.hpp"

namespace camside::records {

constexpr std::size_t most_entries = 250'000;  // in one file; 200 bikes of 500 entries are 100,000, and some 30 MB

struct LogFile {
  JsonValue head;  // all but the entries, in their place; unknown names too
  Log log;
  std::uint64_t version = log_version;  // as it stood in the file
  bool newer = false;
  bool damaged = false;

  bool read_only() const { return newer || damaged; }
};

struct OpenedLog {
  LogFile file;
  Findings findings;
};

tl::expected<OpenedLog, Findings> read_log_file(std::string_view bytes, const LogFormat& format = log_format());
std::string write_log_file(const LogFile& file);
Findings check_log_file(const OpenedLog& opened);  // all findings, paths from the file: "entries[3].made"

std::string export_log(const Log& log);
// The entries of the lines of one bike: also those that were another bike's before they were corrected.
Log log_of_bike(const Log& log, std::string_view bike);

}  // namespace camside::records
