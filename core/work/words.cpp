#include "work/words.hpp"

#include <charconv>
#include <string_view>

namespace camside::work::words {

std::string bike_nth(std::size_t n) {
  return "Bike " + std::to_string(n);
}

std::size_t number_of(const std::string& name) {
  constexpr std::string_view begin = "Bike ";
  std::size_t n = 0;
  if (name.starts_with(begin)) std::from_chars(name.data() + begin.size(), name.data() + name.size(), n);
  return n;
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
  return "bill seen without a reading: it clears nothing until one is logged";
}
const char* engine_not_cold() {
  return "the engine was not stone cold, so it proves nothing";
}
const char* engine_taken() {
  return "The year fits several engines; the dearest was counted and is taken here. Correct it once it is known";
}
const char* not_looked_at() {
  return "Not looked at:";
}

}  // namespace camside::work::words
