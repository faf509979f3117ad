#include "calc/backlash/backlash.hpp"

#include <cmath>
#include <utility>
#include <vector>

#include "calc/backlash/backlash_cycle.hpp"
#include "calc/backlash/backlash_findings.hpp"
#include "calc/backlash/backlash_readings.hpp"
#include "calc/backlash/backlash_report.hpp"
#include "calc/backlash/backlash_verdict.hpp"
#include "calc/gear_pair/gear_pair.hpp"

namespace camside::backlash {

namespace {

using lash_temperature::State;

Curve curve_of(const Cycle& cycle) {
  Curve c;
  c.mean = Length::mm(cycle.mean_mm);
  if (!cycle.fit) {
    return c;
  }
  const auto& k = cycle.fit->coefficient;
  c.fitted = true;
  c.cos_half = Length::mm(k[1]);
  c.sin_half = Length::mm(k[2]);
  c.cos_one = Length::mm(k[3]);
  c.sin_one = Length::mm(k[4]);
  return c;
}

Extreme extreme_of(const Cycle& cycle, const CycleExtreme& e) {
  return {Length::mm(e.lash_mm), Length::mm(expanded_mm(cycle, e.variance_factor)), Angle::rad(e.crank_rad),
          e.from_reading};
}

// Counted from 1, the tooth at the mark, against the way its gear turns.
int tooth_at(double crank_rad, double period_rad, int teeth) {
  const long passed = std::lround(crank_rad / period_rad * teeth);
  return 1 + static_cast<int>(passed % teeth);
}

void take_cycle(const Input& in, const Cycle& cycle, Result& r) {
  r.curve = curve_of(cycle);
  r.lowest = extreme_of(cycle, cycle.low);
  r.highest = extreme_of(cycle, cycle.high);
  const double pinion_period = *in.mesh == Mesh::Crank ? 0.5 * cycle_rad : cycle_rad;
  r.tight_tooth1 = tooth_at(cycle.low.crank_rad, pinion_period, in.teeth1);
  r.tight_tooth2 = tooth_at(cycle.low.crank_rad, cycle_rad, in.teeth2);
  if (!cycle.fit) {
    return;
  }
  r.gear_share = Length::mm(cycle.fit->amplitude(1));
  if (*in.mesh == Mesh::Crank) {
    r.pinion_share = Length::mm(cycle.fit->amplitude(2));
  }
}

StateLash state_lash(State s, const lash_temperature::Conditions& c, const lash_temperature::Line& line,
                     const Result& r) {
  return {s,
          gears_in(c, s),
          case_in(c, s),
          line.at(r.lowest.lash),
          line.slope * r.lowest.uncertainty,
          line.at(r.highest.lash),
          line.slope * r.highest.uncertainty};
}

// Lowest and highest in the four states; refused when the gears of one no longer fit between the shafts.
tl::expected<lash_temperature::Forecast, Findings> take_states(const gear_pair::Frame& f,
                                                               const lash_temperature::Conditions& c, Result& r) {
  const lash_temperature::Mesh mesh = gear_pair::mesh_of(f);
  auto forecast = lash_temperature::forecast(mesh, r.lowest.lash, c);
  if (!forecast) {
    return forecast;
  }
  for (const State s : lash_temperature::all_states) {
    const auto line = lash_temperature::lash_line(mesh, growth_in(c, s));
    r.states[static_cast<std::size_t>(s)] = state_lash(s, c, *line, r);
  }
  r.tightest = forecast->tightest;
  r.loosest = forecast->loosest;
  return forecast;
}

tl::expected<Result, Findings> solve_by_feel(const Input& in, const gear_pair::Frame& f, Findings found) {
  Result r;
  r.by_feel = true;
  r.operating_angle = Angle::rad(f.operating_angle_rad);
  r.window = in.window;
  r.outcome.findings = std::move(found);
  report_feel(in, r.outcome);
  return r;
}

// What was read, and how it becomes lash.
struct Reduced {
  Conversion conversion;
  Round round;
};

// Refused with everything that was found when one of it is a refusal.
tl::expected<Reduced, Findings> reduce(const Input& in, const gear_pair::Frame& f, Findings& found) {
  check_access(in, found);
  check_readings(in, found);
  const auto c = conversion(in, f);
  if (!c) {
    found.push_back(c.error());
  }
  if (any_refusal(found)) {
    return tl::unexpected(found);
  }
  auto round = round_of(in, *c);
  if (!round) {
    return tl::unexpected(std::move(round.error()));
  }
  return Reduced{*c, std::move(*round)};
}

// Everything that is a number, temperatures aside.
Result measure(const Input& in, const gear_pair::Frame& f, const Reduced& reduced, const Cycle& cycle) {
  Result r;
  r.lash_per_reading = reduced.conversion.per_reading;
  r.operating_angle = Angle::rad(f.operating_angle_rad);
  r.operating_radius1 = Length::mm(f.operating1_mm);
  r.operating_radius2 = Length::mm(f.operating2_mm);
  r.positions = reduced.round.positions.size();
  r.points = reduced.round.points;
  r.window = in.window;
  take_cycle(in, cycle, r);
  return r;
}

void check_measurement(const Input& in, const gear_pair::Frame& f, const Reduced& reduced,
                       const lash_temperature::Conditions& conditions, const Result& r, Findings& out) {
  check_radius(in, f, out);
  check_indicator_lean(in, reduced.conversion, out);
  check_lash(in, reduced.round, out);
  check_cover(in, reduced.round, out);
  check_play(in, out);
  check_method(in, reduced.round.positions.size() == 1, out);
  check_line(in, f, out);
  check_width(in, r, out);
  check_states(in, conditions, r, out);
}

tl::expected<Result, Findings> solve_readings(const Input& in, const gear_pair::Frame& f, Findings found) {
  const auto reduced = reduce(in, f, found);
  if (!reduced) {
    return tl::unexpected(reduced.error());
  }
  const Cycle cycle = cycle_of(in, f, reduced->conversion, reduced->round);
  Result r = measure(in, f, *reduced, cycle);
  const lash_temperature::Conditions conditions = in.temperatures.value_or(lash_temperature::Conditions{});
  const auto forecast = take_states(f, conditions, r);
  if (!forecast) {
    return tl::unexpected(forecast.error());
  }
  check_measurement(in, f, *reduced, conditions, r, found);
  const std::vector<Gate> gates = gates_of(in, r, found);
  caution_outside(gates, found);
  r.outcome.findings = std::move(found);
  report(Working{in, f, reduced->conversion, cycle, conditions, *forecast, gates}, r);
  return r;
}

}  // namespace

Length Curve::at(Angle crank) const {
  const double x = crank.in_rad();
  return mean + std::cos(0.5 * x) * cos_half + std::sin(0.5 * x) * sin_half + std::cos(x) * cos_one +
         std::sin(x) * sin_one;
}

tl::expected<Result, Findings> solve(const Input& in) {
  if (Findings refused = check_fields(in); !refused.empty()) {
    return tl::unexpected(std::move(refused));
  }
  const auto f = gear_pair::frame(in.teeth1, in.teeth2, in.module, in.pressure_angle, in.helix, in.centre_distance);
  if (!f) {
    return tl::unexpected(Findings{f.error()});
  }
  Findings found = check_mesh(in, *f);
  if (*in.access == Access::ByFeel && !any_refusal(found)) {
    return solve_by_feel(in, *f, std::move(found));
  }
  if (any_refusal(found)) {
    return tl::unexpected(std::move(found));
  }
  return solve_readings(in, *f, std::move(found));
}

}  // namespace camside::backlash
