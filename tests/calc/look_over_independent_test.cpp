// Range and value of looking by brute force: every completion of what was not seen, every state of the faults, with
// probabilities multiplied out instead of odds. Nothing of look_over_model.hpp is used.
#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <map>
#include <random>
#include <string>
#include <vector>

#include "calc/look_over.hpp"
#include "calc/look_over_inputs.hpp"

namespace camside::look_over {
namespace {

enum class Seen { Good, Not, Bad };
using State = std::map<std::string, Seen>;

// The chance that this question comes out as seen, with the fault or without it.
double chance_of(const Question& q, double shows, Seen seen, bool fault) {
  const double bad = fault ? *q.without_cause + (1.0 - *q.without_cause) * shows : *q.without_cause;
  if (seen == Seen::Not || (seen == Seen::Good && q.silence)) return 1.0;
  return seen == Seen::Bad ? bad : 1.0 - bad;
}

double posterior(const Book& b, const Risk& r, const State& state) {
  double with = *r.chances.front().chance;
  double without = 1.0 - with;
  for (const Question& q : b.questions) {
    for (const Sign& s : r.signs) {
      if (s.question != q.id) continue;
      with *= chance_of(q, *s.shows, state.at(q.id), true);
      without *= chance_of(q, *s.shows, state.at(q.id), false);
    }
  }
  return with / (with + without);
}

double knock(const Book& b, const State& state, bool best) {
  double sum = 0.0;
  for (const Risk& r : b.risks) {
    const bool no_proof = !r.proof.empty() && state.at(r.proof) != Seen::Good;
    const bool seen_bad = !r.sight.empty() && state.at(r.sight) == Seen::Bad;
    const bool seen_good = !r.sight.empty() && state.at(r.sight) == Seen::Good;
    const bool must = seen_bad || (no_proof && !seen_good);
    sum += (must ? 1.0 : posterior(b, r, state)) * (best ? r.cost.best : r.cost.worst)->in_amount();
  }
  return sum;
}

std::vector<std::string> not_seen(const State& state) {
  std::vector<std::string> ids;
  for (const auto& [id, seen] : state) {
    if (seen == Seen::Not) ids.push_back(id);
  }
  return ids;
}

// Least by best costs to most by worst costs, over every way the open questions can come out.
double width(const Book& b, const State& state) {
  const std::vector<std::string> open = not_seen(state);
  double low = std::numeric_limits<double>::infinity();
  double high = 0.0;
  for (std::size_t way = 0; way < (std::size_t{1} << open.size()); ++way) {
    State full = state;
    for (std::size_t i = 0; i < open.size(); ++i) full[open[i]] = (way >> i & 1U) != 0 ? Seen::Bad : Seen::Good;
    low = std::min(low, knock(b, full, true));
    high = std::max(high, knock(b, full, false));
  }
  return high - low;
}

// Over every state of the faults.
double chance_of_bad(const Book& b, const Question& q, const State& state) {
  double sum = 0.0;
  for (std::size_t faults = 0; faults < (std::size_t{1} << b.risks.size()); ++faults) {
    double weight = 1.0;
    double good = 1.0 - *q.without_cause;
    for (std::size_t i = 0; i < b.risks.size(); ++i) {
      const bool there = (faults >> i & 1U) != 0;
      const double p = posterior(b, b.risks[i], state);
      weight *= there ? p : 1.0 - p;
      for (const Sign& s : b.risks[i].signs) {
        if (there && s.question == q.id) good *= 1.0 - *s.shows;
      }
    }
    sum += weight * (1.0 - good);
  }
  return sum;
}

double value_of_looking(const Book& b, const Question& q, const State& state) {
  State bad = state;
  State good = state;
  bad[q.id] = Seen::Bad;
  good[q.id] = Seen::Good;
  const double p = chance_of_bad(b, q, state);
  return width(b, state) - p * width(b, bad) - (1.0 - p) * width(b, good);
}

// A book and answers by a fixed generator.
Input drawn(std::mt19937& gen) {
  const auto share = [&] { return std::uniform_real_distribution<double>(0.02, 0.95)(gen); };
  const auto one_in_two = [&] { return std::uniform_int_distribution<int>(0, 1)(gen) == 1; };
  Input in = small_input();
  in.known = {};
  in.known.engines = {engine("a", {}, {})};
  for (int q = 0; q < 6; ++q) {
    in.known.questions.push_back(question("q" + std::to_string(q), YesNo::Yes, share()));
    in.known.questions.back().silence = one_in_two() && one_in_two();
    const Said said = one_in_two() ? Said::DidntSee : one_in_two() ? Said::Yes : Said::No;
    in.answers.push_back({"q" + std::to_string(q), said});
  }
  for (int i = 0; i < 6; ++i) {
    Risk r = risk("r" + std::to_string(i), share(), cost(100.0 * share(), 100.0, 100.0 + 900.0 * share()));
    for (int q = 0; q < 6; ++q) {
      if (one_in_two()) r.signs.push_back(sign("q" + std::to_string(q), share()));
    }
    if (one_in_two() && one_in_two()) r.proof = "q" + std::to_string(i);
    if (one_in_two() && one_in_two()) r.sight = "q" + std::to_string((i + 1) % 3);
    in.known.risks.push_back(std::move(r));
  }
  return in;
}

State state_of(const Input& in) {
  State state;
  for (const Answer& a : in.answers)
    state[a.question] = *a.said == Said::DidntSee ? Seen::Not : *a.said == Said::Yes ? Seen::Bad : Seen::Good;
  return state;
}

const Question& question_of(const Book& b, const std::string& id) {
  return *std::find_if(b.questions.begin(), b.questions.end(), [&](const Question& q) { return q.id == id; });
}

TEST(LookOverIndependent, RangeAndValueOfLookingAgainstEveryWayItCanComeOut) {
  std::mt19937 gen(1809);
  int looks = 0;
  for (int n = 0; n < 200; ++n) {
    const Input in = drawn(gen);
    const State state = state_of(in);
    const auto r = solve(in);
    ASSERT_TRUE(r.has_value());
    EXPECT_NEAR((r->knock_off.high - r->knock_off.low).in_amount(), width(in.known, state), 1e-8) << n;
    for (const Look& l : r->looks) {
      const Question& q = question_of(in.known, l.question);
      EXPECT_NEAR(l.chance_bad, chance_of_bad(in.known, q, state), 1e-10) << n;
      EXPECT_NEAR(l.narrows.in_amount(), value_of_looking(in.known, q, state), 1e-8) << n;
      ++looks;
    }
  }
  EXPECT_GT(looks, 300);
}

TEST(LookOverIndependent, TheFirstLookIsTheBest) {
  std::mt19937 gen(7);
  int compared = 0;
  for (int n = 0; n < 50; ++n) {
    const Input in = drawn(gen);
    const State state = state_of(in);
    const auto r = solve(in);
    ASSERT_TRUE(r.has_value());
    // Proof of what must be done anyway goes before; of the others the best comes first.
    const auto spares = [&](const std::string& id) {
      return std::any_of(in.known.risks.begin(), in.known.risks.end(), [&](const Risk& k) { return k.proof == id; });
    };
    double best = 0.0;
    for (const std::string& id : not_seen(state))
      if (!spares(id)) best = std::max(best, value_of_looking(in.known, question_of(in.known, id), state));
    const auto first =
        std::find_if(r->looks.begin(), r->looks.end(), [&](const Look& l) { return !spares(l.question); });
    if (first == r->looks.end()) continue;
    EXPECT_NEAR(first->narrows.in_amount(), best, 1e-8) << n;
    ++compared;
  }
  EXPECT_GT(compared, 20);
}

TEST(LookOverIndependent, Chances) {
  std::mt19937 gen(42);
  for (int n = 0; n < 100; ++n) {
    const Input in = drawn(gen);
    const State state = state_of(in);
    const auto r = solve(in);
    ASSERT_TRUE(r.has_value());
    for (const auto* list : {&r->must_do, &r->may_find}) {
      for (const Found& f : *list) {
        const auto& risks = in.known.risks;
        const auto it = std::find_if(risks.begin(), risks.end(), [&](const Risk& k) { return k.id == f.risk; });
        EXPECT_NEAR(f.chance, posterior(in.known, *it, state), 1e-12) << n << f.risk;
      }
    }
  }
}

}  // namespace
}  // namespace camside::look_over
