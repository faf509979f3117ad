// Where a question of the look-over's round sends the eye, the hand or the ear: the engine seen from its cam side with
// the place marked, or what is looked for (a shoe, oil on a rag) with the good one beside the bad ones. A sketch of how
// these engines are built, not to scale; no measurement is read off it.
#pragma once

#include "calc/look_over/look_over.hpp"
#include "screens/widgets/pen.hpp"

namespace camside::screens {

float place_drawing_height(const Pen& pen, float width, look_over::LookAt place);
void draw_place(const Pen& pen, const Area& area, look_over::LookAt place);

}  // namespace camside::screens
