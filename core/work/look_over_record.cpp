#include "work/look_over_record.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>

#include "knowledge/knowledge.hpp"
#include "records/form.hpp"
#include "records/json_path.hpp"
#include "records/new_id.hpp"
#include "records/strict_json.hpp"
#include "work/day_as_written.hpp"
#include "work/words.hpp"

namespace camside::work {

using records::Json;
using records::Record;

namespace {

constexpr std::string_view kind_name = "look_over";

const RecordKind& kind() {
  return *records::find_kind(kind_name);
}

// The item of a list whose `name` is `id`; the list's end when there is none.
std::size_t item_of(const Json& list, const char* name, std::string_view id) {
  std::size_t at = 0;
  for (const Json& item : list) {
    if (item.is_object() && item.contains(name) && item[name].is_string() &&
        item[name].get_ref<const std::string&>() == id)
      break;
    ++at;
  }
  return at;
}

// So that no row moves while its price is typed.
std::vector<look_over::Found> in_book_order(const look_over::Input& in, const look_over::Result& result) {
  std::vector<look_over::Found> all;
  for (const look_over::Risk& risk : in.known.risks)
    for (const auto* list : {&result.must_do, &result.may_find, &result.elsewhere})
      for (const look_over::Found& f : *list)
        if (f.risk == risk.id) all.push_back(f);
  return all;
}

bool same_list(const Json& a, const Json& b) {
  return a.value("source", Json()) == b.value("source", Json()) && a.value("shape", Json()) == b.value("shape", Json());
}

Json& list_in(Json& entered, const char* name) {
  Json& list = entered[name];
  if (!list.is_array()) list = Json::array();
  return list;
}

std::string text_of(const Json& item, std::string_view name) {
  if (!item.contains(name)) return {};
  const Json& value = item[std::string(name)];
  if (value.is_number()) return fmt::format("{:.15g}", value.get<double>());  // 250, not 250.0
  return value.is_string() ? value.get<std::string>() : value.dump();
}

// The row of a list that was entered whose `name` is `id`; none where it isn't there.
const Json* row_of(const Record* of, const char* list, const char* name, std::string_view id) {
  if (!of || !of->entered().contains(list)) return nullptr;
  const Json& rows = of->entered()[list];
  const std::size_t at = item_of(rows, name, id);
  return at < rows.size() ? &rows[at] : nullptr;
}

// Its book may be an older one that doesn't know the risk.
bool has_risk(const Record& of, std::string_view risk) {
  const Json& entered = of.entered();
  if (!entered.contains("known") || !entered["known"].contains("risks")) return false;
  const Json& risks = entered["known"]["risks"];
  return item_of(risks, "id", risk) < risks.size();
}

bool as_in_book(const Record& of, const Json& row) {
  const Json& risks = of.entered()["known"]["risks"];
  const std::size_t at = item_of(risks, "id", row.value("risk", ""));
  if (at >= risks.size()) return false;
  const Json& cost = risks[at]["cost"];
  const auto same = [&](const char* end) { return row.contains(end) && cost.contains(end) && row[end] == cost[end]; };
  return same("best") && same("likely") && same("worst");
}

// The row of the user's own figures for this risk; made from those it has now.
std::size_t own_row(Record& of, const look_over::Found& risk) {
  Json& costs = list_in(of.entered(), "costs");
  const std::size_t at = item_of(costs, "risk", risk.risk);
  if (at == costs.size())
    costs.push_back({{"risk", risk.risk},
                     {"best", risk.cost.low.in_amount()},
                     {"likely", risk.cost.middle.in_amount()},
                     {"worst", risk.cost.high.in_amount()}});
  return at;
}

// Which field of which row: "answers[3].day" is {"answers", 3, "day"}; "odometer" has no row.
struct Place {
  std::string list;
  std::size_t row = 0;
  std::string field;
};

std::optional<Place> place_of(const std::string& path) {
  const auto steps = records::steps_of(path);
  if (!steps || steps->empty() || !std::holds_alternative<std::string>(steps->front())) return {};
  Place place;
  place.list = std::get<std::string>(steps->front());
  if (place.list == "known") return {};  // its own book: nothing of the user's
  if (steps->size() > 1 && std::holds_alternative<std::size_t>((*steps)[1])) {
    place.row = std::get<std::size_t>((*steps)[1]);
    if (steps->size() > 2 && std::holds_alternative<std::string>((*steps)[2]))
      place.field = std::get<std::string>((*steps)[2]);
    return place;
  }
  place.field = std::exchange(place.list, "");
  return place;
}

const char* key_of(const std::string& list) {
  return list == "answers" ? "question" : "risk";
}

// The field, or the whole row where it can't do without. In its place what stood there when all could be used.
bool leave_out(Json& entered, const Place& place, const Record* good) {
  if (place.list.empty()) {
    const bool had = entered.contains(place.field);
    const Json* const before = good && good->entered().contains(place.field) ? &good->entered()[place.field] : nullptr;
    const bool same = had && before && *before == entered[place.field];
    if (before && !same)
      entered[place.field] = *before;
    else if (had)
      entered.erase(place.field);
    return had;
  }
  Json& rows = entered[place.list];
  if (!rows.is_array() || place.row >= rows.size()) return false;
  Json& row = rows[place.row];
  const char* const key = key_of(place.list);
  const std::string id =
      row.is_object() && row.contains(key) && row[key].is_string() ? row[key].get<std::string>() : "";
  const Json* const before = row_of(good, place.list.c_str(), key, id);
  const bool optional_field = place.list == "answers" && (place.field == "day" || place.field == "reading");
  if (place.list == "costs" && before && *before != row)
    row = *before;
  else if (optional_field && row.contains(place.field))
    row.erase(place.field);
  else
    rows.erase(place.row);
  return true;
}

std::string where_to(const Json& entered, const Place& place) {
  if (place.list.empty()) return place.field;
  const Json& rows = entered[place.list];
  if (!rows.is_array() || place.row >= rows.size() || !rows[place.row].is_object()) return place.list;
  std::string at = place.list + "/" + rows[place.row].value(key_of(place.list), "");
  return place.list == "costs" || place.field.empty() ? at : at + "/" + place.field;
}

}  // namespace

std::vector<std::string> LookOvers::ids() const {
  std::vector<std::string> all;
  for (const Record& r : std::as_const(job_).job().records)
    if (r.kind() == kind_name) all.push_back(r.id());
  return all;
}

Record* LookOvers::find(std::string_view id) {
  Record* const found = id.empty() ? nullptr : job_.job().find(id);
  return found && found->kind() == kind_name ? found : nullptr;
}

const Record* LookOvers::find(std::string_view id) const {
  for (const Record& r : std::as_const(job_).job().records)
    if (!id.empty() && r.id() == id && r.kind() == kind_name) return &r;
  return nullptr;
}

const LookedOver& LookOvers::read(std::string_view id) {
  const auto known = kept_.find(id);
  if (known != kept_.end()) return known->second;
  const Record* const of = find(id);
  LookedOver& one = kept_[std::string(id)] = of ? solved_with_what_can_be_used(id, *of) : LookedOver{};
  if (one.result() && one.input()) risks_[std::string(id)] = in_book_order(*one.input(), *one.result());
  return one;
}

LookedOver LookOvers::solved_with_what_can_be_used(std::string_view id, const Record& of) {
  constexpr int enough = 100;
  LookedOver one{records::solve(of), {}};
  if (one.result()) {
    good_.insert_or_assign(std::string(id), of);
    return one;
  }
  const auto good = good_.find(id);
  Record usable = of;
  for (int i = 0; !one.result() && i < enough; ++i) {
    const Findings& all = one.solved.findings;
    const auto refused =
        std::find_if(all.begin(), all.end(), [](const Finding& f) { return f.severity == Severity::Refusal; });
    const auto place = refused == all.end() ? std::nullopt : place_of(refused->field);
    if (!place) break;
    LeftOut left{where_to(usable.entered(), *place), *refused};
    if (!leave_out(usable.entered(), *place, good == good_.end() ? nullptr : &good->second)) break;
    one.left_out.push_back(std::move(left));
    one.solved = records::solve(usable);
  }
  return one;
}

const std::vector<look_over::Found>& LookOvers::risks(std::string_view id) {
  read(id);
  return risks_[std::string(id)];
}

std::string LookOvers::cost(std::string_view id, std::string_view risk, std::string_view end) const {
  const Json* const row = row_of(find(id), "costs", "risk", risk);
  return row ? text_of(*row, end) : std::string();
}

const LookedOver& LookOvers::last(std::string_view id) {
  const LookedOver& now = read(id);
  const auto before = last_.find(id);
  return now.result() || before == last_.end() ? now : before->second;
}

void LookOvers::forget() {
  kept_.clear();
  last_.clear();
}

void LookOvers::solve_anew(std::string_view id) {
  const auto known = kept_.find(id);
  if (known == kept_.end()) return;
  if (known->second.result()) last_[std::string(id)] = std::move(known->second);
  kept_.erase(known);
}

void LookOvers::changed(std::string_view id) {
  solve_anew(id);
  job_.commit();
}

// ---- which there are

// Prices and life curves that are the user's own go along to the next bike, as they stand with the last one; of risks
// that the book has no more they stay behind.
void LookOvers::take_own_figures(Record& fresh) const {
  const auto& all = std::as_const(job_).job().records;
  const auto last =
      std::find_if(all.rbegin(), all.rend(), [](const Record& r) { return r.kind() == kind_name && !is_invented(r); });
  if (last == all.rend()) return;
  const Json& from = last->entered();
  for (const char* own : {"money_confirmed", "currency"})
    if (from.contains(own)) fresh.entered()[own] = from[own];
  for (const char* own : {"costs", "lives"}) {
    if (!from.contains(own)) continue;
    for (const Json& one : from[own])
      if (has_risk(fresh, one.value("risk", ""))) list_in(fresh.entered(), own).push_back(one);
  }
}

// "Bike 3": one more than any was, also of those that are gone since.
std::string LookOvers::free_name() {
  for (const Record& r : std::as_const(job_).job().records)
    last_number_ = std::max(last_number_, words::number_of(r.name()));
  return words::bike_nth(++last_number_);
}

// The book goes in as it stands in its file: a saved look-over carries what it was made with.
std::string LookOvers::add(const std::string& taken, const std::vector<std::string>& taken_names) {
  Record fresh = records::make_record(kind(), records::new_id(), taken);
  for (const std::string& name : taken_names) last_number_ = std::max(last_number_, words::number_of(name));
  fresh.set("name", free_name());
  if (taken.size() >= 10) fresh.entered()["today"] = taken.substr(0, 10);
  const auto file = records::read_json(knowledge::usual_knowledge_file());
  if (file)
    for (const char* part : {"drives", "engines", "questions", "risks"}) fresh.entered()["known"][part] = (*file)[part];
  take_own_figures(fresh);
  std::string id = fresh.id();
  job_.job().records.push_back(std::move(fresh));
  changed(id);
  return id;
}

void LookOvers::add_examples() {
  for (Record demo : records::demo_records(kind())) {
    demo.json["id"] = records::new_id();
    const std::string id = demo.id();
    job_.job().records.push_back(std::move(demo));
    changed(id);
  }
}

std::size_t LookOvers::remove(std::string_view id) {
  auto& all = job_.job().records;
  const auto it = std::find_if(all.begin(), all.end(), [&](const Record& r) { return r.id() == id; });
  const auto at = static_cast<std::size_t>(it - all.begin());
  if (it != all.end()) last_number_ = std::max(last_number_, words::number_of(it->name()));
  if (it != all.end()) all.erase(it);
  changed(id);
  return at;
}

void LookOvers::put_back(Record removed, std::size_t at) {
  auto& all = job_.job().records;
  const std::string id = removed.id();
  all.insert(all.begin() + static_cast<std::ptrdiff_t>(std::min(at, all.size())), std::move(removed));
  changed(id);
}

// ---- what is entered in one

std::string LookOvers::said(std::string_view id, std::string_view question) {
  const Json* const answer = row_of(find(id), "answers", "question", question);
  return answer ? answer->value("said", std::string()) : std::string();
}

void LookOvers::answer(std::string_view id, std::string_view question, std::string_view said) {
  Record* const of = find(id);
  if (!of) return;
  Json& answers = list_in(of->entered(), "answers");
  const std::size_t at = item_of(answers, "question", question);
  if (at == answers.size()) answers.push_back({{"question", std::string(question)}});
  answers[at]["said"] = std::string(said);
  changed(id);
}

std::string LookOvers::on_proof(std::string_view id, std::string_view question, std::string_view what) const {
  const Json* const answer = row_of(find(id), "answers", "question", question);
  return answer ? text_of(*answer, what) : std::string();
}

void LookOvers::set_on_proof(std::string_view id, std::string_view question, std::string_view good,
                             std::string_view what, std::string_view text) {
  Record* const of = find(id);
  if (!of) return;
  Json& answers = list_in(of->entered(), "answers");
  const std::size_t at = item_of(answers, "question", question);
  if (at == answers.size()) answers.push_back({{"question", std::string(question)}, {"said", std::string(good)}});
  const std::string written = what == "day" ? day_as_written(text) : std::string(text);
  records::set_text(*of, "answers[" + std::to_string(at) + "]." + std::string(what), written);
  changed(id);
}

void LookOvers::set(std::string_view id, std::string_view path, std::string_view text) {
  if (Record* const of = find(id)) records::set_text(*of, path, text);
  changed(id);
}

void LookOvers::rename(std::string_view id, const std::string& name) {
  if (Record* const of = find(id)) of->set("name", name);
  changed(id);
}

// ---- prices

std::vector<Record*> LookOvers::priced_alike(std::string_view id) {
  std::vector<Record*> alike;
  const Record* const of = find(id);
  for (Record& r : job_.job().records)
    if (of && r.kind() == kind_name && is_invented(r) == is_invented(*of)) alike.push_back(&r);
  return alike;
}

void LookOvers::priced_anew(std::string_view id) {
  for (const Record* r : priced_alike(id)) solve_anew(r->id());
  job_.commit();
}

void LookOvers::forget_costs(std::string_view id) {
  for (Record* r : priced_alike(id)) records::remove_field(*r, "costs");
  priced_anew(id);
}

void LookOvers::set_cost(std::string_view id, const look_over::Found& risk, std::string_view end,
                         std::string_view text) {
  for (Record* r : priced_alike(id)) {
    if (!has_risk(*r, risk.risk)) continue;
    const std::size_t at = own_row(*r, risk);
    records::set_text(*r, "costs[" + std::to_string(at) + "]." + std::string(end), text);
  }
  priced_anew(id);
}

void LookOvers::take_price(std::string_view id, const look_over::Found& shown) {
  for (Record* r : priced_alike(id))
    if (has_risk(*r, shown.risk)) own_row(*r, shown);
  priced_anew(id);
}

void LookOvers::set_currency(std::string_view id, std::string_view text) {
  for (Record* r : priced_alike(id)) records::set_text(*r, "currency", text);
  priced_anew(id);
}

void LookOvers::give_prices_back(std::string_view id) {
  for (Record* r : priced_alike(id)) {
    records::remove_field(*r, "money_confirmed");
    Json typed = Json::array();
    for (const Json& row : list_in(r->entered(), "costs"))
      if (!as_in_book(*r, row)) typed.push_back(row);
    r->entered()["costs"] = std::move(typed);
  }
  priced_anew(id);
}

void LookOvers::set_life(std::string_view id, const look_over::OwnLife& life) {
  Record* const of = find(id);
  if (!of) return;
  Json fresh{{"risk", life.risk},
             {"shape", *life.shape},
             {"characteristic_life", fmt::format("{} km", life.characteristic_life->in_km())},
             {"source", {{"basis", std::string(name_of(life.source->basis()))}, {"title", life.source->text()}}}};
  Json kept = Json::array();
  for (const Json& one : list_in(of->entered(), "lives"))
    if (one.value("risk", "") != life.risk && !same_list(one, fresh)) kept.push_back(one);
  kept.push_back(std::move(fresh));
  of->entered()["lives"] = std::move(kept);
  changed(id);
}

void LookOvers::forget_life(std::string_view id, std::string_view risk) {
  Record* const of = find(id);
  if (!of) return;
  Json& lives = list_in(of->entered(), "lives");
  const std::size_t at = item_of(lives, "risk", risk);
  if (at < lives.size()) lives.erase(at);
  changed(id);
}

bool is_invented(const Record& look_over) {
  return look_over.note().starts_with("Invented");
}

}  // namespace camside::work
