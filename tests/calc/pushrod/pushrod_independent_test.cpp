// The same answers by plain routes: counting flats one by one, and moving the crank degree by degree.
#include <gtest/gtest.h>

#include <cmath>

#include "calc/pushrod/pushrod.hpp"
#include "calc/pushrod/pushrod_inputs.hpp"
#include "oracle/pushrod_rows.hpp"

namespace camside::pushrod {
namespace {

// Walk flat by flat through the travel; of the two beside the wanted preload take the one nearer to the middle.
long walked_flats(double wanted_in, double travel_in, double flat_in) {
  long k = 0;
  while (static_cast<double>(k + 1) * flat_in <= wanted_in + 1e-12) ++k;
  if (std::abs(static_cast<double>(k) * flat_in - wanted_in) < 1e-11) return k;
  const double low = std::abs(static_cast<double>(k) * flat_in - travel_in / 2.0);
  const double high = std::abs(static_cast<double>(k + 1) * flat_in - travel_in / 2.0);
  return high < low - 1e-11 ? k + 1 : k;
}

TEST(PushrodIndependent, FlatsByWalkingThroughTheTravel) {
  for (const double tpi : {20.0, 24.0, 28.0, 32.0, 40.0}) {
    for (int thou = 20; thou <= 180; ++thou) {
      Input in = wet();
      in.pitch = ThreadPitch::threads_per_inch(tpi);
      in.preload = Length::thou(thou);
      const auto r = solve(in);
      ASSERT_TRUE(r.has_value());
      EXPECT_EQ(r->setting->set_flats, walked_flats(thou / 1000.0, 0.2, 1.0 / tpi / 6.0)) << tpi << " " << thou;
    }
  }
}

// A piston is at TDC when the single crankpin points along its cylinder. The front cylinder leans forward by half of
// 45°, the rear one back; turning with the wheels takes the pin from the top forward and down. Every other TDC of a
// cylinder is its compression TDC, and the firings alternate.
TEST(PushrodIndependent, CrankPositionsByTurningDegreeByDegree) {
  const double front = 22.5;
  const double rear = -22.5;
  const auto at_tdc = [](int crank_deg, double start, double cylinder) {
    const double pin = start + crank_deg;
    return std::abs(std::remainder(pin - cylinder, 360.0)) < 0.25;
  };
  // From the front's firing the rear reaches a TDC after 315 and 675 degrees; alternate firing makes the first its own.
  int first_rear = 0;
  while (!at_tdc(++first_rear, front, rear)) {
  }
  EXPECT_NEAR(forward_from(Cylinder::Front, Turning::WithWheels).in_deg(), first_rear, 1e-9);
  EXPECT_NEAR(forward_from(Cylinder::Rear, Turning::WithWheels).in_deg(), 720 - first_rear, 1e-9);
  int first_rear_backward = 0;
  while (!at_tdc(-(++first_rear_backward), front, rear)) {
  }
  // Backward the rear's TDC after 45° is the exhaust one; its compression TDC comes a turn later.
  EXPECT_NEAR(forward_from(Cylinder::Front, Turning::AgainstWheels).in_deg(), first_rear_backward + 360, 1e-9);
}

// Growth degree by degree instead of in one product.
TEST(PushrodIndependent, GrowthAddedUpKelvinByKelvin) {
  for (const auto& row : oracle::growth_rows) {
    double growth = 0.0;
    for (int k = 0; k < static_cast<int>(row.rise_kelvin); ++k) growth += row.length_mm * row.ppm_per_kelvin * 1e-6;
    EXPECT_NEAR(growth, row.growth_mm, row.tolerance_mm) << row.source;
  }
  Input in = wet();
  in.heat = heat_of_stack(23.1, 11.5);
  double change = 0.0;
  for (int k = 0; k < 80; ++k) change += 10.5 * 25.4 * 11.5e-6;
  for (int k = 0; k < 120; ++k) change -= 9.0 * 25.4 * 23.1e-6;
  EXPECT_NEAR(solve(in)->heat->change.in_mm(), change, 1e-12);
}

}  // namespace
}  // namespace camside::pushrod
