// Fills a calculator's input from the "entered" part of a record, and says field by field what can't be used.
#pragma once

#include "findings/finding.hpp"
#include "records/kinds.hpp"
#include "records/strict_json.hpp"

namespace camside::records {

// Findings of the reading (113-116, 119, 201, 203, 204) with paths inside `entered`; what could be read is in the
// input.
Findings read_fields(const Json& entered, AnyInput& input);

}  // namespace camside::records
