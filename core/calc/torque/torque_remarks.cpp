#include "calc/torque/torque_remarks.hpp"

#include <fmt/format.h>

#include "findings/remark.hpp"
#include "units/format.hpp"

namespace camside::remarks::torque {

namespace {

std::string both(Torque t) {
  return fmt::format("{} ({})", format(Kind::Torque, t.base(), System::Inch),
                     format(Kind::Torque, t.base(), System::Metric));
}

}  // namespace

Finding no_lever_left(Angle angle) {
  return refusal(
      2001, "extension.angle",
      fmt::format("Folded back by {:.0f}° the extension takes up more than nine tenths of the wrench", angle.in_deg()),
      "Use a shorter extension, or stand it square to the wrench: 90° needs no correction");
}

Finding pitch_without_thread(Length left) {
  return refusal(2002, "bolt.pitch",
                 fmt::format("A pitch this coarse leaves {} of the bolt's diameter", short_inch_and_mm(left)),
                 "Enter the nominal diameter and the pitch of the thread: threads per inch, or mm from crest to crest");
}

Finding beyond_the_wrench(Torque setting, Torque end) {
  return refusal(2003, "scale_end", fmt::format("The setting is {}, the wrench ends at {}", both(setting), both(end)),
                 "Take a larger wrench, or a longer one with this extension");
}

Finding inch_pounds_meant(double stress_mpa) {
  return doubt(
      2020, "torque",
      fmt::format("This would stress the thread with {:.0f} MPa, where common bolts let go; a twelfth of it would not",
                  stress_mpa),
      "lbf·in typed as lbf·ft? Pick the unit, or correct torque, diameter or pitch");
}

Finding foot_pounds_meant(double stress_mpa) {
  return doubt(
      2021, "torque",
      fmt::format("This would stress the thread with {:.0f} MPa only; nobody tightens it so little", stress_mpa),
      "lbf·ft typed as lbf·in? Pick the unit, or correct torque, diameter or pitch");
}

Finding low_on_the_scale(double share) {
  return caution(
      2040, "scale_end",
      fmt::format("The setting is {:.0f} % of the wrench's scale; below 20 % it is not to be trusted (common "
                  "practice, no published source)",
                  100.0 * share),
      "Take a smaller wrench");
}

Finding extension_folded_back() {
  return caution(2041, "extension.angle",
                 "Folded back, the extension shortens the lever: the wrench is set higher than the torque",
                 "Look twice that it does stand folded back, and set the wrench back afterwards");
}

Finding no_source() {
  return caution(2042, "source", "Nobody is named who says so: the torque proves nothing to the next one who reads it",
                 "Name the sheet or manual it comes from, and whether it means dry or oiled threads");
}

Finding square_on_no_change() {
  return note(2060, "extension.angle", "Square to the wrench the extension changes nothing");
}

Finding nut_factor_taken(double k) {
  return note(2061, "bolt.nut_factor", fmt::format("Nut factor K taken as {:.2f} (from memory)", k),
              "Enter that of the thread compound's maker");
}

Finding pull_at_the_mark() {
  return note(2062, "extension.wrench", "Holds only for a hand on the grip mark, pulling square to the wrench",
              "Never pull at a pipe put over the handle");
}

}  // namespace camside::remarks::torque
