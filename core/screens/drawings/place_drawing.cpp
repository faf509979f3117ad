#include "screens/drawings/place_drawing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <string>

#include "screens/widgets/ui.hpp"

namespace camside::screens {

using look_over::LookAt;

namespace {

constexpr float lean = 22.5f * std::numbers::pi_v<float> / 180.0f;  // of each barrel: 45° between them
constexpr float turn = 2.0f * std::numbers::pi_v<float>;

// ---- the engine, crank at the origin, front to the right, up is up; lengths in crankcase radii, about

constexpr float left_end = -4.2f;
constexpr float right_end = 4.2f;
constexpr float top_end = 6.4f;
constexpr float low_end = -2.2f;

class Sketch {
 public:
  Sketch(const Pen& pen, const Area& area)
      : pen_(pen),
        unit_(std::min(area.width() / (right_end - left_end), area.height() / (top_end - low_end))),
        origin_{area.centre().x, area.min.y + top_end * unit_} {}

  ImVec2 at(float x, float y) const { return {origin_.x + x * unit_, origin_.y - y * unit_}; }
  // Along a barrel: `side` -1 the rear one, +1 the front one; `out` from the crank, `across` from the barrel's axis.
  ImVec2 along(float side, float out, float across) const {
    return at(side * (out * std::sin(lean) + across * std::cos(lean)), out * std::cos(lean) - across * std::sin(lean));
  }
  float length(float l) const { return l * unit_; }
  const Pen& pen() const { return pen_; }

  void shape(std::initializer_list<ImVec2> corners, bool marked) const {
    const auto count = static_cast<int>(corners.size());
    pen_.list->AddConvexPolyFilled(corners.begin(), count, pen_.ink.ground);
    if (marked) pen_.list->AddConvexPolyFilled(corners.begin(), count, faded(pen_.ink.accent, mark_fill));
    pen_.list->AddPolyline(corners.begin(), count, outline(marked), ImDrawFlags_Closed, width(marked));
  }
  void round(ImVec2 centre, float radius, bool marked) const {
    pen_.list->AddCircleFilled(centre, length(radius), pen_.ink.ground);
    if (marked) pen_.list->AddCircleFilled(centre, length(radius), faded(pen_.ink.accent, mark_fill));
    pen_.list->AddCircle(centre, length(radius), outline(marked), 0, width(marked));
  }
  ImU32 outline(bool marked) const { return marked ? pen_.ink.accent : pen_.ink.line; }
  float width(bool marked) const { return marked ? 1.6f * pen_.stroke : pen_.stroke; }

 private:
  static constexpr float mark_fill = 0.3f;
  Pen pen_;
  float unit_;
  ImVec2 origin_;
};

bool among(LookAt place, std::initializer_list<LookAt> places) {
  return std::find(places.begin(), places.end(), place) != places.end();
}

// A stretch of a barrel's outline, from `from` to `to` out of the crank's centre.
void draw_stretch(const Sketch& s, float side, float from, float to, float half, bool marked) {
  s.shape({s.along(side, from, -half), s.along(side, to, -half), s.along(side, to, half), s.along(side, from, half)},
          marked);
}

constexpr float base = 2.6f;
constexpr float head = 4.4f;
constexpr float box = 5.4f;
constexpr float box_end = 6.2f;

void draw_barrel(const Sketch& s, float side, LookAt place) {
  const bool warm = place == LookAt::Barrels;
  draw_stretch(s, side, base, head, 0.93f, warm);
  for (int fin = 1; fin < 6; ++fin) {
    const float out = base + (head - base) * static_cast<float>(fin) / 6.0f;
    s.pen().line(s.along(side, out, -0.93f), s.along(side, out, 0.93f), s.outline(warm), 1.0f);
  }
  draw_stretch(s, side, head, box, 1.0f, false);
  draw_stretch(s, side, box, box_end, 1.08f, place == LookAt::BoxesAndTubes);
  const bool wet = place == LookAt::CoverAndBase;
  if (wet) s.pen().line(s.along(side, base, -1.0f), s.along(side, base, 1.0f), s.pen().ink.accent, 4 * s.pen().stroke);
}

// Two of them stand before each barrel, from the lifters to the head.
void draw_tubes(const Sketch& s, float side, LookAt place) {
  const bool wet = place == LookAt::BoxesAndTubes;
  for (const float off : {0.28f, 0.72f}) {
    const ImVec2 low = s.at(side * off * 1.55f, 1.85f);
    const ImVec2 high = s.along(side, head + 0.45f, off - 0.5f);
    s.pen().line(low, high, s.pen().ink.ground, s.length(0.34f) + 2 * s.pen().stroke);
    s.pen().line(low, high, s.outline(wet), s.length(0.3f));
    if (!wet) s.pen().line(low, high, s.pen().ink.ground, std::max(1.0f, s.length(0.3f) - 2 * s.pen().stroke));
  }
}

void draw_lifters(const Sketch& s, float side, LookAt place) {
  s.shape({s.at(side * 0.1f, 1.2f), s.at(side * 0.1f, 2.1f), s.at(side * 1.4f, 2.0f), s.at(side * 1.5f, 1.2f)},
          place == LookAt::Lifters);
}

ImVec2 case_centre(const Sketch& s) {
  return s.at(0, 0.05f);
}

void draw_case(const Sketch& s, LookAt place) {
  const bool marked = place == LookAt::BottomEnd;
  s.round(case_centre(s), 2.1f, marked);
  const Pen& pen = s.pen();
  if (!marked) return;
  pen.dashed_circle(case_centre(s), s.length(1.85f), pen.ink.accent);
}

// Arcs as of something heard.
void draw_sound(const Sketch& s) {
  const Pen& pen = s.pen();
  for (const float r : {2.75f, 3.2f, 3.65f}) {
    for (const float middle : {0.0f, 0.5f * turn}) {
      pen.list->PathArcTo(case_centre(s), s.length(r), middle - 0.06f * turn, middle + 0.06f * turn);
      pen.list->PathStroke(pen.ink.accent, 0, 1.4f * pen.stroke);
    }
  }
}

void draw_cover(const Sketch& s, LookAt place) {
  s.round(case_centre(s), 1.6f, among(place, {LookAt::CamSide, LookAt::CoverAndBase}));
  const bool screws = place == LookAt::CoverScrews;
  constexpr int count = 8;
  for (int i = 0; i < count; ++i) {
    const float a = turn * (static_cast<float>(i) + 0.5f) / count;
    const ImVec2 c = s.at(1.32f * std::cos(a), 0.05f + 1.32f * std::sin(a));
    if (screws) s.pen().list->AddCircleFilled(c, s.length(0.2f), s.pen().ink.accent);
    s.pen().list->AddCircle(c, s.length(screws ? 0.2f : 0.12f), s.outline(screws), 0, s.width(screws));
  }
  if (among(place, {LookAt::CamSide, LookAt::BottomEnd})) draw_sound(s);
}

void draw_air_filter(const Sketch& s, LookAt place) {
  const ImVec2 c = s.at(0, 4.35f);
  s.round(c, 0.85f, place == LookAt::AirFilter);
  s.pen().list->AddCircle(c, s.length(0.5f), s.outline(place == LookAt::AirFilter), 0, s.pen().stroke);
}

void draw_engine(const Pen& pen, const Area& area, LookAt place) {
  const Sketch s(pen, area);
  draw_case(s, place);
  for (const float side : {-1.0f, 1.0f}) draw_barrel(s, side, place);
  for (const float side : {-1.0f, 1.0f}) draw_tubes(s, side, place);
  draw_air_filter(s, place);
  for (const float side : {-1.0f, 1.0f}) draw_lifters(s, side, place);
  draw_cover(s, place);
}

const char* place_name(LookAt place) {
  switch (place) {
    case LookAt::Barrels:
      return "A hand on both barrels";
    case LookAt::BottomEnd:
      return "Bottom end: by ear";
    case LookAt::CamSide:
      return "Cam cover: by ear";
    case LookAt::CoverScrews:
      return "Screws of the cam cover";
    case LookAt::CoverAndBase:
      return "Cam cover and cylinder bases";
    case LookAt::Lifters:
      return "Lifters, above the cams";
    case LookAt::BoxesAndTubes:
      return "Rocker boxes and pushrod tubes";
    case LookAt::AirFilter:
      return "Air filter";
    case LookAt::OilOnARag:
    case LookAt::Shoes:
      break;
  }
  return "";
}

// ---- several side by side: a good one and bad ones

struct Sample {
  const char* name;
  bool good;
  void (*draw)(const Pen& pen, const Area& area);
};

template <std::size_t n>
void draw_samples(const Pen& pen, const Area& area, const std::array<Sample, n>& samples) {
  const float each = area.width() / static_cast<float>(n);
  const float words = 2.6f * pen.body;
  for (std::size_t i = 0; i < n; ++i) {
    const float x = area.min.x + each * static_cast<float>(i);
    const Area one{{x, area.min.y}, {x + each, area.max.y - words}};
    samples[i].draw(pen, one.inset(0.07f * each));
    const bool good = samples[i].good;
    draw_verdict_mark(pen, {one.centre().x, one.max.y + 0.5f * pen.body}, 0.6f * pen.body,
                      good ? Verdict::Within : Verdict::Outside, good ? pen.ink.within : pen.ink.outside);
    pen.write({one.centre().x, area.max.y}, {0.5f, 1.0f}, samples[i].name, pen.ink.text,
              pen.size_within(each - 4, samples[i].name));
  }
}

// A shoe from the side: its backing below, the face that the chain runs on above. 0 to 1 along it and up from it.
class Shoe {
 public:
  Shoe(const Pen& pen, const Area& area)
      : pen_(pen),
        wide_(area.width()),
        high_(std::min(0.55f * area.width(), 0.8f * area.height())),
        low_left_{area.min.x, area.centre().y + 0.5f * high_} {}

  ImVec2 at(float along, float up) const { return {low_left_.x + along * wide_, low_left_.y - up * high_}; }
  static float face(float along) { return 0.95f - 1.6f * (along - 0.5f) * (along - 0.5f); }

  // The plastic between two places, under the face or as low as `worn` says.
  template <class Worn>
  void body(float from, float to, Worn&& worn) const {
    constexpr int pieces = 24;
    for (int i = 0; i < pieces; ++i) {
      const float a = from + (to - from) * static_cast<float>(i) / pieces;
      const float b = from + (to - from) * static_cast<float>(i + 1) / pieces;
      pen_.list->AddQuadFilled(at(a, backing), at(a, worn(a)), at(b, worn(b)), at(b, backing),
                               faded(pen_.ink.quiet, 0.45f));
      pen_.line(at(a, worn(a)), at(b, worn(b)), pen_.ink.text);
    }
    pen_.line(at(from, backing), at(from, worn(from)), pen_.ink.text);
    pen_.line(at(to, backing), at(to, worn(to)), pen_.ink.text);
  }
  void backing_bar() const { pen_.list->AddRectFilled(at(0, backing), at(1, 0), pen_.ink.line, 2); }

  static constexpr float backing = 0.2f;

 private:
  const Pen& pen_;
  float wide_;
  float high_;
  ImVec2 low_left_;
};

void draw_whole_shoe(const Pen& pen, const Area& area) {
  const Shoe shoe(pen, area);
  shoe.body(0, 1, Shoe::face);
  shoe.backing_bar();
}
void draw_stepped_shoe(const Pen& pen, const Area& area) {
  const Shoe shoe(pen, area);
  shoe.body(0, 1, [](float a) { return a > 0.3f && a < 0.8f ? Shoe::face(a) - 0.33f : Shoe::face(a); });
  shoe.backing_bar();
}
void draw_cracked_shoe(const Pen& pen, const Area& area) {
  const Shoe shoe(pen, area);
  shoe.body(0, 1, Shoe::face);
  shoe.backing_bar();
  constexpr std::array<ImVec2, 5> crack{{{0.6f, 0.93f}, {0.52f, 0.74f}, {0.6f, 0.58f}, {0.5f, 0.4f}, {0.56f, 0.2f}}};
  for (std::size_t i = 1; i < crack.size(); ++i)
    pen.line(shoe.at(crack[i - 1].x, crack[i - 1].y), shoe.at(crack[i].x, crack[i].y), pen.ink.outside,
             1.6f * pen.stroke);
}
void draw_broken_shoe(const Pen& pen, const Area& area) {
  const Shoe shoe(pen, area);
  shoe.body(0, 0.58f, [](float a) { return a > 0.48f ? Shoe::face(a) - 3.0f * (a - 0.48f) : Shoe::face(a); });
  shoe.backing_bar();
  pen.line(shoe.at(0.62f, Shoe::backing), shoe.at(1, Shoe::backing), pen.ink.outside, 2 * pen.stroke);
}

// ---- a drop of oil on a white rag

void draw_drop(const Pen& pen, const Area& area) {
  const float side = std::min(area.width(), area.height());
  const ImVec2 c = area.centre();
  pen.list->AddRect({c.x - side / 2, c.y - side / 2}, {c.x + side / 2, c.y + side / 2}, pen.ink.line, 4, 0, pen.stroke);
  pen.list->AddCircleFilled(c, 0.36f * side, faded(pen.ink.not_proven, 0.35f));
}

// As seeds lie in a sunflower: even, and alike in every picture.
template <class Bit>
void scatter(const Area& area, Bit&& bit) {
  const float r = 0.3f * std::min(area.width(), area.height());
  for (int i = 0; i < 9; ++i) {
    const auto k = static_cast<float>(i);
    const float out = r * std::sqrt((k + 0.5f) / 9.0f);
    bit(ImVec2{area.centre().x + out * std::cos(2.4f * k), area.centre().y + out * std::sin(2.4f * k)});
  }
}

void draw_glitter(const Pen& pen, const Area& area) {
  draw_drop(pen, area);
  const float r = 0.22f * pen.body;
  scatter(area, [&](ImVec2 c) {
    pen.line({c.x - r, c.y}, {c.x + r, c.y}, pen.ink.text, 1.5f);
    pen.line({c.x, c.y - r}, {c.x, c.y + r}, pen.ink.text, 1.5f);
  });
}
void draw_crumbs(const Pen& pen, const Area& area) {
  draw_drop(pen, area);
  const float r = 0.16f * pen.body;
  scatter(area, [&](ImVec2 c) {
    pen.list->AddRectFilled({c.x - r, c.y - r}, {c.x + 1.5f * r, c.y + r}, pen.ink.text);
  });
}

constexpr std::array<Sample, 4> shoes{{{"whole", true, draw_whole_shoe},
                                       {"step", false, draw_stepped_shoe},
                                       {"crack", false, draw_cracked_shoe},
                                       {"piece gone", false, draw_broken_shoe}}};
constexpr std::array<Sample, 3> drops{
    {{"clean", true, draw_drop}, {"glitter: metal", false, draw_glitter}, {"crumbs: shoe", false, draw_crumbs}}};

}  // namespace

float place_drawing_height(const Pen& pen, float width, LookAt place) {
  if (place == LookAt::Shoes) return std::min(0.16f * width, 6 * pen.body) + 3.2f * pen.body;
  if (place == LookAt::OilOnARag) return std::min(0.25f * width, 6 * pen.body) + 3.2f * pen.body;
  return std::min(0.48f * width, 12.0f * pen.body) + 1.6f * pen.body;
}

void draw_place(const Pen& pen, const Area& area, LookAt place) {
  if (place == LookAt::Shoes) return draw_samples(pen, area, shoes);
  if (place == LookAt::OilOnARag) return draw_samples(pen, area, drops);
  const float words = 1.6f * pen.body;
  draw_engine(pen, {area.min, {area.max.x, area.max.y - words}}, place);
  pen.write({area.centre().x, area.max.y}, {0.5f, 1.0f}, place_name(place), pen.ink.text,
            pen.size_within(area.width(), place_name(place)));
}

}  // namespace camside::screens
