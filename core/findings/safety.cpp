#include "findings/safety.hpp"

#include "findings/remark.hpp"

namespace camside::safety {

using remarks::caution;

Finding turn_by_hand() {
  return caution(1911, "",
                 "Turn by hand only, plugs out, starter disconnected; fingers, sleeves and rags out of open gears and "
                 "chains",
                 "Battery negative off first. The rear wheel in top gear is the handle; the crank bolt is not one");
}

Finding stop_felt() {
  return caution(1912, "", "If it stops, stop: never lever", "Find the valve, the stop or the mark first");
}

Finding let_it_cool() {
  return caution(1913, "", "Exhaust and oil burn: let the engine cool before setting rods",
                 "The figures are for a cold engine too");
}

Finding cutting_rods() {
  return caution(
      1914, "save_or_cut",
      "Cutting: at that cylinder's compression TDC, both ends of the rod held, with bolt cutters; never a saw "
      "or a grinder, whose chips stay in the engine. Eye protection: ends fly",
      "Cover the tube openings and count the pieces: what went in must come out");
}

Finding unloading_rockers() {
  return caution(1915, "", "Loosen rocker supports evenly, and only at that cylinder's compression TDC",
                 "A support let go on one side bends or breaks");
}

Finding shoe_under_load() {
  return caution(1916, "", "A spring-loaded shoe is under load",
                 "Pin or hold back its spring before undoing anything, eyes clear of it");
}

Finding blind_hole() {
  return caution(1917, "", "A blind hole: oil or locking liquid shut in under the bolt cracks the case",
                 "Clean and dry the hole, and use the compound that the sheet names, on the bolt");
}

Finding round_a_running_bike() {
  return caution(
      1918, "",
      "On its stand and in the open: pipes and barrels burn, exhaust fumes kill indoors, and belt, chain and "
      "fan take fingers and sleeves",
      "A hand near first, then a touch; whoever rides it has the say and the papers");
}

}  // namespace camside::safety
