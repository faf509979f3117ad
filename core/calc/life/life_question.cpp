#include "calc/life/life.hpp"
#include "calc/question.hpp"

namespace camside::life {

camside::Question question();  // for calc/questions.cpp

camside::Question question() {
  camside::Question q;
  q.kind = kind_of("life", "Life", "How long do such parts live in this shop, and will this one last the next miles?",
                   &solve);
  q.tile = {"Life", "How long do such parts live?"};
  q.numbers = {1700, 1799};
  q.kind.csv_list = "parts";
  return q;
}

}  // namespace camside::life
