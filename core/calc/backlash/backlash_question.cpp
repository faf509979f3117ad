#include "calc/backlash/backlash.hpp"
#include "calc/question.hpp"
#include "findings/safety.hpp"

namespace camside::backlash {

camside::Question question();  // for calc/questions.cpp

camside::Question question() {
  camside::Question q;
  q.kind = kind_of("backlash", "Backlash",
                   "How much lash has this mesh over its whole cycle, and does it stand in the window of the sheet?",
                   &solve);
  q.tile = {"Gear lash (backlash)", "How much play, and where is it tight?"};
  q.numbers = {1200, 1299};
  q.kind.csv_list = "readings";
  q.before = [] { return Findings{safety::turn_by_hand()}; };
  return q;
}

}  // namespace camside::backlash
