// Every screen at every size and text size keeps its promises: big targets, no overlap, nothing cut off, nothing
// outside the safe area, no two things with one id, and it goes to sleep.
#include <set>

#include "calc/questions.hpp"
#include "screens/harness.hpp"
#include "screens/look_over/look_over_words.hpp"
#include "screens/words.hpp"

namespace camside::screens::test {
namespace {

struct Case {
  const char* name;
  ImVec2 size;
  float text_scale;
  bool light;
};

std::ostream& operator<<(std::ostream& out, const Case& c) {
  return out << c.name;
}

class Layout : public testing::TestWithParam<Case> {};

bool overlap(const Item& a, const Item& b) {
  const float slack = 0.6f;
  return a.min.x < b.max.x - slack && b.min.x < a.max.x - slack && a.min.y < b.max.y - slack &&
         b.min.y < a.max.y - slack;
}

void check_targets(const Items& items, const std::string& where) {
  for (const Item& i : items) {
    if (!i.pressable() || i.label.empty() || i.role == Role::Text) continue;
    EXPECT_GE(i.max.y - i.min.y, 47.9f) << where << ": " << i.label << " is too low to press";
    EXPECT_GE(i.max.x - i.min.x, 44.0f) << where << ": " << i.label << " is too narrow to press";
  }
}

void check_overlap(const Items& items, const std::string& where) {
  for (std::size_t a = 0; a < items.size(); ++a) {
    if (!items[a].pressable()) continue;
    for (std::size_t b = a + 1; b < items.size(); ++b)
      if (items[b].pressable() && items[a].clip_min.y == items[b].clip_min.y &&
          items[a].clip_min.x == items[b].clip_min.x) {
        EXPECT_FALSE(overlap(items[a], items[b])) << where << ": " << items[a].label << " over " << items[b].label;
      }
  }
}

void check_words(const Items& items, const std::string& where) {
  for (const Item& i : items) EXPECT_FALSE(i.clipped_text) << where << ": the words of " << i.label << " don't fit";
}

void check_inside(const Items& items, const Case& c, const std::string& where) {
  for (const Item& i : items) {
    EXPECT_GE(i.min.x, -0.5f) << where << ": " << i.label;
    EXPECT_LE(i.max.x, c.size.x + 0.5f) << where << ": " << i.label << " runs off the right edge";
  }
}

void check_ids(const Items& items, const std::string& where) {
  std::set<ImGuiID> seen;
  for (const Item& i : items)
    if (i.pressable()) {
      EXPECT_TRUE(seen.insert(i.id).second) << where << ": two things share the id of " << i.label;
    }
}

float common(float a_min, float a_max, float b_min, float b_max) {
  return std::min(a_max, b_max) - std::max(a_min, b_min);
}

// What stands in the drawings: whole from left to right, and no word upon another.
void check_drawn_words(Harness& h, const std::string& where) {
  std::vector<Written> words;
  Pen::watched = &words;
  h.frame();
  Pen::watched = nullptr;
  for (std::size_t a = 0; a < words.size(); ++a) {
    const Written& one = words[a];
    EXPECT_GE(one.box.min.x, one.seen.min.x - 1) << where << ": " << one.text << " is cut off at the left";
    EXPECT_LE(one.box.max.x, one.seen.max.x + 1) << where << ": " << one.text << " is cut off at the right";
    for (std::size_t b = a + 1; b < words.size(); ++b) {
      const Area& other = words[b].box;
      const float across = common(one.box.min.x, one.box.max.x, other.min.x, other.max.x);
      const float down = common(one.box.min.y, one.box.max.y, other.min.y, other.max.y);
      // A quarter of a line is the room between lines, in which no letter stands.
      EXPECT_FALSE(across > 1 && down > 0.25f * (one.box.max.y - one.box.min.y))
          << where << ": " << one.text << " over " << words[b].text;
    }
  }
}

void check(Harness& h, const Case& c, const std::string& where) {
  check_drawn_words(h, where);
  check_targets(h.items(), where);
  check_overlap(h.items(), where);
  check_words(h.items(), where);
  check_inside(h.items(), c, where);
  check_ids(h.items(), where);
  EXPECT_FALSE(h.shell->wants_more_frames()) << where;
}

TEST_P(Layout, HoldsOnEveryScreen) {
  const Case& c = GetParam();
  Harness h({.size = c.size, .text_scale = c.text_scale, .light = c.light});
  for (const PlaceId place : {PlaceId::Bikes, PlaceId::LookOver, PlaceId::Setup, PlaceId::Bench}) {
    h.shell->go(place);
    h.run();
    check(h, c, std::string("place ") + std::to_string(static_cast<int>(place)));
  }
  for (const Question& question : questions()) {
    if (question.where == Where::OwnPlace) continue;
    const std::string kind(question.kind.name);
    h.shell->open(kind);
    h.run();
    check(h, c, kind + " empty");
    h.tap(words::show_example());
    check(h, c, kind + " example");
    ASSERT_NE(h.find_text(kind + " drawing"), nullptr) << kind << " has no drawing";
    h.tap(words::more_entries());
    check(h, c, kind + " all entries");
  }
}

// Rows of a long list are made only near the window: a finger goes there first.
void scroll_down_to(Harness& h, const Case& c, const std::string& label) {
  const ImVec2 from{0.5f * c.size.x, 0.45f * c.size.y};
  for (int i = 0; i < 20 && !h.find(label); ++i) h.drag(from, {from.x, from.y - 0.2f * c.size.y});
}

// The list, the demo bike's page with every kind offered, an entry of it, and each form with the keypad open.
TEST_P(Layout, HoldsOnEveryPageOfTheBikes) {
  const Case& c = GetParam();
  Harness h({.size = c.size, .text_scale = c.text_scale, .light = c.light, .bikes = true});
  h.shell->go(PlaceId::Bikes);
  h.run();
  check(h, c, "no bike");
  h.tap(words::add_bike());
  check(h, c, "a new bike");
  h.tap(words::discard());
  h.tap(words::show_demo_bike());
  check(h, c, "demo bike");
  h.tap(words::add_an_entry());
  check(h, c, "kinds of entry");
  h.tap("Finding");
  check(h, c, "a new finding");
  h.tap(words::discard());
  h.tap(words::log_odometer());
  check(h, c, "keypad");
  h.press(ImGuiKey_Escape);
  h.tap(words::show_as_code());
  check(h, c, "no address for a code");
  h.platform.address = "http://localhost:8080/a-long-folder-without-a-blank-to-break-at/camside/";
  h.run();
  check(h, c, "a code");
  h.tap(words::back());
  for (const char* line : {"Note: No papers for the tensioners", "Runout: Pinion shaft, plate off"}) {
    scroll_down_to(h, c, line);
    h.tap(line);
    check(h, c, line);
    h.tap(words::back());
  }
  h.tap(words::back());
  check(h, c, "list of one");
}

// The main action and the answers stand whole in their place, however large the text.
void check_thumb(const Harness& h, const std::string& where, std::initializer_list<const char*> labels) {
  for (const char* label : labels) {
    const Item* const item = h.find(label);
    ASSERT_NE(item, nullptr) << where << ": " << label;
    EXPECT_GE(item->min.y, item->clip_min.y - 0.5f) << where << ": " << label;
    EXPECT_LE(item->max.y, item->clip_max.y + 0.5f) << where << ": " << label << " is cut off";
  }
}

// The list, facts with the keypad, each way of the round, the result, the prices and the working.
TEST_P(Layout, HoldsOnEveryPageOfALookOver) {
  const Case& c = GetParam();
  Harness h({.size = c.size, .text_scale = c.text_scale, .light = c.light, .bikes = true});
  h.platform.ways = {.share = true, .save = true, .pick = true};
  h.shell->go(PlaceId::Bench);
  h.run();
  h.tap("Life");
  h.tap(words::show_example());
  h.shell->go(PlaceId::LookOver);
  h.run();
  check(h, c, "no look-over");
  h.tap(words::show_example());
  check(h, c, "two look-overs");
  check_thumb(h, "two look-overs", {words::check_over()});
  h.tap("Bike at the mill, no papers");
  check(h, c, "result");
  const Item* const next = h.find_text("Next: ");
  ASSERT_NE(next, nullptr);
  const std::string next_label(next->label);
  check_thumb(h, "result", {next_label.c_str()});
  h.tap(words::look_at_prices());
  check(h, c, "prices");
  check_thumb(h, "prices", {words::done()});
  h.tap("Tensioner shoes, spring-loaded, Best");
  check(h, c, "prices, keypad");
  h.press(ImGuiKey_Escape);
  h.tap(words::done());
  check(h, c, "offer");
  h.tap(words::working());
  check(h, c, "working");
  ASSERT_NE(h.find_text("look_over drawing"), nullptr);
  h.tap(words::counts_nowhere());
  check(h, c, "risk of an own list");
  h.tap(words::back());
  h.tap(words::back());
  h.tap(words::check_over());
  check(h, c, "facts");
  h.tap("Warm");
  h.tap(words::start_round());
  check_thumb(h, "round", {words::yes(), words::no(), words::didnt_see()});
  h.tap(words::all_questions());
  check(h, c, "all questions");
  h.tap(words::back());
  int asked = 0;
  while (asked < 40 && h.find(words::didnt_see())) {
    check(h, c, "question " + std::to_string(++asked));
    h.tap(words::didnt_see());
    if (h.find(words::didnt_see())) continue;
    check(h, c, "one may stop here, after " + std::to_string(asked));
    const Item* const more = h.find_text("Next: ");
    if (more) h.tap(std::string(more->label));
  }
  EXPECT_GE(asked, 20);
}

INSTANTIATE_TEST_SUITE_P(
    Sizes, Layout,
    testing::Values(Case{"phone", {390, 844}, 1.0f, false}, Case{"phone_sun", {390, 844}, 1.0f, true},
                    Case{"phone_small_text", {390, 844}, 0.9f, false},
                    Case{"phone_large_text", {390, 844}, 1.3f, false}, Case{"phone_huge_text", {390, 844}, 2.0f, true},
                    Case{"small_phone", {320, 568}, 1.0f, false},
                    Case{"small_phone_huge_text", {320, 568}, 2.0f, false}, Case{"sideways", {844, 390}, 1.0f, false},
                    Case{"sideways_large_text", {844, 390}, 1.3f, true}, Case{"tablet", {600, 900}, 1.0f, true},
                    Case{"narrow_desk", {900, 700}, 1.0f, false}, Case{"desk", {1440, 900}, 1.0f, true},
                    Case{"desk_huge_text", {1440, 900}, 2.0f, false}),
    [](const auto& which) { return std::string(which.param.name); });

}  // namespace
}  // namespace camside::screens::test
