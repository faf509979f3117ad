// The looks of the questions that have a tile, in the order of calc/questions.def: NAME_look() stands in
// NAME_screen.cpp.
#pragma once

#include <vector>

#include "screens/bench/question_screen.hpp"

namespace camside::screens {

std::vector<QuestionLook> looks();

}  // namespace camside::screens
