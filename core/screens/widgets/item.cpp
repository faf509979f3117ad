#include "screens/widgets/item.hpp"

#include <fmt/format.h>

#include "base/harmless.hpp"
#include "records/text_in_json.hpp"

namespace camside::screens {

namespace {

std::string corners(ImVec2 min, ImVec2 max) {
  const auto number = [](float v) {
    return static_cast<double>(v);
  };  // the page prints no float (scripts/cmake/Libraries.cmake)
  return fmt::format("[{},{},{},{}]", number(min.x), number(min.y), number(max.x - min.x), number(max.y - min.y));
}

std::string shown_in_json(const std::string& text) {
  return records::text_in_json(harmless_lines(text));
}

std::string as_json(const Item& item) {
  const std::string box = item.field.empty() ? "" : ",\"box\":" + corners(item.box_min, item.box_max);
  return fmt::format(
      R"({{"role":{},"label":{},"value":{},"chosen":{},"enabled":{},"press":{},"visible":{},"rect":{}{}}})",
      records::text_in_json(word_of(item.role)), shown_in_json(item.label), shown_in_json(item.value), item.chosen,
      item.enabled, item.pressable(), item.visible(), corners(item.min, item.max), box);
}

}  // namespace

std::string items_as_json(const Items& items) {
  std::string all;
  for (const Item& item : items) all += (all.empty() ? "" : ",") + as_json(item);
  return "[" + all + "]";
}

}  // namespace camside::screens
