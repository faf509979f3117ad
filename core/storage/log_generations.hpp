// What the folder of a log holds, read and joined: the log itself, and what stands beside it (names: log_engine.hpp).
//
// The files beside it are looked into when the log is missing, holds nothing, is damaged or was cut off; and also when
// the previous generation or a temporary one is larger than the log, has higher numbers, or ends with an entry that the
// log lacks: then the log was once cut exactly between two lines. A set of entries only grows, so joining never brings
// back anything wrong.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

#include "log/log.hpp"
#include "storage/file_operations.hpp"
#include "storage/log_lines.hpp"

namespace camside::storage {

inline constexpr const char* newest_name = "log.camside";
inline constexpr const char* previous_name = "log.previous.camside";
inline constexpr const char* torn_name = "log.torn.txt";
std::string temporary_name(int n = 1);  // log.camside.tmp, log.camside.tmp-2, …
std::string damaged_name(int n = 1);    // log.damaged.camside, log.damaged-2.camside, …

struct WholeGeneration {  // a file with every entry there is
  std::string name;
  std::uint64_t size = 0;
  std::uint64_t last_number = 0;
};

struct Generations {
  std::optional<std::uint64_t> newest;   // bytes of the log
  std::string torn_end;                  // that of the log, as it stands there
  ReadLines lines;                       // of the log, without the entries
  std::size_t in_newest = 0;             // entries
  records::Log all;                      // these, and those found beside the log
  bool newer = false;                    // one of the files is a newer Camside's
  std::optional<WholeGeneration> whole;  // while the log itself is missing
  std::optional<std::string> temporary;  // under this name nothing stands that isn't elsewhere too
  std::vector<std::pair<std::string, FileOperations::Why>> unread;  // names beside the log

  bool damaged() const { return !lines.damaged.empty() || !lines.gaps.empty(); }
  bool torn() const { return lines.torn.size > 0; }
  bool wants_line_feed() const { return lines.ends_open && !torn(); }
  bool came_back() const { return all.size() > in_newest; }
  bool older() const { return lines.version > 0 && lines.version < lines_version; }
  bool good() const { return !damaged() && !torn() && !came_back(); }
  bool previous_unread() const;
};

// With an error nothing is known, and nothing may be written: the log can't be read, or it holds nothing and neither
// can what stands beside it.
tl::expected<Generations, FileOperations::Why> read_generations(FileOperations& files);

}  // namespace camside::storage
