#include "calc/backlash/backlash_verdict.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "calc/backlash/backlash_remarks.hpp"
#include "findings/decision.hpp"
#include "findings/remark.hpp"

namespace camside::backlash {

namespace {

using lash_temperature::State;

constexpr double decision_slack = 1e-9;  // 20.050 − 0.015 is 20.035

constexpr std::array<const char*, 4> lowest_keys{"lowest", "cold_lowest", "warm_up_lowest", "hot_lowest"};
constexpr std::array<const char*, 4> highest_keys{"highest", "cold_highest", "warm_up_highest", "hot_highest"};

std::size_t index_of(State s) {
  return static_cast<std::size_t>(s);
}

void check_limits(const std::string& path, const std::optional<Length>& min, const std::optional<Length>& max,
                  Findings& out) {
  if (!min && !max) {
    out.push_back(remarks::window_empty(path));
  }
  if (min && max && *min > *max) {
    out.push_back(remarks::window_upside_down(path, *min, *max));
  }
}

// ---- method ----

// One item on which sheet and reading can differ: its words for both sides, empty when not said.
struct Item {
  std::string what;
  std::string sheet;
  std::string own;
};

std::string word(const std::optional<Place>& p) {
  if (!p) {
    return "";
  }
  return *p == Place::InCase ? "in the engine" : "on the bench";
}
std::string word(const std::optional<bool>& torqued) {
  if (!torqued) {
    return "";
  }
  return *torqued ? "plate torqued" : "plate not torqued";
}
std::string word(const std::optional<Engine>& e) {
  if (!e) {
    return "";
  }
  return *e == Engine::Cold ? "cold" : "hot";
}
std::string word(const std::optional<Spots>& s) {
  if (!s) {
    return "";
  }
  return *s == Spots::OneSpot ? "at one spot" : "round the turn";
}
std::string word(const std::optional<Line>& l) {
  if (!l) {
    return "";
  }
  return *l == Line::PitchLine ? "along the pitch line" : "square to the flank";
}

std::vector<Item> items(const Input& in, bool one_spot) {
  const WindowMethod& sheet = in.window->method;
  const auto place = in.access == Access::Bench ? std::optional(Place::OnBench) : in.method.place;
  const auto spots = std::optional(one_spot ? Spots::OneSpot : Spots::RoundTheTurn);
  return {{"where", word(sheet.place), word(place)},
          {"plate", word(sheet.plate_torqued), word(in.method.plate_torqued)},
          {"engine cold or hot", word(sheet.engine), word(in.method.engine)},
          {"spots", word(sheet.spots), word(spots)},
          {"line", word(sheet.line), word(std::optional(Line::PitchLine))}};
}

// ---- gates ----

// One limit against one end of the lash.
struct Gate {
  State state = State::AsMeasured;
  bool low = true;
  double lash_mm = 0.0;
  double guarded_mm = 0.0;  // g · U
  double limit_mm = 0.0;
  std::optional<Length> min;
  std::optional<Length> max;
  Source source = Source::memory();
  Verdict verdict = Verdict::NotProven;
  std::string reason;

  // How far the lash stands inside the limit, negative when outside.
  double margin_mm() const { return low ? lash_mm - limit_mm : limit_mm - lash_mm; }
  std::string key() const { return low ? lowest_key(state) : highest_key(state); }
};

void add_gates(std::vector<Gate>& gates, const StateLash& lash, double guard, const StateWindow& w) {
  Gate gate{.state = lash.state, .min = w.min, .max = w.max, .source = *w.source, .reason = {}};
  if (w.min) {
    gate.low = true;
    gate.lash_mm = lash.lowest.in_mm();
    gate.guarded_mm = guard * lash.lowest_uncertainty.in_mm();
    gate.limit_mm = w.min->in_mm();
    gates.push_back(gate);
  }
  if (w.max) {
    gate.low = false;
    gate.lash_mm = lash.highest.in_mm();
    gate.guarded_mm = guard * lash.highest_uncertainty.in_mm();
    gate.limit_mm = w.max->in_mm();
    gates.push_back(gate);
  }
}

std::vector<Gate> gates_of(const Input& in, const Result& r) {
  std::vector<Gate> gates;
  if (in.window) {
    const Window& w = *in.window;
    add_gates(gates, r.states[0], in.guard, {State::AsMeasured, w.min, w.max, w.source});
  }
  for (const StateWindow& w : in.state_windows) {
    add_gates(gates, r.states[index_of(*w.state)], in.guard, w);
  }
  return gates;
}

std::string in_state(const Gate& g) {
  return g.state == State::AsMeasured ? "" : fmt::format(" ({})", lash_temperature::word_of(g.state));
}

std::string text_of(const Gate& g, const char* comparison) {
  return fmt::format("{} lash{} {} ± {} is {} {} {}", g.low ? "Lowest" : "Highest", in_state(g),
                     remarks::inch_and_mm(Length::mm(g.lash_mm)), remarks::inch_and_mm(Length::mm(g.guarded_mm)),
                     comparison, g.low ? "the least allowed," : "the most allowed,",
                     remarks::inch_and_mm(Length::mm(g.limit_mm)));
}

void decide(Gate& g, const Findings& findings) {
  const Bound bound = g.low ? Bound::Least : Bound::Most;
  const Decision decision = camside::decide(bound, measured(g.lash_mm, g.guarded_mm), g.limit_mm, findings);
  g.verdict = decision.verdict;
  if (decision.doubt) {
    g.reason = because(*decision.doubt);
    return;
  }
  if (g.verdict == Verdict::Within) {
    g.reason = text_of(g, "proven inside");
  }
  if (g.verdict == Verdict::Outside) {
    g.reason = text_of(g, "proven beyond");
  }
  if (g.verdict == Verdict::NotProven) {
    g.reason = text_of(g, "too near to tell from") + ". A finer indicator, more positions or less play narrows ±";
  }
}

// Outside first, then Not proven, then Within; among alike the one nearest to its limit or farthest beyond it.
bool nearer_or_beyond(const Gate& a, const Gate& b) {
  if (a.verdict != b.verdict) {
    return weighs_more(a.verdict, b.verdict);
  }
  return a.margin_mm() - a.guarded_mm < b.margin_mm() - b.guarded_mm;
}

void mark_figure(Outcome& outcome, const Gate& g) {
  for (Figure& f : outcome.figures) {
    const bool worse = !f.verdict || weighs_more(g.verdict, *f.verdict);
    if (f.key == g.key() && worse) {
      f.verdict = g.verdict;
    }
  }
}

std::optional<double> mm_of(const std::optional<Length>& v) {
  if (!v) {
    return std::nullopt;
  }
  return v->in_mm();
}

void caution_outside(const Gate& g, Findings& out) {
  if (g.verdict != Verdict::Outside) {
    return;
  }
  if (g.low && !has(out, 1258)) {
    out.push_back(remarks::too_tight());
  }
  if (!g.low && !has(out, 1259)) {
    out.push_back(remarks::too_loose());
  }
}

std::string in_words(const std::optional<Length>& v, double factor) {
  return v ? remarks::inch_and_mm(factor * *v) : "any";
}

}  // namespace

const char* lowest_key(State s) {
  return lowest_keys[index_of(s)];
}

const char* highest_key(State s) {
  return highest_keys[index_of(s)];
}

void check_windows(const Input& in, Findings& out) {
  if (in.window) {
    check_limits("window", in.window->min, in.window->max, out);
  }
  for (std::size_t i = 0; i < in.state_windows.size(); ++i) {
    check_limits(fmt::format("state_windows[{}]", i), in.state_windows[i].min, in.state_windows[i].max, out);
  }
}

void check_method(const Input& in, bool one_spot, Findings& out) {
  if (!in.window) {
    return;
  }
  std::vector<std::string> differences;
  std::vector<std::string> not_said;
  bool sheet_says_something = false;
  for (const Item& i : items(in, one_spot)) {
    if (i.sheet.empty()) {
      continue;
    }
    sheet_says_something = true;
    if (i.own.empty()) {
      not_said.push_back(i.what + " (the sheet: " + i.sheet + ")");
    }
    if (!i.own.empty() && i.own != i.sheet) {
      differences.push_back("read " + i.own + ", meant " + i.sheet);
    }
  }
  if (!sheet_says_something) {
    out.push_back(remarks::window_method_unknown());
  }
  if (!differences.empty()) {
    out.push_back(remarks::window_for_another_method(differences));
  }
  if (!not_said.empty()) {
    out.push_back(remarks::own_method_not_said(not_said));
  }
}

void check_line(const Input& in, const gear_pair::Frame& f, Findings& out) {
  if (!in.window || in.window->method.line != Line::SquareToFlank) {
    return;
  }
  const double per_normal = 1.0 / (std::cos(f.operating_angle_rad) * std::cos(f.gear1.helix_b_rad));
  out.push_back(remarks::window_along_the_flank(
      fmt::format("{} to {}", in_words(in.window->min, per_normal), in_words(in.window->max, per_normal))));
}

void check_width(const Input& in, const Result& r, Findings& out) {
  if (!in.window || !in.window->min || !in.window->max) {
    return;
  }
  const Length width = *in.window->max - *in.window->min;
  const Length taken = in.guard * (r.lowest.uncertainty + r.highest.uncertainty);
  if (taken.in_mm() > width.in_mm() + decision_slack) {
    out.push_back(remarks::window_narrower_than_proof(width, taken));
  }
}

void judge(const Input& in, Result& r) {
  std::vector<Gate> gates = gates_of(in, r);
  if (gates.empty()) {
    return;
  }
  for (Gate& g : gates) {
    decide(g, r.outcome.findings);
  }
  for (const Gate& g : gates) {
    mark_figure(r.outcome, g);
    caution_outside(g, r.outcome.findings);
  }
  const Gate& first = *std::min_element(gates.begin(), gates.end(), nearer_or_beyond);
  r.outcome.judgement =
      Judgement{first.verdict, first.key(), mm_of(first.min), mm_of(first.max), first.source, first.reason};
}

void judge_by_feel(const Input& in, Result& r) {
  r.outcome.findings.push_back(remarks::read_by_feel());
  if (!in.window) {
    return;
  }
  const Finding& why = r.outcome.findings.back();
  r.outcome.judgement = Judgement{Verdict::NotProven, "feel",      mm_of(in.window->min), mm_of(in.window->max),
                                  *in.window->source, because(why)};
}

}  // namespace camside::backlash
