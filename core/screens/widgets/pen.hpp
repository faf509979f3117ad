// What the drawings draw with: colours by what they mean, text by size and anchor, dashed lines, arcs. The drawings
// know nothing of themes, windows or records; a screen hands them a pen, an area and the numbers that were judged.
#pragma once

#include <imgui.h>

#include <string>
#include <vector>

namespace camside::screens {

struct Ink {
  ImU32 ground = 0;  // what is drawn upon
  ImU32 text = 0;    // words and figures
  ImU32 quiet = 0;   // less important words
  ImU32 line = 0;    // axes, shafts, outlines
  ImU32 faint = 0;   // grid and bands, never the only carrier of a meaning
  ImU32 accent = 0;  // what was measured
  ImU32 within = 0;
  ImU32 outside = 0;
  ImU32 not_proven = 0;
};

struct Area {
  ImVec2 min;
  ImVec2 max;

  float width() const { return max.x - min.x; }
  float height() const { return max.y - min.y; }
  ImVec2 centre() const { return {(min.x + max.x) / 2, (min.y + max.y) / 2}; }
  Area within(const Area& other) const;  // what both hold; its height or width may be negative
  Area inset(float by) const { return {{min.x + by, min.y + by}, {max.x - by, max.y - by}}; }
};

// Where a text stands relative to its point.
struct Anchor {
  float x = 0.5f;  // 0: the point is the text's left edge, 1: its right edge
  float y = 0.5f;  // 0: its top, 1: its bottom
};

// A text as it was written, and what is seen of the place it stands in.
struct Written {
  std::string text;
  Area box;
  Area seen;
};

class Pen {
 public:
  static inline std::vector<Written>* watched = nullptr;  // for tests: every text written goes there too

  ImDrawList* list = nullptr;
  Ink ink;
  ImFont* words = nullptr;
  ImFont* bold = nullptr;
  float body = 16.0f;   // size of a label in pixels, text scale included
  float stroke = 2.0f;  // Sun draws heavier

  ImVec2 size_of(const std::string& text, float size, ImFont* font = nullptr) const;
  void write(ImVec2 at, Anchor anchor, const std::string& text, ImU32 colour, float size = 0,
             ImFont* font = nullptr) const;
  // The largest size up to `size` in which the text is no wider than `room`; too much of it stays readable, and wider.
  float size_within(float room, const std::string& text, float size = 0, ImFont* font = nullptr) const;
  // The same on a pill of ground colour, moved so that it stays inside `within`.
  void label(const Area& within, ImVec2 at, Anchor anchor, const std::string& text, ImU32 colour, float size = 0) const;
  void line(ImVec2 a, ImVec2 b, ImU32 colour, float width = 0) const;
  void dashed(ImVec2 a, ImVec2 b, ImU32 colour, float dash = 6.0f) const;
  void dashed_circle(ImVec2 centre, float radius, ImU32 colour, float dash = 6.0f) const;
  void ring(ImVec2 centre, float inner, float outer, ImU32 colour) const;
  void dot(ImVec2 at, float radius, ImU32 fill) const;      // a measured point, ringed with ground
  void cross(ImVec2 at, float radius, ImU32 colour) const;  // the second kind of point
  void arrow(ImVec2 from, ImVec2 to, ImU32 colour, float head = 9.0f) const;
};

// A colour seen through: 0 invisible, 1 itself.
ImU32 faded(ImU32 colour, float alpha);

// A step of 1, 2 or 5 times a power of ten that divides `span` into about `parts`.
double nice_step(double span, int parts);

}  // namespace camside::screens
