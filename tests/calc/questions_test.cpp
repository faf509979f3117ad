#include "calc/questions.hpp"

#include <gtest/gtest.h>

#include <set>

namespace camside {
namespace {

std::set<int> before(std::string_view question) {
  std::set<int> numbers;
  const Question* const q = find_question(question);
  if (q && q->before)
    for (const Finding& f : q->before()) numbers.insert(f.number);
  return numbers;
}

// Cautions stand before the first reading wherever fingers go; where nobody touches an engine there are none.
TEST(Questions, CautionsStandBeforeTheFirstReading) {
  EXPECT_EQ(before("runout"), (std::set{1911}));
  EXPECT_EQ(before("backlash"), (std::set{1911}));
  EXPECT_EQ(before("pushrod"), (std::set{1911, 1913}));
  EXPECT_EQ(before("wear"), (std::set{1916}));
  for (const Question& q : questions()) {
    if (q.where == Where::Desk) EXPECT_EQ(q.before, nullptr) << q.kind.name;
  }
}

}  // namespace
}  // namespace camside
