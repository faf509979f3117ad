#include "screens/widgets/pen.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "screens/widgets/ui.hpp"

namespace camside::screens {

namespace {
constexpr float turn = 2.0f * std::numbers::pi_v<float>;

ImVec2 on_circle(ImVec2 centre, float radius, float angle) {
  return {centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)};
}
}  // namespace

Area Area::within(const Area& other) const {
  return {{std::max(min.x, other.min.x), std::max(min.y, other.min.y)},
          {std::min(max.x, other.max.x), std::min(max.y, other.max.y)}};
}

ImVec2 Pen::size_of(const std::string& text, float size, ImFont* font) const {
  ImFont* const face = font ? font : words;
  return face->CalcTextSizeA(size > 0 ? size : body, 1.0e9f, 0.0f, text.data(), text.data() + text.size());
}

float Pen::size_within(float room, const std::string& text, float size, ImFont* font) const {
  constexpr float least = 11.0f;  // our own choice
  const float wanted = size > 0 ? size : body;
  const float wide = size_of(text, wanted, font).x;
  return wide <= room ? wanted : std::max(std::min(least, wanted), std::floor(wanted * room / wide));
}

void Pen::write(ImVec2 at, Anchor anchor, const std::string& text, ImU32 colour, float size, ImFont* font) const {
  const ImVec2 box = size_of(text, size, font);
  const ImVec2 corner{std::round(at.x - anchor.x * box.x), std::round(at.y - anchor.y * box.y)};
  screens::write(*list, font ? font : words, size > 0 ? size : body, corner, colour, text);
  if (watched)
    watched->push_back(
        {text, {corner, {corner.x + box.x, corner.y + box.y}}, {list->GetClipRectMin(), list->GetClipRectMax()}});
}

void Pen::label(const Area& within, ImVec2 at, Anchor anchor, const std::string& text, ImU32 colour, float size) const {
  const ImVec2 box = size_of(text, size);
  const float pad = body * 0.25f;
  ImVec2 corner{at.x - anchor.x * box.x, at.y - anchor.y * box.y};
  corner.x = std::max(within.min.x + pad, std::min(corner.x, within.max.x - box.x - pad));
  corner.y = std::max(within.min.y, std::min(corner.y, within.max.y - box.y));
  list->AddRectFilled({corner.x - pad, corner.y}, {corner.x + box.x + pad, corner.y + box.y}, ink.ground, pad);
  write(corner, {0, 0}, text, colour, size);
}

void Pen::line(ImVec2 a, ImVec2 b, ImU32 colour, float width) const {
  list->AddLine(a, b, colour, width > 0 ? width : stroke);
}

void Pen::dashed(ImVec2 a, ImVec2 b, ImU32 colour, float dash) const {
  const float length = std::hypot(b.x - a.x, b.y - a.y);
  if (length <= 0) return;
  const ImVec2 unit{(b.x - a.x) / length, (b.y - a.y) / length};
  const auto pairs = static_cast<int>(std::ceil(length / (2 * dash)));
  for (int i = 0; i < pairs; ++i) {
    const float s = 2 * dash * static_cast<float>(i);
    const float e = std::min(s + dash, length);
    list->AddLine({a.x + unit.x * s, a.y + unit.y * s}, {a.x + unit.x * e, a.y + unit.y * e}, colour, stroke);
  }
}

void Pen::dashed_circle(ImVec2 centre, float radius, ImU32 colour, float dash) const {
  const int pairs = std::max(8, static_cast<int>(turn * radius / (2 * dash)));
  for (int i = 0; i < pairs; ++i) {
    const float a = turn * static_cast<float>(i) / static_cast<float>(pairs);
    // A chord: so short an arc that it has no sample of its own is left out by the path.
    list->AddLine(on_circle(centre, radius, a), on_circle(centre, radius, a + turn / static_cast<float>(2 * pairs)),
                  colour, stroke);
  }
}

void Pen::ring(ImVec2 centre, float inner, float outer, ImU32 colour) const {
  list->AddCircle(centre, (inner + outer) / 2, colour, 96, outer - inner);
}

void Pen::dot(ImVec2 at, float radius, ImU32 fill) const {
  list->AddCircleFilled(at, radius + stroke, ink.ground);
  list->AddCircleFilled(at, radius, fill);
}

void Pen::cross(ImVec2 at, float radius, ImU32 colour) const {
  list->AddCircleFilled(at, radius + stroke, ink.ground);
  list->AddLine({at.x - radius, at.y - radius}, {at.x + radius, at.y + radius}, colour, stroke);
  list->AddLine({at.x - radius, at.y + radius}, {at.x + radius, at.y - radius}, colour, stroke);
}

void Pen::arrow(ImVec2 from, ImVec2 to, ImU32 colour, float head) const {
  const float angle = std::atan2(to.y - from.y, to.x - from.x);
  line(from, to, colour);
  list->AddTriangleFilled(to, on_circle(to, head, angle + 0.42f * turn), on_circle(to, head, angle - 0.42f * turn),
                          colour);
}

ImU32 faded(ImU32 colour, float alpha) {
  const ImU32 full = (colour >> IM_COL32_A_SHIFT) & 0xFFu;
  const auto a = static_cast<ImU32>(std::lround(static_cast<float>(full) * std::clamp(alpha, 0.0f, 1.0f)));
  return (colour & ~IM_COL32_A_MASK) | (a << IM_COL32_A_SHIFT);
}

double nice_step(double span, int parts) {
  if (!(span > 0) || parts < 1) return 1.0;
  const double raw = span / parts;
  const double power = std::pow(10.0, std::floor(std::log10(raw)));
  for (const double m : {1.0, 2.0, 5.0})
    if (raw <= m * power) return m * power;
  return 10.0 * power;
}

}  // namespace camside::screens
