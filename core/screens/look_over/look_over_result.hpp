// What a look-over says, on one screen: the sum to knock off and the offer, when to walk away, what must be done
// anyway, what may be found, and what to look at next. No percentages here; they stand in the working, with the risks
// ranked and what moves the sum.
#pragma once

#include <cstdint>
#include <string>

#include "calc/look_over/look_over.hpp"
#include "findings/outcome.hpp"
#include "screens/widgets/ui.hpp"

namespace camside::screens {

enum class ResultTap : std::uint8_t { None, Prices, Look };

ResultTap draw_result(Ui& ui, const look_over::Input& in, const look_over::Result& result);
// Beside a question on a wide screen: the sums and what must be done.
void draw_result_in_short(Ui& ui, const look_over::Input& in, const look_over::Result& result);
void draw_swings(Ui& ui, const look_over::Result& result);  // what moves the sum
void draw_result_working(Ui& ui, const look_over::Result& result);

}  // namespace camside::screens
