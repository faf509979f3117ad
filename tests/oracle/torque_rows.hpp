// Rows for the torque-wrench extension and for the stress area of threads.
#pragma once

#include <array>

namespace camside::oracle {

// The torque-wrench extension, straight out: wrench and extension in inches, torque wanted and setting in lbf·ft.
struct ExtensionRow {
  const char* source;
  double wrench;
  double extension;
  double torque;
  double setting;
  double tolerance;
};
inline constexpr std::array<ExtensionRow, 2> extension_rows{{
    {"a torque-wrench maker's note on adaptors: 12 in, 6 in, 30 lbf·ft", 12.0, 6.0, 30.0, 20.0, 1e-12},
    {"a worked form I = A/(1 + E), E 0.75 ft on a lever of 1 ft; printed 57.14", 12.0, 9.0, 100.0, 57.14, 0.005},
}};

// Stress areas as printed.
struct AreaRow {
  const char* thread;
  double diameter;   // in or mm
  double pitch;      // threads per inch, or mm
  double area;       // in² or mm²
  double tolerance;  // half of the last digit printed
};
// A public table of unified fine threads (5/16-24 printed 0.0581 by another one).
inline constexpr std::array<AreaRow, 6> inch_area_rows{{
    {"#10-32", 0.190, 32.0, 0.0200, 0.00005},
    {"1/4-28", 0.250, 28.0, 0.0364, 0.00005},
    {"5/16-24", 0.3125, 24.0, 0.0581, 0.00005},
    {"3/8-24", 0.375, 24.0, 0.0878, 0.00005},
    {"7/16-20", 0.4375, 20.0, 0.1187, 0.00005},
    {"1/2-20", 0.5, 20.0, 0.1600, 0.00005},
}};
// ISO 898-1 and ASME B1.13M as printed in two public tables.
inline constexpr std::array<AreaRow, 6> metric_area_rows{{
    {"M6", 6.0, 1.0, 20.12, 0.005},
    {"M8", 8.0, 1.25, 36.61, 0.005},
    {"M8x1", 8.0, 1.0, 39.17, 0.005},
    {"M10", 10.0, 1.5, 57.99, 0.005},
    {"M10x1.25", 10.0, 1.25, 61.20, 0.005},
    {"M12x1.25", 12.0, 1.25, 92.07, 0.005},
}};

}  // namespace camside::oracle
