// Question: what does this used bike hide on its cam side, what would that cost, what is it worth today, and what is
// still to be looked at?
//
// Method (for each engine and drive the bike can have; with several the dearest counts until that is settled)
//   1 Chance of each risk by odometer: straight lines between the book's points, level outside; no odometer: the last
//     point, the first for the lower end. A life curve of your own in its place (calc/life): 1 − exp(−(odometer/η)^β),
//     as if the part were as old as the bike.
//   2 Answers move the odds, each sign by itself (Bayes): p/(1−p) = p0/(1−p0) · Π L, for a bad answer
//     L = (f + (1 − f) s)/f, for a good one L = 1 − s; f the chance of the bad answer without cause, s the chance that
//     the fault shows. "Didn't see" leaves them. Where the good answer is silence, L = 1: silence proves nothing. A
//     good answer that something hides (a warm engine the start, fresh oil the glitter) counts as not seen. A sign
//     that several faults give counts for each: that errs on the buyer's side.
//   3 Must do anyway: no proof (bad answer or not seen) from `must_from` on: chance 1, however good the rest looks.
//     Where the risk has an interval (`every`), a bill without a reading, or older than it, is no proof. What is opened
//     for another work is done with it (`must_with`); some bad answers are work by themselves (`must_when_bad`: a leak
//     seen). Where the part itself was looked at, that decides: seen bad it must be done in spite of a bill, seen good
//     not. Proof with a reading on it: the chance of 1 by the distance since, and the bill itself is no sign any more.
//     A bill above the odometer, or of a day to come, proves nothing and is the bad answer to the question marked
//     `clock`.
//   4 Expected cost = chance · (best + 4 · likely + worst)/6 (PERT mean). Knock off = their sum. Its range is what nine
//     bikes in ten that answer like this one really cost: each fault comes true or not, each by itself
//     (look_over_range.hpp). Beside it: what the sum becomes once all "didn't see" came out good, and bad.
//   5 Offer by your figures = asking price − engine work (knock off), not below nothing, with the range that follows.
//     None where a reason to walk away is met: no price makes up for it. One figure only once each such reason was
//     looked at (in_one_sentence).
//   6 Value of looking, for each "didn't see" by itself: what the sum becomes by a good and by a bad answer, and by how
//     much that narrows the range: 3.29 · (d − √(d² − P(bad) · P(good) · (mean if bad − mean if good)²)), d the
//     standard deviation of what it really costs, 3.29 d the width of nine in ten of a bell curve; P(bad) = 1 − (1 − f)
//     Π(1 − p s). Looks in the order a buyer would take: what can end it first (it costs nothing and spares the rest),
//     then proof that takes a "must do" off the sum, then by value; last what needs a stone-cold engine that there
//     isn't.
//   7 What moves it: the sum with one thing changed and all others as they are; look_over_sensitivity.hpp has the ends.
// Sources: Bayes' rule in odds form and the PERT mean, (a + 4m + b)/6, are textbook arithmetic; chances, signs and
// money come from the book, each with its own source, none of them published.
//
// Inputs: year 1900-2100 or none, own engine by id, odometer 0-1,000,000 mi or none, asking price 0-1e6 or none, was
// the engine touched first, answers (yes, no, didn't see), own money, own life curves, the book. describe() is the
// list. Cold start: answers marked "stone cold only" count only when the engine was touched and found stone cold.
// Placeholder money of what must be done never yields an offer until confirmed or replaced; other made-up prices stay
// marked (prices_rest_on_nobody).
// Result: must do anyway / may find / walk away if (met, not seen, ruled out); risks by expected cost; sum to knock off
// with range; offer with range; value of looking; swings. No verdict: the buyer decides. Accuracy: arithmetic to 1e-9,
// ends of a range to about 1/2,000 of all the worst costs; the chances are rough, and no range covers that: see 7. Not
// covered: what else ages (frame, tyres, electrics), papers' legal worth, haggling, an older bill's worth beyond its
// distance. Asking price: taken as that of a sound bike. Findings: 1801-1809 refusals · 1820-1842 · 1930-1936 faults of
// the book · 200-204 fields.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "calc/look_over/look_over_book.hpp"
#include "fields/field.hpp"
#include "findings/outcome.hpp"
#include "units/quantity.hpp"

namespace camside::life {
struct Input;
struct Result;
}  // namespace camside::life

namespace camside::look_over {

enum class Said : std::uint8_t { Yes, No, DidntSee, None };  // None: there is nothing to look at, "no papers"
enum class Touched : std::uint8_t { Cold, Warm, Not };

struct Answer {
  std::string question;
  std::optional<Said> said;
  std::optional<Distance> reading = std::nullopt;  // of the odometer when it was done, as the proof says
  std::optional<Date> day = std::nullopt;          // when, as the proof says; must not be to come
};
void describe(FieldVisitor& v, Answer& a);

// The user's own figures for one risk; they replace the book's.
struct OwnCost {
  std::string risk;
  std::optional<Money> best;
  std::optional<Money> likely;
  std::optional<Money> worst;
};
void describe(FieldVisitor& v, OwnCost& c);

// A life curve of the user's own for one risk; it replaces the book's chances.
struct OwnLife {
  std::string risk;
  std::optional<double> shape;
  std::optional<Distance> characteristic_life;
  std::optional<Source> source;
};
void describe(FieldVisitor& v, OwnLife& l);
// Our own choice: wider than any part wears, so that what a fit gives for a list of few is still taken.
inline constexpr double least_shape = 0.05;
inline constexpr double most_shape = 500.0;
inline constexpr Distance least_characteristic_life = Distance::km(0.1);
inline constexpr Distance most_characteristic_life = Distance::km(1e7);

struct Input {
  std::optional<int> year;
  std::string engine;  // id; empty: by year
  std::string drive;   // id of what turns the cams now, or drive_not_known; empty: as the engine was built
  std::optional<Distance> odometer;
  std::optional<Money> asking;
  Touched touched = Touched::Not;
  std::vector<Answer> answers;
  std::vector<OwnCost> costs;
  std::vector<OwnLife> lives;
  bool money_confirmed = false;  // the placeholders are mine now
  std::string currency;          // stands beside every sum; may be empty
  std::optional<Date> today;     // no bill can be of a later day
  Book known;
};
inline constexpr std::string_view drive_not_known = "not known";
void describe(FieldVisitor& v, Input& in);

struct Span {
  Money low;
  Money middle;
  Money high;
};

// "likely", "may be", "seldom": a buyer's screen shows no percentages.
enum class Likelihood : std::uint8_t { Seldom, MayBe, Likely };
std::string_view word_of(Likelihood l);

struct Found {
  std::string risk;  // id
  std::string name;
  bool must = false;  // no proof: done anyway
  double chance = 0.0;
  double chance_low = 0.0;  // all that was not seen answered well, and badly
  double chance_high = 0.0;
  Likelihood likelihood = Likelihood::Seldom;  // of `chance`
  std::string chance_from;                     // with what each answer did to it
  std::string why_must;                        // empty: it needn't
  Span cost;                                   // best, likely, worst
  Money expected;                              // what it adds to the sum
  bool placeholder = false;
  std::string settled_by;
  std::string say;
};

enum class Met : std::uint8_t { Met, NotMet, NotSeen };
std::string_view word_of(Met m);

struct WalkAway {
  std::string question;  // id
  std::string why;
  Met met = Met::NotSeen;
};

struct Look {
  std::string question;  // id
  std::string text;
  std::string say;
  double chance_bad = 0.0;
  Money if_good;  // the sum to knock off then
  Money if_bad;
  Money narrows;  // by how much the range is expected to shrink
  bool can_end_it = false;
  bool answered = false;     // "didn't see", or what was said doesn't count
  bool spares_must = false;  // a good answer is proof of what must else be done anyway
  bool needs_cold = false;
  std::string hidden_by;  // id of the question whose answer makes the good one given here worth nothing
};

// What the sum to knock off would be with one answer or assumption changed and all others as they are.
struct Swing {
  enum class Of : std::uint8_t { Answer, Cost, Chance, Engine };
  Of of = Of::Answer;
  std::string id;  // of the question or the risk; empty for the engine
  std::string text;
  Money low;  // the sum as it is lies between the two
  Money high;
};
std::string_view word_of(Swing::Of of);

struct Result {
  std::string engine;                           // id of the one counted
  std::string drive;                            // and of what turns its cams
  std::vector<std::string> engines;             // all it can be, that one among them
  std::vector<std::string> drives;              // likewise
  std::vector<std::string> drives_it_can_have;  // to pick from, as built first
  std::vector<std::string>
      questions;                    // ids of those that count: first the few, as one walks round a bike; then by worth
  std::size_t first = 0;            // how many are the few
  std::size_t rest_open = 0;        // of the others, not looked at
  Money rest_narrows;               // and by how much the range is expected to shrink by all of them
  std::vector<Found> must_do;       // by cost
  std::vector<Found> may_find;      // by expected cost
  std::vector<Found> elsewhere;     // only of an engine that it may be as well; not in the two above
  std::vector<WalkAway> walk_away;  // those met first
  std::vector<Look> looks;          // in the order to take them
  std::vector<Swing> swings;        // what moves the sum, widest first
  Span knock_off;                   // nine bikes in ten between low and high
  Span once_seen;                   // the sum once all that was not seen came out good (low) and bad (high)
  std::optional<Span> offer;
  std::size_t may_end_it = 0;  // reasons to walk away that nobody looked at: until then one figure is bluff
  Outcome outcome;
};

tl::expected<Result, Findings> solve(const Input& input);

// --- in words ---

// On one page of plain text: to be sent to a friend, kept, or printed by the command line. No percentages: they are in
// the working.
std::string money_text(Money m);         // "13,691": whole, no cents
std::string rough_text(Money m);         // "13,690": to the next ten from a hundred on, as nobody knows it better
std::string rough_range(const Span& s);  // "490 to 13,690"
std::string with_currency(const std::string& sum, const std::string& currency);  // "$6,340", "6,340 kr"
std::string bike_text(const Input& in);  // "2004 · 38,200 mi (61,477 km) · asking 6,800"
// "Offer 6,340: shoes 490, inner bearings 220, the rest 450". Rounded so that the parts add up to it.
std::string in_one_sentence(const Input& in, const Result& r);
Money sum_shown(const Result& r);                          // that of its parts
std::string likely_range(const Input& in, const Span& s);  // "likely range, rough guess: 490 to 2,300"
bool walk_away_met(const Result& r);
bool contradicts_clock(const Input& in, const Answer& a);  // a bill above the odometer, or of a day to come
bool prices_rest_on_nobody(const Result& r);               // a placeholder is among those counted
std::vector<std::string> told_by(const Input& in, const Result& r, std::string_view question);  // names of risks
std::string why_no_offer(const Input& in, const Result& r);  // empty where there is one

std::string summary(const Input& in, const Result& r);  // lines that end with '\n'
std::string percent(double chance);

// --- from a life list (life.hpp) into a look-over ---

// A list that gives only a bound has no curve to give, and one whose curve lies outside what a look-over takes
// (describe() of OwnLife) none that could be counted with: nothing then. Its 95 % interval does not go along.
std::optional<OwnLife> own_life(const life::Input& in, const life::Result& r);  // whose risk is still to be said

bool same_curve(const OwnLife& a, const OwnLife& b);  // whatever the risk

// "cam chain shoes: 4 of 12 failed"
std::string list_in_words(const life::Input& in, const life::Result& r);

}  // namespace camside::look_over
