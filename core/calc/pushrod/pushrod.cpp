#include "calc/pushrod/pushrod.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "calc/pushrod/pushrod_checks.hpp"
#include "calc/pushrod/pushrod_heat.hpp"
#include "calc/pushrod/pushrod_remarks.hpp"
#include "calc/pushrod/pushrod_report.hpp"
#include "calc/pushrod/pushrod_rods.hpp"
#include "calc/pushrod/pushrod_setting.hpp"
#include "fields/path.hpp"
#include "findings/decision.hpp"
#include "findings/remark.hpp"
#include "findings/safety.hpp"

namespace camside::pushrod {

namespace {

constexpr Length slack = Length::mm(decision_slack);
constexpr Length usual_margin = Length::inches(0.030);      // common practice, no published source
constexpr Length unusual_travel = Length::inches(0.300);    // plungers travel 0.04 to 0.25 in
constexpr Angle first_interval = Angle::deg(360.0 - 45.0);  // 45° single pin
constexpr Angle second_interval = Angle::deg(360.0 + 45.0);
constexpr TemperatureDifference warm_by = TemperatureDifference::kelvin(15.0);

// What is being worked out: the input, the result, and all that was judged on the way, the most important first.
struct Working {
  const Input& in;
  Result& r;
  std::vector<Judgement> judged;

  void say(Finding f) { r.outcome.findings.push_back(std::move(f)); }
};

Limit<Length> least_margin(const Input& in) {
  return in.least_margin.value_or(Limit<Length>{usual_margin, Source::common_practice()});
}

std::string len(Length v) {
  return remarks::inch_and_mm(v, 3);
}

// ---- turns ----

bool near(double a, double b, int flats_per_turn) {
  return std::abs(a - b) * flats_per_turn <= 0.5 + 1e-9;
}

// Flats taken for turns, turns for flats, or each half-turn grip for a turn.
std::string mix_up(const Setting& s, double counted, int n) {
  const double set = static_cast<double>(s.set_flats) / n;
  const double all = static_cast<double>(s.set.turns + s.set.flats);
  if (near(counted, set, n) || s.set_flats == 0) return "";
  if (s.set.flats > 0 && near(counted, all, n)) return "were flats counted as turns?";
  if (s.set.turns > 0 && near(counted, all / n, n)) return "were turns counted as flats?";
  if (near(counted, 2.0 * set, n)) return "were half-turn grips counted as turns?";
  if (near(counted, 0.5 * set, n)) return "were turns counted as half turns?";
  return "";
}

void compare_count(Working& w) {
  const Setting& s = *w.r.setting;
  const int n = w.in.flats_per_turn;
  const double counted = w.r.counted->turns;
  const std::string text = text_of(split_turns(counted, n), n);
  const std::string likely = mix_up(s, counted, n);
  if (!likely.empty())
    w.say(remarks::count_mixed_up(text, likely));
  else if (!near(counted, static_cast<double>(s.set_flats) / n, n))
    w.say(remarks::counted_is_not_the_setting(text, text_of(s.set, n)));
}

void add_counted(Working& w) {
  if (!w.in.turned) return;
  const double turns = w.in.turned->turns + w.in.turned->flats / w.in.flats_per_turn;
  const Length preload = preload_after(way_of(w.in), turns, *advance_per_turn(w.in), w.in.travel);
  w.r.counted = Counted{turns, preload};
  if (w.r.setting) compare_count(w);
  if (w.in.lifter == Lifter::Solid) {
    if (preload > slack) w.say(remarks::solid_lifter_holds_valve());
    return;
  }
  if (preload <= slack) w.say(remarks::plunger_at_its_end(false));
  if (w.in.travel && preload >= *w.in.travel - slack) w.say(remarks::plunger_at_its_end(true));
}

void add_setting(Working& w) {
  const auto wanted = wanted_preload(w.in);
  if (!wanted) return;
  const auto per_turn = advance_per_turn(w.in);
  w.r.setting = setting_for(w.in, *wanted, per_turn.value_or(Length::mm(1.0)));
  if (!per_turn)
    w.r.setting->per_turn = w.r.setting->per_flat = Length{};  // solid, thread not given: nothing is counted
  if (w.in.lifter == Lifter::Solid) return;
  if (!w.in.preload) w.say(remarks::preload_is_half_of_travel(*wanted));
  if (!w.in.travel) w.say(remarks::rounded_to_nearest());
}

// The preload that stands in the engine: counted, else set, else what the fixed rods give.
std::optional<Length> standing_preload(const Working& w) {
  if (w.r.counted) return w.r.counted->preload;
  if (w.r.setting) return w.r.setting->given;
  if (!w.in.preload || w.in.rods != Rods::Fixed) return {};
  return w.r.length_change ? *w.in.preload - *w.r.length_change : *w.in.preload;
}

// ---- margins ----

void remark_margins(Working& w, const Margins& m, Length least) {
  if (m.preload < least - slack) w.say(remarks::margin_top_short(m.preload, least));
  if (!m.to_bottom) return w.say(remarks::margins_not_known());
  if (*m.to_bottom < least - slack) w.say(remarks::margin_bottom_short(*m.to_bottom, least));
  if (*w.in.travel < 2.0 * least - slack) w.say(remarks::travel_too_small_for_margins(*w.in.travel, least));
}

Judgement judge_margins(const Margins& m, const Limit<Length>& limit) {
  const Length known = m.least.value_or(m.preload);
  const bool short_of = known < limit.value - slack;
  Judgement j{m.least ? Verdict::Within : Verdict::NotProven,
              m.least ? "least_margin" : "margin_top",
              limit.value.in_mm(),
              {},
              limit.source,
              ""};
  if (short_of) j.verdict = Verdict::Outside;
  j.reason = short_of ? fmt::format("The plunger has {} to one end, {} is the least", len(known), len(limit.value))
             : m.least
                 ? fmt::format("The plunger keeps {} to its nearer end, {} is the least", len(known), len(limit.value))
                 : "Without the plunger's travel its room to the bottom is not known: enter the travel";
  return j;
}

void add_margins(Working& w, std::optional<Length> preload) {
  if (!preload || w.in.lifter == Lifter::Solid) return;
  Margins m{*preload, {}, {}};
  if (w.in.travel) m.to_bottom = *w.in.travel - *preload;
  if (m.to_bottom) m.least = std::min(m.preload, *m.to_bottom);
  const Limit<Length> limit = least_margin(w.in);
  remark_margins(w, m, limit.value);
  w.judged.push_back(judge_margins(m, limit));
  w.r.margins = m;
}

// ---- heat ----

bool beyond_plunger(const Input& in, Length preload) {
  return preload < -slack || (in.travel && preload > *in.travel + slack);
}

void remark_state(Working& w, std::string_view when, Length preload) {
  const bool solid = w.in.lifter == Lifter::Solid;
  if (preload < -slack) return w.say(remarks::lash_opens(when, -preload, solid));
  if (solid || !w.in.travel) return;
  const Length room = *w.in.travel - preload;
  const Length least = least_margin(w.in).value;
  if (room < -slack) return w.say(remarks::plunger_bottoms(when, -room));
  const Length nearer = std::min(preload, room);
  if (nearer < least - slack) w.say(remarks::hot_margin_short(when, nearer, least));
}

Judgement judge_state(const Input& in, const char* figure, std::string_view when, Length preload) {
  Judgement j{Verdict::Outside, figure, 0.0, {}, Source::owner("plunger travel as entered"), ""};
  if (in.travel) j.upper = in.travel->in_mm();
  j.reason = preload < Length{} ? fmt::format("{} the lash opens by {}", when, len(-preload))
                                : fmt::format("{} the plunger bottoms", when);
  return j;
}

void judge_heat(Working& w, const char* figure, std::string_view when, Length preload) {
  remark_state(w, when, preload);
  if (w.in.lifter == Lifter::Hydraulic && beyond_plunger(w.in, preload))
    w.judged.push_back(judge_state(w.in, figure, when, preload));
}

void add_heat(Working& w, std::optional<Length> preload) {
  if (!w.in.heat) return;
  const Heat& heat = *w.in.heat;
  for (Finding& f : heat_remarks(heat)) w.say(std::move(f));
  if (!preload) return;
  w.r.heat = hot_preload(heat, *preload);
  judge_heat(w, "hot_preload", "Hot", w.r.heat->hot);
  const bool warm = abs(*heat.setting_temperature - heat.cold) > warm_by;
  if (warm) judge_heat(w, "cold_preload", "Cold", w.r.heat->cold);
  if (*heat.setting_temperature - heat.cold > warm_by)
    w.say(remarks::engine_warm_at_setting(*heat.setting_temperature, w.r.heat->cold - *preload));
}

// ---- the rods themselves ----

void add_new_length(Working& w) {
  if (!w.in.new_length) return;
  w.r.length_change = length_change(*w.in.new_length);
  w.say(remarks::new_length(*w.r.length_change));
  if (w.in.rods == Rods::Fixed && w.in.preload)
    w.say(remarks::length_changes_fixed_preload(*w.in.preload - *w.r.length_change));
}

void add_engagement(Working& w) {
  if (!w.in.engagement) return;
  const Engagement& e = *w.in.engagement;
  const Length least = least_engaged(e);
  const bool enough = *e.engaged >= least - slack;
  if (!e.least) w.say(remarks::engagement_rule());
  if (!enough) w.say(remarks::engagement_short(*e.engaged, least));
  w.judged.push_back({enough ? Verdict::Within : Verdict::Outside,
                      "engaged",
                      least.in_mm(),
                      {},
                      engagement_source(e),
                      fmt::format("{} of thread engaged, {} is the least", len(*e.engaged), len(least))});
}

void judge_spare(Working& w, const char* figure, Length spare, const char* enough, const char* not_enough) {
  const bool fits = spare >= -slack;
  w.judged.push_back({fits ? Verdict::Within : Verdict::Outside,
                      figure,
                      0.0,
                      {},
                      Source::owner("lengths as measured"),
                      fits ? enough : not_enough});
}

void add_collapsed(Working& w, std::optional<Length> preload) {
  if (!w.in.collapsed) return;
  const Collapsed& c = *w.in.collapsed;
  if (c.measured_on == MeasuredOn::Lift) w.say(remarks::room_not_on_heel());
  w.say(remarks::tube_in_the_way());
  w.r.collapsed_spare = *c.room - *c.shortest;
  if (*w.r.collapsed_spare < -slack) w.say(remarks::collapsed_too_long(-*w.r.collapsed_spare));
  judge_spare(w, "collapsed_spare", *w.r.collapsed_spare, "The collapsed rod passes between cup and rocker",
              "The collapsed rod does not pass between cup and rocker");
  if (!c.longest) return;
  w.r.longest_spare = *c.longest - (*c.room + preload.value_or(Length{}));
  if (*w.r.longest_spare < -slack) w.say(remarks::longest_too_short(-*w.r.longest_spare));
  judge_spare(w, "longest_spare", *w.r.longest_spare, "The rod reaches, preload included",
              "The rod does not reach, preload included");
}

void add_save_or_cut(Working& w) {
  if (!w.in.save_or_cut) return;
  RodsAdvice advice = save_or_cut(*w.in.save_or_cut);
  w.r.rods_out = advice.way;
  for (Finding& f : advice.reasons) w.say(std::move(f));
}

// ---- crank and release ----

void add_standings(Working& w) {
  const Cylinder first = w.in.first;
  const Cylinder second = first == Cylinder::Front ? Cylinder::Rear : Cylinder::Front;
  const auto rods = [](Cylinder c) {
    return c == Cylinder::Front ? std::array{Rod::FrontExhaust, Rod::FrontIntake}
                                : std::array{Rod::RearIntake, Rod::RearExhaust};
  };
  const Angle forward = forward_from(first, w.in.turning);
  w.r.standings = {Standing{first, rods(first), Angle{}, forward},
                   Standing{second, rods(second), forward, forward_from(second, w.in.turning)}};
  for (std::size_t i = 0; i < w.in.left_to_right.size(); ++i) w.r.picture[i] = *w.in.left_to_right[i].rod;
  w.say(remarks::find_compression_tdc(word_of(first), forward, word_of(second)));
  w.say(remarks::both_on_the_heel());
}

bool is_wet(const Input& in) {
  return in.lifter == Lifter::Hydraulic && (in.rods == Rods::Fixed || way_of(in) == Way::LengthenFromZero);
}

// A rod that spins although its pumped-up lifter has hardly had time to bleed down.
bool spins_early(const Input& in, const RodCheck& c, Duration least_wait) {
  return is_wet(in) && c.since_loaded && *c.since_loaded < least_wait;
}

void remark_rod(Working& w, std::size_t i, Duration least_wait) {
  const RodCheck& c = w.in.checks[i];
  const std::string field = item_path("checks", i);
  const std::string_view rod = word_of(*c.rod);
  const RodState state = w.r.rod_states[static_cast<std::size_t>(*c.rod)];
  if (state == RodState::CheckNow) w.say(remarks::rod_check_now(field, rod));
  if (state == RodState::StillUp) w.say(remarks::rod_still_up(field, rod));
  if (state == RodState::Loose) w.say(remarks::rod_loose(field, rod));
  if (state == RodState::Released && spins_early(w.in, c, least_wait))
    w.say(remarks::rod_spins_early(field, rod, *c.since_loaded, least_wait));
}

void add_release(Working& w) {
  if (w.in.lifter == Lifter::Hydraulic) w.say(remarks::release_rule(is_wet(w.in), w.in.least_wait));
  const Duration least_wait = is_wet(w.in) ? w.in.least_wait : Duration{};
  w.r.rod_states = rod_states(w.in.checks, least_wait);
  w.r.lock = engine_lock(w.r.rod_states);
  for (std::size_t i = 0; i < w.in.checks.size(); ++i) remark_rod(w, i, least_wait);
  if (w.r.lock == EngineLock::Released) w.say(remarks::engine_released());
  if (w.r.lock == EngineLock::Locked || w.r.lock == EngineLock::CheckNow) w.say(remarks::engine_locked());
}

// ---- words at the step ----

Finding way_remark(const Input& in) {
  if (in.rods == Rods::Fixed) return remarks::way_fixed();
  if (in.lifter == Lifter::Solid) return remarks::way_solid();
  if (in.lifter_state == LifterState::Wet) return remarks::way_wet();
  return in.lifter_state == LifterState::Dry ? remarks::way_dry() : remarks::way_not_sure();
}

void add_way(Working& w) {
  w.say(way_remark(w.in));
  if (w.in.rods == Rods::Fixed) return w.say(safety::unloading_rockers());
  if (w.in.lifter_state == LifterState::Wet && w.in.lifter == Lifter::Hydraulic) w.say(remarks::zero_late_if_dry());
  const bool known = w.r.setting && w.r.setting->lengthens;
  w.say(known ? remarks::direction_known(word_of(*w.r.setting->lengthens)) : remarks::direction_unknown());
  w.say(remarks::locknut());
}

void add_safety(Working& w) {
  w.say(safety::stop_felt());
  w.say(safety::let_it_cool());
}

// ---- verdict ----

void hold_back(Judgement& j, const Findings& findings) {
  const Decision decision = decide(j.verdict, j.lower ? Bound::Least : Bound::Most, findings);
  j.verdict = decision.verdict;
  if (decision.doubt) j.reason = because(*decision.doubt);
}

// Of alike verdicts the first.
const Judgement* governing(const std::vector<Judgement>& judged) {
  const auto it = std::min_element(judged.begin(), judged.end(), [](const Judgement& a, const Judgement& b) {
    return weighs_more(a.verdict, b.verdict);
  });
  return it == judged.end() ? nullptr : &*it;
}

void add_verdict(Working& w) {
  for (Judgement& j : w.judged) {
    hold_back(j, w.r.outcome.findings);
    for (Figure& f : w.r.outcome.figures)
      if (f.key == j.figure) f.verdict = j.verdict;
  }
  if (const Judgement* j = governing(w.judged)) w.r.outcome.judgement = *j;
}

void work_out(Working& w) {
  add_setting(w);
  add_counted(w);
  add_new_length(w);
  const std::optional<Length> preload = standing_preload(w);
  add_margins(w, preload);
  if (w.in.travel && *w.in.travel > unusual_travel) w.say(remarks::travel_like_a_height(*w.in.travel, false));
  add_heat(w, preload);
  add_engagement(w);
  add_collapsed(w, preload);
  add_save_or_cut(w);
  add_way(w);
  add_standings(w);
  add_release(w);
  add_safety(w);
}

}  // namespace

std::string_view word_of(Sense sense) {
  return sense == Sense::Clockwise ? "clockwise" : "counterclockwise";
}

// Seen from behind the turning part a right-hand thread goes in clockwise. An adjuster at the lower end is seen from
// above the other way round.
Sense lengthening_sense(Hand hand, AdjusterEnd end) {
  const bool clockwise = (hand == Hand::Right) == (end == AdjusterEnd::Lower);
  return clockwise ? Sense::Clockwise : Sense::CounterClockwise;
}

Angle forward_from(Cylinder cylinder, Turning turning) {
  const bool front_with = (cylinder == Cylinder::Front) == (turning == Turning::WithWheels);
  return front_with ? first_interval : second_interval;
}

tl::expected<Result, Findings> solve(const Input& input) {
  Findings refused = refusals(input);
  if (any_refusal(refused)) return tl::make_unexpected(std::move(refused));
  Result result;
  Working w{input, result, {}};
  work_out(w);
  add_figures(input, result, result.outcome);
  add_working(input, result, result.outcome);
  add_verdict(w);
  return result;
}

}  // namespace camside::pushrod
