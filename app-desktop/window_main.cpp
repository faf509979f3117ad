// Camside in a window of its own. Sleeps while nothing happens.
#include <fmt/format.h>
#include <imgui.h>

#include <cstdio>
#include <cstdlib>
#include <string>

#include "disk_log.hpp"
#include "disk_store.hpp"
#include "load.hpp"
#include "screens/shell.hpp"
#include "storage/log_keeper.hpp"
#include "window.hpp"
#include "window_platform.hpp"

namespace {

using camside::Window;
using camside::screens::Shell;

constexpr int kWidth = 1180, kHeight = 860;
constexpr double kNow_s = 0.0;
constexpr double kForever_s = -1.0;

int no_window(const std::string& why) {
  fmt::print(stderr,
             "camside-desktop: no window can be opened here ({})\n"
             "Without a display use the command line (camside solve FILE) or the browser (scripts/run web)\n",
             why);
  return 1;
}

int no_folder() {
  fmt::print(stderr, "camside-desktop: neither XDG_DATA_HOME nor HOME is set, so there is nowhere to keep records\n");
  return 1;
}

double rest_before_next_frame(const Window& window, const Shell& shell) {
  if (window.visible() && shell.wants_more_frames()) return kNow_s;
  return shell.next_wake().value_or(kForever_s);
}

void run(Window& window, Shell& shell, camside::DesktopPlatform& platform) {
  while (!window.closing()) {
    if (window.sleep(rest_before_next_frame(window, shell))) shell.wake();
    shell.check_timers();
    for (const std::string& path : window.take_dropped()) platform.file_dropped(path);
    if (!window.visible()) continue;
    window.begin_frame();
    shell.draw();
    window.end_frame();
  }
}

}  // namespace

// usage: camside-desktop [FILE...]; a copy of a log named here is offered to be taken in, like one dropped into the
// window
int main(int count, char** arguments) {
  const std::string folder = camside::default_data_folder();
  if (folder.empty()) return no_folder();
  ImGui::CreateContext();
  ImGui::GetIO().IniFilename = nullptr;
  Window window;
  if (const std::string why = window.open("Camside", kWidth, kHeight); !why.empty()) return no_window(why);
  const auto fonts = camside::fonts::load();
  const char* const home = std::getenv("HOME");
  camside::DesktopPlatform platform(window, home ? home : folder);
  for (int i = 1; i < count; ++i) platform.file_dropped(arguments[i]);
  camside::DiskStore store(folder, Window::wake);
  camside::DiskLog disk_log(folder, Window::wake);
  camside::storage::LogKeeper log(disk_log);
  Shell shell(store, platform, {fonts.words, fonts.bold}, &log);
  run(window, shell, platform);
  return 0;
}
