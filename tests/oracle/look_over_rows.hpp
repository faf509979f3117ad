// Rows for the buyer's look-over: Bayes' rule from published teaching examples, and a whole look-over by hand.
#pragma once

#include <array>

namespace camside::oracle {

// One sign: chance before, chance of the sign with the cause and without it, chance after as printed.
struct BayesRow {
  double before, with_cause, without_cause;
  double after, tolerance;  // half of the last printed digit
};
inline constexpr std::array<BayesRow, 2> bayes_rows{{
    // The cab problem: "Judgment under uncertainty: Heuristics and biases" (1982), chapter 10; printed .41.
    // Title and figures from memory.
    {0.15, 0.80, 0.20, 0.41, 0.005},
    // The mammography problem, same book, chapter 18, in the rounded form of later teaching: 1 %, 80 %, 9.6 %; printed
    // 7.8 %. From memory.
    {0.01, 0.80, 0.096, 0.078, 0.0005},
}};

// The PERT mean (a + 4m + b)/6, by hand.
struct PertRow {
  double best, likely, worst, mean;
};
inline constexpr std::array<PertRow, 3> pert_rows{{{1, 4, 7, 4}, {2, 3, 10, 4}, {250, 450, 900, 2950.0 / 6.0}}};

// The small book of tests/calc/look_over_inputs.hpp at 30,000 mi with nothing seen, worked by hand:
//   shoes must be done: (200 + 4·400 + 600)/6 = 400
//   pump chance 0.2 of (100 + 4·300 + 500)/6 = 300: 60
//   lower end: shoes with proof, odds 1/4 · (1 − 0.9) = 0.025, 0.025/1.025 · 200; pump, odds 1/4 · (1 − 0.5): 1/9 · 100
//   upper end: 600; pump, odds 1/4 · (0.1 + 0.9·0.5)/0.1 = 1.375, 1.375/2.375 · 500
struct HandRow {
  double low, middle, high;
};
inline constexpr HandRow nothing_seen{0.025 / 1.025 * 200.0 + 100.0 / 9.0, 460.0, 600.0 + 1.375 / 2.375 * 500.0};

}  // namespace camside::oracle
