// A bike's log as a table for a spreadsheet: RFC 4180, UTF-8, CR LF, the units in the header.
//
//   day,kind,what,odometer (mi),wear (in),grade,proof,by,note,state,made,id
//
// One row for each current entry, one for each dimension of a finding. Distances and wear are numbers in the unit of
// their column, exactly converted and rounded to 3 and 5 decimals; what can't be read stands as it was typed. The
// odometer's column is in the bike's own unit. State: empty; "apart" for entries in two versions; with `everything`
// also "replaced" and "deleted". A text that a spreadsheet would take for a formula (= + - @ in front) gets an
// apostrophe in front.
#pragma once

#include <string>

#include "log/log_view.hpp"
#include "units/unit.hpp"

namespace camside::records {

struct LogTable {
  System system = System::Inch;  // of the wear, and of an odometer whose unit nobody said
  bool everything = false;       // what was replaced and deleted too
};

std::string csv_of(const Log& log, const Bike& bike, const LogTable& table = {});

// For a list of the log too: what an entry is about, in a few words: "41,300 mi", "Engine oil and filter".
std::string what_of(const Entry& entry);

}  // namespace camside::records
