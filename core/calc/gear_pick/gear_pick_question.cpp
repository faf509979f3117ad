#include "calc/gear_pick/gear_pick.hpp"
#include "calc/question.hpp"

namespace camside::gear_pick {

camside::Question question();  // for calc/questions.cpp

camside::Question question() {
  camside::Question q;
  q.kind = kind_of("gear_pick", "Gears to order",
                   "Which sizes of gears bring the lash into its window, and which come nearest?", &solve);
  q.tile = {"Gears to order", "Which sizes bring the lash into its window?"};
  q.numbers = {1300, 1399};
  return q;
}

}  // namespace camside::gear_pick
