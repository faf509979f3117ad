#include "window_platform.hpp"

#include <fmt/format.h>
#include <imgui.h>

#include <chrono>
#include <cstdlib>
#include <ctime>

namespace camside {

void DesktopPlatform::copy_text(const std::string& text) {
  ImGui::SetClipboardText(text.c_str());
}

double DesktopPlatform::seconds() const {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

std::string DesktopPlatform::local_time() const {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  const long offset_min = local.tm_gmtoff / 60;
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}{}{:02}:{:02}", local.tm_year + 1900, local.tm_mon + 1,
                     local.tm_mday, local.tm_hour, local.tm_min, local.tm_sec, offset_min < 0 ? '-' : '+',
                     std::labs(offset_min) / 60, std::labs(offset_min) % 60);
}

}  // namespace camside
