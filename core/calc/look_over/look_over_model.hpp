// Inside of look_over.hpp: chances and sums for one engine and one set of answers.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "calc/look_over/look_over.hpp"

namespace camside::look_over {

enum class Seen : std::uint8_t { Good, Not, Bad };
using Answers = std::vector<Seen>;  // as they were given, one for each question of the book

// What of the answers tells something: a good one that is hidden counts as not seen.
struct Evidence {
  std::vector<Seen> seen;

  Seen operator[](std::size_t question) const { return seen[question]; }
};

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
  std::optional<std::size_t> proof;
  bool needs_proof = false;     // at this odometer it must be done where there is none
  bool proof_holds = true;      // false: the bill has no reading, or one older than the interval
  std::optional<double> since;  // chance by the distance since it was done, where the proof has a reading
  std::vector<std::size_t> must_when_bad;
  std::optional<std::size_t> sight;  // where the part itself is looked at
  std::vector<Link> links;
};

struct Model {
  const Engine* engine = nullptr;
  std::string drive;
  const Book* book = nullptr;
  bool cold = false;  // the engine was, when it was touched first
  std::vector<Counted> risks;
  std::vector<std::size_t> void_bills;  // questions whose bill contradicts the clock
};

Seen seen_of(const Question& q, Said said);

Model model_of(const Input& in, const Engine& engine, const std::string& drive);

// How far it went since the reading on this proof; none without one, or when it can't be true.
std::optional<Distance> distance_since(const Input& in, const std::string& proof);

bool hidden(const Model& m, std::size_t question, const Answers& answers);  // a good answer tells nothing there
Evidence evidence_of(const Model& m, const Answers& answers);
Evidence all_open(const Model& m, Answers answers, Seen instead);  // all that was not seen came out so

double likelihood_ratio(const Question& q, double shows, Seen seen);
bool by_distance_since(const Counted& c, const Evidence& evidence);  // not by the odometer: there is a reading
double chance_after(const Model& m, const Counted& c, double prior, const Evidence& evidence);
bool proven(const Counted& c, const Evidence& evidence);  // by a paper that still holds
bool must_do(const Model& m, const Counted& c, const Evidence& evidence);
// As it counts in the sum: what must be done is certain.
double chance_counted(const Model& m, const Counted& c, double prior, const Evidence& evidence);
double pert_mean(const Span& cost);
double chance_of_bad(const Model& m, std::size_t question, const Evidence& evidence);
bool asks(const Model& m, std::size_t question);  // does its answer count for this engine's money

double expected_sum(const Model& m, const Evidence& evidence, double Counted::*prior = &Counted::prior);

// Sum to knock off; for an engine not settled, of the dearest.
Money knock_off(const std::vector<Model>& models, const Answers& answers);
// And what becomes of it once all that was not seen came out good, and bad, over all engines it can be.
Span once_seen(const std::vector<Model>& models, const Answers& answers);
std::size_t dearest(const std::vector<Model>& models, const Answers& answers);

}  // namespace camside::look_over
