// Several bikes for sale beside each other: a table where there is room, cards on a phone.
#pragma once

#include <string>
#include <vector>

#include "calc/look_over/look_over.hpp"
#include "screens/widgets/ui.hpp"

namespace camside::screens {

struct Candidate {
  std::string id;
  std::string name;
  std::string odometer;                     // "38,200 mi", "?"
  const look_over::Input* input = nullptr;  // none: what was entered can't be used
  const look_over::Result* result = nullptr;
};

constexpr std::size_t most_candidates = 6;

// Least to knock off first, those to walk away from behind them, those that can't be solved last.
void sort_stably(std::vector<Candidate>& candidates);

bool is_table(const Ui& ui);

// The one tapped; empty: none.
std::string draw_candidates(Ui& ui, const std::vector<Candidate>& candidates, const std::string& chosen,
                            bool names_only);

}  // namespace camside::screens
