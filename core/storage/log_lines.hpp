// The bytes of a stored log: one line for each entry, which any editor shows.
//
//   camside-log 2 3c0dd6fcd9d93ba9
//   1 85944171f73967e8 {"id": "…", "bike": "…", "kind": "odometer", …}
//   2 1c3d…            {…}
//
// Each record has its number in this file, counted from 1, and a checksum (FNV-1a, 64 bits, 16 hexadecimal digits) of
// the number and the entry as they stand in the line. So a line that was cut or changed is recognised, and a line that
// never reached the disk leaves a gap in the numbers. The lines after a damaged one are read as before.
//
// The header may stand again before any line: from there on its version counts. The browser's log has one for each
// append. Its own checksum tells a newer Camside's from a damaged one; version 1 had none ("camside-log 1"), and its
// lines are the same. Entries of an older version come in today's form.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "log/log.hpp"

namespace camside::storage {

constexpr std::string_view log_mark = "camside-log";

constexpr std::uint64_t lines_version = 2;     // of this form; that of the entries is records::log_version
constexpr std::uint64_t unsealed_version = 1;  // its header has no checksum

std::string log_header(std::uint64_t version = lines_version);
std::string log_line(std::uint64_t number, const records::Entry& entry);

struct Piece {  // of the file that can't be used
  std::size_t offset = 0;
  std::size_t size = 0;
  std::size_t first_line = 1;
  std::size_t last_line = 1;
};

struct ReadLines {
  bool ours = false;          // begins as a log does, or holds at least one whole record
  std::uint64_t version = 0;  // as the headers say, the newest; 0: there is none
  std::vector<records::Entry> entries;
  std::uint64_t last_number = 0;
  std::vector<Piece> damaged;                                 // whole lines; the header too
  Piece torn;                                                 // the last line, when it was cut off; size 0: none
  bool ends_open = false;                                     // the last line has no line feed
  std::vector<std::pair<std::uint64_t, std::uint64_t>> gaps;  // numbers that are missing, first and last
};

ReadLines read_lines(std::string_view bytes, std::uint64_t last_number = 0);  // of what stood before

struct NumberedRecord {
  std::uint64_t number = 0;
  records::Entry entry;  // as it stands there
};
std::optional<NumberedRecord> last_record_in(std::string_view bytes);  // found from the end, without reading all

}  // namespace camside::storage
