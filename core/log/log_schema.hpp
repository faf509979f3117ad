// JSON Schema (draft 2020-12) of the file of a log (log_file.hpp): entries of every kind, and of kinds to come.
#pragma once

#include <string>

namespace camside::records {

std::string schema_of_log();

}  // namespace camside::records
