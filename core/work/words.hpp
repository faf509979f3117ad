// What work writes into a bike's log and shows as names; the words of the screens are in screens/words.
#pragma once

#include <cstddef>
#include <string>

namespace camside::work::words {

std::string bike_nth(std::size_t n);
std::string seen_at(const std::string& day);
const char* yes();
const char* no();
const char* nothing_shown();
const char* proof_seen();
const char* proof_without_reading();
const char* engine_not_cold();

}  // namespace camside::work::words
