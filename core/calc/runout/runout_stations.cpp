#include <algorithm>
#include <cmath>
#include <numbers>
#include <span>
#include <utility>

#include "base/stable_sort.hpp"
#include "calc/runout/runout_needle.hpp"
#include "calc/runout/runout_remarks.hpp"
#include "calc/runout/runout_shapes.hpp"
#include "fields/path.hpp"

namespace camside::runout {

namespace {

namespace say = remarks::runout;

constexpr double two_pi = 2.0 * std::numbers::pi;
constexpr double widest_gap_rad = two_pi / 3.0;

// One reading, in the order of reading.
struct Point {
  double angle_rad = 0.0;  // as entered
  double direction_rad = 0.0;
  double reading_mm = 0.0;
  int turn = 1;
  std::size_t index = 0;  // in the input
};

bool same_direction(double a, double b) {
  const double apart = std::abs(a - b);
  return apart < same_direction_rad || two_pi - apart < same_direction_rad;
}

// ---- closing readings ----

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

// ---- the needle round its dial ----

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

// ---- shape ----

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

void take_closing_error(const Sorted& sorted, const Setup& setup, const std::string& path, Shape& shape) {
  if (!sorted.closing) return;
  const double cosine = indicator_cosine(setup);
  const double drift_mm = (sorted.closing->reading_mm - sorted.closing->start_mm) * cosine;
  shape.closing_error_mm = std::abs(drift_mm);
  if (*shape.closing_error_mm <= setup.graduation->in_mm() * cosine + slack_mm) return;
  const auto straight = measure(without_drift(scaled(sorted.stations, cosine), drift_mm), path);
  if (!straight) return;
  shape.tir_without_drift_mm = straight->tir_mm;
  shape.judged_without_drift_mm = straight->judged_mm;
}

// What the dial hid, where it seems to have hidden something.
struct Hidden {
  DialTurn turn;
  std::vector<Point> proposed;
};

std::optional<Hidden> hidden_turn(const Sorted& sorted, const Setup& setup) {
  if (!setup.passed_zero.value_or(true)) return std::nullopt;
  const Untwisted untwisted = untwist(sorted.stations, needle_turn_mm(setup));
  if (!untwisted.suspect) return std::nullopt;
  const DialTurn turn{untwisted.index,
                      setup.passed_zero.has_value(),
                      Length::mm(untwisted.one_mm),
                      Length::mm(untwisted.other_mm),
                      {},
                      {}};
  return Hidden{turn, with_readings(sorted.stations, untwisted.reading_mm)};
}

void take_turn_out(Sorted& sorted, const Setup& setup, std::vector<Point> proposed) {
  if (sorted.closing) {
    const double turn_mm = needle_turn_mm(setup);
    sorted.closing->start_mm = proposed.front().reading_mm;
    const double off = sorted.closing->reading_mm - sorted.closing->start_mm;
    sorted.closing->reading_mm -= turn_mm * std::round(off / turn_mm);
  }
  sorted.stations = std::move(proposed);
}

// Not answered yet: what it would be if the needle had gone round.
void propose(Hidden hidden, const Setup& setup, const std::string& path, Shape& shape) {
  const auto other = measure(scaled(std::move(hidden.proposed), indicator_cosine(setup)), path);
  if (!other) return;
  shape.proposed_tir_mm = other->tir_mm;
  hidden.turn.tir = Length::mm(shape.tir_mm);
  hidden.turn.proposed = Length::mm(other->tir_mm);
  shape.dial_turns.push_back(hidden.turn);
}

void take_dial(const Sorted& sorted, std::optional<Hidden> hidden, const Setup& setup, const std::string& path,
               Shape& shape) {
  shape.closings = sorted.closings;
  shape.closing_index = sorted.closing_index;
  shape.all_above_zero =
      std::all_of(sorted.stations.begin(), sorted.stations.end(), [](const Point& p) { return p.reading_mm > 0.0; });
  if (!hidden) return;
  if (hidden->turn.taken_out) {
    shape.dial_turns.push_back(hidden->turn);
  } else {
    propose(std::move(*hidden), setup, path, shape);
  }
}

Findings refuse_readings(const Readings& in, const Setup& setup, const std::string& path) {
  Findings refusals;
  if (in.stations.empty()) {
    refusals.push_back(say::no_readings(path + "stations", !in.swings.empty()));
    return refusals;
  }
  RangeGuard guard(setup);
  for (std::size_t i = 0; i < in.stations.size(); ++i) {
    guard.look(in.stations[i].reading, [&] { return item_path(path + "stations", i, "reading"); });
  }
  if (in.closing) guard.look(*in.closing, [&] { return path + "closing"; });
  guard.tell(refusals);
  return refusals;
}

}  // namespace

tl::expected<Shape, Findings> shape_of_stations(const Readings& in, const Setup& setup, const std::string& path) {
  Findings refusals = refuse_readings(in, setup, path);
  if (!refusals.empty()) return tl::unexpected(std::move(refusals));
  Sorted sorted = sort_out(points_in_order(in.stations), in.closing);
  std::optional<Hidden> hidden = hidden_turn(sorted, setup);
  if (hidden && hidden->turn.taken_out) take_turn_out(sorted, setup, hidden->proposed);
  auto shape = measure(scaled(sorted.stations, indicator_cosine(setup)), path);
  if (!shape) return tl::unexpected(Findings{std::move(shape.error())});

  take_dial(sorted, std::move(hidden), setup, path, *shape);
  take_closing_error(sorted, setup, path, *shape);
  shape->two_lobes_mm = two_lobes_mm(*shape);
  return std::move(*shape);
}

}  // namespace camside::runout
