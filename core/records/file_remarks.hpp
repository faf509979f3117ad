// Numbers 100-149: the measurement file, from its bytes to its fields. Numbers 150-169: where it is kept.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "findings/finding.hpp"

namespace camside::remarks {

// Where in a text something stands, both counted from 1.
struct Place {
  std::size_t line = 1;
  std::size_t column = 1;
};

// Bytes that are no JSON we take
Finding file_too_large(std::size_t most_bytes);               // 100
Finding no_memory();                                          // 126
Finding too_many_values(Place place, std::size_t most);       // 125
Finding not_utf8(Place place);                                // 101
Finding nul_byte(Place place);                                // 102
Finding cannot_be_read(Place place, std::string_view what);   // 103
Finding ends_too_early(Place place);                          // 104
Finding name_twice(Place place, std::string_view name);       // 105
Finding too_deep(Place place, std::size_t most_levels);       // 106
Finding too_many_names(Place place, std::size_t most_names);  // 107
Finding number_too_large(Place place);                        // 108
Finding empty_text();                                         // 109

// JSON that is no measurement file, or holds what we can't use
Finding not_a_measurement_file(std::string field, std::string_view why);                                         // 110
Finding from_a_newer_version(std::string_view version);                                                          // 111
Finding unknown_kind(std::string field, std::string_view kind, std::string_view known);                          // 112
Finding unknown_field(std::string field, std::string_view nearest);                                              // 113
Finding wrong_type(std::string field, std::string_view label, std::string_view found, std::string_view wanted);  // 114
Finding unreadable(std::string field, std::string_view label, std::string_view text, std::string_view reason,
                   std::string_view remedy);  // 115
Finding not_a_choice(std::string field, std::string_view label, std::string_view text,
                     std::string_view choices);                // 116
Finding same_id(std::string field, std::string_view other);    // 117
Finding not_a_time(std::string field, std::string_view text);  // 118
Finding needs_a_unit(std::string field, std::string_view label, std::string_view text,
                     std::string_view example);                      // 119
Finding no_such_field(std::string field, std::string_view nearest);  // 120
Finding no_records();                                                // 121

// Tables of readings (CSV)
Finding csv_row(std::size_t line, std::string_view what, std::string_view remedy);      // 130
Finding csv_columns(std::size_t line, std::string_view what, std::string_view remedy);  // 131
Finding csv_no_rows();                                                                  // 132
Finding csv_not_for(std::string_view kind);                                             // 133

// Where things are kept
Finding cannot_save(std::string_view where, std::string_view why);  // 150
Finding cannot_load(std::string_view where, std::string_view why);  // 151
Finding opened_previous(std::string_view set_aside);                // 152
Finding opened_nothing(std::string_view set_aside);                 // 153
Finding open_elsewhere(std::string_view where);                     // 154
Finding cannot_open(std::string_view where, std::string_view why);  // 155
Finding newest_missing();                                           // 156

}  // namespace camside::remarks
