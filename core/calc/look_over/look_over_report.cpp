#include "calc/look_over/look_over_report.hpp"

#include <fmt/format.h>

#include <algorithm>
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
  out.figures.back().text = rough_text(s.middle) + " (" + rough_range(s) + " for nine in ten)";
  out.figures.push_back(money(key + "_low", label + ", least", s.low));
  out.figures.push_back(money(key + "_high", label + ", most", s.high));
}

Money sum_of(const std::vector<Found>& list) {
  Money sum;
  for (const Found& f : list) sum = sum + f.expected;
  return sum;
}

bool on_placeholders(const Result& r) {
  const auto any = [](const std::vector<Found>& list) {
    for (const Found& f : list) {
      if (f.placeholder) return true;
    }
    return false;
  };
  return any(r.must_do) || any(r.may_find);
}

const Risk& risk_of(const Input& in, const std::string& id) {
  std::size_t i = 0;
  while (in.known.risks[i].id != id) ++i;
  return in.known.risks[i];
}

bool replaced(const Input& in, const std::string& risk) {
  for (const OwnCost& c : in.costs) {
    if (c.risk == risk) return true;
  }
  return false;
}

std::string cost_text(const Input& in, const Found& f) {
  const std::string source = replaced(in, f.risk) ? "your figures" : risk_of(in, f.risk).cost.source->text();
  return fmt::format("({} + 4 · {} + {})/6, {}{}", money_text(f.cost.low), money_text(f.cost.middle),
                     money_text(f.cost.high), source, f.placeholder ? ", placeholder" : "");
}

std::string names_of(const Model& m, const Counted& c, const Evidence& evidence, Seen seen) {
  std::string names;
  for (const Link& l : c.links) {
    const Question& q = m.book->questions[l.question];
    if (by_distance_since(c, evidence) && l.question == *c.proof) continue;
    const bool moves = evidence[l.question] == seen && !(seen == Seen::Good && q.silence);
    if (moves) names += (names.empty() ? "" : "; ") + q.text;
  }
  return names;
}

void add_risk_steps(const Input& in, const std::vector<Found>& list, Outcome& out) {
  for (const Found& f : list) {
    if (f.must)
      out.working.push_back({f.name + ", must be done anyway", "cost = (best + 4 · likely + worst)/6", cost_text(in, f),
                             money_text(f.expected)});
    else
      out.working.push_back({f.name, "p/(1 − p) = p0/(1 − p0) · L1 · L2 …; p · (best + 4 · likely + worst)/6",
                             f.chance_from + "; " + cost_text(in, f),
                             fmt::format("p = {}, {}", percent(f.chance), money_text(f.expected))});
  }
}

std::string range_text(const Span& s) {
  return fmt::format("{} to {}", money_text(s.low), money_text(s.high));
}

void add_sum_steps(const Input& in, const Result& r, Outcome& out) {
  out.working.push_back({"Knock off", "must do anyway + Σ chance · cost",
                         fmt::format("{} + {}", money_text(sum_of(r.must_do)), money_text(sum_of(r.may_find))),
                         money_text(r.knock_off.middle)});
  out.working.push_back({"Its range, nine bikes in ten",
                         "each fault by its chance, each by itself; best, likely, worst weigh 1, 4, 1",
                         r.engines.size() > 1 ? "over all engines it can be" : "", range_text(r.knock_off)});
  if (!r.looks.empty())
    out.working.push_back({"Once all was seen", "knock off with all that was not seen good, and with all of it bad", "",
                           range_text(r.once_seen)});
  if (!r.offer) return;
  out.working.push_back({"Offer", "asking price − knock off, not below nothing",
                         fmt::format("{} − {}", money_text(*in.asking), money_text(r.knock_off.middle)),
                         fmt::format("{}, {}", money_text(r.offer->middle), range_text(*r.offer))});
}

void add_look_steps(const Result& r, Outcome& out) {
  for (const Look& l : r.looks)
    out.working.push_back({"Value of looking: " + l.text,
                           "3.29 · (d − √(d² − P(bad) · P(good) · (mean if bad − mean if good)²))",
                           fmt::format("P(bad) = {}; knock off {} if good, {} if bad", percent(l.chance_bad),
                                       money_text(l.if_good), money_text(l.if_bad)),
                           fmt::format("narrows by {}", money_text(l.narrows))});
}

// The rest are drawn, not listed.
constexpr std::size_t most_swings = 5;

void add_swing_steps(const Result& r, Outcome& out) {
  for (std::size_t i = 0; i < std::min(most_swings, r.swings.size()); ++i) {
    const Swing& s = r.swings[i];
    out.working.push_back({fmt::format("Moves the sum, {}: {}", word_of(s.of), s.text),
                           "knock off with this alone changed", "",
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
  std::string text = fmt::format("{} at {}, {}", percent(first), age, c.chance_source->text());
  const std::string raised = names_of(m, c, evidence, Seen::Bad);
  const std::string lowered = names_of(m, c, evidence, Seen::Good);
  if (!raised.empty()) text += "; raised by: " + raised;
  if (!lowered.empty()) text += "; lowered by: " + lowered;
  return text;
}

void add_figures(Result& r) {
  Outcome& out = r.outcome;
  const std::string doubtful = on_placeholders(r) ? ", by placeholder money" : "";
  if (r.offer) add_span("offer", "Fair offer", *r.offer, out);
  add_span("knock_off", "Knock off" + doubtful, r.knock_off, out);
  out.figures.push_back(money("must_do", "Must do anyway" + doubtful, sum_of(r.must_do)));
  out.figures.push_back(money("may_find", "May find, by chance" + doubtful, sum_of(r.may_find)));
  if (r.looks.empty()) return;
  Figure next = money("look_next", "Look at this next", r.looks.front().narrows);
  next.text = r.looks.front().text;
  out.figures.push_back(std::move(next));
}

void add_working(const Input& in, Result& r) {
  add_risk_steps(in, r.must_do, r.outcome);
  add_risk_steps(in, r.may_find, r.outcome);
  add_sum_steps(in, r, r.outcome);
  add_look_steps(r, r.outcome);
  add_swing_steps(r, r.outcome);
}

}  // namespace camside::look_over
