#include "records/log_merge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <utility>

#include "records/log_view.hpp"

namespace camside::records {

namespace {

std::set<std::string> current_contents(const Log& log, const View& view) {
  std::set<std::string> contents;
  for (const Bike& bike : view.bikes)
    for (const Line& line : bike.lines)
      for (const std::size_t i : line.current) contents.insert(content_of(log.entries()[i]));
  return contents;
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
  Log both = ours;
  merge(both, theirs);
  const View before = view(ours);
  const View there = view(theirs);
  const View after = view(both);
  preview.replaced = count_missing(current_contents(ours, before), current_contents(both, after));
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

std::string words_of(const MergePreview& preview) {
  return fmt::format("{} new, {} known, {} replaced, {} with an id that is here with another content, {} changed apart",
                     preview.fresh, preview.known, preview.replaced, preview.differing, preview.apart);
}

}  // namespace camside::records
