#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "calc/backlash/backlash.hpp"
#include "calc/backlash/backlash_test_inputs.hpp"

namespace camside::backlash {
namespace {

double between(double low, double high) {
  return low + (high - low) * *rc::gen::inRange(0, 100'001) / 100'000.0;
}

const std::vector<double> eight{0, 90, 180, 270, 360, 450, 540, 630};

// Eight readings of 0.5 to 3 thou; sometimes the mesh behind the plate with six.
Input any_input() {
  Input in = *rc::gen::arbitrary<bool>() ? crank_mesh() : plate_mesh();
  for (Reading& r : in.readings) r.reading = Length::thou(between(0.5, 3.0));
  in.graduation = Length::thou(between(0.05, 0.5));
  in.play1 = Length::thou(between(0.0, 1.0));
  in.play2 = Length::thou(between(0.0, 1.0));
  in.indicator_angle = Angle::deg(between(-14.0, 14.0));
  return in;
}

Result solved(const Input& in) {
  const auto r = solve(in);
  RC_ASSERT(r.has_value());
  return *r;
}

void assert_near(double a, double b, double tolerance) {
  if (!(std::abs(a - b) <= tolerance)) RC_FAIL(std::to_string(a) + " is not " + std::to_string(b));
}

double apart_deg(double a, double b) {
  const double d = std::abs(std::remainder(a - b, 720.0));
  return d;
}

// Moves every position on by some degrees, folded back into 0 to 720.
Input shifted(Input in, double degrees) {
  for (Reading& r : in.readings) r.angle = Angle::deg(std::fmod(r.angle->in_deg() + degrees, 720.0));
  return in;
}

RC_GTEST_PROP(BacklashProperties, AnotherZeroAngleMovesTheTightSpotOnly, ()) {
  const Input in = any_input();
  const int by = *rc::gen::inRange(1, 719);
  const Result a = solved(in);
  const Result b = solved(shifted(in, by));
  assert_near(b.lowest.lash.in_mm(), a.lowest.lash.in_mm(), 1e-12);
  assert_near(b.lowest.uncertainty.in_mm(), a.lowest.uncertainty.in_mm(), 1e-11);
  assert_near(b.highest.lash.in_mm(), a.highest.lash.in_mm(), 1e-12);
  assert_near(b.gear_share.in_mm(), a.gear_share.in_mm(), 1e-12);
  assert_near(b.pinion_share.in_mm(), a.pinion_share.in_mm(), 1e-12);
  // A flat curve has no spot to speak of.
  if ((a.highest.lash - a.lowest.lash).in_thou() > 0.2)
    assert_near(apart_deg(b.lowest.crank.in_deg() - by, a.lowest.crank.in_deg()), 0.0, 1e-3);
}

RC_GTEST_PROP(BacklashProperties, OrderOfReadingsDoesNotMatter, ()) {
  Input in = any_input();
  const Result a = solved(in);
  in.readings = *rc::gen::just(in.readings);
  std::rotate(in.readings.begin(), in.readings.begin() + *rc::gen::inRange(1, 6), in.readings.end());
  const Result b = solved(in);
  assert_near(b.lowest.lash.in_mm(), a.lowest.lash.in_mm(), 1e-12);
  assert_near(b.lowest.uncertainty.in_mm(), a.lowest.uncertainty.in_mm(), 1e-11);
}

RC_GTEST_PROP(BacklashProperties, AFullCycleOnIsNoPositionOfItsOwn, ()) {
  Input in = any_input();
  const Result a = solved(in);
  in.readings.push_back({Angle::deg(720.0), {}, Length::thou(between(0.5, 3.0)), {}});
  const Result b = solved(in);
  RC_ASSERT(b.lowest.lash == a.lowest.lash);
  RC_ASSERT(b.highest.lash == a.highest.lash);
  RC_ASSERT(b.lowest.uncertainty == a.lowest.uncertainty);
  RC_ASSERT(b.positions == a.positions);
}

RC_GTEST_PROP(BacklashProperties, ScalingReadingsAndIndicatorScalesLashAndUncertainty, ()) {
  Input in = any_input();
  in.play1 = in.play2 = Length{};
  const double k = between(0.3, 1.7);
  const Result a = solved(in);
  for (Reading& r : in.readings) r.reading = k * *r.reading;
  in.graduation = k * *in.graduation;
  const Result b = solved(in);
  assert_near(b.lowest.lash.in_mm(), k * a.lowest.lash.in_mm(), 1e-12);
  assert_near(b.highest.uncertainty.in_mm(), k * a.highest.uncertainty.in_mm(), 1e-11);
}

RC_GTEST_PROP(BacklashProperties, ALongerArmMeansLessLash, ()) {
  Input in = any_input();
  const Result a = solved(in);
  in.contact_radius = 1.07 * *in.contact_radius;
  const Result b = solved(in);
  assert_near(b.lowest.lash.in_mm() * 1.07, a.lowest.lash.in_mm(), 1e-12);
}

RC_GTEST_PROP(BacklashProperties, LowestIsNowhereAboveAndHighestNowhereBelowTheReadingsOrTheCurve, ()) {
  const Result r = solved(any_input());
  for (const Point& p : r.points) {
    RC_ASSERT(r.lowest.lash.in_mm() <= p.lash.in_mm() + 1e-12);
    RC_ASSERT(r.highest.lash.in_mm() >= p.lash.in_mm() - 1e-12);
  }
  for (int d = 0; d < 720; ++d) {
    RC_ASSERT(r.lowest.lash.in_mm() <= r.curve.at(Angle::deg(d)).in_mm() + 1e-12);
    RC_ASSERT(r.highest.lash.in_mm() >= r.curve.at(Angle::deg(d)).in_mm() - 1e-12);
  }
}

RC_GTEST_PROP(BacklashProperties, MorePlayAndACoarserIndicatorWiden, ()) {
  // The coverage factor may step down from Student's t to 2 as declared parts grow; so compare at small scatter.
  Input in = any_input();
  for (Reading& r : in.readings) r.reading = Length::thou(1.5);
  const Result a = solved(in);
  Input more = in;
  more.play1 = *more.play1 + Length::thou(between(0.01, 2.0));
  RC_ASSERT(solved(more).lowest.uncertainty > a.lowest.uncertainty);
  RC_ASSERT(solved(more).lowest.lash == a.lowest.lash);
  more = in;
  more.graduation = *more.graduation + Length::thou(between(0.01, 0.4));
  RC_ASSERT(solved(more).lowest.uncertainty > a.lowest.uncertainty);
}

RC_GTEST_PROP(BacklashProperties, ATighterWindowNeverSaves, ()) {
  Input in = any_input();
  // Half of the time with a needle fine enough and a lash even enough to be Within somewhere.
  if (*rc::gen::arbitrary<bool>()) {
    for (Reading& r : in.readings) r.reading = Length::thou(between(1.5, 1.55));
    in.graduation = Length::thou(0.05);
    in.play1 = in.play2 = Length{};
  }
  const double min = between(0.0, 1.5);
  const double max = min + between(0.1, 3.0);
  in.window = window_of(min, max);
  const Verdict wide = solved(in).outcome.judgement->verdict;
  const double inner = min + between(0.0, 0.5) * (max - min);
  in.window = window_of(inner, inner + between(0.0, 1.0) * (max - inner));
  const Verdict narrow = solved(in).outcome.judgement->verdict;
  if (wide == Verdict::Outside) RC_ASSERT(narrow == Verdict::Outside);
  if (wide == Verdict::NotProven) RC_ASSERT(narrow != Verdict::Within);
  RC_CLASSIFY(wide == Verdict::Outside, "outside");
  RC_CLASSIFY(wide == Verdict::Within, "within");
}

RC_GTEST_PROP(BacklashProperties, AnyDoubtStopsWithin, ()) {
  Input in = any_input();
  in.window = window_of(0.0, 24.0);
  switch (*rc::gen::inRange(0, 7)) {
    case 0:
      in.loads_off = false;
      break;
    case 1:
      in.play1.reset();
      break;
    case 2:
      in.force = Force::Hard;
      in.play2 = Length::thou(0.5);
      break;
    case 3:
      in.readings.resize(3);
      break;
    case 4:
      in.window->method.engine = Engine::Hot;
      break;
    case 5:
      in.readings[1].reading = Length::thou(-1.0);
      break;
    default:
      in.method.place.reset();
      break;
  }
  RC_ASSERT(solved(in).outcome.judgement->verdict != Verdict::Within);
}

// Lash rises with the centre distance: in the hot states through the case, at any share of growth.
RC_GTEST_PROP(BacklashProperties, AWarmerCaseMeansMoreLash, ()) {
  Input in = any_input();
  lash_temperature::Conditions c;
  in.temperatures = c;
  const Result a = solved(in);
  c.warm_up_case = c.warm_up_case + TemperatureDifference::kelvin(between(1.0, 50.0));
  in.temperatures = c;
  const Result b = solved(in);
  RC_ASSERT(b.states[2].lowest > a.states[2].lowest);
  RC_ASSERT(b.states[2].highest > a.states[2].highest);
  RC_ASSERT(b.states[1].lowest == a.states[1].lowest);
}

// The same lash, taken through an arm at any radius and angle or on a flank, comes out alike.
RC_GTEST_PROP(BacklashProperties, ArmAndFlankAgree, ()) {
  Input in = crank_mesh();
  const double lash_mm = between(0.01, 0.08);
  const auto lowest_read_by = [&](Contact contact, double radius_mm, double tau_deg) {
    in.contact = contact;
    in.contact_radius = Length::mm(radius_mm);
    in.indicator_angle = Angle::deg(tau_deg);
    const double travel = lash_mm * radius_mm / (38.15 * 2.0 / 3.0);
    const double tau = Angle::deg(tau_deg).in_rad();
    const double alpha = std::acos(1.27 * 20.0 * std::cos(Angle::deg(20).in_rad()) / radius_mm);
    const double reading = contact == Contact::ArmFace      ? travel / std::cos(tau)
                           : contact == Contact::ToothFlank ? travel * std::cos(alpha) / std::cos(alpha - tau)
                                                            : travel * std::cos(alpha);
    for (Reading& r : in.readings) r.reading = Length::mm(reading);
    return solved(in).lowest.lash.in_mm();
  };
  assert_near(lowest_read_by(Contact::ArmFace, between(20.0, 45.0), between(-60.0, 60.0)), lash_mm, 1e-13);
  assert_near(lowest_read_by(Contact::ToothFlank, between(24.5, 26.5), between(-60.0, 60.0)), lash_mm, 1e-13);
  assert_near(lowest_read_by(Contact::FlankSquare, between(24.5, 26.5), 0.0), lash_mm, 1e-13);
}

RC_GTEST_PROP(BacklashProperties, SubtractionUndoesTheTrain, ()) {
  Input in = plate_mesh();
  in.access = Access::Subtraction;
  const double r_o = between(20.0, 40.0);
  const double r_m = between(15.0, 37.0);
  in.outer = {Length::mm(r_o), Length::mm(0.002)};
  in.contact_radius = Length::mm(r_m);
  std::vector<double> inner;
  for (Reading& r : in.readings) {
    const double outer = between(0.0, 0.1);
    inner.push_back(between(0.0, 0.1));
    r.outer_lash = Length::mm(outer);
    r.reading = Length::mm(r_m * (outer / r_o + inner.back() / 19.06));
  }
  const Result r = solved(in);
  for (std::size_t i = 0; i < inner.size(); ++i) assert_near(r.points[i].lash.in_mm(), inner[i], 1e-13);
}

}  // namespace
}  // namespace camside::backlash
