// Where the keyboard is. Tab and Shift+Tab walk through what can be pressed, in the order in which it was drawn; Enter
// and Space press it. A finger or a click puts the ring away again.
#pragma once

#include <imgui.h>

#include "screens/parts/item.hpp"

namespace camside::screens {

class Focus {
 public:
  // After ImGui::NewFrame, with what the last frame showed. `taken`: the keypad has the keys just now.
  void begin_frame(const Items& last, bool taken);
  bool is_at(ImGuiID id) const { return shown_ && id == at_; }
  bool takes_press(ImGuiID id);   // true once, in the frame after Enter
  bool takes_scroll(ImGuiID id);  // true once after the ring moved: bring this one into view

 private:
  void walk(const Items& last, int by);

  ImGuiID at_ = 0;
  bool shown_ = false;
  bool press_ = false;
  bool scroll_ = false;
};

}  // namespace camside::screens
