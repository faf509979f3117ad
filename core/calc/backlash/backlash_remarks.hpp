// Numbers 1200-1299: lash of a mesh round its cycle.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "findings/finding.hpp"
#include "units/quantity.hpp"

namespace camside::remarks {

// Positions. `field` is the path of the first reading concerned.
Finding turn_said_for_some(std::string field);                       // 1201
Finding angle_beyond_its_turn(std::string field, Angle angle);       // 1202
Finding no_readings();                                               // 1203
Finding closing_reading(std::string field);                          // 1204
Finding closing_reading_differs(std::string field, Length by);       // 1205
Finding one_turn_only(bool turns_given);                             // 1206
Finding too_few_positions(std::size_t given, int least, int usual);  // 1207
Finding gap_between_positions(Angle gap, Angle from);                // 1208
// 1209 was positions too close together for a curve and stays unused: half a degree apart, any six give one.

// Readings.
Finding loads_not_off();                                                                 // 1210
Finding all_readings_nothing(bool loads_off);                                            // 1211
Finding negative_reading(std::string field, Length reading, std::size_t count);          // 1212
Finding reading_beyond_indicator(std::string field, Length reading);                     // 1213
Finding reading_below_resolution(std::string field, Length reading, Length graduation);  // 1214
Finding needle_wrapped(std::string field, Length reading, Length proposal);              // 1215
Finding reading_large(std::string field, Length lash);                                   // 1216

// Contact and access.
Finding radius_looks_like_diameter(std::string field, Length radius, Length operating_radius);           // 1220
Finding radius_off_the_flank(std::string field, Length radius, Length low, Length high, bool diameter);  // 1221
Finding indicator_leans(std::string field, Angle angle);                                                 // 1222
Finding no_flank_behind_plate(std::string field);                                                        // 1223
Finding subtraction_behind_plate_only();                                                                 // 1224
Finding outer_lash_missing(std::string field);                                                           // 1225
Finding subtraction_rocks_front_cam();                                                                   // 1226
Finding radius_confirmed(std::string field, Length radius);                                              // 1227
Finding mesh_not_in_train(int teeth1, int teeth2);                                                       // 1228

// Play.
Finding play_not_given(std::string field);          // 1230
Finding rocked_hard(Length play);                   // 1231
Finding much_play(std::string field, Length play);  // 1232

// Way of reading.
Finding read_on_bench();                                            // 1240
Finding read_by_feel();                                             // 1241
Finding subtraction_below_nothing(std::string field, Length lash);  // 1242

// Window.
Finding window_empty(std::string field);                                         // 1250
Finding window_upside_down(std::string field, Length min, Length max);           // 1251
Finding window_for_another_method(const std::vector<std::string>& differences);  // 1252
Finding own_method_not_said(const std::vector<std::string>& items);              // 1253
Finding window_method_unknown();                                                 // 1254
Finding window_narrower_than_proof(Length width, Length uncertainties);          // 1255
Finding window_along_the_flank(const std::string& converted);                    // 1256

Finding lash_not_judged(const std::string& states, const std::string& meant_for);  // 1257
Finding too_tight();                                                               // 1258
Finding too_loose();                                                               // 1259
Finding temperatures_assumed(const std::string& what);                             // 1260

}  // namespace camside::remarks
