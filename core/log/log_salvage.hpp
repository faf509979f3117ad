// What can still be read of a damaged log file; for log_file.cpp.
#pragma once

#include <string_view>
#include <vector>

#include "findings/finding.hpp"
#include "records/strict_json.hpp"

namespace camside::records {

struct Salvage {
  Json head = Json::object();      // empty when it couldn't be read
  std::vector<JsonValue> entries;  // packed
  Findings damage;                 // 322, 324
};

// Takes whatever is by itself a whole entry: an object with id, kind and made that the strict reader accepts.
Salvage salvage(std::string_view bytes);

}  // namespace camside::records
