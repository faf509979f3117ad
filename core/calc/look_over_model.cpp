#include "calc/look_over_model.hpp"

#include <algorithm>
#include <cmath>

#include "calc/weibull.hpp"

namespace camside::look_over {

namespace {

constexpr double most_chance = 1.0 - 1e-9;  // odds of a certainty are none

std::size_t question_at(const Book& b, const std::string& id) {
  const auto it = std::find_if(b.questions.begin(), b.questions.end(), [&](const Question& q) { return q.id == id; });
  return static_cast<std::size_t>(it - b.questions.begin());
}

bool concerns(const Risk& r, const Engine& e) {
  return r.engines.empty() || std::find(r.engines.begin(), r.engines.end(), e.id) != r.engines.end();
}

double chance_at(const std::vector<ChanceAt>& points, Distance odometer) {
  if (odometer <= *points.front().distance) return *points.front().chance;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const ChanceAt& from = points[i - 1];
    const ChanceAt& to = points[i];
    if (odometer > *to.distance) continue;
    const double share = (odometer - *from.distance) / (*to.distance - *from.distance);
    return *from.chance + share * (*to.chance - *from.chance);
  }
  return *points.back().chance;
}

double chance_by(const OwnLife& life, Distance odometer) {
  const weibull::Curve curve{std::log(life.characteristic_life->in_km()), *life.shape};
  return std::min(weibull::chance_by(curve, odometer.in_km()), most_chance);
}

// Without an odometer: as for many miles, and for few at the lower end; how many that is the book's points say.
void take_prior(Counted& c, const Input& in) {
  const auto& points = c.risk->chances;
  const Distance most = in.odometer.value_or(*points.back().distance);
  const Distance least = in.odometer.value_or(*points.front().distance);
  c.prior = chance_at(points, most);
  c.prior_low = chance_at(points, least);
  c.chance_source = &*c.risk->source;
  for (const OwnLife& own : in.lives) {
    if (own.risk != c.risk->id) continue;
    c.prior = chance_by(own, most);
    c.prior_low = chance_by(own, least);
    c.chance_source = &*own.source;
  }
}

void take_cost(Counted& c, const Input& in) {
  const Cost& book = c.risk->cost;
  c.cost = {*book.best, *book.likely, *book.worst};
  c.placeholder = book.placeholder && !in.money_confirmed;
  for (const OwnCost& own : in.costs) {
    if (own.risk != c.risk->id) continue;
    c.cost = {*own.best, *own.likely, *own.worst};
    c.placeholder = false;
  }
}

void take_questions(Counted& c, const Book& book, const std::optional<Distance>& odometer) {
  const Risk& r = *c.risk;
  // an odometer that nobody can read is no excuse from proof
  if (!r.proof.empty() && (!odometer || *odometer >= r.must_from)) c.proof = question_at(book, r.proof);
  if (!r.sight.empty()) c.sight = question_at(book, r.sight);
  for (const Sign& s : r.signs) c.links.push_back({question_at(book, s.question), *s.shows});
}

double sum_of(const Model& m, const Answers& answers, Money Span::*cost, double Counted::*prior) {
  double sum = 0.0;
  for (const Counted& c : m.risks) {
    const double chance = must_do(c, answers) ? 1.0 : chance_after(m, c, c.*prior, answers);
    sum += chance * (c.cost.*cost).in_amount();
  }
  return sum;
}

double expected_sum(const Model& m, const Answers& answers) {
  double sum = 0.0;
  for (const Counted& c : m.risks) {
    const double chance = must_do(c, answers) ? 1.0 : chance_after(m, c, c.prior, answers);
    sum += chance * pert_mean(c.cost);
  }
  return sum;
}

}  // namespace

Model model_of(const Input& in, const Engine& engine) {
  Model m{&engine, &in.known, {}};
  for (const Risk& r : in.known.risks) {
    if (!concerns(r, engine)) continue;
    Counted c;
    c.risk = &r;
    take_prior(c, in);
    take_cost(c, in);
    take_questions(c, in.known, in.odometer);
    m.risks.push_back(std::move(c));
  }
  return m;
}

double likelihood_ratio(const Question& q, double shows, Seen seen) {
  const double f = *q.without_cause;
  if (seen == Seen::Bad) return (f + (1.0 - f) * shows) / f;
  if (seen == Seen::Good && !q.silence) return 1.0 - shows;
  return 1.0;
}

double chance_after(const Model& m, const Counted& c, double prior, const Answers& answers) {
  double odds = prior / (1.0 - prior);
  for (const Link& l : c.links) odds *= likelihood_ratio(m.book->questions[l.question], l.shows, answers[l.question]);
  return odds / (1.0 + odds);
}

bool must_do(const Counted& c, const Answers& answers) {
  const Seen sight = c.sight ? answers[*c.sight] : Seen::Not;
  if (sight != Seen::Not) return sight == Seen::Bad;  // what was seen counts for more than any paper
  return c.proof && answers[*c.proof] != Seen::Good;
}

double pert_mean(const Span& cost) {
  return (cost.low.in_amount() + 4.0 * cost.middle.in_amount() + cost.high.in_amount()) / 6.0;
}

double chance_of_bad(const Model& m, std::size_t question, const Answers& answers) {
  double good = 1.0 - *m.book->questions[question].without_cause;
  for (const Counted& c : m.risks) {
    for (const Link& l : c.links) {
      if (l.question == question) good *= 1.0 - chance_after(m, c, c.prior, answers) * l.shows;
    }
  }
  return 1.0 - good;
}

bool asks(const Model& m, std::size_t question) {
  return std::any_of(m.risks.begin(), m.risks.end(), [&](const Counted& c) {
    return c.proof == question || c.sight == question ||
           std::any_of(c.links.begin(), c.links.end(), [&](const Link& l) { return l.question == question; });
  });
}

Span knock_off(const Model& m, const Answers& answers) {
  return {Money::amount(sum_of(m, completed(answers, Seen::Good), &Span::low, &Counted::prior_low)),
          Money::amount(expected_sum(m, answers)),
          Money::amount(sum_of(m, completed(answers, Seen::Bad), &Span::high, &Counted::prior))};
}

Span knock_off(const std::vector<Model>& models, const Answers& answers) {
  Span all = knock_off(models.front(), answers);
  for (const Model& m : models) {
    const Span one = knock_off(m, answers);
    all = {std::min(all.low, one.low), std::max(all.middle, one.middle), std::max(all.high, one.high)};
  }
  return all;
}

std::size_t dearest(const std::vector<Model>& models, const Answers& answers) {
  std::size_t best = 0;
  for (std::size_t i = 1; i < models.size(); ++i) {
    if (expected_sum(models[i], answers) > expected_sum(models[best], answers)) best = i;
  }
  return best;
}

Answers completed(Answers answers, Seen instead) {
  std::replace(answers.begin(), answers.end(), Seen::Not, instead);
  return answers;
}

}  // namespace camside::look_over
