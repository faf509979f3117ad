// Numbers 300-349: bikes, their log and its file. Numbers 350-399: the store of the log.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "findings/finding.hpp"

namespace camside::remarks {

// Which lines of a text, both counted from 1.
struct Lines {
  std::size_t first = 1;
  std::size_t last = 1;
};

// Entries
Finding entry_without_id(std::string field);                               // 300
Finding unknown_entry_kind(std::string field, std::string_view kind);      // 301
Finding entry_not_an_object(std::string field, std::string_view found);    // 302
Finding entry_time_needed(std::string field, std::string_view text);       // 303
Finding replaces_itself(std::string_view id);                              // 304
Finding replaces_in_a_circle(std::string_view id);                         // 305
Finding replaces_unknown(std::string_view id);                             // 306
Finding same_id_other_content(std::string_view id, std::size_t how_many);  // 307
Finding corrected_apart(std::string_view id, std::size_t how_many);        // 308
Finding measurement_needed(std::string field);                             // 309
Finding rule_without_interval(std::string field);                          // 310
Finding rule_and_none(std::string field);                                  // 311
Finding put_off_for_ever(std::string field);                               // 312

// The file of a log
Finding not_a_log_file(std::string field, std::string_view why);                          // 320
Finding log_damaged(std::size_t entries_read);                                            // 321
Finding lines_damaged(Lines lines, std::string_view why);                                 // 322
Finding entries_missing(std::uint64_t said, std::size_t read);                            // 323
Finding more_lines_damaged(std::size_t how_many);                                         // 324
Finding newer_log_not_merged(std::string_view version);                                   // 325
Finding no_such_bike(std::string_view name);                                              // 326
Finding bike_not_clear(std::string_view name, std::size_t how_many);                      // 327
Finding no_entries();                                                                     // 328
Finding no_such_entry(std::string_view id);                                               // 329
Finding entry_refused(std::string field, std::string_view why, std::string_view remedy);  // 330
Finding bike_code_damaged(std::string_view why);                                          // 331
Finding bike_code_newer();                                                                // 332
Finding output_not_written(std::string_view where, std::string_view why);                 // 333

// The store
Finding log_open_elsewhere(std::string_view where);  // 350
// `shown`: entries of a second copy that are on screen instead.
Finding log_cannot_be_read(std::string_view where, std::string_view why, std::size_t shown = 0);  // 351
Finding log_not_saved(std::string_view where, std::string_view why);                              // 352
Finding torn_end(std::size_t bytes, std::string_view set_aside);                                  // 353
Finding records_damaged(Lines lines, std::string_view set_aside);                                 // 354
Finding records_missing(std::uint64_t first, std::uint64_t last);                                 // 355
Finding recovered_from_previous(std::size_t entries);                                             // 356
Finding store_is_newer(std::string_view where);                                                   // 357
Finding not_set_aside(std::string_view where, std::string_view why);                              // 358
Finding recovered_from_copy(std::size_t entries);                                                 // 359
Finding log_read_only();                                                                          // 360
Finding log_cannot_be_written(std::string_view where, std::string_view why);                      // 361
Finding beside_log_unread(std::string_view name, std::string_view why);                           // 362
Finding log_is_empty(std::string_view where);                                                     // 363
Finding too_many_entries(std::size_t most);                                                       // 334
Finding more_findings(std::size_t how_many);                                                      // 335
Finding log_lost(std::string_view where);                                                         // 364

// What opening could not make safe, for want of the lock or of a sync, a confirmed append has: 352 and 361 are
// true no more.
void take_back_not_saved(Findings& findings);

}  // namespace camside::remarks
