#include "screens/widgets/due_mark.hpp"

namespace camside::screens {

using inspection_due::State;

ImU32 colour_of(const Theme& theme, State state) {
  switch (state) {
    case State::Overdue:
      return theme.outside;
    case State::DueSoon:
      return theme.not_proven;
    case State::Good:
      return theme.within;
    case State::NotKnown:
      break;
  }
  return theme.quiet;
}

Verdict shape_of(State state) {
  return state == State::Overdue ? Verdict::Outside : state == State::Good ? Verdict::Within : Verdict::NotProven;
}

}  // namespace camside::screens
