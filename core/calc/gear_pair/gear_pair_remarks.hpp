// Numbers 1100-1149: the gear pair and its tooth thickness.
#pragma once

#include <string>
#include <string_view>

#include "findings/finding.hpp"
#include "findings/remark.hpp"
#include "units/quantity.hpp"

namespace camside::remarks {

// Mesh and centre distance.
Finding centres_too_close(Length centre, Length least, const std::string& what_fits);  // 1101
struct CentreMiss {
  Length centre;
  Length expected;
  std::string what_fits;  // "diametral pitch 20 would fit"; may be empty
};
Finding centre_distance_missed(const CentreMiss& miss);     // 1102
Finding centre_distance_confirmed(const CentreMiss& miss);  // 1103

// The train.
Finding ratio_not_two_to_one(std::string field, const std::string& found);  // 1105
Finding ratio_not_one_to_one(std::string field, const std::string& found);  // 1106
Finding ratio_not_checked();                                                // 1107

// Pins. `gear` is the path of the gear, "gear1". 1110 was a pin that drops through and stays unused: a thickness that
// comes from a pin has room for it.
Finding pin_rides_on_tips(std::string field, Length contact, Length tip);            // 1111
Finding pin_on_the_bottom(std::string field, Length clearance);                      // 1112
Finding pin_does_not_stand_out(std::string field, Length over_pins, Length tip);     // 1113
Finding pins_inside_base_circle(std::string field, Length over_pins, Length least);  // 1114
Finding odd_teeth_over_pins(std::string field, int teeth);                           // 1115
Finding odd_helical_needs_balls(std::string field);                                  // 1116
Finding pin_on_no_involute(std::string field, Length pin);                           // 1118

// Span.
Finding span_touches_above_tips(std::string field, Length contact, Length tip);    // 1120
Finding span_touches_below_flank(std::string field, Length contact, Length form);  // 1121
Finding span_too_many_teeth(std::string field, int span_teeth, int teeth);         // 1122

// Thickness.
Finding no_tooth_or_no_space(std::string field, Length thickness, Length pitch);  // 1125
Finding unusual_shift(std::string field, double shift);                           // 1126

// Tips, roots, contact.
Finding pointed_tip(std::string field, bool assumed);                                                        // 1130
Finding thin_tip(std::string field, Length tip_thickness);                                                   // 1131
Finding tip_on_root(std::string field, Length overlap, bool assumed);                                        // 1132
Finding little_tip_clearance(std::string field, Length clearance, bool assumed);                             // 1133
Finding tip_interference(std::string field, Length reach, Length available, bool assumed);                   // 1134
Finding contact_ratio_below_one(double ratio, bool assumed);                                                 // 1135
Finding contact_ratio_low(double ratio);                                                                     // 1136
Finding helical_contact_unknown(double ratio);                                                               // 1137
Finding diameters_assumed(std::string field, Length tip, Length root, bool tip_assumed, bool root_assumed);  // 1138
Finding tip_below_root(std::string field, Length tip, Length root);                                          // 1139

// Lash.
Finding lash_below_nothing(Length lash);                           // 1140
Finding measured_lash_unused(Length measured, Length from_sizes);  // 1141
Finding thinning_shared();                                         // 1142

Finding no_finite_result(const std::string& figure);  // 1143

}  // namespace camside::remarks
