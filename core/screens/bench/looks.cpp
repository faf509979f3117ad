#include "screens/bench/looks.hpp"

namespace camside::screens {

#define QUESTION(name, where, part) QuestionLook name##_look();
#include "calc/questions.def"
#undef QUESTION

std::vector<QuestionLook> looks() {
  std::vector<QuestionLook> all;
// A question in a place of its own has no look here.
#define ADD_Bench(name) all.push_back(name##_look());
#define ADD_Desk(name) all.push_back(name##_look());
#define ADD_OwnPlace(name)
#define QUESTION(name, where, part) ADD_##where(name)
#include "calc/questions.def"
#undef QUESTION
  return all;
}

}  // namespace camside::screens
