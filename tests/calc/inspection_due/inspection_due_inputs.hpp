// Due lists that several test programs start from.
#pragma once

#include "calc/inspection_due/inspection_due.hpp"

namespace camside::inspection_due {

inline Date day(int y, int m, int d) {
  return Date{std::chrono::year{y}, std::chrono::month{static_cast<unsigned>(m)},
              std::chrono::day{static_cast<unsigned>(d)}};
}

inline LogEntry reading(Date date, double miles) {
  return {date, Distance::miles(miles), {}};
}

inline LogEntry swap(Date date, double old_miles, double new_miles) {
  return {date, Distance::miles(old_miles), Distance::miles(new_miles)};
}

inline Service proven(Date date, double miles) {
  return {date, Distance::miles(miles), true, ""};
}

inline Item item(const char* name, std::optional<double> miles, std::optional<int> months) {
  Item i;
  i.name = name;
  if (miles) i.every = Distance::miles(*miles);
  i.months = months;
  i.source = Source::common_practice();
  return i;
}

// Brindle of the demo scenario: 41,300 mi, no papers for the tensioners.
inline Input brindle() {
  Input in;
  in.today = day(2024, 5, 14);
  in.engine = EngineYears::SprungChain;
  in.log = {reading(day(2024, 5, 14), 41'300.0)};
  return in;
}

}  // namespace camside::inspection_due
