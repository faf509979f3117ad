#include "calc/gear_pick/gear_pick_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "calc/gear_pick/gear_pick_remarks.hpp"
#include "calc/gear_pick/gear_pick_sizes.hpp"
#include "findings/decision.hpp"
#include "findings/remark.hpp"

namespace camside::gear_pick {

namespace {

void remark_swing(const Input& in, const Set& set, Findings& out) {
  for (const Set::Joined& joined : set.meshes) {
    const Mesh& mesh = in.meshes[at(joined.mesh)];
    for (const Window& w : mesh.windows) {
      if (!w.lowest || !w.highest) continue;
      const Length swing = Length::mm(joined.high_mm[at(w.state)] - joined.low_mm[at(w.state)]);
      const Length room = *w.highest - *w.lowest;
      if (swing.in_mm() > room.in_mm() + slack_mm)
        out.push_back(
            remarks::swing_too_wide(item("meshes", joined.mesh, "windows"), mesh_name(in, joined.mesh), swing, room));
    }
  }
}

std::string meshes_text(const Input& in, const Set& set) {
  std::string text;
  for (const Set::Joined& m : set.meshes) text += (text.empty() ? "" : " and ") + mesh_name(in, m.mesh);
  return text;
}

void remark_nothing_fits(const Engine& e, const Set& set, Findings& out) {
  const std::string meshes = meshes_text(e.in, set);
  const Candidate& nearest = set.best();
  if (nearest.standing == Standing::NotInStock)
    return out.push_back(remarks::not_in_stock(choice_text(e.in, set, nearest)));
  out.push_back(remarks::nothing_fits(meshes, choice_text(e.in, set, nearest), Length::mm(-nearest.score_mm)));
  remark_swing(e.in, set, out);
  for (const WouldFit& w : set.would_fit)
    out.push_back(remarks::would_fit(
        e.gear(w.gear).name,
        fmt::format("{} ({} to {})", remarks::inch_and_mm(w.value), remarks::mm_only(w.from), remarks::mm_only(w.to))));
  if (set.would_fit.empty()) out.push_back(remarks::no_one_gear_would_do(meshes));
}

constexpr std::array<const char*, 4> state_keys{"as_measured", "coldest_start", "warm_up", "fully_hot"};

void add_lash_figures(const Input& in, const Set& set, const Candidate& c, const char* which, const char* words,
                      Outcome& out) {
  for (std::size_t m = 0; m < set.meshes.size(); ++m) {
    const Set::Joined& joined = set.meshes[m];
    for (const State s : lash_temperature::all_states) {
      const LashRange lash = set.lash(c, m, s);
      const auto add = [&](const char* end, const char* end_words, Length v) {
        Figure f{fmt::format("meshes[{}].{}.{}.{}", joined.mesh, which, state_keys[at(s)], end),
                 fmt::format("{}, {}, {}: {} lash", mesh_name(in, joined.mesh), words, lash_temperature::word_of(s),
                             end_words),
                 Kind::Length,
                 v.in_mm(),
                 {},
                 {},
                 {}};
        if (in.meshes[at(joined.mesh)].uncertainty) f.uncertainty = joined.uncertainty_mm[at(s)];
        out.figures.push_back(std::move(f));
      };
      add("low", "lowest", lash.low);
      add("high", "highest", lash.high);
    }
  }
}

void add_set_figures(const Input& in, const Set& set, std::size_t i, Outcome& out) {
  const auto key = [&](const char* what) { return fmt::format("sets[{}].{}", i, what); };
  const std::string meshes = meshes_text(in, set);
  const double changed = set.best().index == 0 ? 0.0 : 1.0;
  out.figures.push_back(
      {key("pick"), meshes + ": order", Kind::Number, changed, {}, {}, choice_text(in, set, set.best())});
  out.figures.push_back({key("score"),
                         meshes + ": distance to the nearest edge",
                         Kind::Length,
                         set.best().score_mm,
                         {},
                         set.best().verdict,
                         {}});
  const Candidate& left = set.ranked[set.leave_it];
  out.figures.push_back({key("leave_it.score"),
                         meshes + ": the same if left as it is",
                         Kind::Length,
                         left.score_mm,
                         {},
                         left.verdict,
                         {}});
  out.figures.push_back({key("combinations"),
                         meshes + ": combinations",
                         Kind::Number,
                         static_cast<double>(set.ranked.size()),
                         {},
                         {},
                         {}});
  out.figures.push_back(
      {key("fitting"), meshes + ": of these fit", Kind::Number, static_cast<double>(set.fitting), {}, {}, {}});
  add_lash_figures(in, set, set.best(), "pick", "with the pick", out);
  add_lash_figures(in, set, left, "leave_it", "left as it is", out);
}

void add_size_steps(const Engine& e, std::size_t i, double per_value, Outcome& out) {
  const Gear& gear = e.in.gears[i];
  const GearModel& model = e.gears[i];
  out.figures.push_back(
      {item("gears", i, "lash_per_size"), gear.name + ": lash per 0.001 of size", Kind::Number, per_value, {}, {}, {}});
  const auto text = fmt::format("{}: one thou of {} is {:.2f} thou of lash here, not one", gear.name,
                                word_of(*gear.size_means), per_value);
  if (std::abs(per_value - 1.0) > 0.05)
    out.findings.push_back(remarks::step_is_not_lash(item("gears", i, "sizes"), text));
  for (std::size_t k = 1; k < model.options.size(); ++k) {
    const Option& o = model.options[k];
    out.working.push_back({fmt::format("{}, size {}", gear.name, gear.sizes[at(o.size)].name),
                           "Δj = −(a/a_ref) Δs; + = thicker = tighter",
                           fmt::format("Δs {} against the fitted gear", remarks::inch_and_mm(o.thicker)),
                           "lash " + remarks::inch_and_mm(o.lash_change)});
  }
}

void add_prediction_steps(const Input& in, const Set& set, Outcome& out) {
  const Candidate& best = set.best();
  for (std::size_t m = 0; m < set.meshes.size(); ++m)
    for (const State s : lash_temperature::all_states) {
      const LashRange lash = set.lash(best, m, s);
      const Set::Joined& joined = set.meshes[m];
      out.working.push_back({fmt::format("{}, {}", mesh_name(in, joined.mesh), lash_temperature::word_of(s)),
                             "j = j(fitted) − Σ (∂j/∂s) Δs",
                             fmt::format("{} to {}, Δs {} and {}", remarks::mm_only(Length::mm(joined.low_mm[at(s)])),
                                         remarks::mm_only(Length::mm(joined.high_mm[at(s)])),
                                         remarks::mm_only(set.choice(best, joined.gear_a).thicker),
                                         remarks::mm_only(set.choice(best, joined.gear_b).thicker)),
                             fmt::format("{} to {}", remarks::inch_and_mm(lash.low), remarks::inch_and_mm(lash.high))});
    }
}

void add_ranking_steps(const Input& in, const Set& set, Outcome& out) {
  for (std::size_t i = 0; i < std::min<std::size_t>(set.ranked.size(), 5); ++i)
    out.working.push_back({fmt::format("Place {}", i + 1), "smallest distance to a window's edge",
                           choice_text(in, set, set.ranked[i]), standing_text(in, set, set.ranked[i])});
  if (set.leave_it >= 5)
    out.working.push_back({fmt::format("Place {}: leave it", set.leave_it + 1), "smallest distance to a window's edge",
                           choice_text(in, set, set.ranked[set.leave_it]),
                           standing_text(in, set, set.ranked[set.leave_it])});
}

void remark_pressed(const Input& in, const Set& set, Findings& out) {
  for (std::size_t g = 0; g < set.gears.size(); ++g) {
    const Gear& gear = in.gears[at(set.gears[g])];
    if (gear.joint == Joint::Pressed && set.choice(set.best(), g).size >= 0)
      out.push_back(remarks::pressed_gear_changes(gear.name));
  }
}

void report_set(const Engine& e, const Set& set, std::size_t i, Outcome& out) {
  add_set_figures(e.in, set, i, out);
  add_prediction_steps(e.in, set, out);
  add_ranking_steps(e.in, set, out);
  if (set.fitting == 0)
    remark_nothing_fits(e, set, out.findings);
  else
    remark_pressed(e.in, set, out.findings);
}

std::string judgement_reason(const Engine& e, const Set& set) {
  std::string standing = standing_text(e.in, set, set.best());
  if (set.best().verdict != Verdict::NotProven) return standing;
  return standing + "; the ± of the readings, their method or a doubt keeps it from being proven";
}

void judge(const Engine& e, Result& r) {
  // The set that stands worst decides.
  const auto worst = std::min_element(r.sets.begin(), r.sets.end(), [](const Set& a, const Set& b) {
    return weighs_more(a.best().verdict, b.best().verdict);
  });
  const Candidate& c = worst->best();
  const Mesh& mesh = e.in.meshes[at(worst->meshes[c.tight_mesh].mesh)];
  r.outcome.judgement = Judgement{c.verdict,
                                  fmt::format("sets[{}].score", worst - r.sets.begin()),
                                  0.0,
                                  {},
                                  *mesh.window_source,
                                  judgement_reason(e, *worst)};
}

std::string changed_text(const Gear& gear, const Option& option) {
  if (option.size < 0) return gear.name + " as fitted";
  const std::string& size = gear.sizes[at(option.size)].name;
  return gear.name + " " + (size.empty() ? remarks::inch_and_mm(option.value) : size);
}

}  // namespace

std::string choice_text(const Input& input, const Set& set, const Candidate& c) {
  if (c.index == 0) return "leave it";
  std::string text;
  for (std::size_t g = 0; g < set.gears.size(); ++g)
    text += (text.empty() ? "" : ", ") + changed_text(input.gears[at(set.gears[g])], set.choice(c, g));
  return text;
}

std::string standing_text(const Input& input, const Set& set, const Candidate& c) {
  const std::string where = fmt::format("in {}, {}", mesh_name(input, set.meshes[c.tight_mesh].mesh),
                                        lash_temperature::word_of(c.tight_state));
  const std::string by = remarks::inch_and_mm(Length::mm(std::abs(c.score_mm)));
  switch (c.standing) {
    case Standing::Fits:
      return fmt::format("fits, {} from the edge {}", by, where);
    case Standing::NotInStock:
      return fmt::format("would fit, {} from the edge {}, but is not in stock", by, where);
    case Standing::TooTight:
      return fmt::format("too tight by {} {}", by, where);
    case Standing::TooLoose:
      return fmt::format("too loose by {} {}", by, where);
    case Standing::NoLash:
      break;
  }
  return fmt::format("no lash left in some state, least {}", remarks::inch_and_mm(Length::mm(c.least_mm)));
}

void report(const Engine& e, Result& r) {
  r.lash_per_size.resize(e.gears.size());
  for (std::size_t i = 0; i < r.sets.size(); ++i) report_set(e, r.sets[i], i, r.outcome);
  for (std::size_t i = 0; i < e.gears.size(); ++i) {
    if (e.in.gears[i].sizes.empty() || !e.gears[i].form) continue;
    r.lash_per_size[i] =
        to_operating_circle(e, e.gears[i]) * SizeReader{e.in.gears[i], e.gears[i]}.thickness_per_value();
    add_size_steps(e, i, r.lash_per_size[i], r.outcome);
  }
  judge(e, r);
}

}  // namespace camside::gear_pick
