#include "calc/questions.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace camside {

#define QUESTION(name, where, part) \
  namespace name {                  \
  Question question();              \
  }
#include "calc/questions.def"
#undef QUESTION

namespace {

Question listed(Question question, Where where, Part part) {
  question.where = where;
  question.part = part;
  return question;
}

}  // namespace

std::span<const Question> questions() {
  static const std::vector<Question> all{
#define QUESTION(name, where, part) listed(name::question(), Where::where, Part::part),
#include "calc/questions.def"
#undef QUESTION
  };
  return all;
}

const Question* find_question(std::string_view name) {
  const std::span<const Question> all = questions();
  const auto it = std::find_if(all.begin(), all.end(), [&](const Question& q) { return q.kind.name == name; });
  return it == all.end() ? nullptr : &*it;
}

}  // namespace camside
