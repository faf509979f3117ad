// Now, by the clock and the time zone of this machine, as records write it. The core has no clock.
#pragma once

#include <chrono>
#include <ctime>
#include <string>

#include "records/iso_time.hpp"

namespace camside {

inline std::string time_now() {
  const auto now = std::chrono::system_clock::now();
  const std::time_t seconds = std::chrono::system_clock::to_time_t(now);
  std::tm local{};
  localtime_r(&seconds, &local);
  const auto ms = std::chrono::duration_cast<std::chrono::milliseconds>(now.time_since_epoch()).count();
  return records::iso_time(ms, static_cast<int>(local.tm_gmtoff / 60));
}

}  // namespace camside
