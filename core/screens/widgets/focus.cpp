#include "screens/widgets/focus.hpp"

#include <utility>
#include <vector>

namespace camside::screens {

namespace {

bool pressed(ImGuiKey key) {
  return ImGui::IsKeyPressed(key, false);
}

std::vector<ImGuiID> stops(const Items& items) {
  std::vector<ImGuiID> ids;
  for (const Item& item : items)
    if (item.pressable() && item.enabled && item.role != Role::Text) ids.push_back(item.id);
  return ids;
}

}  // namespace

void Focus::begin_frame(const Items& last, bool taken) {
  if (ImGui::GetIO().MouseClicked[0]) shown_ = false;
  if (taken) return;
  if (ImGui::IsKeyPressed(ImGuiKey_Tab)) walk(last, ImGui::GetIO().KeyShift ? -1 : 1);
  if (pressed(ImGuiKey_Enter) || pressed(ImGuiKey_KeypadEnter) || pressed(ImGuiKey_Space)) press_ = shown_;
}

void Focus::walk(const Items& last, int by) {
  const std::vector<ImGuiID> ids = stops(last);
  const auto count = static_cast<int>(ids.size());
  if (count == 0) return;
  int now = by > 0 ? -1 : count;
  for (int i = 0; i < count; ++i)
    if (ids[static_cast<std::size_t>(i)] == at_) now = i;
  at_ = ids[static_cast<std::size_t>((now + by + count) % count)];
  shown_ = scroll_ = true;
}

bool Focus::takes_press(ImGuiID id) {
  return is_at(id) && std::exchange(press_, false);
}

bool Focus::takes_scroll(ImGuiID id) {
  return is_at(id) && std::exchange(scroll_, false);
}

}  // namespace camside::screens
