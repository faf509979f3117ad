#include "window_platform.hpp"

#include <imgui.h>

#include <chrono>
#include <ctime>

#include "disk_parts.hpp"
#include "log/log_file.hpp"
#include "time_now.hpp"

namespace camside {

namespace {
std::string words_of_failure(const std::string& path, const std::string& why) {
  return path + " can't be written: " + why;
}
}  // namespace

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

// Beside what has that name already.
void DesktopPlatform::give_file(const std::string& name, const std::string& bytes, bool /*share*/) {
  const std::size_t dot = name.rfind('.');
  std::string path = copies_ + "/" + name;
  for (int n = 2; size_of_file(path).value_or(std::nullopt); ++n)
    path = copies_ + "/" + name.substr(0, dot) + "-" + std::to_string(n) + name.substr(dot);
  const DiskDone done = write_synced(path, bytes);
  given_ = screens::FileGiven{done.has_value(), path, done ? "" : words_of_failure(path, done.error())};
}

void DesktopPlatform::file_dropped(const std::string& path) {
  screens::FileCome file{path.substr(path.rfind('/') + 1), "", ""};
  const auto size = size_of_file(path);
  if (size && *size && **size > records::largest_file) {
    file.trouble = "it is too large";
  } else {
    auto bytes = read_all(path);
    if (!bytes)
      file.trouble = bytes.error();
    else if (!*bytes)
      file.trouble = "there is no such file";
    else
      file.bytes = std::move(**bytes);
  }
  came_.push_back(std::move(file));
}

std::optional<screens::FileCome> DesktopPlatform::file_come() {
  if (came_.empty()) return std::nullopt;
  screens::FileCome first = std::move(came_.front());
  came_.pop_front();
  return first;
}

std::string DesktopPlatform::local_time() const {
  return time_now();
}

}  // namespace camside
