// Due: the road line of each item from its last proof over now to the next look.
#include "screens/look_parts.hpp"
#include "screens/question_screen.hpp"

namespace camside::screens {

QuestionLook inspection_due_look() {
  QuestionLook look;
  look.kind = "inspection_due";
  return look;
}

}  // namespace camside::screens
