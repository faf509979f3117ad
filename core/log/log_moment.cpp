#include "log/log_moment.hpp"

#include "records/iso_time.hpp"

namespace camside::records {

std::string moment_after(const std::string& now, std::int64_t last) {
  constexpr std::size_t to_the_second = 19;  // 2026-05-03T14:30:00
  constexpr std::int64_t second = 1000;
  constexpr std::int64_t minute = 60 * second;
  const auto utc = utc_milliseconds(now);
  const auto local = utc_milliseconds(now.substr(0, to_the_second) + "Z");
  if (!utc || !local) return now;
  const bool same_second = last >= *utc && last < *utc + second;
  const auto offset = static_cast<int>((*local - *utc / second * second) / minute);
  return iso_time(same_second ? last + 1 : *utc, offset);
}

}  // namespace camside::records
