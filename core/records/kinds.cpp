#include "records/kinds.hpp"

#include <algorithm>
#include <vector>

#include "calc/questions.hpp"

namespace camside::records {

std::span<const RecordKind> kinds() {
  static const std::vector<RecordKind> all = [] {
    std::vector<RecordKind> of_questions;
    for (const Question& question : questions()) of_questions.push_back(question.kind);
    return of_questions;
  }();
  return all;
}

const RecordKind* find_kind(std::string_view name, std::span<const RecordKind> among) {
  const auto it = std::find_if(among.begin(), among.end(), [&](const RecordKind& k) { return k.name == name; });
  return it == among.end() ? nullptr : &*it;
}

}  // namespace camside::records
