// What fingers mean: which way a drag goes, two fingers on a drawing and beside it, and an enlarged drawing.
#include "screens/widgets/gesture.hpp"

#include <imgui_internal.h>

#include "screens/harness.hpp"
#include "screens/widgets/zoom.hpp"
#include "screens/words.hpp"

namespace camside::screens::test {
namespace {

constexpr Area frame{{100, 200}, {300, 300}};

// Where a point of the whole drawing, in shares of it, is seen.
ImVec2 seen_at(const Zoom& zoom, ImVec2 share) {
  const Area at = zoom.area(frame);
  return {at.min.x + share.x * at.width(), at.min.y + share.y * at.height()};
}

TEST(Zoom, ThePointUnderTheFingersStaysUnderThem) {
  Zoom zoom;
  const ImVec2 share{0.4f, 0.7f};
  const ImVec2 from = seen_at(zoom, share);
  const ImVec2 to{from.x + 6, from.y - 4};
  zoom.stretch(frame, {from, to, 2.5f});
  EXPECT_NEAR(zoom.scale(), 2.5f, 1e-5f);
  EXPECT_NEAR(seen_at(zoom, share).x, to.x, 1e-3f);
  EXPECT_NEAR(seen_at(zoom, share).y, to.y, 1e-3f);
}

TEST(Zoom, TheDrawingNeverLeavesItsFrame) {
  Zoom zoom;
  for (const Stretch& by : {Stretch{{200, 250}, {200, 250}, 3.0f}, Stretch{{200, 250}, {900, 900}, 1.0f},
                            Stretch{{200, 250}, {-900, -900}, 1.0f}, Stretch{{110, 210}, {290, 290}, 0.4f},
                            Stretch{{200, 250}, {200, 250}, 100.0f}, Stretch{{200, 250}, {250, 200}, 0.001f}}) {
    zoom.stretch(frame, by);
    const Area at = zoom.area(frame);
    EXPECT_LE(at.min.x, frame.min.x + 1e-3f);
    EXPECT_LE(at.min.y, frame.min.y + 1e-3f);
    EXPECT_GE(at.max.x, frame.max.x - 1e-3f);
    EXPECT_GE(at.max.y, frame.max.y - 1e-3f);
    EXPECT_LE(zoom.scale(), 6.0f);
    EXPECT_GE(zoom.scale(), 1.0f);
  }
  EXPECT_TRUE(zoom.whole());
}

TEST(Zoom, TheButtonStepsToTwoAndFourTimesAndBack) {
  Zoom zoom;
  for (const float wanted : {2.0f, 4.0f, 1.0f, 2.0f}) {
    zoom.step(frame);
    EXPECT_NEAR(zoom.scale(), wanted, 1e-5f);
  }
}

// A question's example, with its drawing in view.
class Drawn : public Harness {
 public:
  explicit Drawn(const char* tile, bool touch = true) : Harness({.touch = touch}) {
    tap(tile);
    tap(words::show_example());
  }
  const Item& drawing() const {
    for (const Item& item : items())
      if (item.role == Role::Drawing) return item;
    ADD_FAILURE() << "there is no drawing";
    return items().front();
  }
  ImVec2 middle() const { return {(drawing().min.x + drawing().max.x) / 2, (drawing().min.y + drawing().max.y) / 2}; }
  bool whole() const { return drawing().value.empty(); }
};

std::vector<std::string> said(const Harness& h) {
  std::vector<std::string> all;
  for (const Item& item : h.items()) all.push_back(item.label + "|" + item.value + (item.chosen ? "*" : ""));
  return all;
}

TEST(Gesture, ASidewaysDragScrollsNothingAndPressesNothing) {
  Drawn h("Runout");
  const float top = h.drawing().min.y;
  const std::vector<std::string> before = said(h);
  h.drag({100, 600}, {300, 540});
  EXPECT_EQ(h.drawing().min.y, top);
  h.drag({100, 600}, {140, 400});
  EXPECT_NEAR(h.drawing().min.y, top - 200, 80) << "a drag that is mostly up scrolls";
  EXPECT_EQ(said(h), before);
}

TEST(Gesture, TheFirstMovementDecidesWhichWay) {
  Drawn h("Runout");
  const float top = h.drawing().min.y;
  h.down({100, 600});
  for (const ImVec2 at : {ImVec2{130, 604}, ImVec2{150, 560}, ImVec2{150, 450}}) h.move(at);
  h.up({150, 450});
  h.run();
  EXPECT_EQ(h.drawing().min.y, top);
}

TEST(Gesture, TwoFingersOnADrawingEnlargeItAndScrollNothing) {
  Drawn h("Runout");
  const ImVec2 c = h.middle();
  h.two_fingers({c.x - 40, c.y}, {c.x + 40, c.y}, {c.x - 100, c.y - 20}, {c.x + 100, c.y + 20});
  EXPECT_EQ(h.drawing().value, words::times_larger(2.5f));
  EXPECT_EQ(h.middle().y, c.y);
  h.two_fingers({c.x - 100, c.y}, {c.x + 100, c.y}, {c.x - 20, c.y}, {c.x + 20, c.y});
  EXPECT_TRUE(h.whole());
  h.drag({c.x, c.y}, {c.x, c.y - 100});
  EXPECT_LT(h.middle().y, c.y - 50) << "a whole drawing is scrolled as before";
}

TEST(Gesture, TwoFingersElsewhereDoNothing) {
  Harness h({});
  const Item tile = *h.find("Gears to order");
  const ImVec2 c{(tile.min.x + tile.max.x) / 2, (tile.min.y + tile.max.y) / 2};
  const std::vector<std::string> before = said(h);
  for (const float apart : {0.0f, 60.0f}) {  // a tap with both, and a pinch
    h.two_fingers(c, {c.x + 30, c.y}, {c.x, c.y - apart}, {c.x + 30, c.y + apart});
    ASSERT_EQ(said(h), before);
    EXPECT_EQ(h.find("Gears to order")->min.y, tile.min.y);
  }
  h.tap("Gears to order");
  EXPECT_NE(h.find(words::back()), nullptr) << "one finger means something again";
}

TEST(Gesture, OneFingerOnTheDrawingAndOneBesideItDoNothing) {
  Drawn h("Runout");
  const ImVec2 c = h.middle();
  h.two_fingers(c, {c.x, h.drawing().max.y + 80}, {c.x, c.y - 60}, {c.x, h.drawing().max.y + 140});
  EXPECT_TRUE(h.whole());
  EXPECT_EQ(h.middle().y, c.y);
}

TEST(Gesture, TwoFingersThatWereNeverSeenApartPressNothing) {
  Harness h({});
  const Item tile = *h.find("Gear pair");
  const ImVec2 c{(tile.min.x + tile.max.x) / 2, (tile.min.y + tile.max.y) / 2};
  ImGuiIO& io = ImGui::GetIO();  // all within one frame
  for (const bool down : {true, false}) {
    h.shell->finger(1, c, down);
    h.shell->finger(2, {c.x + 30, c.y}, down);
    io.AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
    io.AddMousePosEvent(c.x, c.y);
    io.AddMouseButtonEvent(0, down);
  }
  h.run();
  EXPECT_EQ(h.find(words::back()), nullptr);
  h.tap("Gear pair");
  EXPECT_NE(h.find(words::back()), nullptr);
}

TEST(Gesture, OneFingerMovesAnEnlargedDrawingInsteadOfThePage) {
  Drawn h("Gears to order");
  h.tap(words::larger());
  ASSERT_FALSE(h.whole());
  const float top = h.drawing().min.y;
  const ImVec2 c = h.middle();
  const auto bars = [&] {
    std::vector<std::string> seen;
    for (const Item& item : h.items())
      if (item.role == Role::Choice && item.min.y >= h.drawing().min.y && item.max.y <= h.drawing().max.y + 1)
        seen.push_back(item.label);
    return seen;
  };
  const std::vector<std::string> before = bars();
  h.drag(c, {c.x, c.y + 150});
  EXPECT_EQ(h.drawing().min.y, top) << "the page stays";
  EXPECT_NE(bars(), before) << "other bars are seen";
  EXPECT_FALSE(bars().empty());
}

TEST(Gesture, ATapOnAPartOfAnEnlargedDrawingHitsThatPart) {
  Drawn h("Gears to order");
  h.tap(words::larger());
  std::vector<Item> bars;
  for (const Item& item : h.items())
    if (item.role == Role::Choice && item.min.y >= h.drawing().min.y - 1 && item.max.y <= h.drawing().max.y + 1)
      bars.push_back(item);
  ASSERT_GE(bars.size(), 2U);
  EXPECT_GT(bars[1].max.y - bars[1].min.y, 80) << "twice as high as before";
  h.tap_at({(bars[1].min.x + bars[1].max.x) / 2, bars[1].max.y - 10});
  ASSERT_NE(h.find(bars[1].label), nullptr);
  EXPECT_TRUE(h.find(bars[1].label)->chosen);
}

TEST(Gesture, TheButtonSaysWhatItWillDo) {
  Drawn h("Runout");
  for (const char* label : {words::larger(), words::larger(), words::whole_drawing()}) h.tap(label);
  EXPECT_TRUE(h.whole());
  EXPECT_NE(h.find(words::larger()), nullptr);
}

TEST(Gesture, AtTheDeskCtrlAndTheWheelEnlargeAndTheMouseMoves) {
  Drawn h("Runout", false);
  const ImVec2 c = h.middle();
  ImGuiIO& io = ImGui::GetIO();
  io.AddMousePosEvent(c.x, c.y);
  io.AddKeyEvent(ImGuiMod_Ctrl, true);
  io.AddMouseWheelEvent(0, 4);
  h.run();
  io.AddKeyEvent(ImGuiMod_Ctrl, false);
  h.run();
  EXPECT_EQ(h.drawing().value, words::times_larger(2.44f));
  EXPECT_EQ(h.middle().y, c.y) << "the page stays";
  h.down(c);
  h.move({c.x + 60, c.y});
  h.move({c.x + 90, c.y});
  h.up({c.x + 90, c.y});
  h.run();
  EXPECT_EQ(h.middle().y, c.y);
  io.AddMouseWheelEvent(0, -2);
  h.run();
  EXPECT_LT(h.middle().y, c.y) << "the wheel alone scrolls the page";
}

}  // namespace
}  // namespace camside::screens::test
