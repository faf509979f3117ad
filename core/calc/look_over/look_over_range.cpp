#include "calc/look_over/look_over_range.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace camside::look_over {

namespace {

constexpr double outside_each_end = 0.05;
// Of a bell curve, in standard deviations: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1, 1.645 for 0.95.
constexpr double nine_in_ten_width = 2.0 * 1.6448536269514722;
constexpr double steps = 2048.0;
constexpr double nothing = 1e-9;  // a share below this is rounding

struct Part {
  double weight = 0.0;
  double cost = 0.0;
};

std::array<Part, 3> parts_of(const Span& cost) {
  return {
      {{1.0 / 6.0, cost.low.in_amount()}, {4.0 / 6.0, cost.middle.in_amount()}, {1.0 / 6.0, cost.high.in_amount()}}};
}

// Shares of all bikes by what they cost.
class Shares {
 public:
  Shares(double most, std::size_t faults) : step_(most / steps), share_(static_cast<std::size_t>(steps) + faults + 2) {
    share_[0] = 1.0;
  }

  void add_fault(double chance, const Span& cost) {
    std::vector<double> after(share_.size());
    add_moved(after, 0.0, 1.0 - chance);
    for (const Part& part : parts_of(cost)) add_moved(after, part.cost / step_, chance * part.weight);
    top_ = std::min(top_ + static_cast<std::size_t>(cost.high.in_amount() / step_) + 1, share_.size() - 1);
    share_ = std::move(after);
  }

  // Under which this share of them stays.
  double cost_at(double share) const {
    double under = 0.0;
    for (std::size_t i = 0; i <= top_; ++i) {
      under += share_[i];
      if (under >= share - nothing) return static_cast<double>(i) * step_;
    }
    return static_cast<double>(top_) * step_;
  }

 private:
  void add_moved(std::vector<double>& to, double by, double weight) const {
    const auto whole = static_cast<std::size_t>(by);
    const double rest = by - static_cast<double>(whole);
    for (std::size_t i = 0; i <= top_ && i + whole + 1 < to.size(); ++i) {
      to[i + whole] += weight * (1.0 - rest) * share_[i];
      to[i + whole + 1] += weight * rest * share_[i];
    }
  }

  double step_;
  std::vector<double> share_;
  std::size_t top_ = 0;
};

double sum_of_worst(const Model& m) {
  double sum = 0.0;
  for (const Counted& c : m.risks) sum += c.cost.high.in_amount();
  return sum;
}

Shares shares_of(const Model& m, const Evidence& evidence, double Counted::*prior) {
  Shares shares(sum_of_worst(m), m.risks.size());
  for (const Counted& c : m.risks) shares.add_fault(chance_counted(m, c, c.*prior, evidence), c.cost);
  return shares;
}

Span range_of(const Model& m, const Evidence& evidence) {
  const Money sum = Money::amount(expected_sum(m, evidence));
  if (sum_of_worst(m) <= 0.0) return {sum, sum, sum};
  const Money low = Money::amount(shares_of(m, evidence, &Counted::prior_low).cost_at(outside_each_end));
  const Money high = Money::amount(shares_of(m, evidence, &Counted::prior).cost_at(1.0 - outside_each_end));
  return {std::min(low, sum), sum, std::max(high, sum)};
}

// The bill may still turn up.
double chance_as_looked_for(const Model& m, const Counted& c, const Evidence& evidence) {
  if (!must_do(m, c, evidence)) return chance_after(m, c, c.prior, evidence);
  if (!c.proof || evidence[*c.proof] != Seen::Not) return 1.0;
  Evidence with_bill = evidence;
  with_bill.seen[*c.proof] = Seen::Good;
  if (must_do(m, c, with_bill)) return 1.0;
  const double no_bill = chance_of_bad(m, *c.proof, evidence);
  return no_bill + (1.0 - no_bill) * chance_after(m, c, c.prior, with_bill);
}

// How far the mean lies apart between a bad and a good answer.
double apart_by(const Model& m, std::size_t question, const Answers& answers) {
  const auto mean_with = [&](Seen seen) {
    Answers after = answers;
    after[question] = seen;
    return moments_of(m, evidence_of(m, after)).mean;
  };
  return mean_with(Seen::Bad) - mean_with(Seen::Good);
}

}  // namespace

Moments moments_of(const Model& m, const Evidence& evidence) {
  Moments all;
  for (const Counted& c : m.risks) {
    const double chance = chance_as_looked_for(m, c, evidence);
    double square = 0.0;
    for (const Part& part : parts_of(c.cost)) square += part.weight * part.cost * part.cost;
    const double mean = chance * pert_mean(c.cost);
    all.mean += mean;
    all.variance += std::max(0.0, chance * square - mean * mean);
  }
  return all;
}

double narrows_by_all(const Model& m, const std::vector<std::size_t>& questions, const Answers& answers) {
  const Evidence evidence = evidence_of(m, answers);
  const double variance = moments_of(m, evidence).variance;
  double told = 0.0;
  for (const std::size_t q : questions) {
    const double bad = chance_of_bad(m, q, evidence);
    told += bad * (1.0 - bad) * std::pow(apart_by(m, q, answers), 2);
  }
  return nine_in_ten_width * (std::sqrt(variance) - std::sqrt(std::max(0.0, variance - told)));
}

double narrows_by(const Model& m, std::size_t question, const Answers& answers) {
  return narrows_by_all(m, {question}, answers);
}

Span range_of(const std::vector<Model>& models, const Answers& answers) {
  const Evidence evidence = evidence_of(models.front(), answers);
  Span all = range_of(models.front(), evidence);
  for (const Model& m : models) {
    const Span one = range_of(m, evidence);
    all = {std::min(all.low, one.low), std::max(all.middle, one.middle), std::max(all.high, one.high)};
  }
  return all;
}

}  // namespace camside::look_over
