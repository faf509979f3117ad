#include "screens/parts/gesture.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cfloat>
#include <cmath>

namespace camside::screens {

namespace {
constexpr float slop = 10.0f;           // px a finger may wander and still tap
constexpr float time_constant = 0.32f;  // s, of coasting
constexpr float slowest = 24.0f;        // px/s, below it a coasting list stands
constexpr double look_back = 0.1;       // s of movement that count for the speed

// The innermost window under the finger that can scroll up and down.
ImGuiWindow* scrollable(ImGuiWindow* window) {
  while (window && window->ScrollMax.y <= 0) window = window->ParentWindow;
  return window;
}
}  // namespace

void Gesture::begin_frame() {
  const ImGuiIO& io = ImGui::GetIO();
  const bool touch = io.MouseSource == ImGuiMouseSource_TouchScreen;
  const bool down = touch && io.MouseDown[0];
  if (down && !was_down_)
    press(io.MousePos);
  else if (down)
    move(io.MousePos);
  else if (was_down_)
    release();
  else if (lift_pending_ && touch) {
    ImGui::GetIO().AddMousePosEvent(-FLT_MAX, -FLT_MAX);
    lift_pending_ = false;
  }
  if (!down && coasting_) coast();
  was_down_ = down;
}

void Gesture::press(ImVec2 at) {
  state_ = State::Pressed;
  start_ = last_ = at;
  trace_count_ = 0;
  remember(at.y);
  // A finger on a moving list stops it and means nothing else.
  if (coasting_ && std::abs(velocity_) > 200.0f) state_ = State::Scroll;
  coasting_ = false;
  ImGuiWindow* const window = scrollable(ImGui::GetCurrentContext()->HoveredWindow);
  window_ = window ? window->ID : 0;
}

void Gesture::move(ImVec2 at) {
  const float moved = std::hypot(at.x - start_.x, at.y - start_.y);
  if (state_ == State::Pressed && moved > slop) {
    state_ = State::Scroll;
    last_ = at;
  }
  if (state_ == State::Scroll) {
    ImGui::ClearActiveID();
    scroll_by(last_.y - at.y);
    remember(at.y);
  }
  last_ = at;
}

void Gesture::release() {
  if (state_ == State::Scroll) {
    ImGui::ClearActiveID();
    velocity_ = speed();
    coasting_ = std::abs(velocity_) > slowest;
  }
  state_ = State::Idle;
  lift_pending_ = true;
}

void Gesture::coast() {
  const float dt = std::min(ImGui::GetIO().DeltaTime, 0.05f);
  scroll_by(velocity_ * dt);
  velocity_ *= std::exp(-dt / time_constant);
  if (std::abs(velocity_) < slowest) coasting_ = false;
}

void Gesture::scroll_by(float dy) {
  ImGuiWindow* const window = ImGui::FindWindowByID(window_);
  if (!window) return;
  const float wanted = std::clamp(window->Scroll.y + dy, 0.0f, window->ScrollMax.y);
  if (wanted == window->Scroll.y) coasting_ = coasting_ && dy == 0.0f;  // at an end nothing coasts on
  window->Scroll.y = wanted;
}

void Gesture::remember(float y) {
  traces_[trace_count_ % traces_.size()] = {y, ImGui::GetTime()};
  ++trace_count_;
}

float Gesture::speed() const {
  const std::size_t kept = std::min(trace_count_, traces_.size());
  if (kept < 2) return 0;
  const Trace& newest = traces_[(trace_count_ - 1) % traces_.size()];
  const Trace* oldest = &newest;
  for (std::size_t i = 0; i < kept; ++i)
    if (newest.time - traces_[i].time <= look_back && traces_[i].time < oldest->time) oldest = &traces_[i];
  const double span = newest.time - oldest->time;
  const bool still = ImGui::GetTime() - newest.time > look_back;  // the finger rested before it left
  return span > 0 && !still ? static_cast<float>(static_cast<double>(oldest->y - newest.y) / span) : 0.0f;
}

}  // namespace camside::screens
