#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "calc/look_over/look_over.hpp"
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
  if (const Drive* drive = drive_of(in.known, r.drive)) {
    const bool said = !in.drive.empty() && in.drive != drive_not_known;
    names += fmt::format("\nCams turned by: {}{}", drive->name, said ? "" : ", taken as so and not seen");
  }
  return names;
}

std::string touched_text(Touched touched) {
  switch (touched) {
    case Touched::Cold:
      return "Engine touched first: stone cold";
    case Touched::Warm:
      return "Engine touched first: warm, so a good start proves nothing";
    case Touched::Not:
      break;
  }
  return "Engine not touched first, so a good start proves nothing";
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
  for (const Found& f : r.must_do)
    out += fmt::format("  {}: {} ({})\n", f.name, rough_range({f.cost.low, {}, f.cost.high}), f.why_must);
  return out.empty() ? out : "Must do anyway\n" + out;
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
  std::string out = in_one_sentence(in, r) + "\n";
  if (walk_away_met(r)) return out;
  out += "Engine work: " + likely_range(in, r.knock_off) + "\n";
  if (!r.offer) out += fmt::format("No offer: {}\n", why_no_offer(in, r));
  if (r.offer) out += "The asking price is taken as a sound bike's\n";
  return out;
}

// As rough_text() shows it.
double rounded(Money m) {
  const double amount = m.in_amount();
  return std::abs(amount) < 100.0 ? std::round(amount) : 10.0 * std::round(amount / 10.0);
}

// "Tensioner shoes, sprung" in a list: "tensioner shoes".
std::string short_name(std::string name) {
  name = name.substr(0, name.find_first_of(",:"));
  if (!name.empty() && name.front() >= 'A' && name.front() <= 'Z') name.front() = static_cast<char>(name.front() + 32);
  return name;
}

struct Parts {
  std::string text;  // "tensioner shoes 490, inner cam bearings 220, the rest 450"
  double sum = 0.0;
};

// Each rounded by itself, and their sum is the sum shown.
Parts parts_of(const Result& r) {
  constexpr std::size_t most_named = 3;
  Parts parts;
  double rest = 0.0;
  std::size_t named = 0;
  for (const Found& f : r.must_do) {
    const double part = rounded(f.expected);
    parts.sum += part;
    if (++named > most_named)
      rest += part;
    else
      parts.text = joined(parts.text, short_name(f.name) + " " + money_text(Money::amount(part)), ", ");
  }
  Money may;
  for (const Found& f : r.may_find) may = may + f.expected;
  parts.sum += rounded(may);
  rest += rounded(may);
  const std::string what = parts.text.empty() ? "all by chance " : "the rest ";
  if (rest > 0.0) parts.text = joined(parts.text, what + money_text(Money::amount(rest)), ", ");
  return parts;
}

std::string look_lines(const Result& r) {
  if (r.looks.empty()) return "";
  const Look& l = r.looks.front();
  std::string out = "Look at this next\n  " + l.text + "\n";
  if (!l.say.empty()) out += fmt::format("  Say: \"{}\"\n", l.say);
  return out;
}

bool made_up(const std::vector<Found>& list) {
  return std::any_of(list.begin(), list.end(), [](const Found& f) { return f.placeholder; });
}

std::string names_in_short(const std::vector<Found>& list) {
  std::string names;
  for (const Found& f : list) names = joined(names, short_name(f.name), ", ");
  return names;
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

std::string with_currency(const std::string& sum, const std::string& currency) {
  if (currency.empty()) return sum;
  const bool before = currency == "$" || currency == "£" || currency == "¥";
  return before ? currency + sum : sum + " " + currency;
}

bool prices_rest_on_nobody(const Result& r) {
  const auto is = [](const Found& f) { return f.placeholder; };
  return std::any_of(r.must_do.begin(), r.must_do.end(), is) || std::any_of(r.may_find.begin(), r.may_find.end(), is);
}

Money sum_shown(const Result& r) {
  return Money::amount(parts_of(r).sum);
}

std::string likely_range(const Input& in, const Span& s) {
  return "likely range, rough guess: " + with_currency(rough_range(s), in.currency);
}

std::string in_one_sentence(const Input& in, const Result& r) {
  if (walk_away_met(r)) return "Walk away: " + r.walk_away.front().why;
  const Parts parts = parts_of(r);
  const std::string why = parts.text.empty() ? "" : ": " + parts.text;
  const auto shown = [&](const std::string& sum) { return with_currency(sum, in.currency); };
  if (made_up(r.must_do)) return "Must do anyway: " + names_in_short(r.must_do);  // no figure that is nobody's
  if (!r.offer) return "Engine work " + shown(money_text(Money::amount(parts.sum))) + why;
  if (r.may_end_it > 0)
    return fmt::format("Offer {}, once {} that can end it {} looked at{}", shown(rough_range(*r.offer)),
                       r.may_end_it == 1 ? "1 point" : fmt::format("{} points", r.may_end_it),
                       r.may_end_it == 1 ? "is" : "are", why);
  const double offer = std::max(0.0, in.asking->in_amount() - parts.sum);
  return "Offer " + shown(money_text(Money::amount(offer))) + why;
}

std::vector<std::string> told_by(const Input& in, const Result& r, std::string_view question) {
  std::vector<std::string> names;
  for (const auto* list : {&r.must_do, &r.may_find, &r.elsewhere})
    for (const Found& f : *list)
      if (tells(*risk_of(in.known, f.risk), question)) names.push_back(f.name);
  return names;
}

std::string bike_text(const Input& in) {
  std::string text = in.year ? std::to_string(*in.year) : std::string("year not known");
  text += in.odometer ? " · " + remarks::miles_and_km(*in.odometer) : std::string(" · odometer not known");
  if (in.asking) text += " · asking " + with_currency(money_text(*in.asking), in.currency);
  return text;
}

bool walk_away_met(const Result& r) {
  return !r.walk_away.empty() && r.walk_away.front().met == Met::Met;
}

std::string why_no_offer(const Input& in, const Result& r) {
  if (r.offer) return "";
  if (walk_away_met(r)) return "walk away, no price makes up for it";
  if (!in.asking) return "the asking price is missing";
  return "the prices of what must be done are made up until you enter yours";
}

std::string summary(const Input& in, const Result& r) {
  std::string out = bike_text(in) + "\n" + engine_lines(in, r) + "\n" + touched_text(in.touched) + "\n\n";
  out += money_lines(in, r);
  if (prices_rest_on_nobody(r)) out += "Prices in it are made up, not the buyer's own\n";
  for (const std::string& part : {walk_lines(r), must_lines(r), may_lines(r), look_lines(r)}) {
    if (!part.empty()) out += "\n" + part;
  }
  return out;
}

}  // namespace camside::look_over
