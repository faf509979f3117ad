#include "maths/lines.hpp"

#include <cmath>

#include "maths/coverage.hpp"

namespace camside::lines {

namespace {

struct Means {
  double km = 0.0;
  double mm = 0.0;
};

// Twice through: the second pass takes out what rounding left in the first.
Means means_of(std::span<const LinePoint> points) {
  const double count = static_cast<double>(points.size());
  Means m;
  for (const LinePoint& p : points) {
    m.km += p.km / count;
    m.mm += p.mm / count;
  }
  Means rest;
  for (const LinePoint& p : points) {
    rest.km += (p.km - m.km) / count;
    rest.mm += (p.mm - m.mm) / count;
  }
  return {m.km + rest.km, m.mm + rest.mm};
}

double scatter_of(std::span<const LinePoint> points, const Line& line) {
  if (points.size() < 3) return 0.0;
  double squares = 0.0;
  for (const LinePoint& p : points) {
    const double residual = (p.mm - line.mean_mm) - line.mm_per_km * (p.km - line.mean_km);
    squares += residual * residual;
  }
  return std::sqrt(squares / line.degrees_of_freedom());
}

}  // namespace

std::optional<Line> fit_line(std::span<const LinePoint> points) {
  if (points.size() < 2) return {};
  const Means mean = means_of(points);
  Line line{points.size(), mean.km, mean.mm};
  double sxy = 0.0;
  bool differ = false;
  for (const LinePoint& p : points) {
    const double dx = p.km - mean.km;
    line.sxx_km2 += dx * dx;
    sxy += dx * (p.mm - mean.mm);
    differ = differ || p.km != points.front().km;
  }
  if (!differ || !(line.sxx_km2 > 0.0)) return {};
  line.mm_per_km = sxy / line.sxx_km2;
  line.scatter_mm = scatter_of(points, line);
  return line;
}

Crossing crossing_of(const Line& line, double level_mm) {
  Crossing c;
  c.km = line.mean_km + (level_mm - line.mean_mm) / line.mm_per_km;
  return c;
}

Crossing crossing_with_interval(const Line& line, double level_mm, double spread_mm, double probability) {
  Crossing c = crossing_of(line, level_mm);
  const double t = coverage::student_two_sided(probability, line.degrees_of_freedom());
  const double reach = t * spread_mm / std::abs(line.mm_per_km);  // of one point, along the distance
  c.g = reach * reach / line.sxx_km2;
  if (!(c.g < 1.0)) return c;
  const double q = c.km - line.mean_km;
  const double count = static_cast<double>(line.points);
  const double half = reach * std::sqrt((1.0 - c.g) / count + q * q / line.sxx_km2);
  c.low_km = line.mean_km + (q - half) / (1.0 - c.g);
  c.high_km = line.mean_km + (q + half) / (1.0 - c.g);
  return c;
}

}  // namespace camside::lines
