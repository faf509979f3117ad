// Pushrods: turns and flats huge, the direction that lengthens, the four rods and the engine lock.
#include "screens/look_parts.hpp"
#include "screens/question_screen.hpp"

namespace camside::screens {

QuestionLook pushrod_look() {
  QuestionLook look;
  look.kind = "pushrod";
  return look;
}

}  // namespace camside::screens
