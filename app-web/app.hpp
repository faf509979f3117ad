// Camside on a page: the window, the store and the screens, and when a frame is due.
#pragma once

#include <optional>
#include <string>

#include "browser_store.hpp"
#include "page_platform.hpp"
#include "screens/shell.hpp"
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
  void text(std::string text);  // of the real text field, with every letter
  void paste(const std::string& text);
  void text_done();

  void loaded(int ticket, bool worked, BrowserStore::Versions versions);
  void saved(int ticket, int answer);
  void kept(screens::Kept kept);

  const char* items();  // what is on screen, as JSON

 private:
  void draw();
  void changed();  // something came in: draw it

  Window window_;
  BrowserStore store_;
  PagePlatform platform_;
  std::optional<screens::Shell> shell_;
  std::string items_;
};

}  // namespace camside::page
