#include "work/words.hpp"

namespace camside::work::words {

std::string bike_nth(std::size_t n) {
  return "Bike " + std::to_string(n);
}

std::string seen_at(const std::string& day) {
  return "Look-over of " + day;
}

const char* yes() {
  return "Yes";
}
const char* no() {
  return "No";
}
const char* nothing_shown() {
  return "No proof";
}
const char* proof_seen() {
  return "proof seen";
}
const char* proof_without_reading() {
  return "proof seen; log it as done with its day and odometer, so that what is due counts from there";
}
const char* engine_not_cold() {
  return "the engine was not stone cold, so it does not count";
}

}  // namespace camside::work::words
