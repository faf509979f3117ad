// What a log says now: the bikes, and for each bike its lines after corrections and deletions. A pure function of the
// set of entries: the order in which they came makes no difference.
//
// A line is one thing of the log with everything that ever took its place. Its current entries are those that no other
// entry replaces. Usually that is one. More than one that differ were changed apart, on two devices that didn't know of
// each other: both are current and shown side by side until someone replaces both. So are entries with one id and
// different contents, and entries that replace each other in a circle. Nothing is ever hidden that a person hasn't
// seen.
//
// A bike is what its current entries of kind "facts" say, field by field, the later one first. A bike all of whose
// lines are deleted is removed; its lines are still here and can be undone.
//
// Findings raised: 304 replaces itself, 305 in a circle, 306 replaces what isn't here, 307 same id with other content,
// 308 in two versions. Their field is "replaces" or "id"; the text names the entry.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "log/log.hpp"

namespace camside::records {

// Numbers are indexes into log.entries().
struct Line {
  std::vector<std::size_t> current;   // by time made; never empty
  std::vector<std::size_t> replaced;  // by time made, what was there before
  bool deleted = false;               // all that is current are deletions
  bool apart = false;                 // current ones differ: it was changed apart
  std::string day;                    // that the line is about; lines stand in this order
};

struct Bike {
  std::string id;
  std::string nickname;    // as entered; "" when nobody said
  std::string engine;      // "two cams, sprung chains"
  std::string own_engine;  // in the owner's words
  std::string drive;       // what turns the cams now: "gears"; empty: as built
  std::string model_year;
  std::string odometer_unit;             // "mi" or "km"; "" when nobody said
  std::vector<std::size_t> clock_swaps;  // current entries of kind "clock", by day
  std::vector<Line> lines;               // by day, then by time made; deleted ones too
  bool removed = false;

  std::string name() const;  // the nickname, else the id
};

struct View {
  std::vector<Bike> bikes;  // by nickname, then id; entries that name no bike are under the id ""
  Findings findings;
};

View view(const Log& log);
const Bike* find_bike(const View& view, std::string_view id);
// The ids of the bikes that are meant by an id or a nickname, in the view's order; removed ones only by id.
std::vector<std::string> bikes_called(const View& view, std::string_view name);

// The latest current odometer reading of a bike, as an index; none: not yet read.
std::optional<std::size_t> latest_odometer(const Log& log, const Bike& bike);

// The same thing said: equal but for who made it, when, and what it replaces.
bool says_the_same(const Entry& a, const Entry& b);

}  // namespace camside::records
