#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "calc/pushrod/pushrod.hpp"
#include "calc/pushrod/pushrod_inputs.hpp"
#include "calc/pushrod/pushrod_setting.hpp"

namespace camside::pushrod {
namespace {

double real(double low, double high) {
  return low + (high - low) * static_cast<double>(*rc::gen::inRange(0, 1'000'001)) / 1e6;
}

// Any adjustable rod on a hydraulic lifter.
Input any_input() {
  Input in;
  in.lifter_state = *rc::gen::element(LifterState::Wet, LifterState::Dry, LifterState::NotSure);
  in.pitch = ThreadPitch::mm(real(0.2, 3.0));
  in.flats_per_turn = *rc::gen::inRange(2, 25);
  in.travel = Length::mm(real(0.5, 10.0));
  in.preload = *in.travel * real(0.0, 1.0);
  return in;
}

RC_GTEST_PROP(PushrodProperties, TurnsToPreloadToTurnsIsTheIdentity, ()) {
  const Way way = *rc::gen::element(Way::LengthenFromZero, Way::BottomAndBackOff);
  const Length per_turn = Length::mm(real(0.2, 3.0));
  const Length travel = Length::mm(real(0.5, 10.0));
  const double turns = real(0.0, travel / per_turn);
  const double back = turns_for(way, preload_after(way, turns, per_turn, travel), per_turn, travel);
  RC_ASSERT(std::abs(back - turns) <= 1e-12 * (1.0 + travel / per_turn));
}

RC_GTEST_PROP(PushrodProperties, TheExactTurnsGiveTheWantedPreloadBack, ()) {
  Input in = any_input();
  const auto first = solve(in);
  RC_ASSERT(first.has_value());
  in.turned = Turned{first->setting->exact_turns, 0.0};
  const auto second = solve(in);
  RC_ASSERT(second.has_value());
  RC_ASSERT(std::abs(second->counted->preload.in_mm() - in.preload->in_mm()) < 1e-12 * 10.0);
}

RC_GTEST_PROP(PushrodProperties, TheSplitAddsUp, ()) {
  const Input in = any_input();
  const auto r = solve(in);
  RC_ASSERT(r.has_value());
  const TurnsAndFlats& e = r->setting->exact;
  const double n = in.flats_per_turn;
  const double sum = static_cast<double>(e.turns) + static_cast<double>(e.flats) / n + e.degrees / 360.0;
  RC_ASSERT(std::abs(sum - r->setting->exact_turns) < 2e-9);
  RC_ASSERT(e.flats >= 0 && e.flats < in.flats_per_turn);
  RC_ASSERT(e.degrees >= 0.0 && e.degrees < 360.0 / n);
}

RC_GTEST_PROP(PushrodProperties, TheSettingIsANeighbourOfTheExactAnswer, ()) {
  const Input in = any_input();
  const auto r = solve(in);
  RC_ASSERT(r.has_value());
  const double exact = r->setting->exact_turns * in.flats_per_turn;
  RC_ASSERT(std::abs(static_cast<double>(r->setting->set_flats) - exact) < 1.0);
}

RC_GTEST_PROP(PushrodProperties, RoundingCostsAtMostHalfAFlatOfMargin, ()) {
  const Input in = any_input();
  const auto r = solve(in);
  RC_ASSERT(r.has_value());
  const double exact_margin = std::min(in.preload->in_mm(), in.travel->in_mm() - in.preload->in_mm());
  RC_ASSERT(r->margins->least->in_mm() >= exact_margin - 0.5 * r->setting->per_flat.in_mm() - 1e-8);
}

RC_GTEST_PROP(PushrodProperties, WetAndDryMeetAtTheSamePreload, ()) {
  Input in = any_input();
  in.lifter_state = LifterState::Wet;
  const double from_zero = solve(in)->setting->exact_turns;
  in.lifter_state = LifterState::Dry;
  const double back = solve(in)->setting->exact_turns;
  RC_ASSERT(std::abs((from_zero + back) * in.pitch->in_mm() - in.travel->in_mm()) < 1e-11);
}

RC_GTEST_PROP(PushrodProperties, HeatingNothingChangesNothing, ()) {
  Input in = any_input();
  in.heat = heat_of_stack(real(0.0, 40.0), real(0.0, 40.0));
  in.heat->setting_temperature = Temperature::celsius(real(-20.0, 60.0));
  in.heat->cold = *in.heat->setting_temperature;
  in.heat->rod.hot = in.heat->stack[0].hot = in.heat->setting_temperature;
  const auto r = solve(in);
  RC_ASSERT(r.has_value());
  RC_ASSERT(r->heat->change == Length{});
  RC_ASSERT(r->heat->cold == r->setting->given);
}

RC_GTEST_PROP(PushrodProperties, OnlyAnswersRelease, ()) {
  std::vector<RodCheck> checks;
  bool all_answered = true;
  for (const Rod rod : all_rods) {
    RodCheck c{rod, true, Duration::minutes(real(0.0, 1e5)), {}, {}};
    if (*rc::gen::arbitrary<bool>()) c.spins_with_drag = *rc::gen::arbitrary<bool>();
    if (*rc::gen::arbitrary<bool>()) c.play = *rc::gen::arbitrary<bool>();
    all_answered = all_answered && c.spins_with_drag == true && c.play == false;
    checks.push_back(c);
  }
  const EngineLock lock = engine_lock(rod_states(checks, Duration::minutes(real(0.0, 30.0))));
  RC_ASSERT((lock == EngineLock::Released) == all_answered);
}

RC_GTEST_PROP(PushrodProperties, GoingRoundBothCylindersIsTwoTurns, ()) {
  const Turning turning = *rc::gen::element(Turning::WithWheels, Turning::AgainstWheels);
  const Angle sum = forward_from(Cylinder::Front, turning) + forward_from(Cylinder::Rear, turning);
  RC_ASSERT(std::abs(sum.in_deg() - 720.0) < 1e-9);
}

}  // namespace
}  // namespace camside::pushrod
