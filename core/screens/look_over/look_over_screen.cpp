#include "screens/look_over/look_over_screen.hpp"

#include <algorithm>
#include <array>

#include "calc/look_over/look_over.hpp"
#include "findings/safety.hpp"
#include "records/form.hpp"
#include "records/new_id.hpp"
#include "screens/look_over/look_over_result.hpp"
#include "screens/look_over/look_over_words.hpp"
#include "screens/widgets/answer.hpp"
#include "screens/widgets/shown.hpp"
#include "screens/words.hpp"
#include "work/look_over_to_log.hpp"

namespace camside::screens {

using look_over::Found;
using look_over::Input;
using look_over::Question;
using look_over::Result;
using records::Record;

namespace {

constexpr const char* name_path = "@name";  // stands beside what is entered
constexpr const char* currency_path = "currency";

// "costs/shoes/best": which figure of which risk the keypad is at.
std::string cost_path(const std::string& risk, const char* end) {
  return "costs/" + risk + "/" + end;
}

// "proof/papers_shoes/reading": what of which proof the keypad is at.
const std::string proof_path = "proof/";

constexpr std::array<const char*, 3> cost_ends{"best", "likely", "worst"};

// The question whose bad answer hides this one's good one; none when it isn't hidden.
const Question* hides(const Input& in, const Question* q) {
  const Question* const by = q ? question_of(in.known, q->hidden_by) : nullptr;
  const auto bad = by && by->bad == look_over::YesNo::Yes ? look_over::Said::Yes : look_over::Said::No;
  for (const look_over::Answer& a : in.answers)
    if (by && a.question == by->id && a.said == bad) return by;
  return nullptr;
}

// As it is typed: no commas.
std::string whole_text(Money m) {
  std::string text = look_over::money_text(m);
  std::erase(text, ',');
  return text;
}

Findings refusals_of(const Findings& all) {
  Findings some;
  for (const Finding& f : all)
    if (f.severity == Severity::Refusal) some.push_back(f);
  return some;
}

// What was refused, and what the facts by themselves leave open.
Findings of_facts(const Solved& solved) {
  Findings some = refusals_of(solved.findings);
  const auto* const r = solved.result_as<Result>();
  for (const Finding& f : r ? r->outcome.findings : Findings{})
    if (f.severity == Severity::Caution && (f.field == "year" || f.field == "odometer" || f.field == "asking"))
      some.push_back(f);
  return some;
}

// The doubts stand in the result itself.
Findings cautions_of(const Findings& all) {
  Findings some;
  for (const Finding& f : all)
    if (f.severity == Severity::Caution) some.push_back(f);
  return some;
}

const char* price_label(std::size_t end) {
  return end == 0 ? words::best() : end == 1 ? words::likely() : words::worst();
}

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : "; ") + name;
  return text;
}

}  // namespace

// ---- where one is

void LookOverScreen::forget() {
  looks_.forget();
  keypad_.close();
  page_ = Page::List;
}

void LookOverScreen::go(Page page) {
  keypad_.close();
  said_.clear();
  gave_ = false;
  engines_open_ = false;
  lives_.close();
  to_top_ = true;
  page_ = page;
}

void LookOverScreen::show(const std::string& id) {
  chosen_ = id;
  go(Page::Result);
}

std::vector<std::string> LookOverScreen::where() const {
  return deep() ? std::vector<std::string>{part(), chosen_, question_} : std::vector<std::string>{};
}

// Of one that is gone: the list, as whenever the one shown isn't there.
void LookOverScreen::come_back(const std::vector<std::string>& where) {
  if (where.size() < 3) return;
  for (const Page page : {Page::Facts, Page::Round, Page::Questions, Page::Prices, Page::Working, Page::Result}) {
    go(page);
    if (where[0] == part()) break;
  }
  chosen_ = where[1];
  question_ = where[2];
}

void LookOverScreen::back() {
  if (keypad_.is_open()) return keypad_.close();
  switch (page_) {
    case Page::Questions:
      return go(Page::Round);
    case Page::Round:
    case Page::Facts:
    case Page::Prices:
    case Page::Working:
      return go(Page::Result);
    case Page::Result:
    case Page::List:
      return go(Page::List);
  }
}

std::string LookOverScreen::title() {
  const Record* const of = deep() ? looks_.find(chosen_) : nullptr;
  if (!of) return words::look_over();
  if (page_ == Page::Prices) return words::prices();
  if (page_ == Page::Working) return words::working();
  return of->name().empty() ? words::look_over() : of->name();
}

const char* LookOverScreen::part() const {
  constexpr std::array<const char*, 7> names{"look-overs",          "look-over facts",  "look-over round",
                                             "look-over questions", "look-over result", "look-over prices",
                                             "look-over working"};
  return names[static_cast<std::size_t>(page_)];
}

void LookOverScreen::begin() {
  chosen_ = looks_.add(platform_.local_time(), names_taken());
  removed_name_.clear();
  go(Page::Facts);
}

std::string LookOverScreen::next_open() {
  const Result* const r = result();
  const Input* const in = input();
  return r && in ? next_look(*in, *r) : std::string();
}

// At the first question that is open, else at the first.
void LookOverScreen::start_round() {
  const Result* const r = result();
  if (!r || r->questions.empty()) return;
  const std::string open = next_open();
  show_question(open.empty() ? r->questions.front() : open);
}

void LookOverScreen::show_question(const std::string& id) {
  question_ = id;
  more_ = false;
  go(Page::Round);
}

// ---- the round

RoundQuestion LookOverScreen::round_question() {
  RoundQuestion round;
  const work::LookedOver& last = looks_.last(chosen_);  // half a date can't be solved
  const Result* const r = last.result();
  const Input* const in = last.input();
  if (!r || !in || r->questions.empty()) return round;
  auto it = std::find(r->questions.begin(), r->questions.end(), question_);
  if (it == r->questions.end()) it = r->questions.begin();  // the year was changed: it doesn't count any more
  question_ = *it;
  round.question = question_of(in->known, question_);
  round.at = static_cast<std::size_t>(it - r->questions.begin());
  round.of = r->questions.size();
  round.said = looks_.said(chosen_, question_);
  round.tells_about = joined(look_over::told_by(*in, *r, question_));
  round.more = more_;
  round.touched = in->touched;
  round.proof = asks_for_proof(in->known, question_);
  round.hidden_by = hides(*in, round.question);
  round.cold_void = round.question && round.question->cold_only && in->touched != look_over::Touched::Cold;
  return round;
}

std::vector<std::string> LookOverScreen::answers() {
  std::vector<std::string> all;
  if (const Result* r = looks_.last(chosen_).result())
    for (const std::string& id : r->questions) all.push_back(looks_.said(chosen_, id));
  return all;
}

void LookOverScreen::step(int by) {
  const Result* const r = looks_.last(chosen_).result();
  if (!r) return;
  const auto it = std::find(r->questions.begin(), r->questions.end(), question_);
  if (it == r->questions.end() || (by < 0 && it == r->questions.begin())) return;
  const bool last_of_few = it - r->questions.begin() + 1 == static_cast<std::ptrdiff_t>(r->first);
  if (by > 0 && (last_of_few || std::next(it) == r->questions.end())) return go(Page::Result);  // one may stop there
  show_question(*std::next(it, by));
}

// One tap answers and goes on.
void LookOverScreen::answer(const std::string& said) {
  looks_.answer(chosen_, question_, said);
  step(1);
}

void LookOverScreen::take_answer(const AnswerTap& tap) {
  if (tap.previous) step(-1);
  if (!tap.said.empty()) answer(tap.said);
}

void LookOverScreen::physical_answers() {
  if (ImGui::IsKeyPressed(ImGuiKey_Y, false)) return answer("yes");
  if (ImGui::IsKeyPressed(ImGuiKey_N, false)) return answer("no");
  if (ImGui::IsKeyPressed(ImGuiKey_D, false)) answer("didn't see");
}

bool LookOverScreen::walk_away() {
  const Result* const r = result();
  return r && look_over::walk_away_met(*r);
}

// Once something ends it, the way out stands above every question.
bool LookOverScreen::stopped_here(Ui& ui) {
  if (!walk_away()) return false;
  const bool tapped = draw_stop(ui, result()->walk_away.front().why);
  if (tapped) go(Page::Result);
  return tapped;
}

// A bill carries more than "yes": its reading and its day say how old the work is.
void LookOverScreen::draw_proof(Ui& ui, const RoundQuestion& round, System system) {
  if (!round.proof) return;
  const float each = (ui.width() - 8) / 2;
  draw_on_proof(ui, "reading", words::reading_on_bill(), each, system);
  ImGui::SameLine(0, 8);
  draw_on_proof(ui, "day", words::day_on_bill(), each, system);
  ui.quiet(words::on_bill_help());
  ui.gap(8);
}

void LookOverScreen::draw_on_proof(Ui& ui, const char* what, const char* label, float width, System system) {
  Ui::FieldLook look;
  look.label = label;
  look.text = looks_.on_proof(chosen_, question_, what);
  look.width = width;
  const std::string path = proof_path + question_ + "/" + what;
  look.active = keypad_.path() == path;
  for (const work::LeftOut& left : looks_.read(chosen_).left_out)
    if (left.at == "answers/" + question_ + "/" + what) look.error = left.why.text;
  if (ui.field(path, look)) edit(path, label, Kind::Distance, look.text, system);
}

void LookOverScreen::draw_round(Ui& ui, System system, bool wide) {
  if (stopped_here(ui)) return;
  const RoundQuestion round = round_question();
  if (!round.question) return;
  draw_question(ui, round, answers());
  if (wide) {
    const AnswerTap tap = draw_answers(ui, round);
    ui.quiet(words::answer_keys());
    ui.gap(12);
    const std::string here = question_;
    take_answer(tap);
    if (question_ == here && page_ == Page::Round && !keypad_.is_open()) physical_answers();
    if (question_ != here || page_ != Page::Round) return;  // and what was solved is another one now
  }
  draw_meaning(ui, round);
  draw_proof(ui, round, system);
  if (!round.question->say.empty())
    ui.coloured(words::say(round.question->say), ui.theme().accent, ui.px(18), ui.fonts().words);
  if (ui.button("more", more_ ? words::less_of_it() : words::more_of_it(), Look::Quiet)) more_ = !more_;
  if (more_) draw_how(ui, round);
  if (round.question->cold_only || (more_ && round.question->warm_hides)) {
    const Record* const of = looks_.find(chosen_);
    const std::string touched = draw_touched(ui, round.touched, of && of->has_entered("touched"));
    if (!touched.empty()) looks_.set(chosen_, "touched", touched);
  }
  ui.gap(16);
  if (const Result* r = result(); r && !wide && !hide_sum_)
    ui.text(
        words::so_far(look_over::with_currency(look_over::money_text(look_over::sum_shown(*r)), input()->currency)));
  draw_sum_switch(ui);
  if (ui.button("all questions", words::all_questions(), Look::Quiet)) return go(Page::Questions);
  if (ui.button("to result", words::to_result(), Look::Quiet)) return go(Page::Result);
  ui.gap(16);
}

void LookOverScreen::draw_questions(Ui& ui) {
  const Result* const r = looks_.last(chosen_).result();
  const Input* const in = looks_.last(chosen_).input();
  if (!r || !in) return;
  std::string chosen;
  std::size_t n = 0;
  for (const std::string& id : r->questions) {
    const Question* const q = question_of(in->known, id);
    if (!q) continue;
    const std::string said = looks_.said(chosen_, id);
    const std::string word = said == "yes"    ? words::yes()
                             : said == "no"   ? words::no()
                             : said == "none" ? q->none
                             : said.empty()   ? words::not_answered()
                                              : words::didnt_see();
    if (ui.row("question " + id, std::to_string(++n) + "  " + q->text, word)) chosen = id;
    ui.gap(4);
  }
  if (!chosen.empty()) show_question(chosen);
}

// ---- several

std::string LookOverScreen::odometer_of(const Input& in, System system) const {
  return in.odometer ? shown(Kind::Distance, in.odometer->base(), system) : std::string("?");
}

std::vector<Candidate> LookOverScreen::candidates(System system) {
  std::vector<Candidate> all;
  for (const std::string& id : looks_.ids()) {
    if (is_bought(id)) continue;
    const work::LookedOver& one = looks_.read(id);
    const Record* const of = looks_.find(id);
    Candidate c{id, of ? of->name() : std::string(), "?", one.input(), one.result()};
    if (c.name.empty()) c.name = words::look_over();
    if (!c.input) c.result = nullptr;
    if (c.input) c.odometer = odometer_of(*c.input, system);
    all.push_back(std::move(c));
  }
  sort_stably(all);
  return all;
}

void LookOverScreen::draw_start(Ui& ui) {
  ui.title(words::look_over_question());
  ui.text(words::look_over_help());
  ui.gap(12);
  if (ui.button("example", words::show_example())) looks_.add_examples();
}

void LookOverScreen::draw_undo(Ui& ui) {
  if (removed_name_.empty()) return;
  if (ui.row("undo", words::removed(removed_name_), words::undo())) {
    looks_.put_back(std::move(removed_), removed_at_);
    removed_name_.clear();
  }
  ui.gap(8);
}

void LookOverScreen::draw_comparison(Ui& ui, System system) {
  draw_undo(ui);
  const std::vector<Candidate> all = candidates(system);
  if (looks_.ids().empty()) return draw_start(ui);
  const bool invented = std::any_of(all.begin(), all.end(), [&](const Candidate& c) {
    const Record* const of = looks_.find(c.id);
    return of && work::is_invented(*of);
  });
  if (invented) ui.quiet(words::invented_bikes());
  const std::string tapped = draw_candidates(ui, all, "", false);
  if (all.size() > 1) ui.quiet(words::compare_order());
  if (all.size() > 1 && !is_table(ui)) ui.quiet(words::bars_help());
  if (for_sale() >= most_candidates) ui.quiet(words::six_at_most());
  if (!tapped.empty()) show(tapped);
  draw_bought(ui);
}

// Each with a look-over still there, below those for sale.
void LookOverScreen::draw_bought(Ui& ui) {
  std::string tapped;
  bool any = false;
  for (const std::string& id : looks_.ids()) {
    if (!is_bought(id)) continue;
    if (!std::exchange(any, true)) ui.heading(words::bought());
    if (ui.row("bought " + id, looks_.find(id)->name(), "")) tapped = id;
    ui.gap(4);
  }
  if (any) ui.quiet(words::bought_help());
  if (!tapped.empty()) show(tapped);
}

bool LookOverScreen::is_bought(const std::string& id) const {
  const records::Bike* const bike = log_.bike(id);
  return bike && !bike->removed;
}

std::size_t LookOverScreen::for_sale() const {
  const std::vector<std::string> all = looks_.ids();
  return static_cast<std::size_t>(
      std::count_if(all.begin(), all.end(), [&](const std::string& id) { return !is_bought(id); }));
}

std::vector<std::string> LookOverScreen::names_taken() const {
  std::vector<std::string> names;
  for (const BikeRow& row : log_.rows())
    if (const records::Bike* bike = log_.bike(row.id)) names.push_back(bike->name());
  return names;
}

void LookOverScreen::draw_list(Ui& ui, System system) {
  const std::string tapped = draw_candidates(ui, candidates(system), chosen_, true);
  if (!tapped.empty()) show(tapped);
}

void LookOverScreen::draw_side(Ui& ui) {
  const Result* const r = result();
  const Input* const in = input();
  if (!r || !in) return;
  if (page_ == Page::Result)
    draw_working(ui);
  else if (!hide_sum_)
    draw_result_in_short(ui, *in, *r);
}

// ---- the facts

void LookOverScreen::edit(const std::string& path, const std::string& label, Kind kind, const std::string& text,
                          System system) {
  if (path.ends_with("/day")) return keypad_.open(path, label, Kind::Number, text, nullptr, "", Typing::Date);
  const Unit* const unit = kind == Kind::Distance ? &preferred_unit(kind, system) : nullptr;
  keypad_.open(path, label, kind, text, unit, "", Typing::Number);
}

void LookOverScreen::edit_name() {
  const Record* const of = looks_.find(chosen_);
  if (!of) return;
  keypad_.close();
  TextRequest request;
  request.field = name_path;
  request.label = words::nickname();
  request.text = of->name();
  request.limit = 60;
  request.changed = [this, id = chosen_](const std::string& text) { looks_.rename(id, text); };
  request.done = [] {};
  if (!platform_.open_text_field(request))
    keypad_.open(name_path, words::nickname(), Kind::Number, of->name(), nullptr, "", Typing::Words);
}

void LookOverScreen::edit_currency() {
  const Record* const of = looks_.find(chosen_);
  if (!of) return;
  keypad_.close();
  TextRequest request;
  request.field = currency_path;
  request.label = words::currency();
  request.text = of->entered_text(currency_path);
  request.limit = 8;
  request.changed = [this, id = chosen_](const std::string& text) { looks_.set_currency(id, text); };
  request.done = [] {};
  if (!platform_.open_text_field(request))
    keypad_.open(currency_path, words::currency(), Kind::Number, request.text, nullptr, "", Typing::Words);
}

void LookOverScreen::draw_fact(Ui& ui, const char* path, const std::string& label, System system) {
  const Record* const of = looks_.find(chosen_);
  if (!of) return;
  Ui::FieldLook look;
  look.label = label;
  look.text = of->entered_text(path);
  look.active = keypad_.path() == path;
  for (const work::LeftOut& left : looks_.read(chosen_).left_out)
    if (left.at == path) look.error = left.why.text;
  const std::string_view name = path;
  const Kind kind = name == "odometer" ? Kind::Distance : name == "asking" ? Kind::Money : Kind::Number;
  if (ui.field(path, look)) edit(path, label, kind, look.text, system);
}

// By the year, unless the buyer knows better.
void LookOverScreen::draw_engines(Ui& ui) {
  const Input* const in = input();
  const Result* const r = result();
  if (!in) return;
  std::vector<std::string> names{words::engine_by_year()};
  int now = 0;
  for (const look_over::Engine& e : in->known.engines) {
    if (!in->engine.empty() && e.id == in->engine) now = static_cast<int>(names.size());
    names.push_back(e.name);
  }
  const bool settled = r && r->engines.size() == 1;
  std::string says = now > 0 ? names[static_cast<std::size_t>(now)] : std::string(words::engine_by_year());
  for (const look_over::Engine& e : in->known.engines)
    if (now == 0 && settled && e.id == r->engine) says = e.name;
  if (ui.row("engine", words::engine_row(says), words::change_them())) engines_open_ = !engines_open_;
  if (!engines_open_) return;
  const int pressed = ui.segmented("engines", "", names, now);
  if (pressed < 0) return;
  looks_.set(chosen_, "engine", pressed == 0 ? "" : in->known.engines[static_cast<std::size_t>(pressed - 1)].id);
  engines_open_ = false;
}

// The first question: what must be done hangs on it. Only where there is something to choose.
void LookOverScreen::draw_drive(Ui& ui) {
  const Input* const in = input();
  const Result* const r = result();
  if (!in || !r || r->drives_it_can_have.size() < 2) return;
  std::vector<std::string> names;
  int now = -1;
  for (const std::string& id : r->drives_it_can_have) {
    const look_over::Drive* const drive = drive_of(in->known, id);
    if (in->drive == id) now = static_cast<int>(names.size());
    names.push_back(drive ? drive->name : id);
  }
  if (in->drive == look_over::drive_not_known) now = static_cast<int>(names.size());
  names.emplace_back(words::drive_not_known());
  const int pressed = ui.segmented("drive", words::drive_now(), names, now);
  const look_over::Drive* const drive = drive_of(in->known, in->drive);
  if (drive && !drive->tell.empty()) ui.quiet(drive->tell);
  ui.gap(8);
  if (pressed < 0) return;
  const auto at = static_cast<std::size_t>(pressed);
  looks_.set(chosen_, "drive",
             at < r->drives_it_can_have.size() ? r->drives_it_can_have[at] : std::string(look_over::drive_not_known));
}

void LookOverScreen::draw_facts(Ui& ui, System system) {
  const Record* const of = looks_.find(chosen_);
  if (!of) return go(Page::List);
  draw_fact(ui, "year", words::year_of_model(), system);
  draw_drive(ui);
  draw_fact(ui, "odometer", words::odometer(), system);
  draw_fact(ui, "asking", words::asking_price(), system);
  ui.gap(8);
  const Input* const in = input();
  const std::string touched = draw_touched(ui, in ? in->touched : look_over::Touched::Not, of->has_entered("touched"));
  if (!touched.empty()) looks_.set(chosen_, "touched", touched);
  ui.quiet(words::touched_help());
  ui.gap(8);
  draw_engines(ui);
  ui.gap(8);
  Ui::FieldLook name;
  name.label = words::nickname();
  name.text = of->name();
  name.active = keypad_.path() == name_path;
  if (ui.field(name_path, name)) return edit_name();
  draw_remarks(ui, of_facts(looks_.read(chosen_).solved));
  draw_remarks(ui, {safety::round_a_running_bike()});  // once, before the round begins
  ui.gap(24);
}

// ---- the result

std::string LookOverScreen::summary_text() {
  const Record* const of = looks_.find(chosen_);
  const Result* const r = result();
  const Input* const in = input();
  if (!of || !r || !in) return {};
  std::string text = words::look_over() + std::string(": ") + of->name() + ", " + of->taken().substr(0, 10) + "\n";
  if (!of->note().empty()) text += of->note() + "\n";
  return text + look_over::summary(*in, *r) + "\n" + words::made_with() + "\n";
}

void LookOverScreen::draw_ways_out(Ui& ui, const std::string& said) {
  const FileWays ways = platform_.file_ways();
  const auto give = [&](bool share) {
    log_.give_summary("camside-look-over-" + platform_.local_time().substr(0, 10) + ".txt", summary_text(), share);
    said_.clear();
    gave_ = true;
  };
  if (ways.share && ui.button("send summary", words::send_summary())) give(true);
  if (ways.save && !ways.share && ui.button("save summary", words::save_summary())) give(false);
  if (ui.button("copy summary", words::copy_summary(), Look::Quiet)) {
    platform_.copy_text(summary_text());
    said_ = words::copied();
  }
  if (!said_.empty()) ui.text(said_);
  if (said_.empty() && gave_ && !said.empty()) ui.text(said);
}

void LookOverScreen::draw_purchase(Ui& ui) {
  if (!log_.takes_entries()) return;
  ui.gap(12);
  if (is_bought(chosen_)) {
    if (ui.button("its bike", words::see_its_bike())) made_ = chosen_;
    return ui.quiet(words::is_in_log());
  }
  if (ui.button("it is mine", words::it_is_mine())) return make_bike();
  ui.quiet(words::it_is_mine_help());
}

void LookOverScreen::draw_sum_switch(Ui& ui) {
  if (ui.button("hide sum", hide_sum_ ? words::show_sum() : words::hide_sum(), Look::Quiet)) hide_sum_ = !hide_sum_;
}

// What can't be used stands above all, each with the way to it.
void LookOverScreen::draw_left_out(Ui& ui, System system) {
  std::string to;
  for (const work::LeftOut& left : looks_.read(chosen_).left_out) {
    if (ui.row("left out " + left.at, words::left_out(left.why.text), words::correct_it())) to = left.at;
    ui.gap(4);
  }
  if (!to.empty()) lead_to(to, system);
}

// "odometer", "answers/papers_shoes/day", "costs/shoes"
void LookOverScreen::lead_to(const std::string& at, System system) {
  const std::size_t cut = at.find('/');
  const std::string list = at.substr(0, cut);
  if (list == "costs") return go(Page::Prices);
  if (list == "lives") return go(Page::Working);
  if (list != "answers" || cut == std::string::npos) return go(Page::Facts);
  const std::string row = at.substr(cut + 1);
  const std::size_t end = row.find('/');
  show_question(row.substr(0, end));
  if (end == std::string::npos) return;
  const bool day = row.substr(end + 1) == "day";
  edit(proof_path + row, day ? words::day_on_bill() : words::reading_on_bill(), day ? Kind::Number : Kind::Distance,
       looks_.on_proof(chosen_, question_, row.substr(end + 1)), system);
}

void LookOverScreen::draw_working(Ui& ui) {
  const Result* const r = result();
  const Input* const in = input();
  if (!r || !in) return;
  const Record* const of = looks_.find(chosen_);
  draw_swings(ui, *r);
  const LifeTap tap = lives_.draw(ui, *in, *r, of && work::is_invented(*of));
  ui.gap(12);
  draw_result_working(ui, *r);
  if (tap.take) looks_.set_life(chosen_, *tap.take);
  if (!tap.give_back.empty()) looks_.forget_life(chosen_, tap.give_back);
}

void LookOverScreen::draw_result_page(Ui& ui, System system, const std::string& said) {
  const Record* const of = looks_.find(chosen_);
  if (!of) return go(Page::List);
  const Result* const r = result();
  const Input* const in = input();
  if (!of->note().empty()) ui.quiet(of->note());
  std::string facts = words::cannot_say();
  if (in) {
    facts = in->year ? std::to_string(*in->year) : std::string(words::year_not_known());
    facts += " · " + (in->odometer ? odometer_of(*in, system) : std::string(words::odometer_not_known()));
    if (in->asking) facts += " · " + words::asks(look_over::money_text(*in->asking));
  }
  if (ui.row("facts", facts, words::change_them())) return go(Page::Facts);
  ui.gap(8);
  draw_left_out(ui, system);
  if (page_ != Page::Result) return;
  if (r && in && !hide_sum_) draw_result(ui, *in, *r);
  if (!r || !in) draw_remarks(ui, looks_.read(chosen_).solved.findings);
  draw_sum_switch(ui);
  if (ui.button("prices", prices_mine() ? words::prices() : words::look_at_prices(), Look::Quiet))
    return go(Page::Prices);
  if (r) draw_purchase(ui);
  ui.gap(12);
  if (r && !hide_sum_) draw_remarks(ui, cautions_of(r->outcome.findings));
  if (r && ui.button("questions", words::all_questions(), Look::Quiet)) return go(Page::Questions);
  if (r && ui.button("working", words::working(), Look::Quiet)) return go(Page::Working);
  ui.gap(12);
  if (r) draw_ways_out(ui, said);
  ui.gap(12);
  if (ui.button("remove", words::remove_bike(), Look::Quiet)) return remove();
  ui.gap(24);
}

void LookOverScreen::remove() {
  const Record* const of = looks_.find(chosen_);
  if (!of) return;
  removed_ = *of;
  removed_name_ = of->name().empty() ? words::look_over() : of->name();
  removed_at_ = looks_.remove(chosen_);
  chosen_.clear();
  go(Page::List);
}

void LookOverScreen::make_bike() {
  const Record* const of = looks_.find(chosen_);
  const Result* const r = result();
  const Input* const in = input();
  if (!of || !r || !in) return;
  // The bike has the look-over's id, so that it is taken over once, on whichever device; again after it was removed.
  const std::string bike = log_.bike(of->id()) ? records::new_id() : of->id();
  std::vector<records::Entry> entries = work::bike_of(bike, *of, *in, *r, [this] { return log_.next_stamp(); });
  const std::string name = of->name();
  if (log_.add(std::move(entries), words::bike_made(name))) made_ = bike;
}

// ---- the prices

void LookOverScreen::draw_price(Ui& ui, const Found& of, System system) {
  const float gap = 8;
  const float each = (ui.width() - 2 * gap) / 3;
  const std::array<Money, 3> sums{of.cost.low, of.cost.middle, of.cost.high};
  ui.gap(8);
  ui.coloured(of.name, ui.theme().text, ui.px(17), ui.fonts().bold);
  if (!of.why_must.empty()) ui.quiet(std::string(words::must_do()) + ": " + of.why_must);
  if (of.placeholder) ui.quiet(words::placeholder());
  for (const work::LeftOut& left : looks_.read(chosen_).left_out)
    if (left.at == "costs/" + of.risk) ui.coloured(left.why.text, ui.theme().outside, ui.px(16), ui.fonts().words);
  for (std::size_t i = 0; i < sums.size(); ++i) {
    if (i > 0) ImGui::SameLine(0, gap);
    const std::string path = cost_path(of.risk, cost_ends[i]);
    Ui::FieldLook look;
    look.label = price_label(i);
    const std::string own = looks_.cost(chosen_, of.risk, cost_ends[i]);
    look.text = own.empty() ? look_over::money_text(sums[i]) : own;
    look.active = keypad_.path() == path;
    look.width = each;
    if (ui.field(path, look)) edit(path, of.name + ", " + price_label(i), Kind::Money, price_text(of, i), system);
    ui.name_last(of.name + ", " + price_label(i));
  }
  if (of.placeholder && ui.button("mine " + of.risk, words::price_mine(), Look::Quiet)) looks_.take_price(chosen_, of);
}

std::vector<Found> LookOverScreen::priced() {
  std::vector<Found> all = looks_.risks(chosen_);
  std::stable_partition(all.begin(), all.end(), [](const Found& f) { return f.must; });
  return all;
}

// What stands in the field as it is typed: the user's own figure, else the book's without commas.
std::string LookOverScreen::price_text(const Found& of, std::size_t end) const {
  const std::string own = looks_.cost(chosen_, of.risk, cost_ends[end]);
  const std::array<Money, 3> sums{of.cost.low, of.cost.middle, of.cost.high};
  return own.empty() ? whole_text(sums[end]) : own;
}

// None of those shown is nobody's figure any more.
bool LookOverScreen::prices_mine() {
  const std::vector<Found>& risks = looks_.risks(chosen_);
  return std::none_of(risks.begin(), risks.end(), [](const Found& f) { return f.placeholder; });
}

void LookOverScreen::draw_prices(Ui& ui, System system) {
  const bool mine = prices_mine();
  ui.text(mine ? words::prices_are_mine() : words::prices_help());
  Ui::FieldLook currency;
  currency.label = words::currency();
  currency.text = looks_.find(chosen_) ? looks_.find(chosen_)->entered_text(currency_path) : std::string();
  if (ui.field(currency_path, currency)) return edit_currency();
  for (const Found& f : priced()) draw_price(ui, f, system);
  ui.gap(16);
  if (mine && ui.button("not mine", words::prices_not_mine(), Look::Quiet)) looks_.give_prices_back(chosen_);
  ui.gap(24);
}

// ---- typing

void LookOverScreen::take_typed() {
  const std::string path = keypad_.path();
  const std::string text = keypad_.text();
  if (path == name_path) return looks_.rename(chosen_, text);
  if (path == currency_path) return looks_.set_currency(chosen_, text);
  if (path.starts_with(proof_path)) return take_on_proof(path.substr(proof_path.size()), text);
  if (!path.starts_with("costs/")) return looks_.set(chosen_, path, text);
  for (const Found& f : looks_.risks(chosen_))
    for (const char* end : cost_ends)
      if (cost_path(f.risk, end) == path) return looks_.set_cost(chosen_, f, end, text);
}

// "papers_shoes/reading"
void LookOverScreen::take_on_proof(const std::string& path, const std::string& text) {
  const std::size_t cut = path.find('/');
  const std::string question = path.substr(0, cut);
  const Input* const in = looks_.last(chosen_).input();
  const Question* const q = in ? question_of(in->known, question) : nullptr;
  const char* const good = q && q->bad == look_over::YesNo::Yes ? "no" : "yes";
  looks_.set_on_proof(chosen_, question, good, path.substr(cut + 1), text);
}

// Year, odometer, price; best, likely, worst, and on to the next risk.
void LookOverScreen::next_field(System system) {
  const std::string path = keypad_.path();
  const Record* const of = looks_.find(chosen_);
  keypad_.close();
  if (!of) return;
  if (path == "year") return edit("odometer", words::odometer(), Kind::Distance, of->entered_text("odometer"), system);
  if (path == "odometer") return edit("asking", words::asking_price(), Kind::Money, of->entered_text("asking"), system);
  if (path == proof_path + question_ + "/reading")
    return edit(proof_path + question_ + "/day", words::day_on_bill(), Kind::Number,
                looks_.on_proof(chosen_, question_, "day"), system);
  bool found = false;
  for (const Found& f : priced()) {
    for (std::size_t i = 0; i < cost_ends.size(); ++i) {
      const std::string here = cost_path(f.risk, cost_ends[i]);
      if (found) return edit(here, f.name + ", " + price_label(i), Kind::Money, price_text(f, i), system);
      found = here == path;
    }
  }
}

void LookOverScreen::draw_keypad(Ui& ui, System system, float height) {
  const KeypadEvent event = keypad_.draw(ui, height);
  if (event == KeypadEvent::None) return;
  if (event == KeypadEvent::Close) return keypad_.close();
  take_typed();
  if (event == KeypadEvent::Next) next_field(system);
}

// ---- the parts of the screen

void LookOverScreen::draw_middle(Ui& ui, System system, bool wide, const std::string& said) {
  if (std::exchange(to_top_, false)) ImGui::SetScrollY(0);
  if (deep() && !looks_.find(chosen_)) page_ = Page::List;
  switch (page_) {
    case Page::List:
      return draw_comparison(ui, system);
    case Page::Facts:
      return draw_facts(ui, system);
    case Page::Round:
      return draw_round(ui, system, wide);
    case Page::Questions:
      return draw_questions(ui);
    case Page::Result:
      return draw_result_page(ui, system, said);
    case Page::Prices:
      return draw_prices(ui, system);
    case Page::Working:
      return draw_working(ui);
  }
}

// The one main action of the page; empty: there is none.
std::string LookOverScreen::main_action() {
  switch (page_) {
    case Page::List:
      return for_sale() < most_candidates ? words::check_over() : "";
    case Page::Facts:
      return words::start_round();
    case Page::Result: {
      if (walk_away()) return for_sale() < most_candidates ? words::check_over_another() : "";
      const std::string open = next_open();
      const Question* const q = open.empty() || !input() ? nullptr : question_of(input()->known, open);
      return q ? words::next_one(q->text) : words::round_again();
    }
    case Page::Prices:
      return words::done();
    case Page::Round:
    case Page::Questions:
    case Page::Working:
      break;
  }
  return {};
}

// With large text the words of the main action take two lines.
float LookOverScreen::bottom_height(const Ui& ui, bool wide) {
  if (keypad_.is_open()) return keypad_.height(ui);
  if (page_ == Page::Round) return wide ? 0 : answers_height(ui) + 8;
  const std::string label = main_action();
  if (label.empty()) return 0;
  constexpr float least_column = 160.0f;  // beside the middle, less what is around the words
  const float across = ImGui::GetIO().DisplaySize.x;
  const float room = across < 560 ? across - 32 : least_column;
  const float lines = size_of(ui.fonts().bold, ui.px(18), broken(ui.fonts().bold, ui.px(18), label, room)).y;
  return std::max({64.0f, ui.target(), lines + 20}) + 16;
}

void LookOverScreen::take_main_action() {
  switch (page_) {
    case Page::List:
      return begin();
    case Page::Facts:
      return start_round();
    case Page::Result:
      return walk_away() ? begin() : start_round();
    case Page::Prices:
      return go(Page::Result);
    case Page::Round:
    case Page::Questions:
    case Page::Working:
      return;
  }
}

void LookOverScreen::draw_bottom(Ui& ui, System system, float height) {
  if (keypad_.is_open()) return draw_keypad(ui, system, height);
  if (page_ == Page::Round) {
    if (const RoundQuestion round = round_question(); round.question) take_answer(draw_answers(ui, round));
    return;
  }
  const std::string label = main_action();
  const bool can = page_ == Page::List || result() != nullptr;
  if (!label.empty() && ui.button("main action", label, Look::Main, can)) take_main_action();
}

}  // namespace camside::screens
