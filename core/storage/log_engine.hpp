// Keeps the log in a folder, over a few file operations (file_operations.hpp); the disk's side is
// app-desktop/disk_parts.
//
//   log.camside            the log; appended to, line by line (log_lines.hpp)
//   log.previous.camside   the generation before the last snapshot
//   log.camside.tmp        a generation being written (then -2 … -4: one that is being recovered from is left alone)
//   log.torn.txt           ends that were cut off, one a line
//   log.damaged.camside    a damaged log as it was, after its good lines went into a new one (then -2, -3 …)
//
// When the log itself is missing, empty, damaged or cut off, all the others are looked into; log_generations.hpp.
//
// Invariants; the tests name them by number:
//  1  An append is confirmed only after its bytes are synced and its file's name is. Whatever was confirmed is there
//     after a kill or a power cut at any moment.
//  2  What an append costs doesn't depend on the length of the log: it reads nothing and rewrites nothing.
//  3  A cut-off end is recognised by its checksum, never taken for an entry, set aside and reported; the log stays
//     usable. Nothing is ever written right behind it: where it can't be cut off, what follows begins on its own line.
//  4  Damage costs only the lines it hit: the others open, the damaged lines are reported by number and the damaged
//     file is set aside whole. A record that never reached the disk is reported by its number.
//  5  A snapshot is written beside the log, synced, and put in its place by renaming; the folder is synced. One
//     generation before it is kept. What is missing in the log and stands in any file beside it comes back by itself,
//     also when the log is missing, when it was cut exactly between two lines, and while mending itself is interrupted:
//     no file is written to that something is being recovered from, and until it is all in the log again, the log takes
//     no entries.
//  6  One writer: a second program opens the log for reading only, is told so, and changes nothing in the folder. Where
//     no lock is to be had, nothing is written.
//  7  A failed append confirms nothing and harms nothing confirmed. Once the place is mended, the next append works.
//  8  The log of a newer Camside is opened for reading only and never written. An older one's becomes a new generation
//     in today's form when it is opened.
//  9  Opening a good log changes none of its bytes. No byte that can't be read is given up before it is set aside.
// 10  Every failure says what happened and what to do, and leaves what is in memory untouched. A file beside the log
//     that can't be read is said, and keeps nobody from a log whose own lines are whole; a damaged log opens for
//     reading only.
//
// Findings raised: 350 open elsewhere, 351 can't be read, 352 not saved, 353 torn end, 354 damaged lines, 355 missing
// records, 356 back from a file beside the log, 357 newer, 358 can't be set aside, 360 read-only, 361 can't be written
// at opening, 362 a file beside it can't be read, 363 empty.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "findings/finding.hpp"
#include "log/log.hpp"
#include "storage/file_operations.hpp"
#include "storage/log_generations.hpp"

namespace camside::storage {

struct OpenedStore {
  records::Log log;
  Findings findings;
  bool read_only = false;
  std::vector<records::Entry> beside = {};  // found outside the log, and still to be saved in it
};

class LogEngine {
 public:
  explicit LogEngine(FileOperations& files) : files_(files) {}

  // First of all, once. With an error nothing is ever written.
  tl::expected<OpenedStore, Finding> open();
  // All of them or, as far as anyone is told, none; one sync for all.
  tl::expected<void, Finding> append(std::span<const records::Entry> entries);
  // A new generation with all of this log, which must hold whatever was appended.
  tl::expected<void, Finding> snapshot(const records::Log& log);

 private:
  using Done = FileOperations::Done;

  bool take_lock(Findings& findings);
  std::optional<Finding> refused();
  std::optional<Finding> lock_late();
  void begin_with(const Generations& found);
  void mend(const Generations& found, Findings& findings);
  void mend_torn_end(const Generations& found, Findings& findings);
  Done set_torn_end_aside(const Generations& found);
  void mend_damage(const Generations& found, Findings& findings);
  void keep_a_generation(const records::Log& log);
  void make_safe(Findings& findings);

  Done append_bytes(const std::string& bytes);
  void cut_back();
  Done bring_back(const records::Log& log);
  Done write_generation(const records::Log& log, const std::string& old_becomes);
  Done put_in_place(const records::Log& log, const WholeGeneration& written, const std::string& old_becomes);
  Done now_in_place(const WholeGeneration& generation);
  tl::expected<std::string, FileOperations::Why> old_becomes();
  tl::expected<std::string, FileOperations::Why> free_damaged_name();
  Finding not_saved(const std::string& why) const;

  FileOperations& files_;
  bool open_ = false;
  bool read_only_ = false;
  bool locked_ = false;
  bool good_at_open_ = false;
  bool unmended_ = false;         // damage is still in the log
  bool previous_unread_ = false;  // and may hold what nothing else does
  bool folder_safe_ = false;      // the log's name has been synced
  bool end_unclear_ = false;      // a failed append may have left a part behind good_size_
  bool needs_line_feed_ = false;  // the last line has none: a record whole but for that, or an end not set aside
  bool header_owed_ = false;      // the last header is an older Camside's
  std::uint64_t good_size_ = 0;   // bytes of the log that stay as they are
  std::uint64_t last_number_ = 0;
  std::string temporary_;                 // for the next generation
  std::optional<records::Log> owed_;      // all there is, while the log itself is missing or holds less
  std::optional<WholeGeneration> whole_;  // a file with all of that, which only wants its name
};

}  // namespace camside::storage
