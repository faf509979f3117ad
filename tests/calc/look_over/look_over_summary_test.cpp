// The one-page summary: what a buyer reads, and what it must not say.
#include "calc/look_over/look_over.hpp"

#include <gtest/gtest.h>

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
  EXPECT_TRUE(says(text, "Knock off 460 (")) << text;
  EXPECT_TRUE(says(text, "Fair offer 5,540 (")) << text;
  EXPECT_TRUE(says(text, "Must do anyway (seen bad, or no proof that it was done)\n  risk shoes: 200 to 600\n"))
      << text;
  EXPECT_TRUE(says(text, "May find\n  may be: risk pump, 100 to 500\n")) << text;
  EXPECT_FALSE(says(text, "laceholder")) << text;
  EXPECT_FALSE(says(text, "%")) << "no percentages for a buyer";
}

TEST(LookOverSummary, SaysWhyThereIsNoOffer) {
  Input in = small_input();
  in.asking.reset();
  EXPECT_TRUE(says(summary(in, solved(in)), "No offer: the asking price is missing\n"));
  in = small_input();
  in.known.risks[0].cost.placeholder = true;
  const std::string nobodys = summary(in, solved(in));
  EXPECT_TRUE(says(nobodys, "No offer: the prices are placeholders until you make them yours\n")) << nobodys;
  EXPECT_TRUE(says(nobodys, "The sums rest on placeholder prices")) << nobodys;
  in = answered(small_input(), "lamp", Said::Yes);
  in.known.questions[1].walk_away = "lamp on";
  const std::string walk = summary(in, solved(in));
  EXPECT_TRUE(says(walk, "No offer: walk away, no price makes up for it\n")) << walk;
  EXPECT_TRUE(says(walk, "Walk away if\n  MET: lamp on\n")) << walk;
  EXPECT_TRUE(walk_away_met(solved(in)));
  EXPECT_EQ(why_no_offer(small_input(), solved(small_input())), "");
}

TEST(LookOverSummary, SaysThatAWarmEngineVoidsTheStartAndWhatToLookAtNext) {
  Input in = small_input();
  in.touched = Touched::Warm;
  in.known.questions[0].say = "Have you the bill?";
  const std::string text = summary(in, solved(in));
  EXPECT_TRUE(says(text, "warm, so the cold start does not count")) << text;
  EXPECT_TRUE(says(text, "Look at this next\n  Is it so: papers?\n  Say: \"Have you the bill?\"\n")) << text;
}

}  // namespace
}  // namespace camside::look_over
