// The rods themselves: new length, thread engaged, collapsed length, save or cut; for pushrod.cpp.
#pragma once

#include "calc/pushrod/pushrod.hpp"

namespace camside::pushrod {

Length length_change(const NewLength& n);

Length least_engaged(const Engagement& e);
Source engagement_source(const Engagement& e);

struct RodsAdvice {
  RodsOut way = RodsOut::LookFirst;
  Findings reasons;
};
RodsAdvice save_or_cut(const SaveOrCut& s);

}  // namespace camside::pushrod
