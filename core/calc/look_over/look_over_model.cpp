#include "calc/look_over/look_over_model.hpp"

#include <algorithm>
#include <cmath>

#include "maths/weibull.hpp"

namespace camside::look_over {

namespace {

constexpr double most_chance = 1.0 - 1e-9;  // odds of a certainty are none

std::size_t question_at(const Book& b, const std::string& id) {
  const auto it = std::find_if(b.questions.begin(), b.questions.end(), [&](const Question& q) { return q.id == id; });
  return static_cast<std::size_t>(it - b.questions.begin());
}

bool among(const std::vector<std::string>& ids, const std::string& id) {
  return ids.empty() || std::find(ids.begin(), ids.end(), id) != ids.end();
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

double chance_by(const OwnLife& life, Distance distance) {
  const weibull::Curve curve{std::log(life.characteristic_life->in_km()), *life.shape};
  return std::min(weibull::chance_by(curve, distance.in_km()), most_chance);
}

const OwnLife* own_life(const Input& in, const Risk& r) {
  for (const OwnLife& own : in.lives)
    if (own.risk == r.id) return &own;
  return nullptr;
}

// Without an odometer: as for many miles, and for few at the lower end; how many that is the book's points say.
void take_prior(Counted& c, const Input& in) {
  const auto& points = c.risk->chances;
  const OwnLife* const own = own_life(in, *c.risk);
  const auto chance = [&](Distance d) { return own ? chance_by(*own, d) : chance_at(points, d); };
  c.prior = chance(in.odometer.value_or(*points.back().distance));
  c.prior_low = chance(in.odometer.value_or(*points.front().distance));
  if (const auto distance = distance_since(in, c.risk->proof)) c.since = chance(*distance);
  c.chance_source = own ? &*own->source : &*c.risk->source;
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
  if (!r.proof.empty()) c.proof = question_at(book, r.proof);
  c.needs_proof = c.proof && (!odometer || *odometer >= r.must_from);  // one that nobody can read is no excuse
  if (!r.sight.empty()) c.sight = question_at(book, r.sight);
  for (const std::string& q : r.must_when_bad) c.must_when_bad.push_back(question_at(book, q));
  for (const Sign& s : r.signs) c.links.push_back({question_at(book, s.question), *s.shows});
}

// Without an interval a bill clears it for good. One that is still to be seen may hold.
void take_proof(Counted& c, const Input& in) {
  if (!c.risk->every || !c.proof) return;
  for (const Answer& a : in.answers) {
    if (a.question != c.risk->proof || seen_of(in.known.questions[*c.proof], *a.said) != Seen::Good) continue;
    const auto since = distance_since(in, c.risk->proof);
    c.proof_holds = since && *since <= *c.risk->every + Distance::km(1e-6);
  }
}

bool own_must(const Counted& c, const Evidence& evidence) {
  const auto bad = [&](std::size_t q) { return evidence[q] == Seen::Bad; };
  if (std::any_of(c.must_when_bad.begin(), c.must_when_bad.end(), bad)) return true;
  const Seen sight = c.sight ? evidence[*c.sight] : Seen::Not;
  if (sight != Seen::Not) return sight == Seen::Bad;  // what was seen counts for more than any paper
  return c.needs_proof && !proven(c, evidence);
}

}  // namespace

Seen seen_of(const Question& q, Said said) {
  if (said == Said::DidntSee || said == Said::None) return Seen::Not;
  return (said == Said::Yes) == (q.bad == YesNo::Yes) ? Seen::Bad : Seen::Good;
}

bool contradicts_clock(const Input& in, const Answer& a) {
  return (a.reading && in.odometer && *a.reading > *in.odometer) || (a.day && in.today && *a.day > *in.today);
}

std::optional<Distance> distance_since(const Input& in, const std::string& proof) {
  for (const Answer& a : in.answers) {
    if (proof.empty() || a.question != proof || !a.reading || !in.odometer || contradicts_clock(in, a)) continue;
    return *in.odometer - *a.reading;
  }
  return std::nullopt;
}

Model model_of(const Input& in, const Engine& engine, const std::string& drive) {
  Model m{&engine, drive, &in.known, in.touched == Touched::Cold, {}, {}};
  for (const Answer& a : in.answers)
    if (contradicts_clock(in, a)) m.void_bills.push_back(question_at(in.known, a.question));
  for (const Risk& r : in.known.risks) {
    if (!among(r.engines, engine.id) || !among(r.drives, drive)) continue;
    Counted c;
    c.risk = &r;
    take_prior(c, in);
    take_cost(c, in);
    take_questions(c, in.known, in.odometer);
    take_proof(c, in);
    m.risks.push_back(std::move(c));
  }
  return m;
}

bool hidden(const Model& m, std::size_t question, const Answers& answers) {
  const Question& q = m.book->questions[question];
  if ((q.warm_hides || q.cold_only) && !m.cold) return true;
  if (std::find(m.void_bills.begin(), m.void_bills.end(), question) != m.void_bills.end()) return true;
  return !q.hidden_by.empty() && answers[question_at(*m.book, q.hidden_by)] == Seen::Bad;
}

Evidence evidence_of(const Model& m, const Answers& answers) {
  Evidence evidence{answers};
  for (std::size_t i = 0; i < answers.size(); ++i) {
    if (answers[i] == Seen::Good && hidden(m, i, answers)) evidence.seen[i] = Seen::Not;
    if (!m.void_bills.empty() && m.book->questions[i].clock) evidence.seen[i] = Seen::Bad;
  }
  return evidence;
}

// What hides another may itself be open, so before and after.
Evidence all_open(const Model& m, Answers answers, Seen instead) {
  std::replace(answers.begin(), answers.end(), Seen::Not, instead);
  Evidence evidence = evidence_of(m, answers);
  std::replace(evidence.seen.begin(), evidence.seen.end(), Seen::Not, instead);
  return evidence;
}

double likelihood_ratio(const Question& q, double shows, Seen seen) {
  const double f = *q.without_cause;
  if (seen == Seen::Bad) return (f + (1.0 - f) * shows) / f;
  if (seen == Seen::Good && !q.silence) return 1.0 - shows;
  return 1.0;
}

bool by_distance_since(const Counted& c, const Evidence& evidence) {
  return c.since && evidence[*c.proof] == Seen::Good;
}

double chance_after(const Model& m, const Counted& c, double prior, const Evidence& evidence) {
  const bool since = by_distance_since(c, evidence);
  const double first = since ? *c.since : prior;
  double odds = first / (1.0 - first);
  for (const Link& l : c.links) {
    if (since && l.question == *c.proof) continue;  // its reading says more than that there is a bill
    odds *= likelihood_ratio(m.book->questions[l.question], l.shows, evidence[l.question]);
  }
  return odds / (1.0 + odds);
}

bool proven(const Counted& c, const Evidence& evidence) {
  return c.proof && evidence[*c.proof] == Seen::Good && c.proof_holds;
}

bool must_do(const Model& m, const Counted& c, const Evidence& evidence) {
  if (own_must(c, evidence)) return true;
  if (c.risk->must_with.empty() || proven(c, evidence)) return false;
  return std::any_of(m.risks.begin(), m.risks.end(), [&](const Counted& other) {
    return other.risk->id == c.risk->must_with && own_must(other, evidence);
  });
}

double chance_counted(const Model& m, const Counted& c, double prior, const Evidence& evidence) {
  return must_do(m, c, evidence) ? 1.0 : chance_after(m, c, prior, evidence);
}

double pert_mean(const Span& cost) {
  return (cost.low.in_amount() + 4.0 * cost.middle.in_amount() + cost.high.in_amount()) / 6.0;
}

double chance_of_bad(const Model& m, std::size_t question, const Evidence& evidence) {
  double good = 1.0 - *m.book->questions[question].without_cause;
  for (const Counted& c : m.risks) {
    for (const Link& l : c.links) {
      if (l.question == question) good *= 1.0 - chance_after(m, c, c.prior, evidence) * l.shows;
    }
  }
  return 1.0 - good;
}

bool asks(const Model& m, std::size_t question) {
  const std::string& id = m.book->questions[question].id;
  return std::any_of(m.risks.begin(), m.risks.end(), [&](const Counted& c) { return tells(*c.risk, id); });
}

double expected_sum(const Model& m, const Evidence& evidence, double Counted::*prior) {
  double sum = 0.0;
  for (const Counted& c : m.risks) sum += chance_counted(m, c, c.*prior, evidence) * pert_mean(c.cost);
  return sum;
}

Money knock_off(const std::vector<Model>& models, const Answers& answers) {
  const Evidence evidence = evidence_of(models.front(), answers);
  double most = 0.0;
  for (const Model& m : models) most = std::max(most, expected_sum(m, evidence));
  return Money::amount(most);
}

Span once_seen(const std::vector<Model>& models, const Answers& answers) {
  const Evidence good = all_open(models.front(), answers, Seen::Good);
  const Evidence bad = all_open(models.front(), answers, Seen::Bad);
  double least = expected_sum(models.front(), good, &Counted::prior_low);
  double most = 0.0;
  for (const Model& m : models) {
    least = std::min(least, expected_sum(m, good, &Counted::prior_low));
    most = std::max(most, expected_sum(m, bad));
  }
  return {Money::amount(least), knock_off(models, answers), Money::amount(most)};
}

std::size_t dearest(const std::vector<Model>& models, const Answers& answers) {
  const Evidence evidence = evidence_of(models.front(), answers);  // of the bike, whichever engine it has
  std::size_t best = 0;
  for (std::size_t i = 1; i < models.size(); ++i) {
    if (expected_sum(models[i], evidence) > expected_sum(models[best], evidence)) best = i;
  }
  return best;
}

}  // namespace camside::look_over
