// A table of readings into a record: one line for each reading.
//
//   # pinion shaft, plate off                      lines that begin with # and empty lines are passed over
//   angle (deg), reading (in), turn                the header names fields of the list and the unit of each column
//   0, 0.0000, 1
//   45, 0.0006, 1
//
// Between the columns stands a comma, a semicolon or a tab; with a semicolon or a tab numbers may have a decimal comma.
// A cell may carry its own unit ("0.6 thou") in place of the column's. Yes and no are written so, or true and false, y
// and n, 1 and 0. Cells may stand in double quotes. Without a header the caller names the columns in the same words.
// The unit of a length or an angle is never guessed.
//
// Findings raised: 100-102 as for files, 130 a cell that can't be used (with its line), 131 the header or the number of
// columns, 132 no readings, 133 not a kind with a list of readings.
#pragma once

#include <cstddef>
#include <span>
#include <string_view>
#include <tl/expected.hpp>

#include "records/measurement.hpp"

namespace camside::records {

// Replaces the record's list of readings by the table; returns how many were read. On a refusal nothing is changed.
tl::expected<std::size_t, Finding> take_csv(Record& record, std::string_view csv, std::string_view columns = "",
                                            std::span<const RecordKind> among = kinds());

}  // namespace camside::records
