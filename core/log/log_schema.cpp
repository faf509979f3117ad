#include "log/log_schema.hpp"

#include <utility>

#include "log/log_entry.hpp"
#include "log/log_entry_kinds.hpp"
#include "records/schema_parts.hpp"

namespace camside::records {

namespace {

Json replaces_schema() {
  Json one = text_schema("One entry", "The id of the entry it takes the place of.");
  Json several{{"title", "Several entries"},
               {"description", "The ids of the entries it takes the place of."},
               {"type", "array"},
               {"items", text_schema("Id", "Of one of them.")}};
  return Json{{"title", "Replaces"},
              {"description", "The entry this one corrects or deletes, or the entries; none when it is the first."},
              {"oneOf", Json::array({std::move(one), std::move(several)})}};
}

Json entry_properties() {
  Json properties;
  properties["id"] = text_schema("Id", "Names this entry for good, also across devices: a random UUID.");
  properties["bike"] = text_schema("Bike", "The id of the bike it is about: a random UUID.");
  properties["kind"] = text_schema(
      "Kind", "facts, odometer, clock, service, finding, measurement, note or deletion; others are kept as they are.");
  properties["made"] =
      text_schema("Made", "When it was made, as 2024-05-14T10:20:00.250-05:00 with the offset from UTC.");
  properties["made"]["pattern"] = schema_time_pattern;
  properties["day"] = text_schema("Day", "The day it is about, when that is not the day it was made.");
  properties["day"]["pattern"] = schema_time_pattern;
  properties["by"] = text_schema("By", "Who made it.");
  properties["note"] = text_schema("Note", "Anything worth keeping with it.");
  properties["replaces"] = replaces_schema();
  return properties;
}

Json entry_schema() {
  Json by_kind = Json::array();
  for (const RecordKind& kind : entry_kinds()) {
    Json is_this_kind{{"properties", Json{{"kind", Json{{"const", std::string(kind.name)}}}}}};
    Json entered{{"properties", Json{{"entered", entered_schema(kind)}}}};
    by_kind.push_back(Json{{"if", std::move(is_this_kind)}, {"then", std::move(entered)}});
  }
  Json is_measurement{{"properties", Json{{"kind", Json{{"const", "measurement"}}}}}};
  Json record{{"title", "Measurement"},
              {"description", "The record as it was entered; see measurements.schema.json."},
              {"type", "object"},
              {"required", Json::array({"kind", "entered"})}};
  Json measured{{"properties", Json{{"record", std::move(record)}}}, {"required", Json::array({"record"})}};
  by_kind.push_back(Json{{"if", std::move(is_measurement)}, {"then", std::move(measured)}});
  return Json{{"title", "An entry"},
              {"description", "Something read, done, found or corrected; never changed, only replaced."},
              {"type", "object"},
              {"properties", entry_properties()},
              {"required", Json::array({"id", "kind", "made"})},
              {"allOf", std::move(by_kind)}};
}

}  // namespace

std::string schema_of_log() {
  Json version{{"title", "Version"}, {"description", "Version of the file."}, {"type", "integer"}, {"minimum", 1}};
  Json kind{{"title", "Kind of file"}, {"description", "Always \"log\"."}, {"const", "log"}};
  Json count{{"title", "Count"},
             {"description", "How many entries it holds, so that a file cut short is known."},
             {"type", "integer"},
             {"minimum", 0}};
  Json entries{{"title", "Entries"},
               {"description", "Of one bike or of all, one for each line, by the time made."},
               {"type", "array"},
               {"items", entry_schema()}};
  Json properties;
  properties["camside"] = std::move(version);
  properties["kind"] = std::move(kind);
  properties["count"] = std::move(count);
  properties["entries"] = std::move(entries);
  return write_json(Json{{"$schema", schema_dialect},
                         {"title", "Camside log"},
                         {"description", "The log of a bike, or of all bikes."},
                         {"type", "object"},
                         {"properties", std::move(properties)},
                         {"required", Json::array({"camside", "kind", "entries"})}});
}

}  // namespace camside::records
