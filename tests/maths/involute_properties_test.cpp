#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <numbers>

#include "maths/involute.hpp"

namespace camside::involute {
namespace {

double between(double low, double high) {
  return low + (high - low) * (*rc::gen::inRange(0, 1'000'001)) / 1e6;
}

struct Tooth {
  Form form;
  double thickness_mm = 0.0;
};
Tooth any_tooth() {
  const int teeth = *rc::gen::inRange(12, 80);
  const double module_mm = between(0.5, 5.0);
  Tooth t;
  t.form = form(teeth, Module::mm(module_mm), Angle::deg(between(14.5, 25.0)), Angle::deg(between(0.0, 30.0)));
  t.thickness_mm = thickness_from_shift_mm(t.form, between(-0.2, 0.6));
  return t;
}

RC_GTEST_PROP(InvoluteProperties, InverseOfInvIsTheAngle, ()) {
  const double angle = Angle::deg(between(0.001, 80.0)).in_rad();
  RC_ASSERT(std::abs(inverse(inv(angle)).value() / angle - 1.0) < 1e-14);
}

RC_GTEST_PROP(InvoluteProperties, InvGrowsWithTheAngle, ()) {
  const double low = between(0.0, 1.3);
  const double high = low + between(1e-6, 0.2);
  RC_ASSERT(inv(low) < inv(high));
}

RC_GTEST_PROP(InvoluteProperties, ThicknessToPinsAndBack, ()) {
  const Tooth t = any_tooth();
  const double pin_mm = t.form.module_mm * between(1.6, 2.0);
  const auto seat = pin_seat(t.form, t.thickness_mm, pin_mm);
  RC_PRE(seat.has_value());
  RC_PRE(seat->angle_rad > 0.1);  // nearer to nothing the pin hardly moves the reading: no measurement
  const double back = thickness_from_pins_mm(t.form, seat->over_pins_mm, pin_mm).value();
  RC_ASSERT(std::abs(back - t.thickness_mm) < 1e-12 * t.form.module_mm * 10.0);
}

RC_GTEST_PROP(InvoluteProperties, ThicknessToSpanAndBack, ()) {
  const Tooth t = any_tooth();
  const int k = *rc::gen::inRange(1, t.form.teeth / 3);
  const double back = thickness_from_span_mm(t.form, span_mm(t.form, t.thickness_mm, k), k);
  RC_ASSERT(std::abs(back - t.thickness_mm) < 1e-12 * t.form.module_mm * 10.0);
}

RC_GTEST_PROP(InvoluteProperties, AThickerToothStandsFurtherOverPins, ()) {
  const Tooth t = any_tooth();
  const double pin_mm = t.form.module_mm * 1.75;
  const auto thin = pin_seat(t.form, t.thickness_mm, pin_mm);
  const auto thick = pin_seat(t.form, t.thickness_mm + 0.01, pin_mm);
  RC_PRE(thin && thin->angle_rad > 0.1);
  RC_ASSERT(thick->over_pins_mm > thin->over_pins_mm);
  const double slope = (thick->over_pins_mm - thin->over_pins_mm) / 0.01;
  RC_ASSERT(slope < pins_per_thickness(t.form, *thin) && slope > pins_per_thickness(t.form, *thick));
}

RC_GTEST_PROP(InvoluteProperties, EveryLengthScalesTogether, ()) {
  const Tooth t = any_tooth();
  const double k = between(0.2, 5.0);
  const Form big =
      form(t.form.teeth, Module::mm(k * t.form.module_mm), Angle::rad(t.form.angle_rad), Angle::rad(t.form.helix_rad));
  const double pin_mm = 1.8 * t.form.module_mm;
  const auto seat = pin_seat(t.form, t.thickness_mm, pin_mm);
  RC_PRE(seat && seat->angle_rad > 0.05);
  RC_ASSERT(std::abs(pin_seat(big, k * t.thickness_mm, k * pin_mm)->over_pins_mm / (k * seat->over_pins_mm) - 1.0) <
            1e-12);
}

}  // namespace
}  // namespace camside::involute
