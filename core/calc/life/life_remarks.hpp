// Numbers 1700-1799: lives of parts, failures and survivors.
#pragma once

#include <cstddef>
#include <string>

#include "findings/finding.hpp"
#include "units/quantity.hpp"

namespace camside::remarks::life {

// What can be said without a curve.
struct Bound {
  double shape = 0.0;
  Distance least;        // the characteristic life is above it, 95 % sure
  bool assumed = false;  // the shape was entered; else the usual one is taken
};

// Refusals.
Finding no_parts();                                                          // 1701
Finding no_failure(std::size_t parts, const Bound& bound);                   // 1702
Finding failures_only_at_the_end(std::size_t failures, const Bound& bound);  // 1703
Finding quantiles_out_of_order();                                            // 1704
Finding shape_out_of_range(double shape, double low, double high);           // 1705
Finding too_many_parts(std::size_t parts, std::size_t most);                 // 1706

// Cautions.
Finding one_failure();                                            // 1720
Finding few_failures(std::size_t failures);                       // 1721
Finding no_survivors(std::size_t failures);                       // 1722
Finding early_failures(double shape);                             // 1723
Finding very_steep(double shape);                                 // 1724
Finding beyond_the_record(Distance asked, Distance longest);      // 1725
Finding bound_without_failure(const Bound& bound);                // 1726
Finding bound_with_failures_at_the_end(const Bound& bound);       // 1727
Finding no_band(const std::string& source);                       // 1728
Finding life_beyond_the_record(Distance life, Distance longest);  // 1729
Finding unit_may_be_wrong(std::string field, Distance longest);   // 1730

// Notes.
Finding one_kind_of_part();    // 1740
Finding counted_from_new();    // 1741
Finding other_way_not_used();  // 1742

}  // namespace camside::remarks::life
