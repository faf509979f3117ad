#include "calc/runout/runout_verdict.hpp"

#include <fmt/format.h>

#include "findings/remark.hpp"

namespace camside::runout {

namespace {

std::string value_and_uncertainty(double mm, double expanded_mm) {
  return fmt::format("{} ± {}", remarks::short_inches(Length::mm(mm)), remarks::short_inches(Length::mm(expanded_mm)));
}

// What would shrink U the most.
std::string best_cure(const Uncertainty& u) {
  if (u.coverage_factor > 2.2) return "turn it more often: after few turns the scatter counts many times over";
  if (u.play_share > u.resolution_share && u.play_share > u.repeat_share) {
    return "take up the play with a light steady side load, or see to the main bearing first";
  }
  if (u.resolution_share >= u.repeat_share) return "use a finer indicator";
  return "turn it again more evenly, or use a finer indicator";
}

std::string open_reason(const Shape& shape, const Uncertainty& u, double limit_mm) {
  const std::string range = fmt::format("{} lies too near the limit of {} to tell",
                                        value_and_uncertainty(shape.judged_mm, u.expanded.in_mm()),
                                        remarks::short_inches(Length::mm(limit_mm)));
  const bool missed_peaks = shape.judged_mm - shape.tir_mm > 0.5 * u.expanded.in_mm();
  return range + "; to settle it, " + (missed_peaks ? "read at more positions, and " : "") + best_cure(u);
}

std::string plain_reason(Verdict v, const Shape& shape, const Uncertainty& u, double limit_mm) {
  const std::string limit = remarks::short_inches(Length::mm(limit_mm));
  if (v == Verdict::Within) {
    return fmt::format("{} stays within the limit of {} with its uncertainty added",
                       value_and_uncertainty(shape.judged_mm, u.expanded.in_mm()), limit);
  }
  if (v == Verdict::Outside) {
    return fmt::format("{} is above the limit of {} even with its uncertainty taken off",
                       value_and_uncertainty(shape.tir_mm, u.expanded.in_mm()), limit);
  }
  return open_reason(shape, u, limit_mm);
}

}  // namespace

ByNumbers verdict_by_numbers(const Shape& shape, const Uncertainty& u, Length limit, double guard) {
  const double guarded_mm = guard * u.expanded.in_mm();
  const auto rule = [&](double judged_mm, double tir_mm) {
    return verdict_of_numbers(Bound::Most, {judged_mm, tir_mm, guarded_mm}, limit.in_mm());
  };
  const Verdict verdict = rule(shape.judged_mm, shape.tir_mm);
  if (!shape.judged_without_drift_mm) return {verdict};
  return {verdict, rule(*shape.judged_without_drift_mm, *shape.tir_without_drift_mm) != verdict};
}

std::string reason_of(const Decision& decision, const Shape& shape, const Uncertainty& u, Length limit) {
  return decision.doubt ? because(*decision.doubt) : plain_reason(decision.verdict, shape, u, limit.in_mm());
}

}  // namespace camside::runout
