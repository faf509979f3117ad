// Question: what does a part's life curve (life.hpp) say in a look-over (look_over.hpp)?
//
// Method: the curve's shape and characteristic life, with the list they come from as the source. A list that gives only
// a bound has no curve to give, and one whose curve lies outside what a look-over takes (describe() of OwnLife) none
// that could be counted with: both stay out. The 95 % interval of the curve does not go along; the swings of a
// look-over move its chance like any other.
#pragma once

#include <optional>
#include <string>

#include "calc/life.hpp"
#include "calc/look_over.hpp"

namespace camside::look_over {

std::optional<OwnLife> own_life(const life::Input& in, const life::Result& r);  // whose risk is still to be said

bool same_curve(const OwnLife& a, const OwnLife& b);  // whatever the risk

// "cam chain shoes: 4 of 12 failed"
std::string list_in_words(const life::Input& in, const life::Result& r);

}  // namespace camside::look_over
