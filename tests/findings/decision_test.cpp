// The one rule of every verdict: what numbers prove, what doubts leave of it, and which of several decides.
#include "findings/decision.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace camside {
namespace {

struct Row {
  double value;
  Verdict most;   // against at most 0.076, U = 0.010
  Verdict least;  // against at least 0.076
};
// ISO 14253-1:2017, 5: acceptance and rejection zones, worked by hand.
const std::vector<Row> rows{
    {0.060, Verdict::Within, Verdict::Outside},       {0.066, Verdict::Within, Verdict::NotProven},
    {0.0661, Verdict::NotProven, Verdict::NotProven}, {0.076, Verdict::NotProven, Verdict::NotProven},
    {0.086, Verdict::NotProven, Verdict::Within},     {0.0861, Verdict::Outside, Verdict::Within},
};

Finding doubt(Misleads misleads, int number = 9) {
  return {number, Severity::Doubt, "", "so", "do", misleads};
}

TEST(Decision, ZonesOfAcceptanceAndRejection) {
  for (const Row& r : rows) {
    EXPECT_EQ(verdict_of_numbers(Bound::Most, measured(r.value, 0.010), 0.076), r.most) << r.value;
    EXPECT_EQ(verdict_of_numbers(Bound::Least, measured(r.value, 0.010), 0.076), r.least) << r.value;
  }
}

TEST(Decision, MeetingALimitIsWithinInSpiteOfBinary) {
  EXPECT_EQ(verdict_of_numbers(Bound::Least, measured(20.050 - 0.015, 0.0), 20.035), Verdict::Within);
  EXPECT_EQ(verdict_of_numbers(Bound::Most, measured(0.1 + 0.2, 0.0), 0.3), Verdict::Within);
  EXPECT_EQ(verdict_of_numbers(Bound::Most, measured(0.3 + 3e-9, 0.0), 0.3), Verdict::Outside);
}

TEST(Decision, WithinMustHoldForWhatCouldHaveBeenMissed) {
  EXPECT_EQ(verdict_of_numbers(Bound::Most, {0.08, 0.06, 0.0}, 0.07), Verdict::NotProven);
  EXPECT_EQ(verdict_of_numbers(Bound::Most, {0.09, 0.08, 0.0}, 0.07), Verdict::Outside);
}

TEST(Decision, WhatADoubtForbidsIsItsOwnProperty) {
  struct Case {
    Misleads misleads;
    Verdict within;        // what becomes of Within
    Verdict above, below;  // of Outside against a most and a least
  };
  for (const Case& c : {Case{Misleads::Flatters, Verdict::NotProven, Verdict::Outside, Verdict::Outside},
                        Case{Misleads::TooLarge, Verdict::NotProven, Verdict::NotProven, Verdict::Outside},
                        Case{Misleads::EitherWay, Verdict::NotProven, Verdict::NotProven, Verdict::NotProven}}) {
    const Findings one{doubt(c.misleads)};
    EXPECT_EQ(decide(Verdict::Within, Bound::Most, one).verdict, c.within);
    EXPECT_EQ(decide(Verdict::Within, Bound::Least, one).verdict, c.within);
    EXPECT_EQ(decide(Verdict::Outside, Bound::Most, one).verdict, c.above);
    EXPECT_EQ(decide(Verdict::Outside, Bound::Least, one).verdict, c.below);
  }
}

TEST(Decision, TheReasonIsTheFirstDoubtOfThoseThatForbidMost) {
  const Findings several{{1, Severity::Caution, "", "", "", {}},
                         doubt(Misleads::Flatters, 2),
                         doubt(Misleads::EitherWay, 3),
                         doubt(Misleads::EitherWay, 4)};
  EXPECT_EQ(decide(Verdict::Within, Bound::Most, several).doubt->number, 3);
  EXPECT_EQ(decide(Verdict::NotProven, Bound::Most, several).doubt->number, 3);
  const Findings mild{doubt(Misleads::Flatters, 2), doubt(Misleads::TooLarge, 5)};
  EXPECT_EQ(decide(Verdict::Within, Bound::Most, mild).doubt->number, 2);
  EXPECT_EQ(decide(Verdict::Outside, Bound::Most, mild).doubt->number, 5);
  EXPECT_EQ(decide(Verdict::NotProven, Bound::Most, mild).doubt, nullptr);  // the numbers say what would settle it
  EXPECT_EQ(because(mild.front()), "so. do");
}

TEST(Decision, OutsideWeighsMost) {
  EXPECT_TRUE(weighs_more(Verdict::Outside, Verdict::NotProven));
  EXPECT_TRUE(weighs_more(Verdict::NotProven, Verdict::Within));
  EXPECT_FALSE(weighs_more(Verdict::Within, Verdict::Within));
}

}  // namespace
}  // namespace camside
