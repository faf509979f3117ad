// A due list in words, for the command line, the screens and the phone's calendar alike. Distances in the unit of the
// bike's clock; in `system` when nobody said which that is.
#pragma once

#include <string>
#include <vector>

#include "due/due_board.hpp"
#include "exchange/calendar.hpp"

namespace camside::due_board {

struct RowWords {
  std::string state;    // "Overdue by 11,300 mi", "Due now, No proof", "Due with: Tensioner shoes, No proof"
  std::string found;    // "Found at its limit on 2024-05-12, nothing done since"; or how it was seen worn
  std::string next;     // "Due at 71,300 mi, about 2027-03-02 (2026-11-10 to 2027-08-01)"; empty: not known
  std::string why;      // "Why: every 30,000 mi (48,280 km); common practice, no published source"
  std::string put_off;  // "Put off until 2026-07-01: parts on their way"; empty: not put off
  std::string to_log;   // "When done, log a finding of Tensioner shoes"
};
RowWords words_of(const History& history, const Row& row, System system);

std::string words_of(const Fault& fault);
const char* drive_not_known_words();

std::string print_board(const History& history, const Board& board, System system);

// One event for each row that is not good, was put off, or has a day. A row that is overdue, or of which no day can be
// told, stands on the day of the list; one that was put off, on the day it was put off to.
std::vector<exchange::CalendarEvent> reminders(const History& history, const Board& board, System system);

}  // namespace camside::due_board
