#include "log/log.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <utility>

#include "base/stable_sort.hpp"
#include "records/strict_json.hpp"

namespace camside::records {

namespace {

std::string fingerprint_text(const Entry& entry) {
  return fmt::format("{:016x}", fingerprint(content_of(entry)));
}

std::string key_of(const Entry& entry) {
  const std::string id = entry.id();
  return id.empty() ? "#" + fingerprint_text(entry) : id;
}

// Where the text of a reference ends and a fingerprint may begin.
constexpr std::size_t fingerprint_length = 17;  // '#' and 16 digits

void set_replaces(Entry& entry, const Log& log, std::span<const Entry> old) {
  Json ids = Json::array();
  for (const Entry& one : old) ids.push_back(log.reference(one));
  entry.record.json["replaces"] = ids.size() == 1 ? ids.front() : ids;
}

bool written_alike(const Entry& a, const Entry& b) {
  return write_json_line(a.record.json) == write_json_line(b.record.json);
}

}  // namespace

std::uint64_t fingerprint(std::string_view bytes, std::uint64_t before) {
  std::uint64_t sum = before;
  for (const char c : bytes) {
    sum ^= static_cast<unsigned char>(c);
    sum *= 1099511628211U;
  }
  return sum;
}

std::string content_of(const Entry& entry) {
  return canonical_json(entry.record.json);
}

std::vector<std::size_t> Log::with_key(std::string_view key) const {
  std::vector<std::size_t> found;
  const auto [begin, end] = by_key_.equal_range(fingerprint(key));
  for (auto it = begin; it != end; ++it)
    if (key_of(entries_[it->second]) == key) found.push_back(it->second);
  sort_stably(found.begin(), found.end(), std::less<>());
  return found;
}

Added Log::would_be(const Entry& entry) const {
  const std::vector<std::size_t> same_key = with_key(key_of(entry));
  if (same_key.empty()) return Added::New;
  for (const std::size_t index : same_key)
    if (written_alike(entries_[index], entry)) return Added::Known;
  const std::string content = content_of(entry);
  for (const std::size_t index : same_key) {
    if (content_of(entries_[index]) != content) continue;
    return write_json_line(entry.record.json) < write_json_line(entries_[index].record.json) ? Added::Rewritten
                                                                                             : Added::Known;
  }
  return Added::Differs;
}

bool Log::lacks(const Entry& entry) const {
  const Added added = would_be(entry);
  return added == Added::New || added == Added::Differs;
}

Added Log::add(Entry entry) {
  entry.record.json.pack();
  const Added added = would_be(entry);
  if (added == Added::Known) return added;
  if (added == Added::Rewritten) {
    const std::string content = content_of(entry);
    for (const std::size_t index : with_key(key_of(entry)))
      if (content_of(entries_[index]) == content) entries_[index] = entry;
    return added;
  }
  by_key_.emplace(fingerprint(key_of(entry)), entries_.size());
  entries_.push_back(std::move(entry));
  return added;
}

std::vector<std::size_t> Log::with_id(std::string_view id) const {
  return with_key(id);
}

std::vector<std::size_t> Log::meant_by(std::string_view reference) const {
  std::vector<std::size_t> same_id = with_id(reference);
  if (same_id.size() == 1) return same_id;
  if (reference.size() <= fingerprint_length || reference[reference.size() - fingerprint_length] != '#') return {};
  const std::string_view wanted = reference.substr(reference.size() - fingerprint_length + 1);
  for (const std::size_t index : with_id(reference.substr(0, reference.size() - fingerprint_length))) {
    if (fingerprint_text(entries_[index]) == wanted) return {index};
  }
  return {};
}

std::string Log::reference(const Entry& entry) const {
  const std::string id = entry.id();
  if (id.empty()) return key_of(entry);
  return with_id(id).size() > 1 ? id + "#" + fingerprint_text(entry) : id;
}

std::vector<std::size_t> Log::in_order() const {
  struct Place {
    std::int64_t made;
    std::size_t index;
  };
  std::vector<Place> places;
  places.reserve(entries_.size());
  for (std::size_t i = 0; i < entries_.size(); ++i) places.push_back({entries_[i].made_at(), i});
  sort_stably(places.begin(), places.end(), [this](const Place& a, const Place& b) {
    if (a.made != b.made || a.index == b.index) return a.made < b.made;
    const std::string one = entries_[a.index].id();
    const std::string other = entries_[b.index].id();
    return one == other ? content_of(entries_[a.index]) < content_of(entries_[b.index]) : one < other;
  });
  std::vector<std::size_t> order;
  order.reserve(places.size());
  for (const Place& place : places) order.push_back(place.index);
  return order;
}

Entry correction(const Log& log, std::span<const Entry> old, const Stamp& stamp) {
  Entry entry = old.front();
  Json& json = entry.record.json;
  // The day stays the one it was about, also when only the time of making it said so.
  const std::string day = old.front().day();
  json["id"] = stamp.id;
  json["made"] = stamp.made;
  entry.record.set("by", stamp.by);
  entry.record.set("day", day);
  set_replaces(entry, log, old);
  return entry;
}

Entry deletion(const Log& log, std::span<const Entry> old, const Stamp& stamp) {
  Entry entry = make_entry("deletion", old.empty() ? "" : old.front().bike(), stamp);
  set_replaces(entry, log, old);
  return entry;
}

void make_replacing(Entry& copy, const Log& log, const Entry& entry) {
  copy.record.json["replaces"] = log.reference(entry);
}

std::vector<Entry> replaced_by(const Log& log, const Entry& entry) {
  std::vector<Entry> before;
  for (const std::string& reference : entry.replaces())
    for (const std::size_t index : log.meant_by(reference)) before.push_back(log.entries()[index]);
  return before;
}

}  // namespace camside::records
