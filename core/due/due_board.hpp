// A bike's due list from its log: what is looked after by the years of its engine and by the owner's own rules, when it
// was last done and with what proof, when it is next due and why then, and what was put off.
//
// The arithmetic is that of calc/inspection_due/inspection_due.hpp; this is the way to it from a log, in two steps.
// history_of() reads a bike's entries and finds the rate of riding: the long part, made anew when the bike's log has
// grown or the day has changed. board_of() judges a history: short enough to do for all bikes at once.
//
// From the log, current entries only:
//   odometer, clock     the odometer's log; so are the readings of services and findings, but for hearsay
//   service, finding    done, by the name of the item (capitals and blanks around it don't matter). Proof: own entry,
//                       photo, paper. A finding counts where a look is what is due and it was found good or worn;
//                       "at limit" and "failed" don't reset the count: the item is due soon or overdue until a service.
//                       One seen worn has the shorter interval of the worn until a service, or an owner's rule made
//                       since. The name of a whole ("Tensioner shoes") stands for each of its parts, but for a good
//                       look at a part that the whole hides. What else was found failed or at its limit stands beside
//                       the list until a service of it.
//   facts               the engine's items, of the drive it has now: a converted bike has none of the old one's
//   rule                the owner's interval goes before the usual one of that name; the latest rule holds
//   snooze              until its day or reading, or until the item was done: the row says that it was put off and why.
//                       It changes no state and hides nothing
// A reading that can't be right (a digit too many, further than a bike goes, after today) is left out with a caution.
// Of more than 500 readings, evenly chosen ones; swaps and the last one always.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "calc/inspection_due/inspection_due.hpp"
#include "knowledge/knowledge.hpp"
#include "log/log_entry_kinds.hpp"
#include "log/log_view.hpp"

namespace camside::due_board {

inline constexpr std::size_t most_readings = 500;

struct PutOff {
  std::string reason;
  std::optional<Date> until;
  std::optional<Distance> odometer;  // on the clock of the day it was put off
  std::optional<Distance> total;     // the same summed over clocks
  std::size_t entry = 0;             // in the log, as all entries here
};

struct Bad {  // found at its limit or failed, with nothing done since
  records::entered::Grade grade = records::entered::Grade::AtLimit;
  Date day;
};

struct Worn {  // seen worn, with nothing done since
  Date day;
  bool own_interval_since = false;
};

struct Fault {  // found failed or at its limit, on something that is not looked after by an interval
  std::string part;
  records::entered::Grade grade = records::entered::Grade::Failed;
  Date day;
};

struct Watched {
  std::string note;                 // what is known of it, or the owner's reason for the interval
  bool by_finding = false;          // what to log when it is done: a finding; else a service
  bool usual = false;               // of the engine's years
  std::optional<std::size_t> rule;  // the owner's
  std::optional<PutOff> put_off;
  std::optional<Bad> bad;
  std::optional<Worn> worn;
  std::optional<Distance> every_worn;
  std::string risk;     // of the look-over, which it prevents
  std::string with;     // risk with whose work it is done too, unless there is proof
  std::string part_of;  // the whole that it belongs to
  bool hidden = false;  // a look at the whole is none at this
};

struct NotFitted {  // the owner says that the bike hasn't got it
  std::string item;
  std::string why;
  std::size_t rule = 0;
};

struct History {
  std::string bike;  // id
  std::string name;
  std::optional<System> clock;  // what the bike's odometer counts in, when someone said
  bool engine_known = false;
  std::vector<std::string> drives;  // what turns the cams; several: not known
  inspection_due::Input due;        // today, and the items with rule and services; the log is in `riding`
  std::vector<Watched> watched;     // beside due.items
  std::vector<NotFitted> not_fitted;
  std::vector<Fault> faults;
  inspection_due::Riding riding;
  Findings findings;  // readings and services left out
};

struct Row {
  std::size_t item = 0;  // in History
  inspection_due::ItemResult result;
  inspection_due::State state = inspection_due::State::NotKnown;  // the worse of the result's and of what was found
  bool put_off = false;
  std::string with;  // due for that work, as it is open then; empty: by itself
};

// What a look-over calls "must do anyway".
bool due_now(const Row& row);

struct Board {
  std::vector<Row> rows;  // first what needs looking at first; what was put off behind the rest
  std::optional<Distance> odometer;
  std::optional<Distance> ridden;
  std::optional<riding_rate::Rate> rate;
  Findings findings;  // of the history, and of judging it
};

// How the log of a bike names an engine that is known by this id; empty: it has no name for it.
std::string_view engine_choice(std::string_view id);
std::string_view engine_id(std::string_view choice);  // the way back

History history_of(const records::Log& log, const records::Bike& bike, const knowledge::Knowledge& known, Date today);
Board board_of(const History& history);

}  // namespace camside::due_board
