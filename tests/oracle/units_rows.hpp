// Published exact conversions. Each row says where it is from; the tolerance is none: the value is the nearest double
// of an exact product.
#pragma once

#include "units/unit.hpp"

namespace camside::oracle {

struct ConversionRow {
  Kind kind;
  const char* text;
  double base;  // mm, km, N, N·m, Pa, rad, K, °C
  const char* source;
};

inline constexpr const char* sp811 = "NIST SP 811 (2008), appendix B, exact factors";
inline constexpr const char* product = "exact product of NIST SP 811 (2008), appendix B, factors";
inline constexpr const char* scale = "NIST SP 811 (2008), B.8, formulas for temperature";

inline constexpr ConversionRow conversion_rows[]{
    {Kind::Length, "1 in", 25.4, sp811},
    {Kind::Length, "1 ft", 304.8, sp811},
    {Kind::Length, "0.001 in", 0.0254, sp811},
    {Kind::Length, "1 thou", 0.0254, sp811},
    {Kind::Length, "1 µm", 0.001, "SI Brochure, 9th edition, table 7"},
    {Kind::Distance, "1 mi", 1.609344, sp811},
    {Kind::Distance, "2500 mi", 4023.36, product},
    {Kind::Distance, "5000 mi", 8046.72, product},
    {Kind::Distance, "10000 mi", 16093.44, product},
    {Kind::Force, "1 lbf", 4.4482216152605, "0.45359237 kg · 9.80665 m/s², both exact (NIST SP 811, appendix B)"},
    {Kind::Torque, "1 lbf·ft", 1.3558179483314004, product},
    {Kind::Torque, "1 lbf·in", 0.11298482902761670, product},
    {Kind::Pressure, "1 psi", 6894.7572931683613367,
     "4.4482216152605 N / (0.0254 m)², exact (NIST SP 811, appendix B, prints 6.894 757 E+03)"},
    {Kind::Pressure, "1 bar", 100000.0, sp811},
    {Kind::Temperature, "32 °F", 0.0, scale},
    {Kind::Temperature, "212 °F", 100.0, scale},
    {Kind::Temperature, "-40 °F", -40.0, scale},
    {Kind::Temperature, "273.15 K", 0.0, scale},
    {Kind::TemperatureDifference, "90 °F", 50.0, scale},
    {Kind::ThreadPitch, "32 tpi", 0.79375, "25.4 mm / 32"},
    {Kind::ThreadPitch, "20 tpi", 1.27, "25.4 mm / 20"},
    {Kind::Module, "10 DP", 2.54, "25.4 mm / 10"},
};

}  // namespace camside::oracle
