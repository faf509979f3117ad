// What the screens need of the machine they run on. The desktop and the page each implement it once; tests implement it
// with nothing behind it. One unit of the screens is a CSS pixel, on the desktop a pixel at 96 dots an inch; the apps
// turn device pixels into units, so no screen knows about density.
#pragma once

#include <functional>
#include <optional>
#include <string>

namespace camside::screens {

// How far to stay off the edges: notches, home bars, an open phone keyboard.
struct Insets {
  float top = 0.0F, right = 0.0F, bottom = 0.0F, left = 0.0F;
};

struct TextRequest {
  std::string field;  // which drawn one it is laid over: the id that it has in its form
  std::string label;  // read out by a screen reader
  std::string text;
  int limit = 200;                           // characters
  std::function<void(std::string)> changed;  // with every letter; Escape gives the first text back
  std::function<void()> done;                // exactly once
};

// Kept on the device so that it opens without signal: a page that was visited. Programs that are installed leave it
// empty.
struct Kept {
  bool kept = false;
  bool update_ready = false;  // a newer version waits until its owner takes it
  std::string version;
};

// Files leave by the share sheet or are saved (a download, a folder); they come by a picker, or are dropped anywhere.
struct FileWays {
  bool share = false, save = false, pick = false;
};
struct FileCome {
  std::string name;
  std::string bytes;
  std::string trouble;  // why it can't be read; empty: it was
};
struct FileGiven {  // neither: its owner thought better of it
  bool given = false;
  std::string where;  // the path, where that is known
  std::string trouble;
};

struct TextPlace {
  float x = 0.0F, y = 0.0F, width = 0.0F, height = 0.0F;
};

class Platform {
 public:
  virtual ~Platform() = default;

  // A real text field laid over the drawn one, with the phone's own keyboard. Call it in the frame in which the finger
  // is lifted, else a phone shows no keyboard. False: there is none here, use Dear ImGui's own.
  virtual bool open_text_field(const TextRequest& request) = 0;
  virtual void close_text_field() = 0;
  // The `field` of the one that is open, empty: none is. What it is laid over moves when the page is scrolled, turned,
  // or made lower by the phone's keyboard; the shell says where it stands.
  virtual std::string text_field_open() const { return {}; }
  virtual void place_text_field(const TextPlace& /*place*/) {}

  virtual void copy_text(const std::string& text) = 0;
  virtual void keep_awake(bool on) = 0;   // while measuring; the screen says so
  virtual bool light_wanted() const = 0;  // what the system prefers: Sun, else Shop
  virtual bool still_wanted() const = 0;  // the system asks for less motion
  virtual Insets insets() const = 0;
  virtual double seconds() const = 0;  // since some moment, never backwards; a machine that sleeps doesn't stop it
  virtual void ring() = 0;             // a clock ran out: sound or shake, where the machine lets us
  virtual Kept kept() const { return {}; }
  // False while a part of the program is still on its way: screens that need it say so, tiles of later ones wait.
  virtual bool all_here() const { return true; }
  virtual void take_update() {}  // called only while nothing is being saved
  // Whether a browser has promised never to make room at the cost of what is kept here. None: it isn't the browser's.
  virtual std::optional<bool> storage_promised() const { return std::nullopt; }

  // Of the page, without what stands behind '?' or '#'; empty where none runs.
  virtual const std::string& page_address() const {
    static const std::string none;
    return none;
  }

  virtual FileWays file_ways() const { return {}; }
  virtual void give_file(const std::string& /*name*/, const std::string& /*bytes*/, bool /*share*/) {}
  virtual void pick_file() {}  // both within the tap: browsers insist
  // What came of it, each once; the platform wakes the screens.
  virtual std::optional<FileGiven> file_given() { return std::nullopt; }
  virtual std::optional<FileCome> file_come() { return std::nullopt; }

  virtual std::string local_time() const = 0;  // 2026-05-03T14:30:00+02:00, for records
};

}  // namespace camside::screens
