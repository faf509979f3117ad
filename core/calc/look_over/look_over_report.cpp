#include "calc/look_over/look_over_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "calc/look_over/look_over.hpp"
#include "findings/outcome_writer.hpp"
#include "findings/remark.hpp"

namespace camside::look_over {

namespace {

using figures::money;

using remarks::miles_and_km;

void add_span(const std::string& key, const std::string& label, const Span& s, Outcome& out) {
  out.figures.push_back(money(key, label, s.middle));
  out.figures.back().text = rough_text(s.middle) + " (likely range, rough guess: " + rough_range(s) + ")";
  out.figures.push_back(money(key + "_low", label + ", least", s.low));
  out.figures.push_back(money(key + "_high", label + ", most", s.high));
}

Money sum_of(const std::vector<Found>& list) {
  Money sum;
  for (const Found& f : list) sum = sum + f.expected;
  return sum;
}

bool replaced(const Input& in, const std::string& risk) {
  for (const OwnCost& c : in.costs) {
    if (c.risk == risk) return true;
  }
  return false;
}

std::string cost_text(const Input& in, const Found& f) {
  const std::string source = replaced(in, f.risk) ? "your figures" : risk_of(in.known, f.risk)->cost.source->text();
  return fmt::format("({} + 4 · {} + {})/6, {}{}", money_text(f.cost.low), money_text(f.cost.middle),
                     money_text(f.cost.high), source, f.placeholder ? ", made up" : "");
}

// Each answer that moves the odds, with its factor: "“Is it wet at the boxes?” × 8.2".
std::string factors_of(const Model& m, const Counted& c, const Evidence& evidence) {
  std::string text;
  for (const Link& l : c.links) {
    const Question& q = m.book->questions[l.question];
    if (by_distance_since(c, evidence) && l.question == *c.proof) continue;
    const double factor = likelihood_ratio(q, l.shows, evidence[l.question]);
    if (factor != 1.0) text += fmt::format("; “{}” × {:.2g}", q.text, factor);
  }
  return text;
}

// Whole sums that add up to the whole sum of all.
std::vector<Money> whole_parts(const std::vector<const Found*>& parts) {
  std::vector<Money> whole;
  double sum = 0.0;
  double told = 0.0;
  for (const Found* f : parts) {
    sum += f->expected.in_amount();
    const double part = std::round(sum) - told;
    told += part;
    whole.push_back(Money::amount(part));
  }
  return whole;
}

std::vector<const Found*> all_of(const Result& r) {
  std::vector<const Found*> all;
  for (const auto* list : {&r.must_do, &r.may_find})
    for (const Found& f : *list) all.push_back(&f);
  return all;
}

void add_risk_step(const Input& in, const Found& f, Money adds, Outcome& out) {
  if (f.must)
    out.working.push_back({f.name + ", work for certain: " + f.why_must, "cost = (best + 4 · likely + worst)/6",
                           cost_text(in, f), money_text(adds)});
  else
    out.working.push_back({f.name, "odds p/(1 − p) × the factor of each answer; p · (best + 4 · likely + worst)/6",
                           f.chance_from + "; " + cost_text(in, f),
                           fmt::format("p = {}, {}", percent(f.chance), money_text(adds))});
}

std::string added_up(const std::vector<Money>& parts) {
  std::string text;
  for (const Money part : parts) text += (text.empty() ? "" : " + ") + money_text(part);
  return text;
}

std::string range_text(const Span& s) {
  return fmt::format("{} to {}", money_text(s.low), money_text(s.high));
}

// Faults really come true or not, so all bad is no less than the top of the range, and all good no more than its foot.
Span all_good_to_all_bad(const Result& r) {
  return {std::min(r.once_seen.low, r.knock_off.low), r.once_seen.middle, std::max(r.once_seen.high, r.knock_off.high)};
}

void add_sum_steps(const Input& in, const Result& r, const std::vector<Money>& parts, Outcome& out) {
  out.working.push_back({"Engine work", "all of the above added up", added_up(parts), money_text(r.knock_off.middle)});
  out.working.push_back({"Likely range, rough guess",
                         "each fault by its chance, each by itself; best, likely, worst weigh 1, 4, 1",
                         r.engines.size() > 1 ? "over all engines it can be" : "", range_text(r.knock_off)});
  if (!r.looks.empty())
    out.working.push_back({"Once all was seen", "engine work with all that was not seen good, and with all of it bad",
                           "", range_text(all_good_to_all_bad(r))});
  if (!r.offer) return;
  out.working.push_back({"Offer by your figures", "asking price − engine work, not below nothing",
                         fmt::format("{} − {}", money_text(*in.asking), money_text(r.knock_off.middle)),
                         fmt::format("{}, {}", money_text(r.offer->middle), range_text(*r.offer))});
}

void add_look_steps(const Result& r, Outcome& out) {
  for (const Look& l : r.looks)
    out.working.push_back({"Value of looking: " + l.text,
                           "3.29 · (d − √(d² − P(bad) · P(good) · (mean if bad − mean if good)²))",
                           fmt::format("P(bad) = {}; engine work {} if good, {} if bad", percent(l.chance_bad),
                                       money_text(l.if_good), money_text(l.if_bad)),
                           fmt::format("narrows by {}", money_text(l.narrows))});
}

// The rest are drawn, not listed.
constexpr std::size_t most_swings = 5;

void add_swing_steps(const Result& r, Outcome& out) {
  for (std::size_t i = 0; i < std::min(most_swings, r.swings.size()); ++i) {
    const Swing& s = r.swings[i];
    out.working.push_back({fmt::format("Moves the sum, {}: {}", word_of(s.of), s.text),
                           "engine work with this alone changed", "",
                           fmt::format("{} to {}", money_text(s.low), money_text(s.high))});
  }
}

}  // namespace

std::string percent(double chance) {
  if (chance > 0.99) return "over 99 %";
  return chance < 0.1 ? fmt::format("{:.2g} %", 100.0 * chance) : fmt::format("{:.0f} %", 100.0 * chance);
}

std::string chance_from(const Model& m, const Counted& c, const Input& in, const Evidence& evidence) {
  const bool since = by_distance_since(c, evidence);
  const std::string age = since         ? miles_and_km(*distance_since(in, c.risk->proof)) + " since it was done"
                          : in.odometer ? miles_and_km(*in.odometer)
                                        : std::string("an unknown odometer");
  const double first = since ? *c.since : c.prior;
  return fmt::format("{} at {}, {}", percent(first), age, c.chance_source->text()) + factors_of(m, c, evidence);
}

void add_figures(Result& r) {
  Outcome& out = r.outcome;
  const std::string doubtful = prices_rest_on_nobody(r) ? ", by made-up prices" : "";
  if (r.offer) add_span("offer", "Offer by your figures", *r.offer, out);
  add_span("knock_off", "Engine work" + doubtful, r.knock_off, out);
  out.figures.push_back(money("must_do", "Must do anyway" + doubtful, sum_of(r.must_do)));
  out.figures.push_back(money("may_find", "May find, by chance" + doubtful, sum_of(r.may_find)));
  if (r.looks.empty()) return;
  Figure next = money("look_next", "Look at this next", r.looks.front().narrows);
  next.text = r.looks.front().text;
  out.figures.push_back(std::move(next));
}

void add_working(const Input& in, Result& r) {
  const std::vector<const Found*> all = all_of(r);
  const std::vector<Money> parts = whole_parts(all);
  for (std::size_t i = 0; i < all.size(); ++i) add_risk_step(in, *all[i], parts[i], r.outcome);
  add_sum_steps(in, r, parts, r.outcome);
  add_look_steps(r, r.outcome);
  add_swing_steps(r, r.outcome);
}

}  // namespace camside::look_over
