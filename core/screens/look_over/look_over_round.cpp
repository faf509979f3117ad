#include "screens/look_over/look_over_round.hpp"

#include <algorithm>
#include <array>

#include "screens/drawings/place_drawing.hpp"
#include "screens/look_over/look_over_words.hpp"
#include "screens/widgets/answer.hpp"
#include "screens/words.hpp"

namespace camside::screens {

namespace {

constexpr float gap = 8.0f;

ImU32 colour_of(const Ui& ui, const std::string& said) {
  if (said.empty()) return ui.theme().faint;
  return said == "didn't see" || said == "none" ? ui.theme().line : ui.theme().accent;
}

// One mark a question: answered, not seen, open; the one on screen is taller.
void draw_progress(Ui& ui, const RoundQuestion& round, const std::vector<std::string>& answers) {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float width = ui.width();
  const float each = width / static_cast<float>(std::max<std::size_t>(1, answers.size()));
  for (std::size_t i = 0; i < answers.size(); ++i) {
    const float x = at.x + each * static_cast<float>(i);
    const float high = i == round.at ? 10.0f : 5.0f;
    const ImU32 colour = i == round.at && answers[i].empty() ? ui.theme().text : colour_of(ui, answers[i]);
    ImGui::GetWindowDrawList()->AddRectFilled({x + 1, at.y + 10 - high}, {x + each - 1, at.y + 10}, colour, 2);
  }
  ImGui::Dummy({width, 12});
}

void draw_cold_void(Ui& ui, const RoundQuestion& round) {
  ui.begin_card();
  ui.coloured(words::cold_void(round.touched == look_over::Touched::Warm), ui.theme().not_proven, ui.px(18),
              ui.fonts().bold);
  ui.end_card();
}

void draw_hidden(Ui& ui, const RoundQuestion& round) {
  const std::string good = round.question->bad == look_over::YesNo::Yes ? words::no() : words::yes();
  ui.begin_card();
  ui.coloured(words::hidden_answer(good, round.hidden_by->text), ui.theme().not_proven, ui.px(18), ui.fonts().bold);
  ui.end_card();
}

void draw_where(Ui& ui, const look_over::Question& q) {
  if (!q.look_at) return;
  const Pen pen = ui.pen(ui.theme().ground);
  const float width = std::min(ui.width(), 26.0f * pen.body);
  const float height = place_drawing_height(pen, width, *q.look_at);
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const Area area{at, {at.x + width, at.y + height}};
  draw_place(pen, area, *q.look_at);
  ui.publish(Role::Drawing, "place drawing", area.min, area.max);
  ImGui::Dummy({width, height});
  ui.gap(gap);
}

// What this answer would say of the bike.
Verdict says_of(const RoundQuestion& round, look_over::YesNo answer) {
  const look_over::Question& q = *round.question;
  const bool warm = round.touched != look_over::Touched::Cold;
  if (round.cold_void) return Verdict::NotProven;
  if (answer == q.bad) return Verdict::Outside;
  return q.silence || round.hidden_by || (q.warm_hides && warm) ? Verdict::NotProven : Verdict::Within;
}

// `says`: its mark stands at the left.
bool answer_button(Ui& ui, const char* id, const std::string& label, ImVec2 size, bool chosen,
                   std::optional<Verdict> says) {
  const bool fired = ui.area(id, Role::Choice, label, size, [&](const Area& at, bool pressed) {
    ImDrawList* const list = ImGui::GetWindowDrawList();
    const ImU32 ground = chosen ? ui.theme().accent : pressed ? ui.theme().pressed : ui.theme().card;
    const ImU32 ink = chosen ? ui.theme().on_accent : ui.theme().text;
    list->AddRectFilled(at.min, at.max, ground, 14);
    list->AddRect(at.min, at.max, chosen ? ui.theme().accent : ui.theme().line, 14, 0, ui.theme().stroke);
    const float mark = says ? 9.0f : 0.0f;
    if (says)
      draw_verdict_mark(ui.pen(ground), {at.min.x + 14 + mark, at.centre().y}, mark, *says,
                        chosen ? ink : colour_of(ui.theme(), *says));
    const float left = says ? 14 + 2 * mark : 8;
    ui.fit({{at.min.x + left, at.min.y + 8}, {at.max.x - left, at.max.y - 8}}, label, ink, ui.px(says ? 26.0f : 18.0f),
           ui.fonts().bold, {}, 0.6f);
  });
  ui.mark_chosen(chosen);
  return fired;
}

// Up to the first point or colon that ends a thought.
std::string first_sentence(const std::string& text) {
  const std::size_t end = std::min({text.find(". "), text.find("; "), text.find(": ")});
  return text.substr(0, end);
}

}  // namespace

void draw_question(Ui& ui, const RoundQuestion& round, const std::vector<std::string>& answers) {
  const look_over::Question& q = *round.question;
  ui.quiet(words::progress(round.at + 1, round.of));
  draw_progress(ui, round, answers);
  ui.gap(12);
  ui.coloured(q.text, ui.theme().text, std::clamp(ui.px(26), 26.0f, std::max(38.0f, ui.px(18))), ui.fonts().bold);
  ui.gap(8);
}

void draw_meaning(Ui& ui, const RoundQuestion& round) {
  const look_over::Question& q = *round.question;
  if (round.cold_void) draw_cold_void(ui, round);
  if (round.hidden_by) draw_hidden(ui, round);
  if (!q.means.empty()) ui.text(round.more ? q.means : first_sentence(q.means));
}

void draw_how(Ui& ui, const RoundQuestion& round) {
  const look_over::Question& q = *round.question;
  draw_where(ui, q);
  if (!q.say.empty()) {
    ui.begin_card();
    ui.coloured(words::say(q.say), ui.theme().accent, ui.px(18), ui.fonts().words);
    ui.end_card();
  }
  const std::string bad = q.bad == look_over::YesNo::Yes ? words::yes() : words::no();
  if (!q.walk_away.empty())
    ui.coloured(words::ends_it(bad, q.walk_away), ui.theme().outside, ui.px(17), ui.fonts().bold);
  if (q.silence) ui.quiet(words::silence_help());
  if (q.warm_hides && round.touched != look_over::Touched::Cold) ui.quiet(words::warm_hides_help());
  if (!q.say.empty() && q.walk_away.empty()) ui.quiet(words::refused_help());
  if (round.at == 0) ui.quiet(words::marks_help());
  if (!round.tells_about.empty()) ui.quiet(words::tells_about(round.tells_about));
}

bool draw_stop(Ui& ui, const std::string& why) {
  const std::string label = words::walk_away_because(why);
  const float size = ui.px(18);
  const float mark = 0.42f * size;
  const float left = 14 + 2 * mark + 10;
  const float stop = size_of(ui.fonts().bold, size, words::stop_here()).x;
  const float room = ui.width() - left - stop - 26;
  const float high = size_of(ui.fonts().bold, size, broken(ui.fonts().bold, size, label, room)).y;
  const ImU32 ink = ui.theme().outside;
  const ImVec2 box{ui.width(), std::max(ui.target(), high + 24)};
  const bool tapped = ui.area("stop here", Role::Button, label, box, [&](const Area& at, bool pressed) {
    ImDrawList* const list = ImGui::GetWindowDrawList();
    list->AddRectFilled(at.min, at.max, pressed ? ui.theme().pressed : ui.theme().card, 10);
    list->AddRect(at.min, at.max, ink, 10, 0, ui.theme().stroke);
    draw_verdict_mark(ui.pen(ui.theme().card), {at.min.x + 14 + mark, at.centre().y}, mark, Verdict::Outside, ink);
    ui.fit({{at.min.x + left, at.min.y + 8}, {at.min.x + left + room, at.max.y - 8}}, label, ink, size, ui.fonts().bold,
           {0, 0.5f});
    ui.fit({{at.max.x - 13 - stop, at.min.y + 8}, {at.max.x - 12, at.max.y - 8}}, words::stop_here(), ui.theme().accent,
           size, ui.fonts().bold, {1, 0.5f});
  });
  ui.gap(gap);
  return tapped;
}

float answers_height(const Ui& ui) {
  return std::max(80.0f, ui.target()) + std::max(56.0f, ui.target()) + 3 * gap;
}

AnswerTap draw_answers(Ui& ui, const RoundQuestion& round) {
  AnswerTap tap;
  const float width = ui.width();
  const float half = (width - gap) / 2;
  const float high = std::max(80.0f, ui.target());
  const float low = std::max(56.0f, ui.target());
  if (answer_button(ui, "answer yes", words::yes(), {half, high}, round.said == "yes",
                    says_of(round, look_over::YesNo::Yes)))
    tap.said = "yes";
  ImGui::SameLine(0, gap);
  if (answer_button(ui, "answer no", words::no(), {half, high}, round.said == "no",
                    says_of(round, look_over::YesNo::No)))
    tap.said = "no";
  ui.gap(gap);
  const bool third = round.question && !round.question->none.empty();
  const float wide = (third ? 0.4f : 0.62f) * (width - gap);
  if (third) {
    if (answer_button(ui, "answer none", round.question->none, {0.33f * (width - gap) - gap, low}, round.said == "none",
                      {}))
      tap.said = "none";
    ImGui::SameLine(0, gap);
  }
  if (answer_button(ui, "answer not seen", words::didnt_see(), {wide, low}, round.said == "didn't see", {}))
    tap.said = "didn't see";
  ImGui::SameLine(0, gap);
  const float rest = width - gap - wide - (third ? 0.33f * (width - gap) : 0.0f);
  tap.previous = ui.area(
      "previous", Role::Button, words::previous(), {rest, low},
      [&](const Area& at, bool pressed) {
        if (pressed) ImGui::GetWindowDrawList()->AddRectFilled(at.min, at.max, ui.theme().pressed, 14);
        ui.fit(at.inset(6), words::previous(), round.at > 0 ? ui.theme().accent : ui.theme().quiet, ui.px(17),
               ui.fonts().bold, {}, 0.5f);
      },
      round.at > 0);
  return tap;
}

std::string draw_touched(Ui& ui, look_over::Touched now, bool entered) {
  constexpr std::array<const char*, 3> values{"cold", "warm", "not touched"};
  const std::array<std::string, 3> labels{"Stone cold", "Warm", "Not touched"};
  const int pressed = ui.segmented("touched", words::touched_first(), labels, entered ? static_cast<int>(now) : -1);
  return pressed < 0 ? std::string() : values[static_cast<std::size_t>(pressed)];
}

}  // namespace camside::screens
