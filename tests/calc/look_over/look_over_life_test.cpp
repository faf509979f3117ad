// A shop's own life curve in a look-over.
#include "calc/life/life.hpp"
#include "calc/look_over/look_over.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "calc/look_over/look_over_inputs.hpp"

namespace camside::look_over {
namespace {

life::Input shop_list() {
  life::Input in;
  in.part = "cam chain shoes";
  for (const double miles : {21'000.0, 28'500.0, 33'000.0}) in.parts.push_back({Distance::miles(miles), true});
  for (const double miles : {12'000.0, 25'000.0, 40'000.0, 41'000.0})
    in.parts.push_back({Distance::miles(miles), false});
  return in;
}

OwnLife life_of(const std::string& risk, const life::Input& in) {
  const auto r = life::solve(in);
  EXPECT_TRUE(r.has_value());
  OwnLife own = own_life(in, *r).value();
  own.risk = risk;
  return own;
}

const Found& pump_in(const Result& r) {
  EXPECT_EQ(r.may_find.size(), 1U);
  return r.may_find.front();
}

double weibull_share(const OwnLife& l, Distance at) {  // the formula, written a second time
  return 1.0 - std::exp(-std::pow(at.in_km() / l.characteristic_life->in_km(), *l.shape));
}

TEST(LookOverLife, TheCurveWithItsListAsSource) {
  const OwnLife own = life_of("pump", shop_list());
  EXPECT_EQ(own.risk, "pump");
  EXPECT_EQ(own.source->basis(), Basis::Owner);
  EXPECT_EQ(own.source->text(), "own list, cam chain shoes: 3 of 7 failed");
  const auto r = life::solve(shop_list());
  EXPECT_DOUBLE_EQ(*own.shape, r->curve->shape);
  EXPECT_DOUBLE_EQ(own.characteristic_life->in_km(), r->characteristic_km.value);
}

TEST(LookOverLife, ReplacesTheBooksChanceByTheShareFailedByTheOdometer) {
  Input in = small_input();
  in.odometer = Distance::miles(30'000.0);
  const double by_the_book = pump_in(*solve(in)).chance;
  in.lives = {life_of("pump", shop_list())};
  const Found pump = pump_in(*solve(in));
  EXPECT_NEAR(pump.chance, weibull_share(in.lives[0], *in.odometer), 1e-12);
  EXPECT_GT(std::fabs(pump.chance - by_the_book), 0.05);
  EXPECT_NE(pump.chance_from.find("own list, cam chain shoes: 3 of 7 failed"), std::string::npos) << pump.chance_from;
}

TEST(LookOverLife, OfTwoSharesTheSourceIsTheirs) {
  life::Input in;
  in.part = "shoes";
  in.from = life::From::TwoQuantiles;
  in.early = {Distance::miles(30'000.0), 0.1};
  in.late = {Distance::miles(60'000.0), 0.5};
  in.source = Source::makers_sheet("sheet 7");
  const OwnLife own = life_of("pump", in);
  EXPECT_EQ(own.source->text(), "sheet 7");
  Input look = small_input();
  look.lives = {own};
  look.odometer = Distance::miles(60'000.0);
  EXPECT_NEAR(pump_in(*solve(look)).chance, 0.5, 1e-12);
}

TEST(LookOverLife, AListWithoutACurveStaysOut) {
  life::Input in = shop_list();
  for (life::Part& p : in.parts) p.failed = false;
  in.assumed_shape = 2.0;
  const auto r = life::solve(in);
  ASSERT_TRUE(r.has_value());
  EXPECT_FALSE(own_life(in, *r));
}

TEST(LookOverLife, ACurveBeyondWhatALookOverTakesStaysOut) {
  life::Input in = shop_list();
  auto r = life::solve(in);
  ASSERT_TRUE(r.has_value());
  r->curve->shape = 1.01 * most_shape;
  EXPECT_FALSE(own_life(in, *r));
  r->curve->shape = 2.0;
  r->curve->ln_eta = std::log(1.01 * most_characteristic_life.in_km());
  EXPECT_FALSE(own_life(in, *r));
  r->curve->ln_eta = std::log(0.99 * most_characteristic_life.in_km());
  EXPECT_TRUE(own_life(in, *r));
}

// Every list that gives a curve gives one that solves, however odd.
TEST(LookOverLife, AListOfNearlyEqualFailuresIsTaken) {
  life::Input in;
  in.part = "shoes";
  for (const double miles : {30'000.0, 30'300.0}) in.parts.push_back({Distance::miles(miles), true});
  in.parts.push_back({Distance::miles(30'100.0), false});
  const OwnLife own = life_of("pump", in);
  EXPECT_GT(*own.shape, 20.0);
  Input look = small_input();
  look.lives = {own};
  EXPECT_TRUE(solve(look).has_value());
}

TEST(LookOverLife, NoOdometerIsAsForManyMiles) {
  Input in = small_input();
  in.known.risks[1].chances = {{Distance::miles(0.0), 0.1}, {Distance::miles(60'000.0), 0.3}};
  in.odometer.reset();
  in.lives = {life_of("pump", shop_list())};
  EXPECT_NEAR(pump_in(*solve(in)).chance, weibull_share(in.lives[0], Distance::miles(60'000.0)), 1e-12);
}

TEST(LookOverLife, ACertainFailureIsStillANumber) {
  Input in = small_input();
  in.odometer = Distance::miles(1'000'000.0);
  in.lives = {{"pump", 20.0, Distance::miles(1'000.0), Source::owner("own list")}};
  const Found pump = pump_in(*solve(in));
  EXPECT_GT(pump.chance, 0.999);
  EXPECT_LE(pump.chance, 1.0);
}

TEST(LookOverLife, RefusedWithTheField) {
  Input in = small_input();
  in.lives = {life_of("engine", shop_list())};
  EXPECT_EQ(solve(in).error().front().number, 1805);
  EXPECT_EQ(solve(in).error().front().field, "lives[0].risk");
  in.lives = {life_of("pump", shop_list()), life_of("pump", shop_list())};
  EXPECT_EQ(solve(in).error().front().number, 1808);
  EXPECT_EQ(solve(in).error().front().field, "lives[1].risk");
}

}  // namespace
}  // namespace camside::look_over
