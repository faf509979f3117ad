#include "findings/safety.hpp"

#include <gtest/gtest.h>

#include <set>

namespace camside::safety {
namespace {

// Each is a caution that says what to do, in the range kept for them; questions' tests assert where each is raised.
TEST(Safety, EachIsACautionThatSaysWhatToDo) {
  const Finding all[] = {turn_by_hand(),      stop_felt(),       let_it_cool(), cutting_rods(),
                         unloading_rockers(), shoe_under_load(), blind_hole(),  round_a_running_bike()};
  std::set<int> numbers;
  for (const Finding& f : all) {
    EXPECT_EQ(f.severity, Severity::Caution) << f.number;
    EXPECT_FALSE(f.remedy.empty()) << f.number;
    EXPECT_GE(f.number, 1900);
    EXPECT_LE(f.number, 1929);
    numbers.insert(f.number);
  }
  EXPECT_EQ(numbers.size(), std::size(all));
}

TEST(Safety, TheCrankBoltIsNoHandle) {
  EXPECT_NE(turn_by_hand().remedy.find("the crank bolt is not one"), std::string::npos);
}

// Chips of a saw or grinder end in the lifter bores.
TEST(Safety, RodsAreCutWithBoltCutters) {
  EXPECT_NE(cutting_rods().text.find("bolt cutters"), std::string::npos);
  EXPECT_NE(cutting_rods().text.find("never a saw"), std::string::npos);
}

}  // namespace
}  // namespace camside::safety
