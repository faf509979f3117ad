// Question: what does a part's life curve (life.hpp) say in a look-over (look_over.hpp)?
//
// Method: the curve's shape and characteristic life, with the list they come from as the source. A list that gives only
// a bound has no curve to give, and stays out.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "calc/life.hpp"
#include "calc/look_over.hpp"

namespace camside::look_over {

std::optional<OwnLife> own_life(std::string_view risk, const life::Input& in, const life::Result& r);

bool same_curve(const OwnLife& a, const OwnLife& b);  // whatever the risk

// "cam chain shoes: 4 of 12 failed"
std::string list_in_words(const life::Input& in, const life::Result& r);

}  // namespace camside::look_over
