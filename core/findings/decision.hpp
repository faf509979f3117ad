// Question: what does a value with its uncertainty prove against a limit, and what do doubts leave of that?
//
// Method: ISO 14253-1:2017. With U the expanded uncertainty and g the guard factor (1 is the usual rule),
//   most allowed L:   value + gU ≤ L: Within;  value − gU > L: Outside;  else Not proven
//   least allowed L:  value − gU ≥ L: Within;  value + gU < L: Outside;  else Not proven
// Meeting a limit exactly is Within: comparisons have a slack of 1e-9 mm, since 20.050 − 0.015 is not 20.035 in binary.
// Where readings can miss a peak, the value that Within must hold for lies above the one that Outside must hold for.
//
// Doubts: one that can only flatter stops Within. One that can falsify stops both, whatever the numbers say. One that
// shows more than there is stops Within, and Outside against a most allowed. Which it is stands with the finding
// (Misleads), never in a list of numbers. The reason is the first doubt, in the order raised, of those that forbid
// most.
//
// Inputs: value, U and limit in one unit, finite; g from 0. Result: the verdict and the doubt that decided, if one did.
// Accuracy: that of the inputs. Not covered: probabilities of being wrong. Findings raised: none.
#pragma once

#include <cstdint>
#include <string>

#include "findings/finding.hpp"
#include "findings/outcome.hpp"

namespace camside {

enum class Bound : std::uint8_t { Least, Most };  // which end of what is allowed the limit is

inline constexpr double decision_slack = 1e-9;  // mm

struct Measured {
  double for_within = 0.0;   // the worst that it may be
  double for_outside = 0.0;  // what was surely read
  double guarded = 0.0;      // g·U
};
Measured measured(double value, double guarded);  // one value for both

struct Decision {
  Verdict verdict = Verdict::NotProven;
  const Finding* doubt = nullptr;  // why the numbers don't count; none: they decide. It points into the findings given
};

Verdict verdict_of_numbers(Bound bound, const Measured& m, double limit);
// `findings`: those raised so far.
Decision decide(Verdict by_numbers, Bound bound, const Findings& findings);
Decision decide(Bound bound, const Measured& m, double limit, const Findings& findings);

std::string because(const Finding& doubt);  // its text and what to do, as a verdict's reason

// Of several verdicts the first decides: Outside, then Not proven, then Within.
bool weighs_more(Verdict a, Verdict b);

}  // namespace camside
