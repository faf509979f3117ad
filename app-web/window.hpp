// The page's canvas as a window: SDL2 hears the events, WebGL2 draws. Draws nothing by itself; a frame is drawn when
// the page asks for one.
#pragma once

#include <SDL.h>

#include <functional>

namespace camside::page {

struct Size {
  float css_width = 0.0F, css_height = 0.0F;  // CSS pixels, the unit of all screens
  int pixel_width = 0, pixel_height = 0;      // device pixels
};

struct Finger {
  SDL_FingerID id = 0;
  float x = 0.0F, y = 0.0F;  // CSS pixels
  bool down = false;         // else it was lifted
};

class Window {
 public:
  bool open();  // false: no WebGL2
  void resize(const Size& size);
  void context_lost();
  void context_restored();

  bool drawable() const { return has_context_ && size_.pixel_width > 0; }
  // True when there were any. Fingers come one by one beside the mouse that SDL2 makes of the first.
  bool hear_events(const std::function<void(const Finger&)>& finger);
  void begin_frame();
  void end_frame();
  bool events_waiting() const;  // Dear ImGui hands a press and a release out on frames of their own

 private:
  void show_cursor();

  SDL_Window* window_ = nullptr;
  Size size_;
  bool has_context_ = false;
  int cursor_ = -1;
};

}  // namespace camside::page
