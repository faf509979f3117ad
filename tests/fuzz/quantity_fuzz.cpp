// Any text given to the quantity parser: a finite value whose text reads back as the same, or a reason and a remedy.
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "units/parse.hpp"

namespace {

using camside::Kind;

void insist(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "broken promise: %s\n", what);
  std::abort();
}

void check(Kind kind, std::string_view text, const camside::ParseOptions& options) {
  const auto read = camside::parse(kind, text, options);
  if (!read) {
    insist(!read.error().reason.empty(), "a refusal says why");
    return;
  }
  insist(std::isfinite(read->base), "a value is finite");
  const auto again = camside::parse(kind, read->text, {.flats_per_turn = options.flats_per_turn});
  insist(again.has_value(), "its text reads back");
  insist(again->text == read->text && again->base == read->base, "its text means the same");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < 1) return 0;
  const auto kind = static_cast<Kind>(data[0] % (static_cast<int>(Kind::Money) + 1));
  const std::string_view text(reinterpret_cast<const char*>(data + 1), size - 1);
  check(kind, text, {});
  check(kind, text, {.default_unit = &camside::units_of(kind).front()});
  camside::parse_date(text).has_value();
  return 0;
}
