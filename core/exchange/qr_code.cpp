#include "exchange/qr_code.hpp"

#include <qrcodegen.h>

#include <algorithm>
#include <array>

namespace camside::exchange {

namespace {

constexpr std::size_t most_bits = std::size_t{1276} * 8;  // of version 25-L (ISO/IEC 18004, table 7)
// What tells the mode and the length of a segment, in versions 10 to 26.
constexpr std::size_t before_bytes = 4 + 16;
constexpr std::size_t before_digits = 4 + 12;

std::vector<std::uint8_t> room_for(qrcodegen_Mode mode, std::size_t letters) {
  return std::vector<std::uint8_t>(std::max<std::size_t>(1, qrcodegen_calcSegmentBufferSize(mode, letters)));
}

}  // namespace

int QrCode::side() const {
  return qrcodegen_getSize(made_.data());
}

bool QrCode::dark(int x, int y) const {
  return qrcodegen_getModule(made_.data(), x, y);
}

std::size_t most_digits(std::size_t address_length) {
  const std::size_t before = before_bytes + 8 * address_length + before_digits;
  if (before >= most_bits) return 0;
  constexpr std::array<std::size_t, 10> in_rest{0, 0, 0, 0, 1, 1, 1, 2, 2, 2};  // digits that 0 to 9 bits take
  const std::size_t left = most_bits - before;
  return left / 10 * 3 + in_rest[left % 10];
}

std::optional<QrCode> qr_code(std::string_view address, const std::string& digits) {
  if (8 * address.size() >= most_bits || digits.size() > most_digits(address.size())) return std::nullopt;
  std::vector<std::uint8_t> bytes_room = room_for(qrcodegen_Mode_BYTE, address.size());
  std::vector<std::uint8_t> digits_room = room_for(qrcodegen_Mode_NUMERIC, digits.size());
  const std::vector<std::uint8_t> bytes(address.begin(), address.end());
  std::array<qrcodegen_Segment, 2> segments{qrcodegen_makeBytes(bytes.data(), bytes.size(), bytes_room.data()),
                                            qrcodegen_makeNumeric(digits.c_str(), digits_room.data())};
  std::vector<std::uint8_t> work(qrcodegen_BUFFER_LEN_FOR_VERSION(most_version));
  QrCode code;
  code.made_.resize(work.size());
  if (!qrcodegen_encodeSegmentsAdvanced(segments.data(), segments.size(), qrcodegen_Ecc_LOW, qrcodegen_VERSION_MIN,
                                        most_version, qrcodegen_Mask_AUTO, true, work.data(), code.made_.data()))
    return std::nullopt;
  return code;
}

}  // namespace camside::exchange
