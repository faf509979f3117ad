#include "screens/widgets/zoom.hpp"

#include <algorithm>

#include "screens/words.hpp"
#include "units/format.hpp"

namespace camside::screens {

namespace {

constexpr float largest = 6.0f;
constexpr float nearly_whole = 1.02f;  // our own choice: nobody sees the difference, and a pinch seldom ends at 1
constexpr float gap = 8.0f;

// The part of the frame that isn't scrolled away.
Area seen_of(const Area& frame) {
  return frame.within({ImGui::GetWindowDrawList()->GetClipRectMin(), ImGui::GetWindowDrawList()->GetClipRectMax()});
}

void draw_lens(const Pen& pen, ImVec2 c, ImU32 ink) {
  const float r = 9;
  const ImVec2 lens{c.x - 2, c.y - 2};
  pen.list->AddCircle(lens, r, ink, 0, pen.stroke);
  pen.line({lens.x + 0.71f * r, lens.y + 0.71f * r}, {c.x + 11, c.y + 11}, ink, pen.stroke * 1.4f);
  pen.line({lens.x - 4, lens.y}, {lens.x + 4, lens.y}, ink);
  pen.line({lens.x, lens.y - 4}, {lens.x, lens.y + 4}, ink);
}

// The drawing in its frame again.
void draw_whole(const Pen& pen, ImVec2 c, ImU32 ink) {
  const float corner = 6;
  for (const float x : {-1.0f, 1.0f}) {
    for (const float y : {-1.0f, 1.0f}) {
      const ImVec2 at{c.x + 11 * x, c.y + 11 * y};
      pen.line(at, {at.x - corner * x, at.y}, ink);
      pen.line(at, {at.x, at.y - corner * y}, ink);
    }
  }
  pen.list->AddCircle(c, 4, ink, 0, pen.stroke);
}

// True: it was pressed.
bool draw_button(Ui& ui, const Zoom& zoom, const std::string& id) {
  const bool back = zoom.next() == 1.0f;
  const std::string label = back ? words::whole_drawing() : words::larger();
  return ui.area(id + " zoom", Role::Button, label, {48, 48}, [&](const Area& at, bool pressed) {
    const Pen pen = ui.pen(ui.theme().ground);
    pen.list->AddRectFilled(at.min, at.max, pressed ? ui.theme().pressed : ui.theme().ground, 10);
    (back ? draw_whole : draw_lens)(pen, at.centre(), ui.theme().accent);
  });
}

}  // namespace

Area Zoom::area(const Area& frame) const {
  const ImVec2 min{frame.min.x + shift_.x * frame.width(), frame.min.y + shift_.y * frame.height()};
  return {min, {min.x + scale_ * frame.width(), min.y + scale_ * frame.height()}};
}

void Zoom::stretch(const Area& frame, const Stretch& by) {
  const float before = scale_;
  scale_ = std::clamp(scale_ * by.factor, 1.0f, largest);
  if (by.factor < 1.0f && scale_ < nearly_whole) scale_ = 1.0f;
  const auto moved = [&](float shift, float from, float to, float low, float size) {
    const float kept = (to - low) / size + (shift - (from - low) / size) * scale_ / before;
    return std::clamp(kept, 1.0f - scale_, 0.0f);
  };
  shift_ = {moved(shift_.x, by.from.x, by.to.x, frame.min.x, frame.width()),
            moved(shift_.y, by.from.y, by.to.y, frame.min.y, frame.height())};
}

float Zoom::next() const {
  return scale_ < 1.99f ? 2.0f : scale_ < 3.99f ? 4.0f : 1.0f;
}

void Zoom::step(const Area& frame) {
  stretch(frame, {frame.centre(), frame.centre(), next() / scale_});
}

float zoom_button_height() {
  return gap + 48;
}

void draw_enlargeable(Ui& ui, Zoom& zoom, const std::string& id, const std::string& name, ImVec2 size,
                      FunctionView<void(const Area&)> draw, ZoomButton button) {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const Area frame{at, {at.x + size.x, at.y + size.y}};
  const auto by = ui.gesture().over(ImGui::GetID(id.c_str()), seen_of(frame), !zoom.whole());
  if (by) zoom.stretch(frame, *by);
  ui.publish(Role::Drawing, name, frame.min, frame.max, 0, zoom.whole() ? "" : words::times_larger(zoom.scale()));
  if (!zoom.whole()) ImGui::PushClipRect(frame.min, frame.max, true);
  draw(zoom.area(frame));
  if (!zoom.whole()) ImGui::PopClipRect();
  const bool corner = button == ZoomButton::Corner;
  ImGui::SetCursorScreenPos({frame.max.x - 48, corner ? frame.min.y : frame.max.y + gap});
  if (draw_button(ui, zoom, id)) zoom.step(frame);
  if (!corner) return;
  ImGui::SetCursorScreenPos(frame.min);
  ImGui::Dummy(size);
}

}  // namespace camside::screens
