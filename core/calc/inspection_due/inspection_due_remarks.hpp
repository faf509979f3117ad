// Numbers 1500-1599: what is due, and the odometer log.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "findings/finding.hpp"
#include "units/quantity.hpp"

namespace camside::remarks {

// The log.
Finding log_empty();                                                            // 1501
Finding day_after_today(std::string field, Date day, Date today);               // 1502
Finding clock_went_back(std::string field, Distance from, Distance to);         // 1503
Finding tenths_digit_typed(std::string field, Distance read, Distance likely);  // 1504
struct Jump {
  Distance from;
  Distance to;
  long days = 0;
  bool fits_as_km = false;  // typed in miles, read off a km clock
};
Finding jump_too_far(std::string field, const Jump& jump);     // 1505
Finding reading_very_large(std::string field, Distance read);  // 1506
Finding last_reading_old(Date last, long days);                // 1507
Finding log_too_long(std::size_t entries, std::size_t most);   // 1508
Finding day_unlikely(std::string field, Date day);             // 1509

// Items and services.
Finding item_without_rule(std::string field, std::string_view item);                                  // 1510
Finding source_taken_as_owner(std::string field, std::string_view item);                              // 1511
Finding service_beyond_clock(std::string field, std::string_view item, Distance at, Distance clock);  // 1513
Finding proof_without_reading(std::string field, std::string_view item);                              // 1514
Finding proof_without_date(std::string field, std::string_view item);                                 // 1515
Finding proof_without_anything(std::string field, std::string_view item);                             // 1516
Finding service_on_which_clock(std::string field, std::string_view item);                             // 1517
Finding service_against_log(std::string field, std::string_view item, Distance at, Date day);         // 1518
Finding nothing_listed();                                                                             // 1519

// States.
Finding overdue(std::string field, std::string_view item, const std::string& by);   // 1520
Finding due_soon(std::string field, std::string_view item, const std::string& in);  // 1521
Finding due_for_want_of_proof(std::string field, std::string_view item);            // 1525
Finding no_proof(std::string field, std::string_view item);                         // 1522
Finding states_in_doubt();                                                          // 1523
Finding nothing_to_count_from(std::string field, std::string_view item);            // 1524

// Rate of riding.
Finding rate_not_known();                   // 1530
Finding rate_from_few(std::size_t points);  // 1531
Finding not_ridden();                       // 1532
Finding latest_day_open();                  // 1533

}  // namespace camside::remarks
