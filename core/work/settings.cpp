#include "work/settings.hpp"

#include <algorithm>

#include "records/strict_json.hpp"

namespace camside::work {

namespace {
using records::Json;

std::string word(const Json& from, const char* key) {
  const auto at = from.find(key);
  return at != from.end() && at->is_string() ? at->get<std::string>() : std::string();
}
}  // namespace

Settings read_settings(std::string_view bytes) {
  Settings s;
  const auto read = records::read_json(bytes);
  if (!read || !read->is_object()) return s;
  const Json& json = *read;
  if (word(json, "units") == "metric") s.system = System::Metric;
  const std::string theme = word(json, "theme");
  s.theme = theme == "shop" ? ThemeChoice::Shop : theme == "sun" ? ThemeChoice::Sun : ThemeChoice::System;
  if (const auto at = json.find("text_scale"); at != json.end() && at->is_number())
    s.text_scale = std::clamp(at->get<float>(), 0.9f, 2.0f);
  s.left_hand = word(json, "hand") == "left";
  s.keep_awake = word(json, "screen") != "may sleep";
  return s;
}

std::string write_settings(const Settings& s) {
  Json json;
  json["units"] = s.system == System::Metric ? "metric" : "inch";
  json["theme"] = s.theme == ThemeChoice::Shop ? "shop" : s.theme == ThemeChoice::Sun ? "sun" : "system";
  json["text_scale"] = s.text_scale;
  json["hand"] = s.left_hand ? "left" : "right";
  json["screen"] = s.keep_awake ? "stays awake" : "may sleep";
  return json.dump();
}

}  // namespace camside::work
