#include "work/look_over_to_log.hpp"

#include <algorithm>

#include "calc/look_over/look_over.hpp"
#include "due/due_board.hpp"
#include "knowledge/knowledge.hpp"
#include "log/demo_bike.hpp"
#include "records/strict_json.hpp"
#include "units/format.hpp"
#include "work/look_over_record.hpp"
#include "work/words.hpp"

namespace camside::work {

using look_over::Input;
using look_over::Question;
using look_over::Result;
using records::Entry;
using records::Json;
using records::Record;

namespace {

// "reading" or "day", as it was typed.
Json typed_on_proof(const Record& looked_over, const std::string& question, const char* what) {
  for (const Json& a : looked_over.entered()["answers"])
    if (a.value("question", "") == question) return a.value(what, Json());
  return {};
}

bool shows_proof(const Question& q, look_over::Said said) {
  if (said == look_over::Said::DidntSee || said == look_over::Said::None) return false;
  return (said == look_over::Said::Yes) != (q.bad == look_over::YesNo::Yes);
}

bool counts(const Input& in, const Result& r, const look_over::Answer& a) {
  return question_of(in.known, a.question) &&
         std::find(r.questions.begin(), r.questions.end(), a.question) != r.questions.end();
}

bool is_bad(const Question& q, look_over::Said said) {
  return (said == look_over::Said::Yes || said == look_over::Said::No) && !shows_proof(q, said);
}

std::string answer_word(const Question& q, look_over::Said said) {
  if (said == look_over::Said::None) return q.none;
  return said == look_over::Said::Yes ? words::yes() : words::no();
}

// "Is there metal glitter or plastic in the oil? No"
std::string bill_words(const Record& looked_over, const look_over::Answer& a) {
  std::string text = a.reading ? words::proof_seen() : words::proof_without_reading();
  for (const char* what : {"reading", "day"})
    if (const Json typed = typed_on_proof(looked_over, a.question, what); typed.is_string())
      text += ", " + typed.get<std::string>();
  return text;
}

std::string seen_lines(const Record& looked_over, const Input& in, const Result& r) {
  std::string lines;
  for (const look_over::Answer& a : in.answers) {
    if (!counts(in, r, a) || *a.said == look_over::Said::DidntSee) continue;
    const Question* const q = question_of(in.known, a.question);
    const bool warm = in.touched != look_over::Touched::Cold;
    const bool is_void = warm && (q->cold_only || q->warm_hides) && !is_bad(*q, *a.said);
    lines += "\n" + q->text + " " + answer_word(*q, *a.said);
    if (is_void)
      lines += std::string(" (") + words::engine_not_cold() + ")";
    else if (asks_for_proof(in.known, a.question) && shows_proof(*q, *a.said))
      lines += std::string(" (") + bill_words(looked_over, a) + ")";
  }
  return lines;
}

bool is_counted(const Result& r, const std::string& risk) {
  const auto in = [&](const std::vector<look_over::Found>& list) {
    return std::any_of(list.begin(), list.end(), [&](const look_over::Found& f) { return f.risk == risk; });
  };
  return in(r.must_do) || in(r.may_find) || in(r.elsewhere);
}

// What the due list of this bike looks after for that risk.
std::vector<const knowledge::Item*> watched_for(const Result& r, const std::string& risk) {
  std::vector<const knowledge::Item*> all;
  for (const knowledge::Item* item : knowledge::items_of(knowledge::usual_knowledge(), r.engine, r.drives))
    if (item->risk == risk && is_counted(r, risk)) all.push_back(item);
  return all;
}

// Of all risks for which `wanted` says so, each once.
template <class Wanted>
std::vector<std::string> watched_names(const Input& in, const Result& r, Wanted wanted) {
  std::vector<std::string> names;
  for (const look_over::Risk& risk : in.known.risks) {
    if (!wanted(risk)) continue;
    for (const knowledge::Item* item : watched_for(r, risk.id))
      if (std::find(names.begin(), names.end(), item->name) == names.end()) names.push_back(item->name);
  }
  return names;
}

// A bill with its reading is work done: {"items": …, "odometer": …, "proof": "paper"}. One that contradicts the clock,
// or without a reading, proves nothing here either.
Json service_of(const Record& looked_over, const Input& in, const Result& r, const look_over::Answer& a) {
  const Question* const q = question_of(in.known, a.question);
  if (!q || !a.reading || !in.odometer || !shows_proof(*q, *a.said) || look_over::contradicts_clock(in, a))
    return Json();
  const auto items = watched_names(in, r, [&](const look_over::Risk& risk) { return risk.proof == a.question; });
  if (items.empty()) return Json();
  Json done{{"items", items}, {"odometer", typed_on_proof(looked_over, a.question, "reading")}, {"proof", "paper"}};
  if (!a.day) done["undated"] = true;
  return done;
}

std::vector<Json> findings_of(const std::vector<std::string>& parts, const char* grade) {
  std::vector<Json> all;
  for (const std::string& part : parts) all.push_back({{"part", part}, {"grade", grade}, {"proof", "own entry"}});
  return all;
}

// What the parts themselves looked like.
std::vector<Json> sights_of(const Input& in, const Result& r, const look_over::Answer& a) {
  const Question* const q = question_of(in.known, a.question);
  if (!q || *a.said == look_over::Said::DidntSee || *a.said == look_over::Said::None) return {};
  return findings_of(watched_names(in, r, [&](const look_over::Risk& risk) { return risk.sight == a.question; }),
                     is_bad(*q, *a.said) ? "failed" : "good");
}

// What a bad answer makes work, whatever else is known: gears that whine.
std::vector<Json> made_work_by(const Input& in, const Result& r, const look_over::Answer& a) {
  const Question* const q = question_of(in.known, a.question);
  if (!q || !is_bad(*q, *a.said)) return {};
  const auto by_it = [&](const look_over::Risk& risk) {
    return std::find(risk.must_when_bad.begin(), risk.must_when_bad.end(), a.question) != risk.must_when_bad.end();
  };
  return findings_of(watched_names(in, r, by_it), "failed");
}

// Each fault that was seen is an entry of its own, until a service of it.
Json fault_of(const Input& in, const Result& r, const look_over::Answer& a) {
  const Question* const q = question_of(in.known, a.question);
  if (!counts(in, r, a) || q->fault.empty() || !is_bad(*q, *a.said)) return Json();
  return {{"part", q->fault}, {"grade", "failed"}, {"proof", "own entry"}};
}

std::string no_proof_line(const Result& r) {
  std::string names;
  for (const look_over::Found& f : r.must_do) names += (names.empty() ? "" : "; ") + f.name + " (" + f.why_must + ")";
  return names;
}

std::string not_seen_line(const Input& in, const Result& r) {
  std::string lines;
  for (const look_over::Look& l : r.looks)
    if (const Question* q = question_of(in.known, l.question)) lines += "\n" + q->text;
  return lines;
}

std::string price_line(const Input& in, const Result& r) {
  return in.asking ? "Asked " + look_over::with_currency(look_over::money_text(*in.asking), in.currency) + ". " +
                         look_over::in_one_sentence(in, r)
                   : std::string();
}

Json with_odometer(Json entered, const Record& looked_over) {
  if (looked_over.entered().contains("odometer")) entered["odometer"] = looked_over.entered()["odometer"];
  return entered;
}

Json facts_of(const Record& looked_over, const Input& in, const Result& r) {
  Json facts{{"nickname", looked_over.name()}};
  const std::string_view choice = due_board::engine_choice(r.engine);  // of several the one that was counted
  if (!choice.empty()) facts["engine"] = std::string(choice);
  if (!in.drive.empty()) facts["drive"] = in.drive;
  if (in.year) facts["model_year"] = *in.year;
  const std::string odometer = looked_over.entered().value("odometer", std::string());
  if (odometer.ends_with("mi") || odometer.ends_with("km"))
    facts["odometer_unit"] = odometer.substr(odometer.size() - 2);
  return facts;
}

}  // namespace

std::vector<Entry> bike_of(const std::string& id, const Record& looked_over, const Input& in, const Result& r,
                           const std::function<records::Stamp()>& next_stamp) {
  const std::string day = looked_over.taken().substr(0, 10);
  std::vector<Entry> all;
  const auto add = [&](std::string_view kind, Json entered) {
    all.push_back(records::make_entry(kind, id, next_stamp()));
    all.back().record.entered() = std::move(entered);
    if (!day.empty() && kind != "facts") all.back().record.set("day", day);
    if (is_invented(looked_over)) all.back().record.set("note", std::string(records::invented_mark));
  };
  add("facts", facts_of(looked_over, in, r));
  if (looked_over.entered().contains("odometer")) add("odometer", {{"reading", looked_over.entered()["odometer"]}});
  for (const look_over::Answer& a : in.answers)
    if (Json done = service_of(looked_over, in, r, a); !done.is_null()) {
      add("service", std::move(done));
      if (a.day) all.back().record.set("day", format_date(*a.day));
    }
  for (const look_over::Answer& a : in.answers) {
    std::vector<Json> sights = sights_of(in, r, a);
    for (Json& sight : sights) add("finding", with_odometer(std::move(sight), looked_over));
    if (!sights.empty()) continue;  // that is the fault
    for (Json& work : made_work_by(in, r, a)) add("finding", with_odometer(std::move(work), looked_over));
    if (Json fault = fault_of(in, r, a); !fault.is_null()) add("finding", with_odometer(std::move(fault), looked_over));
  }
  const std::string seen = seen_lines(looked_over, in, r);
  if (!seen.empty()) add("note", {{"text", words::seen_at(day) + seen}});
  const std::string none = no_proof_line(r);
  if (!none.empty()) add("note", {{"text", std::string(words::nothing_shown()) + ": " + none}});
  if (r.engines.size() > 1) add("note", {{"text", words::engine_taken()}});
  const std::string open = not_seen_line(in, r);
  if (!open.empty()) add("note", {{"text", words::not_looked_at() + open}});
  const std::string price = price_line(in, r);
  if (!price.empty()) add("note", {{"text", price}});
  return all;
}

}  // namespace camside::work
