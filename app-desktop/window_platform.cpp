#include "window_platform.hpp"

#include <imgui.h>

#include <chrono>

#include "time_now.hpp"

namespace camside {

void DesktopPlatform::copy_text(const std::string& text) {
  ImGui::SetClipboardText(text.c_str());
}

double DesktopPlatform::seconds() const {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

std::string DesktopPlatform::local_time() const {
  return time_now();
}

}  // namespace camside
