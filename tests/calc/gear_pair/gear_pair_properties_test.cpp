#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>
#include <utility>

#include "calc/gear_pair/gear_pair.hpp"
#include "calc/lash_temperature/lash_temperature.hpp"

namespace camside::gear_pair {
namespace {

double between(double low, double high) {
  return low + (high - low) * (*rc::gen::inRange(0, 1'000'001)) / 1e6;
}

Gear any_gear() {
  Gear g;
  g.teeth = *rc::gen::inRange(18, 60);
  g.profile_shift = between(-0.1, 0.3);
  return g;
}

// A pair that runs: shifted gears a little further apart than the distance at which they would have no lash.
Input any_pair() {
  Input in;
  in.module = Module::mm(between(0.8, 3.0));
  in.pressure_angle = Angle::deg(between(18.0, 25.0));
  in.helix = Angle::deg(*rc::gen::element(0.0, 12.0));
  in.gear1 = any_gear();
  in.gear2 = any_gear();
  const auto f1 = involute::form(in.gear1.teeth, in.module, in.pressure_angle, in.helix);
  const auto f2 = involute::form(in.gear2.teeth, in.module, in.pressure_angle, in.helix);
  const double shift = in.gear1.profile_shift + in.gear2.profile_shift;
  const double inv_w =
      involute::inv(f1.angle_t_rad) + 2.0 * shift * std::tan(f1.angle_rad) / (in.gear1.teeth + in.gear2.teeth);
  const double tight = (f1.base_mm + f2.base_mm) / std::cos(*involute::inverse(inv_w));
  in.centre_distance = Length::mm(tight + in.module.in_mm() * between(0.0, 0.05));
  // Tips cut short enough to clear the other gear's root.
  for (auto& [g, f] : {std::pair{&in.gear1, &f1}, std::pair{&in.gear2, &f2}})
    g->tip_diameter = Length::mm(2.0 * (f->reference_mm + f->module_mm * (0.9 + g->profile_shift)));
  in.place = Place::Elsewhere;
  return in;
}

Result solved(const Input& in) {
  auto r = solve(in);
  if (!r) RC_FAIL(r.error().front().text);
  return *r;
}

RC_GTEST_PROP(GearPairProperties, LashRisesWithTheCentreDistance, ()) {
  Input in = any_pair();
  const Result near_pair = solved(in);
  in.centre_distance = in.centre_distance + Length::mm(0.001);
  const Result far = solved(in);
  RC_ASSERT(far.lash > near_pair.lash);
  const double slope = (far.lash - near_pair.lash).in_mm() / 0.001;
  RC_ASSERT(std::abs(slope / near_pair.lash_per_centre - 1.0) < 1e-3);
}

RC_GTEST_PROP(GearPairProperties, SwappingTheGearsKeepsTheLash, ()) {
  Input in = any_pair();
  const Result r = solved(in);
  std::swap(in.gear1, in.gear2);
  const Result swapped = solved(in);
  RC_ASSERT(std::abs((r.lash - swapped.lash).in_mm()) < 1e-12);
  RC_ASSERT(std::abs(r.contact_ratio - swapped.contact_ratio) < 1e-12);
  RC_ASSERT(std::abs((r.gear1.turn - swapped.gear2.turn).in_rad()) < 1e-13);
}

RC_GTEST_PROP(GearPairProperties, ScalingEveryLengthScalesTheLash, ()) {
  Input in = any_pair();
  const double k = between(0.3, 4.0);
  const Result r = solved(in);
  in.module = k * in.module;
  in.centre_distance = k * in.centre_distance;
  for (Gear* g : {&in.gear1, &in.gear2}) g->tip_diameter = k * *g->tip_diameter;
  const Result scaled = solved(in);
  RC_ASSERT(std::abs((scaled.lash - k * r.lash).in_mm()) < 1e-11);
  RC_ASSERT(std::abs(scaled.contact_ratio - r.contact_ratio) < 1e-11);
}

RC_GTEST_PROP(GearPairProperties, AFittedGearComesOutAsItWas, ()) {
  Input in = any_pair();
  const Result r = solved(in);
  in.gear1.thickness_from = ThicknessFrom::AsFitted;
  in.measured_lash = r.lash;
  const Result fitted = solved(in);
  RC_ASSERT(std::abs((fitted.gear1.thickness - r.gear1.thickness).in_mm()) < 1e-12);
  RC_ASSERT(std::abs((fitted.lash - r.lash).in_mm()) < 1e-12);
}

RC_GTEST_PROP(GearPairProperties, TheClosedFormOfTheNormalLash, ()) {
  Input in = any_pair();
  in.helix = Angle{};
  const auto r = solve(in);
  RC_PRE(r.has_value());
  const double angle = in.pressure_angle.in_rad();
  const double m = in.module.in_mm();
  const double d = m * (in.gear1.teeth + in.gear2.teeth);
  const double shift = in.gear1.profile_shift + in.gear2.profile_shift;
  const double aw = std::acos(r->reference_centre_distance / r->centre_distance * std::cos(angle));
  const double expected =
      d * std::cos(angle) * (std::tan(aw) - aw - std::tan(angle) + angle) - 2.0 * m * shift * std::sin(angle);
  RC_ASSERT(std::abs(r->lash_normal.in_mm() - expected) < 1e-11);
}

RC_GTEST_PROP(GearPairProperties, OneMetalOnlyScalesTheLash, ()) {
  const Result r = solved(any_pair());
  const double k = 1.0 + between(-20.0, 20.0) * 1e-4;
  const auto after = lash_temperature::lash_after(mesh_of(r), r.lash, {k, k, k});
  RC_ASSERT(std::abs(after->in_mm() - k * r.lash.in_mm()) < 1e-12);
}

RC_GTEST_PROP(GearPairProperties, HotterGearsTakeLashAndAHotterCaseGivesIt, ()) {
  const Result r = solved(any_pair());
  const double k = 1.0 + between(1.0, 20.0) * 1e-4;
  RC_ASSERT(*lash_temperature::lash_after(mesh_of(r), r.lash, {k, k, 1.0}) < r.lash);
  RC_ASSERT(*lash_temperature::lash_after(mesh_of(r), r.lash, {1.0, 1.0, k}) > r.lash);
}

RC_GTEST_PROP(GearPairProperties, WarmingAndCoolingComesBack, ()) {
  const Result r = solved(any_pair());
  const double g = 1.0 + between(-10.0, 10.0) * 1e-4;
  const double c = 1.0 + between(-10.0, 10.0) * 1e-4;
  auto mesh = mesh_of(r);
  const auto warm = lash_temperature::lash_after(mesh, r.lash, {g, g, c});
  RC_PRE(warm.has_value());
  mesh.base_radius1 = g * mesh.base_radius1;
  mesh.base_radius2 = g * mesh.base_radius2;
  mesh.centre = c * mesh.centre;
  const auto back = lash_temperature::lash_after(mesh, *warm, {1.0 / g, 1.0 / g, 1.0 / c});
  RC_ASSERT(std::abs(back->in_mm() - r.lash.in_mm()) < 1e-12);
}

// Numbers a slip of the thumb or a broken file can bring.
double wild() {
  return *rc::gen::element(-1e300, -1.0, 0.0, 1e-300, 1e-12, 1e-3, 1.0, 2.0, 20.0, 60.0, 1e4, 1e300,
                           std::numeric_limits<double>::infinity(), std::nan(""));
}

Gear wild_gear() {
  Gear g;
  g.teeth = *rc::gen::element(-1, 0, 3, 4, 5, 20, 999, 1000, 2147483647);
  g.thickness_from = *rc::gen::element(ThicknessFrom::ProfileShift, ThicknessFrom::Thickness, ThicknessFrom::OverPins,
                                       ThicknessFrom::Span, ThicknessFrom::AsFitted);
  g.profile_shift = *rc::gen::element(-2.0, 0.0, 2.0);
  g.thickness = Length::mm(wild());
  g.over_pins = Length::mm(wild());
  g.pin_diameter = Length::mm(wild());
  g.span = Length::mm(wild());
  g.span_teeth = *rc::gen::element(0, 1, 3, 999);
  if (*rc::gen::arbitrary<bool>()) g.tip_diameter = Length::mm(wild());
  return g;
}

bool all_finite(const Result& r) {
  const auto finite = [](const GearResult& g) {
    return std::isfinite(g.profile_shift) && g.tip_radius.finite() && g.root_radius.finite() &&
           g.form_radius.finite() && g.tip_thickness.finite() && g.operating_thickness.finite() && g.turn.finite();
  };
  return finite(r.gear1) && finite(r.gear2) && r.lash.finite() && r.lash_radial.finite() &&
         std::isfinite(r.contact_ratio);
}

RC_GTEST_PROP(GearPairProperties, WhateverIsTypedIsFiniteOrRefused, ()) {
  Input in;
  in.gear1 = wild_gear();
  in.gear2 = wild_gear();
  in.module = Module::mm(wild());
  in.pressure_angle = Angle::deg(*rc::gen::element(1e-300, 1e-9, 1.0, 20.0, 45.0));
  in.helix = Angle::deg(*rc::gen::element(0.0, 30.0, 59.999));
  in.centre_distance = Length::mm(wild());
  in.measured_lash = Length::mm(wild());
  if (*rc::gen::arbitrary<bool>()) in.temperatures.emplace();
  const auto r = solve(in);
  if (r) {
    RC_ASSERT(all_finite(*r));
  } else {
    RC_ASSERT(any_refusal(r.error()));
  }
}

}  // namespace
}  // namespace camside::gear_pair
