#include "calc/pushrod/pushrod.hpp"
#include "calc/question.hpp"

namespace camside::pushrod {

camside::Question question();  // for calc/questions.cpp

camside::Question question() {
  camside::Question q;
  q.kind =
      kind_of("pushrod", "Pushrods", "How many turns and flats set the rods, and what preload does that give?", &solve);
  q.tile = {"Pushrods", "How many turns and flats?"};
  q.numbers = {1400, 1499};
  return q;
}

}  // namespace camside::pushrod
