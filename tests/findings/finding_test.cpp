#include "findings/finding.hpp"

#include <gtest/gtest.h>

#include "fields/field_remarks.hpp"
#include "findings/outcome.hpp"

namespace camside {
namespace {

TEST(Findings, AreFoundByTheirNumber) {
  const Findings findings{remarks::missing("travel", "Travel"), remarks::more_not_listed()};
  EXPECT_TRUE(has(findings, 201));
  EXPECT_FALSE(has(findings, 200));
  EXPECT_FALSE(has({}, 201));
}

TEST(Findings, OnlyARefusalRefuses) {
  Findings findings{
      {1, Severity::Note, "", "", ""}, {2, Severity::Caution, "", "", ""}, {3, Severity::Doubt, "", "", ""}};
  EXPECT_FALSE(any_refusal(findings));
  findings.push_back(remarks::missing("travel", "Travel"));
  EXPECT_TRUE(any_refusal(findings));
}

TEST(Severity, HasAWord) {
  EXPECT_EQ(word_of(Severity::Note), "note");
  EXPECT_EQ(word_of(Severity::Caution), "caution");
  EXPECT_EQ(word_of(Severity::Doubt), "doubt");
  EXPECT_EQ(word_of(Severity::Refusal), "refusal");
}

TEST(Verdict, HasAWord) {
  EXPECT_EQ(word_of(Verdict::Within), "Within");
  EXPECT_EQ(word_of(Verdict::Outside), "Outside");
  EXPECT_EQ(word_of(Verdict::NotProven), "Not proven");
}

TEST(Outcome, GivesAFigureByItsKey) {
  Outcome outcome;
  Figure tir;
  tir.key = "tir";
  tir.base = 0.0787;
  outcome.figures.push_back(tir);
  ASSERT_NE(outcome.figure("tir"), nullptr);
  EXPECT_EQ(outcome.figure("tir")->base, 0.0787);
  EXPECT_EQ(outcome.figure("ti"), nullptr);
}

TEST(Source, SaysWhatItRestsOn) {
  EXPECT_EQ(Source::common_practice().text(), "common practice, no published source");
  EXPECT_EQ(Source::memory().text(), "from memory");
  EXPECT_EQ(Source::standard("ISO 14253-1:2017").basis(), Basis::Standard);
  EXPECT_NE(Source::standard("x"), Source::handbook("x"));
}

}  // namespace
}  // namespace camside
