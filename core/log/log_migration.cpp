#include "log/log_migration.hpp"

#include <utility>

namespace camside::records {

LogFormat log_format() {
  return {log_version, {}};
}

Json migrated_head(Json head, std::uint64_t from, const LogFormat& format) {
  for (const MigrationStep& step : format.steps) {
    if (step.from < from || step.from >= format.version) continue;
    head = step.head(std::move(head));
    head["camside"] = step.from + 1;
  }
  return head;
}

Json migrated_entry(Json entry, std::uint64_t from, const LogFormat& format) {
  for (const MigrationStep& step : format.steps) {
    if (step.from >= from && step.from < format.version) entry = step.entry(std::move(entry));
  }
  return entry;
}

}  // namespace camside::records
