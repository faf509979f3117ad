// Entries that were begun and are not in the log yet. They are kept on this device with every change, so that neither
// another way than "Save" nor a phone that dies takes them along.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "log/log_entry.hpp"
#include "storage/keeper.hpp"
#include "storage/store.hpp"

namespace camside::work {

class Drafts {
 public:
  explicit Drafts(storage::Store& store);

  std::vector<records::Entry>& aside() { return all_->aside; }  // those not being written just now
  void keep(const records::Entry* being_written);               // once a frame

 private:
  struct All {
    std::vector<records::Entry> aside;
    std::string kept;  // as they were handed to the store last, or came from it
    bool loaded = false;
  };
  std::shared_ptr<All> all_ = std::make_shared<All>();
  storage::Keeper keeper_;
};

}  // namespace camside::work
