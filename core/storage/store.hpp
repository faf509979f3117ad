// The seam between what is remembered and where it is kept. Written twice: app-desktop/disk_store (files) and
// app-web (the browser's database). The same tests run against both.
//
// Invariants; every store keeps all of them, the tests name them by number:
//  1  Nothing handed over is lost while the program runs: the keeper holds the newest bytes until a store confirmed
//     them, and after a failure it still holds them.
//  2  "Saved" is shown only after the store confirmed, and only when the newest bytes are the confirmed ones.
//  3  A crash or a power cut at any moment leaves the old bytes or the new bytes whole, never a mixture and never none.
//     Disk: write a temporary file, fsync it, keep the old file as the previous one, rename, fsync the folder.
//     Browser: one transaction with strict durability, confirmed on its "complete" event, not on the request's.
//  4  The version before the last one is kept. A damaged newest version opens the previous one and says so, and the
//     damaged bytes are set aside, neither overwritten nor allowed to push the good version out.
//  5  Saves of one name are confirmed in the order in which they were asked for.
//  6  A callback never runs inside load() or save(); it runs later, on the caller's thread: from poll() on the desktop,
//     from the event loop in the browser.
//  7  Each load() and each save() is answered exactly once, with success or with a finding that says what to do.
//  8  An empty store is not an error: it loads as no bytes.
//
// The log of the bikes, which only grows, is kept elsewhere, with promises of its own (log_engine.hpp). Nothing here
// knows what the bytes mean.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "findings/finding.hpp"

namespace camside::storage {

struct Loaded {
  std::string bytes;      // empty: nothing was stored yet
  bool previous = false;  // the newest version was damaged; this is the one before it
  Findings findings;      // what the owner must know about it
};

class Store {
 public:
  using LoadDone = std::function<void(tl::expected<Loaded, Finding>)>;
  using SaveDone = std::function<void(tl::expected<void, Finding>)>;
  using Whole = std::function<bool(std::string_view)>;  // can these bytes be read? decides about the previous version

  virtual ~Store() = default;
  // Names are plain words in small letters and hyphens: "current-job".
  virtual void load(const std::string& name, Whole whole, LoadDone done) = 0;
  virtual void save(const std::string& name, std::string bytes, SaveDone done) = 0;
  // Delivers what has finished meanwhile; call once a frame. A store whose callbacks come by themselves does nothing.
  virtual void poll() {}
};

}  // namespace camside::storage
