// Question: where is the torque wrench set when an extension stands between it and the fastener, and what does that
// torque do to the bolt?
//
// Method
//   1 Setting: T_set = T · L/(L + E cos α). L from the square drive to the middle of the grip mark, E from the square
//     drive to the axis of the fastener, α the angle between the extension and the line of the wrench: 0° straight out
//     (the wrench is set lower), 90° no change, 180° folded back (set higher). Moments about the fastener, no published
//     source but a torque-wrench maker's note for α = 0.
//   2 Stress area of the thread: metric A_s = π/4 (d − 0.9382 P)² (ISO 898-1:2013, 9.1.6.1), inch
//     A_s = π/4 (d − 0.9743 P)² (ASME B1.1-2003, appendix B), d the nominal diameter, P the pitch. Both from memory.
//   3 Preload: F = T/(K d). K is entered with where it comes from; else 0.20 dry and 0.15 with oil on the thread (from
//     memory). A torque wrench leaves the preload unsure by about a quarter of it either way (from memory), which is
//     the range given.
//   4 Stress F/A_s, at the upper end of the range, against 600 MPa (from memory: about the proof stress of the property
//     class 8.8) only to catch a torque typed in the wrong unit: lbf·ft for lbf·in is twelvefold.
//
// Inputs, units and ranges: describe() is the list. A torque alone gives a setting; diameter and pitch the preload.
// Result: setting (N·m), its share of the wrench's scale; stress area (mm²), preload and its range (N).
// Accuracy: closed forms, 1e-12 relative; the preload is as good as K.
// Not covered: angle tightening, prevailing torque, the limits of a bolt (its maker's sheet has them), crow's feet on a
// wrench whose pivot is not at the drive. Findings: 2001-2003 refusals · 2020-2021 doubts · 2040-2042 cautions ·
// 2060-2062 notes · 1917 blind holes · 200-204 fields. Example: examples/torque.json
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <tl/expected.hpp>

#include "fields/field.hpp"
#include "findings/outcome.hpp"
#include "findings/source.hpp"
#include "units/quantity.hpp"

namespace camside::torque {

enum class Thread : std::uint8_t { Inch, Metric };
enum class Lubricated : std::uint8_t { Dry, Oiled };

struct Extension {
  std::optional<Length> wrench;  // L
  std::optional<Length> length;  // E
  Angle angle;                   // α
};
void describe(FieldVisitor& v, Extension& e);

struct Bolt {
  std::optional<Length> diameter;    // d
  std::optional<ThreadPitch> pitch;  // P
  Thread thread = Thread::Inch;
  Lubricated lubricated = Lubricated::Dry;
  std::optional<double> nut_factor;  // K; none: of `lubricated`
  bool blind_hole = false;
};
void describe(FieldVisitor& v, Bolt& b);

struct Input {
  std::string fastener;
  std::optional<Torque> torque;
  std::optional<Source> source;  // who says so
  std::optional<Extension> extension;
  std::optional<Torque> scale_end;  // the greatest torque of the wrench
  std::optional<Bolt> bolt;
};
void describe(FieldVisitor& v, Input& in);

struct Preload {
  double stress_area_mm2 = 0.0;
  double nut_factor = 0.0;
  Force force;
  Force low;
  Force high;
  double stress_mpa = 0.0;  // of `high`
};

struct Result {
  Torque setting;
  double lever = 1.0;                 // L/(L + E cos α)
  std::optional<double> scale_share;  // setting over the greatest torque of the wrench
  std::optional<Preload> preload;
  Outcome outcome;
};

tl::expected<Result, Findings> solve(const Input& input);

double stress_area_mm2(Length diameter, ThreadPitch pitch, Thread thread);

}  // namespace camside::torque
