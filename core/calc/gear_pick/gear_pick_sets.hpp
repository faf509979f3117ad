// Inside of gear_pick.hpp: the sets of meshes that share gears, each solved by itself.
#pragma once

#include <vector>

#include "calc/gear_pick/gear_pick_engine.hpp"

namespace camside::gear_pick {

std::vector<Set> sets_of(Engine& e);

// Every combination judged and ranked; with none that fits, what would. False: too many combinations. In a doubtful set
// nothing is proven.
bool solve_set(const Engine& e, Set& set, bool doubtful);

// Every pair of options of one mesh is judged once.
struct Cell {
  double score_mm = 0.0;
  double least_mm = 0.0;
  State state = State::AsMeasured;
  bool tight = false;  // the edge that decides is the lower one
  Verdict verdict = Verdict::NotProven;
};
Cell judged(const Set::Joined& joined, const Mesh& mesh, double thicker_a_mm, double thicker_b_mm);

void rank(Set& set);
void find_would_fit(const Engine& e, Set& set);

}  // namespace camside::gear_pick
