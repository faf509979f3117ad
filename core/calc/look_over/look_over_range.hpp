// Inside of look_over.hpp: how far what a bike really costs lies from the sum to knock off.
//
// Each fault comes true with its chance or not, each by itself. One that does costs best, likely or worst, weighted
// 1 : 4 : 1; their mean is the PERT mean. The sums are counted on a grid of 2,048 steps of all the worst costs, each
// cost shared between the two steps it lies between, so that its mean stays and an end is off by about a step.
//
// What must be done anyway is in the range for certain, as it is in the sum. Only the value of looking knows that a
// bill not seen may still turn up: there its chance is P(no bill) + P(bill) · chance with the bill.
#pragma once

#include <cstddef>
#include <vector>

#include "calc/look_over/look_over_model.hpp"

namespace camside::look_over {

// Of what it really costs, as far as a look can tell.
struct Moments {
  double mean = 0.0;
  double variance = 0.0;
};
Moments moments_of(const Model& m, const Evidence& evidence);

// By how much the look at this question narrows the range: by the variance of the mean over both answers, which is what
// the variance of the cost is expected to lose (law of total variance). The range is taken as wide as nine in ten of a
// bell curve.
double narrows_by(const Model& m, std::size_t question, const Answers& answers);
double narrows_by_all(const Model& m, const std::vector<std::size_t>& questions, const Answers& answers);

// What nine bikes in ten lie between, over all engines it can be, and the sum itself, which a rare dear fault can put
// above them.
Span range_of(const std::vector<Model>& models, const Answers& answers);

}  // namespace camside::look_over
