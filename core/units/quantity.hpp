// Strong quantities: what a number means is part of its type, so inches and degrees cannot be mixed by accident.
//
// Each type holds one double in its base unit (named at the class). Raw numbers enter by a named unit,
// Length::thou(3.1), and leave by one, length.in_mm(). Quantities of one type add, subtract, compare and scale; the
// ratio of two is a plain number. Anything else (length + angle, length = 0.003) does not compile;
// tests/units/must_not_compile proves it.
//
// Exact by definition (NIST SP 811, appendix B): 1 in = 25.4 mm, 1 mi = 1.609344 km, 1 lbf = 4.4482216152605 N,
// 1 lbf·ft = 1.3558179483314004 N·m, 1 psi = 6894.757293168361 Pa, 1 in³ = 16.387064 cm³.
#pragma once

#include <chrono>
#include <cmath>
#include <compare>
#include <numbers>

namespace camside {

template <class Self>
class Quantity {
 public:
  constexpr Quantity() = default;
  friend constexpr auto operator<=>(const Quantity&, const Quantity&) = default;

  friend constexpr Self operator+(Self a, Self b) { return Self::from_base(a.base() + b.base()); }
  friend constexpr Self operator-(Self a, Self b) { return Self::from_base(a.base() - b.base()); }
  friend constexpr Self operator-(Self a) { return Self::from_base(-a.base()); }
  friend constexpr Self operator*(Self a, double k) { return Self::from_base(a.base() * k); }
  friend constexpr Self operator*(double k, Self a) { return Self::from_base(k * a.base()); }
  friend constexpr Self operator/(Self a, double k) { return Self::from_base(a.base() / k); }
  friend constexpr double operator/(Self a, Self b) { return a.base() / b.base(); }

  // For code that treats all quantities alike (entry, storage, display); calculators use the named units instead.
  static constexpr Self from_base(double v) {
    Self q;
    q.value_ = v;
    return q;
  }
  constexpr double base() const { return value_; }
  bool finite() const { return std::isfinite(value_); }

 protected:
  double value_ = 0.0;
};

// A length at the bench. Base unit mm.
class Length : public Quantity<Length> {
 public:
  static constexpr Length mm(double v) { return from_base(v); }
  static constexpr Length um(double v) { return from_base(v / 1000.0); }
  static constexpr Length inches(double v) { return from_base(v * 25.4); }
  static constexpr Length thou(double v) { return from_base(v * 25.4 / 1000.0); }
  constexpr double in_mm() const { return value_; }
  constexpr double in_um() const { return value_ * 1000.0; }
  constexpr double in_inches() const { return value_ / 25.4; }
  constexpr double in_thou() const { return value_ / 25.4 * 1000.0; }
};

// v·π/divisor rounded once, so that 60 ° in the code is the same double as 60 ° typed. By Dekker's exact product
// (Numer. Math. 18, 1971), since long double is another type on every platform.
constexpr double times_pi_over(double v, double divisor) {
  constexpr double pi = std::numbers::pi;
  constexpr double pi_rest = 1.2246467991473532e-16;  // what the double of π leaves out
  const bool splittable = v > -1e280 && v < 1e280;
  if (!splittable) return v * pi / divisor;
  const auto high = [](double a) { return 134217729.0 * a - (134217729.0 * a - a); };  // its upper 26 bits: 2²⁷ + 1
  const auto rest_of_product = [&](double a, double b, double product) {
    const double a1 = high(a);
    const double b1 = high(b);
    return ((a1 * b1 - product) + a1 * (b - b1) + (a - a1) * b1) + (a - a1) * (b - b1);
  };
  const double product = v * pi;
  const double quotient = product / divisor;
  const double back = quotient * divisor;
  const double rest =
      (product - back) - rest_of_product(quotient, divisor, back) + rest_of_product(v, pi, product) + v * pi_rest;
  return quotient + rest / divisor;
}

// A plane angle, or how far something was turned. Base unit rad.
class Angle : public Quantity<Angle> {
 public:
  static constexpr Angle rad(double v) { return from_base(v); }
  static constexpr Angle deg(double v) { return from_base(times_pi_over(v, 180.0)); }
  static constexpr Angle turns(double v) { return from_base(times_pi_over(v, 0.5)); }
  constexpr double in_rad() const { return value_; }
  constexpr double in_deg() const { return value_ * (180.0 / std::numbers::pi); }
  constexpr double in_turns() const { return value_ / (2.0 * std::numbers::pi); }
};

// A distance on the road or the clock. Base unit km.
class Distance : public Quantity<Distance> {
 public:
  static constexpr Distance km(double v) { return from_base(v); }
  static constexpr Distance miles(double v) { return from_base(v * 1.609344); }
  constexpr double in_km() const { return value_; }
  constexpr double in_miles() const { return value_ / 1.609344; }
};

// A difference of two temperatures. Base unit K. Not the same thing as a temperature: a difference of 90 °F is 50 K.
class TemperatureDifference : public Quantity<TemperatureDifference> {
 public:
  static constexpr TemperatureDifference kelvin(double v) { return from_base(v); }
  static constexpr TemperatureDifference fahrenheit(double v) { return from_base(v * 5.0 / 9.0); }
  constexpr double in_kelvin() const { return value_; }
  constexpr double in_fahrenheit() const { return value_ * 9.0 / 5.0; }
};

// A temperature on a thermometer. Base unit °C. Two of them differ by a TemperatureDifference; they do not add.
class Temperature {
 public:
  constexpr Temperature() = default;
  static constexpr Temperature celsius(double v) { return from_base(v); }
  static constexpr Temperature fahrenheit(double v) { return from_base((v - 32.0) * 5.0 / 9.0); }
  static constexpr Temperature from_base(double v) {
    Temperature t;
    t.value_ = v;
    return t;
  }
  constexpr double base() const { return value_; }
  constexpr double in_celsius() const { return value_; }
  constexpr double in_fahrenheit() const { return value_ * 9.0 / 5.0 + 32.0; }
  bool finite() const { return std::isfinite(value_); }

  friend constexpr auto operator<=>(const Temperature&, const Temperature&) = default;
  friend constexpr TemperatureDifference operator-(Temperature a, Temperature b) {
    return TemperatureDifference::kelvin(a.value_ - b.value_);
  }
  friend constexpr Temperature operator+(Temperature a, TemperatureDifference d) {
    return from_base(a.value_ + d.in_kelvin());
  }

 private:
  double value_ = 0.0;
};

// Coefficient of linear thermal expansion. Base unit 1/K.
class Expansion : public Quantity<Expansion> {
 public:
  static constexpr Expansion per_kelvin(double v) { return from_base(v); }
  static constexpr Expansion ppm_per_kelvin(double v) { return from_base(v / 1.0e6); }
  constexpr double in_per_kelvin() const { return value_; }
  constexpr double in_ppm_per_kelvin() const { return value_ * 1.0e6; }
};

// Base unit N.
class Force : public Quantity<Force> {
 public:
  static constexpr Force newtons(double v) { return from_base(v); }
  static constexpr Force lbf(double v) { return from_base(v * 4.4482216152605); }
  constexpr double in_newtons() const { return value_; }
  constexpr double in_lbf() const { return value_ / 4.4482216152605; }
};

// Base unit N·m.
class Torque : public Quantity<Torque> {
 public:
  static constexpr Torque newton_metres(double v) { return from_base(v); }
  static constexpr Torque lbf_ft(double v) { return from_base(v * 1.3558179483314004); }
  static constexpr Torque lbf_in(double v) { return from_base(v * (1.3558179483314004 / 12.0)); }
  constexpr double in_newton_metres() const { return value_; }
  constexpr double in_lbf_ft() const { return value_ / 1.3558179483314004; }
  constexpr double in_lbf_in() const { return value_ / (1.3558179483314004 / 12.0); }
};

// Base unit Pa.
class Pressure : public Quantity<Pressure> {
 public:
  static constexpr Pressure pascals(double v) { return from_base(v); }
  static constexpr Pressure psi(double v) { return from_base(v * 6894.757293168361); }
  static constexpr Pressure bar(double v) { return from_base(v * 1.0e5); }
  constexpr double in_pascals() const { return value_; }
  constexpr double in_psi() const { return value_ / 6894.757293168361; }
  constexpr double in_bar() const { return value_ / 1.0e5; }
};

// How far a thread moves in one turn. Base unit mm per turn; "32 tpi" is 25.4/32 mm.
class ThreadPitch : public Quantity<ThreadPitch> {
 public:
  static constexpr ThreadPitch mm(double v) { return from_base(v); }
  static constexpr ThreadPitch threads_per_inch(double v) { return from_base(25.4 / v); }
  constexpr double in_mm() const { return value_; }
  constexpr double in_threads_per_inch() const { return 25.4 / value_; }
  constexpr Length per_turn() const { return Length::mm(value_); }
};

// Size of a gear's teeth: normal module. Base unit mm; diametral pitch P (per inch) is 25.4/P mm.
class Module : public Quantity<Module> {
 public:
  static constexpr Module mm(double v) { return from_base(v); }
  static constexpr Module diametral_pitch(double v) { return from_base(25.4 / v); }
  constexpr double in_mm() const { return value_; }
  constexpr double in_diametral_pitch() const { return 25.4 / value_; }
};

// A stretch of time on a watch. Base unit min. (Calendar months are whole numbers, not durations.)
class Duration : public Quantity<Duration> {
 public:
  static constexpr Duration minutes(double v) { return from_base(v); }
  static constexpr Duration seconds(double v) { return from_base(v / 60.0); }
  constexpr double in_minutes() const { return value_; }
  constexpr double in_seconds() const { return value_ * 60.0; }
};

// An amount in the owner's own currency. Base unit: one unit of it.
class Money : public Quantity<Money> {
 public:
  static constexpr Money amount(double v) { return from_base(v); }
  constexpr double in_amount() const { return value_; }
};

using Date = std::chrono::year_month_day;

template <class Self>
constexpr Self abs(Quantity<Self> q) {
  return Self::from_base(q.base() < 0.0 ? -q.base() : q.base());
}

}  // namespace camside
