// Question: may the engine be turned, after lifters were loaded by setting their pushrods?
//
// Method: a state machine without a clock of its own. A rod just set holds its valve open until the lifter has bled
// down, so the whole engine is locked until both rods of the cylinder set last spin by the fingers with drag and show
// no play up and down. A rod that spins freely may simply be loose, so both answers are needed. The end of the least
// wait says "check now" and never "released": time is only the least wait. Source: common practice, no published
// source.
//
// Inputs: per rod whether its lifter was loaded, how long ago (min, ≥ 0), and the two answers of the spin test; the
// least wait. Result: one state per rod and one for the engine. A time that is not a finite number never ends the wait.
// Not covered: where the crank stands. Findings: none here; pushrod.hpp words the states.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "fields/field.hpp"
#include "units/quantity.hpp"

namespace camside::pushrod {

enum class Cylinder : std::uint8_t { Front, Rear };
enum class Rod : std::uint8_t { FrontExhaust, FrontIntake, RearIntake, RearExhaust };
inline constexpr std::array<Rod, 4> all_rods{Rod::FrontExhaust, Rod::FrontIntake, Rod::RearIntake, Rod::RearExhaust};
extern const Choices rod_choices;
Cylinder cylinder_of(Rod rod);
std::string_view word_of(Rod rod);            // "front exhaust"
std::string_view word_of(Cylinder cylinder);  // "front"

struct RodCheck {
  std::optional<Rod> rod;
  bool loaded = false;                   // its lifter was loaded; a time since then says so too
  std::optional<Duration> since_loaded;  // on the watch, when the answers were given
  std::optional<bool> spins_with_drag;   // by the fingers
  std::optional<bool> play;              // felt up and down
};
void describe(FieldVisitor& v, RodCheck& c);

enum class RodState : std::uint8_t {
  NotLoaded,
  BleedingDown,  // least wait not over
  CheckNow,      // least wait over, spin test not answered
  StillUp,       // tried: does not spin yet
  Loose,         // play up and down: set it again
  Released,
};
std::string_view word_of(RodState state);  // "bleeding down", "check now"

enum class EngineLock : std::uint8_t {
  Clear,     // no lifter was loaded
  Locked,    // do not turn
  CheckNow,  // do not turn; the rods can be tried
  Released,
};
std::string_view word_of(EngineLock lock);

RodState rod_state(const RodCheck& check, Duration least_wait);

// In the order of all_rods. One loaded rod locks the engine until both rods of its cylinder are released.
EngineLock engine_lock(const std::array<RodState, 4>& rods);

// Of a measurement's checks; a rod that isn't listed was not loaded.
std::array<RodState, 4> rod_states(std::span<const RodCheck> checks, Duration least_wait);

}  // namespace camside::pushrod
