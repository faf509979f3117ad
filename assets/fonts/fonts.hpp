// The bytes of the screens' fonts (B612, trimmed by scripts/make-fonts), built into both apps uncompressed: the page is
// compressed as a whole on its way, and compressing twice makes it larger.
#pragma once

#include <cstddef>
#include <span>

namespace camside::fonts {

std::span<const unsigned char> regular();
std::span<const unsigned char> bold();

}  // namespace camside::fonts
