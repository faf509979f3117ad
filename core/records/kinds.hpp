// The kinds of measurement a file can hold: one for each question of calc/questions.def.
#pragma once

#include <span>
#include <string_view>

#include "fields/record_kind.hpp"

namespace camside::records {

std::span<const RecordKind> kinds();
const RecordKind* find_kind(std::string_view name, std::span<const RecordKind> among = kinds());

}  // namespace camside::records
