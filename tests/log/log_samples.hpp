// An invented log for tests: the bike "Brindle" of the Lantern Shed, neither of which exists.
#pragma once

#include <string>
#include <utility>

#include "records/iso_time.hpp"
#include "log/log.hpp"

namespace camside::records::samples {

inline const std::string brindle = "b0000000-0000-4000-8000-000000000001";

// The n-th minute after 2024-05-14 10:20 at five hours west.
inline Stamp stamp(const std::string& id, int minute = 0, const std::string& by = "The Lantern Shed") {
  return {id, iso_time(1'715'700'000'000 + minute * 60'000, -300), by};
}

inline Entry entry(std::string_view kind, const std::string& id, int minute,
                   std::initializer_list<std::pair<const char*, Json>> entered, const std::string& bike = brindle) {
  Entry made = make_entry(kind, bike, stamp(id, minute));
  for (const auto& [name, value] : entered) made.record.entered()[name] = value;
  return made;
}

inline Entry facts(const std::string& id = "facts", int minute = 0) {
  return entry(
      "facts", id, minute,
      {{"nickname", "Brindle"}, {"engine", "two cams, sprung chains"}, {"model_year", 2003U}, {"odometer_unit", "mi"}});
}

inline Entry odometer(const std::string& id, int minute, const std::string& reading,
                      const std::string& bike = brindle) {
  return entry("odometer", id, minute, {{"reading", reading}}, bike);
}

inline Entry replacing(Entry entry, Json ids) {
  entry.record.json["replaces"] = std::move(ids);
  return entry;
}

inline Entry deleting(const std::string& id, int minute, const std::string& old) {
  return replacing(make_entry("deletion", brindle, stamp(id, minute)), Json(old));
}

inline Log brindle_log() {
  Log log;
  log.add(facts());
  log.add(odometer("o1", 1, "41,300 mi"));
  log.add(entry("service", "s1", 2,
                {{"items", Json::array({"Engine oil and filter"})},
                 {"odometer", "41,300 mi"},
                 {"done_by", "The Lantern Shed"},
                 {"proof", "paper"}}));
  log.add(entry("finding", "f1", 3,
                {{"part", "Inner cam support plate"},
                 {"grade", "worn"},
                 {"wear", Json::array({Json{{"what", "Shoe groove"}, {"measured", "0.012 in"}}})}}));
  log.add(entry("note", "n1", 4, {{"text", "Invented: this bike does not exist"}}));
  return log;
}

}  // namespace camside::records::samples
