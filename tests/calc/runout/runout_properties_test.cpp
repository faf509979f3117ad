#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "calc/runout/runout.hpp"

namespace camside::runout {
namespace {

constexpr double two_pi = 2.0 * std::numbers::pi;

double real(double low, double high) {
  constexpr int steps = 1 << 20;
  return low + (high - low) * (*rc::gen::inRange(0, steps + 1)) / steps;
}

// Shafts as they come: a bend, some ovality, some scatter, 6 to 24 unevenly spaced marks without wide gaps.
Input any_stations() {
  Input in;
  in.setup.contact = Contact::BushingBand;
  in.setup.plate = Plate::Off;
  in.setup.graduation = Length::thou(*rc::gen::element(0.1, 0.5, 1.0));
  in.setup.play = Length::thou(real(0.0, 1.5));
  in.readings.method = Method::Stations;
  const int n = *rc::gen::inRange(6, 25);
  const double e = real(0.2, 5.0);
  const double phase = real(0.0, two_pi);
  const double oval = real(0.0, 1.0);
  for (int i = 0; i < n; ++i) {
    const double t = two_pi * (i + real(-0.3, 0.3)) / n;
    const double thou = e * std::cos(t - phase) + oval * std::cos(2.0 * t) + real(-0.3, 0.3);
    in.readings.stations.push_back({Angle::rad(t), Length::thou(thou), 1});
  }
  return in;
}

Input any_swings() {
  Input in = any_stations();
  in.readings = {};
  const int n = *rc::gen::inRange(2, 6);
  const double tir = real(0.2, 8.0);
  for (int i = 0; i < n; ++i) {
    in.readings.swings.push_back({Length::thou(real(-0.2, 0.2)), Length::thou(tir + real(-0.2, 0.2) + 0.4), {}});
  }
  return in;
}

Input any_input() {
  return *rc::gen::arbitrary<bool>() ? any_stations() : any_swings();
}

Result solved(const Input& in) {
  const auto r = solve(in);
  RC_ASSERT(r.has_value());
  return *r;
}

void same(Length a, Length b, double tolerance_mm = 1e-12) {
  RC_ASSERT(std::abs(a.in_mm() - b.in_mm()) <= tolerance_mm);
}

void same_answer(const Result& a, const Result& b, double tolerance_mm = 1e-12) {
  same(a.tir, b.tir, tolerance_mm);
  same(a.judged, b.judged, tolerance_mm);
  same(a.uncertainty.expanded, b.uncertainty.expanded, tolerance_mm);
  same(a.eccentricity.value_or(Length{}), b.eccentricity.value_or(Length{}), tolerance_mm);
  RC_ASSERT(a.verdict == b.verdict);
}

double turned_by(const Result& from, const Result& to) {
  return std::remainder(to.high_spot->in_rad() - from.high_spot->in_rad(), two_pi);
}

RC_GTEST_PROP(RunoutProperties, TheStartAngleMovesNothingButTheHighSpot, ()) {
  const Input in = any_stations();
  Input turned = in;
  const double by = real(-10.0, 10.0);
  for (Station& s : turned.readings.stations) s.angle = s.angle + Angle::rad(by);
  const Result a = solved(in);
  const Result b = solved(turned);
  same_answer(a, b, 1e-11);
  RC_ASSERT(std::abs(std::remainder(turned_by(a, b) - by, two_pi)) < 1e-8);
}

RC_GTEST_PROP(RunoutProperties, OrderOfTheStationsIsNothing, ()) {
  const Input in = any_stations();
  Input shuffled = in;
  for (std::size_t i = shuffled.readings.stations.size(); i > 1; --i) {
    const auto j = static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(i)));
    std::swap(shuffled.readings.stations[i - 1], shuffled.readings.stations[j]);
  }
  same_answer(solved(in), solved(shuffled));
}

RC_GTEST_PROP(RunoutProperties, WhereTheDialWasSetToZeroIsNothing, ()) {
  const Input in = any_input();
  Input moved = in;
  const Length by = Length::thou(real(-50.0, 50.0));
  for (Station& s : moved.readings.stations) s.reading = s.reading + by;
  for (Swing& s : moved.readings.swings) {
    s.low = s.low + by;
    s.high = s.high + by;
  }
  same_answer(solved(in), solved(moved), 1e-11);
}

// Everything in one scale: readings, dial, play and limit.
RC_GTEST_PROP(RunoutProperties, ScalingEverythingScalesTheAnswer, ()) {
  Input in = any_input();
  in.limit = Limit<Length>{Length::thou(real(0.5, 6.0)), Source::memory()};
  in.readings_checked = true;
  Input big = in;
  const double k = real(0.5, 2.0);
  for (Station& s : big.readings.stations) s.reading = k * s.reading;
  for (Swing& s : big.readings.swings) s = {k * s.low, k * s.high, s.high_spot};
  big.setup.graduation = k * *big.setup.graduation;
  big.setup.play = k * *big.setup.play;
  big.limit->value = k * big.limit->value;
  const Result a = solved(in);
  const Result b = solved(big);
  same(k * a.judged, b.judged, 1e-11);
  same(k * a.uncertainty.expanded, b.uncertainty.expanded, 1e-11);
  same(k * *a.pass_line, *b.pass_line, 1e-11);
  RC_ASSERT(a.verdict == b.verdict);
}

RC_GTEST_PROP(RunoutProperties, ARepeatTurnOfEqualReadingsNeverRaisesU, ()) {
  const Input in = any_input();
  Input twice = in;
  for (Station s : in.readings.stations) {
    s.turn = 2;
    twice.readings.stations.push_back(s);
  }
  for (const Swing& s : in.readings.swings) twice.readings.swings.push_back(s);
  const Result a = solved(in);
  const Result b = solved(twice);
  RC_ASSERT(b.uncertainty.expanded.in_mm() <= a.uncertainty.expanded.in_mm() + 1e-12);
  same(a.tir, b.tir);
}

int rank_of(Verdict v) {
  return v == Verdict::Outside ? 0 : v == Verdict::NotProven ? 1 : 2;
}

RC_GTEST_PROP(RunoutProperties, AHigherLimitNeverMakesTheVerdictWorse, ()) {
  Input in = any_input();
  int before = -1;
  for (int i = 1; i <= 8; ++i) {
    in.limit = Limit<Length>{Length::thou(1.25 * i), Source::memory()};
    const int now = rank_of(*solved(in).verdict);
    RC_ASSERT(now >= before);
    before = now;
  }
}

// The needle is said not to have passed zero: neighbours that grow nearly a dial's turn apart would else be asked
// about, and a question turns Outside into Not proven.
RC_GTEST_PROP(RunoutProperties, MoreRunoutNeverMakesTheVerdictBetter, ()) {
  Input in = any_stations();
  in.readings_checked = true;  // it grows beyond anything usual
  in.setup.passed_zero = false;
  int before = 3;
  for (int i = 0; i < 8; ++i) {
    const int now = rank_of(*solved(in).verdict);
    RC_ASSERT(now <= before);
    before = now;
    for (Station& s : in.readings.stations) s.reading = 1.3 * s.reading;
  }
}

RC_GTEST_PROP(RunoutProperties, TheVerdictIsTheRule, ()) {
  Input in = any_input();
  in.limit = Limit<Length>{Length::thou(real(0.5, 8.0)), Source::memory()};
  const Result r = solved(in);
  const double u = r.uncertainty.expanded.in_mm();
  const double limit = in.limit->value.in_mm();
  if (r.verdict == Verdict::Within) RC_ASSERT(r.judged.in_mm() + u <= limit + 1e-9);
  if (r.verdict == Verdict::Outside) RC_ASSERT(r.tir.in_mm() - u > limit);
  RC_ASSERT(r.judged >= r.tir);
  RC_ASSERT(std::abs(r.pass_line->in_mm() + u - limit) < 1e-12);
}

RC_GTEST_PROP(RunoutProperties, ReversingTheAnglesMirrorsTheHighSpot, ()) {
  const Input in = any_stations();
  Input mirrored = in;
  for (Station& s : mirrored.readings.stations) s.angle = -s.angle;
  const Result a = solved(in);
  const Result b = solved(mirrored);
  same_answer(a, b, 1e-11);
  RC_ASSERT(std::abs(std::remainder(a.high_spot->in_rad() + b.high_spot->in_rad(), two_pi)) < 1e-8);
}

RC_GTEST_PROP(RunoutProperties, AClosingReadingThatAgreesChangesNothing, ()) {
  const Input in = any_stations();
  Input closed = in;
  closed.readings.closing = in.readings.stations.front().reading;
  same_answer(solved(in), solved(closed));
  Station back = in.readings.stations.front();
  back.angle = back.angle + Angle::turns(1.0);
  closed = in;
  closed.readings.stations.push_back(back);
  same_answer(solved(in), solved(closed));
}

// A dial of 100 graduations read as it stands, and told about: the same as one that never ends.
RC_GTEST_PROP(RunoutProperties, DialTurnsTakenOutAreNoLoss, ()) {
  Input in = any_stations();
  in.setup.graduation = Length::thou(1.0);
  Input dial = in;
  for (Station& s : dial.readings.stations) {
    if (s.reading.in_thou() < 0.0) s.reading = s.reading + Length::thou(100.0);
  }
  dial.setup.passed_zero = true;
  same_answer(solved(in), solved(dial), 1e-11);
}

// Whatever is put in, what comes out is finite and every refusal names what to do.
RC_GTEST_PROP(RunoutProperties, NothingInfiniteComesOut, ()) {
  const auto wild = [] {
    return *rc::gen::oneOf(rc::gen::arbitrary<double>(), rc::gen::element(0.0, -1.0, 1e300, 0.02));
  };
  Input in;
  in.setup.graduation = Length::mm(wild());
  in.setup.play = Length::mm(wild());
  in.readings.method = *rc::gen::element(Method::Swing, Method::Stations);
  for (int i = *rc::gen::inRange(0, 10); i > 0; --i) {
    in.readings.stations.push_back({Angle::rad(wild()), Length::mm(wild()), *rc::gen::arbitrary<int>()});
    in.readings.swings.push_back({Length::mm(wild()), Length::mm(wild()), {}});
  }
  const auto r = solve(in);
  if (!r) {
    RC_ASSERT(!r.error().empty());
    for (const Finding& f : r.error()) RC_ASSERT(f.severity == Severity::Refusal && !f.remedy.empty());
    return;
  }
  for (const Figure& f : r->outcome.figures) {
    RC_ASSERT(std::isfinite(f.base));
    RC_ASSERT(std::isfinite(f.uncertainty.value_or(0.0)));
  }
}

}  // namespace
}  // namespace camside::runout
