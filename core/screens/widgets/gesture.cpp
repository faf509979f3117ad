#include "screens/widgets/gesture.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cfloat>
#include <cmath>

namespace camside::screens {

namespace {
constexpr float slop = 10.0f;           // px a finger may wander and still tap
constexpr float time_constant = 0.32f;  // s, of coasting
constexpr float slowest = 24.0f;        // px/s, below it a coasting list stands
constexpr float wheel_factor = 1.25f;   // larger with each notch
constexpr double look_back = 0.1;       // s of movement that count for the speed

Stretch between(const std::array<ImVec2, 2>& before, const std::array<ImVec2, 2>& now) {
  const auto middle = [](const auto& p) { return ImVec2{(p[0].x + p[1].x) / 2, (p[0].y + p[1].y) / 2}; };
  const auto apart = [](const auto& p) { return std::max(1.0f, std::hypot(p[0].x - p[1].x, p[0].y - p[1].y)); };
  return {middle(before), middle(now), apart(now) / apart(before)};
}

// The innermost window under the finger that can scroll up and down.
ImGuiWindow* scrollable(ImGuiWindow* window) {
  while (window && window->ScrollMax.y <= 0) window = window->ParentWindow;
  return window;
}
}  // namespace

bool Gesture::Drawing::holds(ImVec2 at) const {
  return at.x >= seen.min.x && at.x < seen.max.x && at.y >= seen.min.y && at.y < seen.max.y;
}

void Gesture::finger(std::int64_t id, ImVec2 at, bool down) {
  const auto known = std::find_if(fingers_.begin(), fingers_.end(), [id](const Finger& f) { return f.id == id; });
  if (down && known != fingers_.end()) {
    known->at = at;
    return;
  }
  if (known != fingers_.end()) fingers_.erase(known);
  if (down) fingers_.push_back({id, at});
  several_ = several_ || fingers_.size() > 1;
  pair_.reset();
}

std::optional<Stretch> Gesture::over(ImGuiID drawing, const Area& seen, bool enlarged) {
  drawn_.push_back({drawing, seen, enlarged});
  return drawing == drawing_ ? stretch_ : std::nullopt;
}

const Gesture::Drawing* Gesture::drawing_at(ImVec2 at) const {
  for (const Drawing& d : drawings_)
    if (d.holds(at)) return &d;
  return nullptr;
}

void Gesture::begin_frame() {
  const ImGuiIO& io = ImGui::GetIO();
  drawings_.swap(drawn_);
  drawn_.clear();
  stretch_.reset();
  if (several_)
    by_several(io);
  else
    by_one(io);
  by_wheel(io);
  was_down_ = io.MouseDown[0];
}

void Gesture::by_one(const ImGuiIO& io) {
  const bool touch = io.MouseSource == ImGuiMouseSource_TouchScreen;
  const bool down = io.MouseDown[0];
  if (down && !was_down_) {
    const Drawing* const under = drawing_at(io.MousePos);
    ours_ = touch || (under && under->enlarged);
  }
  if (ours_ && down)
    was_down_ ? move(io.MousePos) : press(io.MousePos);
  else if (ours_ && was_down_)
    release(touch);
  else if (lift_pending_ && touch) {
    ImGui::GetIO().AddMousePosEvent(-FLT_MAX, -FLT_MAX);
    lift_pending_ = false;
  }
  if (!(ours_ && down) && coasting_) coast();
}

// Nothing is pressed and nothing scrolls until all fingers are lifted and Dear ImGui has heard so.
void Gesture::by_several(const ImGuiIO& io) {
  ImGui::ClearActiveID();
  state_ = State::Idle;
  coasting_ = false;
  if (fingers_.size() > 1) {
    const Pair now{fingers_[0].at, fingers_[1].at};
    const Drawing* const under = drawing_at(now[0]);
    if (!pair_)
      drawing_ = under && under->holds(now[1]) ? under->id : 0;
    else
      stretch_ = between(*pair_, now);
    pair_ = now;
  }
  if (!fingers_.empty() || io.MouseDown[0] || ImGui::GetCurrentContext()->InputEventsQueue.Size > 0) return;
  several_ = false;
  lift_pending_ = true;
}

void Gesture::by_wheel(const ImGuiIO& io) {
  if (!io.KeyCtrl || io.MouseWheel == 0) return;
  const Drawing* const under = drawing_at(io.MousePos);
  drawing_ = under ? under->id : 0;
  stretch_ = Stretch{io.MousePos, io.MousePos, std::pow(wheel_factor, io.MouseWheel)};
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
  const Drawing* const under = drawing_at(at);
  drawing_ = under && under->enlarged ? under->id : 0;
}

// The first movement that is more than the slop decides.
Gesture::State Gesture::meaning_of(ImVec2 moved) const {
  if (drawing_ != 0) return State::Pan;
  return std::abs(moved.x) > std::abs(moved.y) ? State::Sideways : State::Scroll;
}

void Gesture::move(ImVec2 at) {
  const ImVec2 moved{at.x - start_.x, at.y - start_.y};
  if (state_ == State::Pressed && std::hypot(moved.x, moved.y) > slop) {
    state_ = meaning_of(moved);
    last_ = at;
  }
  if (state_ != State::Pressed) ImGui::ClearActiveID();
  if (state_ == State::Pan) stretch_ = Stretch{last_, at, 1.0f};
  if (state_ == State::Scroll) {
    scroll_by(last_.y - at.y);
    remember(at.y);
  }
  last_ = at;
}

void Gesture::release(bool touch) {
  if (state_ != State::Pressed) ImGui::ClearActiveID();
  if (state_ == State::Scroll) {
    velocity_ = speed();
    coasting_ = std::abs(velocity_) > slowest;
  }
  state_ = State::Idle;
  lift_pending_ = touch;
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
