#include "log/log_merge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <set>
#include <utility>

#include "log/log_view.hpp"

namespace camside::records {

namespace {

// By their index.
std::vector<bool> current_ones(const Log& log, const View& view) {
  std::vector<bool> current(log.size());
  for (const Bike& bike : view.bikes)
    for (const Line& line : bike.lines)
      for (const std::size_t i : line.current) current[i] = true;
  return current;
}

// Each line by its current entries; a line of two bikes counts once.
std::set<std::string> lines_apart(const Log& log, const View& view) {
  std::set<std::string> apart;
  for (const Bike& bike : view.bikes) {
    for (const Line& line : bike.lines) {
      if (!line.apart) continue;
      std::string contents;
      for (const std::size_t i : line.current) contents += content_of(log.entries()[i]) + '\n';
      apart.insert(std::move(contents));
    }
  }
  return apart;
}

void count_entries(MergePreview& preview, const Log& ours, const Log& theirs) {
  for (const Entry& entry : theirs.entries()) {
    switch (ours.would_be(entry)) {
      case Added::New:
        ++preview.fresh;
        break;
      case Added::Differs:
        ++preview.differing;
        break;
      case Added::Known:
      case Added::Rewritten:
        ++preview.known;
    }
  }
}

std::size_t count_missing(const std::set<std::string>& from, const std::set<std::string>& in) {
  return static_cast<std::size_t>(
      std::count_if(from.begin(), from.end(), [&](const std::string& one) { return in.count(one) == 0; }));
}

}  // namespace

MergePreview preview_merge(const Log& ours, const Log& theirs) {
  MergePreview preview;
  count_entries(preview, ours, theirs);
  if (preview.nothing_new()) return preview;
  Log both = ours;
  merge(both, theirs);
  const View before = view(ours);
  const View there = view(theirs);
  const View after = view(both);
  const std::vector<bool> stood = current_ones(ours, before);
  const std::vector<bool> stands = current_ones(both, after);
  for (std::size_t i = 0; i < stood.size(); ++i)  // what is merged in comes behind, so ours keep their places
    if (stood[i] && !stands[i]) ++preview.replaced;
  std::set<std::string> already = lines_apart(ours, before);
  already.merge(lines_apart(theirs, there));
  preview.apart = count_missing(lines_apart(both, after), already);
  for (const Bike& bike : after.bikes) {
    if (find_bike(before, bike.id) == nullptr && !bike.removed) preview.new_bikes.push_back(bike.name());
  }
  return preview;
}

std::vector<Entry> to_take_over(const Log& ours, const Log& theirs) {
  std::vector<Entry> taken;
  for (const Entry& entry : theirs.entries()) {
    if (ours.would_be(entry) != Added::Known) taken.push_back(entry);
  }
  return taken;
}

void merge(Log& ours, const Log& theirs) {
  for (const Entry& entry : theirs.entries()) ours.add(entry);
}

namespace {

enum class Stood : std::uint8_t { Not, InADeletedLine, Stood };

// What was current before these came, by its index in the log.
std::vector<Stood> stood_without(const Log& log, std::span<const Entry> brought) {
  std::set<std::string> contents;
  for (const Entry& entry : brought) contents.insert(content_of(entry));
  Log before;
  std::vector<std::size_t> index;
  for (std::size_t i = 0; i < log.size(); ++i) {
    if (contents.count(content_of(log.entries()[i])) > 0) continue;
    before.add(log.entries()[i]);
    index.push_back(i);
  }
  std::vector<Stood> stood(log.size(), Stood::Not);
  for (const Bike& bike : view(before).bikes)
    for (const Line& line : bike.lines)
      for (const std::size_t i : line.current) stood[index[i]] = line.deleted ? Stood::InADeletedLine : Stood::Stood;
  return stood;
}

class TakingBack {
 public:
  TakingBack(const Log& log, std::span<const Entry> brought, const std::function<Stamp()>& next_stamp)
      : log_(log), stood_(stood_without(log, brought)), next_stamp_(next_stamp) {}

  void take(const Line& line) {
    std::vector<std::size_t> stood;
    for (const auto* part : {&line.current, &line.replaced})
      for (const std::size_t i : *part)
        if (stood_[i] != Stood::Not) stood.push_back(i);
    if (stood == line.current) return;
    bool any = false;
    for (const std::size_t i : stood) {
      if (stood_[i] != Stood::Stood) continue;
      put_back(i, line);
      any = true;
    }
    if (!any && !line.deleted) entries.push_back(deletion(log_, without(log_.size(), line), next_stamp_()));
  }

  std::vector<Entry> entries;

 private:
  std::vector<Entry> without(std::size_t one, const Line& line) const {
    std::vector<Entry> others;
    for (const std::size_t i : line.current)
      if (i != one) others.push_back(log_.entries()[i]);
    return others;
  }

  // In the place of all that is current now.
  void put_back(std::size_t one, const Line& line) {
    std::vector<Entry> old = without(one, line);
    old.insert(old.begin(), log_.entries()[one]);
    entries.push_back((log_.entries()[one].is_deletion() ? deletion : correction)(log_, old, next_stamp_()));
  }

  const Log& log_;
  std::vector<Stood> stood_;
  const std::function<Stamp()>& next_stamp_;
};

}  // namespace

std::vector<Entry> taken_back(const Log& log, std::span<const Entry> brought,
                              const std::function<Stamp()>& next_stamp) {
  TakingBack back(log, brought, next_stamp);
  std::set<std::size_t> seen;  // a line of two bikes is one
  for (const Bike& bike : view(log).bikes)
    for (const Line& line : bike.lines)
      if (seen.insert(line.current.front()).second) back.take(line);
  return std::move(back.entries);
}

std::string words_of(const MergePreview& preview) {
  return fmt::format("{} new, {} known, {} replaced, {} that differ from yours, {} in two versions", preview.fresh,
                     preview.known, preview.replaced, preview.differing, preview.apart);
}

}  // namespace camside::records
