// The page's canvas as a window: SDL2 hears the events, WebGL2 draws. Draws nothing by itself; a frame is drawn when
// the page asks for one.
#pragma once

#include <SDL.h>

namespace camside::page {

struct Size {
  float css_width = 0.0F, css_height = 0.0F;  // CSS pixels, the unit of all screens
  int pixel_width = 0, pixel_height = 0;      // device pixels
};

class Window {
 public:
  bool open();  // false: no WebGL2
  void resize(const Size& size);
  void context_lost();
  void context_restored();

  bool drawable() const { return has_context_ && size_.pixel_width > 0; }
  bool hear_events();  // true when there were any
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
