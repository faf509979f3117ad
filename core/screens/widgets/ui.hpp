// Our widgets. All act on release, inside; all are at least 48 px high; each publishes an Item. A widget that is
// pressed and then dragged does nothing (gesture.hpp takes the press away).
//
// One Ui lives for one frame. Sizes are in units (CSS pixels); px() applies the owner's text size.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "base/function_view.hpp"
#include "screens/widgets/focus.hpp"
#include "screens/widgets/gesture.hpp"
#include "screens/widgets/item.hpp"
#include "screens/widgets/pen.hpp"
#include "screens/widgets/theme.hpp"

namespace camside::screens {

struct Fonts {
  ImFont* words = nullptr;  // B612 regular; the digits of both are equally wide, so that figures do not dance
  ImFont* bold = nullptr;
};

enum class Look : std::uint8_t { Plain, Main, Quiet };

class Ui {
 public:
  Ui(const Theme& theme, const Fonts& fonts, float text_scale, Items& items, Focus& focus, Gesture& gesture);

  const Theme& theme() const { return theme_; }
  const Fonts& fonts() const { return fonts_; }
  float px(float size) const { return size * text_scale_; }
  float target() const;  // height of something to press: 48 px, more with large text
  float width() const;   // what is left of the row
  Pen pen(ImU32 ground) const;
  Gesture& gesture() const { return gesture_; }

  // Words. Wrapped to the width; each is an Item that can be found by its text.
  void title(const std::string& text);
  void heading(const std::string& text);
  void text(const std::string& text);
  void quiet(const std::string& text);
  void coloured(const std::string& text, ImU32 colour, float size, ImFont* font);
  void gap(float height);
  void separator();

  // Things to press.
  bool button(std::string_view id, const std::string& label, Look look = Look::Plain, bool enabled = true,
              float width = 0);
  bool row(std::string_view id, const std::string& label, const std::string& value, bool enabled = true);
  bool named_row(std::string_view id, const std::string& name, const std::string& about);  // the name is read first
  // Of a few; returns the one pressed, or −1. Wraps to several rows when the words are long. `chosen` −1: none yet.
  int segmented(std::string_view id, const std::string& label, std::span<const std::string> words, int chosen);
  bool chip(std::string_view id, const std::string& label, ImVec2 size, bool on);  // one of a segmented row
  int columns_of(std::span<const std::string> words) const;
  // A field that opens the keypad or the keyboard. `preset` is what is taken while it is empty.
  struct FieldLook {
    std::string label;
    std::string text;
    std::string preset;
    std::string error;
    bool active = false;
    bool required = false;
    bool bare = false;  // its label stands above the column already
    float width = 0;
  };
  bool field(std::string_view id, const FieldLook& look);
  // Free area that takes a press: a tile, a key. `draw` gets the area and whether the finger is on it.
  bool area(std::string_view id, Role role, const std::string& label, ImVec2 size,
            FunctionView<void(const Area&, bool pressed)> draw, bool enabled = true);
  // A part of a drawing that takes a press; the drawing stands already.
  bool tappable(std::string_view id, const std::string& label, const Area& where, bool chosen);

  // Text centred or left in an area, in the largest size up to `size` that fits on one line or wrapped, down to the
  // share `least` of it.
  void fit(const Area& area, const std::string& text, ImU32 colour, float size, ImFont* font, Anchor anchor = {},
           float least = 0.7f);

  void mark_chosen(bool chosen);             // the thing drawn last
  void name_last(const std::string& label);  // the same, where its words alone don't tell it from others

  // A card: content on its own surface with padding. Call begin_card, draw, end_card.
  void begin_card();
  void end_card();

  Item& publish(Role role, const std::string& label, ImVec2 min, ImVec2 max, ImGuiID id = 0,
                const std::string& value = {});

 private:
  bool row_beside(std::string_view id, const std::string& label, const std::string& value, float value_width,
                  bool enabled);
  bool row_below(std::string_view id, const std::string& label, const std::string& value, bool label_loud,
                 bool enabled);
  bool by_keyboard(ImGuiID id, const Area& where);
  static void keep_in_view(const Area& where);
  void wrapped(const std::string& text, ImU32 colour, float size, ImFont* font, Role role);
  ImU32 ground_here() const { return in_card_ ? theme_.card : theme_.ground; }

  const Theme& theme_;
  const Fonts& fonts_;
  float text_scale_;
  Items& items_;
  Focus& focus_;
  Gesture& gesture_;
  bool in_card_ = false;
  ImVec2 card_min_{};
  float card_width_ = 0;
};

// Line breaks at blanks only. Dear ImGui's own wrapping also breaks behind a point, which would part "0." from "0047".
std::string broken(ImFont* font, float size, const std::string& text, float room);
ImVec2 size_of(ImFont* font, float size, const std::string& text);
// The one place that draws words: whoever wrote them, they do no harm.
void write(ImDrawList& list, ImFont* font, float size, ImVec2 at, ImU32 colour, const std::string& text);

// Shape beside the word: tick in a circle, cross in a square, open diamond. Never colour alone.
void draw_verdict_mark(const Pen& pen, ImVec2 centre, float radius, Verdict verdict, ImU32 colour);

}  // namespace camside::screens
