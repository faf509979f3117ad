#include "screens/new_id.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <random>

namespace camside::screens {

std::string new_id() {
  std::random_device source;
  const auto word = [&source] { return (std::uint64_t{source()} << 32) | source(); };
  const std::uint64_t a = (word() & ~std::uint64_t{0xF000}) | 0x4000;                // version 4
  const std::uint64_t b = (word() & 0x3FFF'FFFF'FFFF'FFFF) | 0x8000'0000'0000'0000;  // variant 10
  return fmt::format("{:08x}-{:04x}-{:04x}-{:04x}-{:012x}", a >> 32, (a >> 16) & 0xFFFF, a & 0xFFFF, b >> 48,
                     b & 0xFFFF'FFFF'FFFF);
}

}  // namespace camside::screens
