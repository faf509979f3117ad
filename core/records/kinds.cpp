#include "records/kinds.hpp"

#include <algorithm>

#include "calc/backlash.hpp"
#include "calc/gear_pair.hpp"
#include "records/examples.hpp"

namespace camside::records {

namespace {

std::vector<RecordKind> all_kinds() {
  return {
      {"gear_pair",
       "Gear pair",
       "How much lash have these two gears, and can the pair run at all?",
       maker<gear_pair::Input, gear_pair::Result>(&gear_pair::solve),
       "",
       {example_file("gear_pair")}},
  };
}

}  // namespace

std::span<const RecordKind> kinds() {
  static const std::vector<RecordKind> all = all_kinds();
  return all;
}

const RecordKind* find_kind(std::string_view name, std::span<const RecordKind> among) {
  const auto it = std::find_if(among.begin(), among.end(), [&](const RecordKind& k) { return k.name == name; });
  return it == among.end() ? nullptr : &*it;
}

}  // namespace camside::records
