// Small things that several questions' looks share.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "calc/gear_pair/gear_pair.hpp"
#include "records/form.hpp"
#include "screens/widgets/shown.hpp"
#include "screens/drawings/teeth_drawing.hpp"
#include "screens/widgets/ui.hpp"
#include "units/quantity.hpp"
#include "units/unit.hpp"

namespace camside::screens {

// The choice or value that stands in a field, or what is taken while it is empty.
std::string stands_in(const std::vector<records::FormField>& form, std::string_view path);

// Lengths in the user's system: what a drawing's grid counts in.
inline double grid_unit_mm(System system) {
  return system == System::Inch ? 25.4 : 1.0;
}

// Writes a length as people read it in the user's system.
inline std::function<std::string(Length)> shown_in(System system) {
  return [system](Length v) { return shown(Kind::Length, v.base(), system); };
}

// A solved pair as its teeth are drawn, and how high.
TeethPlot teeth_plot(const gear_pair::Result& pair);
float teeth_height(const Ui& ui, float width);

}  // namespace camside::screens
