#include "calc/torque/torque.hpp"

#include <gtest/gtest.h>

#include "calc/answers.hpp"
#include "oracle/torque_rows.hpp"

namespace camside::torque {
namespace {

Input wanted(double lbf_ft) {
  Input in;
  in.torque = Torque::lbf_ft(lbf_ft);
  in.source = Source::makers_sheet("an invented sheet");
  return in;
}

Input with_extension(double lbf_ft, double wrench_in, double extension_in, double angle_deg) {
  Input in = wanted(lbf_ft);
  in.extension = Extension{Length::inches(wrench_in), Length::inches(extension_in), Angle::deg(angle_deg)};
  return in;
}

// A quarter-inch bolt, 20 threads an inch.
Input quarter_inch(Torque torque) {
  Input in = wanted(1.0);
  in.torque = torque;
  in.bolt = Bolt{Length::inches(0.25), ThreadPitch::threads_per_inch(20.0), Thread::Inch, Lubricated::Dry, {}, false};
  return in;
}

TEST(Torque, PublishedExtensions) {
  for (const auto& row : oracle::extension_rows) {
    const Result r = solved(with_extension(row.torque, row.wrench, row.extension, 0.0));
    EXPECT_NEAR(r.setting.in_newton_metres() / Torque::lbf_ft(1.0).in_newton_metres(), row.setting, row.tolerance)
        << row.source;
  }
}

TEST(Torque, PublishedStressAreas) {
  for (const auto& row : oracle::inch_area_rows) {
    const double mm2 =
        stress_area_mm2(Length::inches(row.diameter), ThreadPitch::threads_per_inch(row.pitch), Thread::Inch);
    EXPECT_NEAR(mm2 / (25.4 * 25.4), row.area, row.tolerance) << row.thread;
  }
  for (const auto& row : oracle::metric_area_rows)
    EXPECT_NEAR(stress_area_mm2(Length::mm(row.diameter), ThreadPitch::mm(row.pitch), Thread::Metric), row.area,
                row.tolerance)
        << row.thread;
}

TEST(Torque, WithoutAnExtensionTheWrenchIsSetToTheTorque) {
  EXPECT_EQ(solved(wanted(20.0)).setting, Torque::lbf_ft(20.0));
}

TEST(Torque, SquareToTheWrenchNothingChanges) {
  const Result r = solved(with_extension(20.0, 12.0, 3.0, 90.0));
  EXPECT_NEAR(r.setting.in_newton_metres(), Torque::lbf_ft(20.0).in_newton_metres(), 1e-12);
  EXPECT_TRUE(says(r, 2060));
  EXPECT_FALSE(says(r, 2062));
}

TEST(Torque, FoldedBackTheWrenchIsSetHigherAndThatIsSaid) {
  const Result r = solved(with_extension(20.0, 12.0, 3.0, 180.0));
  EXPECT_NEAR(r.lever, 12.0 / 9.0, 1e-12);
  EXPECT_TRUE(says(r, 2041));
  EXPECT_FALSE(says(solved(with_extension(20.0, 12.0, 3.0, 0.0)), 2041));
  EXPECT_TRUE(says(solved(with_extension(20.0, 12.0, 3.0, 0.0)), 2062)) << "the hand on the grip mark";
}

TEST(Torque, FoldedBackOverTheWholeWrenchIsRefused) {
  EXPECT_TRUE(refused(with_extension(20.0, 4.0, 3.8, 180.0), 2001, "extension.angle"));
  EXPECT_TRUE(refused(with_extension(20.0, 4.0, 9.0, 180.0), 2001, "extension.angle"));
}

TEST(Torque, AWrenchIsTrustedFromAFifthOfItsScaleToItsEnd) {
  Input in = wanted(10.0);
  in.scale_end = Torque::lbf_ft(51.0);
  EXPECT_TRUE(says(solved(in), 2040));
  in.scale_end = Torque::lbf_ft(49.0);
  EXPECT_FALSE(says(solved(in), 2040));
  in.scale_end = Torque::lbf_ft(9.0);
  EXPECT_TRUE(refused(in, 2003, "scale_end"));
}

TEST(Torque, PreloadByTheNutFactor) {
  Input in = quarter_inch(Torque::lbf_in(96.0));
  Result r = solved(in);
  ASSERT_TRUE(r.preload);
  EXPECT_NEAR(r.preload->force.in_lbf(), 96.0 / (0.20 * 0.25), 1e-9);
  EXPECT_NEAR(r.preload->low.in_lbf(), 0.75 * r.preload->force.in_lbf(), 1e-9);
  EXPECT_NEAR(r.preload->high.in_lbf(), 1.25 * r.preload->force.in_lbf(), 1e-9);
  EXPECT_TRUE(says(r, 2061));
  in.bolt->lubricated = Lubricated::Oiled;
  EXPECT_NEAR(solved(in).preload->force.in_lbf(), 96.0 / (0.15 * 0.25), 1e-9);
  in.bolt->nut_factor = 0.12;
  r = solved(in);
  EXPECT_NEAR(r.preload->force.in_lbf(), 96.0 / (0.12 * 0.25), 1e-9);
  EXPECT_FALSE(says(r, 2061));
}

// Small covers take 7 to 11 lbf·ft, 84 to 132 lbf·in: the commonest mistake is to read one for the other.
TEST(Torque, ATorqueInTheWrongUnitIsAskedAbout) {
  EXPECT_FALSE(says(solved(quarter_inch(Torque::lbf_in(96.0))), 2020));
  EXPECT_FALSE(says(solved(quarter_inch(Torque::lbf_in(96.0))), 2021));
  EXPECT_TRUE(says(solved(quarter_inch(Torque::lbf_ft(96.0))), 2020));
  EXPECT_TRUE(says(solved(quarter_inch(Torque::lbf_in(8.0))), 2021));
}

TEST(Torque, APitchThatLeavesNoBoltIsRefused) {
  Input in = quarter_inch(Torque::lbf_in(96.0));
  in.bolt->pitch = ThreadPitch::mm(5.5);
  EXPECT_TRUE(refused(in, 2002, "bolt.pitch"));
}

TEST(Torque, BlindHolesAndATorqueWithoutASourceAreSaid) {
  Input in = quarter_inch(Torque::lbf_in(96.0));
  EXPECT_FALSE(says(solved(in), 1917));
  EXPECT_FALSE(says(solved(in), 2042));
  in.bolt->blind_hole = true;
  in.source.reset();
  EXPECT_TRUE(says(solved(in), 1917));
  EXPECT_TRUE(says(solved(in), 2042));
}

TEST(Torque, FieldsOutOfRangeAreRefused) {
  EXPECT_TRUE(refused(with_extension(20.0, 1.0, 1.0, 0.0), 200, "extension.wrench"));
  EXPECT_TRUE(refused(Input{}, 201, "torque"));
}

}  // namespace
}  // namespace camside::torque
