#include "calc/torque/torque_report.hpp"

#include <fmt/format.h>

#include "findings/outcome_writer.hpp"
#include "findings/remark.hpp"
#include "units/format.hpp"

namespace camside::torque {

namespace {

template <class Q>
std::string both(Q quantity) {
  return fmt::format("{} ({})", format(KindOf<Q>::kind, quantity.base(), System::Inch),
                     format(KindOf<Q>::kind, quantity.base(), System::Metric));
}

// Small wrenches have their scale in lbf·in, sheets may say either.
std::string on_any_scale(Torque t) {
  constexpr Torque small = Torque::lbf_ft(25.0);
  const std::string usual = both(t);
  return t < small ? format(t.base(), *find_unit(Kind::Torque, "lbf·in")) + " = " + usual : usual;
}

Figure torque_figure(std::string key, std::string label, Torque t) {
  return {std::move(key), std::move(label), Kind::Torque, t.in_newton_metres(), {}, {}, on_any_scale(t)};
}

void add_preload(const Preload& p, Outcome& out) {
  Figure force{"preload", "Preload it gives", Kind::Force, p.force.in_newtons(), (p.high - p.force).in_newtons(), {},
               {}};
  figures::add(out, std::move(force));
  figures::add(out, figures::number("stress_area", "Stress area, mm²", p.stress_area_mm2));
  figures::add(out, figures::number("nut_factor", "Nut factor K", p.nut_factor));
}

void work_preload(const Input& in, const Preload& p, Outcome& out) {
  const bool inch = in.bolt->thread == Thread::Inch;
  figures::add_step(
      out, "Stress area", inch ? "A_s = π/4 (d − 0.9743 P)², ASME B1.1" : "A_s = π/4 (d − 0.9382 P)², ISO 898-1",
      fmt::format("d {}, P {:.4g} mm", remarks::short_inch_and_mm(*in.bolt->diameter), in.bolt->pitch->in_mm()),
      fmt::format("{:.2f} mm²", p.stress_area_mm2));
  figures::add_step(
      out, "Preload", "F = T/(K d), unsure by a quarter either way",
      fmt::format("{} / ({:.2f} · {})", both(*in.torque), p.nut_factor, remarks::short_inch_and_mm(*in.bolt->diameter)),
      fmt::format("{}, from {} to {}", both(p.force), both(p.low), both(p.high)));
}

}  // namespace

void report(const Input& in, Result& r) {
  Outcome& out = r.outcome;
  figures::add(
      out, torque_figure("setting", in.extension ? "Set the wrench to" : "Set the wrench to, no extension", r.setting));
  figures::add(out, torque_figure("torque", "Torque at the fastener", *in.torque));
  if (r.scale_share) figures::add(out, figures::number("scale_share", "Share of the wrench's scale", *r.scale_share));
  if (r.preload) add_preload(*r.preload, out);
  if (in.extension) {
    figures::add_step(
        out, "Setting", "T_set = T · L/(L + E cos α)",
        fmt::format("{} · {} / ({} + {} · cos {:.4g}°)", both(*in.torque), remarks::short_inches(*in.extension->wrench),
                    remarks::short_inches(*in.extension->wrench), remarks::short_inches(*in.extension->length),
                    in.extension->angle.in_deg()),
        both(r.setting));
  }
  if (r.preload) work_preload(in, *r.preload, out);
}

}  // namespace camside::torque
