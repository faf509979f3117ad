// The table of units itself: every spelling finds its unit and no other.
#include "units/unit.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <string>

namespace camside {
namespace {

constexpr std::array all_kinds{
    Kind::Number,    Kind::Length, Kind::Angle,  Kind::Distance, Kind::Temperature, Kind::TemperatureDifference,
    Kind::Expansion, Kind::Force,  Kind::Torque, Kind::Pressure, Kind::ThreadPitch, Kind::Module,
    Kind::Duration,  Kind::Money};

TEST(Units, TheFirstOfAKindIsItsBase) {
  for (const Kind kind : all_kinds) {
    ASSERT_FALSE(units_of(kind).empty());
    const Unit& base = units_of(kind).front();
    EXPECT_EQ(base.numerator, 1) << name_of(kind);
    EXPECT_EQ(base.denominator, 1) << name_of(kind);
    EXPECT_EQ(base.zero_hundredths, 0) << name_of(kind);
    EXPECT_FALSE(base.reciprocal || base.times_pi) << name_of(kind);
  }
}

TEST(Units, EverySpellingFindsItsOwnUnit) {
  for (const Kind kind : all_kinds)
    for (const Unit& unit : units_of(kind)) {
      EXPECT_EQ(unit.kind, kind);
      EXPECT_EQ(find_unit(kind, unit.symbol), &unit) << unit.symbol;
      for (const std::string_view alias : unit.aliases) EXPECT_EQ(find_unit(kind, alias), &unit) << alias;
    }
}

TEST(Units, FindsOtherCapitalsAndJoints) {
  EXPECT_EQ(find_unit(Kind::Length, "MM"), find_unit(Kind::Length, "mm"));
  EXPECT_EQ(find_unit(Kind::Torque, "N m"), find_unit(Kind::Torque, "N·m"));
  EXPECT_EQ(find_unit(Kind::Torque, "Ft-Lb"), find_unit(Kind::Torque, "lbf·ft"));
  EXPECT_EQ(find_unit(Kind::Length, "furlong"), nullptr);
  EXPECT_EQ(find_unit(Kind::Length, ""), nullptr);
  EXPECT_EQ(find_unit(Kind::Length, "m m-"), nullptr);
}

TEST(Units, ToBaseAndBackWithinAnUlpOrTwo) {
  for (const Kind kind : all_kinds)
    for (const Unit& unit : units_of(kind))
      for (const double value : {0.0031, 1.0, 17.25, 32.0, 41300.0}) {
        const double back = unit.from_base(unit.to_base(value));
        EXPECT_NEAR(back, value, 4e-16 * std::max(value, 300.0)) << unit.symbol;
      }
}

TEST(Units, PreferredUnitsBelongToTheirKind) {
  for (const Kind kind : all_kinds)
    for (const System system : {System::Inch, System::Metric}) EXPECT_EQ(preferred_unit(kind, system).kind, kind);
  EXPECT_EQ(preferred_unit(Kind::Length, System::Inch).symbol, "in");
  EXPECT_EQ(preferred_unit(Kind::Length, System::Metric).symbol, "mm");
}

TEST(Units, EveryKindHasAName) {
  for (const Kind kind : all_kinds) EXPECT_FALSE(name_of(kind).empty());
}

}  // namespace
}  // namespace camside
