// A drawing seen larger through the frame it stands in. It is the same drawing, made for a larger area, so that lines
// move apart and words keep their size. It can't be moved so far that it leaves its frame.
//
// Enlarged by two fingers or by Ctrl and the wheel (gesture.hpp), and by the button that stands with it.
#pragma once

#include <cstdint>
#include <string>

#include "base/function_view.hpp"
#include "screens/widgets/gesture.hpp"
#include "screens/widgets/ui.hpp"

namespace camside::screens {

class Zoom {
 public:
  bool whole() const { return scale_ == 1.0f; }
  float scale() const { return scale_; }
  Area area(const Area& frame) const;  // where the whole drawing would be seen
  void stretch(const Area& frame, const Stretch& by);
  void step(const Area& frame);  // to `next`
  float next() const;            // 2 times, 4 times, whole again

 private:
  float scale_ = 1.0f;
  ImVec2 shift_{};  // from the frame's corner to the drawing's, in widths and heights of the frame; never positive
};

enum class ZoomButton : std::uint8_t { Below, Corner };  // Corner: the upper right one, for drawings that leave it free
float zoom_button_height();                              // with what parts it from the drawing
// The drawing in its frame where the cursor stands, and its button at the right. `draw` gets the area to draw
// into.
void draw_enlargeable(Ui& ui, Zoom& zoom, const std::string& id, const std::string& name, ImVec2 frame,
                      FunctionView<void(const Area&)> draw, ZoomButton button = ZoomButton::Below);

}  // namespace camside::screens
