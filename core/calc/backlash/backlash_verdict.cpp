#include "calc/backlash/backlash_verdict.hpp"

#include <algorithm>

namespace camside::backlash {

namespace {

using lash_temperature::State;

void add_gates(std::vector<Gate>& gates, const StateLash& lash, double guard, const StateWindow& w) {
  Gate gate{.state = lash.state, .min = w.min, .max = w.max, .source = *w.source, .doubt = {}};
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

std::vector<Gate> all_gates(const Input& in, const Result& r) {
  std::vector<Gate> gates;
  if (in.window) {
    const Window& w = *in.window;
    add_gates(gates, r.states[0], in.guard, {State::AsMeasured, w.min, w.max, w.source});
  }
  for (const StateWindow& w : in.state_windows) {
    add_gates(gates, r.states[static_cast<std::size_t>(*w.state)], in.guard, w);
  }
  return gates;
}

void decide(Gate& g, const Findings& findings) {
  const Bound bound = g.low ? Bound::Least : Bound::Most;
  const Decision decision = camside::decide(bound, measured(g.lash_mm, g.guarded_mm), g.limit_mm, findings);
  g.verdict = decision.verdict;
  if (decision.doubt) {
    g.doubt = *decision.doubt;
  }
}

// Outside first, then Not proven, then Within; among alike the one nearest to its limit or farthest beyond it.
bool nearer_or_beyond(const Gate& a, const Gate& b) {
  if (a.verdict != b.verdict) {
    return weighs_more(a.verdict, b.verdict);
  }
  return a.margin_mm() - a.guarded_mm < b.margin_mm() - b.guarded_mm;
}

}  // namespace

std::vector<Gate> gates_of(const Input& in, const Result& r, const Findings& findings) {
  std::vector<Gate> gates = all_gates(in, r);
  for (Gate& g : gates) {
    decide(g, findings);
  }
  return gates;
}

const Gate* deciding(const std::vector<Gate>& gates) {
  const auto first = std::min_element(gates.begin(), gates.end(), nearer_or_beyond);
  return first == gates.end() ? nullptr : &*first;
}

}  // namespace camside::backlash
