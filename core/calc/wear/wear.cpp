#include "calc/wear/wear.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/stable_sort.hpp"
#include "calc/inspection_due/inspection_due.hpp"
#include "calc/wear/wear_remarks.hpp"
#include "calc/wear/wear_report.hpp"
#include "fields/path.hpp"
#include "findings/decision.hpp"
#include "findings/remark.hpp"
#include "maths/coverage.hpp"

namespace camside::wear {

namespace {

namespace say = remarks::wear;
using remarks::short_inch_and_mm;

constexpr double slack_mm = decision_slack;
constexpr double slack_km = 1e-6;
constexpr double most_km = 1'000'000.0 * 1.609344;
constexpr Length thick = Length::inches(0.5);
constexpr double coverage_factor = 2.0;   // U rests on declared values
constexpr double plain_scatter = 2.6;     // s/u this large: under 1 in 100 by chance at any number of readings
constexpr double plain_difference = 3.0;  // standard uncertainties of a difference

struct Point {
  std::size_t entry = 0;
  double km = 0.0;
  double mm = 0.0;
};

// What is being worked out.
struct Working {
  const Input& in;
  Result& r;
  std::vector<Point> points;  // by distance, the thinner of one distance last
  double reading_mm = 0.0;    // standard uncertainty of one reading
  double spread_mm = 0.0;     // of one point about the line

  void say(Finding f) { r.outcome.findings.push_back(std::move(f)); }
};

// ---- entries ----

double last_km(const Input& in) {
  double last = 0.0;
  for (const Reading& reading : in.readings) last = std::max(last, reading.odometer->in_km());
  return last;
}

Findings entry_refusals(const Input& in) {
  Findings found = check_fields(in);
  if (any_refusal(found)) return found;
  if (in.readings.empty()) {
    found.push_back(say::no_readings());
    return found;
  }
  const Distance last = Distance::km(last_km(in));
  if (in.odometer_now && in.odometer_now->in_km() < last.in_km() - slack_km)
    found.push_back(say::now_before_last(*in.odometer_now, last));
  return found;
}

std::vector<Point> sorted_points(const Input& in) {
  std::vector<Point> points;
  for (std::size_t i = 0; i < in.readings.size(); ++i)
    points.push_back({i, in.readings[i].odometer->in_km(), in.readings[i].thickness->in_mm()});
  sort_stably(points.begin(), points.end(), [](const Point& a, const Point& b) {
    if (a.km != b.km) return a.km < b.km;
    return a.mm != b.mm ? a.mm > b.mm : a.entry < b.entry;
  });
  return points;
}

double squared(double v) {
  return v * v;
}

double reading_uncertainty_mm(const Input& in) {
  const double repeats = in.repeatability.value_or(*in.graduation).in_mm();
  const double error = in.stated_error.value_or(Length{}).in_mm();
  return std::sqrt(squared(repeats) + squared(in.graduation->in_mm()) / 12.0 + squared(error) / 3.0);
}

void take_last_reading(Working& w) {
  const Point& last = w.points.back();
  w.reading_mm = reading_uncertainty_mm(w.in);
  w.spread_mm = w.reading_mm;
  w.r.odometer = Distance::km(last.km);
  w.r.now = w.in.odometer_now.value_or(w.r.odometer);
  w.r.thickness = Length::mm(last.mm);
  w.r.uncertainty = Length::mm(coverage_factor * w.reading_mm);
}

// ---- what makes a shoe look better than it is ----

std::string thickness_path(const Point& p) {
  return item_path("readings", p.entry, "thickness");
}

// One remark is enough: after the first the list is of two parts anyway.
bool remark_thicker(Working& w) {
  const double plain_mm = plain_difference * std::sqrt(2.0) * w.reading_mm;
  for (std::size_t i = 1; i < w.points.size(); ++i) {
    const Point& before = w.points[i - 1];
    const Point& now = w.points[i];
    if (now.km <= before.km || now.mm <= before.mm + plain_mm) continue;
    w.say(say::thicker_than_before(thickness_path(now), Length::mm(before.mm), Length::mm(now.mm)));
    return true;
  }
  return false;
}

void remark_measuring(Working& w) {
  if (!w.in.anvil) w.say(say::anvil_not_said());
  if (w.in.anvil == Anvil::FlatJaws) w.say(say::flat_jaws());
  const auto missing = not_looked_for(w.in.seen);
  if (!missing.empty()) w.say(say::not_looked_at(missing));
  const auto too_thick = [](const Point& p) { return p.mm > thick.in_mm() + slack_mm; };
  const auto it = std::find_if(w.points.begin(), w.points.end(), too_thick);
  if (it != w.points.end()) w.say(say::thick_for_a_shoe(thickness_path(*it), Length::mm(it->mm)));
  if (!w.in.repeatability) w.say(say::repeatability_taken(*w.in.graduation));
}

// ---- the line ----

void remark_scatter(Working& w) {
  if (w.r.line->scatter_mm > plain_scatter * w.reading_mm)
    w.say(say::scatter_large(Length::mm(w.r.line->scatter_mm), Length::mm(w.reading_mm)));
}

void take_fitted_rate(Working& w) {
  const lines::Line& line = *w.r.line;
  w.r.mm_per_km = -line.mm_per_km;
  w.r.rests_on = line.points == 2 ? RestsOn::TwoReadings : RestsOn::FittedLine;
  if (w.in.usual_wear) w.say(say::usual_wear_not_used());
  if (w.r.rests_on == RestsOn::TwoReadings) return w.say(say::two_readings_only());
  w.spread_mm = std::max(line.scatter_mm, w.reading_mm);
  const double t = coverage::student_two_sided(interval_probability, line.degrees_of_freedom());
  w.r.rate_plus_minus = t * w.spread_mm / std::sqrt(line.sxx_km2);
  remark_scatter(w);
}

void take_rate(Working& w) {
  std::vector<lines::LinePoint> points;
  for (const Point& p : w.points) points.push_back({p.km, p.mm});
  w.r.line = lines::fit_line(points);
  if (w.r.line) return take_fitted_rate(w);
  if (!w.in.usual_wear) return;
  w.r.rests_on = RestsOn::UsualWear;
  w.r.mm_per_km = w.in.usual_wear->wear->in_mm() / w.in.usual_wear->over->in_km();
}

// ---- the forecast ----

// Less than a millionth of a mm over all the readings is rounding, not wear.
bool falls(const Working& w) {
  if (!w.r.line) return *w.r.mm_per_km > 0.0;
  return *w.r.mm_per_km * (w.points.back().km - w.points.front().km) > 1e-6;
}

lines::Crossing crossing_of(const Working& w) {
  const double limit_mm = w.in.limit->value.in_mm();
  if (w.r.rests_on == RestsOn::FittedLine)
    return lines::crossing_with_interval(*w.r.line, limit_mm, w.spread_mm, interval_probability);
  if (w.r.line) return lines::crossing_of(*w.r.line, limit_mm);
  lines::Crossing c;
  c.km = w.r.odometer.in_km() + (w.r.thickness.in_mm() - limit_mm) / *w.r.mm_per_km;
  return c;
}

Outlook outlook_before_the_line(const Working& w, bool mixed_up) {
  if (!damage_of(w.in.seen).empty()) return Outlook::Damaged;
  if (mixed_up) return Outlook::MixedUp;
  if (!w.in.limit) return Outlook::NoLimit;
  if (w.r.thickness.in_mm() < w.in.limit->value.in_mm() - slack_mm) return Outlook::Reached;
  if (!w.r.mm_per_km) return Outlook::NoRate;
  return falls(w) ? Outlook::Forecast : Outlook::Never;
}

void take_forecast(Working& w, const lines::Crossing& c) {
  Forecast f;
  f.crossing = Distance::km(c.km);
  if (c.low_km) f.low = Distance::km(*c.low_km);
  if (c.high_km && *c.high_km <= most_km) f.high = Distance::km(*c.high_km);
  const Distance by_line = f.low.value_or(f.crossing);
  f.look_by = w.r.odometer + *look_again_of(w.in).every;
  f.capped = f.look_by < by_line;
  f.no_sooner = std::min(by_line, f.look_by);
  f.left = f.no_sooner - w.r.now;
  w.r.forecast = f;
}

void remark_forecast(Working& w) {
  const Forecast& f = *w.r.forecast;
  w.say(say::not_a_clearance());
  if (f.capped) w.say(say::look_before_that(f.look_by, f.low.value_or(f.crossing)));
  if (f.low && !f.high) w.say(say::latest_open());
  if (w.r.rests_on == RestsOn::UsualWear) w.say(say::rests_on_usual_wear(w.in.usual_wear->source->text()));
  const bool ridden = w.r.now.in_km() > w.r.odometer.in_km() + slack_km;
  if (f.left.in_km() <= slack_km && ridden) w.say(say::ridden_since(w.r.now, w.r.odometer, f.no_sooner));
  if (f.left.in_km() <= slack_km && !ridden && !f.capped) w.say(say::may_be_reached_already(f.no_sooner));
  if (!w.r.line) return;
  const Distance ahead = f.crossing - w.r.odometer;
  const Distance covered = Distance::km(w.points.back().km - w.points.front().km);
  if (ahead > covered) w.say(say::far_beyond_the_readings(ahead, covered));
}

void work_out_forecast(Working& w) {
  const lines::Crossing c = crossing_of(w);
  w.r.g = c.g;
  if (w.r.rests_on == RestsOn::FittedLine && !c.low_km) {
    w.r.outlook = Outlook::Unbounded;
    return w.say(say::slope_not_proven(c.g));
  }
  if (!(c.km <= most_km)) {
    w.r.outlook = Outlook::Never;
    return w.say(say::beyond_any_odometer());
  }
  take_forecast(w, c);
  remark_forecast(w);
}

void look_ahead(Working& w, bool mixed_up) {
  w.r.outlook = outlook_before_the_line(w, mixed_up);
  switch (w.r.outlook) {
    case Outlook::Damaged:
      return w.say(say::no_forecast_of_damaged());
    case Outlook::MixedUp:
      return w.say(say::no_forecast_of_mixed());
    case Outlook::NoLimit:
      return w.say(say::no_limit());
    case Outlook::Reached:
      return w.say(say::limit_reached());
    case Outlook::NoRate:
      return w.say(say::one_distance_only());
    case Outlook::Never:
      return w.say(say::never_by_the_line());
    case Outlook::Forecast:
    case Outlook::Unbounded:
      break;
  }
  work_out_forecast(w);
}

// ---- verdict ----

const char* comparison(Verdict v) {
  if (v == Verdict::Within) return "stays above the least allowed,";
  return v == Verdict::Outside ? "is below the least allowed," : "lies too near to tell from the least allowed,";
}

std::string reason_of(const Result& r, Verdict v, Length limit) {
  std::string text = fmt::format("{} ± {} {} {}", short_inch_and_mm(r.thickness), short_inch_and_mm(r.uncertainty),
                                 comparison(v), short_inch_and_mm(limit));
  if (v == Verdict::NotProven) text += "; a finer instrument settles it";
  return text;
}

void judge_damage(Working& w, const std::vector<std::string>& damage) {
  w.say(say::damaged(damage));
  w.r.outcome.judgement = Judgement{Verdict::Outside,
                                    "condition",
                                    {},
                                    {},
                                    Source::common_practice(),
                                    fmt::format("The shoe is {}: Outside at any thickness", say::listed(damage))};
}

void judge(Working& w) {
  const auto damage = damage_of(w.in.seen);
  if (!damage.empty()) return judge_damage(w, damage);
  if (!w.in.limit) return;
  const Length limit = w.in.limit->value;
  const Measured thickness = measured(w.r.thickness.in_mm(), w.r.uncertainty.in_mm());
  const Decision decision = decide(Bound::Least, thickness, limit.in_mm(), w.r.outcome.findings);
  const Verdict verdict = decision.verdict;
  std::string reason = decision.doubt ? because(*decision.doubt) : reason_of(w.r, verdict, limit);
  if (verdict == Verdict::Outside) w.say(say::too_thin());
  if (verdict == Verdict::Within) w.say(say::silence_proves_nothing());
  w.r.outcome.judgement = Judgement{verdict, "thickness", limit.in_mm(), {}, w.in.limit->source, std::move(reason)};
}

void work_out(Working& w) {
  w.points = sorted_points(w.in);
  take_last_reading(w);
  remark_measuring(w);
  const bool mixed_up = remark_thicker(w);
  take_rate(w);
  look_ahead(w, mixed_up);
  judge(w);
  add_figures(w.in, w.r);
  add_working(w.in, w.spread_mm, w.r);
}

}  // namespace

LookAgain look_again_of(const Input& in) {
  if (in.look_again) return *in.look_again;
  const inspection_due::Item usual = inspection_due::usual_items(inspection_due::EngineYears::SprungChain).front();
  return {usual.every, usual.source};
}

std::vector<std::string> damage_of(const Seen& seen) {
  std::vector<std::string> words;
  if (seen.cracked.value_or(false)) words.emplace_back("cracked");
  if (seen.stepped.value_or(false)) words.emplace_back("stepped");
  if (seen.piece_missing.value_or(false)) words.emplace_back("missing a piece");
  if (seen.bare_metal.value_or(false)) words.emplace_back("worn to bare metal");
  return words;
}

std::vector<std::string> not_looked_for(const Seen& seen) {
  std::vector<std::string> words;
  if (!seen.cracked) words.emplace_back("cracks");
  if (!seen.stepped) words.emplace_back("a step");
  if (!seen.piece_missing) words.emplace_back("missing pieces");
  if (!seen.bare_metal) words.emplace_back("bare metal");
  return words;
}

tl::expected<Result, Findings> solve(const Input& input) {
  Findings refused = entry_refusals(input);
  if (any_refusal(refused)) return tl::make_unexpected(std::move(refused));
  Result result;
  Working w{input, result, {}};
  work_out(w);
  return result;
}

}  // namespace camside::wear
