// What went wrong with keeping the current job, and what to do; nothing while all goes well.
#pragma once

#include "screens/widgets/ui.hpp"
#include "storage/current_job.hpp"

namespace camside::screens {

void draw_job_state(Ui& ui, storage::CurrentJob& job);

}  // namespace camside::screens
