// JSON Schema (draft 2020-12) of a measurement file, written from the same description of the fields that the reader
// uses. The files in assets/schema/ are what this writes; a test holds them equal.
//
// Every field has a title and a description; quantities list the units that may be written ("unit") and say the allowed
// range in words; plain numbers have minimum and maximum. Fields the schema doesn't name are allowed, as in the reader.
#pragma once

#include <span>
#include <string>

#include "records/kinds.hpp"

namespace camside::records {

// A file that holds records of this kind only; and one that holds any.
std::string schema_of(const RecordKind& kind);
std::string schema_of_all(std::span<const RecordKind> among = kinds());
// Of a file that is nothing but described fields: what is known of engines.
std::string schema_of_fields(const std::string& title, const std::string& description, AnyInput& fields);

}  // namespace camside::records
