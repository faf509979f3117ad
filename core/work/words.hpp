// What work writes into a bike's log and shows as names; the words of the screens are in screens/words.
#pragma once

#include <cstddef>
#include <string>

namespace camside::work::words {

std::string bike_nth(std::size_t n);
std::size_t number_of(const std::string& name);  // 3 of "Bike 3"; 0: it has none
std::string seen_at(const std::string& day);
const char* yes();
const char* no();
const char* nothing_shown();
const char* proof_seen();
const char* proof_without_reading();
const char* engine_not_cold();
const char* engine_taken();
const char* not_looked_at();

}  // namespace camside::work::words
