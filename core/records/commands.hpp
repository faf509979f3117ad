// What the command line does, from bytes to bytes; app-desktop/command_line.cpp only reads arguments and files.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "records/kinds.hpp"
#include "records/printed.hpp"

namespace camside::records {

constexpr int exit_good = 0;
constexpr int exit_not_within = 1;  // with strict: a verdict is Outside or Not proven
constexpr int exit_bad_input = 2;

struct Said {
  std::string out;
  std::string err;
  int exit = exit_good;
};

struct SolveOptions {
  Printing printing;
  bool json = false;
  bool strict = false;
};

Said solve_bytes(std::string_view bytes, const SolveOptions& options, std::span<const RecordKind> among = kinds());
Said check_bytes(std::string_view bytes, std::span<const RecordKind> among = kinds());
Said list_kinds(std::span<const RecordKind> among = kinds());
Said print_schema(std::string_view kind, std::span<const RecordKind> among = kinds());  // empty: of all
Said print_example(std::string_view kind, std::span<const RecordKind> among = kinds());

struct CsvOptions {
  std::string kind;
  std::string columns;                                      // when the table has no header
  std::string around;                                       // bytes of a file whose first record of the kind is taken
  std::vector<std::pair<std::string, std::string>> fields;  // further fields: path, text
};
// A measurement file with the readings of a table.
Said import_csv(std::string_view csv, const CsvOptions& options, std::span<const RecordKind> among = kinds());

}  // namespace camside::records
