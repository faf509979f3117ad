// Question: what does a part's life curve (life.hpp) say in a look-over (look_over.hpp)?
//
// Method: the curve's shape and characteristic life, with the list they come from as the source. A list that gives only
// a bound has no curve to give, and one whose curve lies outside what a look-over takes (describe() of OwnLife) none
// that could be counted with: both stay out. The 95 % interval of the curve does not go along; the swings of a
// look-over move its chance like any other.
#include <fmt/format.h>

#include <cmath>

#include "calc/life/life.hpp"
#include "calc/look_over/look_over.hpp"

namespace camside::look_over {

namespace {

bool can_be_counted_with(const OwnLife& l) {
  return *l.shape >= least_shape && *l.shape <= most_shape && *l.characteristic_life >= least_characteristic_life &&
         *l.characteristic_life <= most_characteristic_life;
}

}  // namespace

std::string list_in_words(const life::Input& in, const life::Result& r) {
  const std::string part = in.part.empty() ? "a part without a name" : in.part;
  if (in.from == life::From::TwoQuantiles) return fmt::format("{}: two shares, {}", part, in.source->text());
  return fmt::format("{}: {} of {} failed", part, r.failures, r.failures + r.survivors);
}

std::optional<OwnLife> own_life(const life::Input& in, const life::Result& r) {
  if (!r.curve) return std::nullopt;
  OwnLife life;
  life.shape = r.curve->shape;
  life.characteristic_life = Distance::km(std::exp(r.curve->ln_eta));
  life.source = in.from == life::From::TwoQuantiles ? in.source : Source::owner("own list, " + list_in_words(in, r));
  if (!can_be_counted_with(life)) return std::nullopt;
  return life;
}

bool same_curve(const OwnLife& a, const OwnLife& b) {
  return a.shape == b.shape && a.characteristic_life == b.characteristic_life && a.source == b.source;
}

}  // namespace camside::look_over
