#include "calc/pushrod/pushrod_checks.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <string>

#include "calc/pushrod/pushrod_remarks.hpp"
#include "calc/pushrod/pushrod_setting.hpp"
#include "fields/path.hpp"

namespace camside::pushrod {

namespace {

constexpr Length slack = Length::mm(1e-9);
constexpr Length most_travel = Length::mm(10.0);

void add_pitch_hint(const std::string& field, const std::optional<ThreadPitch>& pitch, Findings& found) {
  if (!pitch || !pitch->finite() || pitch->in_mm() <= 0.0) return;
  if (pitch->in_mm() < 0.2 || pitch->in_mm() > 3.0) found.push_back(remarks::pitch_unlikely(field, *pitch));
}

// Beside the plain "out of range": what was probably meant.
void add_hints(const Input& in, Findings& found) {
  add_pitch_hint("pitch", in.pitch, found);
  add_pitch_hint("second_pitch", in.second_pitch, found);
  if (in.travel && in.travel->finite() && *in.travel > most_travel)
    found.push_back(remarks::travel_like_a_height(*in.travel, true));
}

bool needs_thread(const Input& in) {
  return in.rods == Rods::Adjustable && (in.lifter == Lifter::Hydraulic || in.turned);
}

void check_thread(const Input& in, Findings& found) {
  if (in.pitch && in.ten_threads) found.push_back(remarks::pitch_twice("ten_threads", "pitch"));
  if (in.second_pitch && in.second_ten_threads)
    found.push_back(remarks::pitch_twice("second_ten_threads", "second_pitch"));
  if (needs_thread(in) && !in.pitch && !in.ten_threads) found.push_back(remarks::pitch_missing());
}

void check_adjustable(const Input& in, Findings& found) {
  if (in.lifter == Lifter::Solid) {
    if (in.preload.value_or(Length{}) > slack) found.push_back(remarks::preload_on_solid_lifter(*in.preload));
    return;
  }
  if (way_of(in) == Way::BottomAndBackOff && !in.travel)
    found.push_back(remarks::travel_missing());
  else if (!in.preload && !in.travel && !in.turned)
    found.push_back(remarks::preload_without_travel());
  if (in.preload && in.travel && *in.preload > *in.travel + slack)
    found.push_back(remarks::preload_beyond_travel(*in.preload, *in.travel));
}

void check_rod_tests(const Input& in, Findings& found) {
  std::array<bool, 4> seen{};
  for (std::size_t i = 0; i < in.checks.size(); ++i) {
    bool& was_seen = seen[static_cast<std::size_t>(*in.checks[i].rod)];
    if (was_seen) found.push_back(remarks::rod_listed_twice(item_path("checks", i, "rod"), word_of(*in.checks[i].rod)));
    was_seen = true;
    if (found.size() > 50) return;
  }
}

bool picture_is_whole(const Input& in) {
  std::array<bool, 4> seen{};
  for (const PicturePlace& p : in.left_to_right) seen[static_cast<std::size_t>(*p.rod)] = true;
  return in.left_to_right.size() == 4 && seen == std::array<bool, 4>{true, true, true, true};
}

}  // namespace

Findings refusals(const Input& in) {
  Findings found = check_fields(in);
  if (any_refusal(found)) {
    add_hints(in, found);
    return found;
  }
  check_thread(in, found);
  if (in.rods == Rods::Adjustable) check_adjustable(in, found);
  if (in.rods == Rods::Fixed && in.turned) found.push_back(remarks::fixed_rods_do_not_turn());
  if (in.heat && in.heat->stack.empty()) found.push_back(remarks::stack_missing());
  if (!in.left_to_right.empty() && !picture_is_whole(in)) found.push_back(remarks::picture_incomplete());
  check_rod_tests(in, found);
  return found;
}

}  // namespace camside::pushrod
