#include "calc/inspection_due/inspection_due.hpp"
#include "calc/question.hpp"

namespace camside::inspection_due {

camside::Question question();  // for calc/questions.cpp

camside::Question question() {
  camside::Question q;
  q.kind = kind_of("inspection_due", "Due",
                   "What is due next on this bike, by distance and by date, and what has no proof?", &solve);
  q.tile = {"Due", "What is next, and when?"};
  q.numbers = {1500, 1599};
  q.kind.csv_list = "log";
  return q;
}

}  // namespace camside::inspection_due
