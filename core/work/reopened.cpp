#include "work/reopened.hpp"

#include <algorithm>

#include "records/new_id.hpp"
#include "records/strict_json.hpp"

namespace camside::work {

std::string reopened(storage::CurrentJob& job, const records::Record& measured) {
  auto& all = job.job().records;
  auto there = std::find_if(all.begin(), all.end(), [&](const records::Record& r) {
    return r.kind() == measured.kind() && r.entered() == measured.entered();
  });
  if (there == all.end()) {
    records::Record copy = measured;
    if (job.job().find(copy.id())) copy.json["id"] = records::new_id();
    there = all.insert(all.end(), std::move(copy));
    job.commit();
  }
  return there->id();
}

}  // namespace camside::work
