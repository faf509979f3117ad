#include "maths/coverage.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "oracle/coverage_rows.hpp"

namespace camside::coverage {
namespace {

TEST(Coverage, StudentAgreesWithThePublishedTable) {
  for (const auto& row : oracle::student_95_45) {
    EXPECT_NEAR(student_two_sided(covered, row.degrees_of_freedom), row.t, 0.005) << "ν = " << row.degrees_of_freedom;
  }
}

TEST(Coverage, OneDegreeOfFreedomIsTheTangent) {
  // Student's distribution with ν = 1 is Cauchy's: t = tan(π p / 2), in closed form.
  for (const double p : {0.1, 0.5, 0.9545, 0.999}) {
    const double exact = std::tan(0.5 * std::numbers::pi * p);
    EXPECT_NEAR(student_two_sided(p, 1.0) / exact, 1.0, 1e-12) << p;
  }
}

TEST(Coverage, TwoDegreesOfFreedomInClosedForm) {
  for (const double p : {0.1, 0.5, 0.9545, 0.999}) {
    EXPECT_NEAR(student_two_sided(p, 2.0) / (p * std::sqrt(2.0 / (1.0 - p * p))), 1.0, 1e-12) << p;
  }
}

TEST(Coverage, TwoFromThirtyDegreesOn) {
  EXPECT_EQ(coverage_factor(30.0), 2.0);
  EXPECT_EQ(coverage_factor(infinite_degrees_of_freedom), 2.0);
  EXPECT_NEAR(coverage_factor(29.999), 2.09, 0.005);
  EXPECT_NEAR(coverage_factor(1.0), 13.968, 0.001);  // why four stations and three unknowns prove nothing
}

TEST(Coverage, DeclaredValuesAloneHaveEndlessFreedom) {
  const std::vector<Contribution> declared{{0.3}, {0.4}};
  EXPECT_DOUBLE_EQ(combined_uncertainty(declared), 0.5);
  EXPECT_EQ(effective_degrees_of_freedom(declared), infinite_degrees_of_freedom);
  const std::vector<Contribution> nothing{{0.0, 3.0}};
  EXPECT_EQ(effective_degrees_of_freedom(nothing), infinite_degrees_of_freedom);
}

TEST(Coverage, OneContributionKeepsItsFreedom) {
  const std::vector<Contribution> one{{1e-100, 5.0}};
  EXPECT_DOUBLE_EQ(effective_degrees_of_freedom(one), 5.0);
}

TEST(Coverage, EndGaugeOfTheGuide) {
  std::vector<Contribution> c;
  for (const auto& row : oracle::end_gauge) c.push_back({row.uncertainty, row.degrees_of_freedom});
  EXPECT_NEAR(combined_uncertainty(c), 31.663879, 1e-3);  // the published inputs carry three to five digits
  EXPECT_NEAR(effective_degrees_of_freedom(c), 16.7519, 2e-3);
  EXPECT_NEAR(student_two_sided(0.99, 16.0), 2.920782, 5e-7);
}

}  // namespace
}  // namespace camside::coverage
