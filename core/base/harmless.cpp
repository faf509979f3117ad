#include "base/harmless.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

namespace camside {

namespace {

struct Character {
  std::size_t bytes = 1;
  bool shown = false;
};

bool continues(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

// How many bytes the character has that begins with this one; 0: none begins so.
std::size_t length_after(unsigned char first) {
  if (first < 0x80U) return 1;
  if (first < 0xC2U) return 0;
  if (first < 0xE0U) return 2;
  if (first < 0xF0U) return 3;
  return first < 0xF5U ? 4 : 0;
}

std::uint32_t code_point(std::string_view bytes) {
  if (bytes.size() == 1) return static_cast<unsigned char>(bytes.front());
  std::uint32_t code = static_cast<unsigned char>(bytes.front()) & (0x7FU >> bytes.size());
  for (const char c : bytes.substr(1)) code = (code << 6U) | (static_cast<unsigned char>(c) & 0x3FU);
  return code;
}

bool well_formed(std::uint32_t code, std::size_t bytes) {
  constexpr std::uint32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
  const bool half_of_a_pair = code >= 0xD800 && code <= 0xDFFF;
  return code >= least[bytes] && code <= 0x10FFFF && !half_of_a_pair;
}

bool does_harm(std::uint32_t code) {
  const auto between = [code](std::uint32_t low, std::uint32_t high) { return code >= low && code <= high; };
  return code < 0x20 || between(0x7F, 0x9F) || code == 0x061C || between(0x200E, 0x200F) || between(0x2028, 0x202E) ||
         between(0x2066, 0x2069) || code == 0xFEFF;
}

Character first_of(std::string_view text) {
  const std::size_t bytes = length_after(static_cast<unsigned char>(text.front()));
  if (bytes == 0 || bytes > text.size()) return {};
  for (const char c : text.substr(1, bytes - 1))
    if (!continues(c)) return {};
  const std::uint32_t code = code_point(text.substr(0, bytes));
  return well_formed(code, bytes) ? Character{bytes, !does_harm(code)} : Character{};
}

// How much of the front is plain ASCII, which most texts are all through.
std::size_t plain_start(std::string_view text) {
  const auto plain = [](char c) { return c >= 0x20 && c < 0x7F; };
  return static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), plain) - text.begin());
}

bool breaks_a_line(std::string_view text) {
  return text.front() == '\n' || text.substr(0, 2) == "\r\n";
}

std::string made_harmless(std::string_view text, std::size_t most, bool lines) {
  std::string shown;
  while (!text.empty()) {
    const std::size_t plain = std::min(plain_start(text), most - shown.size());
    shown += text.substr(0, plain);
    text.remove_prefix(plain);
    if (text.empty()) return shown;
    const Character c = first_of(text);
    const bool stays = c.shown || (lines && breaks_a_line(text));
    const std::size_t wanted = stays ? c.bytes : 1;
    if (shown.size() + wanted > most) return shown + "…";
    shown += stays ? text.substr(0, c.bytes) : "?";
    text.remove_prefix(c.bytes);
  }
  return shown;
}

}  // namespace

std::string harmless(std::string_view text) {
  return made_harmless(text, std::string::npos, false);
}

std::string harmless_lines(std::string_view text) {
  return made_harmless(text, std::string::npos, true);
}

std::string harmless_json(std::string_view text) {
  std::string written;
  while (true) {
    const std::size_t plain = plain_start(text);
    written += text.substr(0, plain);
    text.remove_prefix(plain);
    if (text.empty()) return written;
    const Character c = first_of(text);
    const std::string_view character = text.substr(0, c.bytes);
    if (c.shown)
      written += character;
    else
      written += fmt::format("\\u{:04x}", code_point(character));
    text.remove_prefix(c.bytes);
  }
}

std::string harmless_start(std::string_view text, std::size_t most) {
  return made_harmless(text, most, false);
}

}  // namespace camside
