#include "calc/wear/wear_report.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

#include "calc/wear/wear_remarks.hpp"
#include "findings/outcome_writer.hpp"
#include "findings/remark.hpp"

namespace camside::wear {

namespace {

using figures::distance;
using figures::length;
using figures::number;

using remarks::miles_and_km;
using remarks::short_inch_and_mm;

constexpr double km_per_thousand_miles = 1609.344;

std::string condition_text(const Seen& seen) {
  const auto damage = damage_of(seen);
  if (!damage.empty()) return remarks::wear::listed(damage);
  return not_looked_for(seen).empty() ? "no crack, step, missing piece or bare metal seen" : "not looked at throughout";
}

std::string_view outlook_text(Outlook outlook) {
  switch (outlook) {
    case Outlook::Forecast:
      return "";
    case Outlook::NoLimit:
      return "no forecast: no limit entered";
    case Outlook::NoRate:
      return "no forecast: readings of one distance only";
    case Outlook::Damaged:
      return "no forecast: damaged";
    case Outlook::Reached:
      return "no forecast: below the limit already";
    case Outlook::MixedUp:
      return "no forecast: thicker than before";
    case Outlook::Never:
      return "never, by the line of the readings: no forecast";
    case Outlook::Unbounded:
      break;
  }
  return "no forecast: the readings scatter too much to prove any wear";
}

std::string per_thousand_miles(double mm_per_km) {
  return short_inch_and_mm(Length::mm(mm_per_km * km_per_thousand_miles)) + " in 1,000 mi";
}

void add_forecast(const Forecast& f, Outcome& out) {
  out.figures.push_back(distance("no_sooner", f.capped ? "Look again by" : "No sooner proof than", f.no_sooner));
  out.figures.push_back(distance("left", "That is ahead", f.left));
  out.figures.push_back(distance("crossing", "Line meets the limit at", f.crossing));
  if (f.low) out.figures.push_back(distance("crossing_low", "95 % interval, early end", *f.low));
  if (f.high) out.figures.push_back(distance("crossing_high", "95 % interval, late end", *f.high));
}

void add_rate(const Result& r, Outcome& out) {
  if (!r.mm_per_km) return;
  const auto scaled = [](double mm_per_km) { return mm_per_km * km_per_thousand_miles; };
  std::optional<double> plus_minus;
  if (r.rate_plus_minus) plus_minus = scaled(*r.rate_plus_minus);
  const char* label = r.rests_on == RestsOn::UsualWear ? "Usual wear in 1,000 mi" : "Wear in 1,000 mi";
  out.figures.push_back(length("wear_per_1000_mi", label, Length::mm(scaled(*r.mm_per_km)), plus_minus));
  if (r.rests_on == RestsOn::FittedLine)
    out.figures.push_back(length("scatter", "Scatter about the line", Length::mm(r.line->scatter_mm)));
}

// ---- working ----

void add_reading_step(const Input& in, const Result& r, Outcome& out) {
  out.working.push_back(
      {"Expanded uncertainty", "U = 2 √(s_r² + (graduation/√12)² + (stated error/√3)²)",
       fmt::format("s_r {}, graduation {}, stated error {}",
                   short_inch_and_mm(in.repeatability.value_or(*in.graduation)), short_inch_and_mm(*in.graduation),
                   short_inch_and_mm(in.stated_error.value_or(Length{}))),
       short_inch_and_mm(r.uncertainty)});
}

void add_line_step(const Result& r, Outcome& out) {
  const lines::Line& line = *r.line;
  out.working.push_back(
      {"Line", "y = y_m + b (x − x_m), b = Σ(x − x_m)(y − y_m)/Σ(x − x_m)²",
       fmt::format("{} readings, x_m = {}, y_m = {}", line.points, miles_and_km(Distance::km(line.mean_km)),
                   short_inch_and_mm(Length::mm(line.mean_mm))),
       "b = " + per_thousand_miles(line.mm_per_km)});
}

void add_crossing_step(const Input& in, const Result& r, Outcome& out) {
  const std::string limit = short_inch_and_mm(in.limit->value);
  const std::string at = miles_and_km(r.forecast->crossing);
  if (!r.line) {
    out.working.push_back({"Limit reached", "x0 = x + (y − L)/usual wear",
                           fmt::format("{} + ({} − {})/({})", miles_and_km(r.odometer), short_inch_and_mm(r.thickness),
                                       limit, per_thousand_miles(*r.mm_per_km)),
                           at});
    return;
  }
  out.working.push_back({"Limit reached", "x0 = x_m + (L − y_m)/b", "L = " + limit, at});
}

void add_interval_step(const Result& r, double spread_mm, Outcome& out) {
  const auto end = [](const std::optional<Distance>& d) { return d ? miles_and_km(*d) : std::string("open"); };
  const std::string result =
      r.forecast ? fmt::format("{} to {}", end(r.forecast->low), end(r.forecast->high)) : std::string("no end: g ≥ 1");
  out.working.push_back({"95 % interval of it (Fieller)",
                         "x_m + [q ± (t s/|b|) √((1 − g)/n + q²/Sxx)]/(1 − g), q = x0 − x_m",
                         fmt::format("n = {}, s = {}, g = t² s²/(b² Sxx) = {:.4g}", r.line->points,
                                     short_inch_and_mm(Length::mm(spread_mm)), r.g),
                         result});
}

}  // namespace

std::string forecast_text(const Result& r) {
  if (!r.forecast) return std::string(outlook_text(r.outlook));
  if (r.forecast->left <= Distance{}) return "nothing ahead to name: the limit may be reached already";
  std::string text =
      (r.forecast->capped ? "look again by " : "no sooner proof than ") + miles_and_km(r.forecast->no_sooner);
  if (r.forecast->capped) text += ", the look interval; the wear seen says no more than that";
  if (r.rests_on == RestsOn::TwoReadings) text += "; two readings, no interval";
  if (r.rests_on == RestsOn::UsualWear) text += "; by the usual wear, no interval";
  return text;
}

void add_figures(const Input& in, Result& r) {
  Outcome& out = r.outcome;
  const bool damaged = !damage_of(in.seen).empty();
  Figure condition = number("condition", "Condition", damaged ? 1.0 : 0.0, condition_text(in.seen));
  Figure thickness = length("thickness", "Thickness at the last reading", r.thickness, r.uncertainty.in_mm());
  if (out.judgement) (damaged ? condition : thickness).verdict = out.judgement->verdict;
  if (damaged) out.figures.push_back(condition);  // the answer first
  out.figures.push_back(thickness);
  if (!damaged) out.figures.push_back(condition);
  out.figures.push_back(number("forecast", "Forecast", static_cast<double>(r.outlook), forecast_text(r)));
  if (r.forecast) add_forecast(*r.forecast, out);
  add_rate(r, out);
  out.figures.push_back(distance("odometer", "Odometer at the last reading", r.odometer));
}

void add_working(const Input& in, double spread_mm, Result& r) {
  add_reading_step(in, r, r.outcome);
  if (r.line) add_line_step(r, r.outcome);
  if (r.forecast) add_crossing_step(in, r, r.outcome);
  const bool interval = r.forecast ? r.forecast->low.has_value() : r.outlook == Outlook::Unbounded;
  if (interval) add_interval_step(r, spread_mm, r.outcome);
}

}  // namespace camside::wear
