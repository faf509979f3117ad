#include "calc/look_over/look_over.hpp"
#include "calc/question.hpp"

namespace camside::look_over {

camside::Question question();  // for calc/questions.cpp

camside::Question question() {
  camside::Question q;
  q.kind = kind_of("look_over", "Look-over",
                   "What does this used bike hide on its cam side, what would that cost, and what is it worth today?",
                   &solve);
  q.numbers = {1800, 1899};
  q.kind.summary_text = [](const Solved& s) { return summary(*s.input_as<Input>(), *s.result_as<Result>()); };
  return q;
}

}  // namespace camside::look_over
