#include "log/bike_code.hpp"

#include <zlib.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

#include "log/log_remarks.hpp"
#include "log/bike_code_primer.hpp"
#include "log/log.hpp"

namespace camside::records {

namespace {

constexpr char format_number = '2';
constexpr std::size_t head_bytes = 4;
constexpr std::size_t most_digits_read = 16000;  // no code has so many

// Digits that 0 to 7 bytes take.
constexpr std::array<std::size_t, 8> digits_for{0, 3, 5, 8, 10, 13, 15, 17};

std::string digits_of(std::string_view bytes) {
  std::string digits;
  for (std::size_t i = 0; i < bytes.size(); i += 7) {
    const std::string_view some = bytes.substr(i, 7);
    std::uint64_t value = 0;
    for (const char c : some) value = value << 8U | static_cast<unsigned char>(c);
    std::string group(digits_for[some.size()], '0');
    for (auto digit = group.rbegin(); digit != group.rend(); ++digit, value /= 10)
      *digit = static_cast<char>('0' + value % 10);
    digits += group;
  }
  return digits;
}

std::optional<std::string> bytes_of(std::string_view digits) {
  std::string bytes;
  for (std::size_t i = 0; i < digits.size(); i += 17) {
    const std::string_view some = digits.substr(i, 17);
    const auto* const count = std::find(digits_for.begin(), digits_for.end(), some.size());
    if (count == digits_for.end()) return std::nullopt;
    std::uint64_t value = 0;
    for (const char c : some) value = value * 10 + static_cast<std::uint64_t>(c - '0');
    const auto length = static_cast<unsigned>(count - digits_for.begin());
    if (value >> (8 * length) != 0) return std::nullopt;
    for (unsigned byte = length; byte-- > 0;) bytes += static_cast<char>(value >> (8 * byte) & 255U);
  }
  return bytes;
}

std::string head_of(std::string_view text) {
  std::string head(head_bytes, '\0');
  std::uint64_t rest = fingerprint(text);
  for (char& byte : head) {
    byte = static_cast<char>(rest & 255U);
    rest >>= 8U;
  }
  return head;
}

// ---- deflate without a head of its own (RFC 1951); both sides know the primer beforehand

constexpr int plain_deflate = -15;  // the largest window, no head, no checksum

const Bytef* bytes(std::string_view text) {
  return reinterpret_cast<const Bytef*>(text.data());
}

// From `in` to the end of `out`.
void connect(z_stream& stream, std::string_view in, std::string& out) {
  stream.next_in = bytes(in);
  stream.avail_in = static_cast<uInt>(in.size());
  stream.next_out = reinterpret_cast<Bytef*>(out.data());
  stream.avail_out = static_cast<uInt>(out.size());
}

std::optional<std::string> deflated(std::string_view text) {
  constexpr int most_memory = 9;
  z_stream stream{};
  if (deflateInit2(&stream, Z_BEST_COMPRESSION, Z_DEFLATED, plain_deflate, most_memory, Z_DEFAULT_STRATEGY) != Z_OK)
    return std::nullopt;
  const int primed = deflateSetDictionary(&stream, bytes(bike_code_primer), static_cast<uInt>(bike_code_primer.size()));
  std::string packed(deflateBound(&stream, static_cast<uLong>(text.size())), '\0');
  connect(stream, text, packed);
  const bool whole = primed == Z_OK && deflate(&stream, Z_FINISH) == Z_STREAM_END;
  packed.resize(packed.size() - stream.avail_out);
  deflateEnd(&stream);
  return whole ? std::optional(packed) : std::nullopt;
}

// Nothing unless it is deflate from its first byte to its last, and no more than may come out of it.
std::optional<std::string> inflated(std::string_view packed) {
  z_stream stream{};
  if (inflateInit2(&stream, plain_deflate) != Z_OK) return std::nullopt;
  const int primed = inflateSetDictionary(&stream, bytes(bike_code_primer), static_cast<uInt>(bike_code_primer.size()));
  std::string text(most_code_text, '\0');
  connect(stream, packed, text);
  const bool whole = primed == Z_OK && inflate(&stream, Z_FINISH) == Z_STREAM_END && stream.avail_in == 0;
  text.resize(text.size() - stream.avail_out);
  inflateEnd(&stream);
  return whole ? std::optional(text) : std::nullopt;
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

std::string_view trimmed(std::string_view text) {
  const auto blank = [](char c) { return c == ' ' || c == '\n' || c == '\r' || c == '\t'; };
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

Finding damaged() {
  return remarks::bike_code_damaged("its address was cut off or changed on the way");
}

}  // namespace

std::optional<std::string> code_of_bike(std::string_view exported) {
  if (exported.size() > most_code_text) return std::nullopt;
  const auto packed = deflated(exported);
  if (!packed) return std::nullopt;
  return format_number + digits_of(head_of(exported) + *packed);
}

bool is_bike_code(std::string_view bytes) {
  constexpr std::size_t longest_address = 1000;
  bytes = trimmed(bytes);
  if (bytes.substr(0, code_mark.size()) == code_mark) return true;
  return bytes.substr(0, 4) == "http" && bytes.substr(0, longest_address).find(code_mark) != std::string_view::npos;
}

tl::expected<std::string, Finding> text_of_bike_code(std::string_view bytes) {
  std::string_view digits = trimmed(bytes);
  digits.remove_prefix(digits.find(code_mark) + code_mark.size());
  if (digits.size() > most_digits_read)
    return tl::unexpected(remarks::bike_code_damaged("its address is far too long"));
  if (digits.empty() || !std::all_of(digits.begin(), digits.end(), is_digit)) return tl::unexpected(damaged());
  if (digits.front() < format_number) return tl::unexpected(remarks::bike_code_damaged("an early Camside made it"));
  if (digits.front() > format_number) return tl::unexpected(remarks::bike_code_newer());
  const auto packed = bytes_of(digits.substr(1));
  if (!packed || packed->size() <= head_bytes) return tl::unexpected(damaged());
  const std::string_view all(*packed);
  auto text = inflated(all.substr(head_bytes));
  if (!text || head_of(*text) != all.substr(0, head_bytes)) return tl::unexpected(damaged());
  return std::move(*text);
}

}  // namespace camside::records
