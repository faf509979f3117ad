#include "calc/question.hpp"
#include "calc/torque/torque.hpp"

namespace camside::torque {

camside::Question question();  // for calc/questions.cpp

camside::Question question() {
  camside::Question q;
  q.kind = kind_of("torque", "Torque", "Where is the torque wrench set, with an extension on it?", &solve);
  q.tile = {"Torque", "Where to set the wrench, with an extension?"};
  q.numbers = {2000, 2099};
  return q;
}

}  // namespace camside::torque
