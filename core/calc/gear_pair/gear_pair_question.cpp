#include "calc/gear_pair/gear_pair.hpp"
#include "calc/question.hpp"

namespace camside::gear_pair {

camside::Question question();  // for calc/questions.cpp

camside::Question question() {
  camside::Question q;
  q.kind = kind_of("gear_pair", "Gear pair",
                   "How much lash have these two gears at this centre distance, and can the pair run at all?", &solve);
  q.tile = {"Gear pair", "What lash do these two gears make?"};
  q.numbers = {1100, 1149};
  return q;
}

}  // namespace camside::gear_pair
