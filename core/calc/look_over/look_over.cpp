#include "calc/look_over/look_over.hpp"

#include <algorithm>
#include <functional>
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
  std::vector<Seen> none_there;  // Good: there is nothing to look at, which is an answer too
  std::size_t counted = 0;       // the model that stands for the bike

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

// As built, the one entered, or all that there can be.
std::vector<std::string> drives_of(const Input& in, const Engine& e) {
  if (e.drives.empty()) return {""};
  const auto has = [&](const std::string& drive) {
    return std::find(e.drives.begin(), e.drives.end(), drive) != e.drives.end();
  };
  if (in.drive.empty()) return {e.drives.front()};
  return in.drive != drive_not_known && has(in.drive) ? std::vector<std::string>{in.drive} : e.drives;
}

bool can_have(const Engine& e, const std::string& drive) {
  return std::find(e.drives.begin(), e.drives.end(), drive) != e.drives.end();
}

bool of_that_year(const Engine& e, std::optional<int> year) {
  if (!year) return true;
  return (!e.first_year || *year >= *e.first_year) && (!e.last_year || *year <= *e.last_year);
}

using Engines = std::vector<const Engine*>;

Engines engines_by_year(const Input& in) {
  Engines all;
  for (const Engine& e : in.known.engines)
    if (!e.own && !e.picked && of_that_year(e, in.year)) all.push_back(&e);
  return all;
}

// A drive that only some of them can have says which they are.
Engines narrowed_by_drive(Engines all, const std::string& drive) {
  Engines some;
  for (const Engine* e : all)
    if (can_have(*e, drive)) some.push_back(e);
  return some.empty() ? all : some;
}

// Where no engine is of that year, the user's own goes on.
Engines engines_of(Working& w) {
  const Input& in = w.in;
  if (!in.engine.empty()) {
    const Engine* const e = engine_of(in.known, in.engine);
    return e ? Engines{e} : Engines{};
  }
  Engines all = narrowed_by_drive(engines_by_year(in), in.drive);
  if (!all.empty()) return all;
  for (const Engine& e : in.known.engines)
    if (e.own) all.push_back(&e);
  if (!all.empty()) w.say(remark::year_of_no_engine(in.year, all.front()->name));
  return all;
}

void take_engines(Working& w) {
  const Engines engines = engines_of(w);
  for (const Engine* e : engines)
    for (const std::string& drive : drives_of(w.in, *e)) w.models.push_back(model_of(w.in, *e, drive));
  if (w.models.empty() && !w.in.engine.empty()) return w.say(remark::no_such_engine(w.in.engine));
  if (w.models.empty()) return w.say(remark::no_engine_of_that_year(w.in.year));
  const Engine& only = *engines.front();
  if (!w.in.engine.empty() && !of_that_year(only, w.in.year)) w.say(remark::year_and_engine_differ(only.name));
}

void add_once(std::vector<std::string>& to, const std::string& what) {
  if (std::find(to.begin(), to.end(), what) == to.end()) to.push_back(what);
}

std::string drive_name(const Book& book, const std::string& drive) {
  const Drive* const d = drive_of(book, drive);
  return d ? d->name : drive;
}

void remark_drive(Working& w, const std::vector<std::string>& names) {
  if (w.in.known.drives.empty()) return;
  const std::string counted = drive_name(w.in.known, w.model().drive);
  if (w.in.drive.empty() && w.r.drives_it_can_have.size() > 1) w.say(remark::drive_not_asked(counted));
  if (names.size() > 1 && w.in.drive == drive_not_known) w.say(remark::drive_not_settled(names, counted));
  if (!w.in.drive.empty() && w.in.drive != drive_not_known && !can_have(*w.model().engine, w.in.drive))
    w.say(remark::drive_unlike_engine(drive_name(w.in.known, w.in.drive), w.model().engine->name));
}

void settle_engine(Working& w) {
  w.counted = dearest(w.models, w.answers);
  w.r.engine = w.model().engine->id;
  w.r.drive = w.model().drive;
  std::vector<std::string> names;
  std::vector<std::string> drive_names;
  for (const Model& m : w.models) {
    add_once(w.r.engines, m.engine->id);
    add_once(w.r.drives, m.drive);
    add_once(names, m.engine->name);
    add_once(drive_names, drive_name(w.in.known, m.drive));
    for (const std::string& drive : m.engine->drives) add_once(w.r.drives_it_can_have, drive);
  }
  if (names.size() > 1) w.say(remark::engine_not_settled(names, w.model().engine->name));
  remark_drive(w, drive_names);
}

// ---- answers ----

std::size_t place_of(const Working& w, const Answer& a) {
  const std::vector<Question>& questions = w.in.known.questions;
  return static_cast<std::size_t>(find(questions, a.question) - questions.data());
}

void take_answers(Working& w) {
  w.answers.assign(w.in.known.questions.size(), Seen::Not);
  w.none_there = w.answers;
  for (const Answer& a : w.in.answers) {
    const std::size_t i = place_of(w, a);
    w.answers[i] = seen_of(w.in.known.questions[i], *a.said);
    if (*a.said == Said::None) w.none_there[i] = Seen::Good;
  }
  w.evidence = evidence_of(w.models.front(), w.answers);  // of the bike, whichever engine it has
}

bool said_anything(const Working& w, std::size_t question) {
  return std::any_of(w.in.answers.begin(), w.in.answers.end(),
                     [&](const Answer& a) { return a.question == w.in.known.questions[question].id; });
}

Finding against_clock(const Working& w, const Answer& a, std::size_t i) {
  if (a.reading && w.in.odometer && *a.reading > *w.in.odometer)
    return remark::proof_above_odometer(at("answers", i) + ".reading", *a.reading, *w.in.odometer);
  return remark::proof_of_a_day_to_come(at("answers", i) + ".day", *a.day, *w.in.today);
}

// A bill that clears nothing, for a risk that goes by an interval.
void remark_proof(Working& w, std::size_t i, std::size_t question) {
  const Answer& a = w.in.answers[i];
  for (const Counted& c : w.model().risks) {
    if (c.proof != question || c.proof_holds) continue;
    const bool read = a.reading && w.in.odometer;
    w.say(read ? remark::proof_too_old(at("answers", i) + ".reading", c.risk->name, *w.in.odometer - *a.reading,
                                       *c.risk->every)
               : remark::proof_without_distance(at("answers", i) + ".reading", c.risk->name));
  }
}

// Why an answer, other than "didn't see", counts as not seen.
void remark_answer(Working& w, std::size_t i, bool& start_void) {
  const Answer& a = w.in.answers[i];
  const std::size_t at_question = place_of(w, a);
  const Question& q = w.in.known.questions[at_question];
  const Seen seen = seen_of(q, *a.said);
  if (contradicts_clock(w.in, a)) return w.say(against_clock(w, a, i));
  const bool counts = seen == Seen::Not || w.evidence[at_question] == seen || q.clock;
  if (!counts && !w.model().cold && (q.cold_only || q.warm_hides))
    start_void = true;
  else if (!counts)
    w.say(remark::good_answer_hidden(at("answers", i), q.text, question_of(w.in.known, q.hidden_by)->text));
  if (counts && seen == Seen::Good && q.silence) w.say(remark::silence_proves_nothing(at("answers", i), q.text));
  if (seen == Seen::Good) remark_proof(w, i, at_question);
}

void remark_answers(Working& w) {
  bool start_void = false;
  for (std::size_t i = 0; i < w.in.answers.size(); ++i) remark_answer(w, i, start_void);
  if (start_void) w.say(remark::cold_start_void(w.in.touched == Touched::Warm));
  const auto& seen = w.evidence.seen;
  const auto is_open = [](Seen s) { return s == Seen::Not; };
  if (std::all_of(seen.begin(), seen.end(), is_open) && std::all_of(w.none_there.begin(), w.none_there.end(), is_open))
    w.say(remark::nothing_seen());
}

// ---- what it hides ----

Likelihood likelihood_of(double chance) {
  if (chance >= likely_from) return Likelihood::Likely;
  return chance >= maybe_from ? Likelihood::MayBe : Likelihood::Seldom;
}

std::string why_must(const Model& m, const Counted& c, const Evidence& evidence) {
  const std::vector<Question>& questions = m.book->questions;
  for (const std::size_t q : c.must_when_bad)
    if (evidence[q] == Seen::Bad) return questions[q].fault.empty() ? questions[q].text : questions[q].fault;
  if (c.sight && evidence[*c.sight] == Seen::Bad) return "seen bad";
  if (!c.proof || evidence[*c.proof] != Seen::Good)
    return c.needs_proof ? "no proof" : "with the work on: " + risk_of(*m.book, c.risk->must_with)->name;
  if (c.proof_holds) return "";
  return c.since ? "the bill is older than the interval" : "the bill has no reading to count from";
}

Found found_of(const Working& w, const Model& m, const Counted& c) {
  Found f;
  f.risk = c.risk->id;
  f.name = c.risk->name;
  f.must = must_do(m, c, w.evidence);
  if (f.must) f.why_must = why_must(m, c, w.evidence);
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
    if (w.evidence[i] == Seen::Not && w.none_there[i] == Seen::Not) ++w.r.may_end_it;
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
                       [&](const Counted& c) { return c.proof == question && must_do(m, c, w.evidence); });
  });
}

enum class Turn : std::uint8_t { CanEndIt, SparesMust, Narrows, AskedBefore, NotToday };

Turn turn_of(const Look& l) {
  if (l.needs_cold || !l.hidden_by.empty()) return Turn::NotToday;
  if (l.answered) return Turn::AskedBefore;
  if (l.can_end_it) return Turn::CanEndIt;
  return l.spares_must ? Turn::SparesMust : Turn::Narrows;
}

// Void, or answered well when it tells nothing.
bool needs_cold(const Working& w, std::size_t question) {
  const Question& q = w.in.known.questions[question];
  const bool good = w.answers[question] == Seen::Good;
  return !w.model().cold && ((q.cold_only && (good || q.walk_away.empty())) || (q.warm_hides && good));
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
  l.answered = said_anything(w, question);
  l.spares_must = spares_must(w, question);
  l.needs_cold = needs_cold(w, question);
  if (w.answers[question] == Seen::Good && !l.needs_cold) l.hidden_by = q.hidden_by;
  return l;
}

// Our own choice: as many as fit five minutes.
constexpr std::size_t few_questions = 8;

// By what the answer is worth before anything was answered, so that no order changes under the thumb; with no bill
// there or with all of them, as nobody knows yet.
double worth_beforehand(const Working& w, std::size_t question) {
  const Answers none(w.answers.size(), Seen::Not);
  double most = 0.0;
  for (const Model& m : w.models) {
    Answers bills = none;
    for (const Counted& c : m.risks)
      if (c.proof && *c.proof != question) bills[*c.proof] = Seen::Good;
    most = std::max({most, narrows_by(m, question, none), narrows_by(m, question, bills)});
  }
  return most;
}

// First the few: what can end it and what is worth most, as one walks round a bike. Then the others by worth.
void take_questions(Working& w) {
  const std::vector<Question>& questions = w.in.known.questions;
  std::vector<std::size_t> asked;
  std::vector<double> worth(questions.size());
  for (std::size_t i = 0; i < questions.size(); ++i) {
    if (!worth_asking(w, i)) continue;
    asked.push_back(i);
    worth[i] = worth_beforehand(w, i);
  }
  sort_stably(asked.begin(), asked.end(), [&](std::size_t a, std::size_t b) {
    const bool ends_a = !questions[a].walk_away.empty();
    const bool ends_b = !questions[b].walk_away.empty();
    return ends_a != ends_b ? ends_a : worth[a] > worth[b];
  });
  w.r.first = std::min(few_questions, asked.size());
  sort_stably(asked.begin(), asked.begin() + static_cast<std::ptrdiff_t>(w.r.first), std::less<>{});
  for (const std::size_t i : asked) w.r.questions.push_back(questions[i].id);
}

void take_rest(Working& w) {
  std::vector<std::size_t> open;
  for (std::size_t n = w.r.first; n < w.r.questions.size(); ++n) {
    const auto i = static_cast<std::size_t>(find(w.in.known.questions, w.r.questions[n]) - w.in.known.questions.data());
    if (w.evidence[i] == Seen::Not && !said_anything(w, i)) open.push_back(i);
  }
  w.r.rest_open = open.size();
  double most = 0.0;
  for (const Model& m : w.models) most = std::max(most, narrows_by_all(m, open, w.answers));
  w.r.rest_narrows = Money::amount(most);
}

void take_looks(Working& w) {
  const std::vector<Question>& questions = w.in.known.questions;
  for (std::size_t i = 0; i < questions.size(); ++i) {
    const bool open = w.evidence[i] == Seen::Not && w.none_there[i] == Seen::Not;
    if (open && worth_asking(w, i)) w.r.looks.push_back(look_at(w, i));
  }
  sort_stably(w.r.looks.begin(), w.r.looks.end(), [](const Look& a, const Look& b) {
    if (turn_of(a) != turn_of(b)) return turn_of(a) < turn_of(b);
    return !a.can_end_it && a.narrows > b.narrows;  // what can end it: in the book's order, as one walks round a bike
  });
}

// ---- money ----

// Of the work for certain: an offer must not rest on those.
std::vector<std::string> placeholders(const Result& r) {
  std::vector<std::string> names;
  for (const auto* list : {&r.must_do, &r.elsewhere})
    for (const Found& f : *list)
      if (f.must && f.placeholder) names.push_back(f.name);
  return names;
}

void take_offer(Working& w) {
  const std::vector<std::string> nobodys = placeholders(w.r);
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
  take_questions(w);
  take_rest(w);
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
  Working w{input, result, {}, {}, {}, {}};
  take_engines(w);
  if (w.models.empty()) return tl::make_unexpected(std::move(result.outcome.findings));
  work_out(w);
  return result;
}

}  // namespace camside::look_over
