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
// As it was answered, by question; and of the bills the distance since, of 30,000 mi.
struct State {
  std::map<std::string, Seen> answered;
  std::map<std::string, double> miles_since;
  bool cold = true;

  Seen at(const std::string& id) const { return answered.at(id); }
  Seen& operator[](const std::string& id) { return answered[id]; }
};

// A good answer that tells nothing.
bool is_hidden(const Question& q, const State& state) {
  if (state.at(q.id) != Seen::Good) return false;
  return (q.warm_hides && !state.cold) || (!q.hidden_by.empty() && state.at(q.hidden_by) == Seen::Bad);
}

State without_hidden(const Book& b, const State& state) {
  State seen = state;
  for (const Question& q : b.questions)
    if (is_hidden(q, state)) seen[q.id] = Seen::Not;
  return seen;
}

// From the first point to the one at 50,000 mi.
double chance_at(const Risk& r, double miles) {
  const double from = *r.chances.front().chance;
  return from + miles / 50'000.0 * (*r.chances.back().chance - from);
}

// The chance that this question comes out as seen, with the fault or without it.
double chance_of(const Question& q, double shows, Seen seen, bool fault) {
  const double bad = fault ? *q.without_cause + (1.0 - *q.without_cause) * shows : *q.without_cause;
  if (seen == Seen::Not || (seen == Seen::Good && q.silence)) return 1.0;
  return seen == Seen::Bad ? bad : 1.0 - bad;
}

double posterior(const Book& b, const Risk& r, const State& state) {
  const bool renewed = !r.proof.empty() && state.miles_since.contains(r.proof) && state.at(r.proof) == Seen::Good;
  double with = chance_at(r, renewed ? state.miles_since.at(r.proof) : 30'000.0);
  double without = 1.0 - with;
  for (const Question& q : b.questions) {
    for (const Sign& s : r.signs) {
      if (s.question != q.id || (renewed && q.id == r.proof)) continue;
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
  for (const auto& [id, seen] : state.answered) {
    if (seen == Seen::Not) ids.push_back(id);
  }
  return ids;
}

// Every way the open questions can come out.
std::vector<State> ways(const State& state) {
  const std::vector<std::string> open = not_seen(state);
  std::vector<State> all;
  for (std::size_t way = 0; way < (std::size_t{1} << open.size()); ++way) {
    all.push_back(state);
    for (std::size_t i = 0; i < open.size(); ++i) all.back()[open[i]] = (way >> i & 1U) != 0 ? Seen::Bad : Seen::Good;
  }
  return all;
}

// Least by best costs to most by worst costs, over every way of what is open, and of what that hides.
double width(const Book& b, const State& state) {
  double low = std::numeric_limits<double>::infinity();
  double high = 0.0;
  for (const State& answered : ways(state)) {
    for (const State& full : ways(without_hidden(b, answered))) {
      low = std::min(low, knock(b, full, true));
      high = std::max(high, knock(b, full, false));
    }
  }
  return high - low;
}

// Over every state of the faults; `state`: what is seen.
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
  const double p = chance_of_bad(b, q, without_hidden(b, state));
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
    in.known.questions.back().warm_hides = one_in_two() && one_in_two();
    if (q > 0 && one_in_two()) in.known.questions.back().hidden_by = "q0";
    const Said said = one_in_two() ? Said::DidntSee : one_in_two() ? Said::Yes : Said::No;
    in.answers.push_back({"q" + std::to_string(q), said, {}});
  }
  in.touched = one_in_two() ? Touched::Cold : Touched::Warm;
  for (int i = 0; i < 6; ++i) {
    Risk r = risk("r" + std::to_string(i), share(), cost(100.0 * share(), 100.0, 100.0 + 900.0 * share()));
    for (int q = 0; q < 6; ++q) {
      if (one_in_two()) r.signs.push_back(sign("q" + std::to_string(q), share()));
    }
    r.chances.push_back({Distance::miles(50'000.0), std::max(*r.chances.front().chance, share())});
    if (one_in_two() && one_in_two()) r.proof = "q" + std::to_string(i);
    if (!r.proof.empty() && one_in_two())
      in.answers[static_cast<std::size_t>(i)].reading = Distance::miles(30'000.0 * share());
    if (one_in_two() && one_in_two()) r.sight = "q" + std::to_string((i + 1) % 3);
    in.known.risks.push_back(std::move(r));
  }
  return in;
}

State state_of(const Input& in) {
  State state;
  state.cold = in.touched == Touched::Cold;
  for (const Answer& a : in.answers) {
    state[a.question] = *a.said == Said::DidntSee ? Seen::Not : *a.said == Said::Yes ? Seen::Bad : Seen::Good;
    if (a.reading) state.miles_since[a.question] = 30'000.0 - a.reading->in_miles();
  }
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
      EXPECT_NEAR(l.chance_bad, chance_of_bad(in.known, q, without_hidden(in.known, state)), 1e-10) << n;
      EXPECT_NEAR(l.narrows.in_amount(), std::max(0.0, value_of_looking(in.known, q, state)), 1e-8) << n;
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
    const auto first =
        std::find_if(r->looks.begin(), r->looks.end(), [&](const Look& l) { return !spares(l.question); });
    for (const std::string& id : not_seen(state))
      if (!spares(id)) best = std::max(best, value_of_looking(in.known, question_of(in.known, id), state));
    if (first == r->looks.end() || not_seen(state).empty()) continue;
    if (first->needs_cold || !first->hidden_by.empty()) continue;  // nothing left that a look would tell today
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
        EXPECT_NEAR(f.chance, posterior(in.known, *it, without_hidden(in.known, state)), 1e-12) << n << f.risk;
      }
    }
  }
}

}  // namespace
}  // namespace camside::look_over
