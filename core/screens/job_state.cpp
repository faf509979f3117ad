#include "screens/job_state.hpp"

#include "screens/widgets/answer.hpp"
#include "screens/words.hpp"

namespace camside::screens {

void draw_job_state(Ui& ui, storage::CurrentJob& job) {
  if (job.state() == storage::SaveState::Failed) {
    ui.begin_card();
    ui.coloured(words::not_saved(), ui.theme().outside, ui.px(18), ui.fonts().bold);
    if (job.reason()) {
      ui.text(job.reason()->text);
      ui.quiet(job.reason()->remedy);
    }
    if (ui.button("retry save", words::try_again())) job.retry();
    ui.end_card();
  }
  draw_remarks(ui, job.findings());
}

}  // namespace camside::screens
