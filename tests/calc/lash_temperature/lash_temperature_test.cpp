#include "calc/lash_temperature/lash_temperature.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "calc/gear_pair/gear_pair.hpp"

namespace camside::lash_temperature {
namespace {

gear_pair::Result pair_at(double centre_mm, int teeth1 = 30, int teeth2 = 30, double module_mm = 2.0) {
  gear_pair::Input in;
  in.module = Module::mm(module_mm);
  in.gear1.teeth = teeth1;
  in.gear2.teeth = teeth2;
  in.centre_distance = Length::mm(centre_mm);
  return gear_pair::solve(in).value();
}

Conditions metals(double gear_ppm, double case_ppm) {
  Conditions c;
  c.gear1 = c.gear2 = Expansion::ppm_per_kelvin(gear_ppm);
  c.centre = Expansion::ppm_per_kelvin(case_ppm);
  return c;
}

TEST(LashTemperature, SteelInAluminiumEightyKelvinHotterMeetsItsRow) {
  // Derived row: m 2, z 30/30, a 60.05 at 20 °C, 11.7 and 23.1e-6/K, everything +80 K.
  const auto r = pair_at(60.05);
  const auto f = forecast(gear_pair::mesh_of(r), r.lash, metals(11.7, 23.1)).value();
  EXPECT_NEAR(f.in(State::AsMeasured).lash.in_mm(), 0.0365415938, 5e-11);
  EXPECT_NEAR(f.in(State::FullyHot).lash.in_mm(), 0.0769307399, 5e-11);
  EXPECT_EQ(f.loosest, State::FullyHot);
}

TEST(LashTemperature, WarmUpWithACoolCaseIsTheTightState) {
  const auto r = pair_at(60.05);
  Conditions c = metals(11.5, 23.0);
  c.warm_up_case = Temperature::celsius(40.0);
  const auto f = forecast(gear_pair::mesh_of(r), r.lash, c).value();
  EXPECT_LT(f.in(State::WarmUp).lash, r.lash);
  EXPECT_LT(f.in(State::ColdestStart).lash, r.lash);
}

TEST(LashTemperature, MagnitudesAMechanicKnows) {
  // Steel in aluminium, centres 2.0 in, 20°: +1.2 thou at +70 °C, −0.5 thou at −30 °C, −0.3 thou with gears +80 and
  // case +30 (computed for trade practice).
  gear_pair::Input in;
  in.module = Module::diametral_pitch(20.0);
  in.gear1.teeth = in.gear2.teeth = 40;
  in.centre_distance = Length::inches(2.001);
  const auto r = gear_pair::solve(in).value();
  Conditions c = metals(11.5, 23.0);
  c.hot_gears = c.hot_case = Temperature::celsius(90.0);
  c.coldest_start = Temperature::celsius(-10.0);
  c.warm_up_gears = Temperature::celsius(100.0);
  c.warm_up_case = Temperature::celsius(50.0);
  const auto f = forecast(gear_pair::mesh_of(r), r.lash, c).value();
  EXPECT_NEAR((f.in(State::FullyHot).lash - r.lash).in_thou(), 1.2, 0.05);
  EXPECT_NEAR((f.in(State::ColdestStart).lash - r.lash).in_thou(), -0.5, 0.05);
  EXPECT_NEAR((f.in(State::WarmUp).lash - r.lash).in_thou(), -0.3, 0.05);
}

TEST(LashTemperature, FromAMeasuredLashAloneByTheClosedForm) {
  const auto r = pair_at(60.05, 20, 40);
  const Growth g{1.0 + 11.5e-6 * 60, 1.0 + 11.5e-6 * 60, 1.0 + 23.1e-6 * 30};
  const double a = 60.05;
  const double a_new = a * g.centre / g.gear1;
  const double base = r.gear1.base_radius.in_mm() + r.gear2.base_radius.in_mm();
  const auto inv_w = [&](double centre) { return std::tan(std::acos(base / centre)) - std::acos(base / centre); };
  for (const double j : {-0.01, 0.0, 0.02, 0.1}) {
    const double expected = g.gear1 * (j * a_new / a + 2.0 * a_new * (inv_w(a_new) - inv_w(a)));
    EXPECT_NEAR(lash_after(gear_pair::mesh_of(r), Length::mm(j), g)->in_mm(), expected, 1e-12);
  }
}

TEST(LashTemperature, AgreesWithAPairSolvedAnewAtItsHotSizes) {
  // Gears of unlike growth: pair with hot base circles, thickness and centre distance, each gear scaled by itself.
  gear_pair::Input in;
  in.module = Module::mm(2.0);
  in.gear1.teeth = 20;
  in.gear2.teeth = 40;
  in.centre_distance = Length::mm(60.08);
  const auto cold = gear_pair::solve(in).value();
  const double k1 = 1.0 + 11.5e-6 * 80;
  const double k2 = 1.0 + 18.0e-6 * 80;
  const double a = 60.08 * (1.0 + 23.1e-6 * 50);
  const double base1 = k1 * cold.gear1.base_radius.in_mm();
  const double base2 = k2 * cold.gear2.base_radius.in_mm();
  const double angle = std::acos((base1 + base2) / a);
  const double inv_angle = std::tan(angle) - angle;
  const double s1 = 2.0 * base1 / std::cos(angle) * (cold.gear1.base_half_angle.in_rad() - inv_angle);
  const double s2 = 2.0 * base2 / std::cos(angle) * (cold.gear2.base_half_angle.in_rad() - inv_angle);
  const double expected = 2.0 * std::numbers::pi * a / 60.0 - s1 - s2;
  const Growth g{k1, k2, 1.0 + 23.1e-6 * 50};
  EXPECT_NEAR(lash_after(gear_pair::mesh_of(cold), cold.lash, g)->in_mm(), expected, 1e-12);
  auto split_unknown = gear_pair::mesh_of(cold);
  split_unknown.thickness_share1 = 0.5;
  EXPECT_NEAR(lash_after(split_unknown, cold.lash, g)->in_mm(), expected, 1e-4);
}

TEST(LashTemperature, OneMetalThroughoutOnlyScalesTheLash) {
  const auto r = pair_at(60.05);
  Conditions c = metals(11.5, 11.5);
  const auto f = forecast(gear_pair::mesh_of(r), r.lash, c).value();
  EXPECT_NEAR(f.in(State::FullyHot).lash / r.lash, 1.0 + 11.5e-6 * 80.0, 1e-12);
  EXPECT_FALSE(f.no_lash_together) << "it never vanishes when all grow alike";
}

TEST(LashTemperature, VanishesWhereItSaysItDoes) {
  const auto r = pair_at(60.02);
  const Conditions c = metals(11.5, 23.1);
  const auto mesh = gear_pair::mesh_of(r);
  const auto f = forecast(mesh, r.lash, c).value();
  ASSERT_TRUE(f.no_lash_together);
  ASSERT_TRUE(f.no_lash_gears_alone);
  EXPECT_LT(f.no_lash_together->in_celsius(), 20.0) << "frost takes the lash of steel in aluminium";
  EXPECT_GT(f.no_lash_gears_alone->in_celsius(), 20.0);
  const double cold_k = (*f.no_lash_together - c.measured_at).in_kelvin();
  const double hot_k = (*f.no_lash_gears_alone - c.measured_at).in_kelvin();
  const double g_cold = 1.0 + 11.5e-6 * cold_k;
  const double g_hot = 1.0 + 11.5e-6 * hot_k;
  EXPECT_NEAR(lash_after(mesh, r.lash, {g_cold, g_cold, 1.0 + 23.1e-6 * cold_k})->in_mm(), 0.0, 1e-12);
  EXPECT_NEAR(lash_after(mesh, r.lash, {g_hot, g_hot, 1.0})->in_mm(), 0.0, 1e-12);
}

TEST(LashTemperature, NeverIsSaidOutsideTheRangeLooked) {
  const auto r = pair_at(60.6);  // a great deal of lash
  const auto f = forecast(gear_pair::mesh_of(r), r.lash, metals(11.5, 23.1)).value();
  EXPECT_FALSE(f.no_lash_together);
  Outcome out;
  report(f, metals(11.5, 23.1), out);
  EXPECT_EQ(out.figure("no_lash_together")->text, "never");
}

TEST(LashTemperature, NoLashInAStateIsACaution) {
  const auto r = pair_at(60.005);
  const Conditions c = metals(11.5, 23.1);
  const auto f = forecast(gear_pair::mesh_of(r), r.lash, c).value();
  Outcome out;
  report(f, c, out);
  EXPECT_TRUE(has(out.findings, 1150));
}

TEST(LashTemperature, GearsOfUnlikeMetalsAreSaid) {
  const auto r = pair_at(60.05);
  Conditions c = metals(11.5, 23.1);
  const auto said = [&] {
    Outcome out;
    report(forecast(gear_pair::mesh_of(r), r.lash, c).value(), c, out);
    return out.findings;
  };
  EXPECT_FALSE(has(said(), 1152));
  c.gear2 = Expansion::ppm_per_kelvin(18.0);
  EXPECT_TRUE(has(said(), 1152));
}

TEST(LashTemperature, GearsThatNoLongerFitAreRefused) {
  gear_pair::Input in;
  in.module = Module::mm(2.0);
  in.pressure_angle = Angle::deg(1.5);
  in.gear1.teeth = in.gear2.teeth = 200;
  in.gear1.tip_diameter = in.gear2.tip_diameter = Length::mm(400.4);
  in.centre_distance = Length::mm(400.0);
  const auto frame = gear_pair::frame(200, 200, in.module, in.pressure_angle, in.helix, in.centre_distance).value();
  Conditions c = metals(23.0, 11.5);
  c.hot_gears = Temperature::celsius(250.0);
  c.hot_case = Temperature::celsius(20.0);
  const auto f = forecast(gear_pair::mesh_of(frame), Length::mm(0.1), c);
  ASSERT_FALSE(f);
  EXPECT_TRUE(has(f.error(), 1151));
}

}  // namespace
}  // namespace camside::lash_temperature
