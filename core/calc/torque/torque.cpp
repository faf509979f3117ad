#include "calc/torque/torque.hpp"

#include <cmath>
#include <numbers>
#include <utility>

#include "calc/torque/torque_remarks.hpp"
#include "calc/torque/torque_report.hpp"
#include "findings/safety.hpp"

namespace camside::torque {

namespace {

namespace say = remarks::torque;

constexpr double least_lever_left = 0.1;  // of the wrench, our own choice
constexpr double least_share = 0.2;       // of the scale, common practice, no published source
constexpr double preload_unsure = 0.25;   // of the preload, from memory
constexpr double dry_nut_factor = 0.20;   // from memory
constexpr double oiled_nut_factor = 0.15;
constexpr double lets_go_mpa = 600.0;      // about the proof stress of property class 8.8, from memory
constexpr double hardly_tight_mpa = 50.0;  // a twelfth of that, our own choice
constexpr double square = 1e-9;

// Of the wrench's length, what the extension adds to the lever.
double added(const Extension& e) {
  return *e.length / *e.wrench * std::cos(e.angle.in_rad());
}

Length left_of_the_bolt(const Bolt& b) {
  const double factor = b.thread == Thread::Inch ? 0.9743 : 0.9382;
  return *b.diameter - Length::mm(factor * b.pitch->in_mm());
}

Findings refusals_of(const Input& in) {
  Findings found = check_fields(in);
  if (any_refusal(found)) return found;
  if (in.extension && 1.0 + added(*in.extension) < least_lever_left)
    found.push_back(say::no_lever_left(in.extension->angle));
  if (in.bolt && left_of_the_bolt(*in.bolt).in_mm() <= 0.25 * in.bolt->diameter->in_mm())
    found.push_back(say::pitch_without_thread(left_of_the_bolt(*in.bolt)));
  return found;
}

Preload preload_of(Torque torque, const Bolt& bolt) {
  Preload p;
  p.stress_area_mm2 = stress_area_mm2(*bolt.diameter, *bolt.pitch, bolt.thread);
  p.nut_factor = bolt.nut_factor.value_or(bolt.lubricated == Lubricated::Dry ? dry_nut_factor : oiled_nut_factor);
  p.force = Force::newtons(torque.in_newton_metres() / (p.nut_factor * bolt.diameter->in_mm() / 1000.0));
  p.low = (1.0 - preload_unsure) * p.force;
  p.high = (1.0 + preload_unsure) * p.force;
  p.stress_mpa = p.high.in_newtons() / p.stress_area_mm2;
  return p;
}

Result measure(const Input& in) {
  Result r;
  if (in.extension) r.lever = 1.0 / (1.0 + added(*in.extension));
  r.setting = r.lever * *in.torque;
  if (in.scale_end) r.scale_share = r.setting / *in.scale_end;
  if (in.bolt) r.preload = preload_of(*in.torque, *in.bolt);
  return r;
}

// A torque twelve times too large or too small by its unit.
void question_unit(const Preload& p, Findings& out) {
  if (p.stress_mpa > lets_go_mpa && p.stress_mpa / 12.0 > hardly_tight_mpa)
    out.push_back(say::inch_pounds_meant(p.stress_mpa));
  if (p.stress_mpa < hardly_tight_mpa && p.stress_mpa * 12.0 < lets_go_mpa)
    out.push_back(say::foot_pounds_meant(p.stress_mpa));
}

Findings findings_of(const Input& in, const Result& r) {
  Findings out;
  if (r.preload) question_unit(*r.preload, out);
  if (r.scale_share && *r.scale_share < least_share) out.push_back(say::low_on_the_scale(*r.scale_share));
  if (r.lever > 1.0 + square) out.push_back(say::extension_folded_back());
  if (in.bolt && in.bolt->blind_hole) out.push_back(safety::blind_hole());
  if (!in.source) out.push_back(say::no_source());
  if (in.extension && std::abs(r.lever - 1.0) <= square) out.push_back(say::square_on_no_change());
  if (in.extension && std::abs(r.lever - 1.0) > square) out.push_back(say::pull_at_the_mark());
  if (r.preload && !in.bolt->nut_factor) out.push_back(say::nut_factor_taken(r.preload->nut_factor));
  return out;
}

}  // namespace

double stress_area_mm2(Length diameter, ThreadPitch pitch, Thread thread) {
  Bolt bolt;
  bolt.diameter = diameter;
  bolt.pitch = pitch;
  bolt.thread = thread;
  const double d = left_of_the_bolt(bolt).in_mm();
  return 0.25 * std::numbers::pi * d * d;
}

tl::expected<Result, Findings> solve(const Input& input) {
  Findings refusals = refusals_of(input);
  if (!refusals.empty()) return tl::unexpected(std::move(refusals));
  Result r = measure(input);
  if (r.scale_share && *r.scale_share > 1.0) {
    return tl::unexpected(Findings{say::beyond_the_wrench(r.setting, *input.scale_end)});
  }
  r.outcome.findings = findings_of(input, r);
  report(input, r);
  return r;
}

}  // namespace camside::torque
