// Numbers 1400-1499: pushrods. The cautions that stand at their steps are in findings/safety.hpp.
#pragma once

#include <string>
#include <string_view>

#include "findings/finding.hpp"
#include "units/quantity.hpp"

namespace camside::remarks {

// Entries refused.
Finding pitch_missing();                                         // 1401
Finding pitch_twice(std::string field, std::string_view other);  // 1402
Finding pitch_unlikely(std::string field, ThreadPitch pitch);    // 1403
Finding preload_without_travel();                                // 1404
Finding travel_missing();                                        // 1405
Finding preload_beyond_travel(Length preload, Length travel);    // 1406
Finding travel_like_a_height(Length travel, bool refused);       // 1407
Finding preload_on_solid_lifter(Length preload);                 // 1408
Finding fixed_rods_do_not_turn();                                // 1409

// Preload, margins and what was counted.
Finding margin_top_short(Length margin, Length least);                                       // 1410
Finding margin_bottom_short(Length margin, Length least);                                    // 1411
Finding travel_too_small_for_margins(Length travel, Length least);                           // 1412
Finding margins_not_known();                                                                 // 1413
Finding rounded_to_nearest();                                                                // 1414
Finding preload_is_half_of_travel(Length preload);                                           // 1415
Finding count_mixed_up(const std::string& counted, const std::string& likely);               // 1416
Finding counted_is_not_the_setting(const std::string& counted, const std::string& setting);  // 1417
Finding plunger_at_its_end(bool bottomed);                                                   // 1418
Finding solid_lifter_holds_valve();                                                          // 1419

// The way and its direction.
Finding direction_known(std::string_view lengthens);  // 1420
Finding direction_unknown();                          // 1421
Finding way_wet();                                    // 1422
Finding way_dry();                                    // 1423
Finding way_not_sure();                               // 1424
Finding way_solid();                                  // 1425
Finding way_fixed();                                  // 1426
Finding zero_late_if_dry();                           // 1427
Finding locknut();                                    // 1428

// Release.
Finding release_rule(bool waits, Duration least_wait);                                             // 1430
Finding rod_check_now(std::string field, std::string_view rod);                                    // 1431
Finding rod_still_up(std::string field, std::string_view rod);                                     // 1432
Finding rod_loose(std::string field, std::string_view rod);                                        // 1433
Finding rod_spins_early(std::string field, std::string_view rod, Duration since, Duration least);  // 1434
Finding engine_released();                                                                         // 1435
Finding rod_listed_twice(std::string field, std::string_view rod);                                 // 1436
Finding picture_incomplete();                                                                      // 1437
Finding engine_locked();                                                                           // 1438

// Crank.
Finding find_compression_tdc(std::string_view first, Angle forward, std::string_view second);  // 1440
Finding both_on_the_heel();                                                                    // 1441

// Heat.
Finding engine_warm_at_setting(Temperature at, Length more_when_cold);  // 1450
Finding rise_unlikely(std::string field, std::string_view part, Temperature hot, TemperatureDifference rise,
                      bool confirmed);                                         // 1451, 1452
Finding rod_as_hot_as_stack();                                                 // 1453
Finding expansions_assumed();                                                  // 1454
Finding lash_opens(std::string_view when, Length lash, bool solid);            // 1455
Finding plunger_bottoms(std::string_view when, Length over);                   // 1456
Finding hot_margin_short(std::string_view when, Length margin, Length least);  // 1457
Finding stack_missing();                                                       // 1458
Finding valve_side_not_counted();                                              // 1459

// Length, engagement, collapsed length.
Finding new_length(Length change);                       // 1460
Finding length_changes_fixed_preload(Length preload);    // 1461
Finding engagement_short(Length engaged, Length least);  // 1470
Finding engagement_rule();                               // 1471
Finding collapsed_too_long(Length by);                   // 1480
Finding room_not_on_heel();                              // 1481
Finding longest_too_short(Length by);                    // 1482
Finding tube_in_the_way();                               // 1483

// Save or cut.
Finding boxes_come_off();                              // 1490
Finding look_at_boxes_first();                         // 1491
Finding lift_beyond_fixed(Length lift, Length range);  // 1492
Finding lift_suits_fixed(Length lift, Length range);   // 1493
Finding rods_wanted_whole();                           // 1494
Finding cutting_is_quick();                            // 1495
Finding lift_not_given();                              // 1496

}  // namespace camside::remarks
