// Two devices' logs become one: the union of their entries. The same result in any order, twice the same as once;
// nothing is dropped. What it would do is said first.
#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <vector>

#include "log/log.hpp"

namespace camside::records {

struct MergePreview {
  std::size_t fresh = 0;               // entries that aren't here yet
  std::size_t known = 0;               // entries that are here already
  std::size_t replaced = 0;            // entries of ours, current until now, that theirs correct or delete
  std::size_t differing = 0;           // entries with an id that is here with another content; both are kept
  std::size_t apart = 0;               // lines that stand side by side afterwards and didn't in either log
  std::vector<std::string> new_bikes;  // names of bikes that aren't here yet

  bool nothing_new() const { return fresh == 0 && differing == 0; }
};

MergePreview preview_merge(const Log& ours, const Log& theirs);
// The entries to add, and to hand to the store, so that ours holds theirs too.
std::vector<Entry> to_take_over(const Log& ours, const Log& theirs);
void merge(Log& ours, const Log& theirs);

// The entries that take back `brought`, which came together into this log: in every line they touched stands again what
// stood there without them, and what began with them is deleted. The log only grows, so the same copy brings nothing a
// second time; taking back what this returns brings it again. Lines that `brought` joined stay one, side by side.
std::vector<Entry> taken_back(const Log& log, std::span<const Entry> brought, const std::function<Stamp()>& next_stamp);

// "12 new, 480 known, 3 replaced, 0 that differ from yours, 1 in two versions"
std::string words_of(const MergePreview& preview);

}  // namespace camside::records
