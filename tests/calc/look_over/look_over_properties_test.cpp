#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "calc/look_over/look_over.hpp"
#include "calc/look_over/look_over_inputs.hpp"

namespace camside::look_over {
namespace {

constexpr double rounding = 1e-9;  // of sums of a few thousand

bool coin() {
  return *rc::gen::arbitrary<bool>();
}
double whole(int low, int high) {
  return static_cast<double>(*rc::gen::inRange(low, high));
}
double share() {
  return whole(1, 100) / 100.0;
}

Risk any_risk(int number, int questions) {
  const double best = whole(0, 500);
  const double likely = best + whole(0, 500);
  Risk r = risk("r" + std::to_string(number), share(), cost(best, likely, likely + whole(0, 2'000)));
  r.chances.push_back({Distance::miles(50'000.0), std::max(*r.chances[0].chance, share())});
  for (int q = 0; q < questions; ++q) {
    if (coin()) r.signs.push_back(sign("q" + std::to_string(q), share()));
  }
  if (coin()) r.sight = "q" + std::to_string(*rc::gen::inRange(0, questions));
  if (coin()) r.proof = "q" + std::to_string(*rc::gen::inRange(0, questions));
  r.must_from = Distance::miles(whole(0, 60'000));
  if (coin()) r.engines = {coin() ? "a" : "b"};
  return r;
}

// One or two engines that the year leaves open, up to five questions and risks, some questions not seen.
Input any_input() {
  Input in = small_input();
  in.known = {};
  in.known.engines = {engine("a", {}, {})};
  if (coin()) in.known.engines.push_back(engine("b", {}, {}));
  const int questions = *rc::gen::inRange(1, 6);
  for (int q = 0; q < questions; ++q) {
    in.known.questions.push_back(question("q" + std::to_string(q), YesNo::Yes, share()));
    in.known.questions.back().silence = coin();
    in.known.questions.back().warm_hides = coin() && coin();
    if (q > 0 && coin()) in.known.questions.back().hidden_by = "q" + std::to_string(*rc::gen::inRange(0, q));
    in.answers.push_back({"q" + std::to_string(q), *rc::gen::element(Said::Yes, Said::No, Said::DidntSee)});
  }
  const int risks = *rc::gen::inRange(1, 6);
  for (int i = 0; i < risks; ++i) {
    Risk r = any_risk(i, questions);
    if (in.known.engines.size() == 1) r.engines.clear();
    for (Answer& a : in.answers)
      if (a.question == r.proof && coin()) a.reading = Distance::miles(whole(0, 40'000));  // some above the odometer
    in.known.risks.push_back(std::move(r));
  }
  if (coin()) in.odometer.reset();
  in.touched = *rc::gen::element(Touched::Cold, Touched::Warm);
  in.asking = Money::amount(whole(0, 10'000));
  return in;
}

Result solved(const Input& in) {
  auto r = solve(in);
  RC_ASSERT(r.has_value());
  return *r;
}

Input with_answer(Input in, const std::string& question, Said said) {
  for (Answer& a : in.answers)
    if (a.question == question) a.said = said;
  return in;
}

double width(const Span& s) {
  return (s.high - s.low).in_amount();
}

RC_GTEST_PROP(LookOverProperties, AWorseAnswerNeverRaisesTheOffer, ()) {
  Input in = any_input();
  Answer& one = in.answers[*rc::gen::inRange<std::size_t>(0, in.answers.size())];
  Span last{Money::amount(1e9), Money::amount(1e9), Money::amount(1e9)};
  for (const Said said : {Said::No, Said::DidntSee, Said::Yes}) {  // the bad answer is yes
    one.said = said;
    const Span offer = *solved(in).offer;
    for (Money Span::*part : {&Span::low, &Span::middle, &Span::high})
      RC_ASSERT((offer.*part).in_amount() <= (last.*part).in_amount() + rounding);
    last = offer;
  }
}

RC_GTEST_PROP(LookOverProperties, NotSeeingLeavesMoreOpen, ()) {
  Input in = any_input();
  const Span before = solved(in).once_seen;
  in.answers[*rc::gen::inRange<std::size_t>(0, in.answers.size())].said = Said::DidntSee;
  const Span after = solved(in).once_seen;
  RC_ASSERT(after.low.in_amount() <= before.low.in_amount() + rounding);
  RC_ASSERT(after.high.in_amount() >= before.high.in_amount() - rounding);
}

RC_GTEST_PROP(LookOverProperties, NothingIsOpenOnceAllWasSeen, ()) {
  Input in = any_input();
  in.odometer = Distance::miles(30'000.0);
  in.engine = "a";
  in.touched = Touched::Cold;
  for (Question& q : in.known.questions) q.hidden_by.clear();
  for (Answer& a : in.answers) {
    a.said = coin() ? Said::Yes : Said::No;
    if (contradicts_clock(in, a)) a.reading.reset();
  }
  const Result r = solved(in);
  RC_ASSERT(std::abs(width(r.once_seen)) <= rounding);
  RC_ASSERT(r.looks.empty());
}

RC_GTEST_PROP(LookOverProperties, TheOrderOfTheAnswersDoesNotMatter, ()) {
  Input in = any_input();
  const Result a = solved(in);
  std::rotate(
      in.answers.begin(),
      in.answers.begin() + *rc::gen::inRange<std::ptrdiff_t>(0, 6) % static_cast<std::ptrdiff_t>(in.answers.size()),
      in.answers.end());
  if (coin()) std::reverse(in.answers.begin(), in.answers.end());
  const Result b = solved(in);
  RC_ASSERT(a.offer->middle == b.offer->middle);
  RC_ASSERT(a.knock_off.low == b.knock_off.low);
  RC_ASSERT(a.knock_off.high == b.knock_off.high);
  RC_ASSERT(a.engine == b.engine);
  RC_ASSERT(a.looks.size() == b.looks.size());
  for (std::size_t i = 0; i < a.looks.size(); ++i) RC_ASSERT(a.looks[i].question == b.looks[i].question);
}

RC_GTEST_PROP(LookOverProperties, TheRangeHoldsTheMiddleAndEachChanceItsOwn, ()) {
  const Result r = solved(any_input());
  RC_ASSERT(r.knock_off.low.in_amount() <= r.knock_off.middle.in_amount() + rounding);
  RC_ASSERT(r.knock_off.middle.in_amount() <= r.knock_off.high.in_amount() + rounding);
  RC_ASSERT(r.once_seen.low.in_amount() <= r.knock_off.middle.in_amount() + rounding);
  RC_ASSERT(r.knock_off.middle.in_amount() <= r.once_seen.high.in_amount() + rounding);
  RC_ASSERT(r.offer->low >= Money{});
  for (const auto* list : {&r.must_do, &r.may_find}) {
    for (const Found& f : *list) {
      RC_ASSERT(f.chance_low <= f.chance + rounding && f.chance <= f.chance_high + rounding);
      RC_ASSERT(f.chance > 0.0 && f.chance < 1.0);
    }
  }
}

RC_GTEST_PROP(LookOverProperties, ALookNeverNarrowsByLessThanNothingAndSaysWhatTheAnswersGive, ()) {
  const Input in = any_input();
  const Result r = solved(in);
  for (const Look& l : r.looks) {
    RC_ASSERT(l.narrows >= Money{});
    if (!l.needs_cold && l.hidden_by.empty()) {
      RC_ASSERT(l.if_good == solved(with_answer(in, l.question, Said::No)).knock_off.middle);
      RC_ASSERT(l.if_bad == solved(with_answer(in, l.question, Said::Yes)).knock_off.middle);
    }
    RC_ASSERT(l.chance_bad > 0.0 && l.chance_bad < 1.0);
  }
}

// ---- what moves it, by solving anew with each thing changed ----

using Ends = std::vector<double>;

double sum_of(const Input& in) {
  return solved(in).knock_off.middle.in_amount();
}

Ends with_answers(const Input& in, const std::string& question) {
  Ends ends;
  for (const Said said : {Said::Yes, Said::No, Said::DidntSee}) ends.push_back(sum_of(with_answer(in, question, said)));
  return ends;
}

Ends with_costs(const Input& in, const Risk& risk) {
  Ends ends{sum_of(in)};
  for (const auto& end : {risk.cost.best, risk.cost.worst}) {
    Input changed = in;
    changed.costs.push_back({risk.id, end, end, end});
    ends.push_back(sum_of(changed));
  }
  return ends;
}

bool has_reading(const Input& in, const Risk& risk) {
  return std::any_of(in.answers.begin(), in.answers.end(),
                     [&](const Answer& a) { return a.question == risk.proof && a.reading; });
}

// At 30,000 mi of the 50,000 between the two points of any_risk(), or at the last one.
double chance_now(const Input& in, const Risk& risk) {
  const double from = *risk.chances.front().chance;
  const double to = *risk.chances.back().chance;
  return in.odometer ? from + 0.6 * (to - from) : to;
}

Ends with_chances(const Input& in, const Risk& risk) {
  Ends ends{sum_of(in)};
  const double p = chance_now(in, risk);
  for (const double chance : {p / (2.0 - p), 2.0 * p / (1.0 + p)}) {  // odds halved, doubled
    Input changed = in;
    for (Risk& r : changed.known.risks) {
      if (r.id == risk.id) r.chances = {{Distance::miles(0.0), chance}};
    }
    ends.push_back(sum_of(changed));
  }
  return ends;
}

Ends with_engines(const Input& in) {
  Ends ends;
  for (const Engine& e : in.known.engines) {
    Input changed = in;
    changed.engine = e.id;
    ends.push_back(sum_of(changed));
  }
  return ends;
}

// The swing says these ends; one that says nothing must have none.
void holds(const Result& r, Swing::Of of, const std::string& id, const Ends& ends) {
  const auto [low, high] = std::minmax_element(ends.begin(), ends.end());
  const auto it =
      std::find_if(r.swings.begin(), r.swings.end(), [&](const Swing& s) { return s.of == of && s.id == id; });
  if (it == r.swings.end()) {
    RC_ASSERT(*high - *low <= 2 * rounding);
    return;
  }
  RC_ASSERT(std::abs(it->low.in_amount() - *low) <= rounding);
  RC_ASSERT(std::abs(it->high.in_amount() - *high) <= rounding);
}

RC_GTEST_PROP(LookOverProperties, EachSwingIsWhatSolvingAnewGives, ()) {
  const Input in = any_input();
  const Result r = solved(in);
  for (const Question& q : in.known.questions) holds(r, Swing::Of::Answer, q.id, with_answers(in, q.id));
  for (const Risk& risk : in.known.risks) {
    holds(r, Swing::Of::Cost, risk.id, with_costs(in, risk));
    if (!has_reading(in, risk)) holds(r, Swing::Of::Chance, risk.id, with_chances(in, risk));
  }
  holds(r, Swing::Of::Engine, "", with_engines(in));
}

RC_GTEST_PROP(LookOverProperties, SwingsHoldTheSumAndStandWidestFirst, ()) {
  const Result r = solved(any_input());
  double last = std::numeric_limits<double>::infinity();
  for (const Swing& s : r.swings) {
    RC_ASSERT(s.low <= r.knock_off.middle && r.knock_off.middle <= s.high);
    RC_ASSERT((s.high - s.low).in_amount() <= last);
    last = (s.high - s.low).in_amount();
  }
}

}  // namespace
}  // namespace camside::look_over
