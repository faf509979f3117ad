// Any text given to the quantity parser: a finite value whose text reads back as the same, that can be shown and read
// back from what is shown; or a reason and a remedy in words that can stand anywhere.
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "units/format.hpp"

namespace {

using camside::Kind;

void insist(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "broken promise: %s\n", what);
  std::abort();
}

// What was typed may be any bytes; what is said about it is printable UTF-8.
bool printable(std::string_view words) {
  for (std::size_t i = 0; i < words.size();) {
    const auto first = static_cast<unsigned char>(words[i]);
    const std::size_t length = first < 0x80 ? 1 : first < 0xe0 ? 2 : first < 0xf0 ? 3 : 4;
    if (first < 0x20 || first == 0x7f || (first >= 0x80 && first < 0xc2) || i + length > words.size()) return false;
    for (std::size_t k = 1; k < length; ++k)
      if ((static_cast<unsigned char>(words[i + k]) & 0xc0U) != 0x80U) return false;
    i += length;
  }
  return true;
}

void check_refusal(const camside::ParseRefusal& refusal) {
  insist(!refusal.reason.empty() && !refusal.remedy.empty(), "a refusal says why and what to write");
  insist(printable(refusal.reason) && printable(refusal.remedy), "and says it in printable words");
}

void check_shown(const camside::Entered& read) {
  for (const camside::Unit& unit : camside::units_of(read.kind)) {
    insist(!camside::format(read.base, unit).empty(), "it can be shown");
    insist(!camside::convert(read, unit).empty(), "it can be converted");
  }
  const double size = std::fabs(read.base);
  if (read.unit->zero_hundredths != 0 || size < 1e-250 || size > 1e250) return;
  const auto again = camside::parse(read.kind, camside::format_full(read.base, *read.unit));
  insist(again.has_value() && again->base == read.base, "all its digits read back");
}

void check(Kind kind, std::string_view text, const camside::ParseOptions& options) {
  const auto read = camside::parse(kind, text, options);
  if (!read) return check_refusal(read.error());
  insist(std::isfinite(read->base), "a value is finite");
  const auto again = camside::parse(kind, read->text, {.flats_per_turn = options.flats_per_turn});
  insist(again.has_value(), "its text reads back");
  insist(again->text == read->text && again->base == read->base, "its text means the same");
  check_shown(*read);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < 1) return 0;
  const auto kind = static_cast<Kind>(data[0] % (static_cast<int>(Kind::Money) + 1));
  const std::string_view text(reinterpret_cast<const char*>(data + 1), size - 1);
  check(kind, text, {});
  check(kind, text, {.default_unit = &camside::units_of(kind).front()});
  if (const auto date = camside::parse_date(text); !date) check_refusal(date.error());
  return 0;
}
