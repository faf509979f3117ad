// Rows for the involute, the gear pair and lash against temperature. Each carries where it comes from and how far it
// may be missed: half a unit of the last digit printed, unless said otherwise.
#pragma once

#include <array>

namespace camside::oracle {

struct InvRow {
  double degrees;
  double inv;
  double tolerance;
  const char* source;
};
inline constexpr std::array<InvRow, 8> inv_rows{{
    {14.5, 0.005544843, 5e-10, "nine places, recomputed in arbitrary precision"},
    {20.0, 0.014904384, 5e-10, "handbook table, nine places"},
    {22.5, 0.021514481, 5e-10, "nine places, recomputed in arbitrary precision"},
    {25.0, 0.029975345, 5e-10, "handbook table, nine places"},
    {26.0886, 0.034316283, 5e-10, "nine places, recomputed in arbitrary precision"},
    {21.2990642859, 0.0181260949, 5e-11, "ISO 21771 work sheet"},
    {14.5, 0.0055448, 5e-8, "handbook table, not the 0.005523 of a public web table"},
    {25.0, 0.0299753, 5e-8, "handbook table, not the 0.030521 of a public web table"},
}};
// A public web table prints these; they are wrong and must not be met.
inline constexpr std::array<InvRow, 2> wrong_inv_rows{{
    {14.5, 0.005523, 5e-7, "public web table, wrong"},
    {25.0, 0.030521, 5e-7, "public web table, wrong"},
}};

struct ThicknessRow {
  double module_mm;
  int teeth;
  double degrees;
  double shift;
  double thickness_mm;
  double tolerance;
  const char* source;
};
inline constexpr std::array<ThicknessRow, 2> thickness_rows{{
    {10.0, 12, 20.0, 0.3, 17.8918, 5e-5, "Elements of Metric Gear Technology, table 10-1"},
    {10.0, 12, 20.0, 0.3, 17.89178467, 5e-9, "the same, recomputed"},
}};

struct SpanRow {
  double module_mm;
  int teeth;
  double degrees;
  double shift;
  int span_teeth;
  double span_mm;
  double tolerance;
  const char* source;
};
inline constexpr std::array<SpanRow, 3> span_rows{{
    {3.0, 24, 20.0, 0.4, 4, 32.8266, 5e-5, "Elements of Metric Gear Technology, span measurement example"},
    {3.0, 24, 20.0, 0.4, 4, 32.82662725, 5e-9, "the same, recomputed"},
    {3.0, 24, 20.0, 0.4, 5, 41.683021550944275, 1e-12, "the same over five teeth, recomputed"},
}};

struct PinRow {
  double module_mm;
  int teeth;
  double degrees;
  double pin_mm;
  double over_pins_mm;
  double tolerance;
  const char* source;
};
// All with s = π m / 2 (no profile shift). Inch rows stand in inches: any one unit serves.
inline constexpr std::array<PinRow, 14> pin_rows{{
    {1.0, 32, 20.0, 1.728, 34.4130, 5e-5, "Machinery's Handbook, over wires, 1 diametral pitch (inches)"},
    {0.25, 32, 20.0, 0.432, 8.6032, 5e-5, "Machinery's Handbook, over wires, 4 diametral pitch (inches)"},
    {1.0, 32, 20.0, 1.728, 34.41297790, 5e-9, "the first, recomputed"},
    {1.0, 20, 20.0, 1.7, 22.29409295, 5e-9, "Elements of Metric Gear Technology, pin example, recomputed"},
    {1.0, 19, 20.0, 1.728, 21.319976, 5e-7, "formula and pin centres in the plane, both by script"},
    {1.0, 21, 20.0, 1.728, 23.332122, 5e-7, "formula and pin centres in the plane, both by script"},
    {1.0, 25, 20.0, 1.728, 27.351054, 5e-7, "formula and pin centres in the plane, both by script"},
    {1.0, 31, 20.0, 1.728, 33.370960, 5e-7, "formula and pin centres in the plane, both by script"},
    {1.0, 19, 20.0, 1.7, 21.224762, 5e-7, "formula and pin centres in the plane, both by script"},
    {1.0, 21, 20.0, 1.7, 23.235939, 5e-7, "formula and pin centres in the plane, both by script"},
    {1.0, 25, 20.0, 1.7, 27.253285, 5e-7, "formula and pin centres in the plane, both by script"},
    {1.0, 20, 14.5, 1.728, 22.4087, 5e-5, "recomputed"},
    {1.0, 24, 14.5, 1.728, 26.4247, 5e-5, "recomputed"},
    {1.0, 25, 14.5, 1.728, 27.3774, 5e-5, "recomputed"},
}};
struct PinSlopeRow {
  int teeth;
  double pin_mm;
  double slope;
};
inline constexpr std::array<PinSlopeRow, 2> pin_slope_rows{{{20, 1.728, 2.261491879}, {25, 1.728, 2.324965434}}};

// m 2, z 20/40, 20°, no shift, a_ref 60 mm: lash exactly against the handbook's straight line 2 Δa tan 20°.
struct LashRow {
  double more_centre_mm;
  double operating_degrees;
  double lash_mm;
  double lash_normal_mm;
  double straight_line_mm;
};
inline constexpr std::array<LashRow, 4> lash_rows{{
    {0.02, 20.05238967, 0.0145819635, 0.0136979975, 0.0145588094},
    {0.05, 20.13066392, 0.0365415938, 0.0343092750, 0.0363970234},
    {0.10, 20.26030452, 0.0733713846, 0.0688318290, 0.0727940469},
    {0.20, 20.51659474, 0.1478900204, 0.1385094627, 0.1455880937},
}};

}  // namespace camside::oracle
