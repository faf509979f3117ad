// The desktop window: GLFW hears the events, OpenGL draws. It sleeps until something happens or a deadline comes.
//
// One unit of the screens is one pixel at 96 dots an inch, on every machine: a denser display gets the same layout with
// more pixels.
#pragma once

#include <string>
#include <utility>
#include <vector>

struct GLFWwindow;

namespace camside {

class Window {
 public:
  Window() = default;
  ~Window();
  Window(const Window&) = delete;
  Window& operator=(const Window&) = delete;

  // Empty when the window is there, else why not.
  std::string open(const char* title, int width, int height);

  bool closing() const;
  bool visible() const;        // not minimised
  bool sleep(double seconds);  // until something happens, at most so long (negative: no limit); true: events came
  static void wake();          // from any thread
  void ask_for_attention();    // the taskbar's mark, and the bell of the terminal it was started from
  void begin_frame();
  void end_frame();
  std::vector<std::string> take_dropped() { return std::exchange(dropped_, {}); }  // paths of files
  static bool events_waiting();  // Dear ImGui hands a press and a release out on frames of their own

 private:
  double units_per_position() const;
  void listen();
  void fit();

  GLFWwindow* window_ = nullptr;
  std::vector<std::string> dropped_;
};

}  // namespace camside
