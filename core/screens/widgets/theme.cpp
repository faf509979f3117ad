#include "screens/widgets/theme.hpp"

#include <cmath>

namespace camside::screens {

namespace {

constexpr ImU32 rgb(unsigned hex) {
  return IM_COL32((hex >> 16) & 0xFF, (hex >> 8) & 0xFF, hex & 0xFF, 0xFF);
}

constexpr Theme shop{
    .ground = rgb(0x11161A),
    .card = rgb(0x1D252B),
    .pressed = rgb(0x2C3740),
    .text = rgb(0xF3F5F6),
    .quiet = rgb(0xC3CCD2),
    .line = rgb(0x85929C),
    .faint = rgb(0x313C45),
    .accent = rgb(0x8CCBF5),
    .on_accent = rgb(0x062233),
    .within = rgb(0x68D796),
    .outside = rgb(0xFF9A90),
    .not_proven = rgb(0xF4D06A),
    .stroke = 2.0f,
};

constexpr Theme sun{
    .ground = rgb(0xF4F2EC),
    .card = rgb(0xFFFFFF),
    .pressed = rgb(0xE2E4E0),
    .text = rgb(0x11161A),
    .quiet = rgb(0x404A52),
    .line = rgb(0x66717A),
    .faint = rgb(0xD8D6CE),
    .accent = rgb(0x0A456E),
    .on_accent = rgb(0xFFFFFF),
    .within = rgb(0x07502B),
    .outside = rgb(0x8F160F),
    .not_proven = rgb(0x5F4100),
    .stroke = 2.6f,
};

double linear(unsigned channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(ImU32 colour) {
  const unsigned r = (colour >> IM_COL32_R_SHIFT) & 0xFFu;
  const unsigned g = (colour >> IM_COL32_G_SHIFT) & 0xFFu;
  const unsigned b = (colour >> IM_COL32_B_SHIFT) & 0xFFu;
  return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
}

}  // namespace

const Theme& shop_theme() {
  return shop;
}
const Theme& sun_theme() {
  return sun;
}

std::array<ColourPair, 22> pairs_used(const Theme& t) {
  return {{
      {"text on ground", t.text, t.ground, 7},
      {"text on card", t.text, t.card, 7},
      {"text on a pressed control", t.text, t.pressed, 7},
      {"quiet text on ground", t.quiet, t.ground, 7},
      {"quiet text on card", t.quiet, t.card, 7},
      {"accent as text on ground", t.accent, t.ground, 7},
      {"accent as text on card", t.accent, t.card, 7},
      {"text on accent", t.on_accent, t.accent, 7},
      {"Within as text on ground", t.within, t.ground, 7},
      {"Within as text on card", t.within, t.card, 7},
      {"Outside as text on ground", t.outside, t.ground, 7},
      {"Outside as text on card", t.outside, t.card, 7},
      {"Not proven as text on ground", t.not_proven, t.ground, 7},
      {"Not proven as text on card", t.not_proven, t.card, 7},
      {"line on ground", t.line, t.ground, 3},
      {"line on card", t.line, t.card, 3},
      {"accent mark on ground", t.accent, t.ground, 3},
      {"accent mark on card", t.accent, t.card, 3},
      {"accent mark on pressed", t.accent, t.pressed, 3},
      {"Within mark on card", t.within, t.card, 3},
      {"Outside mark on card", t.outside, t.card, 3},
      {"Not proven mark on card", t.not_proven, t.card, 3},
  }};
}

double contrast(ImU32 front, ImU32 back) {
  const double a = luminance(front);
  const double b = luminance(back);
  return a > b ? (a + 0.05) / (b + 0.05) : (b + 0.05) / (a + 0.05);
}

ImU32 colour_of(const Theme& theme, Verdict verdict) {
  switch (verdict) {
    case Verdict::Within:
      return theme.within;
    case Verdict::Outside:
      return theme.outside;
    case Verdict::NotProven:
      break;
  }
  return theme.not_proven;
}

Ink ink_of(const Theme& t, ImU32 ground) {
  return {ground, t.text, t.quiet, t.line, t.faint, t.accent, t.within, t.outside, t.not_proven};
}

void apply_to_imgui(const Theme& theme) {
  ImGuiStyle& style = ImGui::GetStyle();
  style = ImGuiStyle();
  style.WindowPadding = {0, 0};
  style.ItemSpacing = {8, 8};
  style.WindowBorderSize = 0;
  style.ChildBorderSize = 0;
  style.FrameBorderSize = 0;
  style.ScrollbarSize = 6;
  style.ScrollbarRounding = 3;
  const auto set = [&](ImGuiCol which, ImU32 colour) { style.Colors[which] = ImGui::ColorConvertU32ToFloat4(colour); };
  set(ImGuiCol_WindowBg, theme.ground);
  set(ImGuiCol_ChildBg, IM_COL32(0, 0, 0, 0));
  set(ImGuiCol_Text, theme.text);
  set(ImGuiCol_ScrollbarBg, IM_COL32(0, 0, 0, 0));
  set(ImGuiCol_ScrollbarGrab, theme.line);
  set(ImGuiCol_ScrollbarGrabHovered, theme.line);
  set(ImGuiCol_ScrollbarGrabActive, theme.accent);
  set(ImGuiCol_NavCursor, theme.accent);
  set(ImGuiCol_FrameBg, theme.card);
  set(ImGuiCol_InputTextCursor, theme.accent);
}

}  // namespace camside::screens
