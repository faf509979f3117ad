#include "calc/inspection_due/riding_rate.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "oracle/inspection_due_rows.hpp"

namespace camside::riding_rate {
namespace {

std::vector<Point> points_of(const oracle::RateRow& row) {
  std::vector<Point> points;
  for (std::size_t i = 0; i < row.day.size(); ++i) points.push_back({row.day[i], row.km[i]});
  return points;
}

TEST(RidingRate, MeetsTheLibraryToTheLastBits) {
  for (const auto& row : oracle::rate_rows) {
    const auto r = theil_sen(points_of(row));
    ASSERT_TRUE(r.has_value());
    EXPECT_NEAR(r->km_per_day, row.slope, 1e-14 * row.slope);
    EXPECT_NEAR(*r->low_km_per_day, row.low, 1e-14 * row.low);
    EXPECT_NEAR(*r->high_km_per_day, row.high, 1e-14 * row.high);
    EXPECT_EQ(r->covers_95, row.day.size() >= 5);
  }
}

TEST(RidingRate, FewPoints) {
  EXPECT_FALSE(theil_sen({}).has_value());
  const std::vector<Point> one{{0.0, 5.0}};
  EXPECT_FALSE(theil_sen(one).has_value());
  const std::vector<Point> same_day{{3.0, 5.0}, {3.0, 9.0}};
  EXPECT_FALSE(theil_sen(same_day).has_value());
  const std::vector<Point> two{{0.0, 0.0}, {4.0, 10.0}};
  const auto r = theil_sen(two);
  ASSERT_TRUE(r.has_value());
  EXPECT_DOUBLE_EQ(r->km_per_day, 2.5);
  EXPECT_FALSE(r->low_km_per_day.has_value());
}

TEST(RidingRate, AParkedBikeIsNotRidden) {
  std::vector<Point> parked;
  for (int i = 0; i < 8; ++i) parked.push_back({i * 10.0, 500.0});
  const auto r = theil_sen(parked);
  ASSERT_TRUE(r.has_value());
  EXPECT_EQ(r->km_per_day, 0.0);
  EXPECT_EQ(*r->low_km_per_day, 0.0);
  EXPECT_EQ(*r->high_km_per_day, 0.0);
}

TEST(RidingRate, OneWildReadingMovesItLittle) {
  std::vector<Point> points;
  for (int i = 0; i < 15; ++i) points.push_back({i * 10.0, i * 100.0});
  points[7].km += 5000.0;
  EXPECT_NEAR(theil_sen(points)->km_per_day, 10.0, 1e-9);
}

TEST(RidingRate, TooManyPointsAreNotTried) {
  std::vector<Point> many(most_points + 1);
  for (std::size_t i = 0; i < many.size(); ++i) many[i] = {static_cast<double>(i), static_cast<double>(i)};
  EXPECT_FALSE(theil_sen(many).has_value());
  many.pop_back();
  EXPECT_DOUBLE_EQ(theil_sen(many)->km_per_day, 1.0);
}

}  // namespace
}  // namespace camside::riding_rate
