#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "calc/answers.hpp"
#include "calc/torque/torque.hpp"

namespace camside::torque {
namespace {

double real(double low, double high) {
  return low + (high - low) * *rc::gen::inRange(0, 1'000'001) / 1e6;
}

Input any_extension(double angle_deg) {
  Input in;
  in.torque = Torque::newton_metres(real(1.0, 200.0));
  in.extension = Extension{Length::mm(real(150.0, 600.0)), Length::mm(real(10.0, 120.0)), Angle::deg(angle_deg)};
  return in;
}

double setting(const Input& in) {
  return solved(in).setting.in_newton_metres();
}

RC_GTEST_PROP(TorqueProperties, TheWiderTheAngleTheHigherTheSetting, ()) {
  Input in = any_extension(real(0.0, 179.0));
  const double before = setting(in);
  in.extension->angle = in.extension->angle + Angle::deg(1.0);
  RC_ASSERT(setting(in) >= before);
}

RC_GTEST_PROP(TorqueProperties, StraightOutALongerExtensionMeansALowerSetting, ()) {
  Input in = any_extension(real(0.0, 89.0));
  const double before = setting(in);
  in.extension->length = 1.1 * *in.extension->length;
  RC_ASSERT(setting(in) < before);
}

RC_GTEST_PROP(TorqueProperties, TwiceTheTorqueIsTwiceTheSettingAndTwiceThePreload, ()) {
  Input in = any_extension(real(0.0, 180.0));
  in.bolt = Bolt{Length::mm(real(5.0, 14.0)), ThreadPitch::mm(1.0), Thread::Metric, Lubricated::Dry, {}, false};
  const Result once = solved(in);
  in.torque = 2.0 * *in.torque;
  const Result twice = solved(in);
  RC_ASSERT(std::abs(twice.setting / once.setting - 2.0) < 1e-12);
  RC_ASSERT(std::abs(twice.preload->force / once.preload->force - 2.0) < 1e-12);
}

// Length units cancel: the same figures in inches and in mm give one setting.
RC_GTEST_PROP(TorqueProperties, OnlyTheRatioOfTheLengthsCounts, ()) {
  Input in = any_extension(real(0.0, 180.0));
  const double before = setting(in);
  const double factor = real(0.5, 3.0);
  in.extension->wrench = factor * *in.extension->wrench;
  in.extension->length = factor * *in.extension->length;
  RC_ASSERT(std::abs(setting(in) - before) < 1e-9 * before);
}

}  // namespace
}  // namespace camside::torque
