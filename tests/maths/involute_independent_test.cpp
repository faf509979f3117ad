// The same answers by other routes: GSL's root finder for the inverse, pins laid into the tooth space point by point in
// the plane, and the tooth's width measured on a drawn flank.
#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <numbers>
#include <utility>

#include "maths/involute.hpp"

namespace camside::involute {
namespace {

constexpr double pi = std::numbers::pi;

double inverse_by_gsl(double value) {
  gsl_function f;
  f.function = [](double angle, void* wanted) { return std::tan(angle) - angle - *static_cast<double*>(wanted); };
  f.params = &value;
  gsl_root_fsolver* solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
  gsl_root_fsolver_set(solver, &f, 0.0, 1.5);
  for (int i = 0; i < 200; ++i) {
    gsl_root_fsolver_iterate(solver);
    if (gsl_root_test_interval(gsl_root_fsolver_x_lower(solver), gsl_root_fsolver_x_upper(solver), 0.0, 1e-14) ==
        GSL_SUCCESS)
      break;
  }
  const double root = gsl_root_fsolver_root(solver);
  gsl_root_fsolver_free(solver);
  return root;
}

TEST(InvoluteIndependent, InverseAgreesWithGsl) {
  // The other route loses digits at small angles (tan α − α), so it is compared from 5° up.
  for (double degrees = 5.0; degrees <= 60.0; degrees += 0.25) {
    const double value = std::tan(Angle::deg(degrees).in_rad()) - Angle::deg(degrees).in_rad();
    EXPECT_NEAR(inverse(value).value(), inverse_by_gsl(value), 2e-13) << degrees;
  }
}

TEST(InvoluteIndependent, InverseAgreesWithBoostInLongDouble) {
  for (long double degrees = 0.5L; degrees <= 60.0L; degrees += 0.5L) {
    const long double angle = degrees * std::numbers::pi_v<long double> / 180.0L;
    const long double value = std::tan(angle) - angle;
    std::uintmax_t steps = 200;
    const auto bracket =
        boost::math::tools::toms748_solve([&](long double a) { return std::tan(a) - a - value; }, 0.0L, 1.5L,
                                          boost::math::tools::eps_tolerance<long double>(60), steps);
    const double root = static_cast<double>((bracket.first + bracket.second) / 2.0L);
    EXPECT_NEAR(inverse(static_cast<double>(value)).value() / root, 1.0, 1e-13) << static_cast<double>(degrees);
  }
}

struct Point {
  double x = 0.0;
  double y = 0.0;
};
double distance(Point a, Point b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

// One flank as points: the involute of the base circle unrolled by an angle t, turned so that the tooth space lies
// about the x axis.
struct Flank {
  double base_mm;
  double start_rad;  // where it leaves the base circle
  Point at(double t) const {
    const double angle = start_rad + t;
    return {base_mm * (std::cos(angle) + t * std::sin(angle)), base_mm * (std::sin(angle) - t * std::cos(angle))};
  }
};

// Where the flanks of the space beside a tooth of thickness s leave the base circle, found from the drawn curve: turned
// until the space at the reference circle is as wide as the pitch less the tooth.
Flank space_flank(int teeth, double module_mm, double degrees, double thickness_mm) {
  const double r = teeth * module_mm / 2.0;
  const double base = r * std::cos(Angle::deg(degrees).in_rad());
  const double t_ref = std::sqrt((r / base) * (r / base) - 1.0);
  const Flank unturned{base, 0.0};
  const double polar = std::atan2(unturned.at(t_ref).y, unturned.at(t_ref).x);
  const double half_space = (pi * module_mm - thickness_mm) / (2.0 * r);
  return {base, half_space - polar};
}

// Least distance from a point on the x axis to the flank, by a fine search and its refinement.
double nearest(const Flank& f, double x_mm) {
  double best = 0.0;
  double step = 1e-3;
  for (double t = 0.0; t < 1.5; t += step)
    if (distance(f.at(t), {x_mm, 0.0}) < distance(f.at(best), {x_mm, 0.0})) best = t;
  for (; step > 1e-12; step /= 2.0)
    for (const double t : {best - step, best + step})
      if (distance(f.at(t), {x_mm, 0.0}) < distance(f.at(best), {x_mm, 0.0})) best = t;
  return distance(f.at(best), {x_mm, 0.0});
}

// The pin sinks in until it touches.
double pin_centre_radius(const Flank& f, double pin_mm) {
  double low = f.base_mm;
  double high = f.base_mm * 1.6;
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2.0;
    (nearest(f, middle) < pin_mm / 2.0 ? low : high) = middle;
  }
  return (low + high) / 2.0;
}

double over_pins_drawn(int teeth, double centre_mm, double pin_mm) {
  const int opposite = teeth / 2;
  const double angle = 2.0 * pi * opposite / teeth;
  const Point first{centre_mm, 0.0};
  const Point second{centre_mm * std::cos(angle), centre_mm * std::sin(angle)};
  return distance(first, second) + pin_mm;
}

TEST(InvoluteIndependent, OverPinsAgreesWithPinsDrawnInThePlane) {
  for (const int teeth : {17, 20, 25, 34}) {
    for (const double thinning_mm : {0.0, 0.05}) {
      const double s = pi / 2.0 - thinning_mm;
      const double centre = pin_centre_radius(space_flank(teeth, 1.0, 20.0, s), 1.728);
      const Form f = form(teeth, Module::mm(1.0), Angle::deg(20.0), Angle{});
      EXPECT_NEAR(pin_seat(f, s, 1.728)->over_pins_mm, over_pins_drawn(teeth, centre, 1.728), 1e-10) << teeth;
    }
  }
}

// A ball in a helical space: least distance from its centre to the screw surface that the transverse flank sweeps.
struct Touch {
  double distance_mm;
  double radius_mm;
};
Touch ball_to_flank(const Flank& f, double twist_per_mm, double centre_mm) {
  const auto away = [&](double t, double z) {
    const Point p = f.at(t);
    const double turn = twist_per_mm * z;
    const double x = p.x * std::cos(turn) - p.y * std::sin(turn);
    const double y = p.x * std::sin(turn) + p.y * std::cos(turn);
    return std::sqrt((x - centre_mm) * (x - centre_mm) + y * y + z * z);
  };
  double t = 0.3;
  double z = 0.0;
  for (double step = 0.1; step > 1e-11;) {
    double best = away(t, z);
    bool moved = false;
    for (const auto& [dt, dz] : {std::pair{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {-1, -1}, {1, -1}, {-1, 1}}) {
      const double next_t = std::max(t + dt * step, 0.0);
      const double next_z = z + dz * step;
      if (away(next_t, next_z) >= best) continue;
      best = away(t = next_t, z = next_z);
      moved = true;
    }
    if (!moved) step /= 2.0;
  }
  return {away(t, z), f.base_mm * std::sqrt(1.0 + t * t)};
}

TEST(InvoluteIndependent, BallInAHelicalSpaceAgreesWithTheScrewSurface) {
  const double ball_mm = 3.5;
  for (const double helix : {0.0, 15.0, 30.0}) {
    const Form f = form(24, Module::mm(2.0), Angle::deg(20.0), Angle::deg(helix));
    const double s = thickness_from_shift_mm(f, 0.1);
    const double transverse_degrees = Angle::rad(f.angle_t_rad).in_deg();
    const Flank flank = space_flank(24, f.module_t_mm, transverse_degrees, s);
    const double twist = std::tan(Angle::deg(helix).in_rad()) / f.reference_mm;
    double low = f.base_mm;
    double high = f.base_mm * 1.4;
    for (int i = 0; i < 45; ++i) {
      const double middle = (low + high) / 2.0;
      (ball_to_flank(flank, twist, middle).distance_mm < ball_mm / 2.0 ? low : high) = middle;
    }
    EXPECT_NEAR(pin_seat(f, s, ball_mm)->centre_mm, low, 1e-8) << helix;
    // The place of a least distance is known to the root of what the distance is.
    EXPECT_NEAR(pin_seat(f, s, ball_mm)->contact_mm, ball_to_flank(flank, twist, low).radius_mm, 1e-5) << helix;
  }
}

TEST(InvoluteIndependent, ThicknessAtACircleAgreesWithTheDrawnTooth) {
  const int teeth = 24;
  const double s = 1.5;
  const Form f = form(teeth, Module::mm(1.0), Angle::deg(20.0), Angle{});
  const Flank flank = space_flank(teeth, 1.0, 20.0, s);
  for (const double radius : {11.5, 12.0, 12.5, 13.0}) {
    const double t = std::sqrt((radius / flank.base_mm) * (radius / flank.base_mm) - 1.0);
    const double half_space = std::atan2(flank.at(t).y, flank.at(t).x);
    EXPECT_NEAR(thickness_at_mm(f, s, radius), 2.0 * radius * (pi / teeth - half_space), 1e-12) << radius;
  }
}

}  // namespace
}  // namespace camside::involute
