// Numbers 1300-1399: gears to order.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "findings/finding.hpp"
#include "units/quantity.hpp"

namespace camside::remarks {

// The engine as entered.
Finding no_such_name(std::string field, std::string_view kind, const std::string& name);     // 1301
Finding same_name_twice(std::string field, std::string_view kind, const std::string& name);  // 1302
Finding mesh_with_itself(std::string field, const std::string& shaft);                       // 1303
Finding nothing_to_solve();                                                                  // 1304
Finding shared_gear_unlike(std::string field, const std::string& gear);                      // 1305
Finding too_many_combinations(std::size_t most);                                             // 1306
Finding lash_upside_down(std::string field, Length low, Length high);                        // 1307
Finding no_window(std::string field, const std::string& mesh);                               // 1308
Finding wanted_lash_upside_down(std::string field, Length lowest, Length highest);           // 1309

// Sizes and train.
Finding size_meaning_not_said(std::string field, const std::string& gear);            // 1310
Finding size_far_from_fitted(std::string field, const std::string& size, Length by);  // 1314
Finding train_contradicts(std::string field, const std::string& shaft);               // 1316

Finding train_not_checked();  // 1317

// The answer.
Finding no_uncertainty(std::string field, const std::string& mesh);                             // 1320
Finding other_method(std::string field, const std::string& mesh, const std::string& method);    // 1321
Finding nothing_fits(const std::string& meshes, const std::string& nearest, Length by);         // 1322
Finding would_fit(const std::string& gear, const std::string& sizes);                           // 1323
Finding swing_too_wide(std::string field, const std::string& mesh, Length swing, Length room);  // 1324
Finding not_in_stock(const std::string& choice);                                                // 1325
Finding no_one_gear_would_do(const std::string& meshes);                                        // 1326
Finding step_is_not_lash(std::string field, const std::string& text);                           // 1327
Finding pressed_gear_changes(const std::string& gear);                                          // 1328

}  // namespace camside::remarks
