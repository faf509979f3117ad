// Inside of look_over.hpp: chances and sums for one engine and one set of answers.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "calc/look_over.hpp"

namespace camside::look_over {

enum class Seen : std::uint8_t { Good, Not, Bad };
using Answers = std::vector<Seen>;  // one for each question of the book

struct Link {
  std::size_t question = 0;
  double shows = 0.0;
};

// A risk that the engine has, its names looked up and its odometer taken.
struct Counted {
  const Risk* risk = nullptr;
  double prior_low = 0.0;
  double prior = 0.0;
  const Source* chance_source = nullptr;
  Span cost;  // best, likely, worst
  bool placeholder = false;
  std::optional<std::size_t> proof;  // only where the odometer makes it a must
  std::optional<std::size_t> sight;  // where the part itself is looked at
  std::vector<Link> links;
};

struct Model {
  const Engine* engine = nullptr;
  const Book* book = nullptr;
  std::vector<Counted> risks;
};

Model model_of(const Input& in, const Engine& engine);

double likelihood_ratio(const Question& q, double shows, Seen seen);
double chance_after(const Model& m, const Counted& c, double prior, const Answers& answers);
bool must_do(const Counted& c, const Answers& answers);
double pert_mean(const Span& cost);
double chance_of_bad(const Model& m, std::size_t question, const Answers& answers);
bool asks(const Model& m, std::size_t question);  // does its answer count for this engine's money

// Sum to knock off: expected, and its range over all that was not seen and over the costs.
Span knock_off(const Model& m, const Answers& answers);
// The same for an engine not settled: the dearest in the middle, the range over all.
Span knock_off(const std::vector<Model>& models, const Answers& answers);
std::size_t dearest(const std::vector<Model>& models, const Answers& answers);

Answers completed(Answers answers, Seen instead);  // every Not replaced

}  // namespace camside::look_over
