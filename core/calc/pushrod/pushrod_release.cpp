#include "calc/pushrod/pushrod_release.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace camside::pushrod {

namespace {

constexpr std::array<Choice, 4> rod_words{{
    {"front exhaust", "Front exhaust"},
    {"front intake", "Front intake"},
    {"rear intake", "Rear intake"},
    {"rear exhaust", "Rear exhaust"},
}};

constexpr std::array<std::array<std::size_t, 2>, 2> rods_of_cylinder{{{0, 1}, {2, 3}}};

bool was_loaded(const RodCheck& c) {
  return c.loaded || c.since_loaded.has_value();
}

bool wait_is_over(const RodCheck& c, Duration least_wait) {
  if (least_wait <= Duration{}) return true;
  return c.since_loaded && c.since_loaded->finite() && *c.since_loaded >= least_wait;
}

// Of one cylinder: both rods count once one of them was loaded.
EngineLock cylinder_lock(RodState a, RodState b) {
  const auto both = [&](auto test) { return test(a) && test(b); };
  if (both([](RodState s) { return s == RodState::NotLoaded; })) return EngineLock::Clear;
  if (both([](RodState s) { return s == RodState::Released; })) return EngineLock::Released;
  if (both([](RodState s) { return s == RodState::Released || s == RodState::CheckNow; })) return EngineLock::CheckNow;
  return EngineLock::Locked;
}

int severity_of(EngineLock lock) {
  constexpr std::array<int, 4> order{0, 3, 2, 1};  // clear, locked, check now, released
  return order[static_cast<std::size_t>(lock)];
}

}  // namespace

const Choices rod_choices{rod_words};

Cylinder cylinder_of(Rod rod) {
  return rod == Rod::FrontExhaust || rod == Rod::FrontIntake ? Cylinder::Front : Cylinder::Rear;
}

std::string_view word_of(Rod rod) {
  return rod_words[static_cast<std::size_t>(rod)].name;
}

std::string_view word_of(Cylinder cylinder) {
  return cylinder == Cylinder::Front ? "front" : "rear";
}

std::string_view word_of(RodState state) {
  constexpr std::array<std::string_view, 6> words{"not loaded", "bleeding down", "check now",
                                                  "still up",   "loose",         "released"};
  return words[static_cast<std::size_t>(state)];
}

std::string_view word_of(EngineLock lock) {
  constexpr std::array<std::string_view, 4> words{"clear", "locked", "check now", "released"};
  return words[static_cast<std::size_t>(lock)];
}

RodState rod_state(const RodCheck& check, Duration least_wait) {
  if (!was_loaded(check)) return RodState::NotLoaded;
  if (check.play.value_or(false)) return RodState::Loose;
  if (!check.spins_with_drag.value_or(true)) return RodState::StillUp;
  if (check.spins_with_drag && check.play) return RodState::Released;
  return wait_is_over(check, least_wait) ? RodState::CheckNow : RodState::BleedingDown;
}

EngineLock engine_lock(const std::array<RodState, 4>& rods) {
  EngineLock worst = EngineLock::Clear;
  for (const auto& [a, b] : rods_of_cylinder) {
    const EngineLock lock = cylinder_lock(rods[a], rods[b]);
    if (severity_of(lock) > severity_of(worst)) worst = lock;
  }
  return worst;
}

std::array<RodState, 4> rod_states(std::span<const RodCheck> checks, Duration least_wait) {
  std::array<RodState, 4> states{};
  for (const RodCheck& c : checks) {
    if (c.rod) states[static_cast<std::size_t>(*c.rod)] = rod_state(c, least_wait);
  }
  return states;
}

}  // namespace camside::pushrod
