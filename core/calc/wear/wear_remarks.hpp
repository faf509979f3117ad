// Numbers 1600-1699: wear of a shoe over the distance.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "findings/finding.hpp"
#include "units/quantity.hpp"

namespace camside::remarks::wear {

std::string listed(const std::vector<std::string>& words);  // "cracked, stepped and chipped"

// Refusals.
Finding no_readings();                                 // 1601
Finding now_before_last(Distance now, Distance last);  // 1602

// Doubts: none of these lets a verdict of Within stand.
Finding flat_jaws();                                                        // 1620
Finding anvil_not_said();                                                   // 1621
Finding not_looked_at(const std::vector<std::string>& what);                // 1622
Finding thicker_than_before(std::string field, Length before, Length now);  // 1623
Finding thick_for_a_shoe(std::string field, Length thickness);              // 1624
Finding ridden_since(Distance now, Distance last, Distance no_sooner);      // 1625

// Cautions.
Finding damaged(const std::vector<std::string>& what);              // 1640
Finding too_thin();                                                 // 1641
Finding may_be_reached_already(Distance from);                      // 1642
Finding scatter_large(Length scatter, Length expected);             // 1643
Finding rests_on_usual_wear(const std::string& source);             // 1644
Finding far_beyond_the_readings(Distance ahead, Distance covered);  // 1645

// The forecast, and why there is none.
Finding two_readings_only();                                   // 1650
Finding one_distance_only();                                   // 1651
Finding slope_not_proven(double g);                            // 1652
Finding never_by_the_line();                                   // 1653
Finding beyond_any_odometer();                                 // 1654
Finding no_limit();                                            // 1655
Finding latest_open();                                         // 1656
Finding look_before_that(Distance look_by, Distance by_line);  // 1664
Finding not_a_clearance();                                     // 1657
Finding repeatability_taken(Length graduation);                // 1658
Finding limit_reached();                                       // 1659
Finding no_forecast_of_damaged();                              // 1660
Finding no_forecast_of_mixed();                                // 1661
Finding silence_proves_nothing();                              // 1662
Finding usual_wear_not_used();                                 // 1663

}  // namespace camside::remarks::wear
