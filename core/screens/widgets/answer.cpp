#include "screens/widgets/answer.hpp"

#include <algorithm>
#include <iterator>

#include "base/stable_sort.hpp"
#include "screens/widgets/shown.hpp"
#include "screens/words.hpp"

namespace camside::screens {

namespace {

// The figure that answers the question: the first. What was judged may be another one (the room left for a plunger
// while the answer is a number of turns); it then stands beside the limit.
const Figure* main_figure(const Outcome& outcome) {
  return outcome.figures.empty() ? nullptr : &outcome.figures.front();
}

std::string value_text(const Figure& figure, System system) {
  return figure.text.empty() ? shown(figure.kind, figure.base, system) : figure.text;
}

void draw_verdict(Ui& ui, Verdict verdict) {
  const ImU32 colour = colour_of(ui.theme(), verdict);
  const float size = ui.px(28);
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const std::string word(word_of(verdict));
  const ImVec2 box = size_of(ui.fonts().bold, size, word);
  const float radius = 0.48f * size;
  draw_verdict_mark(ui.pen(ui.theme().card), {at.x + radius + 2, at.y + box.y / 2}, radius, verdict, colour);
  write(*ImGui::GetWindowDrawList(), ui.fonts().bold, size, {at.x + 2 * radius + 14, at.y}, colour, word);
  ui.publish(Role::Verdict, word, at, {at.x + 2 * radius + 14 + box.x, at.y + box.y});
  ImGui::Dummy({2 * radius + 14 + box.x, box.y});
}

// As large as fits on one line; long words ("3 turns 1 flat, then …") wrap at a smaller size.
void draw_value(Ui& ui, const Figure& figure, System system) {
  const std::string value = value_text(figure, system);
  const std::string spread =
      figure.uncertainty ? "± " + shown(figure.kind, *figure.uncertainty, system) : std::string();
  ImFont* const font = ui.fonts().bold;
  const float room = ui.width();
  float size = ui.px(48);
  while (size_of(font, size, value).x > room && size > ui.px(24)) size *= 0.94f;
  ui.quiet(figure.label);
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const ImVec2 box = size_of(font, size, value);
  ui.coloured(value, ui.theme().text, size, font);
  if (spread.empty()) return;
  const ImVec2 small = size_of(ui.fonts().words, ui.px(20), spread);
  if (box.x + 12 + small.x > room) return ui.coloured(spread, ui.theme().quiet, ui.px(20), ui.fonts().words);
  const ImVec2 beside{at.x + box.x + 12, at.y + box.y - small.y - 0.13f * size};
  write(*ImGui::GetWindowDrawList(), ui.fonts().words, ui.px(20), beside, ui.theme().quiet, spread);
  ui.publish(Role::Text, spread, beside, {beside.x + small.x, beside.y + small.y});
}

// Sets of meshes that share no gear are solved apart: each has an answer of its own ("sets[1].pick").
void draw_other_answers(Ui& ui, const Outcome& outcome, System system) {
  for (std::size_t i = 1; i < outcome.figures.size(); ++i) {
    const Figure& f = outcome.figures[i];
    if (!f.key.starts_with("sets[") || !f.key.ends_with("].pick")) continue;
    ui.quiet(f.label);
    ui.coloured(value_text(f, system), ui.theme().text, ui.px(24), ui.fonts().bold);
  }
}

ImU32 colour_of(const Ui& ui, Severity severity) {
  switch (severity) {
    case Severity::Refusal:
      return ui.theme().outside;
    case Severity::Caution:
    case Severity::Doubt:
      return ui.theme().not_proven;
    case Severity::Note:
      break;
  }
  return ui.theme().quiet;
}

void draw_remark(Ui& ui, const Finding& finding) {
  const ImVec2 top = ImGui::GetCursorScreenPos();
  ImGui::Indent(14);
  ui.text(finding.text);
  if (!finding.remedy.empty()) ui.quiet(finding.remedy);
  ImGui::Unindent(14);
  const float bottom = ImGui::GetCursorScreenPos().y - ImGui::GetStyle().ItemSpacing.y;
  ImGui::GetWindowDrawList()->AddRectFilled({top.x, top.y + 2}, {top.x + 5, bottom}, colour_of(ui, finding.severity),
                                            2);
}

}  // namespace

std::string figure_text(const Figure& figure, System system) {
  std::string text = value_text(figure, system);
  if (figure.uncertainty) text += " ± " + shown(figure.kind, *figure.uncertainty, system);
  return text;
}

// A limit of nothing at all is no measurement: "0".
std::string bound_text(Kind kind, double bound, System system) {
  return bound == 0 ? "0" : shown(kind, bound, system);
}

std::string limit_text(const Outcome& outcome, System system) {
  if (!outcome.judgement) return {};
  const Judgement& j = *outcome.judgement;
  const Figure* const figure = outcome.figure(j.figure);
  const Kind kind = figure ? figure->kind : Kind::Number;
  std::string text;
  if (j.lower && j.upper)
    text = bound_text(kind, *j.lower, system) + " to " + shown(kind, *j.upper, system);
  else if (j.upper)
    text = "at most " + bound_text(kind, *j.upper, system);
  else if (j.lower)
    text = "at least " + bound_text(kind, *j.lower, system);
  const bool other = figure && figure != main_figure(outcome);
  const std::string judged = other ? figure->label + ": " + figure_text(*figure, system) + "\n" : std::string();
  return judged + words::limit_by() + " " + text + " · " + j.source.text();
}

void draw_answer(Ui& ui, const Solved& solved, System system) {
  if (!solved.solved) {
    ui.heading(words::no_answer_yet());
    return;
  }
  const Outcome& outcome = solved.outcome;
  const ImVec2 top = ImGui::GetCursorScreenPos();
  ui.begin_card();
  if (outcome.judgement) draw_verdict(ui, outcome.judgement->verdict);
  if (const Figure* figure = main_figure(outcome)) draw_value(ui, *figure, system);
  draw_other_answers(ui, outcome, system);
  if (outcome.judgement) {
    ui.quiet(limit_text(outcome, system));
    if (!outcome.judgement->reason.empty()) ui.text(outcome.judgement->reason);
  }
  ui.end_card();
  if (!outcome.judgement) return;
  const float bottom = ImGui::GetCursorScreenPos().y - ImGui::GetStyle().ItemSpacing.y;
  ImGui::GetWindowDrawList()->AddRectFilled(top, {top.x + 6, bottom}, colour_of(ui.theme(), outcome.judgement->verdict),
                                            3);
}

void draw_remarks(Ui& ui, const Findings& findings) {
  Findings ordered = findings;
  sort_stably(ordered.begin(), ordered.end(), [](const Finding& a, const Finding& b) {
    return static_cast<int>(a.severity) > static_cast<int>(b.severity);
  });
  for (const Finding& f : ordered) draw_remark(ui, f);
}

Findings what_matters_now(const Findings& findings) {
  Findings some;
  std::copy_if(findings.begin(), findings.end(), std::back_inserter(some),
               [](const Finding& f) { return f.severity != Severity::Note; });
  return some;
}

Findings good_to_know(const Findings& findings) {
  Findings some;
  std::copy_if(findings.begin(), findings.end(), std::back_inserter(some),
               [](const Finding& f) { return f.severity == Severity::Note; });
  return some;
}

void draw_figures(Ui& ui, const Outcome& outcome, System system) {
  const Figure* const shown = main_figure(outcome);
  ui.begin_card();
  for (const Figure& f : outcome.figures) {
    if (&f == shown) continue;
    ui.quiet(f.label);
    ui.coloured(figure_text(f, system), ui.theme().text, ui.px(18), ui.fonts().bold);
  }
  ui.end_card();
}

void draw_working(Ui& ui, const Outcome& outcome) {
  ui.heading(words::working());
  for (const Step& s : outcome.working) {
    ui.begin_card();
    ui.coloured(s.title, ui.theme().text, ui.px(17), ui.fonts().bold);
    if (!s.formula.empty()) ui.quiet(s.formula);
    if (!s.numbers.empty()) ui.quiet("= " + s.numbers);
    if (!s.result.empty()) ui.coloured("= " + s.result, ui.theme().text, ui.px(17), ui.fonts().bold);
    ui.end_card();
  }
}

}  // namespace camside::screens
