// One judge of what fingers mean. A touch that moves more than the slop is a scroll, or nothing when it goes sideways:
// the press is taken away from whatever is under it, so a drag that starts on a button presses nothing. A released
// scroll coasts by time, not by frame. Two fingers on a drawing enlarge it, anywhere else they do nothing; one finger
// moves a drawing that is enlarged. After a touch ends nothing stays hovered. Of the mouse only a drag over an enlarged
// drawing and Ctrl with the wheel over any are judged here; the rest is left to Dear ImGui.
#pragma once

#include <imgui.h>

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "screens/widgets/pen.hpp"

namespace camside::screens {

// What was at `from` shall be at `to`, and larger by the factor.
struct Stretch {
  ImVec2 from{};
  ImVec2 to{};
  float factor = 1.0f;
};

class Gesture {
 public:
  // Every finger on its own, as it comes; Dear ImGui hears of the first one only, as a mouse.
  void finger(std::int64_t id, ImVec2 at, bool down);
  // After ImGui::NewFrame, before any widget.
  void begin_frame();
  // A drawing says with every frame where it is seen and whether it is enlarged; what was done to it since the last.
  std::optional<Stretch> over(ImGuiID drawing, const Area& seen, bool enlarged);
  // While a scroll coasts or the pointer must still be lifted off, the next frame is wanted at once.
  bool wants_more() const { return coasting_ || lift_pending_; }
  bool scrolling() const { return state_ == State::Scroll; }

 private:
  enum class State : std::uint8_t { Idle, Pressed, Scroll, Sideways, Pan };
  struct Trace {
    float y = 0;
    double time = 0;
  };
  struct Finger {
    std::int64_t id = 0;
    ImVec2 at{};
  };
  struct Drawing {
    ImGuiID id = 0;
    Area seen{};
    bool enlarged = false;

    bool holds(ImVec2 at) const;
  };
  using Pair = std::array<ImVec2, 2>;

  void by_one(const ImGuiIO& io);
  void by_several(const ImGuiIO& io);
  void by_wheel(const ImGuiIO& io);
  const Drawing* drawing_at(ImVec2 at) const;
  void press(ImVec2 at);
  void move(ImVec2 at);
  State meaning_of(ImVec2 moved) const;
  void release(bool touch);
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
  bool ours_ = false;  // what is held down just now is judged here: a finger, or a mouse over an enlarged drawing
  float velocity_ = 0;
  std::array<Trace, 8> traces_{};
  std::size_t trace_count_ = 0;

  std::vector<Finger> fingers_;            // on the glass
  bool several_ = false;                   // there was a second one since the glass was clear
  std::optional<Pair> pair_;               // where the first two were in the last frame
  std::vector<Drawing> drawings_, drawn_;  // of the last frame, and of this one so far
  ImGuiID drawing_ = 0;                    // the one that is enlarged or moved
  std::optional<Stretch> stretch_;
};

}  // namespace camside::screens
