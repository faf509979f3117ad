// The order of a set's combinations: those that fit, by distance to the nearest edge, then by lash left, effort, price.
#include <algorithm>

#include "base/stable_sort.hpp"
#include "calc/gear_pick/gear_pick_sets.hpp"

namespace camside::gear_pick {

namespace {

using Place = std::vector<Candidate>::iterator;

int group_of(const Candidate& c) {
  return c.standing == Standing::Fits ? 0 : c.standing == Standing::NotInStock ? 1 : 2;
}

bool cheaper(const Candidate& a, const Candidate& b) {
  if (a.effort != b.effort) return a.effort < b.effort;
  if (a.price_known != b.price_known) return a.price_known;
  if (a.price != b.price) return a.price < b.price;
  return a.index < b.index;
}

// Runs `within` on every stretch whose key lies within the tie of the stretch's first.
template <class Key, class Within>
void each_tie(Place begin, Place end, const Key& key, const Within& within) {
  while (begin != end) {
    const double first = key(*begin);
    const auto stop = std::find_if(begin, end, [&](const Candidate& c) { return first - key(c) > tie_mm; });
    within(begin, stop);
    begin = stop;
  }
}

void rank_group(Place begin, Place end) {
  const auto score = [](const Candidate& c) { return c.score_mm; };
  const auto least = [](const Candidate& c) { return c.least_mm; };
  each_tie(begin, end, score, [&](Place from, Place to) {
    sort_stably(from, to, [](const Candidate& a, const Candidate& b) {
      return a.least_mm != b.least_mm ? a.least_mm > b.least_mm : a.index < b.index;
    });
    each_tie(from, to, least, [](Place f, Place t) { sort_stably(f, t, cheaper); });
  });
}

}  // namespace

void rank(Set& set) {
  auto& all = set.ranked;
  sort_stably(all.begin(), all.end(), [](const Candidate& a, const Candidate& b) {
    if (group_of(a) != group_of(b)) return group_of(a) < group_of(b);
    return a.score_mm != b.score_mm ? a.score_mm > b.score_mm : a.index < b.index;
  });
  for (auto begin = all.begin(); begin != all.end();) {
    const int group = group_of(*begin);
    const auto end = std::find_if(begin, all.end(), [&](const Candidate& c) { return group_of(c) != group; });
    rank_group(begin, end);
    begin = end;
  }
  const auto fits = [](const Candidate& c) { return c.standing == Standing::Fits; };
  set.fitting = at(static_cast<int>(std::count_if(all.begin(), all.end(), fits)));
  const auto left = std::find_if(all.begin(), all.end(), [](const Candidate& c) { return c.index == 0; });
  set.leave_it = at(static_cast<int>(left - all.begin()));
}

}  // namespace camside::gear_pick
