#include "units/format.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace camside {
namespace {

const Unit& unit_of(Kind kind, const char* spelling) {
  return *find_unit(kind, spelling);
}
Entered typed(Kind kind, const char* text) {
  return *parse(kind, text);
}

TEST(FormatDecimal, RoundsHalfToEvenOnTheShortestDecimal) {
  EXPECT_EQ(format_decimal(0.00125, 4), "0.0012");  // the double lies above the tie; its shortest decimal is the tie
  EXPECT_EQ(format_decimal(0.00135, 4), "0.0014");
  EXPECT_EQ(format_decimal(2.5, 0), "2");
  EXPECT_EQ(format_decimal(3.5, 0), "4");
  EXPECT_EQ(format_decimal(1.005, 2), "1.00");
  EXPECT_EQ(format_decimal(1.015, 2), "1.02");
  EXPECT_EQ(format_decimal(0.0015, 3), "0.002");
  EXPECT_EQ(format_decimal(9.9995, 3), "10.000");
  EXPECT_EQ(format_decimal(-2.5, 0), "\u22122");
  EXPECT_EQ(format_decimal(1e21, 1), "1000000000000000000000.0");
}

TEST(FormatDecimal, NeverShowsMinusNothing) {
  EXPECT_EQ(format_decimal(-0.0, 0), "0");
  EXPECT_EQ(format_decimal(-0.0, 3), "0.000");
  EXPECT_EQ(format_decimal(-0.0004, 3), "0.000");
  EXPECT_EQ(format_decimal(-0.0005, 3), "0.000");
  EXPECT_EQ(format_decimal(-0.0006, 3), "\u22120.001");
  EXPECT_EQ(format_decimal(-5e-324, 5), "0.00000");
}

TEST(FormatDecimal, SaysSoWhenThereIsNoNumber) {
  EXPECT_EQ(format_decimal(std::nan(""), 3), "no finite number");
  EXPECT_EQ(format_decimal(-std::numeric_limits<double>::infinity(), 3), "no finite number");
  EXPECT_EQ(format(std::nan(""), unit_of(Kind::Length, "mm")), "no finite number");
  EXPECT_EQ(format_full(0.0, unit_of(Kind::ThreadPitch, "tpi")), "no finite number");
}

TEST(FormatFull, ShowsTheDigitsThatReadBack) {
  EXPECT_EQ(format_full(0.07874, unit_of(Kind::Length, "in")), "0.0031 in");
  EXPECT_EQ(format_full(0.0762, unit_of(Kind::Length, "thou")), "3 thou");
  EXPECT_EQ(format_full(0.1, unit_of(Kind::Length, "mm")), "0.1 mm");
  EXPECT_EQ(format_full(0.1 + 0.2, unit_of(Kind::Length, "mm")), "0.30000000000000004 mm");
  EXPECT_EQ(format_full(66465.9072, unit_of(Kind::Distance, "mi")), "41,300 mi");
  EXPECT_EQ(format_full(0.7853981633974483, unit_of(Kind::Angle, "°")), "45 °");
  EXPECT_EQ(format_full(32.22222222222222, unit_of(Kind::Temperature, "°F")), "90 °F");
  EXPECT_EQ(format_full(1e-300, unit_of(Kind::Length, "mm")), "1e-300 mm");
  EXPECT_EQ(format_full(-1.5e25, unit_of(Kind::Length, "mm")), "\u22121.5e25 mm");
  EXPECT_EQ(format_full(0.3, unit_of(Kind::Number, "")), "0.3");
}

// Found by the property test: 17 digits of the shortest decimal fell one bit short here.
TEST(FormatFull, ReadsBackWhereSeventeenDigitsAreNeeded) {
  for (const Kind kind : {Kind::Length, Kind::Force, Kind::Torque, Kind::Pressure, Kind::Expansion, Kind::Angle})
    for (const Unit& unit : units_of(kind))
      for (const double base :
           {std::ldexp(30698369.0, -773), std::ldexp(12083391921.0, -521), std::ldexp(595111.0, -849),
            std::ldexp(343530540667849313.0, 371), std::ldexp(22726617935941327.0, 94)})
        EXPECT_EQ(parse(kind, format_full(base, unit))->base, base) << format_full(base, unit);
}

TEST(Format, UsesTheUnitsOwnResolutionOrTheOneGiven) {
  EXPECT_EQ(format(0.07874, unit_of(Kind::Length, "in")), "0.0031 in");
  EXPECT_EQ(format(0.07874, unit_of(Kind::Length, "µm")), "78.7 µm");
  EXPECT_EQ(format(0.07874, unit_of(Kind::Length, "mm"), 2), "0.08 mm");
  EXPECT_EQ(format(-0.061086523819801536, unit_of(Kind::Angle, "°")), "\u22123.5 °");
}

// 0.0635 mm is 0.0025 in to the last digit, a tie at three places, though neither double is exact.
TEST(Format, KeepsTiesOfTheUnitShown) {
  EXPECT_EQ(format(0.0635, unit_of(Kind::Length, "in"), 3), "0.002 in");
  EXPECT_EQ(format(0.0889, unit_of(Kind::Length, "in"), 3), "0.004 in");
}

TEST(Format, PicksTheUnitOfTheSystem) {
  EXPECT_EQ(format(Length::thou(3.1), System::Inch), "0.0031 in");
  EXPECT_EQ(format(Length::thou(3.1), System::Metric), "0.079 mm");
  EXPECT_EQ(format(Angle::deg(90.0)), "90.0 °");
  EXPECT_EQ(format(Distance::miles(41300.0), System::Inch), "41,300 mi");
  EXPECT_EQ(format(Distance::km(1234567.0), System::Metric), "1,234,567 km");
  EXPECT_EQ(format(Distance::km(-1000.0), System::Metric), "\u22121,000 km");
  EXPECT_EQ(format(Distance::km(999.0), System::Metric), "999 km");
  EXPECT_EQ(format(Temperature::celsius(20.0), System::Inch), "68.0 °F");
  EXPECT_EQ(format(Temperature::celsius(-0.04), System::Metric), "0.0 °C");
  EXPECT_EQ(format(Kind::ThreadPitch, 25.4 / 32.0, System::Inch), "32.00 tpi");
}

TEST(Convert, IsExactOnTheDigitsTyped) {
  const Unit& mm = unit_of(Kind::Length, "mm");
  const Unit& in = unit_of(Kind::Length, "in");
  EXPECT_EQ(convert(typed(Kind::Length, "0.0031 in"), mm, 5), "0.07874 mm");
  EXPECT_EQ(convert(typed(Kind::Length, "0.0025 in"), in, 3), "0.002 in");
  EXPECT_EQ(convert(typed(Kind::Length, "0.00250000000000000000001 in"), in, 3), "0.003 in");
  EXPECT_EQ(convert(typed(Kind::Length, "1/16 in"), mm, 4), "1.5875 mm");
  EXPECT_EQ(convert(typed(Kind::Length, "1/3 in"), in, 10), "0.3333333333 in");
  EXPECT_EQ(convert(typed(Kind::Length, "0.127 mm"), in, 3), "0.005 in");
  EXPECT_EQ(convert(typed(Kind::Length, "1 in"), unit_of(Kind::Length, "µm"), 0), "25400 µm");
  EXPECT_EQ(convert(typed(Kind::ThreadPitch, "32 tpi"), unit_of(Kind::ThreadPitch, "mm"), 5), "0.79375 mm");
  EXPECT_EQ(convert(typed(Kind::ThreadPitch, "1.27 mm"), unit_of(Kind::ThreadPitch, "tpi"), 1), "20.0 tpi");
  EXPECT_EQ(convert(typed(Kind::ThreadPitch, "0 mm"), unit_of(Kind::ThreadPitch, "tpi"), 1), "no finite number");
  EXPECT_EQ(convert(typed(Kind::Temperature, "90 °F"), unit_of(Kind::Temperature, "°C"), 3), "32.222 °C");
  EXPECT_EQ(convert(typed(Kind::Temperature, "300 K"), unit_of(Kind::Temperature, "°F"), 2), "80.33 °F");
  EXPECT_EQ(convert(typed(Kind::Torque, "1 lbf·ft"), unit_of(Kind::Torque, "N·m"), 16), "1.3558179483314004 N·m");
}

TEST(Convert, LetsPiCancelBetweenTurnsAndDegrees) {
  const Unit& degrees = unit_of(Kind::Angle, "°");
  EXPECT_EQ(convert(typed(Kind::Angle, "2 turns 3 flats"), degrees, 12), "900.000000000000 °");
  EXPECT_EQ(convert(typed(Kind::Angle, "0.25 °"), degrees, 1), "0.2 °");
  EXPECT_EQ(convert(typed(Kind::Angle, "45 °"), unit_of(Kind::Angle, "flat"), 2), "0.75 flat");
  EXPECT_EQ(convert(typed(Kind::Angle, "180 °"), unit_of(Kind::Angle, "rad"), 15), "3.141592653589793 rad");
  ParseOptions square;
  square.flats_per_turn = 4;
  EXPECT_EQ(convert(*parse(Kind::Angle, "1 turn 1 flat", square), degrees, 3), "450.000 °");
  EXPECT_EQ(convert(*parse(Kind::Angle, "180 °", square), unit_of(Kind::Angle, "flat"), 1), "2.0 flat");
}

TEST(Convert, FallsBackToTheDoubleOfAValueThatWasNeverTyped) {
  Entered made;
  made.kind = Kind::Length;
  made.base = 25.4;
  EXPECT_EQ(convert(made, unit_of(Kind::Length, "in"), 2), "1.00 in");
}

TEST(FormatTurnsFlats, CountsInWords) {
  EXPECT_EQ(format_turns_flats(15, 6), "2 turns 3 flats");
  EXPECT_EQ(format_turns_flats(1, 6), "1 flat");
  EXPECT_EQ(format_turns_flats(7, 6), "1 turn 1 flat");
  EXPECT_EQ(format_turns_flats(12, 6), "2 turns");
  EXPECT_EQ(format_turns_flats(-2, 6), "\u22122 flats");
  EXPECT_EQ(format_turns_flats(-9, 6), "\u22121 turn 3 flats");
  EXPECT_EQ(format_turns_flats(0, 6), "0 flats");
  EXPECT_EQ(format_turns_flats(5, 4), "1 turn 1 flat");
}

TEST(FormatDate, IsTheStandardsOrder) {
  using namespace std::chrono;
  EXPECT_EQ(format_date(Date{year{2003}, May, day{4}}), "2003-05-04");
}

}  // namespace
}  // namespace camside
