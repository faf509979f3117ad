// One judge of what a finger means. A touch that moves more than the slop is a scroll: the press is taken away from
// whatever is under it, so a drag that starts on a button presses nothing. A released scroll coasts by time, not by
// frame. After a touch ends nothing stays hovered. Mouse and wheel are left to Dear ImGui.
#pragma once

#include <imgui.h>

#include <array>
#include <cstddef>

namespace camside::screens {

class Gesture {
 public:
  // After ImGui::NewFrame, before any widget.
  void begin_frame();
  // While a scroll coasts or the pointer must still be lifted off, the next frame is wanted at once.
  bool wants_more() const { return coasting_ || lift_pending_; }
  bool scrolling() const { return state_ == State::Scroll; }

 private:
  enum class State { Idle, Pressed, Scroll };
  struct Trace {
    float y = 0;
    double time = 0;
  };

  void press(ImVec2 at);
  void move(ImVec2 at);
  void release();
  void coast();
  void scroll_by(float dy);
  void remember(float y);
  float speed() const;

  State state_ = State::Idle;
  ImVec2 start_{};
  ImVec2 last_{};
  ImGuiID window_ = 0;
  bool coasting_ = false;
  bool lift_pending_ = false;
  bool was_down_ = false;
  float velocity_ = 0;
  std::array<Trace, 8> traces_{};
  std::size_t trace_count_ = 0;
};

}  // namespace camside::screens
