#include "screens/look_over/look_over_lives.hpp"

#include <algorithm>
#include <utility>

#include "calc/life/life.hpp"
#include "calc/look_over/look_over.hpp"
#include "records/kinds.hpp"
#include "screens/look_over/look_over_words.hpp"
#include "work/look_over_record.hpp"

namespace camside::screens {

using look_over::Input;
using look_over::OwnLife;
using look_over::Result;
using look_over::Risk;
using look_over::same_curve;

namespace {

// The risk that this list's curve counts for; a list that has grown since counts only when it is taken again.
const OwnLife* counted(const Input& in, const OwnLife& life) {
  const auto it = std::find_if(in.lives.begin(), in.lives.end(), [&](const OwnLife& l) { return same_curve(l, life); });
  return it == in.lives.end() ? nullptr : &*it;
}

// Those that this bike can have, in the book's order.
std::vector<const Risk*> risks_of(const Input& in, const Result& r) {
  std::vector<const Risk*> some;
  for (const Risk& risk : in.known.risks)
    for (const auto* list : {&r.must_do, &r.may_find})
      for (const look_over::Found& f : *list)
        if (f.risk == risk.id) some.push_back(&risk);
  return some;
}

}  // namespace

LookOverLives::List LookOverLives::read(const records::Record& of) {
  List list{of.id(), of.entered(), "", {}, work::is_invented(of)};
  const Solved solved = records::solve(of);
  const auto* const in = solved.input_as<life::Input>();
  const auto* const result = solved.result_as<life::Result>();
  if (!in || !result) return list;
  list.words = look_over::list_in_words(*in, *result);
  list.life = look_over::own_life(*in, *result);
  if (!list.invented) return list;
  list.words += words::invented_mark();
  if (list.life) list.life->source = Source::owner(list.life->source->text() + words::invented_mark());
  return list;
}

// Each list is solved once until it changes.
void LookOverLives::refresh() {
  std::vector<List> now;
  for (const records::Record& r : std::as_const(job_).job().records) {
    if (r.kind() != "life") continue;
    const auto known = std::find_if(lists_.begin(), lists_.end(), [&](const List& l) {
      return l.id == r.id() && l.entered == records::JsonValue(r.entered());
    });
    now.push_back(known != lists_.end() ? std::move(*known) : read(r));
  }
  lists_ = std::move(now);
}

void LookOverLives::draw_list(Ui& ui, const Input& in, const Result& r, const List& list, LifeTap& tap) {
  const std::vector<const Risk*> risks = risks_of(in, r);
  const OwnLife* const counts = counted(in, *list.life);
  std::vector<std::string> names{words::none_of_them()};
  int now = 0;
  for (const Risk* risk : risks) {
    if (counts && counts->risk == risk->id) now = static_cast<int>(names.size());
    names.push_back(risk->name);
  }
  ui.begin_card();
  ui.coloured(list.words, ui.theme().text, ui.px(18), ui.fonts().bold);
  const std::string says = now > 0 ? words::counts_for(names[static_cast<std::size_t>(now)]) : words::counts_nowhere();
  if (ui.row("life " + list.id, says, words::change_them())) open_ = open_ == list.id ? "" : list.id;
  const int pressed = open_ == list.id ? ui.segmented("risks " + list.id, "", names, now) : -1;
  ui.end_card();
  if (pressed < 0) return;
  if (pressed > 0) {
    tap.take = list.life;
    tap.take->risk = risks[static_cast<std::size_t>(pressed - 1)]->id;
  } else if (counts) {
    tap.give_back = counts->risk;
  }
  close();
}

LifeTap LookOverLives::draw(Ui& ui, const Input& in, const Result& r, bool invented) {
  refresh();
  LifeTap tap;
  ui.gap(12);
  ui.heading(words::own_lists());
  ui.quiet(words::own_lists_help());
  for (const List& list : lists_) {
    if (list.words.empty() || (list.invented && !invented)) continue;
    if (list.life)
      draw_list(ui, in, r, list, tap);
    else
      ui.quiet(words::no_curve(list.words));
  }
  return tap;
}

}  // namespace camside::screens
