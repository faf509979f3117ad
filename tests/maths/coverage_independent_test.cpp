// Student's quantile against two other routes: GSL's inverse and Boost.Math's.
#include <gsl/gsl_cdf.h>
#include <gtest/gtest.h>

#include <boost/math/distributions/students_t.hpp>

#include "maths/coverage.hpp"

namespace camside::coverage {
namespace {

TEST(CoverageIndependent, StudentAgainstTwoLibraries) {
  int compared = 0;
  for (double degrees_of_freedom = 0.5; degrees_of_freedom < 1e6; degrees_of_freedom *= 1.07) {
    for (const double p : {0.05, 0.5, 0.9, 0.95, 0.9545, 0.99, 0.999}) {
      const double ours = student_two_sided(p, degrees_of_freedom);
      const double boost = boost::math::quantile(
          boost::math::complement(boost::math::students_t_distribution<double>(degrees_of_freedom), 0.5 * (1.0 - p)));
      ASSERT_NEAR(ours / boost, 1.0, degrees_of_freedom <= 100.0 && p <= 0.99 ? 1e-12 : 1e-11)
          << "p = " << p << ", ν = " << degrees_of_freedom;
      // GSL's own inverse is good to about 1e-9 here; it gives no number below ν = 1 and loses digits far out.
      if (degrees_of_freedom >= 1.0 && p < 0.99) {
        ASSERT_NEAR(ours / gsl_cdf_tdist_Qinv(0.5 * (1.0 - p), degrees_of_freedom), 1.0, 1e-8)
            << "p = " << p << ", ν = " << degrees_of_freedom;
      }
      ++compared;
    }
  }
  EXPECT_GT(compared, 1400);
}

}  // namespace
}  // namespace camside::coverage
