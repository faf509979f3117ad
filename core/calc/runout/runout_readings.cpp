#include "calc/runout/runout_readings.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "base/stable_sort.hpp"
#include "calc/runout/runout_remarks.hpp"

namespace camside::runout {

namespace {

namespace say = remarks::runout;

constexpr double two_pi = 2.0 * std::numbers::pi;
constexpr double same_direction_rad = 1e-9;
constexpr double slack_mm = 1e-9;
constexpr double widest_gap_rad = two_pi / 3.0;
constexpr Length usual_range = Length::inches(1.0);
// Common practice, no published source: what such shafts show, and what no shaft in its case can.
constexpr double far_above_usual_mm = 0.020 * 25.4;
constexpr double impossible_mm = 0.3 * 25.4;
constexpr double flat_mm = 0.005 * 25.4;
constexpr double nearly_a_dial_turn = 0.7;

// One reading, in the order of reading.
struct Point {
  double angle_rad = 0.0;  // as entered
  double direction_rad = 0.0;
  double reading_mm = 0.0;
  int turn = 1;
  std::size_t index = 0;  // in the input
};

double direction_of(double angle_rad) {
  const double rest = std::fmod(angle_rad, two_pi);
  const double up = rest < 0.0 ? rest + two_pi : rest;
  return two_pi - up < same_direction_rad ? 0.0 : up;
}

bool same_direction(double a, double b) {
  const double apart = std::abs(a - b);
  return apart < same_direction_rad || two_pi - apart < same_direction_rad;
}

std::string item(const std::string& path, const char* list, std::size_t i, const char* field) {
  return path + list + "[" + std::to_string(i) + "]" + field;
}

double needle_turn_mm(const Setup& setup) {
  return setup.needle_turn ? setup.needle_turn->in_mm() : 100.0 * setup.graduation->in_mm();
}

// ---- what the indicator can have shown ----

class RangeGuard {
 public:
  explicit RangeGuard(const Setup& setup)
      : range_(setup.range.value_or(usual_range)), given_(setup.range.has_value()) {}

  void look(Length reading, const auto& field) {
    if (std::abs(reading.in_mm()) <= range_.in_mm() + slack_mm) return;
    if (count_++ == 0) {
      first_ = reading;
      field_ = field();
    }
  }
  void tell(Findings& refusals) const {
    if (count_ > 0) refusals.push_back(say::beyond_indicator(field_, first_, range_, given_, count_ - 1));
  }

 private:
  Length range_;
  bool given_;
  std::size_t count_ = 0;
  Length first_;
  std::string field_;
};

// ---- mistakes of typing that the size of the runout gives away ----

std::optional<Finding> odd_size(const Shape& shape, const Setup& setup, const std::string& field) {
  const Length tir = Length::mm(shape.tir_mm);
  if (shape.tir_mm >= impossible_mm) return say::thou_typed_as_inches(field, tir);
  if (shape.tir_mm > far_above_usual_mm) return say::unit_or_zero_lost(field, tir);
  const double graduation_mm = setup.graduation->in_mm() * indicator_cosine(setup);
  if (shape.tir_mm > 0.0 && shape.tir_mm < 0.1 * graduation_mm) {
    return say::finer_than_the_dial(field, tir, *setup.graduation);
  }
  return std::nullopt;
}

void question_size(const Shape& shape, const Setup& setup, bool checked, const std::string& field, Findings& remarks) {
  if (shape.tir_mm == 0.0) remarks.push_back(say::needle_did_not_move(field));
  if (shape.proposed_tir_mm) return;  // asked about already, in better words
  const std::optional<Finding> odd = odd_size(shape, setup, field);
  if (odd) remarks.push_back(checked ? say::readings_confirmed() : *odd);
}

void question_repeats(const Shape& shape, const Setup& setup, const std::string& field, Findings& remarks) {
  const double graduation_mm = setup.graduation->in_mm() * indicator_cosine(setup);
  if (shape.repeat_spread_mm > 0.5 * graduation_mm + slack_mm) {
    remarks.push_back(say::turns_disagree(field, Length::mm(shape.repeat_spread_mm), *setup.graduation));
  }
}

// ---- swings ----

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
  Findings& remarks;
  Findings& refusals;
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
    if (setup.passed_zero) {
      ends = other;
      remarks.push_back(
          say::dial_turn_taken_out(item(path, "swings", i, ""), Length::mm(turn_mm), setup.needle_turn.has_value()));
    } else if (ends.low_mm > ends.high_mm) {
      refusals.push_back(say::zero_inside_swing(item(path, "swings", i, ".low"), Length::mm(ends.low_mm),
                                                Length::mm(ends.high_mm), Length::mm(turn_mm)));
    } else {
      asked = true;
      remarks.push_back(say::needle_may_have_passed_zero(
          item(path, "swings", i, ""), Length::mm(ends.high_mm), Length::mm(ends.low_mm), Length::mm(turn_mm),
          setup.needle_turn.has_value(), Length::mm(apart_mm), Length::mm(other.high_mm - other.low_mm)));
    }
  }

  void check_order(const Ends& ends, std::size_t i) {
    if (ends.low_mm <= ends.high_mm) return;
    refusals.push_back(
        say::low_above_high(item(path, "swings", i, ".low"), Length::mm(ends.low_mm), Length::mm(ends.high_mm)));
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

void remark_swings(const Readings& in, const Setup& setup, const std::string& path, Findings& remarks) {
  const auto all = [&](const auto& test) { return std::all_of(in.swings.begin(), in.swings.end(), test); };
  if (in.swings.size() < 2) remarks.push_back(say::one_swing_only(path + "swings"));
  const bool low_at_zero = all([](const Swing& s) { return s.low.in_mm() == 0.0; });
  if (low_at_zero && !setup.swing_means && in.swings.front().high.in_mm() > 0.0) {
    remarks.push_back(say::swing_or_offset(item(path, "swings", 0, ""), in.swings.front().high));
  }
  const bool no_minus = all([](const Swing& s) { return s.low.in_mm() > 0.0; });
  if (setup.dial == Dial::Balanced && no_minus) remarks.push_back(say::only_one_side_of_dial(path + "swings"));
  if (setup.swing_means == SwingMeans::OffsetOnly) remarks.push_back(say::swing_doubled());
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
  pool_swings(turns, cosine, shape);
  return shape;
}

tl::expected<Shape, Findings> shape_of_swings(const Readings& in, const Setup& setup, bool checked,
                                              const std::string& path, Findings& remarks) {
  Findings refusals;
  if (in.swings.empty()) {
    refusals.push_back(say::no_readings(path + "swings", !in.stations.empty()));
    return tl::unexpected(std::move(refusals));
  }
  RangeGuard guard(setup);
  SwingDial dial{setup, path, remarks, refusals, {}};
  std::vector<Ends> turns;
  for (std::size_t i = 0; i < in.swings.size(); ++i) {
    guard.look(in.swings[i].low, [&] { return item(path, "swings", i, ".low"); });
    guard.look(in.swings[i].high, [&] { return item(path, "swings", i, ".high"); });
    turns.push_back({in.swings[i].low.in_mm(), in.swings[i].high.in_mm()});
    dial.unturn(turns.back(), i);
  }
  guard.tell(refusals);
  if (!refusals.empty()) return tl::unexpected(std::move(refusals));

  Shape shape = swing_shape(in, setup, turns);
  if (dial.asked) shape.proposed_tir_mm = swing_shape(in, setup, dial.proposed).tir_mm;
  remark_swings(in, setup, path, remarks);
  question_size(shape, setup, checked, path + "swings", remarks);
  question_repeats(shape, setup, path + "swings", remarks);
  return shape;
}

// ---- stations: closing readings ----

std::vector<Point> points_in_order(const std::vector<Station>& stations) {
  std::vector<Point> points;
  points.reserve(stations.size());
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const Station& s = stations[i];
    points.push_back({s.angle.in_rad(), direction_of(s.angle.in_rad()), s.reading.in_mm(), s.turn, i});
  }
  sort_stably(points.begin(), points.end(), [](const Point& a, const Point& b) { return a.turn < b.turn; });
  return points;
}

struct Closing {
  double reading_mm = 0.0;
  double start_mm = 0.0;
};

struct Sorted {
  std::vector<Point> stations;  // in order of reading
  std::optional<Closing> closing;
  std::size_t closings = 0;
  std::size_t closing_index = 0;
};

// Which reading of a turn is only the start again: one that stands whole turns on from the least angle, or the last one
// when it has come back to the first. −1: none.
std::ptrdiff_t closing_of_turn(std::span<const Point> turn) {
  if (turn.size() < 3) return -1;
  const auto by_angle = [](const Point& a, const Point& b) { return a.angle_rad < b.angle_rad; };
  const auto [first, last] = std::minmax_element(turn.begin(), turn.end(), by_angle);
  const double apart = last->angle_rad - first->angle_rad;
  if (apart > std::numbers::pi && same_direction(first->direction_rad, last->direction_rad)) {
    return last - turn.begin();
  }
  if (same_direction(turn.front().direction_rad, turn.back().direction_rad)) return std::ssize(turn) - 1;
  return -1;
}

const Point* first_towards(const std::vector<Point>& points, double direction_rad) {
  const auto it = std::find_if(points.begin(), points.end(),
                               [&](const Point& p) { return same_direction(p.direction_rad, direction_rad); });
  return it == points.end() ? nullptr : &*it;
}

void take_closing(Sorted& out, const Point& closing) {
  ++out.closings;
  out.closing_index = closing.index;
  if (const Point* start = first_towards(out.stations, closing.direction_rad)) {
    out.closing = Closing{closing.reading_mm, start->reading_mm};
  }
}

Sorted sort_out(std::vector<Point> points, const std::optional<Length>& closing) {
  Sorted out;
  out.stations.reserve(points.size());
  for (std::size_t begin = 0; begin < points.size();) {
    std::size_t end = begin;
    while (end < points.size() && points[end].turn == points[begin].turn) ++end;
    const std::span<const Point> turn(points.data() + begin, end - begin);
    const std::ptrdiff_t at = closing_of_turn(turn);
    for (std::ptrdiff_t i = 0; i < std::ssize(turn); ++i) {
      if (i != at) out.stations.push_back(turn[static_cast<std::size_t>(i)]);
    }
    if (at >= 0) take_closing(out, turn[static_cast<std::size_t>(at)]);
    begin = end;
  }
  if (closing && !out.stations.empty()) out.closing = Closing{closing->in_mm(), out.stations.front().reading_mm};
  return out;
}

// ---- stations: the needle round its dial ----

struct Untwisted {
  std::vector<double> reading_mm;  // as the stations stand
  bool suspect = false;            // as typed, neighbours differ by nearly a turn of the dial, and that explains it
  double one_mm = 0.0;             // such a pair
  double other_mm = 0.0;
  std::size_t index = 0;
};

std::vector<std::size_t> order_by_direction(const std::vector<Point>& points) {
  return sorted_indices(
      points.size(), [&](std::size_t a, std::size_t b) { return points[a].direction_rad < points[b].direction_rad; });
}

double spread_of(const std::vector<double>& values) {
  const auto [low, high] = std::minmax_element(values.begin(), values.end());
  return *high - *low;
}

// Whole turns of the dial taken out so that no two neighbours round the shaft differ by more than half a turn.
Untwisted untwist(const std::vector<Point>& points, double turn_mm) {
  Untwisted out;
  out.reading_mm.resize(points.size());
  const std::vector<std::size_t> order = order_by_direction(points);
  double before = points[order.front()].reading_mm;
  double mean = 0.0;
  bool jump = false;
  for (std::size_t k = 0; k < order.size(); ++k) {
    const Point& p = points[order[k]];
    const Point& previous = points[order[k == 0 ? order.size() - 1 : k - 1]];
    before = p.reading_mm - turn_mm * std::round((p.reading_mm - before) / turn_mm);
    out.reading_mm[order[k]] = before;
    mean += before / static_cast<double>(order.size());
    if (!jump && std::abs(p.reading_mm - previous.reading_mm) >= nearly_a_dial_turn * turn_mm) {
      jump = true;
      out.one_mm = previous.reading_mm;
      out.other_mm = p.reading_mm;
      out.index = p.index;
    }
  }
  const double whole = turn_mm * std::round(mean / turn_mm);  // back to where most of them were typed
  for (double& r : out.reading_mm) r -= whole;
  out.suspect = jump && spread_of(out.reading_mm) < 0.5 * turn_mm;
  return out;
}

// ---- stations: shape ----

// Same readings, each with its own value put in its place.
std::vector<Point> with_readings(std::vector<Point> points, const std::vector<double>& reading_mm) {
  for (std::size_t i = 0; i < points.size(); ++i) points[i].reading_mm = reading_mm[i];
  return points;
}

void put_together(const std::vector<Point>& by_direction, Shape& shape) {
  for (std::size_t begin = 0; begin < by_direction.size();) {
    const double first = by_direction[begin].direction_rad;
    const double zero = by_direction[begin].reading_mm;
    double sum = 0.0;
    double least = zero;
    double most = zero;
    std::size_t end = begin;
    for (; end < by_direction.size() && by_direction[end].direction_rad - first < same_direction_rad; ++end) {
      sum += by_direction[end].reading_mm - zero;
      least = std::min(least, by_direction[end].reading_mm);
      most = std::max(most, by_direction[end].reading_mm);
    }
    const double mean = zero + sum / static_cast<double>(end - begin);
    for (std::size_t i = begin; i < end; ++i) {
      const double off = by_direction[i].reading_mm - mean;
      shape.repeat_squares_mm2 += off * off;
    }
    shape.repeat_degrees_of_freedom += static_cast<double>(end - begin - 1);
    shape.repeat_spread_mm = std::max(shape.repeat_spread_mm, most - least);
    shape.stations.push_back({Angle::rad(first), Length::mm(mean), end - begin});
    begin = end;
  }
}

void take_tir(Shape& shape) {
  const auto by_reading = [](const CleanStation& a, const CleanStation& b) { return a.reading < b.reading; };
  const auto [low, high] = std::minmax_element(shape.stations.begin(), shape.stations.end(), by_reading);
  shape.lowest_mm = low->reading.in_mm();
  shape.highest_mm = high->reading.in_mm();
  shape.tir_mm = shape.highest_mm - shape.lowest_mm;
  shape.judged_mm = shape.tir_mm;
}

std::size_t gap_before(const std::vector<CleanStation>& stations, double& gap_rad) {
  std::size_t worst = 0;
  gap_rad = 0.0;
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const double before = i == 0 ? stations.back().angle.in_rad() - two_pi : stations[i - 1].angle.in_rad();
    const double gap = stations[i].angle.in_rad() - before;
    if (gap > gap_rad) {
      gap_rad = gap;
      worst = i;
    }
  }
  return worst;
}

std::optional<Finding> refuse_places(const Shape& shape, std::size_t before, const std::string& path) {
  if (shape.places < 3) return say::too_few_directions(path + "stations", shape.places);
  if (shape.largest_gap_rad <= widest_gap_rad + 1e-6) return std::nullopt;
  const std::size_t from = before == 0 ? shape.stations.size() - 1 : before - 1;
  return say::gap_too_wide(path + "stations", shape.stations[from].angle, shape.stations[before].angle,
                           Angle::rad(shape.largest_gap_rad));
}

std::optional<turn_fit::Fit> best_fit(const std::vector<Point>& points, std::size_t places) {
  std::vector<double> angle;
  std::vector<double> reading;
  angle.reserve(points.size());
  reading.reserve(points.size());
  for (const Point& p : points) {
    angle.push_back(p.direction_rad);
    reading.push_back(p.reading_mm);
  }
  if (points.size() >= 8 && places >= 5) {
    if (auto two = turn_fit::fit(angle, reading, {1.0, 2})) return std::move(*two);
  }
  auto one = turn_fit::fit(angle, reading, {1.0, 1});
  return one ? std::optional(std::move(*one)) : std::nullopt;
}

void take_fit(Shape& shape) {
  const turn_fit::Extremes e = turn_fit::extremes(*shape.fit);
  shape.judged_mm = std::max(shape.tir_mm, e.greatest - e.least);
  shape.eccentricity_mm = shape.fit->amplitude(1);
  shape.high_spot_rad = shape.fit->crest_rad(1);
  shape.scatter_mm = shape.fit->scatter();
  if (shape.fit->model.harmonics == 2) shape.ovality_mm = 2.0 * shape.fit->amplitude(2);
}

tl::expected<Shape, Finding> measure(std::vector<Point> points, const std::string& path) {
  sort_stably(points.begin(), points.end(),
              [](const Point& a, const Point& b) { return a.direction_rad < b.direction_rad; });
  Shape shape;
  shape.method = Method::Stations;
  put_together(points, shape);
  shape.readings = points.size();
  shape.places = shape.stations.size();
  const std::size_t before = gap_before(shape.stations, shape.largest_gap_rad);
  if (auto refused = refuse_places(shape, before, path)) return tl::unexpected(std::move(*refused));
  take_tir(shape);
  shape.fit = best_fit(points, shape.places);
  if (!shape.fit) return tl::unexpected(say::too_few_directions(path + "stations", shape.places));
  take_fit(shape);
  return shape;
}

std::vector<Point> scaled(std::vector<Point> points, double factor) {
  for (Point& p : points) p.reading_mm *= factor;
  return points;
}

// The drift taken out in proportion to the order of reading; the closing reading comes one step after the last.
std::vector<Point> without_drift(std::vector<Point> points, double drift_mm) {
  const auto steps = static_cast<double>(points.size());
  for (std::size_t i = 0; i < points.size(); ++i) points[i].reading_mm -= drift_mm * static_cast<double>(i) / steps;
  return points;
}

// Two lobes of this size are a flat or a keyway under the contact.
double two_lobes_mm(const Shape& shape) {
  if (shape.ovality_mm) return *shape.ovality_mm;
  return shape.fit->degrees_of_freedom() == 0 ? 0.0 : spread_of(shape.fit->residuals);
}

void judge_closing(const Sorted& sorted, const Setup& setup, const std::string& path, Shape& shape, Findings& remarks) {
  if (!sorted.closing) return;
  const double cosine = indicator_cosine(setup);
  const double drift_mm = (sorted.closing->reading_mm - sorted.closing->start_mm) * cosine;
  shape.closing_error_mm = std::abs(drift_mm);
  if (*shape.closing_error_mm <= setup.graduation->in_mm() * cosine + slack_mm) return;
  remarks.push_back(say::indicator_moved(path + "closing", Length::mm(*shape.closing_error_mm), *setup.graduation));
  const auto straight = measure(without_drift(scaled(sorted.stations, cosine), drift_mm), path);
  if (!straight) return;
  shape.tir_without_drift_mm = straight->tir_mm;
  shape.judged_without_drift_mm = straight->judged_mm;
}

void remark_stations(const Sorted& sorted, const Setup& setup, const std::string& path, const Shape& shape,
                     Findings& remarks) {
  if (sorted.closings > 0) {
    remarks.push_back(say::closing_reading_taken(item(path, "stations", sorted.closing_index, ""), sorted.closings));
  }
  if (shape.places < 6) remarks.push_back(say::too_few_to_prove(path + "stations", shape.places));
  if (!shape.ovality_mm) remarks.push_back(say::ovality_not_determined());
  const bool no_minus =
      std::all_of(sorted.stations.begin(), sorted.stations.end(), [](const Point& p) { return p.reading_mm > 0.0; });
  if (setup.dial == Dial::Balanced && no_minus) remarks.push_back(say::only_one_side_of_dial(path + "stations"));
}

// The dial's turns: taken out when that was answered, else asked about and the answer proposed.
void question_dial(Sorted& sorted, const Setup& setup, const std::string& path, Shape* asked, Findings& remarks) {
  if (!setup.passed_zero.value_or(true)) return;
  const double turn_mm = needle_turn_mm(setup);
  const Untwisted untwisted = untwist(sorted.stations, turn_mm);
  if (!untwisted.suspect) return;
  const std::string field = item(path, "stations", untwisted.index, ".reading");
  std::vector<Point> proposed = with_readings(sorted.stations, untwisted.reading_mm);
  if (setup.passed_zero) {
    if (sorted.closing) {
      sorted.closing->start_mm = proposed.front().reading_mm;
      const double off = sorted.closing->reading_mm - sorted.closing->start_mm;
      sorted.closing->reading_mm -= turn_mm * std::round(off / turn_mm);
    }
    sorted.stations = std::move(proposed);
    remarks.push_back(say::dial_turn_taken_out(field, Length::mm(turn_mm), setup.needle_turn.has_value()));
    return;
  }
  const auto other = measure(scaled(std::move(proposed), indicator_cosine(setup)), path);
  if (asked == nullptr || !other) return;
  asked->proposed_tir_mm = other->tir_mm;
  remarks.push_back(say::needle_may_have_passed_zero(
      field, Length::mm(untwisted.one_mm), Length::mm(untwisted.other_mm), Length::mm(turn_mm),
      setup.needle_turn.has_value(), Length::mm(asked->tir_mm), Length::mm(other->tir_mm)));
}

Findings refuse_readings(const Readings& in, const Setup& setup, const std::string& path) {
  Findings refusals;
  if (in.stations.empty()) {
    refusals.push_back(say::no_readings(path + "stations", !in.swings.empty()));
    return refusals;
  }
  RangeGuard guard(setup);
  for (std::size_t i = 0; i < in.stations.size(); ++i) {
    guard.look(in.stations[i].reading, [&] { return item(path, "stations", i, ".reading"); });
  }
  if (in.closing) guard.look(*in.closing, [&] { return path + "closing"; });
  guard.tell(refusals);
  return refusals;
}

tl::expected<Shape, Findings> shape_of_stations(const Readings& in, const Setup& setup, bool checked,
                                                const std::string& path, Findings& remarks) {
  Findings refusals = refuse_readings(in, setup, path);
  if (!refusals.empty()) return tl::unexpected(std::move(refusals));
  Sorted sorted = sort_out(points_in_order(in.stations), in.closing);
  if (setup.passed_zero) question_dial(sorted, setup, path, nullptr, remarks);
  auto shape = measure(scaled(sorted.stations, indicator_cosine(setup)), path);
  if (!shape) return tl::unexpected(Findings{std::move(shape.error())});

  if (!setup.passed_zero) question_dial(sorted, setup, path, &*shape, remarks);
  remark_stations(sorted, setup, path, *shape, remarks);
  question_size(*shape, setup, checked, path + "stations", remarks);
  question_repeats(*shape, setup, path + "stations", remarks);
  judge_closing(sorted, setup, path, *shape, remarks);
  const double lobes = two_lobes_mm(*shape);
  if (lobes > flat_mm && !shape->proposed_tir_mm) {
    remarks.push_back(checked ? say::readings_confirmed() : say::read_on_a_flat(Length::mm(lobes)));
  }
  return std::move(*shape);
}

}  // namespace

double indicator_cosine(const Setup& setup) {
  return std::cos(setup.indicator_angle.in_rad());
}

tl::expected<Shape, Findings> shape_of(const Readings& readings, const Setup& setup, bool readings_checked,
                                       const std::string& path, Findings& remarks) {
  const auto shape = readings.method == Method::Swing ? shape_of_swings : shape_of_stations;
  return shape(readings, setup, readings_checked, path, remarks);
}

}  // namespace camside::runout
