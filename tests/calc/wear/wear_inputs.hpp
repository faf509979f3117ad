// Wear records that several test programs start from.
#pragma once

#include <vector>

#include "calc/wear/wear.hpp"

namespace camside::wear {

struct Row {
  double miles;
  double inches;
};

// A shoe that was looked at properly: nothing broken, ball anvil, half a thou to read, limit 0.080 in.
inline Input shoe(const std::vector<Row>& rows) {
  Input in;
  in.part = "Rear outer shoe";
  for (const Row& r : rows) in.readings.push_back({Distance::miles(r.miles), Length::inches(r.inches)});
  in.seen = {false, false, false, false};
  in.anvil = Anvil::BallOrPin;
  in.graduation = Length::thou(0.5);
  in.repeatability = Length::thou(1.0);
  in.limit = Limit<Length>{Length::inches(0.080), Source::owner("the shop's own rule")};
  in.look_again = LookAgain{Distance::miles(900'000.0), Source::owner("never, for these tests of the line")};
  return in;
}

// Falls by about 3 thou in 1,000 mi and scatters a little.
inline Input steady_shoe() {
  return shoe({{41'300, 0.250}, {46'050, 0.2365}, {52'480, 0.2165}, {58'900, 0.199}, {64'200, 0.181}});
}

inline UsualWear usual(double thou, double miles) {
  return {Length::thou(thou), Distance::miles(miles), Source::owner("the shop's own record")};
}

}  // namespace camside::wear
