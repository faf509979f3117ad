#include "calc/question.hpp"
#include "calc/runout/runout.hpp"
#include "findings/safety.hpp"

namespace camside::runout {

camside::Question question();  // for calc/questions.cpp

camside::Question question() {
  camside::Question q;
  q.kind = kind_of("runout", "Runout", "How far does the shaft run out, and does that stand within its limit?", &solve);
  q.tile = {"Runout", "Is the crank true enough for gears?"};
  q.numbers = {1000, 1099};
  q.kind.examples = {"runout_swing", "runout_stations"};
  q.kind.csv_list = "stations";
  q.kind.csv_also = {{"method", "stations"}};
  q.before = [] { return Findings{safety::turn_by_hand()}; };
  return q;
}

}  // namespace camside::runout
