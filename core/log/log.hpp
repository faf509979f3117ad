// The log of all bikes in memory: a set of entries that only grows. Logs of two devices are joined by union, so the
// order in which they come, and how often, makes no difference.
//
// Two entries are the same when their content is: the same names and values, digit for digit, in whatever order they
// are written. Two entries with the same id and another content are both kept. An entry without an id, or one that is
// no object at all, is its own content.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "log/log_entry.hpp"

namespace camside::records {

enum class Added : std::uint8_t {
  New,
  Known,      // it was there already
  Differs,    // its id was there with another content; both are kept now
  Rewritten,  // it was there already, written in another way; the way that comes first by its bytes is kept
};

class Log {
 public:
  Added add(Entry entry);
  Added would_be(const Entry& entry) const;  // what add() would say
  bool lacks(const Entry& entry) const;      // its content isn't here, however it may be written

  const std::vector<Entry>& entries() const { return entries_; }  // in the order they came; addresses change with add()
  std::size_t size() const { return entries_.size(); }
  std::vector<std::size_t> with_id(std::string_view id) const;  // more than one when contents differ
  // The entry, or entries, a text of "replaces" means: none when it isn't here, or when an id alone has several
  // contents.
  std::vector<std::size_t> meant_by(std::string_view reference) const;
  // How another entry names this one in "replaces": its id; with its fingerprint, "id#0123456789abcdef", when entries
  // of this id differ, so that picking one of them says which ones were seen.
  std::string reference(const Entry& entry) const;
  std::vector<std::size_t> in_order() const;  // by time made, id, content: the same for equal sets

 private:
  std::vector<std::size_t> with_key(std::string_view key) const;

  std::vector<Entry> entries_;                                  // packed
  std::unordered_multimap<std::uint64_t, std::size_t> by_key_;  // by the fingerprint of the key: a few bytes an entry
};

constexpr std::uint64_t fingerprint_of_nothing = 14695981039346656037U;
// FNV-1a, 64 bits; of what follows some other bytes, from their fingerprint on.
std::uint64_t fingerprint(std::string_view bytes, std::uint64_t before = fingerprint_of_nothing);
std::string content_of(const Entry& entry);  // canonical JSON

// ---- changes, as the entries that make them; hand them to the store and add them

// The old entries' first content under a new id, taking their place: edit it, then add it.
Entry correction(const Log& log, std::span<const Entry> old, const Stamp& stamp);
Entry deletion(const Log& log, std::span<const Entry> old, const Stamp& stamp);
// Brings back what stood before this entry: a deletion when nothing did, else a copy of each entry it replaced. Needs
// an id for each, which `next_stamp` gives.
template <class NextStamp>
std::vector<Entry> undo(const Log& log, const Entry& entry, NextStamp next_stamp);

std::vector<Entry> replaced_by(const Log& log, const Entry& entry);
void make_replacing(Entry& copy, const Log& log, const Entry& entry);  // the copy takes the place of the entry

template <class NextStamp>
std::vector<Entry> undo(const Log& log, const Entry& entry, NextStamp next_stamp) {
  const std::vector<Entry> before = replaced_by(log, entry);
  const std::span<const Entry> taken(&entry, 1);
  if (before.empty()) return {deletion(log, taken, next_stamp())};
  std::vector<Entry> back;
  for (const Entry& old : before) {
    Entry copy = correction(log, std::span(&old, 1), next_stamp());
    make_replacing(copy, log, entry);
    back.push_back(std::move(copy));
  }
  return back;
}

}  // namespace camside::records
