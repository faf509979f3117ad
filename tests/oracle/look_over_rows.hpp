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
//   once seen, all good: shoes with proof, odds 1/4 · (1 − 0.9), 0.025/1.025 · 400; pump, odds 1/4 · (1 − 0.5), 300/9
//   once seen, all bad: 400; pump, odds 1/4 · (0.1 + 0.9·0.5)/0.1 = 1.375, 1.375/2.375 · 300
//   what it costs: shoes 200, 400 or 600 in 1, 4 or 1 of 6; pump 0.2, then 100, 300 or 500: 200 in 1/6 · 0.8 = 0.13,
//   800 and more in (4 + 1)/6 · 1/30 + 1/6 · 4/30 = 0.05, so 700 or less in 0.95
struct HandRow {
  double low, middle, high;
  double all_good, all_bad;
};
inline constexpr HandRow nothing_seen{200.0, 460.0, 700.0, 0.025 / 1.025 * 400.0 + 300.0 / 9.0,
                                      400.0 + 1.375 / 2.375 * 300.0};

}  // namespace camside::oracle
