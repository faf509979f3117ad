// The setting by another route: the force at the grip, and its moment about the fastener as a cross product. The stress
// area by its definition in ISO 898-1, from the pitch and minor diameters of the 60° profile (ISO 68-1).
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "calc/answers.hpp"
#include "calc/torque/torque.hpp"

namespace camside::torque {
namespace {

// The wrench is set to `setting` when the force at the grip times its length is that; what arrives at the fastener?
double moment_at_fastener(double setting, double wrench, double extension, double angle_rad) {
  const double force = setting / wrench;
  const double grip_x = wrench;
  const double fastener_x = -extension * std::cos(angle_rad);
  const double fastener_y = -extension * std::sin(angle_rad);
  const double arm_x = grip_x - fastener_x;
  const double arm_y = 0.0 - fastener_y;
  return arm_x * force - arm_y * 0.0;  // the force stands square to the wrench
}

TEST(TorqueIndependent, TheMomentAboutTheFastenerIsTheTorqueWanted) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> share(0.0, 1.0);
  for (int i = 0; i < 2000; ++i) {
    const double wrench = 150.0 + 400.0 * share(random);
    const double extension = 5.0 + 120.0 * share(random);
    const double angle = std::numbers::pi * share(random);
    const double torque = 1.0 + 150.0 * share(random);
    Input in;
    in.torque = Torque::newton_metres(torque);
    in.extension = Extension{Length::mm(wrench), Length::mm(extension), Angle::rad(angle)};
    const double setting = solved(in).setting.in_newton_metres();
    ASSERT_NEAR(moment_at_fastener(setting, wrench, extension, angle), torque, 1e-10 * torque);
  }
}

TEST(TorqueIndependent, StressAreaFromPitchAndMinorDiameters) {
  for (double d = 5.0; d <= 24.0; d += 0.5) {
    for (const double pitch : {0.8, 1.0, 1.25, 1.5}) {
      const double height = std::sqrt(3.0) / 2.0 * pitch;
      const double d2 = d - 0.75 * height;
      const double d3 = d - 1.25 * height - height / 6.0;
      const double area = std::numbers::pi / 4.0 * std::pow(0.5 * (d2 + d3), 2.0);
      EXPECT_NEAR(stress_area_mm2(Length::mm(d), ThreadPitch::mm(pitch), Thread::Metric) / area, 1.0,
                  2e-4);  // 0.9382 is 0.93819 rounded
    }
  }
}

}  // namespace
}  // namespace camside::torque
