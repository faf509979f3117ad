#include "maths/involute.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

#include "oracle/gear_pair_rows.hpp"

namespace camside::involute {
namespace {

constexpr double pi = std::numbers::pi;
double rad(double degrees) {
  return Angle::deg(degrees).in_rad();
}
Form spur(double module_mm, int teeth, double degrees = 20.0) {
  return form(teeth, Module::mm(module_mm), Angle::deg(degrees), Angle{});
}

TEST(Involute, MeetsThePublishedRows) {
  for (const auto& row : oracle::inv_rows) EXPECT_NEAR(inv(rad(row.degrees)), row.inv, row.tolerance) << row.source;
}

TEST(Involute, DoesNotMeetTheWrongRowsOfAPublicTable) {
  for (const auto& row : oracle::wrong_inv_rows)
    EXPECT_GT(std::abs(inv(rad(row.degrees)) - row.inv), row.tolerance) << row.source;
}

TEST(Involute, InverseGivesTheAngleBackToFourteenDigits) {
  for (int i = 1; i <= 6000; ++i) {
    const double angle = rad(i * 0.01);
    EXPECT_NEAR(inverse(inv(angle)).value() / angle, 1.0, 1e-14) << i * 0.01 << "°";
  }
}

TEST(Involute, InverseMeetsItsRows) {
  EXPECT_NEAR(Angle::rad(*inverse(0.0149044)).in_deg(), 20.000007, 5e-7);
  EXPECT_NEAR(Angle::rad(*inverse(0.034316)).in_deg(), 26.088532, 5e-7);
  EXPECT_EQ(inverse(0.0), 0.0);
}

TEST(Involute, InverseRefusesWhatNoAngleHas) {
  EXPECT_FALSE(inverse(-1e-9));
  EXPECT_FALSE(inverse(std::numeric_limits<double>::infinity()));
  EXPECT_FALSE(inverse(std::nan("")));
}

TEST(Involute, StaysAccurateAtTinyAngles) {
  const double angle = 1e-4;
  EXPECT_NEAR(inv(angle) / (angle * angle * angle / 3.0 * (1.0 + 0.4 * angle * angle)), 1.0, 1e-14);
  EXPECT_DOUBLE_EQ(inv(-angle), -inv(angle));
}

TEST(ToothThickness, FromShiftMeetsTheRows) {
  for (const auto& row : oracle::thickness_rows) {
    const Form f = spur(row.module_mm, row.teeth, row.degrees);
    EXPECT_NEAR(thickness_from_shift_mm(f, row.shift), row.thickness_mm, row.tolerance) << row.source;
    EXPECT_NEAR(shift_from_thickness(f, thickness_from_shift_mm(f, row.shift)), row.shift, 1e-14);
  }
}

TEST(ToothThickness, SpanMeetsTheRows) {
  for (const auto& row : oracle::span_rows) {
    const Form f = spur(row.module_mm, row.teeth, row.degrees);
    const double s = thickness_from_shift_mm(f, row.shift);
    EXPECT_NEAR(span_mm(f, s, row.span_teeth), row.span_mm, row.tolerance) << row.source;
    EXPECT_NEAR(thickness_from_span_mm(f, row.span_mm, row.span_teeth), s, 2.0 * row.tolerance) << row.source;
  }
}

TEST(ToothThickness, OverPinsMeetsTheRows) {
  for (const auto& row : oracle::pin_rows) {
    const Form f = spur(row.module_mm, row.teeth, row.degrees);
    const auto seat = pin_seat(f, pi * row.module_mm / 2.0, row.pin_mm);
    ASSERT_TRUE(seat) << row.source;
    EXPECT_NEAR(seat->over_pins_mm, row.over_pins_mm, row.tolerance) << row.source;
    EXPECT_TRUE(seat->touches_involute);
  }
}

TEST(ToothThickness, FromOverPinsMeetsItsRow) {
  EXPECT_NEAR(*thickness_from_pins_mm(spur(1.0, 20), 22.2941, 1.7), 1.570799395, 5e-10);
}

TEST(ToothThickness, OverPinsMovesMoreThanTheThickness) {
  for (const auto& row : oracle::pin_slope_rows) {
    const Form f = spur(1.0, row.teeth);
    EXPECT_NEAR(pins_per_thickness(f, *pin_seat(f, pi / 2.0, row.pin_mm)), row.slope, 5e-10);
  }
}

TEST(ToothThickness, AGearTenMicronsThickerMeasuresSoMuchMoreOverPins) {
  const auto gain = [](int teeth) {
    const Form f = spur(1.0, teeth);
    return pin_seat(f, pi / 2.0 + 0.01, 1.728)->over_pins_mm - pin_seat(f, pi / 2.0, 1.728)->over_pins_mm;
  };
  // The rows are the slope times the step; the curve bends away from it by 0.05 µm.
  EXPECT_NEAR(gain(20), 0.02261, 6e-5);
  EXPECT_NEAR(gain(25), 0.02325, 6e-5);
}

TEST(ToothThickness, OddTeethAreNotEvenTeeth) {
  const Form f = spur(1.0, 25);
  const auto seat = pin_seat(f, pi / 2.0, 1.728);
  EXPECT_GT(2.0 * seat->centre_mm + 1.728 - seat->over_pins_mm, 0.04);
  EXPECT_NEAR(*thickness_from_pins_mm(f, seat->over_pins_mm, 1.728), pi / 2.0, 1e-13);
}

TEST(ToothThickness, PinsNeedAnInvoluteToTouch) {
  const Form f = spur(1.0, 20);
  EXPECT_FALSE(pin_seat(f, 0.4, 1.0));  // a wide space: it drops through
  EXPECT_TRUE(pin_seat(f, pi / 2.0, 1.5)->touches_involute);
  EXPECT_FALSE(pin_seat(f, pi / 2.0, 1.197)->touches_involute);
  EXPECT_FALSE(thickness_from_pins_mm(f, 2.0 * f.base_mm + 1.7, 1.7));
  EXPECT_FALSE(thickness_from_pins_mm(f, 3.0, 1.7));
}

TEST(ToothThickness, HelicalPinsUseTheBaseHelixAndTheTransversePlane) {
  const Form f = form(24, Module::mm(2.0), Angle::deg(20.0), Angle::deg(15.0));
  EXPECT_NEAR(f.module_t_mm, 2.0 / std::cos(rad(15.0)), 1e-14);
  EXPECT_NEAR(std::tan(f.helix_b_rad), std::tan(rad(15.0)) * std::cos(f.angle_t_rad), 1e-14);
  EXPECT_NEAR(f.base_mm * 2.0 * std::cos(f.helix_b_rad), 24 * 2.0 * std::cos(rad(20.0)), 1e-12);
  const double s = thickness_from_shift_mm(f, 0.1);
  EXPECT_NEAR(s * std::cos(rad(15.0)), 2.0 * (pi / 2.0 + 0.2 * std::tan(rad(20.0))), 1e-13);
  EXPECT_NEAR(*thickness_from_pins_mm(f, pin_seat(f, s, 3.4)->over_pins_mm, 3.4), s, 1e-12);
  EXPECT_NEAR(span_mm(f, s, 3),
              2.0 * std::cos(rad(20.0)) * (pi * 2.5 + 24 * inv(f.angle_t_rad)) + 2.0 * 0.1 * 2.0 * std::sin(rad(20.0)),
              1e-12);
}

TEST(ToothThickness, AtTheReferenceCircleIsTheThicknessItself) {
  const Form f = spur(2.0, 30);
  EXPECT_NEAR(thickness_at_mm(f, 3.1, f.reference_mm), 3.1, 1e-14);
  EXPECT_LT(thickness_at_mm(f, 3.1, f.reference_mm + 1.5), 3.1);
}

}  // namespace
}  // namespace camside::involute
