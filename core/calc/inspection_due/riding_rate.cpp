#include "calc/inspection_due/riding_rate.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <vector>

namespace camside::riding_rate {

namespace {

constexpr double z_975 = 1.959963984540054;
constexpr std::size_t enough_points = 5;  // fewer cannot cover 95 %

std::vector<double> sorted_slopes(std::span<const Point> points) {
  std::vector<double> slopes;
  slopes.reserve(points.size() * (points.size() - 1) / 2);
  for (std::size_t i = 0; i < points.size(); ++i) {
    for (std::size_t j = i + 1; j < points.size(); ++j) {
      const double days = points[j].day - points[i].day;
      if (days != 0.0) slopes.push_back((points[j].km - points[i].km) / days);
    }
  }
  std::sort(slopes.begin(), slopes.end());
  return slopes;
}

double median(const std::vector<double>& sorted) {
  const std::size_t half = sorted.size() / 2;
  return sorted.size() % 2 == 1 ? sorted[half] : 0.5 * (sorted[half - 1] + sorted[half]);
}

double term(double k) {
  return k * (k - 1.0) * (2.0 * k + 5.0);
}

double ties(std::span<const Point> points, double Point::*member) {
  std::map<double, int> counts;
  for (const Point& p : points) ++counts[p.*member];
  double sum = 0.0;
  for (const auto& [value, count] : counts) sum += term(count);
  return sum;
}

// σ of Kendall's S.
double sigma(std::span<const Point> points) {
  const double free = term(static_cast<double>(points.size()));
  return std::sqrt(std::max(0.0, free - ties(points, &Point::day) - ties(points, &Point::km)) / 18.0);
}

// Sen's interval; ranks beyond the slopes there are take the outermost ones.
void add_interval(std::span<const Point> points, const std::vector<double>& slopes, Rate& rate) {
  if (points.size() < 3 || slopes.size() < 2) return;
  const double count = static_cast<double>(slopes.size());
  const double half_width = z_975 * sigma(points);
  const double low = std::max(std::nearbyint((count - half_width) / 2.0) - 1.0, 0.0);
  const double high = std::min(std::nearbyint((count + half_width) / 2.0), count - 1.0);
  rate.low_km_per_day = slopes[static_cast<std::size_t>(low)];
  rate.high_km_per_day = slopes[static_cast<std::size_t>(high)];
  rate.covers_95 = points.size() >= enough_points;
}

}  // namespace

std::optional<Rate> theil_sen(std::span<const Point> points) {
  if (points.size() < 2 || points.size() > most_points) return {};
  const std::vector<double> slopes = sorted_slopes(points);
  if (slopes.empty()) return {};
  Rate rate;
  rate.km_per_day = median(slopes);
  rate.slopes = slopes.size();
  add_interval(points, slopes, rate);
  return rate;
}

}  // namespace camside::riding_rate
