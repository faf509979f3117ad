// The seam between the log in memory and where it is kept: app-desktop/disk_log (a folder) and the browser's database.
//
// Promises, beside those of the engine behind it (log_engine.hpp):
//  a  Each call is answered exactly once, with success or with a finding that says what to do, in the order of the
//  calls. b  No callback runs inside the call; it runs later, on the caller's thread: from poll() on the desktop, from
//  the event
//     loop in the browser.
//  c  An append is answered with success only when all of its entries are safe.
//  d  Where several windows share one log, one writes and the others follow: what it adds, and every change of who
//     writes, is told to the Heard of listen(). Whoever stops writing has first saved what it was handed.
//  e  Should what was saved be gone while the log is open, the Lost of listen() is told, who hands over all of it anew;
//  an
//     append that was under way has failed then.
#pragma once

#include <functional>
#include <tl/expected.hpp>
#include <vector>

#include "findings/finding.hpp"
#include "log/log.hpp"
#include "storage/log_engine.hpp"

namespace camside::storage {

class LogStore {
 public:
  using OpenDone = std::function<void(tl::expected<OpenedStore, Finding>)>;
  using Done = std::function<void(tl::expected<void, Finding>)>;

  using Heard = std::function<void(std::vector<records::Entry> entries, bool read_only)>;
  using Lost = std::function<void(const Finding& why)>;

  virtual ~LogStore() = default;
  virtual void listen(const Heard& /*heard*/, const Lost& /*lost*/) {}  // before open()
  virtual void open(OpenDone done) = 0;  // first of all, once; again only after it failed
  virtual void append(std::vector<records::Entry> entries, Done done) = 0;
  virtual void poll() {}                                // delivers what has finished meanwhile; call once a frame
  virtual bool can_take_over() const { return false; }  // read-only just because another one writes
  virtual void take_over() {}
};

}  // namespace camside::storage
