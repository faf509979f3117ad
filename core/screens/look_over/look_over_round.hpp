// The round: one question, large; what it means; what to say; and the three answers, one tap each.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/look_over/look_over.hpp"
#include "screens/widgets/ui.hpp"

namespace camside::screens {

struct RoundQuestion {
  const look_over::Question* question = nullptr;
  std::size_t at = 0;  // from 0, among those that count
  std::size_t of = 0;
  std::string said;  // "yes", "no", "didn't see"; empty: open
  std::string tells_about;
  bool proof = false;  // a bill may carry a reading
  bool more = false;   // all of it is shown, not the first sentence of help alone
  bool cold_void = false;
  const look_over::Question* hidden_by = nullptr;
  look_over::Touched touched = look_over::Touched::Not;
};

void draw_question(Ui& ui, const RoundQuestion& round, const std::vector<std::string>& answers);
void draw_meaning(Ui& ui, const RoundQuestion& round);  // one line, or all of it
void draw_how(Ui& ui, const RoundQuestion& round);      // where to look, what to say, what hangs on it
bool draw_stop(Ui& ui, const std::string& why);         // true: tapped

struct AnswerTap {
  std::string said;  // empty: none was tapped
  bool previous = false;
};
float answers_height(const Ui& ui);
AnswerTap draw_answers(Ui& ui, const RoundQuestion& round);

// "stone cold", "warm", "not": what the hand felt before it ran. The value of the choice tapped; empty: none.
std::string draw_touched(Ui& ui, look_over::Touched now, bool entered);

}  // namespace camside::screens
