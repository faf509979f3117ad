// Numbers 1800-1899: the buyer's look-over.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "findings/finding.hpp"
#include "units/quantity.hpp"

namespace camside::remarks::look_over {

// Refusals.
Finding no_engine_of_that_year(std::optional<int> year);              // 1801
Finding no_such_engine(std::string_view id);                          // 1802
Finding no_such_question(std::string field, std::string_view id);     // 1803
Finding answered_twice(std::string field, std::string_view id);       // 1804
Finding no_such_risk(std::string field, std::string_view id);         // 1805
Finding costs_out_of_order(std::string field);                        // 1806
Finding cost_twice(std::string field, std::string_view id);           // 1807
Finding life_twice(std::string field, std::string_view id);           // 1808
Finding reading_of_no_proof(std::string field, std::string_view id);  // 1809

// What the answer rests on.
Finding cold_start_void(bool warm);                                                                    // 1820
Finding engine_not_settled(const std::vector<std::string>& names, const std::string& counted);         // 1821
Finding year_of_no_engine(std::optional<int> year, std::string_view own);                              // 1836
Finding drive_not_asked(const std::string& counted);                                                   // 1837
Finding drive_not_settled(const std::vector<std::string>& names, const std::string& counted);          // 1838
Finding drive_unlike_engine(const std::string& drive, const std::string& engine);                      // 1839
Finding proof_of_a_day_to_come(std::string field, Date day, Date today);                               // 1840
Finding proof_too_old(std::string field, std::string_view risk, Distance since, Distance every);       // 1841
Finding proof_without_distance(std::string field, std::string_view risk);                              // 1842
Finding year_and_engine_differ(std::string_view engine);                                               // 1822
Finding no_odometer();                                                                                 // 1823
Finding rare_odometer(Distance odometer);                                                              // 1824
Finding few_miles(Distance odometer);                                                                  // 1829
Finding nothing_seen();                                                                                // 1825
Finding silence_proves_nothing(std::string field, std::string_view question);                          // 1826
Finding good_answer_hidden(std::string field, std::string_view question, std::string_view hidden_by);  // 1827
Finding proof_above_odometer(std::string field, Distance reading, Distance odometer);                  // 1828

// Money, and when to walk.
Finding placeholder_money(const std::vector<std::string>& risks);  // 1830
Finding no_asking_price();                                         // 1831
Finding rare_price(Money asking);                                  // 1835
Finding costs_more_than_asked();                                   // 1832
Finding asking_taken_as_sound();                                   // 1833
Finding walk_away(const std::string& why);                         // 1834

}  // namespace camside::remarks::look_over
