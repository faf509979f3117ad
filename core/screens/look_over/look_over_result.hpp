// What a look-over says, on one screen: one sentence with the offer and what it is made of, what to look at next, what
// must be done anyway, when to walk away, and what may be found. No percentages here; they stand in the working, with
// the risks ranked and what moves the sum.
#pragma once

#include <string>

#include "calc/look_over/look_over.hpp"
#include "findings/outcome.hpp"
#include "screens/widgets/ui.hpp"

namespace camside::screens {

bool few_answered(const look_over::Input& in, const look_over::Result& result);  // the first ones: one may stop here
std::string next_look(const look_over::Input& in, const look_over::Result& result);  // id; empty: all were answered
void draw_result(Ui& ui, const look_over::Input& in, const look_over::Result& result);
// Beside a question on a wide screen: the sums and what must be done.
void draw_result_in_short(Ui& ui, const look_over::Input& in, const look_over::Result& result);
void draw_swings(Ui& ui, const look_over::Result& result);  // what moves the sum
void draw_result_working(Ui& ui, const look_over::Result& result);

}  // namespace camside::screens
