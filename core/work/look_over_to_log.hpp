// From a look-over into the log of the bikes, after the purchase: the bike, its odometer, what was seen, and what has
// no proof. Nothing is asked.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "calc/look_over/look_over.hpp"
#include "log/log_entry.hpp"

namespace camside::work {

// The entries of a new bike of this id; the first one are its facts.
std::vector<records::Entry> bike_of(const std::string& id, const records::Record& looked_over,
                                    const look_over::Input& in, const look_over::Result& result,
                                    const std::function<records::Stamp()>& next_stamp);

}  // namespace camside::work
