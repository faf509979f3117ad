// Range and value of looking by brute force: every completion of what was not seen, every state of the faults and of
// what they cost, with probabilities multiplied out instead of odds. Nothing of look_over_model.hpp is used.
#include <gsl/gsl_cdf.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "calc/look_over/look_over.hpp"
#include "calc/look_over/look_over_inputs.hpp"

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

bool must(const Risk& r, const State& state) {
  const bool no_proof = !r.proof.empty() && state.at(r.proof) != Seen::Good;
  const bool seen_bad = !r.sight.empty() && state.at(r.sight) == Seen::Bad;
  const bool seen_good = !r.sight.empty() && state.at(r.sight) == Seen::Good;
  return seen_bad || (no_proof && !seen_good);
}

double mean_cost(const Risk& r) {
  return (r.cost.best->in_amount() + 4.0 * r.cost.likely->in_amount() + r.cost.worst->in_amount()) / 6.0;
}

double knock(const Book& b, const State& state) {
  double sum = 0.0;
  for (const Risk& r : b.risks) sum += (must(r, state) ? 1.0 : posterior(b, r, state)) * mean_cost(r);
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

// Least to most over every way of what is open, and of what that hides.
std::pair<double, double> once_seen(const Book& b, const State& state) {
  double low = std::numeric_limits<double>::infinity();
  double high = 0.0;
  for (const State& answered : ways(state)) {
    for (const State& full : ways(without_hidden(b, answered))) {
      low = std::min(low, knock(b, full));
      high = std::max(high, knock(b, full));
    }
  }
  return {low, high};
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

const Question& question_of(const Book& b, const std::string& id) {
  return *std::find_if(b.questions.begin(), b.questions.end(), [&](const Question& q) { return q.id == id; });
}

// With no proof seen yet the bill may still turn up.
double chance_of_cost(const Book& b, const Risk& r, const State& state) {
  if (!must(r, state)) return posterior(b, r, state);
  const bool seen_bad = !r.sight.empty() && state.at(r.sight) == Seen::Bad;
  if (seen_bad || state.at(r.proof) == Seen::Bad) return 1.0;
  State bill = state;
  bill[r.proof] = Seen::Good;
  const double none = chance_of_bad(b, question_of(b, r.proof), state);
  return none + (1.0 - none) * posterior(b, r, bill);
}

// A bill that wasn't seen is none.
double chance_now(const Book& b, const Risk& r, const State& state) {
  return must(r, state) ? 1.0 : posterior(b, r, state);
}

using Bikes = std::vector<std::pair<double, double>>;  // what one costs, and how many there are of it

// Every fault there or not, and every one that is at its best, likely or worst cost.
Bikes all_bikes(const Book& b, const State& answered, double (*chance)(const Book&, const Risk&, const State&)) {
  const State state = without_hidden(b, answered);
  Bikes bikes{{0.0, 1.0}};
  for (const Risk& r : b.risks) {
    const double p = chance(b, r, state);
    Bikes more;
    for (const auto& [costs, share] : bikes) {
      more.emplace_back(costs, share * (1.0 - p));
      more.emplace_back(costs + r.cost.best->in_amount(), share * p / 6.0);
      more.emplace_back(costs + r.cost.likely->in_amount(), share * p * 4.0 / 6.0);
      more.emplace_back(costs + r.cost.worst->in_amount(), share * p / 6.0);
    }
    bikes = std::move(more);
  }
  return bikes;
}

double cost_at(Bikes bikes, double share) {
  std::sort(bikes.begin(), bikes.end());
  double under = 0.0;
  for (const auto& [costs, part] : bikes) {
    under += part;
    if (under >= share) return costs;
  }
  return bikes.back().first;
}

double mean(const Bikes& bikes) {
  double sum = 0.0;
  for (const auto& [costs, share] : bikes) sum += share * costs;
  return sum;
}

double variance(const Bikes& bikes) {
  const double middle = mean(bikes);
  double sum = 0.0;
  for (const auto& [costs, share] : bikes) sum += share * (costs - middle) * (costs - middle);
  return sum;
}

// All bikes, those of a good answer and those of a bad one, and how many those are.
struct Looked {
  Bikes now, good, bad;
  double chance_bad = 0.0;

  Looked(const Book& b, const Question& q, State state) : now(all_bikes(b, state, &chance_of_cost)) {
    chance_bad = chance_of_bad(b, q, without_hidden(b, state));
    state[q.id] = Seen::Good;
    good = all_bikes(b, state, &chance_of_cost);
    state[q.id] = Seen::Bad;
    bad = all_bikes(b, state, &chance_of_cost);
  }
  double narrowed_to(double left) const {
    const double nine_in_ten = gsl_cdf_ugaussian_Pinv(0.95) - gsl_cdf_ugaussian_Pinv(0.05);
    return nine_in_ten * (std::sqrt(variance(now)) - std::sqrt(std::max(0.0, left)));
  }
};

double value_of_looking(const Book& b, const Question& q, const State& state) {
  const Looked l(b, q, state);
  const double apart = mean(l.bad) - mean(l.good);
  return l.narrowed_to(variance(l.now) - l.chance_bad * (1.0 - l.chance_bad) * apart * apart);
}

// What is really left on the average: where the answers fit together it is the same.
double value_by_what_is_left(const Book& b, const Question& q, const State& state) {
  const Looked l(b, q, state);
  return l.narrowed_to(l.chance_bad * variance(l.bad) + (1.0 - l.chance_bad) * variance(l.good));
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

double sum_of_worst(const Book& b) {
  double sum = 0.0;
  for (const Risk& r : b.risks) sum += r.cost.worst->in_amount();
  return sum;
}

// An end of the range: where this share of all bikes is under it, or the sum itself where that lies outside. Off by a
// step of the grid for each fault; a share that is met to rounding may be met by either of two costs.
void expect_end(Money end, double share, const Bikes& bikes, double sum, double within) {
  const auto held = [&](double at) { return share < 0.5 ? std::min(at, sum) : std::max(at, sum); };
  EXPECT_GE(end.in_amount(), held(cost_at(bikes, share - 1e-6)) - within);
  EXPECT_LE(end.in_amount(), held(cost_at(bikes, share + 1e-6)) + within);
}

TEST(LookOverIndependent, RangeAndValueOfLookingAgainstEveryWayItCanComeOut) {
  std::mt19937 gen(1809);
  int looks = 0;
  for (int n = 0; n < 60; ++n) {
    const Input in = drawn(gen);
    const State state = state_of(in);
    const auto r = solve(in);
    ASSERT_TRUE(r.has_value());
    const Bikes bikes = all_bikes(in.known, state, &chance_now);
    const double sum = knock(in.known, without_hidden(in.known, state));
    const double within = static_cast<double>(in.known.risks.size()) * sum_of_worst(in.known) / 2048.0;
    EXPECT_NEAR(r->knock_off.middle.in_amount(), sum, 1e-8) << n;
    expect_end(r->knock_off.low, 0.05, bikes, sum, within);
    expect_end(r->knock_off.high, 0.95, bikes, sum, within);
    EXPECT_NEAR(r->once_seen.low.in_amount(), once_seen(in.known, state).first, 1e-8) << n;
    EXPECT_NEAR(r->once_seen.high.in_amount(), once_seen(in.known, state).second, 1e-8) << n;
    for (const Look& l : r->looks) {
      const Question& q = question_of(in.known, l.question);
      EXPECT_NEAR(l.chance_bad, chance_of_bad(in.known, q, without_hidden(in.known, state)), 1e-10) << n;
      EXPECT_NEAR(l.narrows.in_amount(), value_of_looking(in.known, q, state), 1e-6) << n;
      ++looks;
    }
  }
  EXPECT_GT(looks, 100);
}

// Each question tells of one fault only, the bill among them: then nothing is counted twice.
TEST(LookOverIndependent, ALookNarrowsByWhatIsLeftOnTheAverage) {
  std::mt19937 gen(3);
  int looks = 0;
  for (int n = 0; n < 40; ++n) {
    Input in = drawn(gen);
    in.touched = Touched::Cold;
    for (Question& q : in.known.questions) {
      q.hidden_by.clear();
      q.silence = false;
    }
    for (std::size_t i = 0; i < in.known.risks.size(); ++i) {
      Risk& r = in.known.risks[i];
      r.sight.clear();
      r.signs = {sign("q" + std::to_string(i), 0.1 * static_cast<double>(n % 9 + 1))};
      in.answers[i].reading.reset();
    }
    const State state = state_of(in);
    const auto r = solve(in);
    ASSERT_TRUE(r.has_value());
    for (const Look& l : r->looks) {
      const double value = value_by_what_is_left(in.known, question_of(in.known, l.question), state);
      EXPECT_NEAR(l.narrows.in_amount(), value, 1e-6) << n << l.question;
      looks += value > 1.0 ? 1 : 0;
    }
  }
  EXPECT_GT(looks, 50);
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
    EXPECT_NEAR(first->narrows.in_amount(), best, 1e-6) << n;
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
