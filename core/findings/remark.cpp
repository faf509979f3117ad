#include "findings/remark.hpp"

#include <fmt/format.h>

namespace camside::remarks {

std::string decimal(double v, int decimals) {
  std::string text = fmt::format("{:.{}f}", v, decimals);
  if (text.front() != '-') return text;
  const bool nothing = text.find_first_of("123456789") == std::string::npos;
  return nothing ? text.substr(1) : "−" + text.substr(1);
}

std::string inch_and_mm(Length v, int mm_decimals) {
  return fmt::format("{} in ({} mm)", decimal(v.in_inches(), mm_decimals + 1), decimal(v.in_mm(), mm_decimals));
}

std::string mm_only(Length v, int decimals) {
  return fmt::format("{} mm", decimal(v.in_mm(), decimals));
}

}  // namespace camside::remarks
