// Any bytes given to the reader of what is known of engines. What opens can be used: a look-over is made from its book;
// what doesn't says what is wrong and what to do.
#include <cstdint>
#include <string_view>

#include "calc/look_over/look_over.hpp"
#include "knowledge/knowledge.hpp"
#include "promises.hpp"

namespace {

using namespace camside;

void check_look_over(const look_over::Book& book, bool answered) {
  look_over::Input in;
  in.odometer = Distance::miles(40'000.0);
  in.touched = look_over::Touched::Cold;
  in.known = book;
  if (answered)
    for (const look_over::Question& q : book.questions) in.answers.push_back({q.id, look_over::Said::No});
  const auto solved = look_over::solve(in);
  if (!solved) return check_words(solved.error());
  insist(solved->knock_off.low <= solved->knock_off.high, "the range is in order");
  insist(!solved->offer, "no price, no offer");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto read = knowledge::read_knowledge({reinterpret_cast<const char*>(data), size});
  if (!read) {
    insist(any_refusal(read.error()), "a refusal has a finding");
    check_words(read.error());
    return 0;
  }
  check_look_over(read->book, false);
  check_look_over(read->book, true);
  return 0;
}
