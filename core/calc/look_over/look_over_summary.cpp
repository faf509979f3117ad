#include "calc/look_over/look_over.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "findings/remark.hpp"

namespace camside::look_over {

namespace {

std::string joined(const std::string& before, const std::string& more, std::string_view between) {
  return before.empty() ? more : before + std::string(between) + more;
}

std::string engine_lines(const Input& in, const Result& r) {
  std::string names;
  for (const Engine& e : in.known.engines) {
    if (std::find(r.engines.begin(), r.engines.end(), e.id) != r.engines.end()) names = joined(names, e.name, "; or ");
  }
  return names;
}

std::string touched_text(Touched touched) {
  switch (touched) {
    case Touched::Cold:
      return "Engine touched first: stone cold";
    case Touched::Warm:
      return "Engine touched first: warm, so the cold start does not count";
    case Touched::Not:
      break;
  }
  return "Engine not touched first, so the cold start does not count";
}

std::string walk_lines(const Result& r) {
  std::string out;
  for (const Met met : {Met::Met, Met::NotSeen, Met::NotMet}) {
    for (const WalkAway& w : r.walk_away) {
      if (w.met == met) out += fmt::format("  {}: {}\n", met == Met::Met ? "MET" : word_of(met), w.why);
    }
  }
  return out.empty() ? out : "Walk away if\n" + out;
}

std::string must_lines(const Result& r) {
  std::string out;
  for (const Found& f : r.must_do) out += fmt::format("  {}: {}\n", f.name, rough_range({f.cost.low, {}, f.cost.high}));
  return out.empty() ? out : "Must do anyway (seen bad, or no proof that it was done)\n" + out;
}

std::string may_lines(const Result& r) {
  std::string out;
  for (const Likelihood l : {Likelihood::Likely, Likelihood::MayBe}) {
    for (const Found& f : r.may_find) {
      if (f.likelihood == l)
        out += fmt::format("  {}: {}, {}\n", word_of(l), f.name, rough_range({f.cost.low, {}, f.cost.high}));
    }
  }
  std::string seldom;
  for (const Found& f : r.may_find) {
    if (f.likelihood == Likelihood::Seldom) seldom = joined(seldom, f.name, "; ");
  }
  if (!seldom.empty()) out += fmt::format("  {}: {}\n", word_of(Likelihood::Seldom), seldom);
  return out.empty() ? out : "May find\n" + out;
}

std::string money_lines(const Input& in, const Result& r) {
  std::string out = fmt::format("Knock off {} ({} for nine bikes in ten like it)\n", rough_text(r.knock_off.middle),
                                rough_range(r.knock_off));
  if (r.offer)
    out += fmt::format("Fair offer {} ({} likewise)\n", rough_text(r.offer->middle), rough_range(*r.offer));
  else
    out += fmt::format("No offer: {}\n", why_no_offer(in, r));
  return out;
}

std::string look_lines(const Result& r) {
  if (r.looks.empty()) return "";
  const Look& l = r.looks.front();
  std::string out = "Look at this next\n  " + l.text + "\n";
  if (!l.say.empty()) out += fmt::format("  Say: \"{}\"\n", l.say);
  return out;
}

bool any_placeholder(const Result& r) {
  const auto is = [](const Found& f) { return f.placeholder; };
  return std::any_of(r.must_do.begin(), r.must_do.end(), is) || std::any_of(r.may_find.begin(), r.may_find.end(), is);
}

}  // namespace

std::string money_text(Money m) {
  std::string digits = fmt::format("{:.0f}", m.in_amount());
  const std::size_t first = digits.front() == '-' ? 1 : 0;
  for (std::size_t at = digits.size(); at > first + 3;) digits.insert(at -= 3, ",");
  return digits;
}

std::string rough_text(Money m) {
  const double amount = m.in_amount();
  return money_text(std::abs(amount) < 100.0 ? m : Money::amount(10.0 * std::round(amount / 10.0)));
}

std::string rough_range(const Span& s) {
  return fmt::format("{} to {}", rough_text(s.low), rough_text(s.high));
}

std::string bike_text(const Input& in) {
  std::string text = in.year ? std::to_string(*in.year) : std::string("year not known");
  text += in.odometer ? " · " + remarks::miles_and_km(*in.odometer) : std::string(" · odometer not known");
  if (in.asking) text += " · asking " + money_text(*in.asking);
  return text;
}

bool walk_away_met(const Result& r) {
  return !r.walk_away.empty() && r.walk_away.front().met == Met::Met;
}

std::string why_no_offer(const Input& in, const Result& r) {
  if (r.offer) return "";
  if (walk_away_met(r)) return "walk away, no price makes up for it";
  if (!in.asking) return "the asking price is missing";
  return "the prices are placeholders until you make them yours";
}

std::string summary(const Input& in, const Result& r) {
  std::string out = bike_text(in) + "\n" + engine_lines(in, r) + "\n" + touched_text(in.touched) + "\n\n";
  out += money_lines(in, r);
  if (any_placeholder(r)) out += "The sums rest on placeholder prices, nobody's figures\n";
  for (const std::string& part : {walk_lines(r), must_lines(r), may_lines(r), look_lines(r)}) {
    if (!part.empty()) out += "\n" + part;
  }
  return out;
}

}  // namespace camside::look_over
