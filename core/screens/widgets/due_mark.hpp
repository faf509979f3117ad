// How a due state looks: colour and shape, beside the word.
#pragma once

#include "calc/inspection_due/inspection_due.hpp"
#include "findings/outcome.hpp"
#include "screens/widgets/theme.hpp"

namespace camside::screens {

ImU32 colour_of(const Theme& theme, inspection_due::State state);
// Cross in a square, open diamond, tick in a circle: the same shapes as the verdicts.
Verdict shape_of(inspection_due::State state);

}  // namespace camside::screens
