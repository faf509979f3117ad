// Where the keyboard is. Tab and Shift+Tab walk through what can be pressed, in the order in which it was drawn; Enter
// and Space press it. A finger or a click puts the ring away again.
#pragma once

#include <imgui.h>

#include <string>
#include <string_view>
#include <utility>

#include "screens/widgets/item.hpp"

namespace camside::screens {

class Focus {
 public:
  // After ImGui::NewFrame, with what the last frame showed. `taken`: the keypad has the keys just now.
  void begin_frame(const Items& last, bool taken);
  bool is_at(ImGuiID id) const { return shown_ && id == at_; }
  bool takes_press(ImGuiID id);   // true once, in the frame after Enter
  bool takes_scroll(ImGuiID id);  // true once after the ring moved: bring this one into view
  // The field over which a real one is laid: it stays in view while it is typed in.
  void type_in(std::string field) { typed_in_ = std::move(field); }
  bool types_in(std::string_view field) const { return !field.empty() && field == typed_in_; }

 private:
  void walk(const Items& last, int by);

  ImGuiID at_ = 0;
  bool shown_ = false;
  bool press_ = false;
  bool scroll_ = false;
  std::string typed_in_;
};

}  // namespace camside::screens
