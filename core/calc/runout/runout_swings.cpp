#include <algorithm>
#include <cmath>
#include <utility>

#include "calc/runout/runout_needle.hpp"
#include "calc/runout/runout_remarks.hpp"
#include "calc/runout/runout_shapes.hpp"
#include "fields/path.hpp"

namespace camside::runout {

namespace {

namespace say = remarks::runout;

struct Ends {
  double low_mm = 0.0;
  double high_mm = 0.0;
};

bool nearly_one_turn(double apart_mm, double turn_mm) {
  return apart_mm >= nearly_a_dial_turn * turn_mm && apart_mm < turn_mm;
}

// The needle may have gone through the dial's zero: then the higher number belongs below it.
struct SwingDial {
  const Setup& setup;
  const std::string& path;
  Findings& refusals;
  std::vector<DialTurn> turns;
  std::vector<Ends> proposed;
  bool asked = false;

  void unturn(Ends& ends, std::size_t i) {
    const double turn_mm = needle_turn_mm(setup);
    const double apart_mm = std::abs(ends.high_mm - ends.low_mm);
    Ends other = ends;
    const bool suspect = setup.passed_zero.value_or(true) && nearly_one_turn(apart_mm, turn_mm);
    if (suspect) other = {std::max(ends.low_mm, ends.high_mm) - turn_mm, std::min(ends.low_mm, ends.high_mm)};
    proposed.push_back(other);
    if (!suspect) return check_order(ends, i);
    const bool upside_down = ends.low_mm > ends.high_mm;
    if (!setup.passed_zero && upside_down) {
      refusals.push_back(say::zero_inside_swing(item_path(path + "swings", i, "low"), Length::mm(ends.low_mm),
                                                Length::mm(ends.high_mm), Length::mm(turn_mm)));
      return;
    }
    const bool sure = setup.passed_zero.has_value();
    turns.push_back({i, sure, Length::mm(ends.high_mm), Length::mm(ends.low_mm), Length::mm(apart_mm),
                     Length::mm(other.high_mm - other.low_mm)});
    asked = asked || !sure;
    if (sure) ends = other;
  }

  void check_order(const Ends& ends, std::size_t i) {
    if (ends.low_mm <= ends.high_mm) return;
    refusals.push_back(
        say::low_above_high(item_path(path + "swings", i, "low"), Length::mm(ends.low_mm), Length::mm(ends.high_mm)));
  }
};

Ends mean_of(const std::vector<Ends>& turns) {
  Ends sum;
  for (const Ends& t : turns) {
    sum.low_mm += t.low_mm;
    sum.high_mm += t.high_mm;
  }
  const auto n = static_cast<double>(turns.size());
  return {sum.low_mm / n, sum.high_mm / n};
}

// Lowest and highest are two places, each read once a turn.
void pool_swings(const std::vector<Ends>& turns, double scale, Shape& shape) {
  const Ends mean = mean_of(turns);
  double least = turns.front().high_mm - turns.front().low_mm;
  double most = least;
  for (const Ends& t : turns) {
    const double low = t.low_mm - mean.low_mm;
    const double high = t.high_mm - mean.high_mm;
    shape.repeat_squares_mm2 += (low * low + high * high) * scale * scale;
    least = std::min(least, t.high_mm - t.low_mm);
    most = std::max(most, t.high_mm - t.low_mm);
  }
  shape.repeat_degrees_of_freedom = 2.0 * static_cast<double>(turns.size() - 1);
  shape.repeat_spread_mm = (most - least) * scale;
}

// Mean direction of the high spots that were noted.
std::optional<double> mean_high_spot(const std::vector<Swing>& swings) {
  double x = 0.0;
  double y = 0.0;
  bool any = false;
  for (const Swing& s : swings) {
    if (!s.high_spot) continue;
    any = true;
    x += std::cos(s.high_spot->in_rad());
    y += std::sin(s.high_spot->in_rad());
  }
  if (!any || std::hypot(x, y) < 1e-9) return std::nullopt;
  return direction_of(std::atan2(y, x));
}

Shape swing_shape(const Readings& in, const Setup& setup, const std::vector<Ends>& turns) {
  const double cosine = indicator_cosine(setup);
  const Ends mean = mean_of(turns);
  Shape shape;
  shape.method = Method::Swing;
  shape.lowest_mm = mean.low_mm * cosine;
  shape.highest_mm = mean.high_mm * cosine;
  shape.tir_mm = shape.highest_mm - shape.lowest_mm;
  if (setup.swing_means == SwingMeans::OffsetOnly) shape.tir_mm *= 2.0;
  shape.judged_mm = shape.tir_mm;
  shape.eccentricity_mm = 0.5 * shape.tir_mm;
  shape.high_spot_rad = mean_high_spot(in.swings);
  shape.readings = 2 * turns.size();
  shape.places = turns.size();
  shape.all_above_zero =
      std::all_of(in.swings.begin(), in.swings.end(), [](const Swing& s) { return s.low.in_mm() > 0.0; });
  pool_swings(turns, cosine, shape);
  return shape;
}

}  // namespace

tl::expected<Shape, Findings> shape_of_swings(const Readings& in, const Setup& setup, const std::string& path) {
  Findings refusals;
  if (in.swings.empty()) {
    refusals.push_back(say::no_readings(path + "swings", !in.stations.empty()));
    return tl::unexpected(std::move(refusals));
  }
  RangeGuard guard(setup);
  SwingDial dial{setup, path, refusals, {}, {}};
  std::vector<Ends> turns;
  for (std::size_t i = 0; i < in.swings.size(); ++i) {
    guard.look(in.swings[i].low, [&] { return item_path(path + "swings", i, "low"); });
    guard.look(in.swings[i].high, [&] { return item_path(path + "swings", i, "high"); });
    turns.push_back({in.swings[i].low.in_mm(), in.swings[i].high.in_mm()});
    dial.unturn(turns.back(), i);
  }
  guard.tell(refusals);
  if (!refusals.empty()) return tl::unexpected(std::move(refusals));

  Shape shape = swing_shape(in, setup, turns);
  if (dial.asked) shape.proposed_tir_mm = swing_shape(in, setup, dial.proposed).tir_mm;
  shape.dial_turns = std::move(dial.turns);
  return shape;
}

}  // namespace camside::runout
