#include "calc/life/life_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"

namespace camside::remarks::life {

namespace {

std::string bound_text(const Bound& b) {
  return fmt::format("with a shape of {:.3g} ({}) the characteristic life is above {}, 95 % sure", b.shape,
                     b.assumed ? "assumed, as entered" : "assumed, ordinary wear, from memory", miles_and_km(b.least));
}

constexpr const char* enter_a_shape = "Enter an assumed shape to have that bound as the result, or wait for a failure";

}  // namespace

Finding no_parts() {
  return refusal(1701, "parts", "There is no part in the list",
                 "Enter each part with its distance, those still running as well");
}

Finding no_failure(std::size_t parts, const Bound& bound) {
  return refusal(
      1702, "parts",
      fmt::format("None of the {} parts failed, so there is no curve; what can be said: {}", parts, bound_text(bound)),
      enter_a_shape);
}

Finding failures_only_at_the_end(std::size_t failures, const Bound& bound) {
  return refusal(1703, "parts",
                 fmt::format("{} the longest distance of the record, and from that no curve can be told; what can be "
                             "said: {}",
                             failures == 1 ? "The only failure is at" : "All failures are at", bound_text(bound)),
                 enter_a_shape);
}

Finding quantiles_out_of_order() {
  return refusal(1704, "late", "The later distance must have the larger share failed, and both must differ",
                 "Enter the shorter distance with the smaller share first");
}

Finding shape_out_of_range(double shape, double low, double high) {
  return refusal(1705, "late",
                 fmt::format("These two give a shape of {:.3g}; allowed is {:.3g} to {:.3g}", shape, low, high),
                 "Correct a share or a distance: 10 % is 0.1");
}

Finding too_many_parts(std::size_t parts, std::size_t most) {
  return refusal(1706, "parts", fmt::format("The list has {} parts; allowed is up to {}", parts, most),
                 "Split it by kind of part or years");
}

Finding one_failure() {
  return caution(1720, "parts", "The curve rests on one failure: its lives can be wrong by a factor of ten and more",
                 "Plan nothing by it; keep the record going");
}

Finding few_failures(std::size_t failures) {
  return caution(1721, "parts",
                 fmt::format("The curve rests on {} failures; with so few the truth lies outside the band more often "
                             "than 1 time in 20",
                             failures),
                 "Keep the record going");
}

Finding no_survivors(std::size_t failures) {
  return caution(
      1722, "parts", fmt::format("All {} parts failed. Are only the failures remembered?", failures),
      "How many are still running? Enter those with their distance: without them every life comes out short");
}

Finding early_failures(double shape) {
  return caution(
      1723, "parts",
      fmt::format("Shape {:.2f}, below 1: these fail young, from fitting or bad parts, not from wear", shape),
      "Replacing by distance does not help; look at how and what was fitted");
}

Finding very_steep(double shape) {
  return caution(1724, "parts", fmt::format("Shape {:.3g}: all lives nearly alike, as hardly any part's are", shape),
                 "One batch, one ride, or distances entered as the interval? Check them");
}

Finding beyond_the_record(Distance asked, Distance longest) {
  return caution(1725, "next",
                 fmt::format("Asked up to {}; the longest distance of the record is {}", miles_and_km(asked),
                             miles_and_km(longest)),
                 "Beyond the record the curve is a guess");
}

Finding bound_without_failure(const Bound& bound) {
  return caution(1726, "parts", "None of the parts failed, so there is no curve, only a bound: " + bound_text(bound),
                 "The bound is as good as the assumed shape");
}

Finding bound_with_failures_at_the_end(const Bound& bound) {
  return caution(1727, "parts",
                 "Failures only at the longest distance give no curve, only a bound: " + bound_text(bound),
                 "The bound is as good as the assumed shape");
}

Finding no_band(const std::string& source) {
  return caution(1728, "source", fmt::format("The curve goes through two entered points ({}) and has no band", source),
                 "The shop's own list gives one");
}

Finding life_beyond_the_record(Distance life, Distance longest) {
  const double times = life / longest;
  return caution(1729, "parts",
                 times < 1000.0
                     ? fmt::format("The characteristic life is {:.3g} times the longest distance of the record, {}",
                                   times, miles_and_km(longest))
                     : fmt::format("The characteristic life is more than 1000 times the longest distance of "
                                   "the record, {}",
                                   miles_and_km(longest)),
                 "Believe the early part of the curve only");
}

Finding unit_may_be_wrong(std::string field, Distance longest) {
  return caution(1730, std::move(field), fmt::format("A part of {} is a rare one", miles_and_km(longest)),
                 "Distance since the part was fitted, not the bike's odometer? Tenths typed as well?");
}

Finding one_kind_of_part() {
  return note(1740, "parts", "The curve is of one kind of part that fails one way; a mixed list has no one curve");
}

Finding counted_from_new() {
  return note(1741, "survived", "The chance is that of a new part",
              "Enter how far the part has come for one that has survived so far");
}

Finding other_way_not_used() {
  return note(1742, "from", "The other way of telling a life is entered as well and not used");
}

}  // namespace camside::remarks::life
