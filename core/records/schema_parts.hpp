// What the schemas of other files than measurements are put together from (log/log_schema.cpp).
#pragma once

#include "records/kinds.hpp"
#include "records/strict_json.hpp"

namespace camside::records {

inline constexpr const char* schema_dialect = "https://json-schema.org/draft/2020-12/schema";
inline constexpr const char* schema_time_pattern =
    "^[0-9]{4}-[0-9]{2}-[0-9]{2}(T[0-9]{2}:[0-9]{2}(:[0-9]{2}([.][0-9]+)?)?(Z|[+-][0-9]{2}:[0-9]{2}))?$";

Json entered_schema(const RecordKind& kind);                         // what a kind asks for
Json text_schema(const char* title, const char* description);  // a plain text

}  // namespace camside::records
