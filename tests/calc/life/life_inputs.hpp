// Records of failures and survivors that several test programs start from.
#pragma once

#include <vector>

#include "calc/life/life.hpp"
#include "oracle/life_rows.hpp"

namespace camside::life {

inline std::vector<weibull::Time> times_of(const std::vector<oracle::LifeTime>& rows) {
  std::vector<weibull::Time> times;
  for (const auto& r : rows) times.push_back({r.at, r.failed});
  return times;
}

inline std::vector<weibull::Time> times_of(const std::vector<double>& failed) {
  std::vector<weibull::Time> times;
  for (const double at : failed) times.push_back({at, true});
  return times;
}

inline Input list_of(const std::vector<weibull::Time>& times) {
  Input in;
  in.part = "Tensioner shoe";
  for (const auto& t : times) in.parts.push_back({Distance::km(t.at), t.failed});
  return in;
}

inline Input shock_absorbers() {
  return list_of(times_of(oracle::shock_absorbers));
}

}  // namespace camside::life
