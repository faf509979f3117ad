#include "screens/shell.hpp"

#include <imgui_internal.h>

#include "screens/harness.hpp"
#include "screens/words.hpp"

namespace camside::screens::test {
namespace {

TEST(Shell, EveryPlaceIsOneTapAway) {
  Harness h({});
  for (const char* place : {"Bikes", "Look-over", "Settings", "Bench"}) {
    h.tap(place);
    const Item* const item = h.find(place);
    ASSERT_NE(item, nullptr);
    EXPECT_TRUE(item->chosen) << place;
  }
}

TEST(Shell, BacklashIsFoundOnTheBenchByItsName) {
  Harness h({});
  EXPECT_NE(h.find("Gear lash (backlash)"), nullptr);
}

TEST(Shell, ATapIsOneActivationOnRelease) {
  Harness h({});
  const Item tile = *h.find("Gear pair");
  const ImVec2 c{(tile.min.x + tile.max.x) / 2, (tile.min.y + tile.max.y) / 2};
  h.down(c);
  EXPECT_NE(h.find("Gear pair"), nullptr) << "nothing happens before the finger is lifted";
  EXPECT_EQ(h.find(words::back()), nullptr);
  h.up(c);
  h.run();
  EXPECT_NE(h.find(words::back()), nullptr);
}

TEST(Shell, ADragThatStartsOnATilePressesNothing) {
  Harness h({});
  const Item tile = *h.find("Gear lash (backlash)");
  const ImVec2 c{(tile.min.x + tile.max.x) / 2, (tile.min.y + tile.max.y) / 2};
  h.drag(c, {c.x, c.y - 60});
  EXPECT_EQ(h.find(words::back()), nullptr);
}

TEST(Shell, TheMainActionCorrectsWhatWasRefused) {
  for (const float scale : {1.0f, 2.0f}) {
    Harness h({.text_scale = scale});
    h.shell->open("runout");
    h.run();
    h.tap(words::show_example());
    ASSERT_NE(h.find(words::working()), nullptr);
    h.tap(words::more_entries());
    h.tap("Graduation");
    h.type_on_keypad("99");
    h.tap(words::done());
    const std::string correct = words::correct_field("Graduation");
    ASSERT_NE(h.find(correct), nullptr) << "nothing was solved, so there is no working";
    EXPECT_FALSE(h.find(correct)->clipped_text);
    h.tap(correct);
    EXPECT_NE(h.find(words::done()), nullptr) << "the keypad is open at it";
    h.type_on_keypad("0.0001");
    h.tap(words::done());
    EXPECT_NE(h.find(words::working()), nullptr);
  }
}

TEST(Shell, NothingStaysHoveredAfterATouch) {
  Harness h({});
  h.tap("Bench");
  EXPECT_EQ(ImGui::GetCurrentContext()->HoveredId, 0U);
}

TEST(Shell, SettingsSurviveARestart) {
  std::map<std::string, std::string> kept;
  {
    Harness h({});
    h.tap("Settings");
    h.tap("Metric");
    h.tap("Sun (light)");
    kept = h.store.kept;
  }
  Harness again({.kept = kept});
  EXPECT_EQ(again.shell->settings().system, System::Metric);
  EXPECT_EQ(again.shell->settings().theme, work::ThemeChoice::Sun);
}

TEST(Shell, AJobSurvivesARestart) {
  std::map<std::string, std::string> kept;
  {
    Harness h({});
    h.tap("Gear pair");
    h.tap(words::show_example());
    kept = h.store.kept;
  }
  Harness again({.kept = kept});  // and one comes back to where one was
  EXPECT_EQ(again.find(words::show_example()), nullptr);
  EXPECT_NE(again.find_text("Invented"), nullptr) << "demo data says that it is invented";
}

TEST(Shell, AFailedSaveIsShownUntilItWorks) {
  Harness h({});
  h.store.failing = true;
  h.tap("Gear pair");
  h.tap(words::show_example());
  EXPECT_NE(h.find_text("The disk is full"), nullptr);
  h.store.failing = false;
  h.tap(words::try_again());
  EXPECT_EQ(h.find_text("The disk is full"), nullptr);
}

// One rod loaded now, by its example's own wait; → the platform's time when that is over.
double set_a_rod(Harness& h) {
  h.tap("Pushrods");
  h.tap(words::show_example());
  h.tap("Rear exhaust");
  return h.platform.now + 10 * 60;
}

TEST(Shell, AClockThatRunsOutIsHeardOnceWhateverIsOnScreen) {
  Harness h({});
  const double end = set_a_rod(h);
  ASSERT_TRUE(h.shell->next_wake().has_value());
  h.tap("Settings");
  const double before = h.shell->next_wake().value_or(0.0);
  EXPECT_NEAR(before, end - h.platform.now, 1e-6) << "nothing to draw until then";
  h.platform.now = end - 1;
  h.run();
  EXPECT_EQ(h.platform.rings, 0);
  h.platform.now = end + 0.01;
  h.run();
  EXPECT_EQ(h.platform.rings, 1);
  h.platform.now += 3600;
  h.run();
  EXPECT_EQ(h.platform.rings, 1) << "once";
  EXPECT_FALSE(h.shell->next_wake().has_value());
  h.tap(words::wait_is_over());
  EXPECT_NE(h.find_text("Spins by the fingers"), nullptr) << "the way to the rods";
  h.tap("Settings");
  EXPECT_EQ(h.find(words::wait_is_over()), nullptr) << "seen";
}

std::vector<Item> bars_of_first_set(const Harness& h) {
  std::vector<Item> bars;
  const Item* const drawing = h.find_text("gear_pick drawing");
  if (!drawing) return bars;
  for (const Item& item : h.items())
    if (item.role == Role::Choice && item.min.y >= drawing->min.y && item.max.y <= drawing->max.y) bars.push_back(item);
  return bars;
}

TEST(Shell, ATapOnABarOfGearsToOrderShowsItsTeeth) {
  Harness h({});
  h.tap("Gears to order");
  h.tap(words::show_example());
  std::vector<Item> bars = bars_of_first_set(h);
  ASSERT_GE(bars.size(), 3U);
  EXPECT_TRUE(bars[0].chosen);
  h.tap(bars[2].label);
  bars = bars_of_first_set(h);
  EXPECT_FALSE(bars[0].chosen);
  EXPECT_TRUE(bars[2].chosen);
  EXPECT_NE(h.find_text("gear_pick teeth"), nullptr);
}

TEST(Theme, EveryPairThatMeetsOnScreenHasItsContrast) {
  for (const Theme* theme : {&shop_theme(), &sun_theme()})
    for (const ColourPair& pair : pairs_used(*theme))
      EXPECT_GE(contrast(pair.front, pair.back), pair.least)
          << pair.what << (theme == &sun_theme() ? " (Sun)" : " (Shop)");
}

TEST(Theme, ContrastIsTheStandardsOwn) {
  EXPECT_NEAR(contrast(IM_COL32_BLACK, IM_COL32_WHITE), 21.0, 1e-9);
  EXPECT_NEAR(contrast(IM_COL32(0x77, 0x77, 0x77, 255), IM_COL32_WHITE), 4.478,
              0.001);  // #777 on white, WCAG 2.2 formula
}

}  // namespace
}  // namespace camside::screens::test
