#include "screens/look_over/look_over_result.hpp"

#include <algorithm>
#include <array>

#include "calc/look_over/look_over.hpp"
#include "screens/drawings/tornado_drawing.hpp"
#include "screens/look_over/look_over_words.hpp"
#include "screens/widgets/answer.hpp"

namespace camside::screens {

using look_over::Found;
using look_over::Likelihood;
using look_over::Met;
using look_over::Result;

namespace {

constexpr std::size_t most_bars = 8;

std::string capital(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') text.front() = static_cast<char>(text.front() - 32);
  return text;
}

// The largest figure is the work for certain, at the user's own prices: nothing that rests on made-up odds is as large.
void draw_certain(Ui& ui, const look_over::Input& in, const Result& r) {
  Money certain;
  for (const Found& f : r.must_do) certain = certain + f.expected;
  const bool own = std::none_of(r.must_do.begin(), r.must_do.end(), [](const Found& f) { return f.placeholder; });
  if (r.must_do.empty() || !own) return;
  ui.quiet(words::work_for_certain());
  ui.coloured(look_over::with_currency(look_over::rough_text(certain), in.currency), ui.theme().text, ui.px(34),
              ui.fonts().bold);
}

void draw_sums(Ui& ui, const look_over::Input& in, const Result& r) {
  ui.begin_card();
  const bool walk = look_over::walk_away_met(r);
  const std::string sentence = look_over::in_one_sentence(in, r);
  ui.coloured(sentence, walk ? ui.theme().outside : ui.theme().text, ui.px(walk ? 26.0f : 22.0f), ui.fonts().bold);
  if (walk) {
    ui.text(words::no_price_makes_up());
    return ui.end_card();
  }
  draw_certain(ui, in, r);
  if (r.offer)
    ui.quiet(std::string(words::offer()) + ", " + look_over::likely_range(in, *r.offer));
  else
    ui.quiet("No offer yet: " + look_over::why_no_offer(in, r));
  if (!r.offer) ui.quiet(capital(look_over::likely_range(in, r.knock_off)));
  if (r.offer) ui.quiet(words::asking_is_sound());
  if (look_over::prices_rest_on_nobody(r)) ui.quiet(words::placeholder_sum());
  ui.end_card();
}

// A mark, the word of the state, and what it is about.
void draw_marked(Ui& ui, Verdict shape, ImU32 colour, const std::string& word, const std::string& text) {
  const float size = ui.px(17);
  const float radius = 0.42f * size;
  const ImVec2 at = ImGui::GetCursorScreenPos();
  draw_verdict_mark(ui.pen(ui.theme().ground), {at.x + radius + 3, at.y + 0.62f * size}, radius, shape, colour);
  ImGui::Indent(2 * radius + 14);
  ui.coloured(word + ": " + text, shape == Verdict::Outside ? colour : ui.theme().text, size,
              shape == Verdict::Outside ? ui.fonts().bold : ui.fonts().words);
  ImGui::Unindent(2 * radius + 14);
}

void draw_walk_away(Ui& ui, const Result& r) {
  if (r.walk_away.empty()) return;
  struct State {
    Met met;
    Verdict shape;
  };
  constexpr std::array<State, 3> states{
      {{Met::Met, Verdict::Outside}, {Met::NotSeen, Verdict::NotProven}, {Met::NotMet, Verdict::Within}}};
  ui.heading(words::walk_away_if());
  for (const State& state : states) {
    std::string reasons;
    for (const look_over::WalkAway& w : r.walk_away)
      if (w.met == state.met) reasons += (reasons.empty() ? "" : "; ") + w.why;
    if (!reasons.empty())
      draw_marked(ui, state.shape, colour_of(ui.theme(), state.shape), capital(std::string(word_of(state.met))),
                  reasons);
  }
}

// The name, and at the right what it costs; below one another where that is too wide.
void draw_line(Ui& ui, const std::string& name, const std::string& cost, ImFont* font) {
  const float size = ui.px(17);
  const float cost_width = size_of(ui.fonts().words, size, cost).x;
  const float room = ui.width() - cost_width - 16;
  const ImVec2 at = ImGui::GetCursorScreenPos();
  if (room < 0.5f * ui.width()) {
    ui.coloured(name, ui.theme().text, size, font);
    return ui.coloured(cost, ui.theme().quiet, size, ui.fonts().words);
  }
  const std::string lines = broken(font, size, name, room);
  const ImVec2 box = size_of(font, size, lines);
  write(*ImGui::GetWindowDrawList(), font, size, at, ui.theme().text, lines);
  const ImVec2 right{at.x + ui.width() - cost_width, at.y};
  write(*ImGui::GetWindowDrawList(), ui.fonts().words, size, right, ui.theme().quiet, cost);
  ui.publish(Role::Text, name, at, {at.x + box.x, at.y + box.y}, 0, cost);
  ImGui::Dummy({ui.width(), box.y});
}

std::string cost_of(const Found& f) {
  return look_over::rough_range({f.cost.low, {}, f.cost.high});
}

void draw_must_do(Ui& ui, const Result& r) {
  ui.heading(words::must_do());
  if (r.must_do.empty()) return ui.quiet(words::nothing_must());
  for (const Found& f : r.must_do) {
    draw_line(ui, f.name, cost_of(f), ui.fonts().bold);
    ui.quiet(capital(f.why_must));
  }
}

void draw_may_find(Ui& ui, const Result& r) {
  if (r.may_find.empty()) return;
  ui.heading(words::may_find());
  for (const Found& f : r.may_find)
    if (f.likelihood == Likelihood::Likely)
      draw_line(ui, capital(std::string(word_of(f.likelihood))) + ": " + f.name, cost_of(f), ui.fonts().bold);
  for (const Found& f : r.may_find)
    if (f.likelihood == Likelihood::MayBe) draw_line(ui, f.name, cost_of(f), ui.fonts().words);
  const auto seldom = std::count_if(r.may_find.begin(), r.may_find.end(),
                                    [](const Found& f) { return f.likelihood == Likelihood::Seldom; });
  if (seldom > 0) ui.quiet(words::seldom_ones(static_cast<std::size_t>(seldom)));
  if (seldom < static_cast<std::ptrdiff_t>(r.may_find.size())) ui.quiet(words::may_find_why());
}

std::string reason_of(const look_over::Input& in, const look_over::Look& l) {
  if (l.needs_cold) return words::needs_cold();
  if (const look_over::Question* by = question_of(in.known, l.hidden_by)) return words::hidden_look(by->text);
  if (l.can_end_it) return words::can_end_it();
  if (l.spares_must) return words::bill_spares();
  return words::settles(look_over::rough_text(l.if_good), look_over::rough_text(l.if_bad));
}

void draw_next(Ui& ui, const look_over::Input& in, const Result& r) {
  ui.heading(words::look_next());
  if (r.looks.empty()) return ui.quiet(words::all_seen());
  const std::string next = next_look(in, r);
  const auto it = std::find_if(r.looks.begin(), r.looks.end(), [&](const auto& l) { return l.question == next; });
  const look_over::Look& l = it == r.looks.end() ? r.looks.front() : *it;
  ui.begin_card();
  ui.coloured(l.text, ui.theme().text, ui.px(18), ui.fonts().bold);
  if (!l.say.empty()) ui.coloured(words::say(l.say), ui.theme().accent, ui.px(18), ui.fonts().words);
  ui.quiet(reason_of(in, l));
  ui.end_card();
}

void draw_risk(Ui& ui, const Found& f) {
  const bool must = f.must;
  ui.begin_card();
  ui.coloured(f.name, ui.theme().text, ui.px(18), ui.fonts().bold);
  const std::string chance = must ? words::must_do() : capital(std::string(word_of(f.likelihood)));
  ui.text(chance + ", adds " + look_over::rough_text(f.expected));
  ui.quiet(std::string(words::best()) + " " + look_over::money_text(f.cost.low) + " · " + words::likely() + " " +
           look_over::money_text(f.cost.middle) + " · " + words::worst() + " " + look_over::money_text(f.cost.high) +
           (f.placeholder ? std::string(" · ") + words::placeholder() : std::string()));
  ui.quiet(must ? capital(f.why_must) : words::chance_of(look_over::percent(f.chance), f.chance_from));
  ui.quiet(words::settled_by(f.settled_by));
  if (!f.say.empty()) ui.coloured(words::say(f.say), ui.theme().accent, ui.px(16), ui.fonts().words);
  ui.end_card();
}

}  // namespace

void draw_result(Ui& ui, const look_over::Input& in, const Result& r) {
  draw_sums(ui, in, r);
  const bool walk = look_over::walk_away_met(r);
  if (!walk && r.rest_open > 0 && few_answered(in, r))
    ui.text(words::may_stop(r.rest_open, look_over::with_currency(look_over::rough_text(r.rest_narrows), in.currency)));
  ui.gap(12);
  if (!walk) draw_next(ui, in, r);
  ui.gap(12);
  draw_must_do(ui, r);
  ui.gap(12);
  draw_walk_away(ui, r);
  ui.gap(12);
  draw_may_find(ui, r);
}

std::string next_look(const look_over::Input& in, const Result& r) {
  const auto answered = [&](const std::string& id) {
    return std::any_of(in.answers.begin(), in.answers.end(), [&](const auto& a) { return a.question == id; });
  };
  if (few_answered(in, r) && !r.looks.empty() && !answered(r.looks.front().question)) return r.looks.front().question;
  const auto open = std::find_if(r.questions.begin(), r.questions.end(), [&](const auto& id) { return !answered(id); });
  return open == r.questions.end() ? std::string() : *open;
}

bool few_answered(const look_over::Input& in, const Result& r) {
  return std::all_of(r.questions.begin(), r.questions.begin() + static_cast<std::ptrdiff_t>(r.first),
                     [&](const std::string& id) {
                       return std::any_of(in.answers.begin(), in.answers.end(),
                                          [&](const look_over::Answer& a) { return a.question == id; });
                     });
}

void draw_result_in_short(Ui& ui, const look_over::Input& in, const Result& r) {
  draw_sums(ui, in, r);
  ui.gap(8);
  draw_walk_away(ui, r);
  ui.gap(8);
  draw_must_do(ui, r);
  ui.gap(8);
  draw_may_find(ui, r);
}

void draw_swings(Ui& ui, const Result& r) {
  if (r.swings.empty()) return;
  TornadoPlot plot;
  plot.now = r.knock_off.middle.in_amount();
  for (std::size_t i = 0; i < std::min(most_bars, r.swings.size()); ++i) {
    const look_over::Swing& s = r.swings[i];
    plot.bars.push_back({capital(std::string(word_of(s.of))) + ": " + s.text, s.low.in_amount(), s.high.in_amount()});
  }
  ui.heading(words::what_moves_it());
  ui.quiet(words::swings_help());
  const Pen pen = ui.pen(ui.theme().ground);
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const Area area{at, {at.x + ui.width(), at.y + tornado_height(pen, plot, ui.width())}};
  draw_tornado(pen, area, plot, [](double v) { return look_over::rough_text(Money::amount(v)); });
  ui.publish(Role::Drawing, "look_over drawing", area.min, area.max);
  ImGui::Dummy({area.width(), area.height()});
}

void draw_result_working(Ui& ui, const Result& r) {
  ui.heading(words::risks_ranked());
  for (const auto* list : {&r.must_do, &r.may_find})
    for (const Found& f : *list) draw_risk(ui, f);
  ui.gap(12);
  draw_working(ui, r.outcome);
}

}  // namespace camside::screens
