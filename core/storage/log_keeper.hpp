// The log in memory, kept in step with a store. Screens read log(), add entries with add(), and show state().
//
//  1  What is added is in memory at once and stays there, whatever the store says; export_bytes() always has all of it.
//  2  "Saved" only when the store has confirmed every entry that was added.
//  3  One append is under way at a time; what comes meanwhile goes with the next one, together. After a failure the
//     entries wait, and go again with the next add() or retry().
//  4  A log opened for reading only (open elsewhere, or of a newer Camside) takes no entries: add() is refused. A store
//     that can't be read takes none either, but what is added stays in memory, to be exported; retry() opens it again.
//  5  Of several windows on one log the others follow the one that writes: its entries join the log, and who writes may
//     change at any time. What could not be saved before that waits, and goes when this one writes again.
#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "log/log.hpp"
#include "storage/keeper.hpp"
#include "storage/log_store.hpp"

namespace camside::storage {

class LogKeeper {
 public:
  explicit LogKeeper(LogStore& store);

  void open(std::function<void()> changed = {});  // called when the log is there
  void poll();                                    // delivers the store's answers; call once a frame
  bool ready() const;
  bool read_only() const;
  const records::Log& log() const;
  const Findings& findings() const;  // of opening: what is missing, what came back, who else has it open

  // False: not ready yet, or read-only. What is in the log already is passed over.
  bool add(std::vector<records::Entry> entries);
  void retry();
  bool can_take_over() const;  // read-only just because another window writes
  void take_over();

  SaveState state() const;
  const std::optional<Finding>& reason() const;  // of the last failure; none while all is well
  std::size_t unsaved() const;                   // entries the store has not confirmed
  bool all_safe() const { return unsaved() == 0; }
  std::string export_bytes() const;  // log_file.hpp

 private:
  struct Shared;  // outlives the keeper while a callback is under way
  std::shared_ptr<Shared> shared_;
};

}  // namespace camside::storage
