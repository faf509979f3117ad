// Numbers 1000-1099: runout. What each one is about stands beside it; its words are in runout_remarks.cpp.
#pragma once

#include <cstddef>
#include <string>

#include "findings/finding.hpp"
#include "units/quantity.hpp"

namespace camside::remarks::runout {

std::string degrees(Angle v);  // "31.2°"

// Refusals
Finding no_readings(std::string field, bool other_method_filled);                                         // 1001
Finding low_above_high(std::string field, Length low, Length high);                                       // 1002
Finding too_few_directions(std::string field, std::size_t directions);                                    // 1003
Finding gap_too_wide(std::string field, Angle from, Angle to, Angle gap);                                 // 1004
Finding beyond_indicator(std::string field, Length reading, Length range, bool given, std::size_t more);  // 1005
Finding limit_not_positive();                                                                             // 1006
Finding window_upside_down(Length least, Length most);                                                    // 1007
Finding zero_inside_swing(std::string field, Length low, Length high, Length turn);                       // 1008

// Doubts: none of these lets a verdict of Within stand
Finding one_swing_only(std::string field);                            // 1020
Finding too_few_to_prove(std::string field, std::size_t directions);  // 1021
Finding plate_on();                                                   // 1022
Finding wrong_contact(const std::string& where);                      // 1023
Finding setup_not_said(bool contact, bool plate);                     // 1024
Finding stands_on_frame();                                            // 1025
Finding read_on_a_flat(Length two_lobe);                              // 1026
Finding needle_may_have_passed_zero(std::string field, Length one, Length other, Length turn, bool turn_given,
                                    Length tir,
                                    Length proposed);                           // 1027
Finding thou_typed_as_inches(std::string field, Length tir);                    // 1028
Finding unit_or_zero_lost(std::string field, Length tir);                       // 1029
Finding finer_than_the_dial(std::string field, Length tir, Length graduation);  // 1030
Finding drift_changes_verdict();                                                // 1031
Finding only_one_side_of_dial(std::string field);                               // 1032

// Cautions
Finding main_bearing_first(Length play);                                              // 1040
Finding nothing_can_pass(Length uncertainty, Length limit);                           // 1041
Finding indicator_leans(Angle angle);                                                 // 1042
Finding indicator_moved(std::string field, Length closing_error, Length graduation);  // 1043
Finding turns_disagree(std::string field, Length by, Length graduation);              // 1044
Finding needle_did_not_move(std::string field);                                       // 1045
Finding not_at_the_gear();                                                            // 1046
Finding lash_swing_too_wide(Length judged, Length swing, Length window);              // 1047
Finding declared_too_good(Length declared, Length shown);                             // 1048
Finding gear_high_spot_unknown(Length least, Length most);                            // 1049
Finding bent_shaft_hurts_with_chains();                                               // 1050

// Notes
Finding no_play_given();                                                       // 1060
Finding closing_reading_taken(std::string field, std::size_t count);           // 1061
Finding ovality_not_determined();                                              // 1062
Finding no_limit();                                                            // 1063
Finding ceiling_not_welcome(Length limit);                                     // 1064
Finding dial_turn_taken_out(std::string field, Length turn, bool turn_given);  // 1065
Finding no_stated_error();                                                     // 1066
Finding swing_or_offset(std::string field, Length high);                       // 1067
Finding cranks_shift();                                                        // 1068
Finding readings_confirmed();                                                  // 1069
Finding swing_doubled();                                                       // 1070

// Two planes
Finding wheels_scissored(Length opposed);                       // 1080
Finding wheels_pinched_or_spread(bool pinched, Length common);  // 1081
Finding common_part_is_setup(Length common, Angle at);          // 1082
Finding pattern_not_named(const std::string& missing);          // 1083
Finding angles_turned_round(std::string field);                 // 1084
Finding v_blocks_not_named();                                   // 1085
Finding signs_turned_round();                                   // 1086
Finding opposed_part_elsewhere(Length opposed, Angle at);       // 1087
Finding too_much_for_gears();                                   // 1088
Finding no_high_spot(std::string field);                        // 1089

}  // namespace camside::remarks::runout
