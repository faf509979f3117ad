// All questions of questions.def, each with its descriptor.
#pragma once

#include <span>
#include <string_view>

#include "calc/question.hpp"

namespace camside {

std::span<const Question> questions();
const Question* find_question(std::string_view name);  // nullptr: there is none

}  // namespace camside
