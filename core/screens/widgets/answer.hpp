// The answer in the largest type: verdict word with its shape, the value and its uncertainty, the limit and who set it.
// Then the remarks, the further figures, and the Working. All from an Outcome; nothing is computed here.
#pragma once

#include "findings/outcome.hpp"
#include "records/kinds.hpp"
#include "screens/widgets/ui.hpp"
#include "units/unit.hpp"

namespace camside::screens {

std::string figure_text(const Figure& figure, System system);  // "0.0031 in ± 0.0004 in"
std::string limit_text(const Outcome& outcome,
                       System system);  // "at most 0.003 in · common practice, no published source"

void draw_answer(Ui& ui, const Solved& solved, System system);
void draw_remarks(Ui& ui, const Findings& findings);
Findings what_matters_now(const Findings& findings);  // refusals, doubts, cautions: stand at their step
Findings good_to_know(const Findings& findings);      // notes: one tap away
void draw_figures(Ui& ui, const Outcome& outcome, System system);
void draw_working(Ui& ui, const Outcome& outcome);

}  // namespace camside::screens
