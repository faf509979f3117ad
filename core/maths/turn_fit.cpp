#include "maths/turn_fit.hpp"

#include <Eigen/Core>
#include <Eigen/Jacobi>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace camside::turn_fit {

namespace {

constexpr double two_pi = 2.0 * std::numbers::pi;

// One row of the design matrix: 1, cos qθ, sin qθ, cos 2qθ, sin 2qθ.
Vector row_at(const Model& model, double angle_rad) {
  const double x = model.base_order * angle_rad;
  Vector row{1.0, std::cos(x), std::sin(x), 0.0, 0.0};
  if (model.harmonics > 1) {
    row[3] = std::cos(2.0 * x);
    row[4] = std::sin(2.0 * x);
  }
  return row;
}

double dot(const Vector& a, const Vector& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < most_unknowns; ++i) sum += a[i] * b[i];
  return sum;
}

double quadratic_form(const Matrix& m, const Vector& c) {
  double sum = 0.0;
  for (std::size_t i = 0; i < most_unknowns; ++i) sum += c[i] * dot(m[i], c);
  return sum;
}

// Small and of fixed greatest size, so that Eigen keeps it off the heap: R of X beside Qᵀy, triangular, and below it
// the row that is being taken in.
using Rows =
    Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor, most_unknowns + 1, most_unknowns + 1>;
using Square = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor, most_unknowns, most_unknowns>;

// The last row is turned into the triangle above it, by one plane rotation for each unknown.
void absorb_last_row(Rows& rows) {
  const Eigen::Index last = rows.rows() - 1;
  for (Eigen::Index j = 0; j < last; ++j) {
    Eigen::JacobiRotation<double> rotation;
    rotation.makeGivens(rows(j, j), rows(last, j));
    rows.applyOnTheLeft(j, last, rotation.adjoint());
  }
}

Rows triangle_of(const Model& model, std::span<const double> angle_rad, std::span<const double> reading, double zero) {
  const auto p = static_cast<Eigen::Index>(model.unknowns());
  Rows rows = Rows::Zero(p + 1, p + 1);
  for (std::size_t i = 0; i < angle_rad.size(); ++i) {
    const Vector row = row_at(model, angle_rad[i]);
    for (Eigen::Index j = 0; j < p; ++j) rows(p, j) = row[static_cast<std::size_t>(j)];
    rows(p, p) = reading[i] - zero;
    absorb_last_row(rows);
  }
  return rows;
}

// None when the angles leave an unknown open: a condition number that leaves fewer than six digits, or none at all.
std::optional<Square> inverse_of(const Square& triangle) {
  const Square inverse =
      triangle.triangularView<Eigen::Upper>().solve(Square::Identity(triangle.rows(), triangle.rows()));
  if (!(triangle.norm() * inverse.norm() < 1e10)) return std::nullopt;
  return inverse;
}

void take_residuals(Fit& fit, std::span<const double> angle_rad, std::span<const double> reading) {
  fit.residuals.resize(reading.size());
  for (std::size_t i = 0; i < reading.size(); ++i) {
    fit.residuals[i] = reading[i] - fit.value_at(angle_rad[i]);
    fit.residual_sum_of_squares += fit.residuals[i] * fit.residuals[i];
  }
}

// ---- least and greatest of a curve of two harmonics ----

constexpr int degree = 4;
using Polynomial = std::array<double, degree + 1>;  // lowest power first

double value_of(const Polynomial& p, double t) {
  double sum = 0.0;
  for (auto i = p.size(); i-- > 0;) sum = sum * t + p[i];
  return sum;
}

Polynomial derivative_of(const Polynomial& p) {
  Polynomial d{};
  for (std::size_t i = 1; i < p.size(); ++i) d[i - 1] = static_cast<double>(i) * p[i];
  return d;
}

// The one root in [low, high], where p has unlike signs at the ends (bisection down to neighbouring doubles).
double bisect(const Polynomial& p, double low, double high) {
  const bool rising = value_of(p, low) < 0.0;
  for (int i = 0; i < 100; ++i) {
    const double middle = 0.5 * (low + high);
    ((value_of(p, middle) < 0.0) == rising ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

// Where p or one of its derivatives is zero in [−1, 1], and the ends. Between two neighbours of the derivative's list p
// can have no more than one root, so none is missed, not even one that only touches.
std::vector<double> turning_places(const Polynomial& p, int order) {
  if (order == 0) return {-1.0, 1.0};
  std::vector<double> places = turning_places(derivative_of(p), order - 1);
  std::vector<double> roots;
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    if ((value_of(p, places[i]) < 0.0) != (value_of(p, places[i + 1]) < 0.0)) {
      roots.push_back(bisect(p, places[i], places[i + 1]));
    }
  }
  places.insert(places.end(), roots.begin(), roots.end());
  std::sort(places.begin(), places.end());
  return places;
}

// Slope of a1 cos x + b1 sin x + a2 cos 2x + b2 sin 2x times (1 + t²)², with t = tan(x/2).
Polynomial slope_polynomial(double a1, double b1, double a2, double b2) {
  return {b1 + 2.0 * b2, -2.0 * a1 - 8.0 * a2, -12.0 * b2, -2.0 * a1 + 8.0 * a2, 2.0 * b2 - b1};
}

void consider(Extremes& found, double value, double angle_rad) {
  if (value < found.least) {
    found.least = value;
    found.least_at_rad = angle_rad;
  }
  if (value > found.greatest) {
    found.greatest = value;
    found.greatest_at_rad = angle_rad;
  }
}

double folded(double angle_rad, double period_rad) {
  const double rest = std::fmod(angle_rad, period_rad);
  const double up = rest < 0.0 ? rest + period_rad : rest;
  return up < period_rad ? up : 0.0;
}

// Half a turn each way of x = start: there |tan| stays below 1. Half a turn on, the odd harmonic changes its sign.
void consider_half(Extremes& found, const Fit& fit, double start, double sign) {
  const Vector& c = fit.coefficient;
  const Polynomial slope = slope_polynomial(sign * c[1], sign * c[2], c[3], c[4]);
  for (const double t : turning_places(slope, degree)) {
    const double angle = folded((start + 2.0 * std::atan(t)) / fit.model.base_order, fit.model.period_rad());
    consider(found, fit.value_at(angle), angle);
  }
}

}  // namespace

double Model::period_rad() const {
  return two_pi / base_order;
}

std::optional<double> Fit::scatter() const {
  if (degrees_of_freedom() == 0) return std::nullopt;
  return std::sqrt(residual_sum_of_squares / static_cast<double>(degrees_of_freedom()));
}

double Fit::value_at(double angle_rad) const {
  return dot(coefficient, row_at(model, angle_rad));
}

double Fit::variance_factor_at(double angle_rad) const {
  return quadratic_form(covariance, row_at(model, angle_rad));
}

double Fit::amplitude(int harmonic) const {
  const auto i = static_cast<std::size_t>(2 * harmonic - 1);
  return std::hypot(coefficient[i], coefficient[i + 1]);
}

double Fit::crest_rad(int harmonic) const {
  const auto i = static_cast<std::size_t>(2 * harmonic - 1);
  const double phase = folded(std::atan2(coefficient[i + 1], coefficient[i]), two_pi);
  return phase / (model.base_order * harmonic);
}

double Fit::amplitude_variance_factor(int harmonic) const {
  const auto i = static_cast<std::size_t>(2 * harmonic - 1);
  const double phase = std::atan2(coefficient[i + 1], coefficient[i]);
  Vector along{};
  along[i] = std::cos(phase);
  along[i + 1] = std::sin(phase);
  return quadratic_form(covariance, along);
}

tl::expected<Fit, Fault> fit(std::span<const double> angle_rad, std::span<const double> reading, Model model) {
  if (reading.size() < model.unknowns() || angle_rad.size() != reading.size()) {
    return tl::unexpected(Fault::TooFewReadings);
  }
  // Taken from the first reading, so that where the dial stood at zero doesn't cost digits.
  const double zero = reading.front();
  const auto p = static_cast<Eigen::Index>(model.unknowns());
  const Rows triangle = triangle_of(model, angle_rad, reading, zero);
  const std::optional<Square> inverse = inverse_of(triangle.topLeftCorner(p, p));
  if (!inverse) return tl::unexpected(Fault::AnglesDoNotDetermine);
  Fit out{.model = model, .readings = reading.size(), .coefficient = {}, .covariance = {}, .residuals = {}};
  for (Eigen::Index i = 0; i < p; ++i) {
    const auto to = static_cast<std::size_t>(i);
    out.coefficient[to] = inverse->row(i).dot(triangle.col(p).head(p));
    for (Eigen::Index j = 0; j < p; ++j)
      out.covariance[to][static_cast<std::size_t>(j)] = inverse->row(i).dot(inverse->row(j));
  }
  out.coefficient[0] += zero;
  take_residuals(out, angle_rad, reading);
  return out;
}

Extremes extremes(const Fit& fit) {
  const double start = fit.value_at(0.0);
  Extremes found{start, 0.0, start, 0.0};
  consider_half(found, fit, 0.0, 1.0);
  consider_half(found, fit, std::numbers::pi, -1.0);
  return found;
}

}  // namespace camside::turn_fit
