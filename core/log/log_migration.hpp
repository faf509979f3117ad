// From the form of an older log to the present one: one pure function for each step of the version, applied one after
// another. A released version stays readable for ever; its fixture is tests/files/log_version_N.json.
//
// There is one version so far, so there are no steps yet.
#pragma once

#include <cstdint>
#include <span>

#include "records/strict_json.hpp"

namespace camside::records {

constexpr std::uint64_t log_version = 1;

struct MigrationStep {
  std::uint64_t from;   // this version becomes the next one
  Json (*head)(Json);   // all of the file but its entries
  Json (*entry)(Json);  // one entry
};

struct LogFormat {
  std::uint64_t version = log_version;
  std::span<const MigrationStep> steps;  // by `from`, without a gap, up to `version`
};

LogFormat log_format();

Json migrated_head(Json head, std::uint64_t from, const LogFormat& format = log_format());
Json migrated_entry(Json entry, std::uint64_t from, const LogFormat& format = log_format());

}  // namespace camside::records
