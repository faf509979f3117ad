#include "screens/look_over/look_over_candidates.hpp"

#include <algorithm>
#include <array>

#include "base/stable_sort.hpp"
#include "calc/look_over/look_over.hpp"
#include "screens/look_over/look_over_words.hpp"

namespace camside::screens {

namespace {

struct Column {
  const char* name;
  float share;
};

std::array<Column, 8> columns() {
  return {{{words::nickname(), 0.23f},
           {words::year(), 0.07f},
           {words::odometer(), 0.12f},
           {words::asking(), 0.1f},
           {words::knock_off(), 0.1f},
           {words::offer(), 0.16f},
           {words::walk_away(), 0.12f},
           {words::not_seen_count(), 0.1f}}};
}

// Of all the reasons to walk away together.
look_over::Met walk(const look_over::Result& r) {
  if (look_over::walk_away_met(r)) return look_over::Met::Met;
  const bool open = std::any_of(r.walk_away.begin(), r.walk_away.end(),
                                [](const look_over::WalkAway& w) { return w.met == look_over::Met::NotSeen; });
  return open ? look_over::Met::NotSeen : look_over::Met::NotMet;
}

Verdict walk_shape(const look_over::Result& r) {
  const look_over::Met met = walk(r);
  if (met == look_over::Met::Met) return Verdict::Outside;
  return met == look_over::Met::NotMet && r.must_do.empty() ? Verdict::Within : Verdict::NotProven;
}

std::array<std::string, 8> cells(const Candidate& c) {
  const look_over::Input& in = *c.input;
  const look_over::Result& r = *c.result;
  return {c.name,
          in.year ? std::to_string(*in.year) : "?",
          c.odometer,
          in.asking ? look_over::money_text(*in.asking) : "?",
          look_over::walk_away_met(r) ? "" : look_over::money_text(look_over::sum_shown(r)),
          r.offer ? look_over::rough_range(*r.offer) : words::no_offer_word(look_over::walk_away_met(r)),
          std::string(word_of(walk(r))),
          std::to_string(r.looks.size())};
}

// ---- at the desk: a table

void draw_heads(Ui& ui) {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float width = ui.width() - 24;
  float x = at.x + 12;
  float high = 0;
  for (const Column& c : columns()) {
    const std::string text = broken(ui.fonts().words, ui.px(16), c.name, c.share * width - 8);
    write(*ImGui::GetWindowDrawList(), ui.fonts().words, ui.px(16), {x, at.y}, ui.theme().quiet, text);
    high = std::max(high, size_of(ui.fonts().words, ui.px(16), text).y);
    x += c.share * width;
  }
  ImGui::Dummy({width, high});
}

float row_height(const Ui& ui, const std::array<std::string, 8>& texts, float width) {
  float high = 0;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const float room = columns()[i].share * width - 10;
    high = std::max(high, size_of(ui.fonts().bold, ui.px(17), broken(ui.fonts().bold, ui.px(17), texts[i], room)).y);
  }
  return std::max(ui.target(), high + 24);
}

bool draw_table_row(Ui& ui, const Candidate& c) {
  const auto texts = cells(c);
  const float width = ui.width() - 24;
  return ui.area("candidate " + c.id, Role::Row, c.name, {ui.width(), row_height(ui, texts, width)},
                 [&](const Area& at, bool pressed) {
                   ImGui::GetWindowDrawList()->AddRectFilled(at.min, at.max,
                                                             pressed ? ui.theme().pressed : ui.theme().card, 10);
                   float x = at.min.x + 12;
                   for (std::size_t i = 0; i < texts.size(); ++i) {
                     const float room = columns()[i].share * width;
                     const bool walk = i == 6;
                     const ImU32 ink = walk ? colour_of(ui.theme(), walk_shape(*c.result)) : ui.theme().text;
                     ui.fit({{x, at.min.y + 8}, {x + room - 10, at.max.y - 8}}, texts[i], ink, ui.px(17),
                            i == 0 || i == 4 ? ui.fonts().bold : ui.fonts().words, {0, 0.5f}, 0.6f);
                     x += room;
                   }
                 });
}

// ---- on a phone: a card each

std::string offer_word(const look_over::Input& in, const look_over::Result& r) {
  return r.offer ? words::offer_of(look_over::with_currency(look_over::rough_range(*r.offer), in.currency))
                 : words::no_offer_word(look_over::walk_away_met(r));
}

struct CardLines {
  std::string head;  // year and offer
  std::string bike;
  std::string sums;
  std::string state;
  Verdict shape = Verdict::NotProven;
};

CardLines lines_of(const Candidate& c) {
  if (!c.result) return {c.name, words::cannot_say(), "", "", Verdict::NotProven};
  const look_over::Result& r = *c.result;
  CardLines l;
  l.head = c.input->year ? std::to_string(*c.input->year) : std::string(words::year_not_known());
  l.head += " · " + offer_word(*c.input, r);
  l.bike = c.name + " · " + (c.input->odometer ? c.odometer : std::string(words::odometer_not_known()));
  if (c.input->asking) l.bike += " · " + words::asks(look_over::money_text(*c.input->asking));
  const bool met = look_over::walk_away_met(r);
  if (!met) l.sums = words::knock_off_of(look_over::money_text(look_over::sum_shown(r)));
  l.state =
      met ? words::walk_away() + std::string(": ") + r.walk_away.front().why : words::not_seen(r.looks.size(), walk(r));
  l.shape = walk_shape(r);
  return l;
}

// The most that any of them may cost: what a bar's full length stands for.
Money longest(const std::vector<Candidate>& candidates) {
  Money most;
  for (const Candidate& c : candidates)
    if (c.result) most = std::max(most, c.result->knock_off.high);
  return most;
}

// From the least to knock off to the most, the middle marked, all to one scale.
void draw_bar(const Ui& ui, const Area& at, const look_over::Span& sum, Money most) {
  const auto x = [&](Money m) { return at.min.x + at.width() * static_cast<float>(m / most); };
  ImDrawList* const list = ImGui::GetWindowDrawList();
  const float y = at.centre().y;
  list->AddLine({at.min.x, y}, {at.max.x, y}, ui.theme().faint, ui.theme().stroke);
  list->AddRectFilled({x(sum.low), y - 3}, {std::max(x(sum.high), x(sum.low) + 2), y + 3}, ui.theme().line, 2);
  list->AddRectFilled({x(sum.middle) - 2, at.min.y}, {x(sum.middle) + 2, at.max.y}, ui.theme().text, 1);
}

bool draw_card(Ui& ui, const Candidate& c, bool on, bool name_only, Money most) {
  const CardLines l = lines_of(c);
  const float room = ui.width() - 28;
  const float small = ui.px(16);
  const float radius = 0.42f * small;
  const float mark = 2 * radius + 10;
  const auto high = [&](ImFont* font, float size, const std::string& text, float in) {
    return text.empty() ? 0.0f : size_of(font, size, broken(font, size, text, in)).y + 4;
  };
  const std::string& head = name_only ? c.name : l.head;
  const float name = high(ui.fonts().bold, ui.px(19), head, room);
  const float bike = name_only ? 0 : high(ui.fonts().words, small, l.bike, room);
  const float sums = name_only ? 0 : high(ui.fonts().bold, ui.px(17), l.sums, room);
  const float bar = name_only || !c.result || most <= Money{} ? 0 : 20;
  const float state = high(ui.fonts().words, small, l.state, room - mark);
  const float height = std::max(ui.target(), name + bike + sums + bar + state + 22);
  const bool fired =
      ui.area("candidate " + c.id, Role::Row, c.name, {ui.width(), height}, [&](const Area& at, bool pressed) {
        ImGui::GetWindowDrawList()->AddRectFilled(at.min, at.max, on || pressed ? ui.theme().pressed : ui.theme().card,
                                                  10);
        float y = at.min.y + 11;
        const auto line = [&](float x, float tall, const std::string& text, ImU32 ink, float size, ImFont* font) {
          if (tall > 0) ui.fit({{x, y}, {at.max.x - 13, y + tall}}, text, ink, size, font, {0, 0});
          y += tall;
        };
        line(at.min.x + 14, name, head, ui.theme().text, ui.px(19), ui.fonts().bold);
        line(at.min.x + 14, bike, l.bike, ui.theme().quiet, small, ui.fonts().words);
        line(at.min.x + 14, sums, l.sums, ui.theme().text, ui.px(17), ui.fonts().bold);
        if (bar > 0) draw_bar(ui, {{at.min.x + 14, y + 2}, {at.max.x - 14, y + 14}}, c.result->knock_off, most);
        y += bar;
        if (state <= 0) return;
        const ImU32 colour = colour_of(ui.theme(), l.shape);
        draw_verdict_mark(ui.pen(ui.theme().card), {at.min.x + 15 + radius, y + 0.62f * small}, radius, l.shape,
                          colour);
        line(at.min.x + 14 + mark, state, l.state, l.shape == Verdict::Outside ? colour : ui.theme().quiet, small,
             ui.fonts().words);
      });
  ui.mark_chosen(on);
  return fired;
}

// What decides the order: 0 may be bought, 1 to walk away from, 2 can't be solved.
int class_of(const Candidate& c) {
  if (!c.result) return 2;
  return look_over::walk_away_met(*c.result) ? 1 : 0;
}

}  // namespace

void sort_stably(std::vector<Candidate>& candidates) {
  camside::sort_stably(candidates.begin(), candidates.end(), [](const Candidate& a, const Candidate& b) {
    if (class_of(a) != class_of(b)) return class_of(a) < class_of(b);
    return a.result && b.result && a.result->knock_off.middle < b.result->knock_off.middle;
  });
}

bool is_table(const Ui& ui) {
  return ui.width() >= ui.px(760);
}

std::string draw_candidates(Ui& ui, const std::vector<Candidate>& candidates, const std::string& chosen,
                            bool names_only) {
  std::string tapped;
  const bool table = !names_only && is_table(ui);
  const Money most = candidates.size() > 1 ? longest(candidates) : Money{};
  if (table) draw_heads(ui);
  for (const Candidate& c : candidates) {
    const bool fired = table && c.result ? draw_table_row(ui, c) : draw_card(ui, c, c.id == chosen, names_only, most);
    if (fired) tapped = c.id;
    ui.gap(8);
  }
  return tapped;
}

}  // namespace camside::screens
