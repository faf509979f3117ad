// Books and answers that several test programs start from. The figures are invented for easy arithmetic.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "calc/look_over/look_over.hpp"

namespace camside::look_over {

inline Question question(std::string id, YesNo bad, double without_cause) {
  Question q;
  q.text = "Is it so: " + id + "?";
  q.id = std::move(id);
  q.bad = bad;
  q.without_cause = without_cause;
  q.source = Source::memory();
  return q;
}

inline Engine engine(std::string id, std::optional<int> first, std::optional<int> last) {
  Engine e;
  e.name = "engine " + id;
  e.id = std::move(id);
  e.drive = "chains";
  e.first_year = first;
  e.last_year = last;
  e.source = Source::common_practice();
  return e;
}

inline Cost cost(double best, double likely, double worst, bool placeholder = false) {
  return {Money::amount(best), Money::amount(likely), Money::amount(worst), placeholder, Source::owner("own list")};
}

inline Risk risk(std::string id, double chance, Cost c, std::vector<Sign> signs = {}) {
  Risk r;
  r.name = "risk " + id;
  r.id = std::move(id);
  r.why = "it wears";
  r.chances = {{Distance::miles(0.0), chance}};
  r.source = Source::common_practice();
  r.cost = c;
  r.signs = std::move(signs);
  r.settled_by = "a look inside";
  r.say = "May I look inside?";
  return r;
}

inline Sign sign(std::string question, double shows) {
  return {std::move(question), shows, Source::memory()};
}

// Shoes that need a paper, a pump that shows at the lamp, one engine.
inline Book small_book() {
  Book b;
  b.engines = {engine("sprung", 1999, 2006)};
  b.questions = {question("papers", YesNo::No, 0.8), question("lamp", YesNo::Yes, 0.1)};
  Risk shoes = risk("shoes", 0.2, cost(200, 400, 600), {sign("papers", 0.9)});
  shoes.proof = "papers";
  b.risks = {shoes, risk("pump", 0.2, cost(100, 300, 500), {sign("lamp", 0.5)})};
  return b;
}

inline Input small_input() {
  Input in;
  in.year = 2003;
  in.odometer = Distance::miles(30'000.0);
  in.asking = Money::amount(6'000.0);
  in.touched = Touched::Cold;
  in.known = small_book();
  return in;
}

inline Input answered(Input in, const std::string& question, Said said) {
  in.answers.push_back({question, said});
  return in;
}

}  // namespace camside::look_over
