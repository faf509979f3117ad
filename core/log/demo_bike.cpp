#include "log/demo_bike.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "records/new_id.hpp"
#include "records/strict_json.hpp"

namespace camside::records {

namespace {

constexpr const char* shop = "The Lantern Shed";

Entry invented(std::string_view kind, const std::string& bike, Stamp stamp, const char* day) {
  stamp.by = shop;
  Entry entry = make_entry(kind, bike, stamp);
  entry.record.set("day", day);
  entry.record.set("note", std::string(invented_mark));
  return entry;
}

Entry measured(const std::string& bike, Stamp stamp, const char* day) {
  stamp.by = shop;
  Record runout = demo_records(*find_kind("runout")).front();
  runout.json["id"] = new_id();  // the same example may lie on the Bench already
  Entry entry = make_measurement_entry(runout, bike, stamp);
  entry.record.set("day", day);
  entry.record.set("note", std::string(invented_mark));
  return entry;
}

}  // namespace

std::vector<Entry> demo_bike(const std::function<Stamp()>& next_stamp) {
  const std::string bike = new_id();
  std::vector<Entry> all;
  const auto add = [&](std::string_view kind, const char* day, Json entered) {
    all.push_back(invented(kind, bike, next_stamp(), day));
    all.back().record.entered() = std::move(entered);
  };
  add("facts", "2024-05-14",
      {{"nickname", "Brindle"}, {"engine", "two cams, sprung chains"}, {"model_year", 2003}, {"odometer_unit", "mi"}});
  add("service", "2023-06-18",
      {{"items", Json::array({"Engine oil and filter"})},
       {"odometer", "38,900 mi"},
       {"done_by", "the owner"},
       {"proof", "photo"}});
  add("odometer", "2024-05-14", {{"reading", "41,300 mi"}});
  add("note", "2024-05-14", {{"text", "No papers for the tensioners"}});
  add("finding", "2024-05-14", {{"part", "Outer tensioner shoe"}, {"grade", "failed"}, {"odometer", "41,300 mi"}});
  all.push_back(measured(bike, next_stamp(), "2024-05-14"));
  return all;
}

bool is_invented(const Log& log, const Bike& bike) {
  const auto says_so = [&](std::size_t i) {
    return log.entries()[i].kind() == "facts" && log.entries()[i].note() == invented_mark;
  };
  return std::any_of(bike.lines.begin(), bike.lines.end(),
                     [&](const Line& line) { return std::any_of(line.current.begin(), line.current.end(), says_so); });
}

std::vector<Entry> removal_of(const Log& log, const Bike& bike, const std::function<Stamp()>& next_stamp) {
  std::vector<Entry> deletions;
  for (const Line& line : bike.lines) {
    if (line.deleted) continue;
    std::vector<Entry> old;
    for (const std::size_t i : line.current) old.push_back(log.entries()[i]);
    deletions.push_back(deletion(log, old, next_stamp()));
  }
  return deletions;
}

}  // namespace camside::records
