#include "screens/look_over_lives.hpp"

#include <algorithm>
#include <utility>

#include "calc/look_over_life.hpp"
#include "records/kinds.hpp"
#include "screens/look_over_record.hpp"
#include "screens/look_over_words.hpp"

namespace camside::screens {

using look_over::Input;
using look_over::OwnLife;
using look_over::Risk;
using look_over::same_curve;

namespace {

// The risk that this list's curve counts for; a list that has grown since counts only when it is taken again.
const OwnLife* counted(const Input& in, const OwnLife& life) {
  const auto it = std::find_if(in.lives.begin(), in.lives.end(), [&](const OwnLife& l) { return same_curve(l, life); });
  return it == in.lives.end() ? nullptr : &*it;
}

std::string name_of_risk(const Input& in, const std::string& id) {
  for (const Risk& r : in.known.risks)
    if (r.id == id) return r.name;
  return id;
}

}  // namespace

LookOverLives::List LookOverLives::read(const records::Record& of) {
  List list{of.id(), of.entered(), "", {}, is_invented(of)};
  const records::Solved solved = records::solve(of);
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
    const auto known = std::find_if(lists_.begin(), lists_.end(),
                                    [&](const List& l) { return l.id == r.id() && l.entered == r.entered(); });
    now.push_back(known != lists_.end() ? std::move(*known) : read(r));
  }
  lists_ = std::move(now);
}

void LookOverLives::draw_risks(Ui& ui, const Input& in, const List& list, LifeTap& tap) {
  for (const Risk& risk : in.known.risks) {
    if (!ui.button(list.id + risk.id, risk.name, Look::Quiet)) continue;
    tap.take = list.life;
    tap.take->risk = risk.id;
    return close();
  }
}

void LookOverLives::draw_list(Ui& ui, const Input& in, const List& list, LifeTap& tap) {
  ui.begin_card();
  ui.coloured(list.words, ui.theme().text, ui.px(18), ui.fonts().bold);
  const OwnLife* const now = counted(in, *list.life);
  if (now) ui.text(words::counts_for(name_of_risk(in, now->risk)));
  const bool open = open_ == list.id;
  if (ui.button("life " + list.id, open ? words::not_now() : words::stands_for(), Look::Quiet))
    open_ = open ? "" : list.id;
  if (now && ui.button("book " + list.id, words::back_to_book(), Look::Quiet)) tap.give_back = now->risk;
  if (open) draw_risks(ui, in, list, tap);
  ui.end_card();
}

LifeTap LookOverLives::draw(Ui& ui, const Input& in, bool invented) {
  refresh();
  LifeTap tap;
  ui.gap(12);
  ui.heading(words::own_lists());
  ui.quiet(words::own_lists_help());
  for (const List& list : lists_) {
    if (list.words.empty() || (list.invented && !invented)) continue;
    if (list.life)
      draw_list(ui, in, list, tap);
    else
      ui.quiet(words::no_curve(list.words));
  }
  return tap;
}

}  // namespace camside::screens
