// Camside on a page: the window, the store and the screens, and when a frame is due.
#pragma once

#include <string>

#include "browser_store.hpp"
#include "page_platform.hpp"
#include "window.hpp"

namespace camside::page {

class App {
 public:
  bool open();

  double frame();  // seconds until the next frame is wanted, negative: none is
  void settle();   // draws until the input heard so far has had its effect
  void resize(const Size& size);
  void context(bool there);

  void insets(const screens::Insets& edges);
  void prefer_light(bool on);
  void prefer_still(bool on);
  void text(std::string text);
  void text_done();

  void loaded(int ticket, bool worked, BrowserStore::Versions versions);
  void saved(int ticket, int answer);

  const char* items();

 private:
  void draw();
  void changed();

  Window window_;
  BrowserStore store_;
  PagePlatform platform_;
  int frames_left_ = 0;
  std::string items_;
};

}  // namespace camside::page
