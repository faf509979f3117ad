#include "calc/pushrod/pushrod_report.hpp"

#include <fmt/format.h>

#include <cstddef>
#include <string>
#include <utility>

#include "calc/pushrod/pushrod_rods.hpp"
#include "calc/pushrod/pushrod_setting.hpp"
#include "fields/path.hpp"
#include "findings/outcome_writer.hpp"
#include "findings/remark.hpp"

namespace camside::pushrod {

namespace {

using figures::angle;
using figures::length;
using figures::word;

std::string len(Length v) {
  return remarks::inch_and_mm(v, 4);
}

// What the counted turns do: "lengthen, clockwise seen from above".
std::string direction_text(const Setting& s) {
  const std::string verb = s.way == Way::BottomAndBackOff ? "shorten" : "lengthen";
  return s.turn ? fmt::format("{}, {} seen from above", verb, word_of(*s.turn)) : verb;
}

// ---- figures ----

void add_setting(const Input& in, const Setting& s, Outcome& out) {
  const int n = in.flats_per_turn;
  const double set_turns = static_cast<double>(s.set_flats) / n;
  const bool back = s.way == Way::BottomAndBackOff;
  out.figures.push_back(
      angle("setting", back ? "Back from the bottom" : "From zero", Angle::turns(set_turns), text_of(s.set, n)));
  out.figures.push_back(length("preload", "Preload it gives", s.given));
  out.figures.push_back(
      word("direction", "Way to turn", s.turn ? static_cast<std::size_t>(*s.turn) : 2, direction_text(s)));
  out.figures.push_back({"exact_turns", "Exact turns", Kind::Number, s.exact_turns, {}, {}, {}});
  out.figures.push_back(angle("exact", "Exact answer", Angle::turns(s.exact_turns), text_of(s.exact, n)));
  out.figures.push_back(length("preload_wanted", "Preload wanted", s.wanted));
  out.figures.push_back(length("per_turn", "One turn moves", s.per_turn));
  out.figures.push_back(length("per_flat", "One flat moves", s.per_flat));
}

void add_counted(const Input& in, const Counted& c, Outcome& out) {
  out.figures.push_back(angle("turned", "Really turned", Angle::turns(c.turns),
                              text_of(split_turns(c.turns, in.flats_per_turn), in.flats_per_turn)));
  out.figures.push_back(length("preload_turned", "Preload that gives", c.preload));
}

void add_margins(const Margins& m, Outcome& out) {
  out.figures.push_back(length("margin_top", "Room to the plunger's stop", m.preload));
  if (!m.to_bottom) return;
  out.figures.push_back(length("margin_bottom", "Room to the bottom", *m.to_bottom));
  out.figures.push_back(length("least_margin", "Least room to either end", *m.least));
}

void add_heat(const Input& in, const HotPreload& h, Outcome& out) {
  out.figures.push_back(length("hot_preload", "Preload hot", h.hot));
  out.figures.push_back(length("hot_change", "Change when hot", h.change));
  out.figures.push_back(length("cold_preload", "Preload cold", h.cold));
  out.figures.push_back(length("rod_growth", "Rod grows", h.rod_growth));
  for (std::size_t i = 0; i < h.stack_growth.size(); ++i) {
    const std::string& name = in.heat->stack[i].name;
    out.figures.push_back(length(item_path("stack_growth", i),
                                 (name.empty() ? fmt::format("Piece {}", i + 1) : name) + " grows", h.stack_growth[i]));
  }
  if (in.heat->valve) out.figures.push_back(length("valve_growth", "Valve side, at the rod", h.valve_growth));
}

void add_rods(const Input& in, const Result& r, Outcome& out) {
  if (r.length_change) {
    out.figures.push_back(length("length_change", "Rod length changes by", *r.length_change));
    if (in.new_length->old_length)
      out.figures.push_back(length("new_length", "New rod length", *in.new_length->old_length + *r.length_change));
  }
  if (in.engagement) out.figures.push_back(length("engaged", "Thread engaged", *in.engagement->engaged));
  if (r.collapsed_spare) out.figures.push_back(length("collapsed_spare", "Clearance going in", *r.collapsed_spare));
  if (r.longest_spare) out.figures.push_back(length("longest_spare", "Length to spare, fully out", *r.longest_spare));
  if (r.rods_out)
    out.figures.push_back(word("rods_out", "Fixed rods", static_cast<std::size_t>(*r.rods_out), word_of(*r.rods_out)));
}

void add_standings(const Result& r, Outcome& out) {
  const auto to_next = [](const Standing& from, const Standing& to) {
    return fmt::format("From {} to {}, forward", word_of(from.cylinder), word_of(to.cylinder));
  };
  const auto& [first, second] = r.standings;
  out.figures.push_back(angle("first_to_second", to_next(first, second), first.to_next));
  out.figures.push_back(angle("second_to_first", to_next(second, first), second.to_next));
}

void add_lock(const Input& in, const Result& r, Outcome& out) {
  if (r.lock == EngineLock::Clear) return;  // no rod was set: there is nothing to be clear of
  out.figures.push_back(word("engine_lock", "Engine", static_cast<std::size_t>(r.lock), word_of(r.lock)));
  for (const RodCheck& c : in.checks) {
    const RodState state = r.rod_states[static_cast<std::size_t>(*c.rod)];
    std::string key = fmt::format("rod_{}", word_of(*c.rod));
    key.replace(key.find(' '), 1, "_");
    out.figures.push_back(
        word(key, fmt::format("The {} rod", word_of(*c.rod)), static_cast<std::size_t>(state), word_of(state)));
  }
}

// ---- working ----

std::string pitch_numbers(const Input& in) {
  const auto one = [](const std::optional<ThreadPitch>& p, const std::optional<Length>& ten) {
    return ten ? fmt::format("{} / 10", len(*ten)) : fmt::format("25.4 mm / {:.6g} tpi", p->in_threads_per_inch());
  };
  std::string text = one(in.pitch, in.ten_threads);
  if (in.second_pitch || in.second_ten_threads) text += " + " + one(in.second_pitch, in.second_ten_threads);
  return text;
}

void add_turn_steps(const Input& in, const Setting& s, Outcome& out) {
  const int n = in.flats_per_turn;
  const bool back = s.way == Way::BottomAndBackOff;
  out.working.push_back(
      {"One turn moves", "25.4 / tpi, or ten threads / 10; two threads add up", pitch_numbers(in), len(s.per_turn)});
  out.working.push_back({"Turns", back ? "(travel − preload) / one turn" : "preload / one turn",
                         back ? fmt::format("({} − {}) / {}", len(*in.travel), len(s.wanted), len(s.per_turn))
                              : fmt::format("{} / {}", len(s.wanted), len(s.per_turn)),
                         fmt::format("{:.6g} turns = {}", s.exact_turns, text_of(s.exact, n))});
  out.working.push_back({"Setting", in.travel ? "to a flat, toward the middle of the travel" : "to the nearest flat",
                         fmt::format("{:.6g} turns · {} flats", s.exact_turns, n), text_of(s.set, n)});
  out.working.push_back({"Preload it gives", back ? "travel − flats · one flat" : "flats · one flat",
                         back ? fmt::format("{} − {} · {}", len(*in.travel), s.set_flats, len(s.per_flat))
                              : fmt::format("{} · {}", s.set_flats, len(s.per_flat)),
                         len(s.given)});
}

void add_counted_step(const Input& in, const Result& r, Outcome& out) {
  const Length per_turn = *advance_per_turn(in);
  const bool back = way_of(in) == Way::BottomAndBackOff;
  out.working.push_back(
      {"Preload of the turns made", back ? "travel − turns · one turn" : "turns · one turn",
       (back ? len(*in.travel) + " − " : "") + fmt::format("{:.6g} · {}", r.counted->turns, len(per_turn)),
       len(r.counted->preload)});
}

void add_margin_step(const Input& in, const Margins& m, Outcome& out) {
  if (!m.to_bottom) return;
  out.working.push_back({"Least room", "min(preload, travel − preload)",
                         fmt::format("min({}, {} − {})", len(m.preload), len(*in.travel), len(m.preload)),
                         len(*m.least)});
}

std::string stack_numbers(const HotPreload& h) {
  std::string text;
  for (const Length& g : h.stack_growth) text += (text.empty() ? "" : " + ") + remarks::mm_only(g);
  return text;
}

void add_heat_step(const HotPreload& h, Outcome& out) {
  out.working.push_back(
      {"Preload hot", "set + rod − Σ stack + (stem − head) / ratio; each grows by α L (T_hot − T_set)",
       fmt::format("{} + {} − ({}) + {}", remarks::mm_only(h.hot - h.change), remarks::mm_only(h.rod_growth),
                   stack_numbers(h), remarks::mm_only(h.valve_growth)),
       len(h.hot)});
}

void add_length_step(const NewLength& n, Length change, Outcome& out) {
  out.working.push_back({"Rod length changes by", "gaskets − deck − head − heel radius − cup rise − tip rise / ratio",
                         fmt::format("{} − {} − {} − {} − {} − {} / {:.4g}", remarks::mm_only(n.gasket_change),
                                     remarks::mm_only(n.deck_removed), remarks::mm_only(n.head_removed),
                                     remarks::mm_only(n.heel_radius_change), remarks::mm_only(n.cup_rise),
                                     remarks::mm_only(n.tip_rise), n.rocker_ratio.value_or(1.0)),
                         len(change)});
}

void add_order_step(const Input& in, const Result& r, Outcome& out) {
  const bool with = in.turning == Turning::WithWheels;
  out.working.push_back({"From cylinder to cylinder", "45° single pin: 360° − 45° and 360° + 45°",
                         with ? "turning with the wheels" : "turning against the wheels: swapped",
                         fmt::format("{} to {} {:.0f}°, on to {} {:.0f}°", word_of(r.standings[0].cylinder),
                                     word_of(r.standings[1].cylinder), r.standings[0].to_next.in_deg(),
                                     word_of(r.standings[0].cylinder), r.standings[1].to_next.in_deg())});
}

}  // namespace

void add_figures(const Input& in, const Result& r, Outcome& out) {
  if (r.setting) add_setting(in, *r.setting, out);
  if (r.counted) add_counted(in, *r.counted, out);
  if (r.margins) add_margins(*r.margins, out);
  if (r.heat) add_heat(in, *r.heat, out);
  add_rods(in, r, out);
  add_standings(r, out);
  add_lock(in, r, out);
}

void add_working(const Input& in, const Result& r, Outcome& out) {
  if (r.setting && r.setting->way != Way::JustFree) add_turn_steps(in, *r.setting, out);
  if (r.counted) add_counted_step(in, r, out);
  if (r.margins) add_margin_step(in, *r.margins, out);
  if (r.heat) add_heat_step(*r.heat, out);
  if (r.length_change) add_length_step(*in.new_length, *r.length_change, out);
  add_order_step(in, r, out);
}

}  // namespace camside::pushrod
