// A QR code (ISO/IEC 18004, model 2) of an address that ends in many digits: the address as bytes, the digits three in
// ten bits, so that they carry nearly as much as bytes would and stay part of an address. Error correction L, more only
// where it costs no room: what is drawn on a screen has no dirt on it, and smaller modules cost more readings than
// missing correction. Up to version 25 (117 modules a side): on a phone 65 mm wide a module is then 0.5 mm, which
// phones read at arm's length. The library qrcodegen makes it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace camside::exchange {

class QrCode {
 public:
  int version() const { return (side() - 17) / 4; }
  int side() const;  // modules, without the quiet zone
  bool dark(int x, int y) const;

 private:
  friend std::optional<QrCode> qr_code(std::string_view address, const std::string& digits);
  QrCode() = default;
  std::vector<std::uint8_t> made_;  // as the library keeps it
};

constexpr int most_version = 25;
constexpr int quiet_zone = 4;  // modules on each side

// The smallest one that holds both; none: it would be larger than most_version.
std::optional<QrCode> qr_code(std::string_view address, const std::string& digits);
std::size_t most_digits(std::size_t address_length);  // behind an address of so many bytes

}  // namespace camside::exchange
