#include "fields/path.hpp"

#include <gtest/gtest.h>

namespace camside {
namespace {

TEST(Path, NamesAPlaceInAList) {
  EXPECT_EQ(item_path("stations", 3), "stations[3]");
  EXPECT_EQ(item_path("other_side.stations", 0, "reading"), "other_side.stations[0].reading");
}

}  // namespace
}  // namespace camside
