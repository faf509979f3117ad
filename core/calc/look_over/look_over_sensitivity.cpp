#include "calc/look_over/look_over_sensitivity.hpp"

#include <algorithm>
#include <utility>

#include "base/function_view.hpp"

namespace camside::look_over {

namespace {

constexpr double odds_factor = 2.0;  // our own choice: the chances are rough by about that much
constexpr double nothing = 1e-9;     // a swing below this is rounding

using Models = std::vector<Model>;

void widen(Swing& s, Money sum) {
  s.low = std::min(s.low, sum);
  s.high = std::max(s.high, sum);
}

double with_odds(double chance, double factor) {
  const double odds = factor * chance / (1.0 - chance);
  return odds / (1.0 + odds);
}

// The sum with one risk changed in every engine that has it.
Money sum_with(Models models, const Answers& answers, const Risk* risk, FunctionView<void(Counted&)> change) {
  for (Model& m : models) {
    for (Counted& c : m.risks) {
      if (c.risk == risk) change(c);
    }
  }
  return knock_off(models, answers);
}

Swing answer_swing(const Models& models, Answers answers, std::size_t question, Money now) {
  const Question& q = models.front().book->questions[question];
  Swing s{Swing::Of::Answer, q.id, q.text, now, now};
  for (const Seen seen : {Seen::Good, Seen::Not, Seen::Bad}) {
    answers[question] = seen;
    widen(s, knock_off(models, answers));
  }
  return s;
}

Swing cost_swing(const Models& models, const Answers& answers, const Risk& risk, Money now) {
  Swing s{Swing::Of::Cost, risk.id, risk.name, now, now};
  for (Money Span::*end : {&Span::low, &Span::high}) {
    const auto to_end = [end](Counted& c) { c.cost = {c.cost.*end, c.cost.*end, c.cost.*end}; };
    widen(s, sum_with(models, answers, &risk, to_end));
  }
  return s;
}

Swing chance_swing(const Models& models, const Answers& answers, const Risk& risk, Money now) {
  Swing s{Swing::Of::Chance, risk.id, risk.name, now, now};
  for (const double factor : {1.0 / odds_factor, odds_factor}) {
    const auto move = [factor](Counted& c) {
      c.prior = with_odds(c.prior, factor);
      if (c.since) c.since = with_odds(*c.since, factor);
    };
    widen(s, sum_with(models, answers, &risk, move));
  }
  return s;
}

Swing engine_swing(const Models& models, const Answers& answers, Money now) {
  Swing s{Swing::Of::Engine, "", "Which engine it is", now, now};
  for (const Model& m : models) widen(s, knock_off({m}, answers));
  return s;
}

}  // namespace

std::vector<Swing> swings_of(const Models& models, const Answers& answers) {
  const Book& book = *models.front().book;
  const Money now = knock_off(models, answers);
  std::vector<Swing> swings{engine_swing(models, answers, now)};
  for (std::size_t i = 0; i < book.questions.size(); ++i) swings.push_back(answer_swing(models, answers, i, now));
  for (const Risk& risk : book.risks) {
    swings.push_back(cost_swing(models, answers, risk, now));
    swings.push_back(chance_swing(models, answers, risk, now));
  }
  const auto width = [](const Swing& s) { return (s.high - s.low).in_amount(); };
  swings.erase(std::remove_if(swings.begin(), swings.end(), [&](const Swing& s) { return width(s) <= nothing; }),
               swings.end());
  std::stable_sort(swings.begin(), swings.end(), [&](const Swing& a, const Swing& b) { return width(a) > width(b); });
  return swings;
}

}  // namespace camside::look_over
