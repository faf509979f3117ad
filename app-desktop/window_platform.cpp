#include "window_platform.hpp"

#include <imgui.h>

#include <chrono>
#include <ctime>

#include "time_now.hpp"

namespace camside {

void DesktopPlatform::copy_text(const std::string& text) {
  ImGui::SetClipboardText(text.c_str());
}

double DesktopPlatform::seconds() const {
#ifdef CLOCK_BOOTTIME  // goes on while the machine sleeps
  timespec now{};
  if (clock_gettime(CLOCK_BOOTTIME, &now) == 0)
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
#endif
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

void DesktopPlatform::ring() {
  window_.ask_for_attention();
}

std::string DesktopPlatform::local_time() const {
  return time_now();
}

}  // namespace camside
