#include "findings/decision.hpp"

#include <algorithm>

namespace camside {

namespace {

bool is_doubt(const Finding& f) {
  return f.severity == Severity::Doubt;
}

bool stops_outside(const Finding& f, Bound bound) {
  if (!is_doubt(f) || f.misleads == Misleads::Flatters) return false;
  return f.misleads == Misleads::EitherWay || bound == Bound::Most;
}

bool stops_both(const Finding& f) {
  return is_doubt(f) && f.misleads == Misleads::EitherWay;
}

template <class Which>
const Finding* first(const Findings& findings, Which which) {
  const auto it = std::find_if(findings.begin(), findings.end(), which);
  return it == findings.end() ? nullptr : &*it;
}

int rank(Verdict v) {
  return v == Verdict::Outside ? 0 : v == Verdict::NotProven ? 1 : 2;
}

}  // namespace

Measured measured(double value, double guarded) {
  return {value, value, guarded};
}

Verdict verdict_of_numbers(Bound bound, const Measured& m, double limit) {
  const double sign = bound == Bound::Most ? 1.0 : -1.0;
  const auto beyond = [&](double value) { return sign * (value - limit); };  // positive: past the limit
  if (beyond(m.for_within) + m.guarded <= decision_slack) return Verdict::Within;
  if (beyond(m.for_outside) - m.guarded > decision_slack) return Verdict::Outside;
  return Verdict::NotProven;
}

Decision decide(Verdict by_numbers, Bound bound, const Findings& findings) {
  if (const Finding* const doubt = first(findings, stops_both)) return {Verdict::NotProven, doubt};
  const Finding* doubt = nullptr;
  if (by_numbers == Verdict::Within) doubt = first(findings, is_doubt);
  if (by_numbers == Verdict::Outside)
    doubt = first(findings, [bound](const Finding& f) { return stops_outside(f, bound); });
  return doubt ? Decision{Verdict::NotProven, doubt} : Decision{by_numbers, nullptr};
}

Decision decide(Bound bound, const Measured& m, double limit, const Findings& findings) {
  return decide(verdict_of_numbers(bound, m, limit), bound, findings);
}

std::string because(const Finding& doubt) {
  return doubt.text + ". " + doubt.remedy;
}

bool weighs_more(Verdict a, Verdict b) {
  return rank(a) < rank(b);
}

}  // namespace camside
