#include "calc/pushrod/pushrod_rods.hpp"

#include "calc/pushrod/pushrod_remarks.hpp"
#include "findings/safety.hpp"

namespace camside::pushrod {

namespace {

// Lift up to which springs, rods and lifters of the standard engine still serve: common practice, a prompt to measure.
constexpr Length usual_fixed_range = Length::inches(0.510);

Length fixed_range(const SaveOrCut& s) {
  return s.fixed_range ? s.fixed_range->value : usual_fixed_range;
}

bool beyond_fixed(const SaveOrCut& s) {
  return s.valve_lift && *s.valve_lift > fixed_range(s) + Length::mm(1e-9);
}

Finding lift_reason(const SaveOrCut& s) {
  if (!s.valve_lift) return remarks::lift_not_given();
  return beyond_fixed(s) ? remarks::lift_beyond_fixed(*s.valve_lift, fixed_range(s))
                         : remarks::lift_suits_fixed(*s.valve_lift, fixed_range(s));
}

RodsOut saved(const SaveOrCut& s) {
  return beyond_fixed(s) ? RodsOut::SaveAndFitAdjustable : RodsOut::SaveAndRefit;
}

}  // namespace

Length length_change(const NewLength& n) {
  return n.gasket_change - n.deck_removed - n.head_removed - n.heel_radius_change - n.cup_rise -
         n.tip_rise / n.rocker_ratio.value_or(1.0);
}

Length least_engaged(const Engagement& e) {
  return e.least ? e.least->value : *e.diameter;
}

Source engagement_source(const Engagement& e) {
  return e.least ? e.least->source : Source::memory();
}

RodsAdvice save_or_cut(const SaveOrCut& s) {
  RodsAdvice a;
  if (!s.boxes_leak) {
    a.reasons.push_back(remarks::look_at_boxes_first());
  } else if (*s.boxes_leak) {
    a.way = saved(s);
    a.reasons.push_back(remarks::boxes_come_off());
  } else if (s.use_again.value_or(false)) {
    a.way = saved(s);
    a.reasons.push_back(remarks::rods_wanted_whole());
  } else {
    a.way = RodsOut::CutAndFitAdjustable;
    a.reasons.push_back(remarks::cutting_is_quick());
    a.reasons.push_back(safety::cutting_rods());
  }
  a.reasons.push_back(lift_reason(s));
  return a;
}

std::string_view word_of(RodsOut way) {
  switch (way) {
    case RodsOut::LookFirst:
      return "look at the rocker boxes first";
    case RodsOut::SaveAndRefit:
      return "save the fixed rods and refit them";
    case RodsOut::SaveAndFitAdjustable:
      return "save the fixed rods, fit adjustable ones";
    case RodsOut::CutAndFitAdjustable:
      return "cut the fixed rods, fit adjustable ones";
  }
  return "";
}

}  // namespace camside::pushrod
