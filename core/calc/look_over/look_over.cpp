#include "calc/look_over/look_over.hpp"

#include <algorithm>
#include <utility>

#include "base/stable_sort.hpp"
#include "calc/look_over/look_over_model.hpp"
#include "calc/look_over/look_over_range.hpp"
#include "calc/look_over/look_over_remarks.hpp"
#include "calc/look_over/look_over_report.hpp"
#include "calc/look_over/look_over_sensitivity.hpp"

namespace camside::look_over {

namespace {

namespace remark = remarks::look_over;

// From memory or our own choice, and only questions: whether it was read right, and typed right.
constexpr Distance rare_odometer = Distance::miles(150'000.0);
constexpr Distance few_miles = Distance::miles(100.0);
constexpr Money rare_price = Money::amount(100.0);
// Our own choice of words: likelier than not, and about one in six.
constexpr double likely_from = 0.5;
constexpr double maybe_from = 0.15;

// What is being worked out.
struct Working {
  const Input& in;
  Result& r;
  std::vector<Model> models;
  Answers answers;
  Evidence evidence;
  std::size_t counted = 0;  // the model that stands for the bike

  const Model& model() const { return models[counted]; }
  void say(Finding f) { r.outcome.findings.push_back(std::move(f)); }
};

template <class T>
const T* find(const std::vector<T>& list, const std::string& id) {
  const auto it = std::find_if(list.begin(), list.end(), [&](const T& t) { return t.id == id; });
  return it == list.end() ? nullptr : &*it;
}

std::string at(const char* list, std::size_t i) {
  return std::string(list) + "[" + std::to_string(i) + "]";
}

// ---- entries ----

void refuse_answers(const Input& in, Findings& found) {
  for (std::size_t i = 0; i < in.answers.size(); ++i) {
    const std::string& id = in.answers[i].question;
    if (find(in.known.questions, id) == nullptr)
      found.push_back(remark::no_such_question(at("answers", i) + ".question", id));
    else if ((in.answers[i].reading || in.answers[i].day) && !asks_for_proof(in.known, id))
      found.push_back(remark::reading_of_no_proof(at("answers", i), id));
    for (std::size_t k = 0; k < i; ++k) {
      if (in.answers[k].question == id) found.push_back(remark::answered_twice(at("answers", i) + ".question", id));
    }
  }
}

// Each names a risk of the book, and no risk twice.
template <class Own>
void refuse_names(const Input& in, const std::vector<Own>& owns, const char* list,
                  Finding (*twice)(std::string field, std::string_view id), Findings& found) {
  for (std::size_t i = 0; i < owns.size(); ++i) {
    const std::string& id = owns[i].risk;
    if (find(in.known.risks, id) == nullptr) found.push_back(remark::no_such_risk(at(list, i) + ".risk", id));
    for (std::size_t k = 0; k < i; ++k) {
      if (owns[k].risk == id) found.push_back(twice(at(list, i) + ".risk", id));
    }
  }
}

void refuse_costs(const Input& in, Findings& found) {
  refuse_names(in, in.costs, "costs", remark::cost_twice, found);
  for (std::size_t i = 0; i < in.costs.size(); ++i) {
    const OwnCost& c = in.costs[i];
    if (*c.best > *c.likely || *c.likely > *c.worst) found.push_back(remark::costs_out_of_order(at("costs", i)));
  }
}

Findings entry_refusals(const Input& in) {
  Findings found = check_fields(in);
  if (any_refusal(found)) return found;
  found = book_faults(in.known, "known");
  if (any_refusal(found)) return found;
  refuse_answers(in, found);
  refuse_costs(in, found);
  refuse_names(in, in.lives, "lives", remark::life_twice, found);
  return found;
}

// ---- which engine ----

bool of_that_year(const Engine& e, std::optional<int> year) {
  if (!year) return true;
  return (!e.first_year || *year >= *e.first_year) && (!e.last_year || *year <= *e.last_year);
}

void take_engines(Working& w) {
  for (const Engine& e : w.in.known.engines) {
    const bool wanted = w.in.engine.empty() ? !e.own && of_that_year(e, w.in.year) : e.id == w.in.engine;
    if (wanted) w.models.push_back(model_of(w.in, e));
  }
  if (w.models.empty() && !w.in.engine.empty()) return w.say(remark::no_such_engine(w.in.engine));
  if (w.models.empty()) return w.say(remark::no_engine_of_that_year(w.in.year));
  const Engine& only = *w.models.front().engine;
  if (!w.in.engine.empty() && !of_that_year(only, w.in.year)) w.say(remark::year_and_engine_differ(only.name));
}

void settle_engine(Working& w) {
  w.counted = dearest(w.models, w.answers);
  w.r.engine = w.model().engine->id;
  std::vector<std::string> names;
  for (const Model& m : w.models) {
    w.r.engines.push_back(m.engine->id);
    names.push_back(m.engine->name);
  }
  if (w.models.size() > 1) w.say(remark::engine_not_settled(names, w.model().engine->name));
}

// ---- answers ----

Seen seen_of(const Question& q, Said said) {
  if (said == Said::DidntSee) return Seen::Not;
  return (said == Said::Yes) == (q.bad == YesNo::Yes) ? Seen::Bad : Seen::Good;
}

std::size_t place_of(const Working& w, const Answer& a) {
  const std::vector<Question>& questions = w.in.known.questions;
  return static_cast<std::size_t>(find(questions, a.question) - questions.data());
}

// What was said of the cold start counts only when it was one.
void take_answers(Working& w) {
  w.answers.assign(w.in.known.questions.size(), Seen::Not);
  for (const Answer& a : w.in.answers) {
    const std::size_t i = place_of(w, a);
    const Question& q = w.in.known.questions[i];
    if (!q.cold_only || w.in.touched == Touched::Cold) w.answers[i] = seen_of(q, *a.said);
  }
  w.evidence = evidence_of(w.models.front(), w.answers);  // of the bike, whichever engine it has
}

// Why an answer, other than "didn't see", counts as not seen.
void remark_answer(Working& w, std::size_t i, bool& start_void) {
  const Answer& a = w.in.answers[i];
  const std::size_t at_question = place_of(w, a);
  const Question& q = w.in.known.questions[at_question];
  const Seen seen = seen_of(q, *a.said);
  const bool counts = seen == Seen::Not || w.evidence[at_question] == seen;
  if (!counts && !w.model().cold && (q.cold_only || q.warm_hides))
    start_void = true;
  else if (!counts)
    w.say(remark::good_answer_hidden(at("answers", i), q.text, question_of(w.in.known, q.hidden_by)->text));
  if (counts && seen == Seen::Good && q.silence) w.say(remark::silence_proves_nothing(at("answers", i), q.text));
  if (a.reading && w.in.odometer && *a.reading > *w.in.odometer)
    w.say(remark::proof_above_odometer(at("answers", i) + ".reading", *a.reading, *w.in.odometer));
}

void remark_answers(Working& w) {
  bool start_void = false;
  for (std::size_t i = 0; i < w.in.answers.size(); ++i) remark_answer(w, i, start_void);
  if (start_void) w.say(remark::cold_start_void(w.in.touched == Touched::Warm));
  const auto& seen = w.evidence.seen;
  if (std::all_of(seen.begin(), seen.end(), [](Seen s) { return s == Seen::Not; })) w.say(remark::nothing_seen());
}

// ---- what it hides ----

Likelihood likelihood_of(double chance) {
  if (chance >= likely_from) return Likelihood::Likely;
  return chance >= maybe_from ? Likelihood::MayBe : Likelihood::Seldom;
}

Found found_of(const Working& w, const Model& m, const Counted& c) {
  Found f;
  f.risk = c.risk->id;
  f.name = c.risk->name;
  f.must = must_do(c, w.evidence);
  f.chance = chance_after(m, c, c.prior, w.evidence);
  f.chance_low = chance_after(m, c, c.prior_low, all_open(m, w.answers, Seen::Good));
  f.chance_high = chance_after(m, c, c.prior, all_open(m, w.answers, Seen::Bad));
  f.likelihood = likelihood_of(f.chance);
  f.chance_from = chance_from(m, c, w.in, w.evidence);
  f.cost = c.cost;
  f.expected = Money::amount((f.must ? 1.0 : f.chance) * pert_mean(c.cost));
  f.placeholder = c.placeholder;
  f.settled_by = c.risk->settled_by;
  f.say = c.risk->say;
  return f;
}

bool listed(const Result& r, const std::string& risk) {
  const auto in = [&](const std::vector<Found>& list) {
    return std::any_of(list.begin(), list.end(), [&](const Found& f) { return f.risk == risk; });
  };
  return in(r.must_do) || in(r.may_find) || in(r.elsewhere);
}

void take_elsewhere(Working& w) {
  for (const Model& m : w.models) {
    for (const Counted& c : m.risks)
      if (!listed(w.r, c.risk->id)) w.r.elsewhere.push_back(found_of(w, m, c));
  }
}

void take_risks(Working& w) {
  for (const Counted& c : w.model().risks) {
    Found f = found_of(w, w.model(), c);
    (f.must ? w.r.must_do : w.r.may_find).push_back(std::move(f));
  }
  take_elsewhere(w);
  const auto dearer = [](const Found& a, const Found& b) { return a.expected > b.expected; };
  sort_stably(w.r.must_do.begin(), w.r.must_do.end(), dearer);
  sort_stably(w.r.may_find.begin(), w.r.may_find.end(), dearer);
}

// ---- when to walk ----

Met met_of(Seen seen) {
  if (seen == Seen::Not) return Met::NotSeen;
  return seen == Seen::Bad ? Met::Met : Met::NotMet;
}

void take_walk_away(Working& w) {
  const std::vector<Question>& questions = w.in.known.questions;
  for (std::size_t i = 0; i < questions.size(); ++i) {
    if (questions[i].walk_away.empty()) continue;
    w.r.walk_away.push_back({questions[i].id, questions[i].walk_away, met_of(w.evidence[i])});
    if (w.evidence[i] == Seen::Bad) w.say(remark::walk_away(questions[i].walk_away));
  }
  std::stable_partition(w.r.walk_away.begin(), w.r.walk_away.end(),
                        [](const WalkAway& a) { return a.met == Met::Met; });
}

// ---- where to look next ----

// For the engine for which it narrows most.
Money narrows(const Working& w, std::size_t question) {
  double most = 0.0;
  for (const Model& m : w.models) most = std::max(most, narrows_by(m, question, w.answers));
  return Money::amount(most);
}

Money knock_off_with(const Working& w, std::size_t question, Seen seen) {
  Answers after = w.answers;
  after[question] = seen;
  return knock_off(w.models, after);
}

bool worth_asking(const Working& w, std::size_t question) {
  return !w.in.known.questions[question].walk_away.empty() ||
         std::any_of(w.models.begin(), w.models.end(), [&](const Model& m) { return asks(m, question); });
}

bool spares_must(const Working& w, std::size_t question) {
  return std::any_of(w.models.begin(), w.models.end(), [&](const Model& m) {
    return std::any_of(m.risks.begin(), m.risks.end(),
                       [&](const Counted& c) { return c.proof == question && must_do(c, w.evidence); });
  });
}

enum class Turn : std::uint8_t { CanEndIt, SparesMust, Narrows, NotToday };

Turn turn_of(const Look& l) {
  if (l.needs_cold || !l.hidden_by.empty()) return Turn::NotToday;
  if (l.can_end_it) return Turn::CanEndIt;
  return l.spares_must ? Turn::SparesMust : Turn::Narrows;
}

// Void, or answered well when it tells nothing.
bool needs_cold(const Working& w, std::size_t question) {
  const Question& q = w.in.known.questions[question];
  return !w.model().cold && (q.cold_only || (q.warm_hides && w.answers[question] == Seen::Good));
}

Look look_at(const Working& w, std::size_t question) {
  const Question& q = w.in.known.questions[question];
  Look l;
  l.question = q.id;
  l.text = q.text;
  l.say = q.say;
  l.chance_bad = chance_of_bad(w.model(), question, w.evidence);
  l.if_good = knock_off_with(w, question, Seen::Good);
  l.if_bad = knock_off_with(w, question, Seen::Bad);
  l.narrows = narrows(w, question);
  l.can_end_it = !q.walk_away.empty();
  l.spares_must = spares_must(w, question);
  l.needs_cold = needs_cold(w, question);
  if (w.answers[question] == Seen::Good && !l.needs_cold) l.hidden_by = q.hidden_by;
  return l;
}

void take_looks(Working& w) {
  const std::vector<Question>& questions = w.in.known.questions;
  for (std::size_t i = 0; i < questions.size(); ++i) {
    if (!worth_asking(w, i)) continue;
    w.r.questions.push_back(questions[i].id);
    if (w.evidence[i] == Seen::Not) w.r.looks.push_back(look_at(w, i));
  }
  sort_stably(w.r.looks.begin(), w.r.looks.end(), [](const Look& a, const Look& b) {
    if (turn_of(a) != turn_of(b)) return turn_of(a) < turn_of(b);
    return !a.can_end_it && a.narrows > b.narrows;  // what can end it: in the book's order, as one walks round a bike
  });
}

// ---- money ----

std::vector<std::string> placeholders(const Working& w) {
  std::vector<std::string> names;
  for (const Model& m : w.models) {
    for (const Counted& c : m.risks) {
      const bool listed = std::find(names.begin(), names.end(), c.risk->name) != names.end();
      if (c.placeholder && !listed) names.push_back(c.risk->name);
    }
  }
  return names;
}

void take_offer(Working& w) {
  const std::vector<std::string> nobodys = placeholders(w);
  if (!nobodys.empty()) w.say(remark::placeholder_money(nobodys));
  if (!w.in.asking) w.say(remark::no_asking_price());
  if (w.in.asking && *w.in.asking < rare_price) w.say(remark::rare_price(*w.in.asking));
  const bool walk = !w.r.walk_away.empty() && w.r.walk_away.front().met == Met::Met;
  if (!nobodys.empty() || !w.in.asking || walk) return;
  const auto less = [&](Money off) { return std::max(Money{}, *w.in.asking - off); };
  const Span& off = w.r.knock_off;
  w.r.offer = Span{less(off.high), less(off.middle), less(off.low)};
  if (off.middle > *w.in.asking) w.say(remark::costs_more_than_asked());
  w.say(remark::asking_taken_as_sound());
}

void remark_odometer(Working& w) {
  if (!w.in.odometer) return w.say(remark::no_odometer());
  if (*w.in.odometer > rare_odometer) w.say(remark::rare_odometer(*w.in.odometer));
  if (*w.in.odometer < few_miles) w.say(remark::few_miles(*w.in.odometer));
}

void work_out(Working& w) {
  take_answers(w);
  remark_answers(w);
  settle_engine(w);
  remark_odometer(w);
  w.r.knock_off = range_of(w.models, w.answers);
  w.r.once_seen = once_seen(w.models, w.answers);
  take_risks(w);
  take_walk_away(w);
  take_looks(w);
  w.r.swings = swings_of(w.models, w.answers);
  take_offer(w);
  add_figures(w.r);
  add_working(w.in, w.r);
}

}  // namespace

std::string_view word_of(Likelihood l) {
  switch (l) {
    case Likelihood::Seldom:
      return "seldom";
    case Likelihood::MayBe:
      return "may be";
    case Likelihood::Likely:
      return "likely";
  }
  return "";
}

std::string_view word_of(Met m) {
  switch (m) {
    case Met::Met:
      return "met";
    case Met::NotMet:
      return "ruled out";
    case Met::NotSeen:
      return "not seen yet";
  }
  return "";
}

std::string_view word_of(Swing::Of of) {
  switch (of) {
    case Swing::Of::Answer:
      return "answer";
    case Swing::Of::Cost:
      return "cost";
    case Swing::Of::Chance:
      return "chance";
    case Swing::Of::Engine:
      return "engine";
  }
  return "";
}

tl::expected<Result, Findings> solve(const Input& input) {
  Findings refused = entry_refusals(input);
  if (any_refusal(refused)) return tl::make_unexpected(std::move(refused));
  Result result;
  Working w{input, result, {}, {}, {}};
  take_engines(w);
  if (w.models.empty()) return tl::make_unexpected(std::move(result.outcome.findings));
  work_out(w);
  return result;
}

}  // namespace camside::look_over
