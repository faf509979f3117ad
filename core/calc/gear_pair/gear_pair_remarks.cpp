#include "calc/gear_pair/gear_pair_remarks.hpp"

#include <fmt/format.h>

#include <string>
#include <utility>

#include "findings/remark.hpp"
#include "units/format.hpp"

namespace camside::remarks {

namespace {

// What to say first when a conclusion leans on a diameter nobody measured.
std::string measured_first(bool assumed) {
  return assumed ? "The diameter was not entered but assumed from the pitch: measure it and enter it. " : std::string{};
}

}  // namespace

Finding centres_too_close(Length centre, Length least, const std::string& what_fits) {
  return refusal(1101, "centre_distance",
                 fmt::format("The centre distance is {}; gears of this pitch and these teeth need more than {}",
                             inch_and_mm(centre), inch_and_mm(least)),
                 (what_fits.empty() ? std::string{} : "Pitch and module swapped? " + what_fits + ". ") +
                     "Check pitch, both tooth counts and the centre distance");
}

namespace {

std::string miss_text(const CentreMiss& miss) {
  return fmt::format("Pitch and teeth ask for a centre distance of {}, measured is {}: {:+.2f} %",
                     inch_and_mm(miss.expected, 3), inch_and_mm(miss.centre, 3),
                     (miss.centre / miss.expected - 1.0) * 100.0);
}

}  // namespace

Finding centre_distance_missed(const CentreMiss& miss) {
  const std::string hint = miss.what_fits.empty() ? "" : miss.what_fits + ". ";
  return {1102, Severity::Doubt, "centre_distance", miss_text(miss),
          hint + "Count the teeth again and check pitch and centre distance; if all are right, say so"};
}

Finding centre_distance_confirmed(const CentreMiss& miss) {
  return note(1103, "centre_distance", miss_text(miss) + "; confirmed as right");
}

Finding ratio_not_two_to_one(std::string field, const std::string& found) {
  return refusal(1105, std::move(field),
                 fmt::format("A cam turns once for two turns of the crank; these gears give {}", found),
                 "Count the teeth again, and check that inner and outer gears are not exchanged");
}

Finding ratio_not_one_to_one(std::string field, const std::string& found) {
  return refusal(1106, std::move(field), fmt::format("Both cams turn alike; these gears give {}", found),
                 "Count the teeth again, and check that inner and outer gears are not exchanged");
}

Finding ratio_not_checked() {
  return note(1107, "place", "Where the pair sits was not said, so its ratio was not checked",
              "Say whether it is crank to cam (2:1) or cam to cam (1:1); it catches most typing errors");
}

Finding pin_rides_on_tips(std::string field, Length contact, Length tip) {
  return refusal(1111, std::move(field),
                 fmt::format("The pin would touch at a diameter of {}, outside the tips at {}: it rides on the tips",
                             inch_and_mm(2.0 * contact), inch_and_mm(2.0 * tip)),
                 "Use a thinner pin (about 1.7 modules, 1.728/P), or check the tip diameter");
}

Finding pin_on_the_bottom(std::string field, Length clearance) {
  return refusal(
      1112, std::move(field),
      fmt::format("The pin would lie {} deep in the root: it sits on the bottom of the space", inch_and_mm(-clearance)),
      "Use a thicker pin (about 1.7 modules, 1.728/P), or check the root diameter");
}

Finding pin_does_not_stand_out(std::string field, Length over_pins, Length tip) {
  return refusal(1113, std::move(field),
                 fmt::format("Over pins is {}, not more than the tip diameter {}: the pins do not stand out",
                             inch_and_mm(over_pins), inch_and_mm(2.0 * tip)),
                 "Use thicker pins, or check the tip diameter");
}

Finding pins_inside_base_circle(std::string field, Length over_pins, Length least) {
  return refusal(1114, std::move(field),
                 fmt::format("Over pins is {}; with these teeth, pitch and pins it is more than {}",
                             inch_and_mm(over_pins), inch_and_mm(least)),
                 "Check the unit, the tooth count, the pitch and the pin's diameter");
}

Finding odd_teeth_over_pins(std::string field, int teeth) {
  return note(1115, std::move(field),
              fmt::format("{} teeth are odd: the two pins lie in the spaces nearest to opposite", teeth),
              "Swing the micrometer for the greatest reading");
}

Finding odd_helical_needs_balls(std::string field) {
  return caution(1116, std::move(field), "A helical gear with odd teeth is measured over balls, not pins",
                 "Use two balls of this diameter in one plane square to the axis");
}

Finding pin_on_no_involute(std::string field, Length pin) {
  return refusal(
      1118, std::move(field),
      fmt::format("A pin of {} would touch below the base circle, where there is no flank", inch_and_mm(pin)),
      "Use a thicker pin (about 1.7 modules, 1.728/P), or check teeth, pitch and the size over pins");
}

Finding span_touches_above_tips(std::string field, Length contact, Length tip) {
  return refusal(1120, std::move(field),
                 fmt::format("The jaws would touch at a diameter of {}, outside the tips at {}",
                             inch_and_mm(2.0 * contact), inch_and_mm(2.0 * tip)),
                 "Span fewer teeth, or check the span and the number of teeth in it");
}

Finding span_touches_below_flank(std::string field, Length contact, Length form) {
  return refusal(1121, std::move(field),
                 fmt::format("The jaws would touch at a diameter of {}, below the flank that begins at {}",
                             inch_and_mm(2.0 * contact), inch_and_mm(2.0 * form)),
                 "Span more teeth, or check the span and the number of teeth in it");
}

Finding span_too_many_teeth(std::string field, int span_teeth, int teeth) {
  return refusal(1122, std::move(field), fmt::format("{} teeth can't be spanned on a gear of {}", span_teeth, teeth),
                 "Enter the number of teeth between the jaws, about a ninth of all at 20°, plus a half");
}

Finding no_tooth_or_no_space(std::string field, Length thickness, Length pitch) {
  return refusal(1125, std::move(field),
                 fmt::format("The tooth would be {} thick at the reference circle; it must lie between nothing and the "
                             "pitch, {}",
                             inch_and_mm(thickness), inch_and_mm(pitch)),
                 "Check the unit, the tooth count, the pitch, and the pin or the number of teeth spanned");
}

Finding unusual_shift(std::string field, double shift) {
  return {1126, Severity::Doubt, std::move(field),
          fmt::format("The size means a profile shift of {} modules, far from what gears have", format_decimal(shift, 3)),
          "Check the unit, the tooth count, the pitch, and the pin or the number of teeth spanned"};
}

Finding pointed_tip(std::string field, bool assumed) {
  return refusal(1130, std::move(field), "The flanks meet below the tip circle: such a tooth can't exist",
                 measured_first(assumed) + "Check the tip diameter, the thickness and the pitch");
}

Finding thin_tip(std::string field, Length tip_thickness) {
  return caution(
      1131, std::move(field),
      fmt::format("The tooth is only {} wide at its tip, under a fifth of a module", inch_and_mm(tip_thickness)),
      "Hardened tips this thin can chip; check the tip diameter");
}

Finding tip_on_root(std::string field, Length overlap, bool assumed) {
  return refusal(1132, std::move(field),
                 fmt::format("The tips would run {} into the bottom of the other gear", inch_and_mm(overlap)),
                 measured_first(assumed) + "Check tip and root diameters and the centre distance");
}

Finding little_tip_clearance(std::string field, Length clearance, bool assumed) {
  return caution(1133, std::move(field),
                 fmt::format("Only {} is left between the tips and the bottom of the other gear, under a tenth of a "
                             "module",
                             inch_and_mm(clearance)),
                 measured_first(assumed) + "Check tip and root diameters and the centre distance");
}

Finding tip_interference(std::string field, Length reach, Length available, bool assumed) {
  return refusal(1134, std::move(field),
                 fmt::format("The tips reach {} along the line of action, beyond the other gear's base circle at {}: "
                             "they dig into its root",
                             inch_and_mm(reach), inch_and_mm(available)),
                 measured_first(assumed) + "Such a pair locks up; check tooth counts, tip diameter and pressure angle");
}

Finding contact_ratio_below_one(double ratio, bool assumed) {
  return refusal(1135, "centre_distance",
                 fmt::format("Contact ratio {:.3f}: one pair of teeth parts before the next one meets", ratio),
                 measured_first(assumed) + "Check centre distance, pitch, tooth counts and tip diameters");
}

Finding contact_ratio_low(double ratio) {
  return caution(1136, "", fmt::format("Contact ratio {:.3f} is below 1.2: such a pair is noisy", ratio),
                 "Check centre distance and tip diameters");
}

Finding helical_contact_unknown(double ratio) {
  return caution(
      1137, "helix",
      fmt::format("Contact ratio in the transverse plane is {:.3f}; the helix adds to it with the face width, "
                  "which is not asked",
                  ratio),
      "Work out the overlap from the face width before trusting this pair");
}

Finding diameters_assumed(std::string field, Length tip, Length root, bool tip_assumed, bool root_assumed) {
  std::string what;
  if (tip_assumed) what = "tip diameter " + inch_and_mm(2.0 * tip, 3);
  if (tip_assumed && root_assumed) what += " and ";
  if (root_assumed) what += "root diameter " + inch_and_mm(2.0 * root, 3);
  return note(1138, std::move(field), "Assumed from the pitch: " + what,
              "Enter them as measured to make contact and clearance sure");
}

Finding tip_below_root(std::string field, Length tip, Length root) {
  return refusal(1139, std::move(field),
                 fmt::format("The tip diameter {} is not above the root diameter {}", inch_and_mm(2.0 * tip),
                             inch_and_mm(2.0 * root)),
                 "Correct the two diameters");
}

Finding lash_below_nothing(Length lash) {
  return caution(1140, "", fmt::format("The lash is {}: the teeth jam, tight teeth never run in", inch_and_mm(lash)),
                 "Go to thinner gears");
}

Finding measured_lash_unused(Length measured, Length from_sizes) {
  return note(1141, "measured_lash",
              fmt::format("The measured lash {} was not used; both thicknesses are given and make {}",
                          inch_and_mm(measured), inch_and_mm(from_sizes)),
              "Set a gear to “as fitted” to work from the measured lash");
}

Finding thinning_shared() {
  return note(1142, "measured_lash",
              "Both gears are as fitted: only their sum is known, the drawing shares it equally between them");
}

Finding no_finite_result(const std::string& figure) {
  return refusal(1143, "", fmt::format("“{}” can't be worked out from sizes this extreme", figure),
                 "Check the units of every size, and the pressure angle");
}

}  // namespace camside::remarks
