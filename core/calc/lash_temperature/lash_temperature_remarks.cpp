#include <fmt/format.h>

#include <string>
#include <utility>

#include "calc/lash_temperature/lash_temperature.hpp"
#include "findings/remark.hpp"

namespace camside::lash_temperature {

using remarks::caution;
using remarks::inch_and_mm;
using remarks::note;
using remarks::refusal;

Finding no_lash_in_state(State state, Length lash) {
  return caution(1150, "temperatures", fmt::format("In the state “{}” the lash is {}", word_of(state), inch_and_mm(lash)),
                 "Tight teeth never run in: go to thinner gears, or keep out of that state");
}

Finding no_fit_in_state(std::string field, State state) {
  return refusal(1151, std::move(field),
                 fmt::format("In the state “{}” the gears no longer fit between the shafts at all", word_of(state)),
                 "Check the temperatures and the expansion coefficients");
}

Finding unlike_growth() {
  return note(1152, "temperatures", "The gears grow unlike, so their base pitches differ when hot; the mean is used");
}

}  // namespace camside::lash_temperature
