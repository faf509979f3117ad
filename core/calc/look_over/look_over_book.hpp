// Inside of look_over.hpp: what is known of engines, in the form a look-over counts with. The program's own data is in
// assets/knowledge (read by core/knowledge); a saved look-over carries the book it was made with.
//
// A sign is how a fault shows at a question. `shows`: the chance that this fault by itself gives the bad answer;
// `without_cause` of the question: the chance of the bad answer with nothing wrong. So with the fault
// P(bad) = f + (1 − f) s, without it f.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "fields/field.hpp"
#include "findings/source.hpp"
#include "units/quantity.hpp"

namespace camside::look_over {

// What can turn the cams. A bike may have been converted, so this is a fact of the bike and not of its engine.
struct Drive {
  std::string id;
  std::string name;
  std::string tell;  // how to tell it from outside; may be empty
};
void describe(FieldVisitor& v, Drive& d);

struct Engine {
  std::string id;
  std::string name;                 // what it is, never a maker's name
  std::string drive;                // cam drive as built, in words
  std::vector<std::string> drives;  // those it can have, as built first
  std::optional<int> first_year;
  std::optional<int> last_year;
  bool own = false;     // the user's own; only when picked, never by year
  bool picked = false;  // only when picked too: it was built beside the others
  std::string note;
  std::optional<Source> source;
};
void describe(FieldVisitor& v, Engine& e);

enum class YesNo : std::uint8_t { Yes, No };

// Where a question sends the eye, the hand or the ear; a screen draws it.
enum class LookAt : std::uint8_t {
  Barrels,
  BottomEnd,
  CamSide,
  CoverScrews,
  CoverAndBase,
  Lifters,
  BoxesAndTubes,
  AirFilter,
  OilOnARag,
  Shoes,
};

struct Question {
  std::string id;
  std::string text;   // to be answered yes or no
  std::string means;  // what hangs on it and how to look; may be empty
  YesNo bad = YesNo::No;
  std::string say;          // how to ask the seller for it; may be empty
  bool cold_only = false;   // void when the engine was not stone cold
  bool silence = false;     // the good answer is silence, which proves nothing
  bool warm_hides = false;  // the good answer counts only when the engine was stone cold
  std::string hidden_by;    // id of the question whose bad answer makes the good one here worth nothing
  std::string walk_away;    // why the bad answer ends it; empty: it doesn't
  std::string none;         // a third answer, "No papers": there is nothing to look at; empty: it has none
  bool clock = false;       // a bill that contradicts the odometer or today is the bad answer here, whatever was said
  std::string fault;        // the bad answer as a fault of the bike, in few words; empty: it is none
  std::optional<LookAt> look_at;
  std::optional<double> without_cause;
  std::optional<Source> source;
};
void describe(FieldVisitor& v, Question& q);

struct Cost {
  std::optional<Money> best;
  std::optional<Money> likely;
  std::optional<Money> worst;
  bool placeholder = false;  // nobody's figure: no offer rests on it
  std::optional<Source> source;
};
void describe(FieldVisitor& v, Cost& c);

// Straight lines between these, level outside them.
struct ChanceAt {
  std::optional<Distance> distance;
  std::optional<double> chance;
};
void describe(FieldVisitor& v, ChanceAt& c);

struct Sign {
  std::string question;
  std::optional<double> shows;
  std::optional<Source> source;
};
void describe(FieldVisitor& v, Sign& s);

struct Risk {
  std::string id;
  std::string name;
  std::vector<std::string> engines;  // none: all
  std::vector<std::string> drives;   // none: whatever turns the cams
  std::string why;
  std::vector<ChanceAt> chances;
  std::optional<Source> source;            // of the chances
  Cost cost;                               // to put it right
  std::string proof;                       // question whose good answer is proof that it was done; empty: chance alone
  Distance must_from;                      // with no proof it must be done anyway from this odometer on
  std::optional<Distance> every;           // a proof older than this is none; nor is one without a reading
  std::string must_with;                   // risk with whose work it is done too, unless there is proof
  std::vector<std::string> must_when_bad;  // questions whose bad answer makes it work, whatever else is known
  std::string sight;  // question at which the part itself is looked at: seen bad it must be done, seen good not
  std::vector<Sign> signs;
  std::string settled_by;
  std::string say;  // to the seller
};
void describe(FieldVisitor& v, Risk& r);

struct Book {
  std::vector<Drive> drives;
  std::vector<Engine> engines;
  std::vector<Question> questions;
  std::vector<Risk> risks;
};
void describe(FieldVisitor& v, Book& b);

// What no range can tell: ids used twice, names of nothing, costs and chances out of order. `at`: path of the book.
Findings book_faults(const Book& book, const std::string& at = "");

const Question* question_of(const Book& book, std::string_view id);  // none: it isn't in the book
const Engine* engine_of(const Book& book, std::string_view id);
const Drive* drive_of(const Book& book, std::string_view id);
const Risk* risk_of(const Book& book, std::string_view id);
bool asks_for_proof(const Book& book, std::string_view question);  // a good answer there is proof for some risk
bool tells(const Risk& r, std::string_view question);              // by a sign, a proof or a look at the part

bool in_order(const Cost& c);  // best ≤ likely ≤ worst

}  // namespace camside::look_over
