// Keeps one named piece of bytes in step with a store and knows whether the newest is safe.
//
// While a save is under way newer bytes wait; only the newest of those waiting is saved next. So typing fast costs one
// save at a time, and the last word always gets there. The store outlives the keeper.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

#include "storage/store.hpp"

namespace camside::storage {

enum class SaveState : std::uint8_t {
  Idle,    // nothing to save yet
  Saving,  // newer than what the store has confirmed
  Saved,   // the store has confirmed the newest bytes
  Failed,  // the store refused; the bytes are still here, reason() says why
};
std::string_view word_of(SaveState state);  // "", "Saving …", "Saved", "Not saved"

class Keeper {
 public:
  Keeper(Store& store, std::string name);

  void put(std::string bytes);  // from here on these are the newest bytes
  void retry();                 // after a failure: hand the newest bytes over again

  SaveState state() const;
  const std::optional<Finding>& reason() const;  // of the last failure; none while all is well
  bool all_safe() const;                         // nothing would be lost if the program stopped now
  const std::string& newest() const;

 private:
  struct Shared;  // outlives the keeper while a callback is under way
  std::shared_ptr<Shared> shared_;
};

}  // namespace camside::storage
