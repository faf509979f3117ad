#include "units/quantity.hpp"

#include <gtest/gtest.h>

#include <limits>

#include "units/format.hpp"

namespace camside {
namespace {

TEST(Quantity, EntersAndLeavesByANamedUnit) {
  EXPECT_DOUBLE_EQ(Length::inches(1.0).in_mm(), 25.4);
  EXPECT_DOUBLE_EQ(Length::thou(3.1).in_mm(), 0.07874);
  EXPECT_DOUBLE_EQ(Length::um(78.74).in_thou(), 3.1);
  EXPECT_DOUBLE_EQ(Angle::turns(0.5).in_deg(), 180.0);
  EXPECT_DOUBLE_EQ(Distance::miles(2500.0).in_km(), 4023.36);
  EXPECT_DOUBLE_EQ(Expansion::ppm_per_kelvin(23.1).in_per_kelvin(), 23.1e-6);
  EXPECT_DOUBLE_EQ(Torque::lbf_ft(1.0).in_lbf_in(), 12.0);
  EXPECT_DOUBLE_EQ(Pressure::bar(2.5).in_pascals(), 250000.0);
  EXPECT_DOUBLE_EQ(ThreadPitch::threads_per_inch(32.0).per_turn().in_mm(), 0.79375);
  EXPECT_DOUBLE_EQ(Module::diametral_pitch(16.0).in_mm(), 1.5875);
  EXPECT_DOUBLE_EQ(Duration::seconds(90.0).in_minutes(), 1.5);
}

TEST(Quantity, DegreesInTheCodeAreTheDoubleOfDegreesTyped) {
  for (int tenths = 0; tenths <= 7200; ++tenths) {
    const double degrees = tenths / 10.0;
    const auto typed = parse(Kind::Angle, format_decimal(degrees, 1) + " °");
    ASSERT_TRUE(typed);
    if (tenths % 10 == 0) {
      EXPECT_EQ(typed->base, Angle::deg(degrees).base()) << degrees;
    }
    EXPECT_NEAR(typed->base, Angle::deg(degrees).base(), 2e-15) << degrees;
  }
}

TEST(Quantity, ATemperatureIsNotADifference) {
  EXPECT_NEAR(Temperature::fahrenheit(90.0).in_celsius(), 32.2222222222222, 1e-12);
  EXPECT_DOUBLE_EQ(TemperatureDifference::fahrenheit(90.0).in_kelvin(), 50.0);
  const TemperatureDifference rise = Temperature::fahrenheit(180.0) - Temperature::fahrenheit(90.0);
  EXPECT_NEAR(rise.in_kelvin(), 50.0, 1e-12);
  EXPECT_NEAR((Temperature::celsius(20.0) + rise).in_celsius(), 70.0, 1e-12);
}

TEST(Quantity, AddsScalesAndCompares) {
  const Length a = Length::mm(3.0);
  const Length b = Length::mm(1.5);
  EXPECT_EQ((a + b).in_mm(), 4.5);
  EXPECT_EQ((a - b).in_mm(), 1.5);
  EXPECT_EQ((-a).in_mm(), -3.0);
  EXPECT_EQ((2.0 * a).in_mm(), 6.0);
  EXPECT_EQ((a / 2.0).in_mm(), 1.5);
  EXPECT_EQ(a / b, 2.0);
  EXPECT_LT(b, a);
  EXPECT_EQ(abs(-a), a);
  EXPECT_FALSE(Length::mm(std::numeric_limits<double>::quiet_NaN()).finite());
  EXPECT_FALSE(Temperature::celsius(std::numeric_limits<double>::infinity()).finite());
}

}  // namespace
}  // namespace camside
