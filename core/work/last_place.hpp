// Where one was: a phone ends a page at will, and it comes back to the same place. Kept beside the job, in lines: the
// place, and what that place needs to find its page again. Losing it costs a tap, so nobody waits for it to be saved.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "storage/keeper.hpp"
#include "storage/store.hpp"

namespace camside::work {

using Whereabouts = std::vector<std::string>;  // {"look-over", "round", id, question}

class LastPlace {
 public:
  LastPlace(storage::Store& store, std::function<void()> came_in);

  const Whereabouts* found() const;  // as it came in, until it is left
  void leave() { found_->place.reset(); }
  void put(const Whereabouts& now);  // not before that: it would be written over

 private:
  struct Found {
    bool looked = false;
    std::optional<Whereabouts> place;
    std::string kept;  // what the store holds
  };

  storage::Keeper keeper_;
  std::shared_ptr<Found> found_ = std::make_shared<Found>();
};

}  // namespace camside::work
