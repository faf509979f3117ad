// The two looks: Shop (dark) and Sun (light, heavier strokes). Every colour a screen uses is named here by its role,
// and tests/screens computes the contrast of every pair that is used: text at least 7:1, lines and marks at least 3:1.
#pragma once

#include <imgui.h>

#include <array>

#include "findings/outcome.hpp"
#include "screens/widgets/pen.hpp"

namespace camside::screens {

struct Theme {
  ImU32 ground;     // behind everything
  ImU32 card;       // what stands on it
  ImU32 pressed;    // a control under the finger
  ImU32 text;       // on ground, card, pressed
  ImU32 quiet;      // labels, helps; on ground and card
  ImU32 line;       // outlines of fields, axes
  ImU32 faint;      // separators, grid: decoration only
  ImU32 accent;     // the main action, the chosen one, what was measured
  ImU32 on_accent;  // text on accent
  ImU32 within;
  ImU32 outside;
  ImU32 not_proven;
  float stroke;
};

const Theme& shop_theme();
const Theme& sun_theme();

// A foreground and a background that meet on screen, and the contrast they need.
struct ColourPair {
  const char* what;
  ImU32 front;
  ImU32 back;
  double least;
};
std::array<ColourPair, 22> pairs_used(const Theme& theme);
double contrast(ImU32 front, ImU32 back);  // WCAG 2.2 relative luminance ratio, 1 to 21

ImU32 colour_of(const Theme& theme, Verdict verdict);
Ink ink_of(const Theme& theme, ImU32 ground);

void apply_to_imgui(const Theme& theme);

}  // namespace camside::screens
