// Inside of look_over.hpp: which answer or assumption moves the sum to knock off most. One at a time is changed, all
// others stay: an answer from good over not seen to bad, a cost from all best to all worst, a chance with its odds
// halved and doubled, the engine to each it can be. What moves nothing is left out.
#pragma once

#include <vector>

#include "calc/look_over/look_over.hpp"
#include "calc/look_over/look_over_model.hpp"

namespace camside::look_over {

std::vector<Swing> swings_of(const std::vector<Model>& models, const Answers& answers);  // widest first

}  // namespace camside::look_over
