#include "calc/backlash/backlash.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>
#include <string>

#include "calc/backlash/backlash_cycle.hpp"
#include "calc/backlash/backlash_readings.hpp"
#include "calc/backlash/backlash_report.hpp"
#include "calc/backlash/backlash_verdict.hpp"
#include "calc/gear_pair/gear_pair.hpp"
#include "calc/backlash/backlash_remarks.hpp"
#include "fields/field_remarks.hpp"
#include "findings/remark.hpp"

namespace camside::backlash {

namespace {

using lash_temperature::State;

void check_mesh_ratio(const Input& in, Findings& out) {
  const std::string found = fmt::format("{} to {}, {:.6g}:1", in.teeth2, in.teeth1, 1.0 * in.teeth2 / in.teeth1);
  if (*in.mesh == Mesh::Crank && in.teeth2 != 2 * in.teeth1) {
    out.push_back(gear_pair::wrong_ratio(gear_pair::Place::CrankToCam, "teeth2", found));
  }
  if (*in.mesh == Mesh::BehindPlate && in.teeth2 != in.teeth1) {
    out.push_back(gear_pair::wrong_ratio(gear_pair::Place::CamToCam, "teeth2", found));
  }
}

// Turns of the crank for one of the cam, as a fraction in lowest terms; six steps of a thousand teeth cannot overflow.
constexpr std::size_t most_steps = 6;
struct Fraction {
  std::int64_t driven = 1;
  std::int64_t driver = 1;
};
Fraction through(const std::vector<TrainStep>& train) {
  Fraction all;
  for (const TrainStep& s : train) {
    all.driven *= s.driven;
    all.driver *= s.driver;
    const std::int64_t common = std::gcd(all.driven, all.driver);
    all.driven /= common;
    all.driver /= common;
  }
  return all;
}

void check_train(const Input& in, Findings& out) {
  if (in.train.empty()) {
    return;
  }
  if (in.train.size() > most_steps) {
    return out.push_back(remarks::out_of_range("train", "Whole train", fmt::format("{} meshes", in.train.size()),
                                               "up to 6 meshes", false));
  }
  const Fraction all = through(in.train);
  if (all.driven != 2 * all.driver) {
    out.push_back(
        gear_pair::wrong_ratio(gear_pair::Place::CrankToCam, "train", fmt::format("{} to {} over the whole train", all.driven, all.driver)));
  }
  const bool has_mesh = std::any_of(in.train.begin(), in.train.end(),
                                    [&](const TrainStep& s) { return s.driver == in.teeth1 && s.driven == in.teeth2; });
  if (!has_mesh) {
    out.push_back(remarks::mesh_not_in_train(in.teeth1, in.teeth2));
  }
}

// Everything that can be said of the mesh and its window before any reading.
Findings check_mesh(const Input& in, const gear_pair::Frame& f) {
  Findings out;
  check_mesh_ratio(in, out);
  check_train(in, out);
  if (auto question = gear_pair::centre_distance_question(f, Length::mm(f.reference_centre_mm), in.sizes_confirmed)) {
    out.push_back(std::move(*question));
  }
  check_windows(in, out);
  if (!in.loads_off) {
    out.push_back(remarks::loads_not_off());
  }
  return out;
}

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
  judge_by_feel(in, r);
  return r;
}

tl::expected<Result, Findings> solve_readings(const Input& in, const gear_pair::Frame& f, Findings found) {
  check_access(in, found);
  check_readings(in, found);
  const auto c = conversion(in, f);
  if (!c) {
    found.push_back(c.error());
  }
  if (any_refusal(found)) {
    return tl::unexpected(std::move(found));
  }
  auto round = round_of(in, *c);
  if (!round) {
    return tl::unexpected(std::move(round.error()));
  }

  const Cycle cycle = cycle_of(in, f, *c, *round);
  check_radius(in, f, found);
  check_indicator_lean(in, *c, found);
  check_lash(in, *round, found);
  check_cover(in, *round, found);
  check_play(in, found);
  check_method(in, round->positions.size() == 1, found);
  check_line(in, f, found);

  Result r;
  r.lash_per_reading = c->per_reading;
  r.operating_angle = Angle::rad(f.operating_angle_rad);
  r.operating_radius1 = Length::mm(f.operating1_mm);
  r.operating_radius2 = Length::mm(f.operating2_mm);
  r.positions = round->positions.size();
  take_cycle(in, cycle, r);
  const lash_temperature::Conditions conditions = in.temperatures.value_or(lash_temperature::Conditions{});
  const auto forecast = take_states(f, conditions, r);
  if (!forecast) {
    return tl::unexpected(forecast.error());
  }
  r.points = std::move(round->points);
  r.window = in.window;
  check_width(in, r, found);
  r.outcome.findings = std::move(found);
  report(Working{in, f, *c, cycle, conditions, *forecast}, r);
  judge(in, r);
  report_verdict(in, r);
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
