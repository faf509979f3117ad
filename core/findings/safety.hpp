// Numbers 1900-1929: the cautions that stand at the step where somebody can be hurt or an engine ruined. Usual practice
// of the trade, no published source; the maker's manual, local rules and qualified people win.
#pragma once

#include "findings/finding.hpp"

namespace camside::safety {

Finding turn_by_hand();          // 1911
Finding stop_felt();             // 1912
Finding let_it_cool();           // 1913
Finding cutting_rods();          // 1914
Finding unloading_rockers();     // 1915
Finding shoe_under_load();       // 1916
Finding blind_hole();            // 1917
Finding round_a_running_bike();  // 1918

}  // namespace camside::safety
