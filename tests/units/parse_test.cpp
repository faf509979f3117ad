#include "units/parse.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "oracle/units_rows.hpp"
#include "units/format.hpp"

namespace camside {
namespace {

struct Accepted {
  Kind kind;
  const char* text;
  double base;       // a literal, so the compiler's correctly rounded reading is the oracle
  const char* unit;  // symbol
};

// Angles: the nearest double of the exact multiple of π, worked out with Python's fractions and π to 99 digits.
constexpr Accepted accepted[]{
    {Kind::Length, ".003 in", 0.0762, "in"},
    {Kind::Length, "0,076 mm", 0.076, "mm"},
    {Kind::Length, "3 thou", 0.0762, "thou"},
    {Kind::Length, "3 th", 0.0762, "thou"},
    {Kind::Length, "3mil", 0.0762, "thou"},
    {Kind::Length, "1/16 in", 1.5875, "in"},
    {Kind::Length, "1-3/8\"", 34.925, "in"},
    {Kind::Length, "1 3/8 in", 34.925, "in"},
    {Kind::Length, "1 - 3/8 in", 34.925, "in"},
    {Kind::Length, "-1-3/8 in", -34.925, "in"},
    {Kind::Length, "1\u20113/8\u2033", 34.925, "in"},
    {Kind::Length, "1\u00bd in", 38.1, "in"},
    {Kind::Length, "\u215c inch", 9.525, "in"},
    {Kind::Length, "3\u204416\u201d", 4.7625, "in"},
    {Kind::Length, "\u22120.0031 in", -0.07874, "in"},
    {Kind::Length, "-0.0031 in", -0.07874, "in"},
    {Kind::Length, "+0.0031 in", 0.07874, "in"},
    {Kind::Length, "\u2212 0.0031 in", -0.07874, "in"},
    {Kind::Length, "  3 mm\t", 3.0, "mm"},
    {Kind::Length, "3\u00a0mm", 3.0, "mm"},
    {Kind::Length, "3\u2009mm", 3.0, "mm"},
    {Kind::Length, "3\u202fmm", 3.0, "mm"},
    {Kind::Length, "3 Mm", 3.0, "mm"},
    {Kind::Length, "3 IN", 76.2, "in"},
    {Kind::Length, "3. mm", 3.0, "mm"},
    {Kind::Length, "3, mm", 3.0, "mm"},
    {Kind::Length, ",076 mm", 0.076, "mm"},
    {Kind::Length, "007 mm", 7.0, "mm"},
    {Kind::Length, "78.7 \u00b5m", 0.0787, "µm"},
    {Kind::Length, "78.7 \u03bcm", 0.0787, "µm"},
    {Kind::Length, "78.7 um", 0.0787, "µm"},
    {Kind::Length, "78.7 microns", 0.0787, "µm"},
    {Kind::Length, "1.2 cm", 12.0, "cm"},
    {Kind::Length, "1.2 m", 1200.0, "m"},
    {Kind::Length, "1.5 ft", 457.2, "ft"},
    {Kind::Length, "1e-3 mm", 0.001, "mm"},
    {Kind::Length, "1E3 mm", 1000.0, "mm"},
    {Kind::Length, "1.5e\u22122 mm", 0.015, "mm"},
    {Kind::Length, "1e+2mm", 100.0, "mm"},
    {Kind::Length, "1,234,567 mm", 1234567.0, "mm"},
    {Kind::Length, "1.234.567 mm", 1234567.0, "mm"},
    {Kind::Length, "1 234 567 mm", 1234567.0, "mm"},
    {Kind::Length, "1\u202f234,5 mm", 1234.5, "mm"},
    {Kind::Length, "1,234.5 mm", 1234.5, "mm"},
    {Kind::Length, "1.234,5 mm", 1234.5, "mm"},
    {Kind::Length, "1,234,567.25 mm", 1234567.25, "mm"},
    {Kind::Length, "1.234 mm", 1.234, "mm"},
    {Kind::Length, "0,123 mm", 0.123, "mm"},
    {Kind::Length, "1,23 mm", 1.23, "mm"},
    {Kind::Length, "1,2345 mm", 1.2345, "mm"},
    {Kind::Length, "1234,567 mm", 1234.567, "mm"},
    {Kind::Length, "-0 mm", 0.0, "mm"},
    {Kind::Length, "0.1 in", 2.54, "in"},
    {Kind::Length, "1e-300 mm", 1e-300, "mm"},
    {Kind::Length, "0e999 mm", 0.0, "mm"},
    {Kind::Length, "0.1234567890123456789012345678901234567890 mm", 0.1234567890123456789012345678901234567890, "mm"},
    {Kind::Angle, "90\u00b0", 1.5707963267948966, "°"},
    {Kind::Angle, "3.5 deg", 0.061086523819801536, "°"},
    {Kind::Angle, "20 degrees", 0.3490658503988659, "°"},
    {Kind::Angle, "1.5 rad", 1.5, "rad"},
    {Kind::Angle, "100 mrad", 0.1, "mrad"},
    {Kind::Angle, "2 turns 3 flats", 15.707963267948966, "turn"},
    {Kind::Angle, "2 t 3 f", 15.707963267948966, "turn"},
    {Kind::Angle, "2t3f", 15.707963267948966, "turn"},
    {Kind::Angle, "2.5 turns", 15.707963267948966, "turn"},
    {Kind::Angle, "2\u00bd turns", 15.707963267948966, "turn"},
    {Kind::Angle, "-2 turns 3 flats", -15.707963267948966, "turn"},
    {Kind::Angle, "3 flats", 3.141592653589793, "flat"},
    {Kind::Angle, "1/3 turn", 2.0943951023931957, "turn"},
    {Kind::Angle, "2 turns 30\u00b0", 13.089969389957473, "turn"},
    {Kind::Angle, "3\u00b0 30\u2032 15\u2033", 0.061159245871967964, "°"},
    {Kind::Distance, "41,300 mi", 66465.9072, "mi"},
    {Kind::Distance, "41 300 mi", 66465.9072, "mi"},
    {Kind::Distance, "41\u202f300 km", 41300.0, "km"},
    {Kind::Distance, "41,3 km", 41.3, "km"},
    {Kind::Distance, "0,123 km", 0.123, "km"},
    {Kind::Distance, "41,300.5 km", 41300.5, "km"},
    {Kind::Distance, "500 m", 0.5, "m"},
    {Kind::Temperature, "90 \u00b0F", 32.22222222222222, "°F"},
    {Kind::Temperature, "0 F", -17.77777777777778, "°F"},
    {Kind::Temperature, "20 C", 20.0, "°C"},
    {Kind::Temperature, "20\u00baC", 20.0, "°C"},
    {Kind::Temperature, "-5 degC", -5.0, "°C"},
    {Kind::Temperature, "300 K", 26.85, "K"},
    {Kind::TemperatureDifference, "90 F\u00b0", 50.0, "°F"},
    {Kind::TemperatureDifference, "30 \u00b0C", 30.0, "K"},
    {Kind::TemperatureDifference, "30 C\u00b0", 30.0, "K"},
    {Kind::Expansion, "23.1e-6 1/K", 23.1e-6, "1/K"},
    {Kind::Expansion, "23.1e-6/K", 23.1e-6, "1/K"},
    {Kind::Expansion, "12 1/K", 12.0, "1/K"},
    {Kind::Expansion, "23.1 ppm/K", 23.1e-6, "ppm/K"},
    {Kind::Expansion, "23,1 \u00b5m/m/K", 23.1e-6, "ppm/K"},
    {Kind::Expansion, "23.1 \u00d710\u207b\u2076/K", 23.1e-6, "ppm/K"},
    {Kind::Expansion, "10 ppm/\u00b0F", 18e-6, "ppm/°F"},
    {Kind::Force, "2 kN", 2000.0, "kN"},
    {Kind::Force, "10 lbf", 44.482216152605, "lbf"},
    {Kind::Torque, "41 N\u00b7m", 41.0, "N·m"},
    {Kind::Torque, "41 Nm", 41.0, "N·m"},
    {Kind::Torque, "41 N m", 41.0, "N·m"},
    {Kind::Torque, "30 lbf\u00b7ft", 40.674538449942012, "lbf·ft"},
    {Kind::Torque, "30 lb-ft", 40.674538449942012, "lbf·ft"},
    {Kind::Torque, "30 ft-lb", 40.674538449942012, "lbf·ft"},
    {Kind::Torque, "30 ft lbs", 40.674538449942012, "lbf·ft"},
    {Kind::Torque, "10 lbf in", 1.129848290276167, "lbf·in"},
    {Kind::Torque, "10 in-lb", 1.129848290276167, "lbf·in"},
    {Kind::Pressure, "250 kPa", 250000.0, "kPa"},
    {Kind::Pressure, "2.5 bar", 250000.0, "bar"},
    {Kind::Pressure, "1 psi", 6894.7572931683613, "psi"},
    {Kind::ThreadPitch, "1.25 mm", 1.25, "mm"},
    {Kind::ThreadPitch, "24 tpi", 1.0583333333333333, "tpi"},
    {Kind::ThreadPitch, "24 /in", 1.0583333333333333, "tpi"},
    {Kind::ThreadPitch, "24 threads per inch", 1.0583333333333333, "tpi"},
    {Kind::ThreadPitch, "0.05 in", 1.27, "in"},
    {Kind::Module, "16 DP", 1.5875, "DP"},
    {Kind::Module, "16/in", 1.5875, "DP"},
    {Kind::Module, "1.5875 mm", 1.5875, "mm"},
    {Kind::Duration, "20 min", 20.0, "min"},
    {Kind::Duration, "90 s", 1.5, "s"},
    {Kind::Duration, "1 h 30 min", 90.0, "h"},
    {Kind::Number, "0.3", 0.3, ""},
    {Kind::Number, "-1/4", -0.25, ""},
    {Kind::Money, "1250.50", 1250.5, ""},
    {Kind::Money, "1,200", 1200.0, ""},
    {Kind::Money, "12,50", 12.5, ""},
};

TEST(AcceptedText, HasTheNearestDouble) {
  for (const auto& [kind, text, base, unit] : accepted) {
    SCOPED_TRACE(text);
    const auto entered = parse(kind, text);
    ASSERT_TRUE(entered) << entered.error().reason;
    EXPECT_EQ(entered->base, base);
    EXPECT_FALSE(std::signbit(entered->base) && entered->base == 0.0);
    EXPECT_EQ(entered->unit->symbol, unit);
    EXPECT_EQ(entered->kind, kind);
  }
}

TEST(AcceptedText, GivesTheSameTextAndDoubleWhenReadAgain) {
  for (const Accepted& row : accepted) {
    SCOPED_TRACE(row.text);
    const auto first = parse(row.kind, row.text);
    ASSERT_TRUE(first);
    const auto again = parse(first->kind, first->text);
    ASSERT_TRUE(again);
    EXPECT_EQ(again->text, first->text);
    EXPECT_EQ(again->base, first->base);
    EXPECT_EQ(again->unit, first->unit);
  }
}

TEST(AcceptedText, ReadsBackFromAllItsDigits) {
  for (const Accepted& row : accepted) {
    SCOPED_TRACE(row.text);
    const auto first = parse(row.kind, row.text);
    ASSERT_TRUE(first);
    const auto again = parse(first->kind, format_full(first->base, *first->unit));
    ASSERT_TRUE(again) << format_full(first->base, *first->unit);
    EXPECT_EQ(again->base, first->base);
  }
}

struct Refused {
  Kind kind;
  const char* text;
  ParseFault fault;
  const char* reason;  // part of it
  const char* remedy;  // part of it
};

constexpr Refused refused[]{
    {Kind::Length, "", ParseFault::Empty, "Nothing was entered", "Enter a length"},
    {Kind::Angle, " \t\u00a0", ParseFault::Empty, "Nothing was entered", "Enter an angle"},
    {Kind::Length, "abc", ParseFault::NotANumber, "\"abc\" is not a number", "0.003"},
    {Kind::Length, "mm", ParseFault::NotANumber, "\"mm\" is not a number", ""},
    {Kind::Length, ".", ParseFault::NotANumber, "not a number", ""},
    {Kind::Length, "-", ParseFault::NotANumber, "not a number", ""},
    {Kind::Length, "--3 mm", ParseFault::NotANumber, "not a number", ""},
    {Kind::Length, "+-3 mm", ParseFault::NotANumber, "not a number", ""},
    {Kind::Length, "1.2.3 mm", ParseFault::NotANumber, "\"1.2.3\"", ""},
    {Kind::Length, "1,23,456 mm", ParseFault::NotANumber, "\"1,23,456\"", ""},
    {Kind::Length, "0,123,456 mm", ParseFault::NotANumber, "", ""},
    {Kind::Length, "1,234.567,8 mm", ParseFault::NotANumber, "", ""},
    {Kind::Length, "12,34.5 mm", ParseFault::NotANumber, "", ""},
    {Kind::Length, "1..5 mm", ParseFault::NotANumber, "", ""},
    {Kind::Length, "1-9/8 in", ParseFault::NotANumber, "not less than one", "1-3/8"},
    {Kind::Length, "1/0 in", ParseFault::OutOfRange, "1/0 divides by zero", "1/16"},
    {Kind::Length, "1-0/0 in", ParseFault::OutOfRange, "divides by zero", ""},
    {Kind::Length, "inf mm", ParseFault::OutOfRange, "not a finite number", ""},
    {Kind::Length, "-Infinity", ParseFault::OutOfRange, "not a finite number", ""},
    {Kind::Length, "NaN mm", ParseFault::OutOfRange, "not a finite number", ""},
    {Kind::Length, "\u221e mm", ParseFault::OutOfRange, "not a finite number", ""},
    {Kind::Length, "1e400 mm", ParseFault::OutOfRange, "too large or too small", ""},
    {Kind::Length, "1e-400 mm", ParseFault::OutOfRange, "too large or too small", ""},
    {Kind::Length, "1e99999999999999999999 mm", ParseFault::OutOfRange, "too large or too small", ""},
    {Kind::ThreadPitch, "0 tpi", ParseFault::OutOfRange, "0 tpi has no meaning", "above 0"},
    {Kind::Module, "0 DP", ParseFault::OutOfRange, "0 DP has no meaning", "above 0"},
    {Kind::Length, "3", ParseFault::NeedsUnit, "\"3\" has no unit", "3 mm"},
    {Kind::Length, ".003", ParseFault::NeedsUnit, "no unit", ".003 in or .003 mm"},
    {Kind::Angle, "2 turns 3", ParseFault::NeedsUnit, "\"3\" has no unit", "3 °"},
    {Kind::Angle, "2 2 \x01\x01l", ParseFault::NeedsUnit, "\"2\" has no unit", "such as 2 °"},  // found by fuzzing
    {Kind::Length, "3 °C", ParseFault::WrongKind, "°C is a unit of temperature; a length is wanted", "Use one of: mm"},
    {Kind::Angle, "3 mm", ParseFault::WrongKind, "mm is a unit of length; an angle is wanted", "°"},
    {Kind::Torque, "30 lbf", ParseFault::WrongKind, "lbf is a unit of force", "lbf·ft"},
    {Kind::Number, "0.3 mm", ParseFault::WrongKind, "mm is a unit of length; a number is wanted", "number alone"},
    {Kind::Length, "3 foo", ParseFault::UnknownUnit, "\"foo\" is not a unit of length", "Use one of: mm"},
    {Kind::Length, "0x10 mm", ParseFault::UnknownUnit, "", ""},
    {Kind::Length, "2 5 mm", ParseFault::UnknownUnit, "", ""},
    {Kind::Length, "3.1-0.2 in", ParseFault::UnknownUnit, "", ""},
    {Kind::Length, "3 \xff\xfe", ParseFault::UnknownUnit, "\"??\"", ""},
    {Kind::Length, "\xf0\x8f\x99\x99 mm", ParseFault::NotANumber, "\"???? mm\"", ""},  // no character is written so long
    {Kind::Length, "3 e", ParseFault::UnknownUnit, "", ""},
    {Kind::Length, "1,234 mm", ParseFault::Ambiguous, "1,234 can be read as 1.234 or as 1234", "Write 1.234 or 1234"},
    {Kind::Length, "12,345 mm", ParseFault::Ambiguous, "", ""},
    {Kind::Length, "123,456 mm", ParseFault::Ambiguous, "", ""},
    {Kind::Length, "-1,234 mm", ParseFault::Ambiguous, "", ""},
    {Kind::Length, "3 in 4", ParseFault::TrailingText, "\"4\"", "one value"},
    {Kind::Length, "3 mm 4 mm", ParseFault::TrailingText, "\"4 mm\"", "one value"},
    {Kind::Number, "0.3 x", ParseFault::TrailingText, "\"x\"", "one value"},
    {Kind::Angle, "2.5 turns 3 flats", ParseFault::TrailingText, "\"3 flats\"", ""},
    {Kind::Angle, "3 flats 2 turns", ParseFault::TrailingText, "\"2 turns\"", ""},
    {Kind::Angle, "2 turns 2 turns", ParseFault::TrailingText, "\"2 turns\"", ""},
    {Kind::Angle, "1 turn 3 mrad", ParseFault::TrailingText, "\"3 mrad\"", ""},
    {Kind::Length, "0.12345678901234567890123456789012345678901 mm", ParseFault::TooLong, "more than 40 digits", ""},
    {Kind::Length, "1/12345678901234567890123456789012345678901 in", ParseFault::TooLong, "more than 40 digits", ""},
};

TEST(RefusedText, SaysWhyAndWhatToWrite) {
  for (const auto& [kind, text, fault, reason, remedy] : refused) {
    SCOPED_TRACE(text);
    const auto entered = parse(kind, text);
    ASSERT_FALSE(entered) << "was read as " << entered->base;
    EXPECT_EQ(entered.error().fault, fault) << entered.error().reason;
    EXPECT_NE(entered.error().reason.find(reason), std::string::npos) << entered.error().reason;
    EXPECT_NE(entered.error().remedy.find(remedy), std::string::npos) << entered.error().remedy;
    EXPECT_FALSE(entered.error().reason.empty());
    EXPECT_FALSE(entered.error().remedy.empty());
  }
}

TEST(PublishedConversion, IsMetExactly) {
  for (const oracle::ConversionRow& row : oracle::conversion_rows) {
    SCOPED_TRACE(row.source);
    const auto entered = parse(row.kind, row.text);
    ASSERT_TRUE(entered) << row.text;
    EXPECT_EQ(entered->base, row.base) << row.text;
  }
}

TEST(Parse, TakesTheDefaultUnitAndKeepsItInTheText) {
  ParseOptions options;
  options.default_unit = find_unit(Kind::Length, "in");
  const auto entered = parse(Kind::Length, " .003 ", options);
  ASSERT_TRUE(entered);
  EXPECT_EQ(entered->text, ".003 in");
  EXPECT_EQ(entered->base, 0.0762);
  const auto typed = parse(Kind::Length, ".003 mm", options);
  ASSERT_TRUE(typed);
  EXPECT_EQ(typed->base, 0.003);
  EXPECT_EQ(typed->text, ".003 mm");
}

TEST(Parse, FlatsBelongToThePart) {
  ParseOptions square;
  square.flats_per_turn = 4;
  const auto entered = parse(Kind::Angle, "2 turns 1 flat", square);
  ASSERT_TRUE(entered);
  EXPECT_EQ(entered->base, 14.137166941154069);
  EXPECT_EQ(entered->flats_per_turn, 4);
  ParseOptions none;
  none.flats_per_turn = 0;
  const auto refusal = parse(Kind::Angle, "1 flat", none);
  ASSERT_FALSE(refusal);
  EXPECT_EQ(refusal.error().fault, ParseFault::OutOfRange);
}

TEST(Parse, RefusesAnEndlessText) {
  const auto refusal = parse(Kind::Length, std::string(1'000'000, '1') + " mm");
  ASSERT_FALSE(refusal);
  EXPECT_EQ(refusal.error().fault, ParseFault::TooLong);
}

TEST(Parse, RefusesAByteOfNothing) {
  using std::string_literals::operator""s;
  const auto refusal = parse(Kind::Length, "3\0mm"s);
  ASSERT_FALSE(refusal);
  EXPECT_EQ(refusal.error().reason, "\"?mm\" is not a unit of length");
}

// A tie is decided by the digit in the 40th place, far beyond a double: the exact value is rounded, once.
TEST(Parse, RoundsOnceFromTheExactValue) {
  const auto tie = parse(Kind::Number, "9007199254740993");  // 2^53 + 1: half way, to even
  const auto above = parse(Kind::Number, "9007199254740993.00000000000000000000001");
  ASSERT_TRUE(tie && above);
  EXPECT_EQ(tie->base, 9007199254740992.0);
  EXPECT_EQ(above->base, 9007199254740994.0);
}

TEST(ParseDate, ReadsYearMonthDay) {
  const auto date = parse_date(" 2003-05-14 ");
  ASSERT_TRUE(date);
  EXPECT_EQ(format_date(*date), "2003-05-14");
  EXPECT_TRUE(parse_date("2024-02-29"));
  EXPECT_EQ(format_date(*parse_date("2003-5-4")), "2003-05-04");
}

TEST(ParseDate, RefusesOtherOrdersAndDaysThatAreNot) {
  const auto fault = [](const char* text) {
    const auto date = parse_date(text);
    EXPECT_FALSE(date) << text;
    return date ? ParseFault::Empty : date.error().fault;
  };
  EXPECT_EQ(fault("4/5/2003"), ParseFault::Ambiguous);
  EXPECT_EQ(fault("04.05.2003"), ParseFault::Ambiguous);
  EXPECT_EQ(fault("14-05-2003"), ParseFault::Ambiguous);
  EXPECT_EQ(fault("03-05-14"), ParseFault::Ambiguous);
  EXPECT_EQ(fault("2003/05/14"), ParseFault::NotANumber);
  EXPECT_EQ(fault("2003-05"), ParseFault::NotANumber);
  EXPECT_EQ(fault("2003-05-14 10:00"), ParseFault::NotANumber);
  EXPECT_EQ(fault("2003-005-14"), ParseFault::NotANumber);
  EXPECT_EQ(fault("May 2003"), ParseFault::NotANumber);
  EXPECT_EQ(fault("2003-02-29"), ParseFault::OutOfRange);
  EXPECT_EQ(fault("2003-13-01"), ParseFault::OutOfRange);
  EXPECT_EQ(fault("2003-00-01"), ParseFault::OutOfRange);
  EXPECT_EQ(parse_date("").error().fault, ParseFault::Empty);
}

}  // namespace
}  // namespace camside
