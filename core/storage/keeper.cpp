#include "storage/keeper.hpp"

#include <cstdint>
#include <utility>

namespace camside::storage {

std::string_view word_of(SaveState state) {
  switch (state) {
    case SaveState::Idle:
      return "";
    case SaveState::Saving:
      return "Saving …";
    case SaveState::Saved:
      return "Saved";
    case SaveState::Failed:
      return "Not saved";
  }
  return "";
}

struct Keeper::Shared {
  Store& store;
  std::string name;
  std::string newest;
  std::uint64_t put = 0;        // number of the newest bytes; 0: none yet
  std::uint64_t confirmed = 0;  // number of the bytes the store has confirmed
  bool under_way = false;
  std::optional<Finding> reason;
};

namespace {

// Hands the newest bytes over unless a save is under way, and goes on as long as newer ones have come meanwhile.
template <class Shared>
void hand_over(const std::shared_ptr<Shared>& s) {
  if (s->under_way || s->put == s->confirmed) return;
  s->under_way = true;
  const std::uint64_t number = s->put;
  s->store.save(s->name, s->newest, [s, number](const tl::expected<void, Finding>& answer) {
    s->under_way = false;
    if (answer) {
      s->confirmed = number;
      s->reason.reset();
    } else {
      s->reason = answer.error();
    }
    if (s->put > number) hand_over(s);
  });
}

}  // namespace

Keeper::Keeper(Store& store, std::string name) : shared_(new Shared{store, std::move(name), "", 0, 0, false, {}}) {}

void Keeper::put(std::string bytes) {
  shared_->newest = std::move(bytes);
  ++shared_->put;
  hand_over(shared_);
}

void Keeper::retry() {
  hand_over(shared_);
}

SaveState Keeper::state() const {
  if (shared_->put == 0) return SaveState::Idle;
  if (shared_->under_way) return SaveState::Saving;
  if (shared_->put == shared_->confirmed) return SaveState::Saved;
  return shared_->reason ? SaveState::Failed : SaveState::Saving;
}

const std::optional<Finding>& Keeper::reason() const {
  return shared_->reason;
}
bool Keeper::all_safe() const {
  return shared_->put == shared_->confirmed;
}
const std::string& Keeper::newest() const {
  return shared_->newest;
}

}  // namespace camside::storage
