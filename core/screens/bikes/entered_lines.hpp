// What was entered in a record, field by field, as people read it: the digits as they were typed, and beside them what
// that is in the units chosen, where that differs.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "records/kinds.hpp"
#include "records/measurement.hpp"
#include "units/unit.hpp"

namespace camside::screens {

struct EnteredLine {
  std::string label;
  std::string text;
};

std::vector<EnteredLine> entered_lines(const records::Record& record, std::span<const RecordKind> among, System system);

}  // namespace camside::screens
