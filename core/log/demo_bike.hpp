// The bike of the demo scenario with its log, to look round before one has entered a bike of one's own. Invented; every
// entry says so in its note and is deleted like any other.
#pragma once

#include <functional>
#include <string_view>
#include <vector>

#include "log/log_view.hpp"

namespace camside::records {

constexpr std::string_view invented_mark = "Invented data of the demo scenario; this bike does not exist";

std::vector<Entry> demo_bike(const std::function<Stamp()>& next_stamp);
bool is_invented(const Log& log, const Bike& bike);

// The deletions that remove a bike: one for each line that still stands.
std::vector<Entry> removal_of(const Log& log, const Bike& bike, const std::function<Stamp()>& next_stamp);

}  // namespace camside::records
