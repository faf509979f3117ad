// Camside on a page: the window, the store and the screens, and when a frame is due.
#pragma once

#include <optional>
#include <string>

#include "browser_log.hpp"
#include "browser_store.hpp"
#include "page_platform.hpp"
#include "screens/shell.hpp"
#include "storage/log_keeper.hpp"
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
  void stretch(float notches);
  void text_done();

  void loaded(int ticket, Answer answer, BrowserStore::Versions versions);
  void saved(int ticket, Answer answer);
  void log_told(const BrowserLog::News& news);
  void log_saved(Answer answer);
  void lasting(bool promised);
  void all_here();
  void kept(screens::Kept kept);
  void can_share(bool can) { platform_.can_share = can; }
  void address(std::string address) { platform_.address = std::move(address); }
  void file_came(screens::FileCome file);
  void file_given(bool given);

  const char* items();  // what is on screen, as JSON

 private:
  void draw();
  void changed();  // something came in: draw it

  Window window_;
  BrowserStore store_;
  BrowserLog browser_log_;
  storage::LogKeeper log_{browser_log_};
  PagePlatform platform_;
  std::optional<screens::Shell> shell_;
  std::string items_;
};

}  // namespace camside::page
