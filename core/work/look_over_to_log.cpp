#include "work/look_over_to_log.hpp"

#include <algorithm>

#include "calc/look_over/look_over.hpp"
#include "due/due_board.hpp"
#include "knowledge/knowledge.hpp"
#include "log/demo_bike.hpp"
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
  return said != look_over::Said::DidntSee && (said == look_over::Said::Yes) != (q.bad == look_over::YesNo::Yes);
}

// "Is there metal glitter or plastic in the oil? No"
std::string seen_lines(const Input& in, const Result& r) {
  std::string lines;
  for (const look_over::Answer& a : in.answers) {
    const Question* const q = question_of(in.known, a.question);
    const bool counts = std::find(r.questions.begin(), r.questions.end(), a.question) != r.questions.end();
    if (!q || !counts || *a.said == look_over::Said::DidntSee) continue;
    const bool is_void = q->cold_only && in.touched != look_over::Touched::Cold;
    lines += "\n" + q->text + " " + (*a.said == look_over::Said::Yes ? words::yes() : words::no());
    if (is_void)
      lines += std::string(" (") + words::engine_not_cold() + ")";
    else if (asks_for_proof(in.known, a.question) && shows_proof(*q, *a.said))
      lines += std::string(" (") + (a.reading && a.day ? words::proof_seen() : words::proof_without_reading()) + ")";
  }
  return lines;
}

// What is watched has the id of the risk that it is to prevent.
const knowledge::Item* watched_item(const std::string& risk) {
  const auto& items = knowledge::usual_knowledge().items;
  const auto it = std::find_if(items.begin(), items.end(), [&](const knowledge::Item& i) { return i.id == risk; });
  return it == items.end() ? nullptr : &*it;
}

bool concerns(const look_over::Risk& risk, const Result& r) {
  return std::any_of(r.engines.begin(), r.engines.end(),
                     [&](const std::string& engine) { return knowledge::concerns(risk, engine); });
}

// A bill with its day and reading is work done: {"items": …, "odometer": …, "proof": "paper"}.
Json service_of(const Record& looked_over, const Input& in, const Result& r, const look_over::Answer& a) {
  const Question* const q = question_of(in.known, a.question);
  Json items = Json::array();
  for (const look_over::Risk& risk : in.known.risks) {
    const knowledge::Item* const item = risk.proof == a.question ? watched_item(risk.id) : nullptr;
    if (item && concerns(risk, r)) items.push_back(item->name);
  }
  if (!q || !a.reading || !a.day || items.empty() || !shows_proof(*q, *a.said)) return Json();
  return {{"items", std::move(items)},
          {"odometer", typed_on_proof(looked_over, a.question, "reading")},
          {"proof", "paper"}};
}

std::string no_proof_line(const Result& r) {
  std::string names;
  for (const look_over::Found& f : r.must_do) names += (names.empty() ? "" : "; ") + f.name;
  return names;
}

Json facts_of(const Record& looked_over, const Input& in, const Result& r) {
  Json facts{{"nickname", looked_over.name()}};
  const bool one = r.engines.size() == 1;
  const std::string_view choice = one ? due_board::engine_choice(r.engine) : std::string_view{};
  if (!choice.empty()) facts["engine"] = std::string(choice);
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
      all.back().record.set("day", typed_on_proof(looked_over, a.question, "day").get<std::string>());
    }
  const std::string seen = seen_lines(in, r);
  if (!seen.empty()) add("note", {{"text", words::seen_at(day) + seen}});
  const std::string none = no_proof_line(r);
  if (!none.empty()) add("note", {{"text", std::string(words::nothing_shown()) + ": " + none}});
  return all;
}

}  // namespace camside::work
