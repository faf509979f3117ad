// A measurement out of a bike's log, back on the Bench. What lies there is kept: one that was changed since stays
// beside it.
#pragma once

#include <string>

#include "records/measurement.hpp"
#include "storage/current_job.hpp"

namespace camside::work {

std::string reopened(storage::CurrentJob& job, const records::Record& measured);  // the id that it has there

}  // namespace camside::work
