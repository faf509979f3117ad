#include "records/new_id.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdint>
#include <random>

namespace camside::records {

std::string new_id() {
  std::random_device chance;
  std::array<std::uint32_t, 4> w{};
  for (std::uint32_t& word : w) word = static_cast<std::uint32_t>(chance());
  w[1] = (w[1] & 0xFFFF0FFFU) | 0x00004000U;  // version 4
  w[2] = (w[2] & 0x3FFFFFFFU) | 0x80000000U;  // the variant of RFC 9562
  return fmt::format("{:08x}-{:04x}-{:04x}-{:04x}-{:04x}{:08x}", w[0], w[1] >> 16U, w[1] & 0xFFFFU, w[2] >> 16U,
                     w[2] & 0xFFFFU, w[3]);
}

}  // namespace camside::records
