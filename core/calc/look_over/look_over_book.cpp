// What the book of a look-over asks for, and what is wrong with one.
#include "calc/look_over/look_over_book.hpp"

#include <algorithm>
#include <array>

#include "fields/data_remarks.hpp"

namespace camside::look_over {

namespace {

constexpr std::array<Choice, 2> yes_no_words{{{"yes", "Yes"}, {"no", "No"}}};
// In the order of LookAt.
constexpr std::array<Choice, 10> look_at_words{{{"barrels", "Barrels"},
                                                {"bottom end", "Bottom end"},
                                                {"cam side", "Cam side"},
                                                {"cover screws", "Screws of the cam cover"},
                                                {"cover and base", "Cam cover and cylinder bases"},
                                                {"lifters", "Lifters"},
                                                {"boxes and tubes", "Rocker boxes and pushrod tubes"},
                                                {"air filter", "Air filter"},
                                                {"oil on a rag", "Oil on a rag"},
                                                {"shoes", "Tensioner shoes"}}};

constexpr Distance most_distance = Distance::miles(1'000'000.0);
constexpr double most_money = 1e6;
constexpr double least_chance = 1e-6;

Field id_field() {
  return Field{"id", "Id", "Short permanent name that other places refer to"}.must();
}
Field source_field(std::string_view help) {
  return Field{"source", "Who says so", help}.must();
}
Field chance_field(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(least_chance).at_most(1.0 - least_chance).must();
}
Field money_field(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(0.0).at_most(most_money).must();
}
Field year_field(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(1900.0).at_most(2100.0);
}

// ---- faults ----

std::string item_path(const std::string& list, std::size_t i) {
  return list + "[" + std::to_string(i) + "]";
}

template <class T>
bool holds(const std::vector<T>& list, std::string_view id) {
  return std::any_of(list.begin(), list.end(), [&](const T& t) { return t.id == id; });
}

template <class T>
void find_twice(const std::vector<T>& list, const std::string& path, Findings& found) {
  for (std::size_t i = 0; i < list.size(); ++i) {
    const auto same = [&](const T& other) { return other.id == list[i].id; };
    if (std::any_of(list.begin(), list.begin() + static_cast<std::ptrdiff_t>(i), same))
      found.push_back(remarks::id_twice(item_path(path, i) + ".id", list[i].id));
  }
}

void find_years(const Engine& e, const std::string& path, Findings& found) {
  if (e.first_year && e.last_year && *e.first_year > *e.last_year)
    found.push_back(remarks::years_backwards(path + ".last_year", *e.first_year, *e.last_year));
}

void find_hidden_by_nothing(const Book& b, const Question& q, const std::string& path, Findings& found) {
  if (!q.hidden_by.empty() && !holds(b.questions, q.hidden_by))
    found.push_back(remarks::names_nothing(path + ".hidden_by", "question", q.hidden_by));
}

void find_chances(const std::vector<ChanceAt>& chances, const std::string& path, Findings& found) {
  if (chances.empty()) found.push_back(remarks::no_chances(path));
  for (std::size_t i = 1; i < chances.size(); ++i) {
    if (!(*chances[i].distance > *chances[i - 1].distance))
      found.push_back(remarks::distances_not_rising(item_path(path, i) + ".distance"));
    if (*chances[i].chance < *chances[i - 1].chance)
      found.push_back(remarks::chances_falling(item_path(path, i) + ".chance"));
  }
}

template <class T>
void find_missing(const std::vector<T>& list, const std::vector<std::string>& ids, const std::string& path,
                  const char* what, Findings& found) {
  for (std::size_t i = 0; i < ids.size(); ++i) {
    if (!holds(list, ids[i])) found.push_back(remarks::names_nothing(item_path(path, i), what, ids[i]));
  }
}

void find_strangers(const Book& b, const Risk& r, const std::string& path, Findings& found) {
  find_missing(b.engines, r.engines, path + ".engines", "engine", found);
  if (!r.proof.empty() && !holds(b.questions, r.proof))
    found.push_back(remarks::names_nothing(path + ".proof", "question", r.proof));
  if (!r.must_with.empty() && !holds(b.risks, r.must_with))
    found.push_back(remarks::names_nothing(path + ".must_with", "risk", r.must_with));
  find_missing(b.drives, r.drives, path + ".drives", "drive", found);
  find_missing(b.questions, r.must_when_bad, path + ".must_when_bad", "question", found);
  if (!r.sight.empty() && !holds(b.questions, r.sight))
    found.push_back(remarks::names_nothing(path + ".sight", "question", r.sight));
  for (std::size_t i = 0; i < r.signs.size(); ++i) {
    const std::string& question = r.signs[i].question;
    const std::string where = item_path(path + ".signs", i) + ".question";
    if (!holds(b.questions, question)) found.push_back(remarks::names_nothing(where, "question", question));
    for (std::size_t k = 0; k < i; ++k) {
      if (r.signs[k].question == question) found.push_back(remarks::id_twice(where, question));
    }
  }
}

}  // namespace

void describe(FieldVisitor& v, Drive& d) {
  v.value(id_field(), d.id);
  v.value(Field{"name", "Drive", "What turns the cams"}.must(), d.name);
  v.value(Field{"tell", "How to tell", "What shows it from outside"}, d.tell);
}

void describe(FieldVisitor& v, Engine& e) {
  v.value(id_field(), e.id);
  v.value(Field{"name", "Engine", "What it is and which years; no maker's name"}.must(), e.name);
  v.value(Field{"drive", "Cam drive", "How the cams are turned"}.must(), e.drive);
  v.list(Field{"drives", "Drives", "Ids of what can turn its cams, as built first"}, e.drives);
  v.value(year_field("first_year", "First model year", "Left out: not known or any"), e.first_year);
  v.value(year_field("last_year", "Last model year", "Left out: not known or any"), e.last_year);
  v.value(Field{"own", "Your own engine", "Counts only when picked, never by year"}, e.own);
  v.value(Field{"picked", "Only when picked", "Built beside the others, so the year alone does not mean it"}, e.picked);
  v.value(Field{"note", "Note", "What to know of it"}, e.note);
  v.source(source_field("Where the years come from"), e.source);
}

void describe(FieldVisitor& v, Question& q) {
  v.value(id_field(), q.id);
  v.value(Field{"text", "Question", "To be answered yes or no"}.must(), q.text);
  v.value(Field{"means", "What it means", "What hangs on it and how to look"}, q.means);
  v.choice(Field{"bad", "Bad answer", "The answer that means something may be wrong"}.must(), q.bad, yes_no_words);
  v.value(Field{"say", "Say to the seller", "As a person would say it"}, q.say);
  v.value(Field{"cold_only", "Stone cold only", "Void when the engine was warm or not touched first"}, q.cold_only);
  v.value(Field{"silence", "Silence", "The good answer is silence, which proves nothing"}, q.silence);
  v.value(Field{"warm_hides", "Warm hides it", "A good answer counts only when the engine was stone cold"},
          q.warm_hides);
  v.value(Field{"hidden_by", "Hidden by", "Id of the question whose bad answer makes the good one here worth nothing"},
          q.hidden_by);
  v.value(Field{"walk_away", "Walk away", "Why the bad answer ends it; left out: it doesn't"}, q.walk_away);
  v.value(Field{"none", "Nothing there", "A third answer where there may be nothing to look at"}, q.none);
  v.value(Field{"clock", "Bill against clock",
                "A bill above the odometer, or of a day to come, is the bad answer here, whatever was said"},
          q.clock);
  v.value(Field{"fault", "Fault", "The bad answer as a fault of the bike; left out: it is none"}, q.fault);
  v.choice(Field{"look_at", "Look at", "Where on the bike; drawn beside the question"}, q.look_at, look_at_words);
  v.value(chance_field("without_cause", "Without cause", "Chance of the bad answer with nothing wrong; 0.1: 1 in 10"),
          q.without_cause);
  v.source(source_field("Where the question and its chance come from"), q.source);
}

void describe(FieldVisitor& v, Cost& c) {
  v.value(money_field("best", "Best", "Least it can cost"), c.best);
  v.value(money_field("likely", "Likely", "What it usually costs"), c.likely);
  v.value(money_field("worst", "Worst", "Most it can cost"), c.worst);
  v.value(Field{"placeholder", "Placeholder", "Nobody's figure: no offer rests on it"}, c.placeholder);
  v.source(source_field("Where the money comes from"), c.source);
}

void describe(FieldVisitor& v, ChanceAt& c) {
  v.value(Field{"distance", "At", "Odometer"}.at_least(0.0).at_most(most_distance).must(), c.distance);
  v.value(chance_field("chance", "Chance", "That it needs doing by then; 0.1: 1 in 10"), c.chance);
}

void describe(FieldVisitor& v, Sign& s) {
  v.value(Field{"question", "Question", "Id of the question"}.must(), s.question);
  v.value(chance_field("shows", "Shows", "Chance that this fault by itself gives the bad answer"), s.shows);
  v.source(source_field("Where that chance comes from"), s.source);
}

void describe(FieldVisitor& v, Risk& r) {
  v.value(id_field(), r.id);
  v.value(Field{"name", "Risk", "What may be wrong, in few words"}.must(), r.name);
  v.list(Field{"engines", "Engines", "Ids of the engines that have it; none: all"}, r.engines);
  v.list(Field{"drives", "Drives", "Ids of the drives that have it; none: all"}, r.drives);
  v.value(Field{"why", "Why", "What wears, and what comes of it"}.must(), r.why);
  v.list(Field{"chances", "Chances", "By odometer: straight lines between these, level outside"}.must(), r.chances);
  v.source(source_field("Where the chances come from"), r.source);
  v.group(Field{"cost", "Cost", "To put it right: parts and labour"}.must(), r.cost);
  v.value(Field{"proof", "Proof", "Id of the question whose good answer proves it was done"}, r.proof);
  v.value(Field{"must_from", "Must be done from", "With no proof it must be done anyway from this odometer on"}
              .at_least(0.0)
              .at_most(most_distance),
          r.must_from);
  v.value(Field{"every", "Every", "A proof older than this, or without a reading, clears nothing"}.above(0.0).at_most(
              most_distance),
          r.every);
  v.value(Field{"must_with", "Done with", "Id of the risk with whose work it is done too, unless there is proof"},
          r.must_with);
  v.list(Field{"must_when_bad", "Work when", "Ids of questions whose bad answer makes it work for certain"},
         r.must_when_bad);
  v.value(Field{"sight", "Sight", "Id of the question that looks at the part itself: bad, it must be done; good, not"},
          r.sight);
  v.list(Field{"signs", "Signs", "Questions at which it shows"}, r.signs);
  v.value(Field{"settled_by", "Settled by", "What would tell for certain"}.must(), r.settled_by);
  v.value(Field{"say", "Say to the seller", "As a person would say it"}.must(), r.say);
}

void describe(FieldVisitor& v, Book& b) {
  v.list(Field{"drives", "Drives", "What can turn the cams"}, b.drives);
  v.list(Field{"engines", "Engines", "By what they are and their model years"}.must(), b.engines);
  v.list(Field{"questions", "Questions", "What can be known without tools"}.must(), b.questions);
  v.list(Field{"risks", "Risks", "What such an engine hides"}.must(), b.risks);
}

namespace {

template <class T>
const T* with_id(const std::vector<T>& list, std::string_view id) {
  const auto it = std::find_if(list.begin(), list.end(), [&](const T& t) { return t.id == id; });
  return it == list.end() ? nullptr : &*it;
}

}  // namespace

const Question* question_of(const Book& book, std::string_view id) {
  return with_id(book.questions, id);
}

const Engine* engine_of(const Book& book, std::string_view id) {
  return with_id(book.engines, id);
}

const Drive* drive_of(const Book& book, std::string_view id) {
  return with_id(book.drives, id);
}

const Risk* risk_of(const Book& book, std::string_view id) {
  return with_id(book.risks, id);
}

bool asks_for_proof(const Book& book, std::string_view question) {
  return std::any_of(book.risks.begin(), book.risks.end(), [&](const Risk& r) { return r.proof == question; });
}

bool tells(const Risk& r, std::string_view question) {
  const auto at = [&](const Sign& s) { return s.question == question; };
  return r.proof == question || r.sight == question || std::any_of(r.signs.begin(), r.signs.end(), at) ||
         std::find(r.must_when_bad.begin(), r.must_when_bad.end(), question) != r.must_when_bad.end();
}

bool in_order(const Cost& c) {
  return *c.best <= *c.likely && *c.likely <= *c.worst;
}

Findings book_faults(const Book& book, const std::string& at) {
  const std::string inside = at.empty() ? "" : at + ".";
  Findings found;
  find_twice(book.drives, inside + "drives", found);
  find_twice(book.engines, inside + "engines", found);
  find_twice(book.questions, inside + "questions", found);
  find_twice(book.risks, inside + "risks", found);
  for (std::size_t i = 0; i < book.engines.size(); ++i) {
    const std::string path = item_path(inside + "engines", i);
    find_years(book.engines[i], path, found);
    find_missing(book.drives, book.engines[i].drives, path + ".drives", "drive", found);
  }
  for (std::size_t i = 0; i < book.questions.size(); ++i)
    find_hidden_by_nothing(book, book.questions[i], item_path(inside + "questions", i), found);
  for (std::size_t i = 0; i < book.risks.size(); ++i) {
    const std::string path = item_path(inside + "risks", i);
    find_strangers(book, book.risks[i], path, found);
    find_chances(book.risks[i].chances, path + ".chances", found);
    if (!in_order(book.risks[i].cost)) found.push_back(remarks::costs_out_of_order(path + ".cost"));
  }
  return found;
}

}  // namespace camside::look_over
