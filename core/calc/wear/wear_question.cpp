#include "calc/question.hpp"
#include "calc/wear/wear.hpp"
#include "findings/safety.hpp"

namespace camside::wear {

camside::Question question();  // for calc/questions.cpp

camside::Question question() {
  camside::Question q;
  q.kind = kind_of("wear", "Wear", "Is this shoe thick enough, and at which distance does its wear reach the limit?",
                   &solve);
  q.tile = {"Wear", "How thick is the shoe, and when is it through?"};
  q.numbers = {1600, 1699};
  q.kind.csv_list = "readings";
  q.before = [] { return Findings{safety::shoe_under_load()}; };
  return q;
}

}  // namespace camside::wear
