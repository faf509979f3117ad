#include "calc/pushrod/pushrod.hpp"
#include "calc/question.hpp"
#include "findings/safety.hpp"

namespace camside::pushrod {

camside::Question question();  // for calc/questions.cpp

camside::Question question() {
  camside::Question q;
  q.kind =
      kind_of("pushrod", "Pushrods", "How many turns and flats set the rods, and what preload does that give?", &solve);
  q.tile = {"Pushrods", "How many turns and flats?"};
  q.numbers = {1400, 1499};
  q.before = [] { return Findings{safety::turn_by_hand(), safety::let_it_cool()}; };
  return q;
}

}  // namespace camside::pushrod
