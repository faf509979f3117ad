// Camside in a window of its own.
#include <fmt/format.h>
#include <imgui.h>

#include <cstdio>

#include "window.hpp"

namespace {
constexpr int kFramesAfterInput = 3;  // until a press has shown everything it does
int no_window(const std::string& why) {
  fmt::print(stderr,
             "camside-desktop: no window can be opened here ({})\n"
             "Without a display use the command line (camside solve FILE) or the browser (scripts/run web)\n",
             why);
  return 1;
}
}  // namespace
int main() {
  ImGui::CreateContext();
  ImGui::GetIO().IniFilename = nullptr;
  camside::Window window;
  if (const std::string why = window.open("Camside", 480, 900); !why.empty()) return no_window(why);
  int left = kFramesAfterInput;
  int n = 0;
  while (!window.closing()) {
    if (window.sleep(left > 0 ? 0.0 : -1.0)) left = kFramesAfterInput;
    if (left == 0) continue;
    window.begin_frame();
    ImGui::Begin("x");
    ImGui::Text("hello %d", ++n);
    ImGui::Button("b");
    ImGui::End();
    window.end_frame();
    left = std::max(left - 1, window.events_waiting() ? 1 : 0);
    fprintf(stderr, "%d\n", n);
  }
}
