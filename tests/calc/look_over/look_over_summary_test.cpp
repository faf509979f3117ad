// The one-page summary: what a buyer reads, and what it must not say.
#include <gtest/gtest.h>

#include "calc/look_over/look_over.hpp"
#include "calc/look_over/look_over_inputs.hpp"

namespace camside::look_over {
namespace {

Result solved(const Input& in) {
  auto r = solve(in);
  EXPECT_TRUE(r.has_value());
  return r.value_or(Result{});
}

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

TEST(LookOverMoneyText, CommasAndTens) {
  EXPECT_EQ(money_text(Money::amount(0)), "0");
  EXPECT_EQ(money_text(Money::amount(999.4)), "999");
  EXPECT_EQ(money_text(Money::amount(999.6)), "1,000");
  EXPECT_EQ(money_text(Money::amount(1'234'567)), "1,234,567");
  EXPECT_EQ(rough_text(Money::amount(64.4)), "64");
  EXPECT_EQ(rough_text(Money::amount(104)), "100");
  EXPECT_EQ(rough_text(Money::amount(13'690.7)), "13,690");
  EXPECT_EQ(rough_range({Money::amount(99), Money::amount(1), Money::amount(1'996)}), "99 to 2,000");
}

// Shoes without proof are 400 = (200 + 4 · 400 + 600)/6; the pump's chance of 0.2 · 300 adds 60.
TEST(LookOverSummary, SaysTheSumsAndWhatTheyRestOn) {
  const std::string text = summary(small_input(), solved(small_input()));
  EXPECT_TRUE(says(text, "2003 · 30,000 mi (48,280 km) · asking 6,000\n")) << text;
  EXPECT_TRUE(says(text, "Offer 5,540: risk shoes 400, the rest 60\n")) << text;
  EXPECT_TRUE(says(text, "Engine work: likely range, rough guess: ")) << text;
  EXPECT_TRUE(says(text, "The asking price is taken as a sound bike's\n")) << text;
  EXPECT_TRUE(says(text, "Must do anyway\n  risk shoes: 200 to 600 (no proof)\n")) << text;
  EXPECT_TRUE(says(text, "May find\n  may be: risk pump, 100 to 500\n")) << text;
  EXPECT_FALSE(says(text, "made up")) << text;
  EXPECT_FALSE(says(text, "%")) << "no percentages for a buyer";
}

TEST(LookOverSummary, SaysWhyThereIsNoOffer) {
  Input in = small_input();
  in.asking.reset();
  EXPECT_TRUE(says(summary(in, solved(in)), "No offer: the asking price is missing\n"));
  in = small_input();
  in.known.risks[0].cost.placeholder = true;
  const std::string nobodys = summary(in, solved(in));
  EXPECT_TRUE(says(nobodys, "No offer: the prices of what must be done are made up until you enter yours\n"))
      << nobodys;
  EXPECT_TRUE(says(nobodys, "Prices in it are made up")) << nobodys;
  in = answered(small_input(), "lamp", Said::Yes);
  in.known.questions[1].walk_away = "lamp on";
  const std::string walk = summary(in, solved(in));
  EXPECT_TRUE(says(walk, "Walk away: lamp on\n")) << walk;
  EXPECT_FALSE(says(walk, "Engine work")) << "no sum beside it: no price makes up for it\n" << walk;
  EXPECT_TRUE(says(walk, "Walk away if\n  MET: lamp on\n")) << walk;
  EXPECT_TRUE(walk_away_met(solved(in)));
  EXPECT_EQ(why_no_offer(small_input(), solved(small_input())), "");
}

TEST(LookOverSummary, SaysThatAWarmEngineVoidsTheStartAndWhatToLookAtNext) {
  Input in = small_input();
  in.touched = Touched::Warm;
  in.known.questions[0].say = "Have you the bill?";
  const std::string text = summary(in, solved(in));
  EXPECT_TRUE(says(text, "warm, so a good start proves nothing")) << text;
  EXPECT_TRUE(says(text, "Look at this next\n  Is it so: papers?\n  Say: \"Have you the bill?\"\n")) << text;
}

}  // namespace
}  // namespace camside::look_over
